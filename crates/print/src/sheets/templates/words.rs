//! Sizes and bends in the few words that stand at a template.

use crate::sheets::sizes_in_words::mm_words;
use fh_core::metal::{Bent, HoleSize, Shape, Spiral};
use fh_core::plan::{Plan, PlanUnit};
use std::f64::consts::PI;
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// A size as the smith measures it.
pub(super) fn size_words(unit: PlanUnit, size: Length) -> String {
    mm_words(unit, size.get::<millimeter>())
}

/// A hole's shape and size: `hole Ø 5 mm`.
pub(super) fn hole_words(unit: PlanUnit, hole: &HoleSize) -> String {
    match hole {
        HoleSize::Round { diameter } => format!("hole Ø {}", size_words(unit, *diameter)),
        HoleSize::Square { side } => format!("hole {} square", size_words(unit, *side)),
        HoleSize::Slot { length, width } => {
            format!("slot {} × {}", size_words(unit, *length), size_words(unit, *width))
        }
    }
}

/// An angle in degrees, to a tenth where it is not whole.
pub(super) fn angle_words(radians: f64) -> String {
    let degrees = radians.to_degrees();
    if (degrees - degrees.round()).abs() < 0.05 { format!("{degrees:.0}°") } else { format!("{degrees:.1}°") }
}

/// How a segment is bent: `180° at inside radius 1 in`; none where it is straight.
pub(super) fn bent_words(plan: &Plan, bent: Option<&Bent>, shape: &Shape) -> Option<String> {
    let unit = plan.units.length;
    Some(match bent? {
        Bent::Curve { angle, inside_radius, .. } => {
            format!("{}, inside radius {}", legs_words(*angle), size_words(unit, *inside_radius))
        }
        Bent::Ring { inside_diameter, sweep, .. } => {
            format!("ring Ø {} inside, {} round", size_words(unit, *inside_diameter), angle_words(*sweep))
        }
        Bent::Corner { .. } => {
            let Shape::Peak { corner, .. } = shape else { return None };
            let radius = size_words(unit, corner.inside_radius);
            format!("{}, inside radius {radius}, sharp outside", legs_words(corner.turn))
        }
        Bent::Scroll { spiral, .. } => scroll_words(unit, spiral),
        Bent::Socket { mandrel, sweep, .. } => {
            format!("rolled round Ø {}, {} round", size_words(unit, *mandrel), angle_words(*sweep))
        }
        Bent::Twist { angle } => {
            let turns = round_count(angle.abs() / (2.0 * PI));
            format!("twist, {turns} {}", if turns == "1" { "turn" } else { "turns" })
        }
    })
}

/// How far it turns, and the angle that is left between its legs: what a bevel is set to.
fn legs_words(angle: f64) -> String {
    let turned = angle_words(angle);
    if angle < PI - 1e-3 {
        format!("bent {turned}, {} between the legs", angle_words(PI - angle))
    } else {
        format!("bent {turned}")
    }
}

fn scroll_words(unit: PlanUnit, spiral: &Spiral) -> String {
    let [inner, outer] = [spiral.inner_mm, spiral.outer_mm].map(|mm| mm_words(unit, mm));
    let run = if spiral.opening { "opening" } else { "even" };
    format!("{run} scroll, {} turns, radius {inner} to {outer} to the middle line", round_count(spiral.turns))
}

/// A count without needless figures.
fn round_count(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
