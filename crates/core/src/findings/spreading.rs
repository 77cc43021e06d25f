//! Spreading: a section larger than the stock one way and not the other.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity, is_over};
use crate::metal::{SectionSize, View, growth_asked};
use fh_heat::growth::Growth;

pub(super) const CHECK: Check = Check {
    ids: &["spread-not-drawn", "spread-in-doubt", "larger-than-stock"],
    summary: "Sections larger than the stock: one way is spreading, both ways is upsetting.",
    run,
};

const SPREAD: Rule = Rule {
    id: "spread-not-drawn",
    severity: Severity::Note,
    reason: "Flat tools put at most 73 % of what they take off one size into the other; only the peen, or a fuller along the bar, moves more.",
};

const IN_DOUBT: Rule = Rule { id: "spread-in-doubt", severity: Severity::Note, reason: SPREAD.reason };

const LARGER: Rule = Rule {
    id: "larger-than-stock",
    severity: Severity::Note,
    reason: "Metal larger both ways than the bar has to be upset, which is slow and may buckle.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        found.extend(seen.shape.sections().find_map(|section| against_stock(scene, seen.at, section)));
    }
}

fn against_stock(scene: &Scene<'_>, at: usize, size: &SectionSize) -> Option<Finding> {
    let stock = &scene.balance.stock;
    let larger = |view: View| is_over(size.seen_mm(view), stock.seen_mm(view));
    let (wide, thick) = (larger(View::Top), larger(View::Side));
    // Larger both ways with no more metal is the stock's section turned, as a diamond of it is.
    let gathers = is_over((size.area() / scene.balance.stock_area).value, 1.0);
    if !wide && !thick || wide && thick && !gathers {
        return None;
    }
    let [own_width, width] = scene.apart([size, stock].map(|of| of.seen_mm(View::Top)));
    let [own_thickness, thickness] = scene.apart([size, stock].map(|of| of.seen_mm(View::Side)));
    let name = scene.name(at);
    let message = format!("“{name}” is {own_width} × {own_thickness}, the stock {width} × {thickness}");
    let place = scene.place(Some(at));
    match (wide, thick) {
        (true, true) => {
            let message = format!("{message}: larger both ways, so it is upset.");
            let remedy = "Upset it, or choose a heavier bar and draw the rest down.";
            Some(LARGER.at(place, message, remedy.to_owned()))
        }
        _ => {
            let way = if wide { "wider" } else { "thicker" };
            let sizes = |of: &SectionSize| [View::Top, View::Side].map(|view| of.seen_mm(view));
            match growth_asked(sizes(stock), sizes(size)) {
                Growth::StruckBack | Growth::FlatTools => None,
                Growth::Perhaps => {
                    let message = format!("{message}: {way} than the stock, by about the most that flat tools give.");
                    let remedy =
                        "Take bites as long as three times its width, and keep the peen at hand; or start from a flat.";
                    Some(IN_DOUBT.at(place, message, remedy.to_owned()))
                }
                Growth::Spreading => {
                    let message = format!("{message}: {way} than the stock, so it is spread, not drawn.");
                    let remedy = "Spread with the peen or a fuller along the bar, or start from a flat.";
                    Some(SPREAD.at(place, message, remedy.to_owned()))
                }
            }
        }
    }
}
