//! Half-round: a section higher than half its width, which bulges beyond its flat side.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity};
use crate::metal::{SectionSize, Shape, in_mm};

pub(super) const CHECK: Check =
    Check { ids: &["half-round-too-high"], summary: "Half-rounds higher than half their width.", run };

const RULE: Rule = Rule {
    id: "half-round-too-high",
    severity: Severity::Warning,
    reason: "Beyond a half circle the arc bulges wider than the flat side, and no half-round swage makes it.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    found.extend(too_high(scene, &scene.balance.stock, None));
    for seen in scene.segments() {
        let sections: &[&SectionSize] = match seen.shape {
            Shape::Prism { section, .. } | Shape::Peak { section, .. } | Shape::Shoulder { to: section, .. } => {
                &[section]
            }
            Shape::Taper { from, to, .. } => &[from, to],
            Shape::Flag { .. } | Shape::Ball { .. } | Shape::Cube { .. } => &[],
        };
        // What is as stock was told of the stock.
        let own = sections.iter().filter(|section| ***section != scene.balance.stock);
        found.extend(own.filter_map(|section| too_high(scene, section, Some(seen.at))).next());
    }
}

fn too_high(scene: &Scene<'_>, section: &SectionSize, at: Option<usize>) -> Option<Finding> {
    let SectionSize::HalfRound { width, height } = section else { return None };
    let (width, height) = (in_mm(*width), in_mm(*height));
    (height > width / 2.0 * 1.000_001).then(|| {
        let name = at.map_or_else(|| "The stock".to_owned(), |at| format!("“{}”", scene.name(at)));
        let message = format!(
            "{name} is a half-round {} wide and {} high, over half its width.",
            scene.millimeters(width),
            scene.millimeters(height)
        );
        let remedy = format!("Make it {} high or less, or choose an oval.", scene.millimeters(width / 2.0));
        RULE.at(scene.place(at), message, remedy)
    })
}
