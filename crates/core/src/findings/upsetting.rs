//! Upsetting: a free length that buckles, or that asks for stages.

use super::scene::{Rule, Scene, Seen, plain, times};
use super::{Check, Finding, Severity, apart, is_over};
use crate::metal::{View, in_mm};
use crate::plan::{Form, Limits};

pub(super) const CHECK: Check = Check {
    ids: &["upset-likely-to-buckle", "upset-buckles", "upset-in-stages"],
    summary: "Upsets whose free length buckles, or that shorten the bar so far that they ask for stages.",
    run,
};

const REASON: &str = "A long thin length folds under the hammer instead of thickening.";

const REMEDY: &str = "Heat a short length at a time and straighten it between blows. Or draw the rest down from a heavier \
                      bar, or weld the mass on.";

const LIKELY: Rule = Rule { id: "upset-likely-to-buckle", severity: Severity::Note, reason: REASON };

/// 3 diameters in one blow: Forging Industry Association, design rules for upset forgings, rule 1.
const SURE: Rule = Rule { id: "upset-buckles", severity: Severity::Warning, reason: REASON };

const STAGES: Rule =
    Rule { id: "upset-in-stages", severity: Severity::Warning, reason: "This much metal will not gather in one go." };

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let limits = &scene.plan.limits;
    let stock = &scene.balance.stock;
    let thickness = stock.seen_mm(View::Side).min(stock.seen_mm(View::Top));
    for seen in scene.segments().filter(|seen| is_upset(scene, seen)) {
        let bar = in_mm(seen.balance.stock_length);
        let free = bar / thickness;
        let shortened = bar / in_mm(seen.balance.forged_length);
        let place = scene.place(Some(seen.at));
        let over = |most: f64, what: &str| {
            let [free, most] = apart([free, most], 1, times);
            let most = plain(&most);
            let (name, bar) = (scene.name(seen.at), scene.millimeters(bar));
            format!("“{name}” is upset from {bar} of bar, {free} times the bar's thickness: over {most} it {what}.")
        };
        let (likely, sure) =
            (limits.upset_likely.unwrap_or(Limits::UPSET_LIKELY), limits.upset_sure.unwrap_or(Limits::UPSET_SURE));
        if is_over(free, sure) {
            found.push(SURE.at(place, over(sure, "buckles"), REMEDY.to_owned()));
        } else if is_over(free, likely) {
            found.push(LIKELY.at(place, over(likely, "is likely to buckle"), REMEDY.to_owned()));
        }
        let stage = limits.upset_stage.unwrap_or(Limits::UPSET_STAGE);
        if is_over(shortened, stage) {
            let [shortened, stage] = apart([shortened, stage], 1, times);
            let stage = plain(&stage);
            let name = scene.name(seen.at);
            let message = format!("“{name}” is shortened {shortened} times; more than {stage} times calls for stages.");
            let remedy = "Upset in stages and true it up between them, or weld on the mass.";
            found.push(STAGES.at(place, message, remedy.to_owned()));
        }
    }
}

/// Whether the metal is gathered: a form larger both ways than the stock.
fn is_upset(scene: &Scene<'_>, seen: &Seen<'_>) -> bool {
    let gathers =
        matches!(seen.segment.form, Form::Drawn(_) | Form::Taper(_) | Form::Peak(_) | Form::Ball(_) | Form::Cube(_));
    // Metal that is left is upset by nobody; where it is too little, that has a finding of its own.
    let gathers = gathers && seen.balance.standing.is_none() && !seen.segment.form.is_driven_up();
    let is_larger = || is_over((seen.balance.area_at(0.5) / scene.balance.stock_area).value, 1.0);
    gathers && is_over(in_mm(seen.balance.stock_length), in_mm(seen.balance.forged_length)) && is_larger()
}
