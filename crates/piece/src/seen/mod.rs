//! What is seen of a solid from one side: its outline, and the arrises on the side that is seen.
//!
//! The faces that look at the eye lie, each once, on what is seen. Where one ends and no other goes on there is an edge; the
//! outline is that part of the edges which has metal on one side only.

mod edge;
mod joined;
mod nodes;
mod split;

use crate::Mesh;
use edge::{Edge, Place, bounds};
use fh_core::space::vector::{Vector, cross, dot, length, minus};
use joined::{loops, runs};
use split::split;

/// A face that is shortened to less than this share is seen from its edge.
const FACE_ON: f64 = 1e-6;
/// Faces that meet at less than this, in radians, are one curved face.
const ARRIS: f64 = 0.45;

/// What is seen of a solid, in mm to the right and up.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seen {
    /// Its outline: closed loops, round metal counter-clockwise, round a hole clockwise. The outermost come first.
    pub outline: Vec<Vec<[f64; 2]>>,
    /// The arrises between its outer edges, as open lines.
    pub arrises: Vec<Vec<[f64; 2]>>,
}

impl Seen {
    /// The outline as one closed line round all of its metal: from the first loop to each other one and back by the same way.
    pub fn area(&self) -> Vec<[f64; 2]> {
        let mut loops = self.outline.iter();
        let mut area = loops.next().cloned().unwrap_or_default();
        for other in loops {
            let Some((at, from)) = nearest(&area, other) else { continue };
            let round = other.iter().cycle().skip(from).take(other.len() + 1).copied();
            let back = area.get(at).copied();
            let rest = area.split_off((at + 1).min(area.len()));
            area.extend(round.chain(back));
            area.extend(rest);
        }
        area
    }

    /// It moved to the right and up, in mm.
    pub fn moved(mut self, by: [f64; 2]) -> Self {
        for place in self.outline.iter_mut().chain(&mut self.arrises).flatten() {
            *place = [place[0] + by[0], place[1] + by[1]];
        }
        self
    }
}

/// Which places of two lines lie nearest to each other.
fn nearest(one: &[Place], other: &[Place]) -> Option<(usize, usize)> {
    let pairs = one.iter().enumerate().flat_map(|(at, a)| {
        let apart = move |b: &Place| (a[0] - b[0]).powi(2) + (a[1] - b[1]).powi(2);
        other.iter().enumerate().map(move |(from, b)| (apart(b), at, from))
    });
    pairs.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, at, from)| (at, from))
}

impl Mesh {
    /// What is seen of it where `right` and `up`, two unit vectors at right angles, run to the right and up; nothing of what has
    /// no surface or cannot be measured.
    pub fn seen(&self, right: [f64; 3], up: [f64; 3]) -> Seen {
        let places: Vec<Place> = self.points.iter().map(|point| [dot(*point, right), dot(*point, up)]).collect();
        if places.iter().flatten().any(|mm| !mm.is_finite()) {
            return Seen::default();
        }
        let facing: Vec<&[u32; 3]> =
            self.triangles.iter().filter(|triangle| self.is_facing(triangle, &places)).collect();
        let sides = Sides::new(&facing);
        let edges: Vec<Edge> = sides.alone().map(|[a, b]| [places[a as usize], places[b as usize]]).collect();
        let outline = loops(&split(&edges), &edges);
        let outline = if holds_all(&outline, &edges) { outline } else { vec![hull(&places)] };
        let arrises: Vec<Edge> = sides
            .pairs()
            .filter(|(one, other, _)| self.meet_sharply(facing[*one], facing[*other]))
            .map(|(_, _, [a, b])| [places[a as usize], places[b as usize]])
            .collect();
        Seen { outline, arrises: runs(&arrises) }
    }

    /// Whether a face looks at the eye.
    fn is_facing(&self, triangle: &[u32; 3], places: &[Place]) -> bool {
        let [a, b, c] = triangle.map(|point| places[point as usize]);
        let twice = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
        twice > FACE_ON * length(self.normal(triangle))
    }

    /// Across a face, twice as long as its area.
    fn normal(&self, triangle: &[u32; 3]) -> Vector {
        let [a, b, c] = triangle.map(|point| self.points[point as usize]);
        cross(minus(b, a), minus(c, a))
    }

    fn meet_sharply(&self, one: &[u32; 3], other: &[u32; 3]) -> bool {
        let [one, other] = [one, other].map(|triangle| self.normal(triangle));
        let room = length(one) * length(other);
        room > 0.0 && dot(one, other) < room * ARRIS.cos()
    }
}

/// The sides of some faces, in order.
struct Sides {
    /// From the lower to the higher of its points, the face, and whether that face walks it the other way.
    all: Vec<([u32; 2], usize, bool)>,
}

impl Sides {
    fn new(faces: &[&[u32; 3]]) -> Self {
        let of_face = |(face, [a, b, c]): (usize, &&[u32; 3])| {
            [[*a, *b], [*b, *c], [*c, *a]].map(|[from, to]| ([from.min(to), from.max(to)], face, from > to))
        };
        let mut all: Vec<_> = faces.iter().enumerate().flat_map(of_face).collect();
        all.sort_unstable();
        Self { all }
    }

    /// Those that belong to one face only, as it walks them.
    fn alone(&self) -> impl Iterator<Item = [u32; 2]> + '_ {
        let single = |run: &&[([u32; 2], usize, bool)]| run.len() == 1;
        self.all.chunk_by(|a, b| a.0 == b.0).filter(single).map(|run| {
            let ([low, high], _, backward) = run[0];
            if backward { [high, low] } else { [low, high] }
        })
    }

    /// Those that two faces share.
    fn pairs(&self) -> impl Iterator<Item = (usize, usize, [u32; 2])> + '_ {
        let double = |run: &&[([u32; 2], usize, bool)]| run.len() == 2;
        self.all.chunk_by(|a, b| a.0 == b.0).filter(double).map(|run| (run[0].1, run[1].1, run[0].0))
    }
}

/// Whether loops reach as far as edges do: what was lost between them could not be joined.
fn holds_all(outline: &[Vec<Place>], edges: &[Edge]) -> bool {
    /// Less than this is not seen, in mm.
    const UNSEEN: f64 = 0.01;
    let (all, found) = (bounds(edges.iter().flatten()), bounds(outline.iter().flatten()));
    match (all, found) {
        (Some(all), Some(found)) => {
            all.iter().flatten().zip(found.iter().flatten()).all(|(one, other)| (one - other).abs() < UNSEEN)
        }
        (all, found) => all.is_none() && found.is_none(),
    }
}

/// The tightest loop without a hollow round some places, counter-clockwise.
fn hull(places: &[Place]) -> Vec<Place> {
    let mut sorted = places.to_vec();
    sorted.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    let turns = |[a, b]: [Place; 2], c: Place| (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0.0;
    let half = |places: &mut dyn Iterator<Item = Place>| {
        let mut half: Vec<Place> = Vec::new();
        for place in places {
            while half.len() > 1 && !turns([half[half.len() - 2], half[half.len() - 1]], place) {
                half.pop();
            }
            half.push(place);
        }
        half.pop();
        half
    };
    let mut all = half(&mut sorted.iter().copied());
    all.extend(half(&mut sorted.iter().rev().copied()));
    all
}

#[cfg(test)]
mod tests;
