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
    if flag.blank.as_ref().is_some_and(by_sizes) {
        from_edge(ui, sizing, "Base line from the edge of the blank", flag, |base| &mut base.blank);
    }
    tidy_base_line(flag);
}

/// Shows how far the base line lies from the edge of the outline, where that has no corners of its own.
pub(super) fn base_line(ui: &mut Ui, sizing: &Sizing<'_>, flag: &mut Flag) {
    if by_sizes(&flag.outline) {
        from_edge(ui, sizing, "Base line from the edge of the outline", flag, |base| &mut base.outline);
    }
}

/// Whether an outline is said by its sizes, not by corners that are counted from the base line.
fn by_sizes(outline: &OutlineSpec) -> bool {
    !matches!(outline, OutlineSpec::Polygon(_))
}

/// A field for one of the two; where neither says anything any more, nothing is kept of them.
fn from_edge(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    name: &str,
    flag: &mut Flag,
    one: fn(&mut BaseLine) -> &mut Option<WrittenLength>,
) {
    let entry = Entry::named("Base line", name).hint("in the middle");
    let mut base = flag.base_line.clone().unwrap_or_default();
    let now = one(&mut base);
    if let Some(typed) = fields::optional_length(ui, sizing, &entry, now.as_ref(), LengthRange::ZeroOrMore, None) {
        *now = typed;
        flag.base_line = Some(base).filter(|base| *base != BaseLine::default());
    }
}
