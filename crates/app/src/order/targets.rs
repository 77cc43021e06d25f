//! The sizes to reach, cold and as they measure hot: the program's, or the smith's own in their place.

use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields, row};
use egui::{Align, Layout, RichText, Ui};
use fh_core::plan::{Step, Target};
use fh_measure::{LengthRange, WrittenLength};
use fh_work::{Size, WorkedStep};

/// Shows the sizes.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, worked: &WorkedStep, next: &mut Step) {
    for size in &worked.sizes {
        fact(ui, sizing, size);
    }
    let Some(targets) = &mut next.reach else {
        if ui.button("Write your own sizes").clicked() {
            next.reach = Some(worked.sizes.iter().filter_map(|size| written(sizing, size)).collect());
        }
        return;
    };
    let mut gone = None;
    for (number, target) in targets.iter_mut().enumerate() {
        if edit(ui, sizing, number + 1, target) {
            gone = Some(number);
        }
    }
    if let Some(gone) = gone {
        targets.remove(gone);
    }
    let (add, back) = ui
        .horizontal_wrapped(|ui| (ui.button("Add a size").clicked(), ui.button("Use the program's sizes").clicked()))
        .inner;
    if let Some(size) = sizing.first.size(sizing.first.stock_mm[1]).filter(|_| add) {
        targets.push(Target { what: "thickness".to_owned(), size, tolerance: None });
    }
    if back {
        next.reach = None;
    }
}

/// A size, cold, and below it as it measures hot.
fn fact(ui: &mut Ui, sizing: &Sizing<'_>, size: &Size) {
    let cold = match &size.tolerance {
        Some(tolerance) if tolerance.starts_with('±') => format!("{} {tolerance}", size.cold),
        Some(tolerance) => format!("{}, {tolerance}", size.cold),
        None => size.cold.clone(),
    };
    row::fact(ui, sizing.theme, &size.what, &cold);
    if let Some(from) = &size.follows {
        quiet(ui, sizing, &format!("follows from {from}"));
    }
    if let Some(hot) = &size.hot {
        quiet(ui, sizing, &format!("{hot} hot"));
    }
}

/// Small words below a fact, at its right.
fn quiet(ui: &mut Ui, sizing: &Sizing<'_>, words: &str) {
    let words = RichText::new(words).text_style(Text::Small.style());
    let room = egui::vec2(ui.available_width(), sizing.theme.font(Text::Small).size * 1.3);
    ui.allocate_ui_with_layout(room, Layout::right_to_left(Align::Min), |ui| {
        ui.label(words.color(sizing.theme.ink_quiet));
    });
}

/// A size of the program as one that is written; none where it is no length.
fn written(sizing: &Sizing<'_>, size: &Size) -> Option<Target> {
    let unit = Some(sizing.first.units.length.length_unit());
    let size_written = WrittenLength::parse(&size.cold, unit, LengthRange::AboveZero).ok();
    let size_written = size_written.filter(|_| size.mm.is_some()).or_else(|| sizing.first.size(size.mm?))?;
    Some(Target { what: size.what.clone(), size: size_written, tolerance: None })
}

/// The fields of one size; whether it is to go.
fn edit(ui: &mut Ui, sizing: &Sizing<'_>, number: usize, target: &mut Target) -> bool {
    ui.add_space(space::TIGHT);
    let names = [format!("Size {number}: of what"), format!("Size {number}"), format!("Size {number}: tolerance")];
    if let Some(what) = fields::words(ui, sizing, &Entry::named("Size of", &names[0]).hint("thickness"), &target.what)
        && !what.is_empty()
    {
        target.what = what;
    }
    let size = Entry::named("Size", &names[1]);
    if let Some(size) = fields::length(ui, sizing, &size, &target.size, LengthRange::AboveZero) {
        target.size = size;
    }
    let tolerance = Entry::named("Tolerance ±", &names[2]).hint("as the rules say");
    let (now, range) = (target.tolerance.as_ref(), LengthRange::ZeroOrMore);
    if let Some(typed) = fields::optional_length(ui, sizing, &tolerance, now, range, None) {
        target.tolerance = typed;
    }
    ui.button("Remove").on_hover_text("Removes this size.").accessible_name(format!("Remove size {number}")).clicked()
}
