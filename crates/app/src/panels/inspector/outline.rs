//! The outline of a flag or a boss, seen from above.

use super::polygon;
use super::sizes::{caption, named_size, optional_length, size};
use crate::widgets::{Sizing, chooser};
use egui::Ui;
use fh_core::balance::SegmentBalance;
use fh_core::new_segment::convert_outline;
use fh_core::plan::{OutlineKind, OutlineSpec, SizeName, SocketAxis};
use fh_measure::{LengthRange, WrittenLength};

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
        && let Some(other) =
            convert_outline(outline, kind, balance.and_then(|balance| balance.shape.as_ref()), &sizing.first)
    {
        *outline = other;
    }
    sizes(ui, sizing, outline, None, rolled, balance);
}

/// Shows an outline's sizes; `of` says of what they are where a part has two outlines.
pub(super) fn sizes(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    outline: &mut OutlineSpec,
    of: Option<&str>,
    rolled: Option<SocketAxis>,
    balance: Option<&SegmentBalance>,
) {
    let named = |label: &str| of.map_or_else(|| label.to_owned(), |of| format!("{label} of {of}"));
    let size = |ui: &mut Ui, label: &str, now: &mut WrittenLength| named_size(ui, sizing, label, &named(label), now);
    match outline {
        OutlineSpec::Rectangle { length: Some(length), width: Some(width) } if of.is_some() => {
            size(ui, "Length", length);
            size(ui, "Width", width);
        }
        OutlineSpec::Rectangle { length, width } => {
            let (across, along) = (Some(SocketAxis::Across), Some(SocketAxis::Along));
            rectangle_size(ui, sizing, SizeName::Length, length, rolled == across, balance);
            rectangle_size(ui, sizing, SizeName::Width, width, rolled == along, balance);
        }
        OutlineSpec::Ellipse { length, width }
        | OutlineSpec::Leaf { length, width }
        | OutlineSpec::Stadium { length, width } => {
            size(ui, "Length", length);
            size(ui, "Width", width);
        }
        OutlineSpec::Trapezoid { length, root, tip } => {
            size(ui, "Length", length);
            size(ui, "Width at the root", root);
            size(ui, "Width at the tip", tip);
        }
        OutlineSpec::Disc { diameter } => size(ui, "Diameter", diameter),
        OutlineSpec::Polygon(corners) => polygon::show(ui, sizing, corners, of),
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
