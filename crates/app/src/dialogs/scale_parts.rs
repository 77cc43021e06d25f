//! The dialog that asks how many times as large the selected parts are to be.

use super::frame::{Frame, main_button, other_button};
use super::motif_scale::read_factor;
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::entry::select_on_focus;
use egui::{Context, RichText, TextEdit};

/// A scale being typed.
pub(crate) struct ScaleParts {
    text: String,
    count: usize,
    /// Whether the field has had the keyboard; it has it first.
    met: bool,
}

impl ScaleParts {
    /// For so many parts.
    pub(crate) fn new(count: usize) -> Self {
        Self { text: "1".to_owned(), count, met: false }
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let title = if self.count > 1 { format!("Scale {} parts", self.count) } else { "Scale this part".to_owned() };
        Frame { title: &title, width: dialog::QUESTION }.show(
            ctx,
            desk,
            out,
            |ui, _| {
                let label = ui.label("How many times as large?");
                let output = TextEdit::singleline(&mut self.text).desired_width(desk.theme.scaled(120.0)).show(ui);
                if !std::mem::replace(&mut self.met, true) {
                    output.response.response.request_focus();
                }
                select_on_focus(ui, &output, &self.text);
                output.response.response.labelled_by(label.id);
                ui.add_space(space::GAP);
                let words = "Every length in it is multiplied: lengths, sections, radii, holes. Angles and turns stay.";
                ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
                let factor = read_factor(&self.text);
                if let Err(why) = &factor {
                    ui.label(RichText::new(format!("■ {why}")).color(desk.theme.stop));
                }
                factor.ok()
            },
            |ui, out, factor| {
                if main_button(ui, desk.theme, "Scale", factor.is_some())
                    && let Some(factor) = factor
                {
                    out.push(Request::ScaleParts(factor));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}
