//! The line over the strips: which bar it is, from where it is seen, and how large.

use crate::commands::Command;
use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use crate::widgets::command_button::bar_button;
use egui::{Align, Layout, RichText, Ui};

/// The width from which the choices of thickness are shown here too, in points at normal text size. They are in the menu
/// in any case.
const WITH_THICKNESS: f32 = 460.0;

/// Shows the line; at its right end what was last said.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, said: &str, out: &mut Vec<Request>) {
    let has_room = ui.available_width() > desk.theme.scaled(WITH_THICKNESS);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = space::TIGHT;
        bar_button(ui, desk, Command::ViewSide, "Side", out);
        bar_button(ui, desk, Command::ViewTop, "Top", out);
        bar_button(ui, desk, Command::ViewBoth, "Both", out);
        ui.add_space(space::GAP);
        bar_button(ui, desk, Command::ZoomOut, "–", out);
        bar_button(ui, desk, Command::ZoomFit, "Fit", out);
        bar_button(ui, desk, Command::ZoomIn, "+", out);
        if has_room {
            ui.add_space(space::GAP);
            ui.label(RichText::new("Thickness").color(desk.theme.ink_quiet));
            bar_button(ui, desk, Command::TrueThickness, "true", out);
            bar_button(ui, desk, Command::DoubleThickness, "× 2", out);
            bar_button(ui, desk, Command::FourfoldThickness, "× 4", out);
        }
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let words = RichText::new(said).text_style(Text::Small.style()).color(desk.theme.ink_quiet);
            ui.add(egui::Label::new(words).truncate());
        });
    });
}
