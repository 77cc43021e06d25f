//! The edits that a plan knows, as plain data.

use super::bend_drag::BendDrag;
use super::boundary::BoundaryMove;
use super::headers::{BarHeader, PlanHeader};
use super::marks::MarkEdit;
use super::part_change::PartChange;
use super::steps::StepChange;
use super::whole::WholeChange;
use crate::plan::{AskedSize, Bar, Chain, Joint, Plan, Segment, Step, Work};

/// One edit of a plan.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Another plan in place of this one, as one step that can be undone.
    ReplacePlan(Box<Plan>),
    /// The whole piece changed: its other hand, another bar, another size.
    Whole(WholeChange),
    /// What stands over the whole plan.
    SetPlan(Box<PlanHeader>),
    /// Other joints in place of all of the plan's.
    SetJoints(Vec<Joint>),
    /// Other asked sizes in place of all of the plan's.
    SetSizes(Vec<AskedSize>),
    /// Another order of work, and other rules for heats.
    SetWork(Box<Work>),
    /// Adds a bar before the place `at`.
    AddBar {
        /// The place it takes.
        at: usize,
        /// The bar.
        bar: Box<Bar>,
    },
    /// Takes a bar out; the last one stays.
    RemoveBar {
        /// The bar.
        bar: usize,
    },
    /// What stands over a bar's segments.
    SetBar {
        /// The bar.
        bar: usize,
        /// Its new header.
        header: Box<BarHeader>,
    },
    /// Puts a segment before the one with the number `at`, counted through the bar; at the end where there is none.
    InsertSegment {
        /// The bar.
        bar: usize,
        /// The place it takes.
        at: usize,
        /// The segment.
        segment: Box<Segment>,
    },
    /// Puts a segment into a chain: the bar itself, or a branch of a split.
    InsertInto {
        /// The bar.
        bar: usize,
        /// The chain.
        chain: Chain,
        /// The place in it that the segment takes.
        place: usize,
        /// The segment.
        segment: Box<Segment>,
    },
    /// Puts several segments into a chain, one after the other, as one step.
    InsertSegments {
        /// The bar.
        bar: usize,
        /// The chain.
        chain: Chain,
        /// The place in it that the first of them takes.
        place: usize,
        /// The segments.
        segments: Vec<Segment>,
    },
    /// Another segment in the place of one.
    ReplaceSegment {
        /// The bar.
        bar: usize,
        /// The place.
        at: usize,
        /// The segment.
        segment: Box<Segment>,
    },
    /// Takes a segment out.
    RemoveSegment {
        /// The bar.
        bar: usize,
        /// The place.
        at: usize,
    },
    /// Moves a segment to the place of another one of its chain.
    MoveSegment {
        /// The bar.
        bar: usize,
        /// Where it is.
        from: usize,
        /// Where it comes to be.
        to: usize,
    },
    /// Moves the boundary at a segment's end.
    MoveBoundary(BoundaryMove),
    /// Moves a mark to the place nearest to the wished one at which the size that gives is round.
    MoveToRound(BoundaryMove),
    /// Bends a segment further or less far, as the hand drags it.
    DragBend(BendDrag),
    /// Changes a part as its fields offer it.
    ChangePart {
        /// The bar.
        bar: usize,
        /// The place.
        at: usize,
        /// What becomes of it.
        change: PartChange,
    },
    /// Changes the order of work.
    ChangeSteps {
        /// What becomes of the steps.
        change: StepChange,
        /// The order that was proposed: a plan without steps of its own takes these.
        proposed: Vec<Step>,
    },
    /// Fixes, moves or loosens a mark.
    Mark(MarkEdit),
    /// Several edits, one after the other, as one step: what happens to several parts at once. All of them are done, or none.
    Several(Vec<Edit>),
}
