//! The line over the strips: which bar it is, from where it is seen, and how large.

use crate::state::{Command, Desk, Request};
use crate::theme::{Text, space};
use crate::widgets::command_button::bar_button;
use egui::{Align, Align2, Area, Frame, Id, Layout, Margin, Order, RichText, Ui, vec2};

/// The width from which the choices of thickness are shown here too, in points at normal text size. They are in the menu
/// in any case.
const WITH_THICKNESS: f32 = 460.0;
/// The share of the window's top line that is free in a usual window, and the least width for what was last said.
const FREE_AT_TOP: f32 = 0.38;
const LEAST_SAID: f32 = 300.0;

/// Shows the line; at its right end what was last said.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, said: &str, out: &mut Vec<Request>) {
    let has_room = ui.available_width() > desk.theme.scaled(WITH_THICKNESS);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = space::TIGHT;
        bar_button(ui, desk, Command::ViewSide, "Side", out);
        bar_button(ui, desk, Command::ViewTop, "Top", out);
        bar_button(ui, desk, Command::ViewBoth, "Both", out);
        if desk.hides_a_view {
            let words = RichText::new("one view only").text_style(Text::Small.style()).color(desk.theme.ink_quiet);
            ui.label(words).on_hover_text("Close the piece or the findings to see it from above too.");
        }
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

/// What was last said, at the right end of the line. Where it is too long for that it lies at the top of the window, so that
/// none of it is cut off and nothing moves.
fn said_line(ui: &mut Ui, desk: &Desk<'_>, said: &str) {
    if said.is_empty() {
        return;
    }
    let theme = desk.theme;
    let galley = ui.painter().layout_no_wrap(said.to_owned(), theme.font(Text::Small), theme.ink);
    if galley.size().x <= ui.available_rect_before_wrap().width() {
        let words = RichText::new(said).text_style(Text::Small.style()).color(theme.ink_quiet);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| ui.label(words));
        return;
    }
    float(ui, desk, said);
}

/// Lays what was last said over the free end of the window's top line.
pub(crate) fn float(ui: &Ui, desk: &Desk<'_>, said: &str) {
    if said.is_empty() {
        return;
    }
    let (theme, screen) = (desk.theme, ui.ctx().content_rect());
    let at = screen.right_top() + vec2(-space::PAD, space::GAP);
    let most = (screen.width() * FREE_AT_TOP).max(theme.scaled(LEAST_SAID)).min(screen.width() - 2.0 * space::PAD);
    let area = Area::new(Id::unique("what was last said")).order(Order::Middle).fixed_pos(at);
    area.pivot(Align2::RIGHT_TOP).interactable(false).show(ui.ctx(), |ui| {
        let frame = Frame::new().fill(theme.panel_raised).stroke((space::HAIRLINE, theme.rule));
        frame.corner_radius(space::CORNER).inner_margin(Margin::symmetric(8, 4)).show(ui, |ui| {
            ui.set_max_width((most - 2.0 * space::GAP).max(space::PAD));
            let words = RichText::new(said).text_style(Text::Small.style()).color(theme.ink);
            ui.add(egui::Label::new(words).wrap().selectable(false));
        });
    });
}
