//! The dialog that puts a motif into the bar: the motifs that are kept with their pictures, a scale, and what comes of it.

use super::frame::{Frame, main_button, other_button};
use super::motif_scale::{factor_words, read_factor};
use crate::figures;
use crate::state::{Desk, Request, Side};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::entry::select_on_focus;
use crate::widgets::motif_card::{self, MotifCard};
use egui::{Context, RichText, TextEdit, Ui};
use fh_core::balance::BarBalance;
use fh_core::describe::short_name;
use fh_core::motif::Motif;
use fh_core::plan::Segment;
use fh_measure::RoundedLength;
use fh_store::motifs::KeptMotif;
use std::path::PathBuf;
use uom::si::f64::Length;

/// A motif as it is offered.
struct Offered {
    kept: KeptMotif,
    /// What follows for it on its own bar.
    bar: Option<BarBalance>,
    below: String,
}

/// A motif being chosen.
pub(crate) struct InsertMotif {
    offered: Vec<Offered>,
    /// Why others could not be read.
    failed: Vec<String>,
    chosen: usize,
    scale: String,
    fits: bool,
    side: Side,
    /// The motif whose removal is asked about.
    removing: Option<PathBuf>,
    said: Option<String>,
}

impl InsertMotif {
    /// Offers the motifs that are kept.
    pub(crate) fn new((kept, failed): (Vec<KeptMotif>, Vec<fh_store::StoreError>)) -> Self {
        let offered = kept.into_iter().map(offered).collect();
        let failed = failed.iter().map(ToString::to_string).collect();
        let (scale, said, removing) = ("1".to_owned(), None, None);
        Self { offered, failed, chosen: 0, scale, fits: false, side: Side::After, removing, said }
    }

    /// Says why it was not put in, or not removed.
    pub(crate) fn say(&mut self, words: String) {
        self.said = Some(words);
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "Put in a kept part", width: dialog::FORM };
        let (side, removable) = (self.side, self.offered.get(self.chosen).map(|offered| offered.kept.path.clone()));
        let is_sure = removable.is_some() && self.removing == removable;
        let mut ask = None;
        frame.show(
            ctx,
            desk,
            out,
            |ui, _| self.contents(ui, desk),
            |ui, out, segments| {
                if main_button(ui, desk.theme, "Insert", segments.is_some())
                    && let Some(segments) = segments
                {
                    out.push(Request::InsertMotif(segments, side));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
                let Some(path) = removable else { return };
                let words = if is_sure { "Remove it for good" } else { "Remove this kept part…" };
                if other_button(ui, words) {
                    ask = Some(path.clone());
                    if is_sure {
                        out.push(Request::RemoveMotif(path));
                    }
                }
            },
        );
        if ask.is_some() {
            self.removing = ask;
        }
    }

    /// The segments that are to be put in.
    fn contents(&mut self, ui: &mut Ui, desk: &Desk<'_>) -> Option<Vec<Segment>> {
        if self.offered.is_empty() {
            ui.label("No part is kept yet. Select a part and choose Part → Keep this part…");
        }
        for (index, offered) in self.offered.iter().enumerate() {
            let card = MotifCard { name: &offered.kept.motif.name, below: &offered.below, bar: offered.bar.as_ref() };
            if motif_card::show(ui, desk.theme, &card, index == self.chosen).clicked() && index != self.chosen {
                (self.chosen, self.removing, self.said) = (index, None, None);
            }
        }
        for words in self.failed.iter().chain(&self.said) {
            ui.label(RichText::new(format!("■ {words}")).text_style(Text::Small.style()).color(desk.theme.stop));
        }
        let motif = self.offered.get(self.chosen)?.kept.motif.clone();
        ui.add_space(space::GAP);
        let factor = self.factor(ui, desk, &motif);
        self.sides(ui, desk);
        if self.removing.is_some() {
            let words = format!(
                "“{}” will be removed from your kept parts. Plans that use it keep it.",
                short_name(&motif.name)
            );
            ui.label(words);
        }
        let scaled = factor.and_then(|factor| motif.scaled(factor).map_err(|error| error.to_string()));
        match scaled {
            Ok(scaled) => {
                outcome(ui, desk, &scaled);
                Some(scaled.segments)
            }
            Err(why) => {
                ui.label(RichText::new(format!("■ {why}")).color(desk.theme.stop));
                None
            }
        }
    }

    /// How many times as large it is to be.
    fn factor(&mut self, ui: &mut Ui, desk: &Desk<'_>, motif: &Motif) -> Result<f64, String> {
        let bar = desk.document.balance().bars.get(desk.selection.bar);
        let fitting = bar.and_then(|bar| motif.factor_to_fit(bar));
        let mut shown = match (self.fits, fitting) {
            (true, Some(factor)) => factor_words(factor),
            _ => self.scale.clone(),
        };
        ui.horizontal_wrapped(|ui| {
            let label = ui.label("Scale");
            let field = TextEdit::singleline(&mut shown).desired_width(desk.theme.scaled(72.0));
            let field = field.min_size(egui::vec2(0.0, desk.theme.scaled(space::TARGET)));
            let field = field.align(egui::Align2::LEFT_CENTER);
            let output = ui.add_enabled_ui(!self.fits, |ui| field.show(ui)).inner;
            select_on_focus(ui, &output, &shown);
            if output.response.response.labelled_by(label.id).changed() {
                self.scale = shown;
            }
            if let Some(factor) = fitting {
                let stock = desk.document.plan().bars.get(desk.selection.bar).map(|bar| bar.stock.describe());
                let words = format!("Fit to this bar: × {}", factor_words(factor));
                let tip = format!("From {} to {}.", motif.stock.describe(), stock.unwrap_or_default());
                ui.checkbox(&mut self.fits, words).on_hover_text(tip);
            }
        });
        match fitting.filter(|_| self.fits) {
            Some(factor) => Ok(factor),
            None => read_factor(&self.scale),
        }
    }

    fn sides(&mut self, ui: &mut Ui, desk: &Desk<'_>) {
        let (after, before) = match desk.selection.segment() {
            Some(_) => ("After the selected part", "Before it"),
            None => ("At the end of the bar", "At its datum end"),
        };
        ui.horizontal_wrapped(|ui| {
            ui.radio_value(&mut self.side, Side::After, after);
            ui.radio_value(&mut self.side, Side::Before, before);
        });
    }
}

fn offered(kept: KeptMotif) -> Offered {
    let bar = kept.motif.balanced();
    let marks = kept.motif.units.marks;
    let length = bar.as_ref().map(|bar| marks.round(figures::mm(bar.last_mark())).text());
    let below = format!("{} of {}", length.unwrap_or_default(), kept.motif.stock.describe());
    Offered { kept, bar, below }
}

/// What it takes of the bar that it is put into.
fn outcome(ui: &mut Ui, desk: &Desk<'_>, scaled: &Motif) {
    let plan = desk.document.plan();
    let Some(stock) = plan.bars.get(desk.selection.bar).map(|bar| bar.stock.clone()) else { return };
    let Some(bar) = (Motif { stock, ..scaled.clone() }).balanced() else { return };
    let round = |length: Length| -> RoundedLength { plan.units.marks.round(figures::mm(length)) };
    let words = format!(
        "Takes {} of this bar; {} forged, before any scale.",
        round(bar.last_mark()).text(),
        figures::finished(figures::mm(bar.forged_length), plan.units.length)
    );
    ui.label(RichText::new(words).text_style(Text::Strong.style()).color(desk.theme.ink));
}
