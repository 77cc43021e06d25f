//! The edits that a plan knows: plain data, applied to a plan to give the next one.

use super::boundary::{BoundaryMove, Gave, move_boundary};
use super::{joint_names, work_parts};
use crate::forms;
use crate::plan::{
    Bar, Chain, Coating, Duty, Form, Joint, Limits, Plan, Practice, SectionSpec, Segment, Underlay, Units, Work,
};
use fh_measure::{WrittenLength, WrittenShare};

/// One edit of a plan.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Another plan in place of this one, as one step that can be undone.
    ReplacePlan(Box<Plan>),
    /// What stands over the whole plan.
    SetPlan(Box<PlanHeader>),
    /// Other joints in place of all of the plan's.
    SetJoints(Vec<Joint>),
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
}

/// What stands over the whole plan.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanHeader {
    /// See [`Plan::title`].
    pub title: String,
    /// See [`Plan::notes`].
    pub notes: Option<String>,
    /// See [`Plan::units`].
    pub units: Units,
    /// See [`Plan::material`].
    pub material: Option<String>,
    /// See [`Plan::scale`].
    pub scale: Option<WrittenShare>,
    /// See [`Plan::duty`].
    pub duty: Option<Duty>,
    /// See [`Plan::coating`].
    pub coating: Option<Coating>,
    /// See [`Plan::limits`].
    pub limits: Limits,
    /// See [`Plan::practice`].
    pub practice: Practice,
    /// See [`Plan::underlay`].
    pub underlay: Option<Underlay>,
}

impl From<&Plan> for PlanHeader {
    fn from(plan: &Plan) -> Self {
        Self {
            title: plan.title.clone(),
            notes: plan.notes.clone(),
            units: plan.units,
            material: plan.material.clone(),
            scale: plan.scale.clone(),
            duty: plan.duty,
            coating: plan.coating,
            limits: plan.limits.clone(),
            practice: plan.practice,
            underlay: plan.underlay.clone(),
        }
    }
}

/// What stands over a bar's segments.
#[derive(Clone, Debug, PartialEq)]
pub struct BarHeader {
    /// See [`Bar::name`].
    pub name: String,
    /// See [`Bar::count`].
    pub count: Option<u32>,
    /// See [`Bar::stock`].
    pub stock: SectionSpec,
    /// See [`Bar::datum`].
    pub datum: Option<String>,
    /// See [`Bar::length`].
    pub length: Option<WrittenLength>,
    /// See [`Bar::takes_up`].
    pub takes_up: Option<String>,
    /// See [`Bar::scale`].
    pub scale: Option<WrittenShare>,
}

impl From<&Bar> for BarHeader {
    fn from(bar: &Bar) -> Self {
        Self {
            name: bar.name.clone(),
            count: bar.count,
            stock: bar.stock.clone(),
            datum: bar.datum.clone(),
            length: bar.length.clone(),
            takes_up: bar.takes_up.clone(),
            scale: bar.scale.clone(),
        }
    }
}

/// Why an edit was not done.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Refusal {
    /// There is no such bar or segment.
    #[error("there is no such place in the plan")]
    NoSuchPlace,
    /// A plan keeps at least one bar.
    #[error("a plan keeps at least one bar")]
    LastBar,
    /// A wish that cannot be met, in words and numbers.
    #[error("{0}")]
    CannotBe(String),
}

impl Edit {
    /// The plan after this edit, and what gave way in it.
    ///
    /// # Errors
    /// Where the edit names a place that is not there, or asks for what cannot be.
    pub fn applied(&self, plan: &Plan) -> Result<(Plan, Vec<Gave>), Refusal> {
        if let Self::MoveBoundary(wish) = self {
            let moved = move_boundary(plan, wish)?;
            crate::file::check(&moved.plan).map_err(|error| Refusal::CannotBe(error.message))?;
            return Ok((moved.plan, moved.gave));
        }
        let mut next = plan.clone();
        self.change(&mut next)?;
        work_parts::follow(self, plan, &mut next);
        next.bars.iter_mut().for_each(mend_first_segment);
        // What could not be read back from a file must not come into a plan.
        crate::file::check(&next).map_err(|error| Refusal::CannotBe(error.message))?;
        Ok((next, Vec::new()))
    }

