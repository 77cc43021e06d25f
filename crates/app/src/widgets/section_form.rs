//! The fields for a section: which kind it is, and its sizes.

use super::entry::Entry;
use super::{Sizing, chooser, fields};
use egui::Ui;
use fh_core::plan::{SectionKind, SectionSpec, SquareSpec};
use fh_measure::{LengthRange, WrittenLength};

/// How much thinner than wide a new flat is, and the like.
const FLATTER: f64 = 0.5;

/// Shows the fields; `of` says whose section it is, for example `section at its end`.
pub(crate) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    of: &str,
    now: &SectionSpec,
    kinds: &[SectionKind],
) -> Option<SectionSpec> {
    let choices: Vec<_> = kinds.iter().map(|kind| (*kind, kind_words(*kind))).collect();
    let kind = chooser::show(ui, sizing.theme, "Shape", &format!("Shape of {of}"), now.kind(), &choices);
    if let Some(kind) = kind {
        return convert(now, kind, sizing);
    }
    sizes(ui, sizing, of, now)
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
    }
    (next != *now).then_some(next)
}

/// The sizes of a section as it is written: width and thickness, where it has its own.
fn written(section: &SectionSpec) -> Option<(&WrittenLength, &WrittenLength)> {
    match section {
        SectionSpec::Stock | SectionSpec::Same | SectionSpec::Point => None,
        SectionSpec::Square(square) => Some((&square.side, &square.side)),
        SectionSpec::Round(size)
        | SectionSpec::Hexagon(size)
        | SectionSpec::Octagon(size)
        | SectionSpec::Diamond(size)
        | SectionSpec::Edge(size) => Some((size, size)),
        SectionSpec::Flat { width, thickness, .. } | SectionSpec::Oval { width, thickness } => Some((width, thickness)),
        SectionSpec::HalfRound { width, height } => Some((width, height)),
    }
}

/// A section of another kind that keeps the sizes it can; none where no size can be written.
pub(crate) fn convert(now: &SectionSpec, kind: SectionKind, sizing: &Sizing<'_>) -> Option<SectionSpec> {
    let [stock_width, stock_thickness] = sizing.stock_mm;
    let (width, thickness) = match written(now) {
        Some((width, thickness)) => (width.clone(), thickness.clone()),
        None => (sizing.size(stock_width)?, sizing.size(stock_thickness)?),
    };
    let thin = if thickness.mm() < width.mm() { thickness.clone() } else { sizing.size(width.mm() * FLATTER)? };
    Some(match kind {
        SectionKind::Stock => SectionSpec::Stock,
        SectionKind::Same => SectionSpec::Same,
        SectionKind::Point => SectionSpec::Point,
        SectionKind::Square => SectionSpec::Square(SquareSpec { side: thickness, edge_radius: None }),
        SectionKind::Round => SectionSpec::Round(thickness),
        SectionKind::Hexagon => SectionSpec::Hexagon(thickness),
        SectionKind::Octagon => SectionSpec::Octagon(thickness),
        SectionKind::Diamond => SectionSpec::Diamond(thickness),
        SectionKind::Edge => SectionSpec::Edge(width),
        SectionKind::Flat => SectionSpec::Flat { width, thickness: thin, edge_radius: None },
        SectionKind::Oval => SectionSpec::Oval { width, thickness: thin },
        SectionKind::HalfRound => SectionSpec::HalfRound { width, height: thin },
    })
}
