//! The whole view, from the answer down to the metal.

use super::shades::Shades;
use super::{answer, band, metal_card, moment, over_time, scale};
use crate::state::{Desk, OrderAsk, OrderDesk, Request, Tab};
use crate::theme::Text;
use crate::widgets::{heading, row};
use egui::{RichText, Ui};
use fh_core::plan::Plan;

/// Shows the view.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, out: &mut Vec<Request>) {
    let plan = desk.document.plan();
    let metal = plan.material();
    if let Some(one) = order.one_heat {
        answer::show(ui, desk, order, one, metal);
        heading::show(ui, desk.theme, "Along the bar");
        let shades = Shades::new(desk.theme, one.start_celsius);
        let seconds = moment::show(ui, desk.theme, moment::last(one));
        band::show(ui, desk, one, metal, seconds, &shades);
        scale::show(ui, desk.theme, one, &shades);
        heading::show(ui, desk.theme, "Over time");
        over_time::show(ui, desk, one, seconds);
    } else {
        answer::show_none(ui, desk, order, metal.forging.is_some());
    }
    crate::log::show_passes(ui, desk, order);
    reckoned_with(ui, desk, plan, out);
    metal_card::show(ui, desk.theme, metal);
}

/// What the answer rests on, and the way to change it.
fn reckoned_with(ui: &mut Ui, desk: &Desk<'_>, plan: &Plan, out: &mut Vec<Request>) {
    let hammer = plan.work.heats.hammer.unwrap_or_default();
    heading::show(ui, desk.theme, "Worked out with");
    row::fact(ui, desk.theme, "Hammer", &format!("{} kg, {}", hammer.kg, hammer.by.name()));
    let fire = plan.work.heats.fire_celsius;
    let fire = fire.map_or_else(|| "usual for the metal".to_owned(), |celsius| format!("{celsius:.0} °C"));
    row::fact(ui, desk.theme, "Fire", &fire);
    for (own, what) in [(plan.work.heats.minutes, "minutes of work"), (plan.work.heats.pace, "pace")] {
        if own.is_some() {
            let words = format!("Your own {what} in the heat rules replaces what is worked out.");
            ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
        }
    }
    if ui.button("Change hammer and fire").on_hover_text("Show the rules of heats.").clicked() {
        out.push(Request::Order(OrderAsk::Show(Tab::Heats)));
    }
}
