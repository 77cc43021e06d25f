//! Places that are one: numbered once each.

use super::edge::Place;
use std::collections::HashMap;

/// Places closer than this, in mm, are one.
pub(super) const NEAR: f64 = 1e-5;

/// Numbered places.
#[derive(Default)]
pub(super) struct Nodes {
    pub(super) places: Vec<Place>,
    cells: HashMap<[i64; 2], usize>,
}

impl Nodes {
    /// The number of a place: that of one near it where there is one.
    pub(super) fn number(&mut self, place: Place) -> usize {
        let cell = place.map(|mm| (mm / NEAR).floor() as i64);
        for aside in -1..=1 {
            for above in -1..=1 {
                if let Some(found) = self.cells.get(&[cell[0] + aside, cell[1] + above]) {
                    return *found;
                }
            }
        }
        self.cells.insert(cell, self.places.len());
        self.places.push(place);
        self.places.len() - 1
    }
}
