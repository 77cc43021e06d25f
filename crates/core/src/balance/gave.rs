//! The sizes that gave way to a length of bar, by their names.

use super::{Derived, GaveFor, Settled};
use crate::metal::{Outline, Shape};
use crate::plan::{Gives, SizeName};
use uom::si::f64::Length;

/// Names the sizes that gave, and for what.
pub(super) fn note_what_gave(settled: &mut Settled, gives: Gives, reason: GaveFor) {
    let Some(shape) = &settled.shape else { return };
    let sizes: Vec<(SizeName, Option<Length>)> = match (shape, gives) {
        (_, Gives::Nothing) => Vec::new(),
        (Shape::Ball { diameter }, _) => vec![(SizeName::Diameter, Some(*diameter))],
        (Shape::Cube { side }, _) => vec![(SizeName::Side, Some(*side))],
        (Shape::Flag { root, tip, .. }, Gives::Thickness) if root != tip => {
            vec![(SizeName::RootThickness, Some(*root)), (SizeName::TipThickness, Some(*tip))]
        }
        (Shape::Flag { blank: Some(blank), .. }, Gives::Length | Gives::Width) => {
            let outline = blank.outline.bare();
            vec![match (outline, gives) {
                (Outline::Disc { diameter }, _) => (SizeName::BlankDiameter, Some(*diameter)),
                (_, Gives::Length) => (SizeName::BlankLength, Some(outline.length())),
                _ => (SizeName::BlankWidth, Some(outline.width())),
            }]
        }
        (shape, Gives::Length) => vec![(SizeName::Length, Some(shape.length()))],
        (shape, Gives::Width) => vec![(SizeName::Width, shape.giving_width())],
        (shape, Gives::Thickness) => vec![(SizeName::Thickness, shape.giving_thickness())],
    };
    settled.derived.retain(|derived| !sizes.iter().any(|(name, _)| *name == derived.name));
    // A tied size that follows now was written, and gave with the length.
    let tied = |derived: &&mut Derived| derived.length.is_some() && derived.tied;
    for derived in settled.derived.iter_mut().filter(tied) {
        derived.gave = Some(reason);
    }
    for (name, size) in sizes {
        let gave = size.map(|size| Derived { gave: Some(reason), ..Derived::length(name, size, reason.words()) });
        settled.derived.extend(gave);
    }
}
