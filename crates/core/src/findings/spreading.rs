//! Spreading: a section larger than the stock one way and not the other.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity};
use crate::metal::{SectionSize, View};

pub(super) const CHECK: Check = Check {
    ids: &["spread-not-drawn", "larger-than-stock"],
    summary: "Sections larger than the stock: one way is spreading, both ways is upsetting.",
    run,
};

const SPREAD: Rule = Rule {
    id: "spread-not-drawn",
    severity: Severity::Note,
    reason: "Drawing out lengthens; only the peen or a fuller along the bar makes it wider.",
};

const LARGER: Rule = Rule {
    id: "larger-than-stock",
    severity: Severity::Note,
    reason: "Metal larger both ways than the bar has to be upset, which is slow and may buckle.",
};

/// Sizes within this share of each other are the same size.
const SAME: f64 = 1.000_001;

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        found.extend(seen.shape.sections().find_map(|section| against_stock(scene, seen.at, section)));
    }
}

fn against_stock(scene: &Scene<'_>, at: usize, size: &SectionSize) -> Option<Finding> {
    let stock = &scene.balance.stock;
    let larger = |view: View| size.seen_mm(view) > stock.seen_mm(view) * SAME;
    let (wide, thick) = (larger(View::Top), larger(View::Side));
    // Larger both ways with no more metal is the stock's section turned, as a diamond of it is.
    let gathers = size.area() > scene.balance.stock_area * SAME;
    if !wide && !thick || wide && thick && !gathers {
        return None;
    }
    let sizes = |of: &SectionSize| {
        format!("{} × {}", scene.millimeters(of.seen_mm(View::Top)), scene.millimeters(of.seen_mm(View::Side)))
    };
    let message = format!("“{}” is {}, the stock {}", scene.name(at), sizes(size), sizes(stock));
    let place = scene.place(Some(at));
    match (wide, thick) {
        (true, true) => {
            let message = format!("{message}: larger both ways, so it is upset.");
            let remedy = "Upset it, or choose a heavier bar and draw the rest down.";
            Some(LARGER.at(place, message, remedy.to_owned()))
        }
        _ => {
            let way = if wide { "wider" } else { "thicker" };
            let message = format!("{message}: {way} than the stock, so it is spread, not drawn.");
            let remedy = "Spread with the peen or a fuller along the bar, or start from a flat.";
            Some(SPREAD.at(place, message, remedy.to_owned()))
        }
    }
}
