//! Corners in a section that is no rectangle square to the bend: they are reckoned as the rectangle round it.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity};
use crate::metal::{SectionSize, Shape, in_mm};
use std::f64::consts::FRAC_PI_2;

pub(super) const CHECK: Check = Check {
    ids: &["corner-as-box"],
    summary: "Sharp corners in a section that isn't a rectangle square to the bend.",
    run,
};

const RULE: Rule = Rule {
    id: "corner-as-box",
    severity: Severity::Note,
    reason: "A sharp corner fills the rectangle round its section; a round or a turned bar brings less metal to it.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        let Shape::Peak { section, corner } = seen.shape else { continue };
        let quarter_turns = corner.side / FRAC_PI_2;
        let is_square_to_it = (quarter_turns - quarter_turns.round()).abs() < 1e-9;
        let is_rectangle = matches!(section, SectionSize::Square { .. } | SectionSize::Flat { .. });
        if is_rectangle && is_square_to_it {
            continue;
        }
        let message = format!(
            "The corner “{}” is worked out as a bar {} × {}, the rectangle round its section.",
            scene.name(seen.at),
            scene.millimeters(in_mm(corner.width)),
            scene.millimeters(in_mm(corner.thickness))
        );
        let remedy = "Square the bar for the corner, or trust the mark less and leave the peak full.";
        found.push(RULE.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
    }
}
