//! The corners of a flag's outline: along the bar from the root, and across it.

use crate::theme::space;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields};
use egui::{Button, Label, RichText, Ui, vec2};
use fh_core::plan::MOST_CORNERS;
use fh_measure::{LengthRange, WrittenLength};

/// An outline has three corners at least.
const LEAST_CORNERS: usize = 3;
/// The width of a corner's number, in points at normal text size.
const NUMBER: f32 = 20.0;

/// Shows the corners.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, corners: &mut Vec<[WrittenLength; 2]>) {
    let mut removed = None;
    let can_remove = corners.len() > LEAST_CORNERS;
    ui.label(RichText::new("Each corner: along the bar from the root, and across it.").color(sizing.theme.ink_quiet));
    for (index, corner) in corners.iter_mut().enumerate() {
        if corner_line(ui, sizing, index + 1, corner, can_remove) {
            removed = Some(index);
        }
    }
    if let Some(index) = removed {
        corners.remove(index);
    }
    if ui.add_enabled(corners.len() < MOST_CORNERS, Button::new("Add a corner")).clicked() {
        add(corners, sizing);
    }
}

/// A corner in one line; whether it is to be removed.
fn corner_line(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    number: usize,
    [along, across]: &mut [WrittenLength; 2],
    can_remove: bool,
) -> bool {
    let label = number.to_string();
    let button = sizing.theme.scaled(space::TARGET);
    ui.horizontal_top(|ui| {
        let number_width = sizing.theme.scaled(NUMBER);
        ui.add_sized([number_width, button], Label::new(RichText::new(label).color(sizing.theme.ink_quiet)));
        let width = ((ui.available_width() - button - 2.0 * space::GAP) / 2.0).floor();
        coordinate(ui, sizing, width, &format!("Corner {number} along the bar"), along);
        coordinate(ui, sizing, width, &format!("Corner {number} across the bar"), across);
        let remove = ui.add_enabled(can_remove, Button::new("×").min_size(vec2(button, button)));
        let remove = remove.on_hover_text("Remove this corner.");
        let clicked = remove.clicked();
        remove.accessible_name(format!("Remove corner {number}"));
        clicked
    })
    .inner
}

fn coordinate(ui: &mut Ui, sizing: &Sizing<'_>, width: f32, name: &str, now: &mut WrittenLength) {
    ui.allocate_ui(vec2(width, sizing.theme.scaled(space::TARGET)), |ui| {
        ui.set_width(width);
        if let Some(value) = fields::length(ui, sizing, &Entry::named("", name), now, LengthRange::Any) {
            *now = value;
        }
    });
}

/// Adds a corner halfway between the last and the first.
fn add(corners: &mut Vec<[WrittenLength; 2]>, sizing: &Sizing<'_>) {
    let (Some(first), Some(last)) = (corners.first(), corners.last()) else { return };
    let unit = sizing.first.units.length.length_unit();
    let middle = |axis: usize| {
        let mm = f64::midpoint(first[axis].mm(), last[axis].mm());
        WrittenLength::from_mm(mm, unit, LengthRange::Any).ok()
    };
    if let (Some(along), Some(across)) = (middle(0), middle(1)) {
        corners.push([along, across]);
    }
}
