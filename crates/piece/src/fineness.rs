//! How finely things are cut into steps.

use fh_core::space::Way;

/// How finely curves are cut into steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quality {
    /// For the screen: a few hundred triangles for a segment.
    Screen,
    /// For paper and files: volumes to 0.1 %.
    Print,
    /// The center lines alone, without any surface.
    Lines,
}

/// The steps of a quality.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Fineness {
    /// The most that a bend turns in one step, in radians: a chord encloses less than its arc by a sixth of its square.
    pub(crate) turn: f64,
    /// The most that a twist turns in one step, in radians.
    pub(crate) twist: f64,
    /// Steps in a full turn of an arc.
    pub(crate) round: usize,
    /// Steps along a run-out.
    pub(crate) runout: usize,
    /// Whether surfaces are made at all.
    pub(crate) surfaces: bool,
}

impl Fineness {
    pub(crate) fn of(quality: Quality) -> Self {
        match quality {
            Quality::Screen | Quality::Lines => {
                Self { turn: 0.2, twist: 0.15, round: 16, runout: 12, surfaces: quality != Quality::Lines }
            }
            Quality::Print => Self { turn: 0.03, twist: 0.03, round: 64, runout: 80, surfaces: true },
        }
    }

    /// Places along a way close enough together for its bend and its twist, in mm, from 0 to its length.
    pub(crate) fn stations_mm(&self, way: &Way) -> Vec<f64> {
        way.stations_mm(self.turn, self.twist)
    }
}
