//! The line over the view: whether it is open, from where the piece is seen, and the tools.

use crate::state::{Command, Desk, Request};
use crate::theme::{Text, space};
use crate::widgets::command_button::{bar_button, menu_line};
use egui::{Button, RichText, Ui};

/// The width from which zooming has buttons here too, in points at normal text size. The wheel and the keys do it as well.
const WITH_ZOOM: f32 = 470.0;

/// Shows the line; closed, it is only the word that opens the view.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let open = desk.piece_open;
    let has_room = ui.available_width() > desk.theme.scaled(WITH_ZOOM);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = space::TIGHT;
        let words = if open { "▼ Piece" } else { "▶ Piece" };
        let words = RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet);
        let tip = if open { "Close the view of the piece." } else { "Open the view of the piece." };
        let toggle = ui.add(Button::new(words).frame(false)).on_hover_text(tip);
        if toggle.clicked() {
            out.push(Request::ShowPiece(!open));
        }
        toggle.accessible_name("View of the piece");
        if !open {
            return;
        }
        ui.add_space(space::GAP);
        bar_button(ui, desk, Command::PieceFront, "From you", out);
        bar_button(ui, desk, Command::PieceSide, "From the far end", out);
        bar_button(ui, desk, Command::PieceTop, "From above", out);
        bar_button(ui, desk, Command::PieceTurned, "Turned", out);
        ui.add_space(space::GAP);
        if has_room {
            bar_button(ui, desk, Command::PieceSmaller, "–", out);
        }
        bar_button(ui, desk, Command::PieceFit, "Fit", out);
        if has_room {
            bar_button(ui, desk, Command::PieceLarger, "+", out);
        }
        ui.add_space(space::GAP);
        let hang = ui.menu_button("Hang", |ui| {
            for command in [Command::QuarterTurn, Command::HangAsSeen, Command::HangAsPlanned] {
                menu_line(ui, desk, command, out);
            }
        });
        hang.response.on_hover_text("How the piece hangs or stands, here and on paper.");
        bar_button(ui, desk, Command::Measure, "Measure", out);
        if desk.document.plan().underlay.is_some() {
            bar_button(ui, desk, Command::AdjustPicture, "Picture", out);
        } else {
            bar_button(ui, desk, Command::LayPicture, "Picture…", out);
        }
    });
}
