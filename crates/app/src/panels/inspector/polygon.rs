//! The corners of an outline: along the bar from the root, and across it; and the arcs between them.

use crate::theme::space;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::{Button, Label, RichText, Ui, vec2};
use fh_core::plan::{ArcSpec, Bulges, CornerSpec, Corners, LEAST_CORNERS, MOST_CORNERS};
use fh_measure::{LengthRange, WrittenAngle, WrittenLength};

/// The width of a corner's number, in points at normal text size.
const NUMBER: f32 = 20.0;
/// How far round a first arc goes, in degrees.
const FIRST_ARC: f64 = 90.0;

/// Shows the corners; `of` says of what they are where a part has two outlines.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, Corners(corners): &mut Corners, of: Option<&str>) {
    let mut removed = None;
    let (count, can_remove) = (corners.len(), corners.len() > LEAST_CORNERS);
    let of = of.map_or_else(String::new, |of| format!(" of {of}"));
    ui.label(RichText::new("Each corner: along the bar from the root, and across it.").color(sizing.theme.ink_quiet));
    for (index, corner) in corners.iter_mut().enumerate() {
        let name = format!("orner {}{of}", index + 1);
        if corner_line(ui, sizing, (index + 1, &name), &mut corner.at, can_remove) {
            removed = Some(index);
        }
        arc_line(ui, sizing, (&name, (index + 1) % count + 1), &mut corner.arc);
    }
    if let Some(index) = removed {
        corners.remove(index);
    }
    add_arc(ui, sizing, corners, &of);
    let add_corner = ui.add_enabled(corners.len() < MOST_CORNERS, Button::new("Add a corner"));
    if add_corner.clicked() {
        add(corners, sizing);
    }
    if !of.is_empty() {
        add_corner.accessible_name(format!("Add a corner{of}"));
    }
}

/// A corner in one line; whether it is to be removed.
fn corner_line(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    (number, name): (usize, &str),
    [along, across]: &mut [WrittenLength; 2],
    can_remove: bool,
) -> bool {
    let label = number.to_string();
    let button = sizing.theme.scaled(space::TARGET);
    ui.horizontal_top(|ui| {
        let number_width = sizing.theme.scaled(NUMBER);
        ui.add_sized([number_width, button], Label::new(RichText::new(label).color(sizing.theme.ink_quiet)));
        let width = ((ui.available_width() - button - 2.0 * space::GAP) / 2.0).floor();
        coordinate(ui, sizing, width, &format!("C{name} along the bar"), along);
        coordinate(ui, sizing, width, &format!("C{name} across the bar"), across);
        remove_button(ui, sizing, can_remove, "Remove this corner.", &format!("Remove c{name}"))
    })
    .inner
}

/// The button at the end of a line; whether it was clicked.
fn remove_button(ui: &mut Ui, sizing: &Sizing<'_>, enabled: bool, hover: &str, name: &str) -> bool {
    let button = sizing.theme.scaled(space::TARGET);
    let remove = ui.add_enabled(enabled, Button::new("×").min_size(vec2(button, button)));
    let remove = remove.on_hover_text(hover);
    let clicked = remove.clicked();
    remove.accessible_name(name);
    clicked
}

/// The arc from a corner to the next one, where there is one.
fn arc_line(ui: &mut Ui, sizing: &Sizing<'_>, (name, next): (&str, usize), arc: &mut Option<ArcSpec>) {
    let Some(now) = arc else { return };
    let entry = format!("Arc from c{name} to {next}");
    let label = format!("Arc to {next}");
    if let Some(angle) = fields::angle(ui, sizing, &Entry::named(&label, &entry), &now.arc) {
        now.arc = angle;
    }
    let choices = [
        (Some(Bulges::Out), "out".to_owned()),
        (Some(Bulges::In), "in, a hollow".to_owned()),
        (None, "no arc".to_owned()),
    ];
    let bulges = format!("Which way the arc from c{name} bulges");
    match chooser::show(ui, sizing.theme, "Bulges", &bulges, Some(now.bulges), &choices) {
        Some(Some(bulges)) => now.bulges = bulges,
        Some(None) => *arc = None,
        None => {}
    }
}

/// Makes a straight side an arc.
fn add_arc(ui: &mut Ui, sizing: &Sizing<'_>, corners: &mut [CornerSpec], of: &str) {
    let count = corners.len();
    let straight = corners.iter().enumerate().filter(|(_, corner)| corner.arc.is_none());
    let sides = straight.map(|(index, _)| (Some(index), format!("from {} to {}", index + 1, (index + 1) % count + 1)));
    let choices: Vec<_> = std::iter::once((None, "choose a side".to_owned())).chain(sides).collect();
    let name = format!("Add an arc{of}");
    let chosen = chooser::show(ui, sizing.theme, "Add an arc", &name, None, &choices).flatten();
    let corner = chosen.and_then(|index| corners.get_mut(index));
    if let (Some(corner), Ok(arc)) = (corner, WrittenAngle::from_degrees(FIRST_ARC)) {
        corner.arc = Some(ArcSpec { arc, bulges: Bulges::Out });
    }
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
fn add(corners: &mut Vec<CornerSpec>, sizing: &Sizing<'_>) {
    let (Some(first), Some(last)) = (corners.first(), corners.last()) else { return };
    let unit = sizing.first.units.length.length_unit();
    let middle = |axis: usize| {
        let mm = f64::midpoint(first.at[axis].mm(), last.at[axis].mm());
        WrittenLength::from_mm(mm, unit, LengthRange::Any).ok()
    };
    if let (Some(along), Some(across)) = (middle(0), middle(1)) {
        corners.push(CornerSpec::straight([along, across]));
    }
}
