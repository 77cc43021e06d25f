//! The ways to place words beside their part, the nearest first; each is worked out when it is asked for.

use crate::drawing::{Point, at};
use crate::paper::Area;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// From a part to its words, where they are nearest.
const NEAREST_MM: f64 = 4.0;
/// The same, where they are farthest.
const FARTHEST_MM: f64 = 34.0;
/// From one try to the next.
const TRY_MM: f64 = 1.1;
/// How far a leader leans to either side, in degrees.
const LEANS: [f64; 9] = [0.0, 18.0, -18.0, 36.0, -36.0, 54.0, -54.0, 80.0, -80.0];

/// Where a leader may start, which way its part runs there, and how far from the best that is.
pub(super) struct Start {
    pub(super) from: Point,
    pub(super) ahead: [f64; 2],
    pub(super) cost: f64,
}

/// One way to place words.
pub(super) struct Try {
    pub(super) cost: f64,
    pub(super) from: Point,
    pub(super) space: Area,
}

/// Every way to place words, the nearest first.
pub(super) struct Tries {
    size: [f64; 2],
    /// How far aside of a place the middle of the words may lie.
    asides: Vec<f64>,
    lanes: Vec<Lane>,
    /// The cost of each lane's next place, as bits, for those of what is not negative are in its order.
    next: BinaryHeap<Reverse<(u64, usize)>>,
}

/// The places for words in one direction from a start.
struct Lane {
    from: Point,
    away: [f64; 2],
    /// What the start and the lean add to the distance.
    cost: f64,
    far: f64,
}

impl Tries {
    /// For words of a width and a height in mm; long ones may as well start or end over their place.
    pub(super) fn new(size: [f64; 2], is_long: bool, starts: &[Start]) -> Self {
        let aside = (size[0] / 2.0 - 2.0).max(0.0);
        let asides = if is_long { vec![-aside, 0.0, aside] } else { vec![0.0] };
        let lanes: Vec<Lane> = starts
            .iter()
            .flat_map(|start| LEANS.into_iter().flat_map(|lean| [1.0, -1.0].map(|side| Lane::new(start, lean, side))))
            .collect();
        let next = lanes.iter().enumerate().map(|(at, lane)| Reverse((lane.bits(), at))).collect();
        Self { size, asides, lanes, next }
    }
}

impl Iterator for Tries {
    type Item = Vec<Try>;

    /// The ways that are as far from the best as each other.
    fn next(&mut self) -> Option<Vec<Try>> {
        let Reverse((_, at)) = self.next.pop()?;
        let lane = self.lanes.get_mut(at)?;
        let tries = lane.tries(self.size, &self.asides);
        lane.far += TRY_MM;
        if lane.far < FARTHEST_MM {
            self.next.push(Reverse((lane.bits(), at)));
        }
        Some(tries)
    }
}

impl Lane {
    fn new(start: &Start, lean: f64, side: f64) -> Self {
        let (sin, cos) = lean.to_radians().sin_cos();
        let away = [start.ahead[1] * side, -start.ahead[0] * side];
        let away = [away[0] * cos - away[1] * sin, away[0] * sin + away[1] * cos];
        Self { from: start.from, away, cost: lean.abs() / 12.0 + start.cost, far: NEAREST_MM }
    }

    fn bits(&self) -> u64 {
        (self.far + self.cost).to_bits()
    }

    fn tries(&self, size: [f64; 2], asides: &[f64]) -> Vec<Try> {
        let middle =
            |aside: f64| at(self.from.x + self.away[0] * self.far + aside, self.from.y + self.away[1] * self.far);
        let one = |aside: &f64| Try { cost: self.far + self.cost, from: self.from, space: middle(*aside).area(size) };
        asides.iter().map(one).collect()
    }
}
