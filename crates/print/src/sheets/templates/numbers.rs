//! Finds room beside the metal for the numbers of segments and for figures, so that nothing lies on anything.

use super::faces::Sample;
use super::figure::{bounds, number_box, number_size, overlap, union};
use super::on_paper::{line_points, on_paper};
use crate::drawing::{Item, Point, Text, at};
use crate::paper::Area;
use crate::pen::Pen;

/// From the metal to a number's box.
const OFFSETS_MM: [f64; 9] = [6.5, 10.0, 14.5, 20.0, 27.0, 35.0, 44.0, 54.0, 65.0];
/// What stands farther from its metal than this has a line to it.
const POINTED_MM: f64 = 12.0;
/// The share of a segment's length that its number is tried beside.
const SHARES: [f64; 5] = [0.5, 0.35, 0.65, 0.2, 0.8];
/// So near to where it starts a line is beside its own part.
const OWN_FACE_MM: f64 = 3.0;
/// A line keeps so far from other parts, whose faces are known by places up to 3 mm apart.
const OFF_METAL_MM: f64 = 1.6;
/// A number that has no room right beside its part is tried so far along it.
const ALONG_MM: [f64; 5] = [0.0, 9.0, -9.0, 18.0, -18.0];
/// Words over or under a bend stand in its middle, or so far aside of it, as a share of half their length.
const ASIDE: [f64; 3] = [0.0, 0.9, -0.9];
/// Between a number's box and the words after it.
const BOX_GAP_MM: f64 = 1.2;
/// Free between a number's box and anything else.
const CLEAR_MM: f64 = 0.9;

/// The room that is taken.
pub(super) struct Numbers {
    metal: Vec<Point>,
    taken: Vec<Area>,
    /// Lines to what stands farther off.
    lines: Vec<Point>,
}

impl Numbers {
    /// Only the metal is there, given by places on its faces.
    pub(super) fn new(metal: Vec<Point>) -> Self {
        Self { metal, taken: Vec::new(), lines: Vec::new() }
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

    /// The number of a bend and words beside it with a line to its face; none where there is no room.
    pub(super) fn pointed(&mut self, samples: &[Sample], number: &str, text: &Text) -> Option<Vec<Item>> {
        let half = (number_size(number)[0] + BOX_GAP_MM + text.width_mm()) / 2.0;
        for offset in OFFSETS_MM {
            for share in SHARES {
                let sample = samples.get((share * samples.len().saturating_sub(1) as f64).round() as usize)?;
                for (face, sign) in [(sample.left, 1.0), (sample.right, -1.0)] {
                    // Words are wide: beside the metal they need more room than over it.
                    let off = offset + half * sample.leftward()[0].abs();
                    let [x, y] = sample.aside((face + off) * sign);
                    let from = on_paper(sample.aside(face * sign));
                    let mut places = ASIDE.into_iter().map(|aside| at(x + aside * half, -y));
                    if let Some(items) = places.find_map(|place| self.pointed_at(from, place, number, text)) {
                        return Some(items);
                    }
                }
            }
        }
        None
    }

    /// The number and the words about a place, with a line from a face; none where they are in the way of anything.
    fn pointed_at(&mut self, from: Point, place: Point, number: &str, text: &Text) -> Option<Vec<Item>> {
        let [box_mm, height] = number_size(number);
        let half = (box_mm + BOX_GAP_MM + text.width_mm()) / 2.0;
        let words = text.clone().moved_to(at(place.x + half - text.width_mm() / 2.0, place.y + text.size_mm * 0.33));
        let boxed = number_box(at(place.x - half + box_mm / 2.0, place.y), number);
        let space = boxed.iter().map(bounds).fold(bounds(&words.clone().into()), union);
        let line = leader(from, place, [2.0 * half, height]);
        let is_clear = self.is_free_of_words(&line) && self.keeps_off_metal(&line) && self.take(space);
        is_clear.then(|| {
            self.lines.extend(line_points(&line));
            [line, words.into()].into_iter().chain(boxed).collect()
        })
    }

    /// The number of a segment beside it, farther off with a line to it; over another part only where there is no other way.
    pub(super) fn place(&mut self, samples: &[Sample], number: &str) -> Vec<Item> {
        let mut ways = [true, false].into_iter();
        ways.find_map(|off_metal| self.placed(samples, number, off_metal)).unwrap_or_default()
    }

    fn placed(&mut self, samples: &[Sample], number: &str, off_metal: bool) -> Option<Vec<Item>> {
        let size = number_size(number);
        for offset in OFFSETS_MM {
            for along in ALONG_MM {
                for share in SHARES {
                    let sample = samples.get((share * samples.len().saturating_sub(1) as f64).round() as usize)?;
                    for (face, sign) in [(sample.left, 1.0), (sample.right, -1.0)] {
                        let [x, y] = sample.aside((face + offset) * sign);
                        let place = on_paper([x + along * sample.ahead[0], y + along * sample.ahead[1]]);
                        let from = on_paper(sample.aside(face * sign));
                        let line = (offset > POINTED_MM || along != 0.0).then(|| leader(from, place, size));
                        let is_clear = line.as_ref().is_none_or(|line| {
                            self.is_free_of_words(line) && (!off_metal || self.keeps_off_metal(line))
                        });
                        if is_clear && self.take(place.area(size)) {
                            self.lines.extend(line.iter().flat_map(line_points));
                            return Some(line.into_iter().chain(number_box(place, number)).collect());
                        }
                    }
                }
            }
        }
        None
    }

    /// Whether a line from the face of its part runs over no other part.
    fn keeps_off_metal(&self, line: &Item) -> bool {
        let all = line_points(line);
        let Some(from) = all.first() else { return true };
        let apart = |a: &Point, b: &Point| (a.x - b.x).hypot(a.y - b.y);
        let beyond = all.iter().filter(|point| apart(point, from) > OWN_FACE_MM);
        !beyond.into_iter().any(|point| self.metal.iter().any(|metal| apart(point, metal) < OFF_METAL_MM))
    }

    /// Whether a line lies on nothing that is written.
    pub(super) fn is_free_of_words(&self, line: &Item) -> bool {
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
        let free =
            !self.taken.iter().any(|other| overlap(*other, wide)) && !self.metal.iter().chain(&self.lines).any(in_it);
        if free {
            self.taken.push(space);
        }
        free
    }
}

/// A line from a face to the nearest place beside what stands about a middle.
fn leader(from: Point, middle: Point, [width, height]: [f64; 2]) -> Item {
    let [wide, high] = [width, height].map(|mm| mm / 2.0 + CLEAR_MM);
    let to = at(from.x.clamp(middle.x - wide, middle.x + wide), from.y.clamp(middle.y - high, middle.y + high));
    Item::line(from, to, Pen::Leader)
}
