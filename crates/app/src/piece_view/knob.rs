//! Which size of a bend is in hand, and how finely it is written.

use fh_core::plan::Units;
use fh_measure::{LengthRange, WrittenLength};

/// The greatest inside radius that the hand reaches, in mm.
const MOST_RADIUS: f64 = 1e5;

/// Which size of a bend is in hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum Knob {
    /// How far it turns.
    Angle,
    /// Its inside radius; of a scroll the radius of its open end.
    Radius,
}

/// How finely sizes are written: in the plan's unit, to its rounding unless they are free of it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Steps {
    pub(super) units: Units,
    pub(super) free: bool,
}

pub(super) fn write_length(written: &mut Option<WrittenLength>, wish: f64, name: &str, steps: Steps) -> Option<String> {
    let wish = wish.clamp(0.0, MOST_RADIUS);
    let mm = if steps.free { wish } else { steps.units.marks.round(wish).mm() };
    let next = WrittenLength::from_mm(mm, steps.units.length.length_unit(), LengthRange::ZeroOrMore).ok()?;
    let words = format!("{name} {}", next.text());
    *written = Some(next);
    Some(words)
}
