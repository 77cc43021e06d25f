//! How a step is done: tool, place, edge and side; and in which heat and how long.

use super::words::words;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::Ui;
use fh_core::plan::{AnvilPlace, HeatWish, Step};
use fh_measure::LengthRange;
use fh_work::WorkedStep;

/// Shows tool, place, edge and the side that is up.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, worked: &WorkedStep, next: &mut Step) {
    words(ui, sizing, "Tool", &worked.tool, &mut next.tool);
    // What the program would say is known only where nothing is written.
    let own = match next.place {
        None => format!("({})", worked.place.name()),
        Some(_) => "(as proposed)".to_owned(),
    };
    let places = AnvilPlace::ALL.into_iter().map(|place| (Some(place), place.name().to_owned()));
    let places: Vec<_> = std::iter::once((None, own)).chain(places).collect();
    if let Some(place) = chooser::show(ui, sizing.theme, "Where", "Where on the anvil", next.place, &places) {
        next.place = place;
    }
    let edge = Entry::named("Edge", "Radius of the edge").hint(worked.edge.as_deref().unwrap_or("any"));
    let range = LengthRange::ZeroOrMore;
    if let Some(typed) = fields::optional_length(ui, sizing, &edge, next.edge.as_ref(), range, None) {
        next.edge = typed;
    }
    let up = Entry::named("Up", "Side that is up").hint(worked.up.as_deref().unwrap_or("any side"));
    if let Some(typed) = fields::optional_angle(ui, sizing, &up, next.up.as_ref(), None) {
        next.up = typed;
    }
}

/// Shows the heat and the minutes.
pub(super) fn time(ui: &mut Ui, sizing: &Sizing<'_>, worked: &WorkedStep, next: &mut Step) {
    let heats = [
        (None, "worked out".to_owned()),
        (Some(HeatWish::New), "a new heat".to_owned()),
        (Some(HeatWish::Same), "the heat before".to_owned()),
    ];
    if let Some(heat) = chooser::show(ui, sizing.theme, "Heat", "Heat of the step", next.heat, &heats) {
        next.heat = heat;
    }
    let hint = format!("{:.1}, worked out", worked.minutes);
    let minutes = Entry::named("Minutes", "Minutes of the step").hint(&hint);
    if let Some(typed) = fields::optional_number(ui, sizing, &minutes, next.minutes) {
        next.minutes = typed;
    }
}
