//! The rules that heats are reckoned by, each with its usual value.

use crate::state::{Desk, OrderAsk, Request};
use crate::theme::Text;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::{RichText, Ui};
use fh_core::plan::{HammerSpec, HeatRules, InBoth, SwungBy};
use fh_measure::{LengthRange, WrittenLength, format_decimal};
use fh_work::{Shop, Smith};

/// What the rules are and are not.
const ABOUT: &str =
    "Empty fields are worked out, or take the usual value. Put in your own figures until the heats match yours.";

/// Shows the rules.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let plan = desk.document.plan();
    let sizing = Sizing::new(desk.theme, plan.units, None);
    let mut next = plan.work.heats.clone();
    ui.label(RichText::new("What one heat can do").text_style(Text::Heading.style()).color(desk.theme.ink));
    ui.label(RichText::new(ABOUT).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
    who(ui, desk, &next, out);
    length(ui, &sizing, "Hot zone", &mut next.zone, (HeatRules::ZONE, LengthRange::AboveZero));
    number(ui, &sizing, "Minutes of work", &mut next.minutes);
    number(ui, &sizing, "Metal moved, cm³ a minute", &mut next.pace);
    hammer(ui, &sizing, &mut next);
    let fire = Entry::new("Fire, °C").hint("usual for the metal");
    if let Some(typed) = fields::optional_number(ui, &sizing, &fire, next.fire_celsius) {
        next.fire_celsius = typed;
    }
    length(ui, &sizing, "Width of the anvil", &mut next.anvil, (HeatRules::ANVIL, LengthRange::AboveZero));
    length(ui, &sizing, "Tolerance", &mut next.tolerance, (HeatRules::TOLERANCE, LengthRange::AboveZero));
    if next != plan.work.heats {
        out.push(Request::Order(OrderAsk::Rules(Box::new(next))));
    }
}

/// Who forges, kept in the smith's own profile, with the figures that follow: they are seen before they are used.
fn who(ui: &mut Ui, desk: &Desk<'_>, rules: &HeatRules, out: &mut Vec<Request>) {
    let Some(shop) = desk.order.as_ref().map(|order| order.shop) else { return };
    let choices = Smith::ALL.map(|smith| (smith, smith.name().to_owned()));
    if let Some(smith) =
        chooser::show(ui, desk.theme, "Who forges", "Who forges, in all your plans", shop.smith, &choices)
    {
        out.push(Request::Order(OrderAsk::Own(Shop { smith, ..shop.clone() })));
    }
    let figures = shop.smith.figures(rules.hammer);
    ui.label(RichText::new(figures).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
}

/// What strikes: how heavy it is, and who swings it.
fn hammer(ui: &mut Ui, sizing: &Sizing<'_>, next: &mut HeatRules) {
    let usual = HammerSpec::default();
    let hint = format!("{}, as usual", usual.kg);
    let entry = Entry::new("Hammer, kg").hint(&hint);
    let now = next.hammer.unwrap_or(usual);
    if let Some(typed) = fields::optional_number(ui, sizing, &entry, next.hammer.map(|hammer| hammer.kg)) {
        let own = typed.map(|kg| HammerSpec { kg, ..now });
        next.hammer = own.or_else(|| (now.by != usual.by).then_some(HammerSpec { kg: usual.kg, ..now }));
    }
    let choices = SwungBy::ALL.map(|by| (by, by.name().to_owned()));
    if let Some(by) = chooser::show(ui, sizing.theme, "Struck by", "Who swings the hammer", now.by, &choices) {
        next.hammer = Some(HammerSpec { by, ..now }).filter(|hammer| *hammer != usual);
    }
}

fn length(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    label: &str,
    now: &mut Option<WrittenLength>,
    (usual, range): (InBoth, LengthRange),
) {
    let usual = usual.in_unit(sizing.first.units.length);
    let hint = format!("{}, as usual", format_decimal(usual, sizing.first.units.length.length_unit(), 2));
    let entry = Entry::new(label).hint(&hint);
    if let Some(typed) = fields::optional_length(ui, sizing, &entry, now.as_ref(), range, Some(usual)) {
        *now = typed;
    }
}

fn number(ui: &mut Ui, sizing: &Sizing<'_>, label: &str, now: &mut Option<f64>) {
    if let Some(typed) = fields::optional_number(ui, sizing, &Entry::new(label).hint("worked out"), *now) {
        *now = typed;
    }
}
