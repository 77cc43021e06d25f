//! The line over the strips: which bar it is, from where it is seen, and how large.

use crate::commands::Command;
use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use crate::widgets::command_button::bar_button;
use egui::{Align, Align2, Area, Frame, Id, Layout, Margin, Order, Pos2, RichText, Ui, pos2};

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
        said_line(ui, desk, said);
    });
}

/// What was last said, at the right end of the line. Where it is too long for that it lies below the line, over the strips,
/// so that none of it is cut off and nothing moves.
fn said_line(ui: &mut Ui, desk: &Desk<'_>, said: &str) {
    if said.is_empty() {
        return;
    }
    let theme = desk.theme;
    let (room, line) = (ui.available_rect_before_wrap(), ui.max_rect());
    let galley = ui.painter().layout_no_wrap(said.to_owned(), theme.font(Text::Small), theme.ink);
    if galley.size().x <= room.width() {
        let words = RichText::new(said).text_style(Text::Small.style()).color(theme.ink_quiet);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| ui.label(words));
        return;
    }
    float(ui, desk, said, pos2(line.right(), ui.min_rect().bottom() + space::PAD), line.width());
}

/// Lays what was last said over what stands there, with its top right corner at a place.
pub(crate) fn float(ui: &Ui, desk: &Desk<'_>, said: &str, at: Pos2, width: f32) {
    if said.is_empty() {
        return;
    }
    let theme = desk.theme;
    let area = Area::new(Id::unique("what was last said")).order(Order::Middle).fixed_pos(at);
    area.pivot(Align2::RIGHT_TOP).interactable(false).show(ui.ctx(), |ui| {
        let frame = Frame::new().fill(theme.panel_raised).stroke((space::HAIRLINE, theme.rule));
        frame.corner_radius(space::CORNER).inner_margin(Margin::symmetric(8, 4)).show(ui, |ui| {
            ui.set_max_width(width - 2.0 * space::PAD);
            let words = RichText::new(said).text_style(Text::Small.style()).color(theme.ink);
            ui.add(egui::Label::new(words).wrap().selectable(false));
        });
    });
}
