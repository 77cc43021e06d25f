//! The passes of a step: the section after each, the bite, and where the formula ends.

use crate::state::{Desk, OrderDesk};
use crate::theme::{Text, space};
use crate::widgets::{heading, row};
use egui::{RichText, Ui};
use fh_core::plan::{Plan, PlanUnit};
use fh_measure::format_decimal;

/// So many passes are written one by one; of more, the first ones and the last.
const MOST: usize = 10;

/// Shows the passes; nothing where nothing is drawn or spread between flat faces.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>) {
    let Some(passes) = order.ledger.passes() else { return };
    let (theme, plan) = (desk.theme, desk.document.plan());
    heading::show(ui, theme, "Pass by pass");
    let bite = if passes.spreads { "Bite of the peen" } else { "Best bite" };
    row::fact(ui, theme, bite, &length(plan, passes.bite_mm));
    let last = passes.after.len();
    for (at, [height, width, longer]) in passes.after.iter().enumerate() {
        if last > MOST && (MOST - 1..last - 1).contains(&at) {
            if at == MOST - 1 {
                row::fact(ui, theme, "…", "");
            }
            continue;
        }
        let size = format!("{} × {}", number(plan, *height), length(plan, *width));
        row::fact(ui, theme, &format!("Pass {}", at + 1), &format!("{size}, {longer:.2} times longer"));
    }
    for doubt in &passes.doubts {
        ui.label(RichText::new(format!("▲ {doubt}")).text_style(Text::Small.style()).color(theme.ink));
    }
    let about = "Height × width, hot bar turned after each pass, by the formula for flat dies.";
    let about = if passes.spreads { "Height × width, by the formula for flat dies." } else { about };
    ui.label(RichText::new(about).text_style(Text::Small.style()).color(theme.ink_quiet));
    ui.add_space(space::TIGHT);
}

fn decimals(plan: &Plan) -> usize {
    if plan.units.length == PlanUnit::Inch { 2 } else { 1 }
}

fn length(plan: &Plan, mm: f64) -> String {
    format_decimal(mm, plan.units.length.length_unit(), decimals(plan))
}

/// A length without its unit.
fn number(plan: &Plan, mm: f64) -> String {
    let words = length(plan, mm);
    words.split(' ').next().unwrap_or_default().trim_end_matches(['"', '″']).to_owned()
}
