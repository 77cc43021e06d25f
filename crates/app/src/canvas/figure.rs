//! The figures on the drawing: each can be clicked and typed over.

use super::spot::Spot;
use egui::{Pos2, Rect, pos2};
use fh_core::edit::{Across, HolePlace};
use fh_measure::WrittenLength;

/// What a figure tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum What {
    /// A mark, or a forged length.
    Boundary(Spot),
    /// A size across a segment.
    Across(usize, Across),
    /// A place of a hole of a segment.
    Hole(usize, HolePlace),
}

/// A figure as it is painted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Figure {
    pub(super) what: What,
    /// Where its words are.
    pub(super) rect: Rect,
    /// Where the pointer meets it: more room than the words take.
    pub(super) hit: Rect,
}

impl What {
    /// The segment that it belongs to.
    pub(super) fn segment(self) -> usize {
        match self {
            Self::Boundary(spot) => spot.segment,
            Self::Across(segment, _) | Self::Hole(segment, _) => segment,
        }
    }

    /// The boundary that it tells of.
    pub(super) fn spot(self) -> Option<Spot> {
        match self {
            Self::Boundary(spot) => Some(spot),
            Self::Across(..) | Self::Hole(..) => None,
        }
    }
}

/// A size across the selected part.
#[derive(Clone, Debug)]
pub(super) struct Dimension {
    pub(super) what: (usize, Across),
    pub(super) size: WrittenLength,
    /// Where it is drawn, and the heights of the upper and the lower edge.
    pub(super) x: f32,
    pub(super) edges: [f32; 2],
    /// Millimetres up for one point.
    pub(super) mm_per_point: f64,
    /// From where to where the part reaches along the screen.
    pub(super) room: [f32; 2],
    /// The figure lies left of the line, where it lies beside it.
    pub(super) is_left: bool,
}

impl Dimension {
    /// The places of its handles: at the upper and at the lower edge.
    pub(super) fn handles(&self) -> [Pos2; 2] {
        self.edges.map(|y| pos2(self.x, y))
    }
}
