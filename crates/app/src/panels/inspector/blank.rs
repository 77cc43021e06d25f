//! The blank that a plate is cut from, and the base line of both.

use super::outline;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, heading};
use egui::Ui;
use fh_core::balance::SegmentBalance;
use fh_core::forms::Flag;
use fh_core::new_segment::{set_blank, tidy_base_line};
use fh_core::plan::{BaseLine, OutlineKind, OutlineSpec};
use fh_measure::{LengthRange, WrittenLength};

/// Shows the blank: none, or its kind and sizes.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, flag: &mut Flag, balance: Option<&SegmentBalance>) {
    heading::show(ui, sizing.theme, "Blank, as it is spread");
    let kinds = OutlineKind::ALL.into_iter().map(|kind| (Some(kind), kind.name().to_owned()));
    let choices: Vec<_> = std::iter::once((None, "none".to_owned())).chain(kinds).collect();
    let now = flag.blank.as_ref().map(OutlineSpec::kind);
    let shape = balance.and_then(|balance| balance.shape.as_ref());
    if let Some(kind) = chooser::show(ui, sizing.theme, "Blank", "Blank", now, &choices) {
        set_blank(flag, kind, shape, &sizing.first);
    }
    if let Some(blank) = &mut flag.blank {
        outline::sizes(ui, sizing, blank, Some("the blank"), None, balance);
    }
    base_line(ui, sizing, flag);
    tidy_base_line(flag);
}

/// How far the base line lies from the edge of each outline that has no corners of its own.
fn base_line(ui: &mut Ui, sizing: &Sizing<'_>, flag: &mut Flag) {
    let by_sizes = |outline: &OutlineSpec| !matches!(outline, OutlineSpec::Polygon(_));
    let is_cut = flag.blank.is_some();
    let mut base = flag.base_line.clone().unwrap_or_default();
    if by_sizes(&flag.outline) {
        let label = if is_cut { "Base line of the outline" } else { "Base line" };
        from_edge(ui, sizing, (label, "Base line from the edge of the outline"), &mut base.outline);
    }
    if flag.blank.as_ref().is_some_and(by_sizes) {
        from_edge(ui, sizing, ("Base line of the blank", "Base line from the edge of the blank"), &mut base.blank);
    }
    flag.base_line = Some(base).filter(|base| *base != BaseLine::default());
}

fn from_edge(ui: &mut Ui, sizing: &Sizing<'_>, (label, name): (&str, &str), now: &mut Option<WrittenLength>) {
    let entry = Entry::named(label, name).hint("middle");
    if let Some(typed) = fields::optional_length(ui, sizing, &entry, now.as_ref(), LengthRange::ZeroOrMore, None) {
        *now = typed;
    }
}
