//! Sizes of sections that contradict themselves: a half-round too high, edges eased over half a side.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity, is_over};
use crate::metal::{SectionSize, in_mm};

pub(super) const CHECK: Check = Check {
    ids: &["half-round-too-high", "eased-too-far"],
    summary: "Half-rounds higher than half their width, and edges eased over half a side.",
    run,
};

const TOO_HIGH: Rule = Rule {
    id: "half-round-too-high",
    severity: Severity::Warning,
    reason: "Beyond a half circle the arc bulges wider than the flat side, and no half-round swage makes it.",
};

const EASED: Rule = Rule {
    id: "eased-too-far",
    severity: Severity::Warning,
    reason: "Edges cannot be eased by more than half the side; it is worked out as if they were eased by that half.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    found.extend(contradiction(scene, &scene.balance.stock, None));
    for seen in scene.segments() {
        // What is as stock was told of the stock.
        let own = seen.shape.sections().filter(|section| **section != scene.balance.stock);
        found.extend(own.filter_map(|section| contradiction(scene, section, Some(seen.at))).next());
    }
}

fn contradiction(scene: &Scene<'_>, section: &SectionSize, at: Option<usize>) -> Option<Finding> {
    let name = || at.map_or_else(|| "The stock".to_owned(), |at| format!("“{}”", scene.name(at)));
    let (side, edge_radius) = match *section {
        SectionSize::HalfRound { width, height } => return too_high(scene, &name(), in_mm(width), in_mm(height), at),
        SectionSize::Square { side, edge_radius } => (in_mm(side), in_mm(edge_radius)),
        SectionSize::Flat { width, thickness, edge_radius } => (in_mm(width.min(thickness)), in_mm(edge_radius)),
        _ => return None,
    };
    is_over(edge_radius, side / 2.0).then(|| {
        let (side, radius) = (scene.millimeters(side), scene.millimeters(edge_radius));
        let message = format!("{} has edges eased by {radius} on a side of {side}.", name());
        EASED.at(scene.place(at), message, "Ease the edges by half the side or less, or choose a round.".to_owned())
    })
}

fn too_high(scene: &Scene<'_>, name: &str, width: f64, height: f64, at: Option<usize>) -> Option<Finding> {
    is_over(height, width / 2.0).then(|| {
        let message = format!(
            "{name} is a half-round {} wide and {} high, over half its width.",
            scene.millimeters(width),
            scene.millimeters(height)
        );
        let remedy = format!("Make it {} high or less, or choose an oval.", scene.millimeters(width / 2.0));
        TOO_HIGH.at(scene.place(at), message, remedy)
    })
}
