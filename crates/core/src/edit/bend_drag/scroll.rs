//! What a scroll dragged by hand writes: its turns or its outer radius, whichever is written.

use super::knob::Knob;
use super::write::{MOST_RADIUS, Steps, Written};
use crate::metal::Spiral;
use crate::plan::{Bend, SizeName};
use std::f64::consts::TAU;

/// The turns that the hand reaches.
const TURNS: [f64; 2] = [0.1, 8.0];

/// Writes what makes a scroll turn so far (in radians), or open to such a radius (in mm).
pub(super) fn written(
    bend: &mut Bend,
    now: &Spiral,
    length_mm: f64,
    knob: Knob,
    wish: f64,
    steps: Steps,
) -> Option<Written> {
    let Bend::Scroll { outer_radius, turns, .. } = bend else { return None };
    let (by_turns, wish) = match (knob, &turns, &outer_radius) {
        (Knob::Angle, Some(_), _) => (true, wish / TAU),
        (Knob::Radius, _, Some(_)) => (false, wish.max(now.inner_mm)),
        (Knob::Angle, None, Some(_)) => {
            let wanted = (wish / TAU).clamp(TURNS[0], TURNS[1]);
            let line = |outer_mm: f64| Spiral { outer_mm, turns: wanted, ..*now }.length_mm();
            (false, found(line, length_mm, [now.inner_mm, MOST_RADIUS])?)
        }
        (Knob::Radius, Some(_), None) => {
            let wanted = wish.max(now.inner_mm);
            let line = |turns: f64| Spiral { outer_mm: wanted, turns, ..*now }.length_mm();
            (true, found(line, length_mm, TURNS)?)
        }
        _ => return None,
    };
    if by_turns {
        let next = even_turns(wish, steps);
        *turns = Some(next);
        return Some((SizeName::Turns, next.to_string()));
    }
    Some((SizeName::OuterRadius, outer_radius.insert(steps.length(wish)?).text().to_owned()))
}

/// Turns in even steps, free of the traces of a step that no binary number is.
fn even_turns(wish: f64, steps: Steps) -> f64 {
    let step = steps.turns();
    let turns = (wish.clamp(TURNS[0], TURNS[1]) / step).round() * step;
    (turns * 1000.0).round() / 1000.0
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
