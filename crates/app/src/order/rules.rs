//! The rules that heats are reckoned by, each with its usual value.

use super::OrderAsk;
use crate::state::{Desk, Request};
use crate::theme::Text;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields};
use egui::{RichText, Ui};
use fh_core::plan::{HeatRules, InBoth};
use fh_measure::{LengthRange, WrittenLength, format_decimal};

/// What the rules are and are not.
const ABOUT: &str = "What is empty is reckoned, or as usual. Write your own figures until the heats are yours.";

/// Shows the rules.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let plan = desk.document.plan();
    let sizing = Sizing::new(desk.theme, plan.units, None);
    let mut next = plan.work.heats.clone();
    ui.label(RichText::new("What one heat can do").text_style(Text::Heading.style()).color(desk.theme.ink));
    ui.label(RichText::new(ABOUT).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
    length(ui, &sizing, "Hot zone", &mut next.zone, (HeatRules::ZONE, LengthRange::AboveZero));
    number(ui, &sizing, "Minutes of work", &mut next.minutes);
    number(ui, &sizing, "Pace, cm³ a minute", &mut next.pace);
    length(ui, &sizing, "Width of the anvil", &mut next.anvil, (HeatRules::ANVIL, LengthRange::AboveZero));
    length(ui, &sizing, "Tolerance", &mut next.tolerance, (HeatRules::TOLERANCE, LengthRange::AboveZero));
    if next != plan.work.heats {
        out.push(Request::Order(OrderAsk::Rules(Box::new(next))));
    }
}

fn length(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    label: &str,
    now: &mut Option<WrittenLength>,
    (usual, range): (InBoth, LengthRange),
) {
    let usual = usual.in_unit(sizing.units.length);
    let hint = format!("{}, as usual", format_decimal(usual, sizing.units.length.length_unit(), 2));
    let entry = Entry::new(label).hint(&hint);
    if let Some(typed) = fields::optional_length(ui, sizing, &entry, now.as_ref(), range, Some(usual)) {
        *now = typed;
    }
}

fn number(ui: &mut Ui, sizing: &Sizing<'_>, label: &str, now: &mut Option<f64>) {
    if let Some(typed) = fields::optional_number(ui, sizing, &Entry::new(label).hint("reckoned"), *now) {
        *now = typed;
    }
}
