//! Corners whose metal is left standing: whether it is high enough, and whether there is enough of it.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity, is_over, is_under};
use crate::metal::{Standing, in_mm, mm, mm3};

pub(super) const CHECK: Check = Check {
    ids: &["corner-too-low", "corner-short", "corner-dressed"],
    summary: "Corners of metal that is left: too low, too little of it, or more than the corner takes.",
    run,
};

const TOO_LOW: Rule = Rule {
    id: "corner-too-low",
    severity: Severity::Warning,
    reason: "The bar must be as high there as the corner is deep from its inside to its outside edge, or the edge stays round.",
};

const SHORT: Rule = Rule {
    id: "corner-short",
    severity: Severity::Warning,
    reason: "Metal that is not left between the set-downs is missing at the outside of the corner.",
};

const DRESSED: Rule = Rule {
    id: "corner-dressed",
    severity: Severity::Note,
    reason: "What is left beyond what the corner takes has to be driven back or dressed away.",
};

/// More than this share beyond what the corner takes is worth a word.
const MUCH: f64 = 0.02;

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        let Some(standing) = &seen.balance.standing else { continue };
        let (name, place) = (scene.name(seen.at), scene.place(Some(seen.at)));
        let [needed, left] = [standing.needed(), standing.volume()].map(|volume| (volume / mm3(1.0)).value);
        if is_over(in_mm(standing.too_low()), 0.0) {
            let message = format!(
                "The bar is {} high where “{name}” is left; the corner is {} deep: {} too low.",
                scene.length(standing.height),
                scene.length(standing.depth()),
                scene.length(standing.too_low())
            );
            found.push(TOO_LOW.at(place, message, higher(scene, standing)));
        }
        if is_under(left, needed) && standing.base.is_some() && in_mm(standing.height - standing.corner.thickness) > 0.0
        {
            let least = Standing { base: None, ..*standing }.set_downs().map_or(mm(0.0), |found| found.base);
            let message = format!(
                "Between its set-downs “{name}” keeps {left:.0} mm³; the corner takes {needed:.0} mm³ beyond a plain bend.",
            );
            let remedy = format!("Set down {} apart, foot to foot, or more.", scene.millimeters_or_more(in_mm(least)));
            found.push(SHORT.at(place, message, remedy));
        } else if left > needed * (1.0 + MUCH) {
            let message = format!(
                "Between its set-downs “{name}” keeps {left:.0} mm³; the corner takes {needed:.0} mm³: {:.0} mm³ are dressed away.",
                left - needed
            );
            let remedy = "Set down closer together, or leave it and dress the corner.";
            found.push(DRESSED.at(place, message, remedy.to_owned()));
        }
    }
}

/// What makes the height enough, each with its figure.
fn higher(scene: &Scene<'_>, standing: &Standing) -> String {
    let round = scene.millimeters_or_more(in_mm(standing.outside_left_round()));
    let radius = standing.largest_inside_radius().filter(|_| in_mm(standing.corner.inside_radius) > 0.0);
    let radius =
        radius.map(|radius| format!("an inside radius of {} at most", scene.millimeters_or_less(in_mm(radius))));
    let degrees = (standing.largest_turn().to_degrees() - 1e-6).floor();
    let angle = (degrees > 0.0).then(|| format!("{degrees:.0}° at most"));
    let legs = standing.thickest_legs();
    let legs = legs.map(|legs| format!("legs {} thick at most", scene.millimeters_or_less(in_mm(legs))));
    let bar = format!("a bar {} high", scene.millimeters_or_more(in_mm(standing.depth())));
    let ways: Vec<_> = [radius, angle, legs, Some(bar)].into_iter().flatten().collect();
    format!("Give it {}; or upset the rest, or leave the outside round at {round}.", ways.join(", or "))
}
