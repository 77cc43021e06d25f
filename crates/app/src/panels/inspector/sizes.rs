//! Fields for sizes that several forms and bends have: a size, a section, one that may follow from others.

use crate::figures;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields, heading, section_form};
use egui::Ui;
use fh_core::balance::SegmentBalance;
use fh_core::describe::upper_first;
use fh_core::plan::{SectionKind, SectionSpec, SizeName};
use fh_measure::{LengthRange, WrittenAngle, WrittenLength};
use uom::si::f64::Length;

/// The sections that a length of bar can have.
pub(super) const BODIES: [SectionKind; 11] = [
    SectionKind::Stock,
    SectionKind::Same,
    SectionKind::Square,
    SectionKind::Round,
    SectionKind::Flat,
    SectionKind::Oval,
    SectionKind::HalfRound,
    SectionKind::Hexagon,
    SectionKind::Octagon,
    SectionKind::Diamond,
    SectionKind::Grown,
];

/// A size above 0.
pub(super) fn size(ui: &mut Ui, sizing: &Sizing<'_>, label: &str, now: &mut WrittenLength) {
    named_size(ui, sizing, label, label, now);
}

/// A size above 0 with a name of its own.
pub(super) fn named_size(ui: &mut Ui, sizing: &Sizing<'_>, label: &str, name: &str, now: &mut WrittenLength) {
    if let Some(value) = fields::length(ui, sizing, &Entry::named(label, name), now, LengthRange::AboveZero) {
        *now = value;
    }
}

/// A section under a head of its own.
pub(super) fn section(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    head: &str,
    of: &str,
    now: &mut SectionSpec,
    kinds: &[SectionKind],
) {
    heading::show(ui, sizing.theme, head);
    if let Some(section) = section_form::show(ui, sizing, of, now, kinds) {
        *now = section;
    }
}

/// A length that may follow from the others.
pub(super) fn optional_length(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    name: SizeName,
    now: &mut Option<WrittenLength>,
    range: LengthRange,
    balance: Option<&SegmentBalance>,
) {
    let follows = balance.and_then(|balance| balance.derived(name));
    let length = follows.and_then(|derived| derived.length);
    let hint = length.map_or_else(String::new, |length| sizing.words(length));
    let label = caption(name);
    let entry = Entry::new(&label).hint(&hint).because(follows.map(|derived| derived.because));
    let typed = fields::optional_length(ui, sizing, &entry, now.as_ref(), range, length.map(figures::mm));
    if let Some(typed) = typed {
        *now = typed;
    }
}

/// A length that may be left out, and is then as is usual.
pub(super) fn length_or_usual(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    name: SizeName,
    now: &mut Option<WrittenLength>,
    usual: Option<Length>,
) {
    let hint = usual.map_or_else(String::new, |length| sizing.words(length));
    let label = caption(name);
    let entry = Entry::new(&label).hint(&hint);
    let range = LengthRange::ZeroOrMore;
    if let Some(typed) = fields::optional_length(ui, sizing, &entry, now.as_ref(), range, usual.map(figures::mm)) {
        *now = typed;
    }
}

/// An angle that may follow from the others; where it does not, the entry's own hint stands in it.
pub(super) fn optional_angle(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    entry: &Entry<'_>,
    name: SizeName,
    now: &mut Option<WrittenAngle>,
    balance: Option<&SegmentBalance>,
) {
    let follows = balance.and_then(|balance| balance.derived(name));
    let radians = follows.and_then(|derived| derived.radians);
    let hint = radians.map_or_else(|| entry.hint.to_owned(), |radians| format!("{:.1}°", radians.to_degrees()));
    let entry = Entry::named(entry.label, entry.name).hint(&hint).because(follows.map(|derived| derived.because));
    if let Some(typed) = fields::optional_angle(ui, sizing, &entry, now.as_ref(), radians) {
        *now = typed;
    }
}

/// A size's name as the caption of its field: `Inside radius`.
pub(super) fn caption(name: SizeName) -> String {
    upper_first(name.words())
}
