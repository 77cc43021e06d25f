//! The thickness of a flag, and what is trimmed off.

use super::sizes::size;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, heading};
use egui::Ui;
use fh_core::plan::ThicknessSpec;
use fh_measure::WrittenShare;

/// Shows the sizes.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, thickness: &mut ThicknessSpec, trim: &mut Option<WrittenShare>) {
    heading::show(ui, sizing.theme, "Thickness");
    thickness_sizes(ui, sizing, thickness);
    let entry = Entry::named("Trimmed off", "Share trimmed off").hint("none");
    if let Some(share) = fields::optional_share(ui, sizing, &entry, trim.as_ref()) {
        *trim = share;
    }
}

fn thickness_sizes(ui: &mut Ui, sizing: &Sizing<'_>, thickness: &mut ThicknessSpec) {
    let tapered = matches!(thickness, ThicknessSpec::Tapered { .. });
    let choices = [(false, "even".to_owned()), (true, "from root to tip".to_owned())];
    match (chooser::show(ui, sizing.theme, "Varies", "How thickness runs", tapered, &choices), &*thickness) {
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
