//! Dressed lengths settled: where each lies on its part, on which side, and what metal it moves.

use super::dress_draft::DressDraft;
use super::{SegmentBalance, Settled};
use crate::metal::{Dressing, Moved, Shape, View, dressed_outline, in_mm, mm3, moved, ring_at};
use crate::plan::{Dressed, DressedSide};

impl Settled {
    /// It with what is dressed of it: so much less metal it holds as goes along the bar.
    pub(super) fn dressed_in(self, dressed: &[DressDraft], reversed: bool) -> Self {
        let Some(shape) = self.shape.as_ref().filter(|_| !dressed.is_empty()) else { return self };
        let dressings: Vec<Dressing> = dressed.iter().map(|one| one.settled(shape.length())).collect();
        let moved = moved(shape, reversed, &dressings);
        Self { dressed: dressings, moved, ..self }
    }

    /// Its shape before it is dressed.
    pub(super) fn before_dies(&self) -> Option<Shape> {
        self.shape.as_ref().map(|shape| before_dies(shape, self.moved))
    }
}

/// A part before it is dressed: shorter by what the dies will send along it.
fn before_dies(shape: &Shape, moved: Moved) -> Shape {
    let volume = (shape.volume() / mm3(1.0)).value;
    let left = 1.0 - moved.along_mm3 / volume.max(1e-12);
    let shorter = || shape.with_length(shape.length() * left);
    (moved.along_mm3 != 0.0).then(shorter).flatten().unwrap_or_else(|| shape.clone())
}

impl SegmentBalance {
    /// Its shape before it is dressed: shorter by what the dies will send along it. As it is where nothing of it is dressed.
    pub fn shape_before_dies(&self) -> Option<Shape> {
        self.shape.as_ref().map(|shape| before_dies(shape, self.moved))
    }
}

/// A dressed length as it is seen from one side.
#[derive(Clone, Debug, PartialEq)]
pub struct DressedSeen {
    /// Along the forged bar and up, or away from you, in mm: two corners across from each other.
    pub corners_mm: [[f64; 2]; 2],
    /// Whether it lies on the side away from the eye.
    pub is_hidden: bool,
}

impl DressedSeen {
    /// Its four edges, one after the other, each from where to where.
    pub fn edges_mm(&self) -> [[[f64; 2]; 2]; 4] {
        let [[from, low], [to, high]] = self.corners_mm;
        let corners = [[from, low], [to, low], [to, high], [from, high]];
        [0, 1, 2, 3].map(|index| [corners[index], corners[(index + 1) % 4]])
    }
}

impl SegmentBalance {
    /// Its dressed lengths as they are seen from a side while it is straight: from where to where they reach, and what of its width
    /// or its thickness they take.
    pub fn dressed_seen(&self, view: View) -> Vec<DressedSeen> {
        let Some(shape) = &self.shape else { return Vec::new() };
        self.dressed.iter().filter_map(|dressing| self.one_seen(shape, dressing, view)).collect()
    }

    fn one_seen(&self, shape: &Shape, dressing: &Dressing, view: View) -> Option<DressedSeen> {
        /// So finely the section is cut to be seen.
        const STEPS: usize = 32;
        /// A point that the die moves less than this, in mm, is not moved.
        const MOVED: f64 = 1e-3;
        let long = in_mm(shape.length());
        let [start, end] = [dressing.start, dressing.end].map(|place| in_mm(place).clamp(0.0, long));
        let middle = f64::midpoint(start, end);
        let outline = dressed_outline(shape, self.reversed, std::slice::from_ref(dressing), [STEPS, STEPS])?;
        let before = ring_at(&outline, shape, self.reversed, middle);
        let mut after = before.clone();
        dressing.press(&mut after, middle)?;
        let aside = |[toward, up]: [f64; 2]| match view {
            View::Side => up + self.offset_mm[1],
            View::Top => -toward - self.offset_mm[0],
        };
        let is_moved = |(one, other): &(&[f64; 2], &[f64; 2])| (one[0] - other[0]).hypot(one[1] - other[1]) > MOVED;
        // What only grows wider with the rest is not under the die.
        let (sin, cos) = dressing.side.sin_cos();
        let is_pressed = |(one, other): &(&[f64; 2], &[f64; 2])| {
            let high = |point: &[f64; 2]| point[0] * sin + point[1] * cos;
            high(one) - high(other) > MOVED
        };
        let pairs = before.iter().zip(&after).filter(is_moved).filter(is_pressed);
        let places = pairs.flat_map(|(one, other)| [aside(*one), aside(*other)]);
        let (low, high) =
            places.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)));
        let toward_eye = match view {
            View::Side => sin,
            View::Top => cos,
        };
        let from = in_mm(self.forged_start);
        (low < high && start < end).then_some(DressedSeen {
            corners_mm: [[from + start, low], [from + end, high]],
            is_hidden: toward_eye < -0.1,
        })
    }
}

impl Dressed {
    /// Whether its metal may go sideways, so that how much of it does is doubtful.
    pub(super) fn is_doubtful(&self) -> bool {
        self.die.kind().is_open()
    }

    /// Whether it is kept to a face of the part's bend.
    pub fn follows_bend(&self) -> bool {
        matches!(self.side, DressedSide::Outside | DressedSide::Inside)
    }
}
