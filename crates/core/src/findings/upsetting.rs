//! Upsetting: a free length that buckles, or that asks for stages.

use super::scene::{Rule, Scene, Seen};
use super::{Check, Finding, Severity};
use crate::metal::{View, in_mm};
use crate::plan::{Form, Limits};

pub(super) const CHECK: Check = Check {
    ids: &["upset-likely-to-buckle", "upset-buckles", "upset-in-stages"],
    summary: "Upsets whose free length buckles, or that shorten the bar so far that they ask for stages.",
    run,
};

const REASON: &str = "A long thin length folds under the hammer instead of thickening.";

const REMEDY: &str = "Heat a short length at a time and straighten between blows, take a heavier bar and draw the rest \
                      down, or weld on the mass.";

const LIKELY: Rule = Rule { id: "upset-likely-to-buckle", severity: Severity::Note, reason: REASON };

/// 3 diameters in one blow: Forging Industry Association, design rules for upset forgings, rule 1.
const SURE: Rule = Rule { id: "upset-buckles", severity: Severity::Warning, reason: REASON };

const STAGES: Rule = Rule {
    id: "upset-in-stages",
    severity: Severity::Warning,
    reason: "So much metal does not gather in one place at once.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let limits = &scene.plan.limits;
    let stock = &scene.balance.stock;
    let thickness = stock.seen_mm(View::Side).min(stock.seen_mm(View::Top));
    for seen in scene.segments().filter(|seen| is_upset(scene, seen)) {
        let bar = in_mm(seen.balance.stock_length);
        let free = bar / thickness;
        let shortened = bar / in_mm(seen.balance.forged_length);
        let place = scene.place(Some(seen.at));
        let seen_words = format!(
            "“{}” is upset from {} of bar, {free:.1} times the bar's thickness",
            scene.name(seen.at),
            scene.millimeters(bar)
        );
        let (likely, sure) =
            (limits.upset_likely.unwrap_or(Limits::UPSET_LIKELY), limits.upset_sure.unwrap_or(Limits::UPSET_SURE));
        if free > sure {
            let message = format!("{seen_words}: over {sure} it buckles.");
            found.push(SURE.at(place, message, REMEDY.to_owned()));
        } else if free > likely {
            let message = format!("{seen_words}: over {likely} it is likely to buckle.");
            found.push(LIKELY.at(place, message, REMEDY.to_owned()));
        }
        let stage = limits.upset_stage.unwrap_or(Limits::UPSET_STAGE);
        if shortened > stage {
            let message =
                format!("“{}” is shortened {shortened:.1} times; over {stage} asks for stages.", scene.name(seen.at));
            let remedy = "Upset in stages and true it up between them, or weld on the mass.";
            found.push(STAGES.at(place, message, remedy.to_owned()));
        }
    }
}

/// Whether the metal is gathered: a form larger both ways than the stock.
fn is_upset(scene: &Scene<'_>, seen: &Seen<'_>) -> bool {
    let gathers = matches!(
        seen.segment.form,
        Form::Drawn { .. } | Form::Taper { .. } | Form::Peak { .. } | Form::Ball { .. } | Form::Cube { .. }
    );
    gathers && seen.balance.stock_length > seen.balance.forged_length * 1.000_001 && {
        let stock = scene.balance.stock_area;
        stock < seen.balance.area_at(0.5)
    }
}
