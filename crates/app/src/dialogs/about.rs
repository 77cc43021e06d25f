//! About the program.

use super::frame::{Frame, main_button};
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use egui::{CollapsingHeader, Context, RichText};

/// The licence of the fonts, as it came with them.
const FONT_LICENCE: &str = include_str!("../../../../assets/fonts/OFL.txt");

pub(super) fn show(ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
    Frame { title: "First Heat", width: dialog::FORM }.show(
        ctx,
        desk,
        out,
        |ui, _| {
            ui.label(format!("Version {}", env!("CARGO_PKG_VERSION")));
            ui.label("Plans a hand-forged piece before the first heat: which bar, how long, where the marks go.");
            ui.add_space(space::GAP);
            ui.label("A plan is arithmetic. Wear eye protection, and never forge or heat plated or galvanised stock.");
            ui.add_space(space::GAP);
            ui.label(RichText::new("Fonts").text_style(Text::Heading.style()));
            ui.label("Source Sans 3, under the SIL Open Font License 1.1.");
            CollapsingHeader::new("The licence").show(ui, |ui| {
                ui.label(RichText::new(FONT_LICENCE).text_style(Text::Small.style()));
            });
        },
        |ui, out, ()| {
            if main_button(ui, desk.theme, "Close", true) {
                out.push(Request::CloseDialog);
            }
        },
    );
}
