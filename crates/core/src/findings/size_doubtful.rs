//! Sizes that no smith means: a slip of the unit, a point too many or too few.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity};
use fh_measure::WrittenLength;

pub(super) const CHECK: Check = Check {
    ids: &["size-doubtful"],
    summary: "Whether a size is as small or as large as nothing in a smithy is.",
    run,
};

const RULE: Rule = Rule {
    id: "size-doubtful",
    severity: Severity::Warning,
    reason: "Nothing in a smithy is this small or this large.",
};

/// Thinner than any foil that is hammered, in mm: common practice, no source.
const LEAST_MM: f64 = 0.01;
/// Longer than any bar that is drawn out by hand, in mm: common practice, no source.
const MOST_MM: f64 = 100_000.0;

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    // What lies in the branches of a split is looked at there.
    for (at, segment) in scene.written().filter(|(_, segment)| segment.form.branches().is_empty()) {
        let mut doubtful = None;
        segment.lengths(&mut |length| note(&mut doubtful, length));
        if let Some(text) = doubtful {
            tell(scene, Some(at), format!("“{}”", scene.name(at)), &text, found);
        }
    }
    if scene.is_bar() {
        let mut doubtful = None;
        scene.bar.stock.lengths(&mut |length| note(&mut doubtful, length));
        scene.bar.length.iter().for_each(|length| note(&mut doubtful, length));
        if let Some(text) = doubtful {
            tell(scene, None, "The bar".to_owned(), &text, found);
        }
    }
}

/// Keeps the first size that cannot be meant. Nothing at all is told elsewhere, where it matters.
fn note(doubtful: &mut Option<String>, length: &WrittenLength) {
    let mm = length.mm();
    if doubtful.is_none() && mm > 0.0 && !(LEAST_MM..=MOST_MM).contains(&mm) {
        *doubtful = Some(length.text().to_owned());
    }
}

fn tell(scene: &Scene<'_>, at: Option<usize>, what: String, text: &str, found: &mut Vec<Finding>) {
    let message = format!("{what} has a size of {text}.");
    found.push(RULE.at(scene.place(at), message, "Look at its unit and its point.".to_owned()));
}
