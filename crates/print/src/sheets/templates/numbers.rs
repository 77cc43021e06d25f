//! Finds room beside the metal for the numbers of segments and for figures, so that nothing lies on anything.

use super::bend::line_points;
use super::faces::Sample;
use super::figure::{bounds, number_box, number_size, overlap};
use crate::drawing::{Item, Point, Text, at};
use crate::paper::Area;
use crate::pen::Pen;

/// From the metal to a number's box.
const OFFSETS_MM: [f64; 6] = [6.5, 10.0, 14.5, 20.0, 27.0, 35.0];
/// What stands farther from its metal than this has a line to it.
const POINTED_MM: f64 = 12.0;
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

    /// Keeps what comes after off a line.
    pub(super) fn keep_clear(&mut self, line: &Item) {
        self.metal.extend(line_points(line));
    }

    /// Words beside a bend with a line to its face; none where there is no room.
    pub(super) fn pointed(&mut self, samples: &[Sample], text: &Text) -> Option<Vec<Item>> {
        let half = text.width_mm() / 2.0;
        for offset in OFFSETS_MM {
            for share in SHARES {
                let sample = samples.get((share * samples.len().saturating_sub(1) as f64).round() as usize)?;
                for (face, sign) in [(sample.left, 1.0), (sample.right, -1.0)] {
                    let [ahead_x, ahead_y] = sample.leftward();
                    // Words are wide: beside the metal they need more room than over it.
                    let off = offset + half * ahead_x.abs();
                    let [x, y] = sample.aside((face + off) * sign);
                    let Some(words) = self.words(text, [at(x, -y + text.size_mm * 0.33)]) else { continue };
                    let from = sample.aside(face * sign);
                    let to = sample.aside((face + off - half * ahead_x.abs() - 3.0 * ahead_y.abs() - 1.0) * sign);
                    return Some(vec![Item::line(at(from[0], -from[1]), at(to[0], -to[1]), Pen::Leader), words]);
                }
            }
        }
        None
    }

    /// The number of a segment beside it; where there is no room at all it is left out, for the words under it name it.
    pub(super) fn place(&mut self, samples: &[Sample], number: &str) -> Vec<Item> {
        let [width, height] = number_size(number);
        for offset in OFFSETS_MM {
            for share in SHARES {
                let index = (share * samples.len().saturating_sub(1) as f64).round() as usize;
                let Some(sample) = samples.get(index) else { return Vec::new() };
                for (face, sign) in [(sample.left, 1.0), (sample.right, -1.0)] {
                    let [x, y] = sample.aside((face + offset) * sign);
                    let space = Area {
                        left: x - width / 2.0,
                        top: -y - height / 2.0,
                        right: x + width / 2.0,
                        bottom: -y + height / 2.0,
                    };
                    let [from, to] = [face, face + offset - height].map(|mm| sample.aside(mm * sign));
                    let line = Item::line(at(from[0], -from[1]), at(to[0], -to[1]), Pen::Leader);
                    if (offset <= POINTED_MM || self.is_free_of_words(&line)) && self.take(space) {
                        let line = Some(line).filter(|_| offset > POINTED_MM);
                        return line.into_iter().chain(number_box(at(x, -y), number)).collect();
                    }
                }
            }
        }
        Vec::new()
    }

    /// Whether a line lies on nothing that is written.
    fn is_free_of_words(&self, line: &Item) -> bool {
        let inside = |area: &Area, point: &Point| {
            point.x > area.left && point.x < area.right && point.y > area.top && point.y < area.bottom
        };
        !line_points(line).iter().any(|point| self.taken.iter().any(|area| inside(area, point)))
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
