//! One answer to what is in a block, and the formulas for it: constant volume.

use crate::metal::SectionSize;
use fh_measure::{in_mm, in_mm2, in_mm3, mm};
use std::f64::consts::PI;
use uom::si::f64::{Length, Volume};

/// What could be made of all the metal of a block.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Answer {
    /// Drawn to a section.
    Drawn {
        /// The section.
        section: SectionSize,
        /// How long it is.
        length: Length,
    },
    /// A leaf of two equal arcs, twice as long as it is wide.
    Leaf {
        /// How thick it is.
        thickness: Length,
        /// How long it is.
        length: Length,
        /// How wide it is.
        width: Length,
    },
    /// A disc.
    Disc {
        /// How thick it is.
        thickness: Length,
        /// How far across it is.
        diameter: Length,
    },
}

/// How long metal is, drawn to a section.
pub fn length_as(metal: Volume, section: &SectionSize) -> Length {
    mm(in_mm3(metal) / in_mm2(section.area()))
}

/// How wide a leaf of two equal arcs is that holds the metal at a thickness and a length; none where it would be wider than
/// long.
///
/// With the half angle a of each arc the area is `L² (2a − sin 2a) / (4 sin² a)`, and the width `L tan(a/2)` (plane
/// geometry: two circular segments on one chord); the area grows with a, so the angle is bracketed.
pub fn leaf_width(metal: Volume, thickness: Length, length: Length) -> Option<Length> {
    let (area, long) = (in_mm3(metal) / in_mm(thickness), in_mm(length));
    let of = |half: f64| long * long * (2.0 * half - (2.0 * half).sin()) / (4.0 * half.sin().powi(2)) * 1.0;
    // At a quarter turn the leaf is a disc, as wide as it is long.
    if !(area > 0.0 && area <= PI / 4.0 * long * long) {
        return None;
    }
    let (mut low, mut high) = (0.0, PI / 2.0);
    for _ in 0..200 {
        let middle = f64::midpoint(low, high);
        if middle <= low || middle >= high {
            break;
        }
        if of(middle) < area { low = middle } else { high = middle }
    }
    Some(mm(long * (f64::midpoint(low, high) / 2.0).tan()))
}

/// How long and how wide a leaf is that is twice as long as wide, at a thickness.
///
/// With L = 2 W each arc has the radius 5 W / 4 and turns through 4 atan(1/2) (plane geometry).
pub fn twice_as_long_leaf(metal: Volume, thickness: Length) -> [Length; 2] {
    let turn = 4.0 * 0.5_f64.atan();
    let share = 25.0 / 16.0 * (turn - turn.sin());
    let width = (in_mm3(metal) / in_mm(thickness) / share).sqrt();
    [mm(2.0 * width), mm(width)]
}

/// How far across a disc is at a thickness.
pub fn disc_diameter(metal: Volume, thickness: Length) -> Length {
    mm((4.0 * in_mm3(metal) / in_mm(thickness) / PI).sqrt())
}
