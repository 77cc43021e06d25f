//! Shoulders whose sides say otherwise than their sections.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity, is_over};
use crate::metal::{SectionSize, Shape, View};
use crate::plan::Sides;

pub(super) const CHECK: Check = Check {
    ids: &["shoulder-sides"],
    summary: "Shoulders set down on a side where nothing changes, or changing where no side is set down.",
    run,
};

const RULE: Rule = Rule {
    id: "shoulder-sides",
    severity: Severity::Warning,
    reason: "The sides and the sizes of a set-down must agree, or its fillets and its mark come out wrong.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        let Shape::Shoulder { from, to, sides, .. } = seen.shape else { continue };
        let thickness = disagreement(scene, (from, to), View::Side, sides, [0, 180]);
        let width = disagreement(scene, (from, to), View::Top, sides, [90, 270]);
        let nowhere = (from == to).then(|| "has no step: the section is the same on both sides".to_owned());
        if let Some(words) = nowhere.or(thickness).or(width) {
            let message = format!("The shoulder “{}” {words}.", scene.name(seen.at));
            let remedy = "Name the sides that are set down, and give the section that this leaves.";
            found.push(RULE.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
        }
    }
}

/// What does not agree in one of the two directions across the bar.
fn disagreement(
    scene: &Scene<'_>,
    (from, to): (&SectionSize, &SectionSize),
    view: View,
    sides: &Sides,
    [one, other]: [u16; 2],
) -> Option<String> {
    let change = (from.seen_mm(view) - to.seen_mm(view)).abs();
    let size = match view {
        View::Side => "thickness",
        View::Top => "width",
    };
    let named = sides.contains(one) || sides.contains(other);
    match (is_over(change, 0.0), named) {
        (true, false) => {
            let sides = format!("{} nor {}", Sides::name_of(one), Sides::name_of(other));
            Some(format!("changes its {size} by {}, and is set down neither {sides}", scene.millimeters(change)))
        }
        // All sides of a flat set down to a bar as thick is meant where only the width changes.
        (false, true) if *sides != Sides::All => Some(format!("is set down on a side where its {size} stays the same")),
        _ => None,
    }
}
