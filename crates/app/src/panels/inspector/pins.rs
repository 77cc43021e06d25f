//! The sizes of what holds parts together: tenons, rivets, collars, and the metal for a weld.

use super::sizes::{BODIES, named_size, section, size};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::Ui;
use fh_core::forms;
use fh_core::plan::{CollarRule, Form};
use fh_measure::{LengthRange, WrittenLength};

/// Shows the sizes of one of these forms.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, form: &mut Form) {
    match form {
        Form::Tenon(forms::Tenon { section: becomes, grip: through, allowance }) => {
            grip(ui, sizing, through);
            head(ui, sizing, "For the head", allowance);
            section(ui, sizing, "Section", "section", becomes, &BODIES);
        }
        Form::Rivet(forms::Rivet { diameter, grip: through, allowance }) => {
            size(ui, sizing, "Diameter", diameter);
            grip(ui, sizing, through);
            head(ui, sizing, "For each head", allowance);
        }
        Form::Collar(forms::Collar { section: strip, width, height, rule }) => {
            bundle(ui, sizing, width, height, rule);
            section(ui, sizing, "Section of the strip", "section of the strip", strip, &BODIES);
        }
        Form::Weld(forms::Weld { allowance }) => {
            named_size(ui, sizing, "Allowance", "Metal for the weld, as a length of bar", allowance);
        }
        _ => {}
    }
}

/// Shows the thickness of what a pin goes through.
fn grip(ui: &mut Ui, sizing: &Sizing<'_>, grip: &mut WrittenLength) {
    named_size(ui, sizing, "Goes through", "Thickness it goes through", grip);
}

/// Shows what stands out for a head; it may be nothing.
fn head(ui: &mut Ui, sizing: &Sizing<'_>, label: &str, allowance: &mut WrittenLength) {
    if let Some(typed) = fields::length(ui, sizing, &Entry::new(label), allowance, LengthRange::ZeroOrMore) {
        *allowance = typed;
    }
}

/// Shows the bundle that a collar goes round, and how the collar's length is reckoned.
fn bundle(
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
    if let Some(choice) = chooser::show(ui, sizing.theme, "By the rule", "Rule for the collar", *rule, &choices) {
        *rule = choice;
    }
}
