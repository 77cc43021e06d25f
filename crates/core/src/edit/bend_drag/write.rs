//! How finely a dragged size is written, and how far the hand reaches.

use crate::plan::{SizeName, Units};
use fh_measure::{LengthRange, WrittenAngle, WrittenLength};
use std::f64::consts::TAU;

/// The least and the greatest angle that the hand reaches, in radians: two turns, and for a corner short of folding up.
pub(super) const LEAST_ANGLE: f64 = 1.0 / 360.0 * TAU;
pub(super) const MOST_ANGLE: f64 = 2.0 * TAU;
pub(super) const MOST_CORNER: f64 = 150.0 / 360.0 * TAU;
/// The greatest radius that the hand reaches, in mm.
pub(super) const MOST_RADIUS: f64 = 1e5;
/// The steps of an angle, in degrees: usually, and while it is free.
const DEGREE: f64 = 1.0;
const FREE_DEGREE: f64 = 0.1;
/// The steps of turns: usually, and while they are free.
const TURNS: f64 = 0.05;
const FREE_TURNS: f64 = 0.01;

/// What was written: which size, and its words.
pub(super) type Written = (SizeName, String);

/// How finely sizes are written: in the plan's unit, to its rounding unless they are free of it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Steps {
    pub(super) units: Units,
    pub(super) free: bool,
}

impl Steps {
    /// The steps of an angle, in degrees.
    pub(super) fn degrees(self) -> f64 {
        if self.free { FREE_DEGREE } else { DEGREE }
    }

    /// The steps of turns.
    pub(super) fn turns(self) -> f64 {
        if self.free { FREE_TURNS } else { TURNS }
    }

    /// The steps of a length by the keyboard, in mm.
    pub(super) fn mm(self) -> f64 {
        let step = self.units.marks.step_mm();
        if self.free { step / 4.0 } else { step }
    }

    /// A length of about so many mm, written.
    pub(super) fn length(self, wish: f64) -> Option<WrittenLength> {
        let wish = wish.clamp(0.0, MOST_RADIUS);
        let mm = if self.free { wish } else { self.units.marks.round(wish).mm() };
        WrittenLength::from_mm(mm, self.units.length.length_unit(), LengthRange::ZeroOrMore).ok()
    }

    /// An angle of about so many radians, written, and its words.
    pub(super) fn angle(self, wish: f64, most: f64) -> Option<(WrittenAngle, String)> {
        let step = self.degrees();
        let degrees = (wish.clamp(LEAST_ANGLE, most).to_degrees() / step).round() * step;
        let next = WrittenAngle::from_degrees(degrees).ok()?;
        Some((next, format!("{}°", (degrees * 10.0).round() / 10.0)))
    }
}
