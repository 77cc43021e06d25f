//! The sizes of what holds parts together: what a pin goes through, what its heads take, what a collar goes round.

use super::form::named_size;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::Ui;
use fh_core::plan::CollarRule;
use fh_measure::{LengthRange, WrittenLength};

/// Shows the thickness of what a pin goes through.
pub(super) fn grip(ui: &mut Ui, sizing: &Sizing<'_>, grip: &mut WrittenLength) {
    named_size(ui, sizing, "Goes through", "Thickness it goes through", grip);
}

/// Shows what stands out for a head; it may be nothing.
pub(super) fn head(ui: &mut Ui, sizing: &Sizing<'_>, label: &str, allowance: &mut WrittenLength) {
    if let Some(typed) = fields::length(ui, sizing, &Entry::new(label), allowance, LengthRange::ZeroOrMore) {
        *allowance = typed;
    }
}

/// Shows the bundle that a collar goes round, and how the collar's length is reckoned.
pub(super) fn bundle(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    width: &mut WrittenLength,
    height: &mut WrittenLength,
    rule: &mut Option<CollarRule>,
) {
    named_size(ui, sizing, "Bundle, wide", "Width of the bundle", width);
    named_size(ui, sizing, "Bundle, high", "Height of the bundle", height);
    let rules = CollarRule::ALL.into_iter().map(|rule| (Some(rule), rule.name().to_owned()));
    let choices: Vec<_> = std::iter::once((None, "as the plan".to_owned())).chain(rules).collect();
    if let Some(choice) = chooser::show(ui, sizing.theme, "Reckoned", "Rule for the collar", *rule, &choices) {
        *rule = choice;
    }
}
