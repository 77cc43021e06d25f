//! The ladder of the selected segment: how long it is where it is left fat or goes thin, once the marks are struck.

use crate::figures;
use crate::state::Desk;
use crate::theme::{Text, space};
use egui::{CollapsingHeader, Grid, RichText, ScrollArea, Ui, vec2};
use fh_core::balance::{Ladder, Rung, hot_length, ladder};
use fh_core::describe::{rung_change_words, rung_size_words};
use fh_core::plan::Plan;
use uom::si::f64::Length;

/// The least height of a row, in points at normal text size.
const ROW: f32 = 18.0;

/// Shows the ladder under a head that folds; nothing where the segment is neither drawn nor tapered.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, at: usize) {
    let plan = desk.document.plan();
    let Some(ladder) = ladder(plan, desk.document.balance(), desk.selection.bar, at) else { return };
    CollapsingHeader::new("If forged too thick or too thin").show(ui, |ui| {
        let measured = if ladder.place.is_empty() { String::new() } else { format!(", measured {}", ladder.place) };
        let words = format!("Once the marks are struck, it comes out this long{measured}:");
        ui.label(RichText::new(words).color(desk.theme.ink_quiet));
        let columns = Grid::new("ladder").num_columns(4).spacing(vec2(space::PAD, space::TIGHT));
        let columns = columns.min_row_height(desk.theme.scaled(ROW));
        // At large letters it may be wider than the panel.
        ScrollArea::horizontal().show(ui, |ui| columns.show(ui, |ui| rungs(ui, desk, plan, &ladder)));
    });
}

fn rungs(ui: &mut Ui, desk: &Desk<'_>, plan: &Plan, ladder: &Ladder) {
    let is_hot = ladder.rungs.iter().any(|rung| hot_length(plan, rung.length).is_some());
    let head = |ui: &mut Ui, words: &str| {
        ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
    };
    head(ui, ladder.measured);
    head(ui, "long, cold");
    if is_hot {
        head(ui, "long, hot");
    }
    head(ui, "change");
    ui.end_row();
    // The fat ones first: so the lengths grow downward.
    for rung in ladder.rungs.iter().rev() {
        cells(ui, desk, plan, rung);
        ui.end_row();
    }
}

fn cells(ui: &mut Ui, desk: &Desk<'_>, plan: &Plan, rung: &Rung) {
    let planned = rung.steps == 0;
    let cell = |ui: &mut Ui, words: String| {
        let words = RichText::new(words).color(if planned { desk.theme.ink } else { desk.theme.ink_quiet });
        ui.label(if planned { words.strong() } else { words });
    };
    let fine = |length: Length| figures::finished(figures::mm(length), plan.units.length);
    cell(ui, rung_size_words(rung, plan.units.length));
    cell(ui, fine(rung.length));
    if let Some(hot) = hot_length(plan, rung.length) {
        cell(ui, fine(hot));
    }
    cell(ui, if planned { "planned".to_owned() } else { rung_change_words(rung, plan.units.marks) });
}
