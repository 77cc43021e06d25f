//! The hole of a boss: how it is made, its shape and sizes, what the punch drives out, and where it lies.

use super::sizes::named_size;
use crate::figures;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields};
use egui::Ui;
use fh_core::balance::SegmentBalance;
use fh_core::metal::Shape;
use fh_core::new_segment::convert_hole;
use fh_core::plan::{HoleKind, HoleSpec, Made};
use fh_measure::{LengthRange, WrittenLength};

/// The one hole of a boss, where it is named.
pub(super) const THE_HOLE: &str = "the hole";

/// Shows how the hole is made. Only a punch drives out a slug.
pub(super) fn way(ui: &mut Ui, sizing: &Sizing<'_>, made: &mut Made, slug: &mut Option<WrittenLength>, of: &str) {
    let ways: Vec<_> = Made::ALL.into_iter().map(|made| (made, made.name().to_owned())).collect();
    if let Some(choice) = chooser::show(ui, sizing.theme, "Made by", &format!("How {of} is made"), *made, &ways) {
        *made = choice;
        slug.take_if(|_| choice != Made::Punched);
    }
    if *made != Made::Punched && slug.is_none() {
        return;
    }
    let name = if of == THE_HOLE { "Diameter of the slug".to_owned() } else { format!("Diameter of the slug of {of}") };
    let entry = Entry::named("Slug", &name).hint("the whole hole");
    if let Some(typed) = fields::optional_length(ui, sizing, &entry, slug.as_ref(), LengthRange::AboveZero, None) {
        *slug = typed;
    }
}

/// Shows the shape of the hole and its sizes.
pub(super) fn shape(ui: &mut Ui, sizing: &Sizing<'_>, hole: &mut HoleSpec, of: &str) {
    let kinds: Vec<_> = HoleKind::ALL.into_iter().map(|kind| (kind, kind.name().to_owned())).collect();
    if let Some(kind) = chooser::show(ui, sizing.theme, "Hole", &format!("Shape of {of}"), hole.kind(), &kinds)
        && let Some(other) = convert_hole(hole, kind, &sizing.first)
    {
        *hole = other;
    }
    match hole {
        HoleSpec::Round(diameter) => named_size(ui, sizing, "Diameter", &format!("Diameter of {of}"), diameter),
        HoleSpec::Square(side) => named_size(ui, sizing, "Side", &format!("Side of {of}"), side),
        HoleSpec::Slot { length, width } => {
            let slot = if of == THE_HOLE { "the slot" } else { of };
            named_size(ui, sizing, "Along the bar", &format!("Length of {slot}"), length);
            named_size(ui, sizing, "Across the bar", &format!("Width of {slot}"), width);
        }
    }
}

/// Shows where along the boss the middle of the hole lies.
pub(super) fn place(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    at: &mut Option<WrittenLength>,
    balance: Option<&SegmentBalance>,
) {
    let middle = match balance.and_then(|balance| balance.shape.as_ref()) {
        Some(Shape::Hole { at, .. }) => Some(*at),
        _ => None,
    };
    let hint = middle.map_or_else(String::new, |middle| format!("{}, the middle", sizing.words(middle)));
    let entry = Entry::named("From the root", "Middle of the hole, from the boss's root").hint(&hint);
    let follows = middle.map(figures::mm);
    if let Some(typed) = fields::optional_length(ui, sizing, &entry, at.as_ref(), LengthRange::AboveZero, follows) {
        *at = typed;
    }
}
