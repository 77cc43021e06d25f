//! What is to be known of one option: why it is good or bad, and the button that takes it.

use super::moved::moved;
use crate::figures;
use crate::state::{Desk, Request, SteelAsk};
use crate::theme::{Text, space};
use crate::widgets::row::fact;
use crate::widgets::severity_sign::{color, sign};
use egui::{Button, RichText, Ui};
use fh_rack::which::options::{BarOption, Fire};
use uom::si::f64::Mass;
use uom::si::mass::kilogram;

/// Shows it.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let (theme, which) = (desk.theme, &desk.steel.which);
    let Some(option) = which.at().and_then(|at| which.options.get(at)) else { return };
    ui.add_space(space::GAP);
    ui.label(RichText::new(option.section.describe()).text_style(Text::Title.style()).color(theme.ink));
    ui.label(RichText::new(place(option)).color(theme.ink_quiet));
    ui.add_space(space::GAP);
    take_button(ui, desk, option, out);
    ui.add_space(space::GAP);
    let unit = desk.document.plan().units.length;
    let mass = |kg: f64| figures::mass(Mass::new::<kilogram>(kg), unit);
    fact(ui, theme, "Lost to scale and trimming", &mass(option.loss_kg));
    fact(ui, theme, "Drawn out", &moved(desk, option.drawn));
    fact(ui, theme, "Upset", &moved(desk, option.upset));
    if let Some(fire) = option.fire {
        fact(ui, theme, "Work, and waiting for heats", &minutes(fire));
    }
    if let (Some(cost), Some(stock)) = (option.cost, &desk.steel.stock) {
        fact(ui, theme, "Costs, that length", &stock.merchant.now.money().words(cost));
    }
    ui.add_space(space::GAP);
    against(ui, desk, option);
    ui.add_space(space::GAP);
    let hint = "The finished piece stays as it is. Minutes are a first guess: they tell one bar from another.";
    ui.label(RichText::new(hint).text_style(Text::Small.style()).color(theme.ink_quiet));
}

fn minutes(fire: Fire) -> String {
    format!("{:.0} min and {:.0} min", fire.minutes.ceil(), fire.waiting.ceil())
}

fn place(option: &BarOption) -> &'static str {
    match (option.is_own, option.is_on_rack) {
        (true, true) => "The plan's own bar; some is on the rack.",
        (true, false) => "The plan's own bar; none is on the rack.",
        (false, true) => "Some is on the rack.",
        (false, false) => "From the merchant's list.",
    }
}

fn take_button(ui: &mut Ui, desk: &Desk<'_>, option: &BarOption, out: &mut Vec<Request>) {
    let theme = desk.theme;
    let words = RichText::new("Make it from this").text_style(Text::Strong.style()).color(theme.panel_raised);
    let response = ui.add_enabled(!option.is_own, Button::new(words).fill(theme.ink));
    let response = response
        .on_hover_text(
            "The plan takes this bar; what was left as the bar is forged to the section it had. Undo takes it back.",
        )
        .on_disabled_hover_text("The plan has this bar already.");
    if response.clicked() {
        out.push(Request::Steel(SteelAsk::TakeBar(option.alike.clone())));
    }
}

/// What speaks against it, each in a sentence.
fn against(ui: &mut Ui, desk: &Desk<'_>, option: &BarOption) {
    let theme = desk.theme;
    if !option.is_long_enough {
        ui.label(RichText::new("▲ No bar of it is long enough.").color(theme.warning));
    }
    for against in &option.against {
        let words = format!("{} {}", sign(against.severity), against.message);
        ui.label(RichText::new(words).color(color(theme, against.severity)));
    }
    if option.is_long_enough && option.against.is_empty() {
        let words = if option.is_own { "✓ No findings." } else { "✓ No new findings." };
        ui.label(RichText::new(words).color(theme.ink));
    }
}
