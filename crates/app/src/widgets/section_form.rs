//! The fields for a section: which kind it is, and its sizes.

use super::entry::{self, Entry, Reading};
use super::{Sizing, chooser, fields};
use egui::Ui;
use fh_core::new_segment::convert_section;
use fh_core::plan::{GrownSpec, SectionKind, SectionSpec, SquareSpec};
use fh_measure::{LengthRange, WrittenLength};

/// Shows the fields; `of` says whose section it is, for example `section at its end`.
pub(crate) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    of: &str,
    now: &SectionSpec,
    kinds: &[SectionKind],
) -> Option<SectionSpec> {
    let in_short = in_short(ui, sizing, of, now, kinds);
    in_short.or_else(|| show_in_full(ui, sizing, of, now, kinds))
}

/// Shows its kind and its sizes, each in a field of its own.
pub(crate) fn show_in_full(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    of: &str,
    now: &SectionSpec,
    kinds: &[SectionKind],
) -> Option<SectionSpec> {
    let choices: Vec<_> = kinds.iter().map(|kind| (*kind, kind_words(*kind))).collect();
    let kind = chooser::show(ui, sizing.theme, "Shape", &format!("Shape of {of}"), now.kind(), &choices);
    if let Some(kind) = kind {
        return convert_section(now, kind, &sizing.first);
    }
    sizes(ui, sizing, of, now)
}

/// All of the section in one field: `3/8 square`, `1 x 1/8`.
fn in_short(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    of: &str,
    now: &SectionSpec,
    kinds: &[SectionKind],
) -> Option<SectionSpec> {
    let unit = sizing.first.units.length.length_unit();
    let read = |text: &str| {
        let section = SectionSpec::said(text, Some(unit))?;
        let fits = kinds.contains(&section.kind());
        if fits { Ok(section) } else { Err(format!("“{}” cannot be the {of}", text.trim())) }
    };
    let name = format!("In short: {of}");
    let entry = Entry::named("In short", &name).hint("3/8 square, 1 x 1/8");
    entry::show(ui, sizing.theme, &entry, &now.words(), &Reading { read: &read, step: None, doubt: None })
}

fn kind_words(kind: SectionKind) -> String {
    match kind {
        SectionKind::Stock => "as the stock".to_owned(),
        SectionKind::Same => "as before it".to_owned(),
        SectionKind::Point => "to a point".to_owned(),
        SectionKind::Edge => "to an edge".to_owned(),
        _ => kind.name().to_owned(),
    }
}

/// One size above 0.
fn size(ui: &mut Ui, sizing: &Sizing<'_>, label: &str, of: &str, now: &WrittenLength) -> Option<WrittenLength> {
    let name = format!("{label} of {of}");
    fields::length(ui, sizing, &Entry::named(label, &name), now, LengthRange::AboveZero)
}

/// How far edges are eased.
fn eased(ui: &mut Ui, sizing: &Sizing<'_>, of: &str, now: Option<&WrittenLength>) -> Option<Option<WrittenLength>> {
    let name = format!("Eased edges of {of}");
    let entry = Entry::named("Eased edges", &name).hint("sharp");
    fields::optional_length(ui, sizing, &entry, now, LengthRange::ZeroOrMore, Some(0.0))
}

fn sizes(ui: &mut Ui, sizing: &Sizing<'_>, of: &str, now: &SectionSpec) -> Option<SectionSpec> {
    let mut next = now.clone();
    let set = |place: &mut WrittenLength, value: Option<WrittenLength>| {
        if let Some(value) = value {
            *place = value;
        }
    };
    match &mut next {
        SectionSpec::Stock | SectionSpec::Same | SectionSpec::Point => {}
        SectionSpec::Square(SquareSpec { side, edge_radius }) => {
            set(side, size(ui, sizing, "Side", of, side));
            *edge_radius = eased(ui, sizing, of, edge_radius.as_ref()).unwrap_or(edge_radius.take());
        }
        SectionSpec::Round(diameter) => set(diameter, size(ui, sizing, "Diameter", of, diameter)),
        SectionSpec::Hexagon(across) | SectionSpec::Octagon(across) => {
            set(across, size(ui, sizing, "Across flats", of, across));
        }
        SectionSpec::Diamond(side) => set(side, size(ui, sizing, "Side", of, side)),
        SectionSpec::Edge(width) => set(width, size(ui, sizing, "Width", of, width)),
        SectionSpec::Flat { width, thickness, edge_radius } => {
            set(width, size(ui, sizing, "Width", of, width));
            set(thickness, size(ui, sizing, "Thickness", of, thickness));
            *edge_radius = eased(ui, sizing, of, edge_radius.as_ref()).unwrap_or(edge_radius.take());
        }
        SectionSpec::Oval { width, thickness } => {
            set(width, size(ui, sizing, "Width", of, width));
            set(thickness, size(ui, sizing, "Thickness", of, thickness));
        }
        SectionSpec::HalfRound { width, height } => {
            set(width, size(ui, sizing, "Width", of, width));
            set(height, size(ui, sizing, "Height", of, height));
        }
        SectionSpec::Grown(grown) => grown_sizes(ui, sizing, of, grown),
    }
    (next != *now).then_some(next)
}

/// A section that grows: the size that it is struck to, the bite, and what it is struck from.
fn grown_sizes(ui: &mut Ui, sizing: &Sizing<'_>, of: &str, grown: &mut GrownSpec) {
    let from_top = grown.thickness.is_some();
    let ways = [(true, "top and bottom".to_owned()), (false, "its edges".to_owned())];
    let way =
        chooser::show(ui, sizing.theme, "Struck from", &format!("Sides that are struck of {of}"), from_top, &ways);
    if way.is_some_and(|way| way != from_top) {
        std::mem::swap(&mut grown.thickness, &mut grown.width);
    }
    for (label, struck) in [("Thickness", &mut grown.thickness), ("Width", &mut grown.width)] {
        if let Some(now) = struck
            && let Some(typed) = size(ui, sizing, label, of, now)
        {
            *now = typed;
        }
    }
    if let Some(bite) = size(ui, sizing, "Bite", of, &grown.bite) {
        grown.bite = bite;
    }
    let before = [(false, "the stock".to_owned()), (true, "what is before it".to_owned())];
    let is_same = *grown.of == SectionSpec::Same;
    let chosen = chooser::show(ui, sizing.theme, "Grows from", &format!("What {of} grows from"), is_same, &before);
    if let Some(same) = chosen {
        *grown.of = if same { SectionSpec::Same } else { SectionSpec::Stock };
    }
}
