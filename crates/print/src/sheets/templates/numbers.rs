//! Finds room beside the metal for the numbers of segments and for figures, so that nothing lies on anything.

use super::faces::Sample;
use super::figure::{bounds, number_box, number_size, overlap};
use crate::drawing::{Item, Point, Text, at};
use crate::paper::Area;

/// From the metal to a number's box.
const OFFSETS_MM: [f64; 4] = [6.5, 10.0, 14.5, 20.0];
/// The share of a segment's length that its number is tried beside.
const SHARES: [f64; 5] = [0.5, 0.35, 0.65, 0.2, 0.8];
/// Free between a number's box and anything else.
const CLEAR_MM: f64 = 0.9;

/// The room that is taken.
pub(super) struct Numbers {
    metal: Vec<Point>,
    taken: Vec<Area>,
}

impl Numbers {
    /// Only the metal is there, given by places on its faces.
    pub(super) fn new(metal: Vec<Point>) -> Self {
        Self { metal, taken: Vec::new() }
    }

    /// Takes the room of items that are drawn in any case.
    pub(super) fn reserve(&mut self, items: &[Item]) {
        self.taken.extend(items.iter().map(bounds));
    }

    /// Words at the first of some places where they lie on nothing.
    pub(super) fn words(&mut self, text: &Text, places: impl IntoIterator<Item = Point>) -> Option<Item> {
        let placed = places.into_iter().map(|place| Item::from(text.clone().moved_to(place)));
        placed.into_iter().find(|item| self.take(bounds(item)))
    }

    /// The number of a segment beside it; where there is no room at all it is left out, for the words under it name it.
    pub(super) fn place(&mut self, samples: &[Sample], number: &str) -> Vec<Item> {
        let [width, height] = number_size(number);
        for offset in OFFSETS_MM {
            for share in SHARES {
                let index = (share * samples.len().saturating_sub(1) as f64).round() as usize;
                let Some(sample) = samples.get(index) else { return Vec::new() };
                for [x, y] in [sample.aside(sample.left + offset), sample.aside(-sample.right - offset)] {
                    let space = Area {
                        left: x - width / 2.0,
                        top: -y - height / 2.0,
                        right: x + width / 2.0,
                        bottom: -y + height / 2.0,
                    };
                    if self.take(space) {
                        return number_box(at(x, -y), number).to_vec();
                    }
                }
            }
        }
        Vec::new()
    }

    /// Takes a space if it is free.
    fn take(&mut self, space: Area) -> bool {
        let wide = Area {
            left: space.left - CLEAR_MM,
            top: space.top - CLEAR_MM,
            right: space.right + CLEAR_MM,
            bottom: space.bottom + CLEAR_MM,
        };
        let in_it =
            |point: &Point| point.x > wide.left && point.x < wide.right && point.y > wide.top && point.y < wide.bottom;
        let free = !self.taken.iter().any(|other| overlap(*other, wide)) && !self.metal.iter().any(in_it);
        if free {
            self.taken.push(space);
        }
        free
    }
}
