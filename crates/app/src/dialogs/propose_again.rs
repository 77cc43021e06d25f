//! Asks before the smith's own order gives way to the program's.

use super::frame::{Frame, main_button, other_button};
use crate::state::{Desk, OrderAsk, Request};
use crate::theme::space::dialog;
use egui::Context;

/// Shows it.
pub(super) fn show(ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
    Frame { title: "Go back to the program's order?", width: dialog::QUESTION }.show(
        ctx,
        desk,
        out,
        |ui, _| {
            ui.label("Your own order and everything you wrote in its steps will go. Undo brings them back.");
        },
        |ui, out, ()| {
            if main_button(ui, desk.theme, "Go back", true) {
                out.push(Request::Order(OrderAsk::Propose));
            }
            if other_button(ui, "Cancel") {
                out.push(Request::CloseDialog);
            }
        },
    );
}
