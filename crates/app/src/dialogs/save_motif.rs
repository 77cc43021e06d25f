//! The dialog that keeps a run of segments as a motif: from the selected one to another of the same chain, under a name.

use super::frame::{Frame, main_button, other_button};
use crate::figures;
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::{motif_picture, row};
use egui::{ComboBox, Context, RichText, Role, Sense, TextEdit, Ui, WidgetInfo, vec2};
use fh_core::describe::segment_name;
use fh_core::motif::Motif;
use fh_core::plan::{Bar, Chain};
use fh_measure::counted;

/// The height of the picture, in points at normal text size.
const PICTURE: f32 = 84.0;

/// A motif being named.
pub(crate) struct SaveMotif {
    bar: usize,
    chain: Chain,
    first: usize,
    last: usize,
    name: String,
    /// The name that another motif has already.
    taken: Option<String>,
    said: Option<String>,
    /// Whether the name has had the keyboard; it has it first.
    met: bool,
}

impl SaveMotif {
    /// Begins with the segments from one place to another, under a name.
    pub(crate) fn new(bar: usize, chain: Chain, [first, last]: [usize; 2], name: &str) -> Self {
        let name = name.to_owned();
        Self { bar, chain, first, last, name, taken: None, said: None, met: false }
    }

    /// Another motif has this name.
    pub(crate) fn found(&mut self) {
        self.taken = Some(self.name.trim().to_owned());
    }

    /// Says why it was not kept.
    pub(crate) fn say(&mut self, words: String) {
        self.said = Some(words);
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "Keep this part", width: dialog::FORM };
        frame.show(
            ctx,
            desk,
            out,
            |ui, _| self.contents(ui, desk),
            |ui, out, (motif, is_taken)| {
                let words = if is_taken { "Replace it" } else { "Keep it" };
                if main_button(ui, desk.theme, words, motif.is_some())
                    && let Some(motif) = motif
                {
                    out.push(Request::SaveMotif(Box::new(motif), is_taken));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }

    /// What is to be kept, and whether it takes the place of another.
    fn contents(&mut self, ui: &mut Ui, desk: &Desk<'_>) -> (Option<Motif>, bool) {
        let label = ui.label("What is it called?");
        let field = TextEdit::singleline(&mut self.name).desired_width(f32::INFINITY).hint_text("Leaf end");
        let response = ui.add(field).labelled_by(label.id);
        if !std::mem::replace(&mut self.met, true) {
            response.request_focus();
        }
        ui.add_space(space::GAP);
        if let Some(bar) = desk.document.plan().bars.get(self.bar) {
            self.ends(ui, desk, bar);
        }
        let places = self.first..=self.last;
        let motif = Motif::taken(desk.document.plan(), self.bar, self.chain, places, &self.name);
        if let Some(motif) = &motif {
            picture(ui, desk, motif);
        }
        let is_taken = self.taken.as_deref() == Some(self.name.trim());
        let words = if is_taken {
            Some("A part of this name is kept already. Replace it, or choose another name.".to_owned())
        } else {
            self.said.clone()
        };
        if let Some(words) = words {
            ui.label(RichText::new(format!("■ {words}")).color(desk.theme.stop));
        }
        (motif.filter(|motif| !motif.name.is_empty()), is_taken)
    }

    fn ends(&mut self, ui: &mut Ui, desk: &Desk<'_>, bar: &Bar) {
        let Some(all) = bar.chain(self.chain) else { return };
        let name = |place: usize| {
            let number = bar.number_of(self.chain, place).unwrap_or(place);
            all.get(place).map_or_else(String::new, |_| format!("{}: {}", bar.path(number), segment_name(bar, number)))
        };
        row::show(ui, desk.theme, "From part", |ui| {
            ui.horizontal(|ui| {
                ui.set_min_height(desk.theme.scaled(space::TARGET));
                ui.label(name(self.first));
            });
        });
        row::show(ui, desk.theme, "To part", |ui| {
            let combo = ComboBox::from_id_salt("to segment").selected_text(name(self.last));
            let shown = combo.width(desk.theme.scaled(240.0)).truncate().show_ui(ui, |ui| {
                for place in self.first..all.len() {
                    ui.selectable_value(&mut self.last, place, name(place));
                }
            });
            shown.response.accessible_name("To part");
        });
    }
}

/// What the motif looks like, and what it takes.
fn picture(ui: &mut Ui, desk: &Desk<'_>, motif: &Motif) {
    let Some(bar) = motif.balanced() else { return };
    ui.add_space(space::GAP);
    let size = vec2(ui.available_width(), desk.theme.scaled(PICTURE));
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    let spoken = format!("Picture of the kept part, {}", counted(motif.segments.len(), "part"));
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &spoken));
    ui.painter().rect_filled(rect, space::CORNER, desk.theme.ground);
    motif_picture::paint(ui.painter(), desk.theme, rect.shrink(space::PAD), &bar);
    let marks = motif.units.marks;
    let length = |length| marks.round(figures::mm(length)).text();
    let words = format!(
        "{} of {}; {} forged. Every size is kept as it is written.",
        length(bar.last_mark()),
        motif.stock.describe(),
        figures::finished(figures::mm(bar.forged_length), motif.units.length)
    );
    ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
}