    fn change(&self, plan: &mut Plan) -> Result<(), Refusal> {
        match self {
            Self::ReplacePlan(other) => *plan = (**other).clone(),
            Self::SetPlan(header) => set_plan(plan, header),
            Self::SetJoints(joints) => plan.joints.clone_from(joints),
            Self::SetWork(work) => plan.work = (**work).clone(),
            Self::AddBar { at, bar } => plan.bars.insert((*at).min(plan.bars.len()), (**bar).clone()),
            Self::RemoveBar { bar } => {
                bar_at(plan, *bar)?;
                if plan.bars.len() < 2 {
                    return Err(Refusal::LastBar);
                }
                plan.bars.remove(*bar);
            }
            Self::SetBar { bar, header } => {
                joint_names::rename_bar(plan, *bar, &header.name);
                set_bar(bar_at(plan, *bar)?, header);
            }
            Self::InsertSegment { bar, at, segment } => {
                let bar = bar_at(plan, *bar)?;
                let (chain, place) = bar.place_of(*at).unwrap_or((Chain::Bar, bar.segments.len()));
                insert_into(bar, chain, place, segment)?;
            }
            Self::InsertInto { bar, chain, place, segment } => {
                insert_into(bar_at(plan, *bar)?, *chain, *place, segment)?;
            }
            Self::InsertSegments { bar, chain, place, segments } => {
                let bar = bar_at(plan, *bar)?;
                for (offset, segment) in segments.iter().enumerate() {
                    insert_into(bar, *chain, place.saturating_add(offset), segment)?;
                }
            }
            Self::ReplaceSegment { bar, at, segment } => {
                joint_names::rename_segment(plan, *bar, *at, &segment.name);
                replace_segment(bar_at(plan, *bar)?, *at, segment)?;
            }
            Self::RemoveSegment { bar, at } => {
                let bar = bar_at(plan, *bar)?;
                let (chain, place) = bar.place_of(*at).ok_or(Refusal::NoSuchPlace)?;
                bar.chain_mut(chain).ok_or(Refusal::NoSuchPlace)?.remove(place);
            }
            Self::MoveSegment { bar, from, to } => {
                move_segment(bar_at(plan, *bar)?, *from, *to)?;
            }
            Self::MoveBoundary(_) => {}
        }
        Ok(())
    }
}

fn bar_at(plan: &mut Plan, bar: usize) -> Result<&mut Bar, Refusal> {
    plan.bars.get_mut(bar).ok_or(Refusal::NoSuchPlace)
}

fn set_plan(plan: &mut Plan, header: &PlanHeader) {
    let PlanHeader { title, notes, units, material, scale, duty, coating, limits, practice, underlay } = header.clone();
    plan.title = title;
    plan.notes = notes;
    plan.units = units;
    plan.material = material;
    plan.scale = scale;
    plan.duty = duty;
    plan.coating = coating;
    plan.limits = limits;
    plan.practice = practice;
    plan.underlay = underlay;
}

fn set_bar(bar: &mut Bar, header: &BarHeader) {
    let BarHeader { name, count, stock, datum, length, takes_up, scale } = header.clone();
    bar.name = name;
    bar.count = count;
    bar.stock = stock;
    bar.datum = datum;
    bar.length = length;
    bar.takes_up = takes_up;
    bar.scale = scale;
}

fn insert_into(bar: &mut Bar, chain: Chain, place: usize, segment: &Segment) -> Result<(), Refusal> {
    let segments = bar.chain_mut(chain).ok_or(Refusal::NoSuchPlace)?;
    segments.insert(place.min(segments.len()), segment.clone());
    Ok(())
}

/// A segment stays in its chain: beyond the end it comes to be the last.
fn move_segment(bar: &mut Bar, from: usize, to: usize) -> Result<(), Refusal> {
    let (chain, place) = bar.place_of(from).ok_or(Refusal::NoSuchPlace)?;
    let end = bar.chain(chain).map_or(0, Vec::len);
    let wanted = match bar.place_of(to) {
        Some((other, wanted)) if other == chain => wanted,
        Some(_) => return Err(Refusal::NoSuchPlace),
        None => end,
    };
    let segments = bar.chain_mut(chain).ok_or(Refusal::NoSuchPlace)?;
    let moved = segments.remove(place);
    segments.insert(wanted.min(segments.len()), moved);
    Ok(())
}

/// A segment that is renamed stays the one that takes up.
fn replace_segment(bar: &mut Bar, at: usize, segment: &Segment) -> Result<(), Refusal> {
    let takes_up = bar.flat().iter().position(|flat| Some(&flat.segment.name) == bar.takes_up.as_ref());
    if takes_up == Some(at) {
        bar.takes_up = Some(segment.name.clone());
    }
    *bar.segment_mut(at).ok_or(Refusal::NoSuchPlace)? = segment.clone();
    Ok(())
}

/// Before the first segment of a chain there is none whose section it could have: it has the stock's.
fn mend_first_segment(bar: &mut Bar) {
    mend_first_of(&mut bar.segments);
}

fn mend_first_of(segments: &mut [Segment]) {
    for segment in segments.iter_mut() {
        if let Form::Split(forms::Split { branches, .. }) = &mut segment.form {
            branches.iter_mut().for_each(|branch| mend_first_of(&mut branch.segments));
        }
    }
    let Some(first) = segments.first_mut() else { return };
    let section = match &mut first.form {
        Form::Taper(forms::Taper { from, to, .. }) => {
            from.take_if(|from| *from == SectionSpec::Same);
            to
        }
        Form::Drawn(forms::Drawn { section, .. })
        | Form::Peak(forms::Peak { section, .. })
        | Form::Tenon(forms::Tenon { section, .. })
        | Form::Collar(forms::Collar { section, .. })
        | Form::Shoulder(forms::Shoulder { to: section, .. }) => section,
        _ => return,
    };
    if *section == SectionSpec::Same {
        *section = SectionSpec::Stock;
    }
}
