//! Snapping: where a boundary comes to lie that is pulled to somewhere near. Plain numbers in mm.

use fh_core::plan::PlanUnit;
use fh_measure::Rounding;

/// The least length that a pulled boundary leaves, in mm, where it is free.
const LEAST: f64 = 0.01;

/// The mark nearest to a place on the starting bar, after the segment's start.
///
/// It lies on the grid of the marks, counted from the datum end, unless it is free.
pub(super) fn mark_near(at: f64, start: f64, rounding: Rounding, free: bool) -> f64 {
    if free {
        return at.max(start + LEAST);
    }
    let near = rounding.round(at).mm();
    if near > start + LEAST { near } else { above(start, rounding) }
}

/// The forged end nearest to a place on the forged bar, so that the segment's length is on the grid unless it is free.
pub(super) fn end_near(at: f64, start: f64, rounding: Rounding, free: bool) -> f64 {
    if free {
        return at.max(start + LEAST);
    }
    start + rounding.round(at - start).mm().max(rounding.step_mm())
}

/// The next place on the grid up or down from a value; a quarter of a step where it is fine.
pub(super) fn nudged(value: f64, up: bool, rounding: Rounding, fine: bool) -> f64 {
    if fine {
        let step = rounding.step_mm() / 4.0;
        return if up { value + step } else { value - step };
    }
    if up { above(value, rounding) } else { below(value, rounding) }
}

/// The finished size nearest to one in mm, in a step that a smith works to; in finer steps where it is free.
pub(super) fn size_near(mm: f64, unit: PlanUnit, free: bool) -> f64 {
    place_near(mm, unit, free).max(step_mm(unit, free))
}

/// The finished place nearest to one in mm, in the same steps; it may lie on either side of where it is counted from.
pub(super) fn place_near(mm: f64, unit: PlanUnit, free: bool) -> f64 {
    let step = step_mm(unit, free);
    (mm / step).round() * step
}

/// The step that a smith works finished sizes to, in mm; a finer one where it is free. Common practice, no source.
fn step_mm(unit: PlanUnit, free: bool) -> f64 {
    match (unit, free) {
        (PlanUnit::Millimeter, false) => 0.5,
        (PlanUnit::Millimeter, true) => 0.1,
        (PlanUnit::Inch, false) => 25.4 / 32.0,
        (PlanUnit::Inch, true) => 25.4 / 64.0,
    }
}

fn above(value: f64, rounding: Rounding) -> f64 {
    let near = rounding.round(value).mm();
    if near > value + slight(rounding) { near } else { rounding.round(near + rounding.step_mm()).mm() }
}

fn below(value: f64, rounding: Rounding) -> f64 {
    let near = rounding.round(value).mm();
    if near < value - slight(rounding) { near } else { rounding.round(near - rounding.step_mm()).mm() }
}

/// What lies closer to the grid than this lies on it.
fn slight(rounding: Rounding) -> f64 {
    rounding.step_mm() * 1e-3
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "tests")]
mod tests {
    use super::*;

    const SIXTEENTH: Rounding = Rounding::SIXTEENTH_INCH;
    const MM: Rounding = Rounding::MILLIMETER;

    #[test]
    fn a_mark_snaps_to_the_grid_from_the_datum_end() {
        assert_eq!(mark_near(46.4, 3.3, MM, false), 46.0);
        assert!((mark_near(46.4, 3.3, SIXTEENTH, false) - 29.0 / 16.0 * 25.4).abs() < 1e-9);
        assert_eq!(mark_near(46.437, 3.3, MM, true), 46.437);
    }

    #[test]
    fn an_end_snaps_so_that_the_length_is_on_the_grid() {
        assert!((end_near(46.4, 3.3, MM, false) - 46.3).abs() < 1e-9);
        assert_eq!(end_near(46.437, 3.3, MM, true), 46.437);
    }

    #[test]
    fn a_boundary_never_passes_the_start_of_its_segment() {
        assert_eq!(mark_near(-500.0, 12.4, MM, false), 13.0);
        assert_eq!(mark_near(12.0, 12.0, MM, false), 13.0);
        assert!(mark_near(-500.0, 12.4, MM, true) > 12.4);
        assert_eq!(end_near(-500.0, 12.4, MM, false), 13.4);
        assert!(end_near(-500.0, 12.4, MM, true) > 12.4);
    }

    #[test]
    fn a_nudge_goes_to_the_next_line_of_the_grid_and_then_by_steps() {
        assert_eq!(nudged(46.4, true, MM, false), 47.0);
        assert_eq!(nudged(46.6, true, MM, false), 47.0);
        assert_eq!(nudged(47.0, true, MM, false), 48.0);
        assert_eq!(nudged(46.4, false, MM, false), 46.0);
        assert_eq!(nudged(46.6, false, MM, false), 46.0);
        assert_eq!(nudged(46.0, false, MM, false), 45.0);
        assert_eq!(nudged(46.0, true, MM, true), 46.25);
    }

    #[test]
    fn a_size_across_ends_on_a_step_of_the_shop() {
        assert_eq!(size_near(6.3, PlanUnit::Millimeter, false), 6.5);
        assert!((size_near(6.34, PlanUnit::Millimeter, true) - 6.3).abs() < 1e-9);
        assert!((size_near(6.5, PlanUnit::Inch, false) - 25.4 / 4.0).abs() < 1e-9);
        assert_eq!(size_near(-40.0, PlanUnit::Millimeter, false), 0.5);
    }

    #[test]
    fn absurd_places_stay_numbers() {
        for at in [f64::MAX, -f64::MAX, 1e300, 0.0] {
            assert!(mark_near(at, 1.0, SIXTEENTH, false).is_finite());
            assert!(end_near(at, 1.0, SIXTEENTH, false).is_finite());
            assert!(nudged(at, true, SIXTEENTH, false).is_finite());
        }
    }
}
