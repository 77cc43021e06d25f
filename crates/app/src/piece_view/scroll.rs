//! What a scroll dragged by hand writes: its turns or its outer radius, whichever is written.

use super::knob::{Knob, Steps, write_length};
use fh_core::metal::Spiral;
use fh_core::plan::Bend;
use std::f64::consts::TAU;

/// The turns that the hand reaches.
const TURNS: [f64; 2] = [0.1, 8.0];
/// The steps of turns: usually, and while they are free.
const STEP: f64 = 0.05;
const FREE_STEP: f64 = 0.01;
/// The greatest radius that is looked for, in mm.
const MOST_RADIUS: f64 = 1e5;

/// The steps that turns are written in.
pub(super) fn turn_step(steps: Steps) -> f64 {
    if steps.free { FREE_STEP } else { STEP }
}

/// Writes what makes a scroll turn so far (in radians), or open to such a radius (in mm); what was written in words.
pub(super) fn drag(
    bend: &mut Bend,
    now: &Spiral,
    length_mm: f64,
    knob: Knob,
    wish: f64,
    steps: Steps,
) -> Option<String> {
    let Bend::Scroll { outer_radius, turns, .. } = bend else { return None };
    match (knob, &turns, &outer_radius) {
        (Knob::Angle, Some(_), _) => Some(write_turns(turns, wish / TAU, steps)),
        (Knob::Radius, _, Some(_)) => write_length(outer_radius, wish.max(now.inner_mm), "outer radius", steps),
        (Knob::Angle, None, Some(_)) => {
            let wanted = (wish / TAU).clamp(TURNS[0], TURNS[1]);
            let line = |outer_mm: f64| Spiral { outer_mm, turns: wanted, ..*now }.length_mm();
            let outer = found(line, length_mm, [now.inner_mm, MOST_RADIUS])?;
            Some(format!("{}; the turns follow", write_length(outer_radius, outer, "outer radius", steps)?))
        }
        (Knob::Radius, Some(_), None) => {
            let wanted = wish.max(now.inner_mm);
            let line = |turns: f64| Spiral { outer_mm: wanted, turns, ..*now }.length_mm();
            let next = found(line, length_mm, TURNS)?;
            Some(format!("{}; the outer radius follows", write_turns(turns, next, steps)))
        }
        _ => None,
    }
}

fn write_turns(written: &mut Option<f64>, wish: f64, steps: Steps) -> String {
    let step = turn_step(steps);
    let turns = (wish.clamp(TURNS[0], TURNS[1]) / step).round() * step;
    // Free of the traces of a step that no binary number is.
    let turns = (turns * 1000.0).round() / 1000.0;
    *written = Some(turns);
    format!("{turns} turns")
}

/// Where a growing length reaches a wanted one, by halving.
fn found(length: impl Fn(f64) -> f64, wanted: f64, [mut low, mut high]: [f64; 2]) -> Option<f64> {
    for _ in 0..80 {
        let middle = f64::midpoint(low, high);
        if length(middle) < wanted { low = middle } else { high = middle }
    }
    let middle = f64::midpoint(low, high);
    middle.is_finite().then_some(middle)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use fh_core::plan::{PlanUnit, ScrollEye, ScrollRun, Units};
    use fh_measure::{LengthRange, Rounding, WrittenLength};

    const STEPS: Steps =
        Steps { units: Units { length: PlanUnit::Millimeter, marks: Rounding::MILLIMETER }, free: false };
    const LINE: Spiral = Spiral { inner_mm: 8.0, outer_mm: 40.0, turns: 1.5, opening: false };

    fn scroll(outer: bool, turns: bool) -> Bend {
        let radius = |text: &str| WrittenLength::parse(text, None, LengthRange::ZeroOrMore).ok();
        Bend::Scroll {
            inner_radius: radius("8 mm"),
            outer_radius: outer.then(|| radius("40 mm")).flatten(),
            turns: turns.then_some(1.5),
            run: ScrollRun::Even,
            eye: ScrollEye::End,
            side: None,
        }
    }

    fn written(bend: &Bend) -> (Option<String>, Option<f64>) {
        match bend {
            Bend::Scroll { outer_radius, turns, .. } => (outer_radius.as_ref().map(|r| r.text().to_owned()), *turns),
            _ => (None, None),
        }
    }

    #[test]
    fn written_sizes_are_written_anew() {
        let mut bend = scroll(true, true);
        drag(&mut bend, &LINE, LINE.length_mm(), Knob::Angle, 1.77 * TAU, STEPS).unwrap();
        drag(&mut bend, &LINE, LINE.length_mm(), Knob::Radius, 44.4, STEPS).unwrap();
        assert_eq!(written(&bend), (Some("44 mm".to_owned()), Some(1.75)));
    }

    #[test]
    fn what_follows_stays_unwritten() {
        let mut bend = scroll(true, false);
        let words = drag(&mut bend, &LINE, LINE.length_mm(), Knob::Angle, 2.0 * TAU, STEPS).unwrap();
        let (outer, turns) = written(&bend);
        assert_eq!(turns, None, "{words}");
        assert!(outer.is_some_and(|outer| outer != "40 mm"));
        let mut bend = scroll(false, true);
        drag(&mut bend, &LINE, LINE.length_mm(), Knob::Radius, 60.0, STEPS).unwrap();
        let (outer, turns) = written(&bend);
        assert!(outer.is_none() && turns.unwrap() < 1.5);
    }
}
