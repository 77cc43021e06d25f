//! The sizes of a flag: its outline, its thickness, and what is trimmed off.

use super::form::size;
use super::polygon;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, heading};
use egui::Ui;
use fh_core::plan::{OutlineKind, OutlineSpec, ThicknessSpec};
use fh_measure::{WrittenLength, WrittenShare};

/// A first outline in mm, where none of the sizes before can be kept.
const FIRST_MM: [f64; 2] = [60.0, 30.0];

/// Shows the sizes.
pub(super) fn show(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    outline: &mut OutlineSpec,
    thickness: &mut ThicknessSpec,
    trim: &mut Option<WrittenShare>,
) {
    heading::show(ui, sizing.theme, "Outline, seen from above");
    let choices: Vec<_> = OutlineKind::ALL.into_iter().map(|kind| (kind, kind.name().to_owned())).collect();
    if let Some(kind) = chooser::show(ui, sizing.theme, "Outline", "Outline", outline.kind(), &choices)
        && let Some(other) = convert(outline, kind, sizing)
    {
        *outline = other;
    }
    outline_sizes(ui, sizing, outline);
    heading::show(ui, sizing.theme, "Thickness");
    thickness_sizes(ui, sizing, thickness);
    if let Some(share) = fields::optional_share(
        ui,
        sizing,
        &Entry::named("Trimmed off", "Share trimmed off").hint("none"),
        trim.as_ref(),
    ) {
        *trim = share;
    }
}

fn outline_sizes(ui: &mut Ui, sizing: &Sizing<'_>, outline: &mut OutlineSpec) {
    match outline {
        OutlineSpec::Rectangle { .. } => {}
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

fn thickness_sizes(ui: &mut Ui, sizing: &Sizing<'_>, thickness: &mut ThicknessSpec) {
    let tapered = matches!(thickness, ThicknessSpec::Tapered { .. });
    let choices = [(false, "even".to_owned()), (true, "from root to tip".to_owned())];
    match (chooser::show(ui, sizing.theme, "Runs", "How thickness runs", tapered, &choices), &*thickness) {
        (Some(true), ThicknessSpec::Even(even)) => {
            *thickness = ThicknessSpec::Tapered { root: even.clone(), tip: even.clone() };
        }
        (Some(false), ThicknessSpec::Tapered { root, .. }) => *thickness = ThicknessSpec::Even(root.clone()),
        _ => {}
    }
    match thickness {
        ThicknessSpec::Even(even) => size(ui, sizing, "Thickness", even),
        ThicknessSpec::Tapered { root, tip } => {
            size(ui, sizing, "Thickness at the root", root);
            size(ui, sizing, "Thickness at the tip", tip);
        }
    }
}

/// Length and width of an outline as they are written.
fn written(outline: &OutlineSpec, sizing: &Sizing<'_>) -> Option<(WrittenLength, WrittenLength)> {
    let clone = |length: &WrittenLength, width: &WrittenLength| Some((length.clone(), width.clone()));
    match outline {
        OutlineSpec::Rectangle { .. } => None,
        OutlineSpec::Ellipse { length, width }
        | OutlineSpec::Leaf { length, width }
        | OutlineSpec::Stadium { length, width } => clone(length, width),
        OutlineSpec::Trapezoid { length, root, tip } => clone(length, if root.mm() > tip.mm() { root } else { tip }),
        OutlineSpec::Disc { diameter } => clone(diameter, diameter),
        OutlineSpec::Polygon(_) => Some((sizing.size(FIRST_MM[0])?, sizing.size(FIRST_MM[1])?)),
    }
}

/// Another outline that keeps length and width.
fn convert(now: &OutlineSpec, kind: OutlineKind, sizing: &Sizing<'_>) -> Option<OutlineSpec> {
    let (length, width) = written(now, sizing)?;
    Some(match kind {
        OutlineKind::Rectangle => OutlineSpec::Rectangle { length: Some(length), width: Some(width) },
        OutlineKind::Trapezoid => OutlineSpec::Trapezoid { length, root: sizing.size(width.mm() / 2.0)?, tip: width },
        OutlineKind::Disc => OutlineSpec::Disc { diameter: length },
        OutlineKind::Ellipse => OutlineSpec::Ellipse { length, width },
        OutlineKind::Leaf => OutlineSpec::Leaf { length, width },
        OutlineKind::Stadium => OutlineSpec::Stadium { length, width },
        OutlineKind::Polygon => OutlineSpec::Polygon(polygon::first(sizing, &length, &width)?),
    })
}
