//! A boundary by its place: the end of a segment, on the starting bar (a mark) or on the forged bar.

use super::event::CanvasEvent;
use super::model::Model;
use super::snap;
use super::strip::Strip;
use crate::state::Gesture;
use fh_core::edit::{BoundaryMove, BoundaryTarget, Edit, Neighbor};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// One boundary.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct Spot {
    pub(super) strip: Strip,
    /// The segment whose end it is.
    pub(super) segment: usize,
}

impl Spot {
    /// Where its segment starts and where it ends, in mm on its own bar.
    pub(super) fn reach(self, model: &Model) -> Option<[f64; 2]> {
        let block = model.blocks.get(self.segment)?;
        Some(match self.strip {
            Strip::Bar => block.to_mark(),
            Strip::Forged => block.forged,
        })
    }

    /// Its name for people and screen readers.
    pub(super) fn name(self, model: &Model) -> String {
        let Some(block) = model.blocks.get(self.segment) else { return String::new() };
        match self.strip {
            Strip::Bar if block.fixed.is_some() => format!("Mark {}, fixed: end of {}", block.path, block.name),
            Strip::Bar => format!("Mark {}: end of {}", block.path, block.name),
            Strip::Forged => format!("Forged end of {}", block.unique_name),
        }
    }

    /// Its size as a smith speaks of it, in mm: a mark from the datum end, or a forged length.
    pub(super) fn size_mm(self, model: &Model) -> Option<f64> {
        let [start, end] = self.reach(model)?;
        Some(if self.strip == Strip::Bar { end } else { end - start })
    }

    /// Where a pull to a place on its bar takes it, in mm; its segment starts at `start`.
    pub(super) fn pulled_to(self, at: f64, start: f64, model: &Model, free: bool) -> Option<f64> {
        Some(match self.strip {
            Strip::Bar => snap::mark_near(at, start, model.marks, free),
            Strip::Forged => snap::end_near(at, start, model.marks, free),
        })
    }

    /// The wish to bring it to a place on its bar, in mm.
    pub(super) fn wish(self, bar: usize, mm: f64, neighbor: Neighbor) -> CanvasEvent {
        let place = Length::new::<millimeter>(mm);
        let to = match self.strip {
            Strip::Bar => BoundaryTarget::Mark(place),
            Strip::Forged => BoundaryTarget::Forged(place),
        };
        let wish = BoundaryMove { bar, segment: self.segment, to, neighbor };
        CanvasEvent::Gesture(Gesture::Drag(Box::new(Edit::MoveBoundary(wish))))
    }

    /// The wish to bring a mark near a place, in mm, so that the size that gives is round.
    pub(super) fn round_wish(self, bar: usize, mm: f64, neighbor: Neighbor) -> CanvasEvent {
        let to = BoundaryTarget::Mark(Length::new::<millimeter>(mm));
        let wish = BoundaryMove { bar, segment: self.segment, to, neighbor };
        CanvasEvent::Gesture(Gesture::Drag(Box::new(Edit::MoveToRound(wish))))
    }

    /// From where to where its segment is drawn, in mm along the drawing.
    pub(super) fn drawn(self, model: &Model) -> Option<[f64; 2]> {
        let block = model.blocks.get(self.segment)?;
        Some(match self.strip {
            Strip::Bar => block.to_mark(),
            Strip::Forged => block.drawn,
        })
    }
}
