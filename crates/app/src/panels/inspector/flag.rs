//! The thickness of a flag, and what is trimmed off.

use super::sizes::size;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, heading};
use egui::Ui;
use fh_core::forms::Flag;
use fh_core::plan::ThicknessSpec;

/// Shows the sizes.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, flag: &mut Flag, first: bool) {
    heading::show(ui, sizing.theme, "Thickness");
    thickness_sizes(ui, sizing, &mut flag.thickness);
    if !first || flag.joined {
        let ways = [(false, "at a neck".to_owned()), (true, "in one plate with the part before".to_owned())];
        if let Some(joined) = chooser::show(ui, sizing.theme, "Begins", "How the plate begins", flag.joined, &ways) {
            flag.joined = joined;
        }
    }
    if flag.blank.is_some() {
        // What is cut off follows from the blank.
        return;
    }
    let entry = Entry::named("Trimmed off", "Share trimmed off").hint("none");
    if let Some(share) = fields::optional_share(ui, sizing, &entry, flag.trim.as_ref()) {
        flag.trim = share;
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
