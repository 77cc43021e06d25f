//! The panel beside the order: the chosen step, what one heat does for it, what came out, the rules of heats, or the tools.

use super::{rules, step, tools};
use crate::panels::inspector;
use crate::state::{Desk, OrderAsk, Request, Tab};
use crate::theme::space;
use crate::{heat, log};
use egui::{Button, ScrollArea, Ui};

/// Shows the tabs and what stands under the one that is chosen.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(order) = desk.order else { return };
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = space::TIGHT;
        // Narrow, so that all tabs stand in one row at normal text size.
        ui.spacing_mut().button_padding.x = space::TIGHT + 1.0;
        for tab in Tab::ALL {
            let words = if tab == Tab::Step && order.at.is_none() { "Sizes" } else { tab.name() };
            if ui.add(Button::new(words).selected(order.tab == tab)).clicked() {
                out.push(Request::Order(OrderAsk::Show(tab)));
            }
        }
    });
    ui.add_space(space::TIGHT);
    if order.tab == Tab::Step && order.at.is_none() {
        // The finished bars are shown: their sizes can be changed as ever.
        inspector::show(ui, desk, out);
        return;
    }
    // What is typed and not yet taken belongs to one step of one plan.
    let place = ("order", desk.document.serial(), order.tab.name(), order.at.filter(|_| order.tab.is_of_a_step()));
    ScrollArea::vertical().id_salt(place).auto_shrink([false, false]).show(ui, |ui| {
        ui.push_id(place, |ui| match order.tab {
            Tab::Step => step::show(ui, desk, &order, out),
            Tab::OneHeat => heat::show(ui, desk, &order, out),
            Tab::Log => log::show(ui, desk, &order, out),
            Tab::Heats => rules::show(ui, desk, out),
            Tab::Tools => tools::show(ui, desk, &order, out),
        });
    });
}
