//! The corners of a flag's outline: along the bar from the root, and across it.

use crate::theme::space;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields};
use egui::Ui;
use fh_core::plan::MOST_CORNERS;
use fh_measure::{LengthRange, WrittenLength};

/// An outline has three corners at least.
const LEAST_CORNERS: usize = 3;

/// A first outline: a kite of this length and width.
pub(super) fn first(
    sizing: &Sizing<'_>,
    length: &WrittenLength,
    width: &WrittenLength,
) -> Option<Vec<[WrittenLength; 2]>> {
    let at = |along: f64, across: f64| {
        let write = |mm| WrittenLength::from_mm(mm, sizing.units.length.length_unit(), LengthRange::Any).ok();
        Some([write(along)?, write(across)?])
    };
    let (length, half) = (length.mm(), width.mm() / 2.0);
    Some(vec![at(0.0, 0.0)?, at(length / 2.0, half)?, at(length, 0.0)?, at(length / 2.0, -half)?])
}

/// Shows the corners.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, corners: &mut Vec<[WrittenLength; 2]>) {
    let mut removed = None;
    for (index, [along, across]) in corners.iter_mut().enumerate() {
        let number = index + 1;
        coordinate(ui, sizing, &format!("{number} along"), &format!("Corner {number} along the bar"), along);
        coordinate(ui, sizing, &format!("{number} across"), &format!("Corner {number} across the bar"), across);
        let button = ui.small_button(format!("Remove corner {number}"));
        if button.clicked() {
            removed = Some(index);
        }
        ui.add_space(space::TIGHT);
    }
    if let Some(index) = removed.filter(|_| corners.len() > LEAST_CORNERS) {
        corners.remove(index);
    }
    if ui.add_enabled(corners.len() < MOST_CORNERS, egui::Button::new("Add a corner")).clicked() {
        add(corners, sizing);
    }
}

fn coordinate(ui: &mut Ui, sizing: &Sizing<'_>, label: &str, name: &str, now: &mut WrittenLength) {
    if let Some(value) = fields::length(ui, sizing, &Entry::named(label, name), now, LengthRange::Any) {
        *now = value;
    }
}

/// Adds a corner halfway between the last and the first.
fn add(corners: &mut Vec<[WrittenLength; 2]>, sizing: &Sizing<'_>) {
    let (Some(first), Some(last)) = (corners.first(), corners.last()) else { return };
    let unit = sizing.units.length.length_unit();
    let middle = |axis: usize| {
        let mm = f64::midpoint(first[axis].mm(), last[axis].mm());
        WrittenLength::from_mm(mm, unit, LengthRange::Any).ok()
    };
    if let (Some(along), Some(across)) = (middle(0), middle(1)) {
        corners.push([along, across]);
    }
}
