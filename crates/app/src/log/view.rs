//! The whole tab: the step's entry, planned against actual, what is learnt, and the scale.

use super::{against, at_anvil, entry, learnt, scale};
use crate::state::{Desk, OrderDesk, Request};
use crate::widgets::heading;
use egui::{RichText, Ui};

/// Shows the tab.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, out: &mut Vec<Request>) {
    at_anvil::show(ui, desk, order, out);
    entry::show(ui, desk, order, out);
    heading::show(ui, desk.theme, "Planned against actual");
    if desk.document.plan().work.log.is_empty() {
        let words = "Nothing is logged yet. What you write above is shown here beside what was planned.";
        ui.label(RichText::new(words).color(desk.theme.ink_quiet));
    } else {
        ui.scope(|ui| against::show(ui, desk, order));
    }
    learnt::show(ui, desk, order, out);
    scale::show(ui, desk, order, out);
}
