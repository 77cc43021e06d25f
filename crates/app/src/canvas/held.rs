//! What the hand has on the drawing: a boundary that is dragged, a size that is typed, the boundary that has the keyboard.

use super::figure::What;
use super::model::Model;
use super::model::details::Middle;
use super::spot::Spot;
use super::strip::Strip;
use egui::{Id, Pos2, Ui};
use fh_core::edit::{Across, Neighbor};
use fh_measure::WrittenLength;

/// A boundary in hand.
#[derive(Clone, Debug)]
pub(super) struct Drag {
    pub(super) spot: Spot,
    /// How far from the boundary it was taken, in mm.
    pub(super) grabbed_off: f64,
    /// Where its segment started when it was taken, where that may move with it.
    pub(super) start: Option<f64>,
    /// Where a place of its segment was drawn when it was taken: the place, its drawing, and millimetres drawn for one.
    pub(super) drawn: [f64; 3],
    /// Where it was last sent, and whether the size that gives was to be round, so that a still hand sends nothing.
    pub(super) sent: Option<(f64, Neighbor, bool)>,
}

impl Drag {
    pub(super) fn new(spot: Spot, grabbed_off: f64, model: &Model) -> Self {
        let in_branch = model.blocks.get(spot.segment).is_some_and(|block| block.lane > 0);
        let [start, end] = spot.reach(model).unwrap_or_default();
        let [from, to] = spot.drawn(model).unwrap_or_default();
        let scale = if end > start && to > from { (to - from) / (end - start) } else { 1.0 };
        // The start of a branch and its drawing follow its length: what is in hand would run away from itself.
        let start_then = (in_branch && spot.strip == Strip::Forged).then_some(start);
        Self { spot, grabbed_off, start: start_then, drawn: [start, from, scale], sent: None }
    }

    /// The place on its bar that was drawn here when it was taken, in mm.
    pub(super) fn place_at(&self, drawn: f64) -> f64 {
        let [place, at, scale] = self.drawn;
        place + (drawn - at) / scale
    }
}

/// A size across the selected part in hand.
#[derive(Clone, Debug)]
pub(super) struct AcrossDrag {
    pub(super) what: (usize, Across),
    /// The upper edge is in hand, or else the lower one.
    pub(super) is_upper: bool,
    /// The size when it was taken.
    pub(super) size: WrittenLength,
    /// How many millimetres the pointer goes for one point.
    pub(super) mm_per_point: f64,
    /// Where the pointer took it.
    pub(super) pressed: f32,
    /// What was last asked for, so that a still hand asks for nothing.
    pub(super) sent: Option<WrittenLength>,
}

/// A hole in hand.
#[derive(Clone, Debug)]
pub(super) struct HoleDrag {
    /// The segment, and which of its holes.
    pub(super) hole: (usize, usize),
    /// Where its middle was when it was taken.
    pub(super) middle: Middle,
    /// How many millimetres the pointer goes for one point: along as drawn, and up.
    pub(super) mm_per_point: [f64; 2],
    /// Where the pointer took it.
    pub(super) pressed: Pos2,
    /// Where it was last asked to be, so that a still hand asks for nothing.
    pub(super) sent: Option<[f64; 2]>,
}

/// What is done once a typed size is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Then {
    /// Back to the boundary, by keyboard.
    Back,
    /// On to the next figure, or to the one before.
    On { back: bool },
    /// Nothing: something else has the keyboard by now.
    Nothing,
}

/// A size that is being typed.
#[derive(Clone, Debug)]
pub(super) struct Entry {
    pub(super) what: What,
    pub(super) text: String,
    /// Why the text is no size.
    pub(super) bad: Option<String>,
    /// It was just opened: its text is not yet selected.
    pub(super) fresh: bool,
    /// It was sent, and the answer is not here yet; what is done then.
    pub(super) sent: Option<Then>,
    /// What stood there before, in mm and in words.
    pub(super) before: (f64, String),
}

/// Which boundary of each bar the keyboard stands at.
#[derive(Clone, Debug, Default)]
pub(super) struct Focus {
    bar: usize,
    forged: usize,
}

/// The thing on a bar that takes the keyboard.
pub(super) fn focus_id(strip: Strip) -> Id {
    Id::unique("canvas keyboard").with(strip)
}

impl Focus {
    /// The boundary of a bar that the keyboard stands at.
    pub(super) fn active(&self, strip: Strip) -> usize {
        match strip {
            Strip::Bar => self.bar,
            Strip::Forged => self.forged,
        }
    }

    /// Stands at a boundary, without taking the keyboard.
    pub(super) fn rest_on(&mut self, spot: Spot) {
        match spot.strip {
            Strip::Bar => self.bar = spot.segment,
            Strip::Forged => self.forged = spot.segment,
        }
    }

    /// Takes the keyboard to a boundary.
    pub(super) fn take(&mut self, ui: &Ui, spot: Spot) {
        self.rest_on(spot);
        ui.memory_mut(|memory| memory.request_focus(focus_id(spot.strip)));
    }
}

/// What became of the last move, in words.
#[derive(Clone, Debug, Default)]
pub(super) struct Feedback {
    pub(super) gave: Option<String>,
    pub(super) refused: Option<String>,
}
