//! Swelling: a taper between sections turned to each other, fuller in its middle than at both ends.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity, is_over};
use crate::metal::{Shape, mixed_area};

pub(super) const CHECK: Check =
    Check { ids: &["swells"], summary: "Tapers that are fuller in the middle than at both ends.", run };

const RULE: Rule = Rule {
    id: "swells",
    severity: Severity::Note,
    reason: "Where one end is turned against the other, the middle holds more metal than either end.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        let Shape::Taper { from, to, .. } = seen.shape else { continue };
        // Sections of one kind and way do not swell; they need no mixed area.
        if std::mem::discriminant(from) == std::mem::discriminant(to) && from.is_even() {
            continue;
        }
        let mixed = mixed_area(&from.section(), &to.section());
        let (first, second) = (from.area(), to.area());
        let larger = first.max(second);
        if is_over((mixed / larger).value, 1.0) {
            // (1-f)² A₀ + 2 f (1-f) M + f² A₁ is fullest at f = (M - A₀) / (2 M - A₀ - A₁).
            let fullest = (mixed * mixed - first * second) / (mixed * 2.0 - first - second);
            let message = format!(
                "“{}” comes {:.0} % fuller on the way than at its thick end.",
                scene.name(seen.at),
                (fullest / larger).value * 100.0 - 100.0
            );
            let remedy = "Let it swell, forge it hollow and trust the mark less, or go by way of a round.";
            found.push(RULE.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
        }
    }
}
