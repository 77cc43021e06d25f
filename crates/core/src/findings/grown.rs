//! Sections that are left as they grow: what they grow to, how far that can be off, and where nothing grows.

use super::scene::{Rule, Scene, Seen};
use super::{Check, Finding, Severity};
use crate::balance::Grown;
use crate::metal::in_mm;

pub(super) const CHECK: Check = Check {
    ids: &["nothing-grows", "as-it-grows"],
    summary: "Sections that are left as they grow, with how far that can be off.",
    run,
};

const NOTHING: Rule = Rule {
    id: "nothing-grows",
    severity: Severity::Warning,
    reason: "Only what is struck down makes the other size grow.",
};

const GROWS: Rule = Rule {
    id: "as-it-grows",
    severity: Severity::Note,
    reason: "How much goes into width depends on the bite, and is known to a tenth of what is struck down.",
};

/// More than so many times as high as wide under the hammer was not measured, nor a bite outside of these shares of the width.
const TALL: f64 = 2.0;
const BITES: [f64; 2] = [0.3, 3.0];

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        let Some(grown) = &seen.balance.grown else { continue };
        found.push(match grown.size {
            Some(_) => grows(scene, &seen, grown),
            None => nothing(scene, &seen, grown),
        });
    }
}

fn nothing(scene: &Scene<'_>, seen: &Seen<'_>, grown: &Grown) -> Finding {
    let message = format!(
        "“{}” is struck to {}, but the bar is {} there: nothing grows.",
        scene.name(seen.at),
        scene.length(grown.struck_to),
        scene.length(grown.before[1])
    );
    let remedy = format!("Strike it to less than {}, or give its size.", scene.length(grown.before[1]));
    NOTHING.at(scene.place(Some(seen.at)), message, remedy)
}

fn grows(scene: &Scene<'_>, seen: &Seen<'_>, grown: &Grown) -> Finding {
    let [low, likely, high] = grown.size.unwrap_or_default().map(|size| scene.length(size));
    let way = if grown.is_width { "wide" } else { "thick" };
    let [width, height] = grown.before.map(in_mm);
    let bite = in_mm(grown.bite) / width;
    let outside = height > TALL * width || !(BITES[0]..=BITES[1]).contains(&bite);
    let beyond = if outside { " That is outside of what was measured." } else { "" };
    let name = scene.name(seen.at);
    let message = format!("“{name}” grows to about {likely} {way}, {low} to {high}.{beyond}");
    let remedy = "Measure it before you make what has to fit it, or true it to a size of your own.";
    GROWS.at(scene.place(Some(seen.at)), message, remedy.to_owned())
}
