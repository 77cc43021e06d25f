//! The dialog that scales the whole piece: so many times as large, or so that it comes to be so wide, deep or high.

use super::frame::{Frame, main_button, other_button};
use super::motif_scale::{factor_words, read_factor};
use super::whole_preview::WholePreview;
use crate::figures;
use crate::state::{Desk, Request, WholeAsk};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::entry::select_on_focus;
use egui::{Context, RichText, TextEdit, Ui};
use fh_core::edit::WholeChange;
use fh_measure::{LengthRange, WrittenLength};
use fh_work::Shop;

/// What it does.
const WORDS: &str = "Every size is multiplied and put on a step of the rule: whole and half millimetres or 16ths of an inch, \
                     finer where that would be off by more than 2 %. The bar comes out in a size that is sold. Angles and \
                     turns stay; what was logged goes, for it was of the other size.";

/// What is typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum By {
    Times,
    /// A size over all: along the bar, away from you, up.
    Size(usize),
}

/// A scale being typed.
pub(crate) struct ScalePiece {
    by: By,
    text: String,
    /// How wide, deep and high the piece is, in mm.
    sizes_mm: Option<[f64; 3]>,
    preview: WholePreview,
    /// Whether the field has had the keyboard; it has it first.
    met: bool,
}

impl ScalePiece {
    /// For a piece that is so wide, deep and high, in mm.
    pub(crate) fn new(sizes_mm: Option<[f64; 3]>, shop: Shop) -> Self {
        Self { by: By::Times, text: "1".to_owned(), sizes_mm, preview: WholePreview::new(shop), met: false }
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "Scale the piece", width: dialog::LIST };
        let contents = |ui: &mut Ui, _: &mut Vec<Request>| self.contents(ui, desk);
        frame.show(ctx, desk, out, contents, |ui, out, change| {
            if main_button(ui, desk.theme, "Scale", change.is_some())
                && let Some(change) = change
            {
                out.push(Request::Whole(WholeAsk::Change(change)));
            }
            if other_button(ui, "Cancel") {
                out.push(Request::CloseDialog);
            }
        });
    }

    fn contents(&mut self, ui: &mut Ui, desk: &Desk<'_>) -> Option<WholeChange> {
        self.choices(ui, desk);
        let name = match self.by {
            By::Times => "How many times as large?",
            By::Size(_) => "How much is it to be?",
        };
        let label = ui.label(name);
        let output = TextEdit::singleline(&mut self.text).desired_width(desk.theme.scaled(160.0)).show(ui);
        let response = &output.response.response;
        if !std::mem::replace(&mut self.met, true) {
            response.request_focus();
        }
        select_on_focus(ui, &output, &self.text);
        output.response.response.labelled_by(label.id);
        ui.label(RichText::new(WORDS).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
        match self.factor(desk) {
            Ok(factor) if (factor - 1.0).abs() < 1e-9 => None,
            Ok(factor) => {
                if self.by != By::Times {
                    ui.label(format!("That is {} times as large.", factor_words(factor)));
                }
                let change = WholeChange::Scaled(factor);
                self.preview.show(ui, desk, &change).then_some(change)
            }
            Err(why) => {
                ui.label(RichText::new(format!("■ {why}")).color(desk.theme.stop));
                None
            }
        }
    }

    /// What is typed: a factor, or one of the sizes over all.
    fn choices(&mut self, ui: &mut Ui, desk: &Desk<'_>) {
        let Some(sizes) = self.sizes_mm else { return };
        let units = desk.document.plan().units;
        let words = |mm: f64| figures::finished(mm, units.length);
        let mut all = vec![(By::Times, "by a number".to_owned(), "1".to_owned())];
        for (axis, name) in ["wide", "deep", "high"].into_iter().enumerate() {
            if sizes[axis] > 0.0 {
                let size = words(sizes[axis]);
                all.push((By::Size(axis), format!("by how {name} it is: {size}"), size));
            }
        }
        for (by, label, text) in all {
            if ui.radio(self.by == by, label).clicked() && self.by != by {
                (self.by, self.text, self.met) = (by, text, false);
            }
        }
        ui.add_space(space::GAP);
    }

    fn factor(&self, desk: &Desk<'_>) -> Result<f64, String> {
        let By::Size(axis) = self.by else { return read_factor(&self.text) };
        let unit = desk.document.plan().units.length.length_unit();
        let typed = WrittenLength::typed(&self.text, unit, LengthRange::AboveZero, None);
        let size = self.sizes_mm.map_or(0.0, |sizes| sizes[axis]);
        match typed {
            Ok(typed) if size > 0.0 => {
                let factor = typed.mm() / size;
                // The size is shown rounded: what was not typed over changes nothing.
                let shown = figures::finished(size, desk.document.plan().units.length);
                Ok(if self.text.trim() == shown { 1.0 } else { factor })
            }
            Ok(_) => Err("the piece has no size to scale by".to_owned()),
            Err(error) => Err(error.to_string()),
        }
    }
}
