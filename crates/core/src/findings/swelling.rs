//! Swelling: a taper between sections turned to each other, fuller in its middle than at both ends.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity};
use crate::metal::{Shape, mixed_area};

pub(super) const CHECK: Check =
    Check { ids: &["swells"], summary: "Tapers that are fuller in the middle than at both ends.", run };

const RULE: Rule = Rule {
    id: "swells",
    severity: Severity::Note,
    reason: "Between sections turned to each other straight lines enclose more metal than at either end.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        let Shape::Taper { from, to, .. } = seen.shape else { continue };
        let (first, second) = (from.section(), to.section());
        let mixed = mixed_area(&first, &second);
        let larger = first.area().max(second.area());
        if mixed > larger * 1.000_001 {
            let middle = (first.area() + mixed * 2.0 + second.area()) / 4.0;
            let message = format!(
                "“{}” swells on the way: {:.0} % of its larger end's section in the middle.",
                scene.name(seen.at),
                (middle / larger).value * 100.0
            );
            let remedy = "Let it swell, forge it hollow and trust the mark less, or go by way of a round.";
            found.push(RULE.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
        }
    }
}
