//! The selected bar: its name, how many, its stock, and a length that is already cut.

use super::sizes::section;
use crate::state::{Desk, Request};
use crate::theme::Text;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, heading, row};
use egui::{RichText, Ui};
use fh_core::balance::BarSpread;
use fh_core::edit::{BarHeader, Edit};
use fh_core::plan::{Bar, Gives, SectionKind};
use fh_measure::LengthRange;

/// Shows the bar.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let index = desk.selection.bar;
    let plan = desk.document.plan();
    let Some(bar) = plan.bars.get(index) else { return };
    let sizing = Sizing::new(desk.theme, plan.units, desk.document.balance().bars.get(index));
    let mut next = BarHeader::from(bar);
    ui.label(RichText::new("Bar").text_style(Text::Heading.style()).color(desk.theme.ink));
    if let Some(name) = fields::words(ui, &sizing, &Entry::named("Name", "Name of the bar"), &bar.name) {
        next.name = name;
    }
    if let Some(count) = fields::count(ui, &sizing, &Entry::named("How many", "How many are made").hint("1"), bar.count)
    {
        next.count = count;
    }
    let datum = Entry::named("Marks from", "Which end marks start from").hint("datum end");
    if let Some(datum) = fields::optional_words(ui, &sizing, &datum, bar.datum.as_deref()) {
        next.datum = datum;
    }
    let scale = Entry::named("Scale", "Scale of this bar").hint("as the plan");
    if let Some(scale) = fields::optional_share(ui, &sizing, &scale, bar.scale.as_ref()) {
        next.scale = scale;
    }
    let kinds: Vec<_> = SectionKind::ALL.into_iter().filter(|kind| kind.is_stock_shape()).collect();
    section(ui, &sizing, "Stock", "stock", &mut next.stock, &kinds);
    heading::show(ui, desk.theme, "Where the bar is already cut");
    already_cut(ui, &sizing, bar, &mut next);
    if let Some(spread) = desk.document.spread().bar(index) {
        heading::show(ui, desk.theme, "With the tolerances");
        tolerances(ui, desk, spread);
    }
    if next != BarHeader::from(bar) {
        out.push(Request::Edit(Edit::SetBar { bar: index, header: Box::new(next) }));
    }
}

/// Between what sizes the bar comes out.
fn tolerances(ui: &mut Ui, desk: &Desk<'_>, spread: &BarSpread) {
    let marks = desk.document.plan().units.marks;
    for (label, between) in [("Length to cut", spread.stock_length), ("Forged, still straight", spread.forged_length)] {
        let words = between.words(marks).unwrap_or_else(|| "as planned".to_owned());
        row::fact(ui, desk.theme, label, &words);
    }
    if spread.unmet {
        let words = "At one end of a tolerance the plan cannot be met; that end is left out.";
        ui.label(RichText::new(words).color(desk.theme.ink));
    }
}

fn already_cut(ui: &mut Ui, sizing: &Sizing<'_>, bar: &Bar, next: &mut BarHeader) {
    let entry = Entry::named("Its length", "Length of a bar already cut").hint("cut to the marks");
    if let Some(length) = fields::optional_length(ui, sizing, &entry, bar.length.as_ref(), LengthRange::AboveZero, None)
    {
        next.length = length;
    }
    if bar.length.is_none() && bar.takes_up.is_none() {
        return;
    }
    let mut choices = vec![(None, "nothing: the rest is left over".to_owned())];
    choices.extend(
        bar.segments
            .iter()
            .enumerate()
            .filter(|(_, segment)| !segment.name.is_empty() && segment.giving() != Gives::Nothing)
            .map(|(at, segment)| (Some(at), segment.name.clone())),
    );
    let now = bar.takes_up.as_ref().and_then(|name| bar.segments.iter().position(|segment| segment.name == *name));
    if let Some(choice) = chooser::show(ui, sizing.theme, "Takes up", "Part that takes up the rest", now, &choices) {
        next.takes_up = choice.and_then(|at| bar.segments.get(at)).map(|segment| segment.name.clone());
    }
}
