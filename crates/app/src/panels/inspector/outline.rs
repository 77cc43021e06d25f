//! The outline of a flag or a boss, seen from above.

use super::polygon;
use super::sizes::{caption, optional_length, size};
use crate::figures::mm;
use crate::widgets::{Sizing, chooser};
use egui::Ui;
use fh_core::balance::SegmentBalance;
use fh_core::metal::Shape;
use fh_core::plan::{OutlineKind, OutlineSpec, SizeName, SocketAxis};
use fh_measure::{LengthRange, WrittenLength};

/// A first outline in mm, where none of the sizes before can be kept.
const FIRST_MM: [f64; 2] = [60.0, 30.0];

/// Shows the outline's kind and sizes; `rolled` is the axis of the socket that a flag is rolled to, where it is.
pub(super) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    outline: &mut OutlineSpec,
    rolled: Option<SocketAxis>,
    balance: Option<&SegmentBalance>,
) {
    let choices: Vec<_> = OutlineKind::ALL.into_iter().map(|kind| (kind, kind.name().to_owned())).collect();
    if let Some(kind) = chooser::show(ui, sizing.theme, "Outline", "Outline", outline.kind(), &choices)
        && let Some(other) = convert(outline, kind, balance, sizing)
    {
        *outline = other;
    }
    match outline {
        OutlineSpec::Rectangle { length, width } => {
            let (across, along) = (Some(SocketAxis::Across), Some(SocketAxis::Along));
            rectangle_size(ui, sizing, SizeName::Length, length, rolled == across, balance);
            rectangle_size(ui, sizing, SizeName::Width, width, rolled == along, balance);
        }
        OutlineSpec::Ellipse { length, width }
        | OutlineSpec::Leaf { length, width }
        | OutlineSpec::Stadium { length, width } => {
            size(ui, sizing, "Length", length);
            size(ui, sizing, "Width", width);
        }
        OutlineSpec::Trapezoid { length, root, tip } => {
            size(ui, sizing, "Length", length);
            size(ui, sizing, "Width at the root", root);
            size(ui, sizing, "Width at the tip", tip);
        }
        OutlineSpec::Disc { diameter } => size(ui, sizing, "Diameter", diameter),
        OutlineSpec::Polygon(corners) => polygon::show(ui, sizing, corners),
    }
}

/// A size of a rectangle: it may be left out only where a socket makes it follow.
fn rectangle_size(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    name: SizeName,
    now: &mut Option<WrittenLength>,
    is_rolled: bool,
    balance: Option<&SegmentBalance>,
) {
    match now {
        Some(written) if !is_rolled => size(ui, sizing, &caption(name), written),
        _ => optional_length(ui, sizing, name, now, LengthRange::AboveZero, balance),
    }
}

/// Length and width of an outline as they are written, or as they follow.
fn written(
    outline: &OutlineSpec,
    balance: Option<&SegmentBalance>,
    sizing: &Sizing<'_>,
) -> Option<(WrittenLength, WrittenLength)> {
    let clone = |length: &WrittenLength, width: &WrittenLength| Some((length.clone(), width.clone()));
    match outline {
        OutlineSpec::Rectangle { length, width } => {
            let settled = settled_mm(balance).unwrap_or(FIRST_MM);
            let or = |written: &Option<WrittenLength>, mm: f64| written.clone().or_else(|| sizing.first.size(mm));
            Some((or(length, settled[0])?, or(width, settled[1])?))
        }
        OutlineSpec::Ellipse { length, width }
        | OutlineSpec::Leaf { length, width }
        | OutlineSpec::Stadium { length, width } => clone(length, width),
        OutlineSpec::Trapezoid { length, root, tip } => clone(length, if root.mm() > tip.mm() { root } else { tip }),
        OutlineSpec::Disc { diameter } => clone(diameter, diameter),
        OutlineSpec::Polygon(_) => Some((sizing.first.size(FIRST_MM[0])?, sizing.first.size(FIRST_MM[1])?)),
    }
}

fn settled_mm(balance: Option<&SegmentBalance>) -> Option<[f64; 2]> {
    match balance?.shape.as_ref()? {
        Shape::Flag { outline, .. } | Shape::Hole { outline, .. } => Some([mm(outline.length()), mm(outline.width())]),
        _ => None,
    }
}

/// Another outline that keeps length and width.
fn convert(
    now: &OutlineSpec,
    kind: OutlineKind,
    balance: Option<&SegmentBalance>,
    sizing: &Sizing<'_>,
) -> Option<OutlineSpec> {
    let (length, width) = written(now, balance, sizing)?;
    Some(match kind {
        OutlineKind::Rectangle => OutlineSpec::Rectangle { length: Some(length), width: Some(width) },
        OutlineKind::Trapezoid => {
            OutlineSpec::Trapezoid { length, root: sizing.first.size(width.mm() / 2.0)?, tip: width }
        }
        OutlineKind::Disc => OutlineSpec::Disc { diameter: length },
        OutlineKind::Ellipse => OutlineSpec::Ellipse { length, width },
        OutlineKind::Leaf => OutlineSpec::Leaf { length, width },
        OutlineKind::Stadium => OutlineSpec::Stadium { length, width },
        OutlineKind::Polygon => OutlineSpec::Polygon(polygon::first(sizing, &length, &width)?),
    })
}
