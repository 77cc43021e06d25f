//! The sizes of a form.

use super::{flag, sides, taper};
use crate::figures;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields, heading, section_form};
use egui::Ui;
use fh_core::balance::{Derived, SegmentBalance};
use fh_core::plan::{Form, SectionKind, SectionSpec};
use fh_measure::{LengthRange, WrittenLength};

/// The sections that a length of bar can have.
pub(super) const BODIES: [SectionKind; 10] = [
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
];

/// Shows the sizes of a form and changes those that were typed.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, form: &mut Form, balance: Option<&SegmentBalance>, first: bool) {
    match form {
        Form::Plain { length } => optional_length(ui, sizing, length, balance),
        Form::Drawn { length, section: becomes } => {
            optional_length(ui, sizing, length, balance);
            section(ui, sizing, "Section", "section", becomes, &BODIES);
        }
        Form::Taper { length, from, to, runout } => {
            optional_length(ui, sizing, length, balance);
            taper::show(ui, sizing, from, to, runout, first);
        }
        Form::Shoulder { to, radius, sides } => {
            size(ui, sizing, "Inside radius", radius);
            sides::set_down(ui, sizing, sides);
            section(ui, sizing, "Section after it", "section after it", to, &BODIES);
        }
        Form::Flag { outline, thickness, trim } => flag::show(ui, sizing, outline, thickness, trim),
        Form::Peak { section: legs } => {
            section(ui, sizing, "Section of its legs", "section of its legs", legs, &BODIES)
        }
        Form::Ball { diameter } => size(ui, sizing, "Diameter", diameter),
        Form::Cube { side } => size(ui, sizing, "Side", side),
        Form::Trim { length } | Form::Hold { length } => size(ui, sizing, "Length", length),
        _ => {}
    }
}

/// A size above 0.
pub(super) fn size(ui: &mut Ui, sizing: &Sizing<'_>, label: &str, now: &mut WrittenLength) {
    if let Some(value) = fields::length(ui, sizing, &Entry::new(label), now, LengthRange::AboveZero) {
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

/// The size of this name that follows from others.
pub(super) fn derived<'a>(balance: Option<&'a SegmentBalance>, name: &str) -> Option<&'a Derived> {
    balance?.derived.iter().find(|derived| derived.name == name)
}

/// The forged length: left out where it follows from the bend.
fn optional_length(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    now: &mut Option<WrittenLength>,
    balance: Option<&SegmentBalance>,
) {
    let follows = derived(balance, "length");
    let length = follows.and_then(|derived| derived.length);
    let hint = length.map_or_else(String::new, |length| sizing.words(length));
    let entry = Entry::new("Length").hint(&hint).because(follows.map(|derived| derived.because));
    let value =
        fields::optional_length(ui, sizing, &entry, now.as_ref(), LengthRange::AboveZero, length.map(figures::mm));
    if let Some(value) = value {
        *now = value;
    }
}
