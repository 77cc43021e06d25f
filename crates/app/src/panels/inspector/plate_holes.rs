//! The holes through a plate: how each is made, its shape and sizes, and where it lies.

use super::hole;
use super::sizes::named_size;
use crate::theme::space;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields, heading};
use egui::{Button, RichText, Ui, vec2};
use fh_core::balance::SegmentBalance;
use fh_core::forms::Flag;
use fh_core::plan::{MOST_HOLES, PlateHole};
use fh_measure::LengthRange;

/// Shows them, and the button for one more.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, plate: &mut Flag, balance: Option<&SegmentBalance>) {
    heading::show(ui, sizing.theme, "Holes");
    let mut removed = None;
    for (index, hole) in plate.holes.iter_mut().enumerate() {
        let of = format!("hole {}", index + 1);
        if head(ui, sizing, &of) {
            removed = Some(index);
        }
        one(ui, sizing, hole, &of);
    }
    if let Some(index) = removed {
        plate.holes.remove(index);
    }
    let shape = balance.and_then(|balance| balance.shape.as_ref());
    let add = ui.add_enabled(plate.holes.len() < MOST_HOLES && shape.is_some(), Button::new("Add a hole"));
    if add.on_hover_text("A hole like the last one, where the most metal is left round it.").clicked() {
        // Where there is no room nothing is added.
        let _ = plate.add_hole(shape, &sizing.first);
    }
}

/// The name of a hole with the button that takes it out; whether that was clicked.
fn head(ui: &mut Ui, sizing: &Sizing<'_>, of: &str) -> bool {
    let side = sizing.theme.scaled(space::TARGET);
    ui.horizontal(|ui| {
        let width = (ui.available_width() - side - space::GAP).max(0.0);
        let name = of.replacen('h', "H", 1);
        ui.allocate_ui(vec2(width, side), |ui| {
            ui.set_width(width);
            ui.label(RichText::new(name).color(sizing.theme.ink_quiet));
        });
        let remove = ui.add(Button::new("×").min_size(vec2(side, side))).on_hover_text("Take this hole out.");
        let clicked = remove.clicked();
        remove.accessible_name(format!("Take {of} out"));
        clicked
    })
    .inner
}

fn one(ui: &mut Ui, sizing: &Sizing<'_>, hole: &mut PlateHole, of: &str) {
    hole::way(ui, sizing, &mut hole.made, &mut hole.slug, of);
    hole::shape(ui, sizing, &mut hole.hole, of);
    named_size(ui, sizing, "From the root", &format!("Middle of {of}, from the root"), &mut hole.at);
    let name = format!("Middle of {of} across, away from you from the base line");
    let entry = Entry::named("Away from you", &name).hint("on the base line");
    if let Some(typed) = fields::optional_length(ui, sizing, &entry, hole.across.as_ref(), LengthRange::Any, None) {
        hole.across = typed;
    }
}
