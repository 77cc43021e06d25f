//! The piece as the view keeps it: built anew only when the plan has changed.

use super::place::Place;
use super::warnings::warnings;
use crate::state::{Document, Shown};
use fh_piece::raster::Drawn;
use fh_piece::{Line, Piece, Quality};

/// The piece of a plan, ready to be drawn.
#[derive(Default)]
pub(super) struct Model {
    /// Which plan it is of, and which revision.
    built_for: Option<(u64, u64)>,
    /// After which step of the order, where it is not the finished piece.
    built_after: Option<u64>,
    /// A number that changes with the piece.
    pub(super) stamp: u64,
    pub(super) piece: Piece,
    pub(super) drawn: Drawn,
    /// The segment of each solid.
    pub(super) places: Vec<Place>,
    /// What is wrong with how it is put together.
    pub(super) warnings: Vec<String>,
    /// The least and the greatest place along each axis, in mm.
    pub(super) reach: Option<[[f64; 2]; 3]>,
}

impl Model {
    /// Builds the piece where the plan or the step that it is shown after has changed; whether it is another plan.
    pub(super) fn refresh(&mut self, document: &Document, shown: Option<&Shown>) -> bool {
        let now = (document.serial(), document.revision());
        let after = shown.map(|shown| shown.shot);
        if self.built_for == Some(now) && self.built_after == after {
            return false;
        }
        self.built_after = after;
        let is_other = self.built_for.is_none_or(|(serial, _)| serial != now.0);
        self.built_for = Some(now);
        let piece = match shown {
            Some(shown) => fh_piece::hung(&shown.plan, &shown.balance, Quality::Screen),
            None => fh_piece::hung(document.plan(), document.balance(), Quality::Screen),
        };
        // What is in the way during the work is told by the order's findings.
        self.warnings = if shown.is_some() { Vec::new() } else { warnings(document, &piece) };
        self.take(piece);
        is_other
    }

    /// Takes a piece.
    pub(super) fn take(&mut self, piece: Piece) {
        self.stamp += 1;
        self.drawn = Drawn::new(piece.solids.iter().map(|solid| &solid.mesh));
        self.places = piece.solids.iter().map(|solid| (solid.bar, solid.segment)).collect();
        self.piece = piece;
        self.reach = self.measured();
    }

    /// Every corner of its surface.
    pub(super) fn corners(&self) -> impl Iterator<Item = [f64; 3]> {
        self.piece.solids.iter().flat_map(|solid| solid.mesh.points.iter().copied())
    }

    fn measured(&self) -> Option<[[f64; 2]; 3]> {
        let mut reach = [[f64::INFINITY, f64::NEG_INFINITY]; 3];
        for corner in self.corners() {
            for (reach, at) in reach.iter_mut().zip(corner) {
                *reach = [reach[0].min(at), reach[1].max(at)];
            }
        }
        reach.iter().flatten().all(|at| at.is_finite()).then_some(reach)
    }

    /// Whether there is anything to see.
    pub(super) fn is_empty(&self) -> bool {
        self.reach.is_none()
    }

    /// The center line of a segment.
    pub(super) fn line(&self, (bar, segment): Place) -> Option<&Line> {
        self.piece.lines.iter().find(|line| (line.bar, line.segment) == (bar, segment))
    }
}
