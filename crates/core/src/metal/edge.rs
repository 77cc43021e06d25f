//! A side of an outline, straight or an arc: exact moments, where it lies, and where it meets another.
//!
//! All of it is plane geometry in mm.

use super::arc::less_sine;
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// A point in mm: along the bar from the root, and across it from the base line.
pub(crate) type Point = [f64; 2];

/// Points this close are one, in mm.
pub(super) const NEAR_MM: f64 = 1e-7;
/// An arc flatter than this is straight.
const FLAT: f64 = 1e-12;

/// A side from one corner to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Edge {
    pub(crate) from: Point,
    pub(crate) to: Point,
    /// The tangent of a quarter of the arc's angle; above 0 it runs counterclockwise, and lies to the right of its chord.
    pub(crate) bulge: f64,
}

impl Edge {
    /// How far it turns on its way, in radians; 0 where it is straight.
    pub(crate) fn turn(&self) -> f64 {
        if self.bulge.abs() < FLAT { 0.0 } else { 4.0 * self.bulge.atan() }
    }

    fn chord(&self) -> Point {
        less(self.to, self.from)
    }

    /// Center and radius of its circle; none where it is straight.
    pub(super) fn circle(&self) -> Option<(Point, f64)> {
        if self.bulge.abs() < FLAT {
            return None;
        }
        let ([dx, dy], k) = (self.chord(), self.bulge);
        // The center lies to the left of the chord, c/2 · (1 - k²)/(2k) from its middle.
        let rise = (1.0 - k * k) / (4.0 * k);
        let center =
            [f64::midpoint(self.from[0], self.to[0]) - dy * rise, f64::midpoint(self.from[1], self.to[1]) + dx * rise];
        Some((center, dx.hypot(dy) * (1.0 + k * k) / (4.0 * k.abs())))
    }

    /// The place at a share of its way.
    pub(crate) fn at(&self, share: f64) -> Point {
        if share <= 0.0 {
            return self.from;
        }
        if share >= 1.0 {
            return self.to;
        }
        match self.circle() {
            None => [0, 1].map(|axis| self.from[axis] + (self.to[axis] - self.from[axis]) * share),
            Some((center, _)) => {
                let ([x, y], (sin, cos)) = (less(self.from, center), (self.turn() * share).sin_cos());
                [center[0] + x * cos - y * sin, center[1] + x * sin + y * cos]
            }
        }
    }

    /// The direction it runs in at a share of its way; of no particular length.
    pub(super) fn way(&self, share: f64) -> Point {
        match self.circle() {
            None => self.chord(),
            Some((center, _)) => {
                let [x, y] = less(self.at(share), center);
                if self.bulge > 0.0 { [-y, x] } else { [y, -x] }
            }
        }
    }

    /// The piece of it from one share of its way to another.
    pub(super) fn part(&self, from: f64, to: f64) -> Self {
        let bulge = if self.turn() == 0.0 { 0.0 } else { (self.turn() * (to - from) / 4.0).tan() };
        Self { from: self.at(from), to: self.at(to), bulge }
    }

    /// What it adds to area, moment along and moment across (Green's theorem). The piece between an arc and its chord:
    /// area `R² (θ - sin θ)/2`, its moment about the center `c³/12` toward the arc's middle.
    pub(crate) fn moments(&self) -> [f64; 3] {
        let ([ax, ay], [bx, by]) = (self.from, self.to);
        let cross = ax * by - bx * ay;
        let straight = [cross / 2.0, (ax + bx) * cross / 6.0, (ay + by) * cross / 6.0];
        let Some((center, radius)) = self.circle() else { return straight };
        let [dx, dy] = self.chord();
        let (chord, sign) = (dx.hypot(dy), self.bulge.signum());
        let area = radius * radius * less_sine(self.turn().abs()) / 2.0 * sign;
        let to_middle = chord * chord * chord / 12.0;
        let toward = [dy / chord * to_middle, -dx / chord * to_middle];
        [straight[0] + area, straight[1] + area * center[0] + toward[0], straight[2] + area * center[1] + toward[1]]
    }

    /// The angle through which it is seen to run from a point, counterclockwise.
    pub(super) fn seen_from(&self, point: Point) -> f64 {
        let (a, b) = (less(self.from, point), less(self.to, point));
        // On the line of the chord, on whichever side of it, it is no more than half a turn.
        let aside = cross(a, b) + 0.0;
        let chord = aside.atan2(a[0] * b[0] + a[1] * b[1]);
        let Some((center, radius)) = self.circle() else { return chord };
        let between = distance(point, center) < radius && (aside < 0.0) == (self.bulge > 0.0);
        if between { chord + TAU * self.bulge.signum() } else { chord }
    }

    /// At which share of its way it comes nearest to a point of its line or circle; below 0 or above 1 beyond its ends.
    pub(super) fn share_of(&self, point: Point) -> f64 {
        match self.circle() {
            None => {
                let (way, off) = (self.chord(), less(point, self.from));
                (way[0] * off[0] + way[1] * off[1]) / (way[0] * way[0] + way[1] * way[1])
            }
            Some((center, _)) => {
                let (start, here) = (less(self.from, center), less(point, center));
                let sign = self.bulge.signum();
                let turned = (here[1].atan2(here[0]) - start[1].atan2(start[0])) * sign;
                let turned = turned.rem_euclid(TAU);
                let whole = self.turn().abs();
                // What lies beyond its end is nearer to its start, or not.
                if turned > whole && TAU - turned < turned - whole { (turned - TAU) / whole } else { turned / whole }
            }
        }
    }

    /// How far a point lies from it.
    pub(super) fn distance(&self, point: Point) -> f64 {
        let share = self.share_of(point);
        if !(0.0..=1.0).contains(&share) {
            return distance(point, self.from).min(distance(point, self.to));
        }
        match self.circle() {
            None => cross(self.chord(), less(point, self.from)).abs() / distance(self.from, self.to),
            Some((center, radius)) => (distance(point, center) - radius).abs(),
        }
    }

    /// The shares of its way at which it meets another side; where they run on one another, where that begins and ends.
    pub(super) fn meets(&self, other: &Self) -> Vec<f64> {
        let carriers = match (self.circle(), other.circle()) {
            (None, None) => lines_meet(self, other),
            (None, Some(circle)) => line_meets(self, circle),
            (Some(circle), None) => line_meets(other, circle),
            (Some(first), Some(second)) => circles_meet(first, second),
        };
        carriers
            .into_iter()
            .flatten()
            .chain([other.from, other.to])
            .filter(|point| self.distance(*point) < NEAR_MM && other.distance(*point) < NEAR_MM)
            .map(|point| self.share_of(point).clamp(0.0, 1.0))
            .collect()
    }

    /// The shares of its way at which it has turned to the right angles of a circle, or only to those along the bar.
    pub(super) fn quarters(&self, only_along: bool) -> Vec<f64> {
        let Some((center, _)) = self.circle() else { return Vec::new() };
        let (step, turn) = (if only_along { PI } else { FRAC_PI_2 }, self.turn());
        let [x, y] = less(self.from, center);
        let start = y.atan2(x);
        let (low, high) = (start.min(start + turn), start.max(start + turn));
        let mut shares: Vec<f64> = ((low / step).ceil() as i64..=(high / step).floor() as i64)
            .map(|quarter| (quarter as f64 * step - start) / turn)
            .filter(|share| *share > 0.0 && *share < 1.0)
            .collect();
        shares.sort_by(f64::total_cmp);
        shares
    }

    /// Where it crosses the bar at a place along it; of two sides that meet there one counts.
    pub(super) fn crossings(&self, along: f64) -> Vec<f64> {
        let ends = self.quarters(true).into_iter().chain([1.0]);
        let mut start = 0.0;
        let mut found = Vec::new();
        for end in ends {
            let (a, b) = (self.at(start), self.at(end));
            if (a[0] <= along) != (b[0] <= along) {
                found.push(match self.circle() {
                    None => a[1] + (b[1] - a[1]) * (along - a[0]) / (b[0] - a[0]),
                    Some((center, radius)) => {
                        let is_above = self.at(f64::midpoint(start, end))[1] > center[1];
                        let rise = (radius * radius - (along - center[0]).powi(2)).max(0.0).sqrt();
                        center[1] + if is_above { rise } else { -rise }
                    }
                });
            }
            start = end;
        }
        found
    }
}

pub(super) fn less(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1]]
}

fn cross(a: Point, b: Point) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

fn distance(a: Point, b: Point) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

type Meeting = [Option<Point>; 2];

fn lines_meet(first: &Edge, second: &Edge) -> Meeting {
    let (a, b) = (first.chord(), second.chord());
    let turned = cross(a, b);
    if turned.abs() <= f64::EPSILON * a[0].hypot(a[1]) * b[0].hypot(b[1]) {
        return [None, None];
    }
    let share = cross(less(second.from, first.from), b) / turned;
    [Some([first.from[0] + a[0] * share, first.from[1] + a[1] * share]), None]
}

fn line_meets(line: &Edge, (center, radius): (Point, f64)) -> Meeting {
    let way = line.chord();
    let length = way[0].hypot(way[1]);
    let unit = [way[0] / length, way[1] / length];
    let off = less(center, line.from);
    let along = off[0] * unit[0] + off[1] * unit[1];
    let beside = cross(unit, off);
    half_way(radius, beside).map_or([None, None], |half| {
        [along - half, along + half].map(|at| Some([line.from[0] + unit[0] * at, line.from[1] + unit[1] * at]))
    })
}

fn circles_meet((first, r1): (Point, f64), (second, r2): (Point, f64)) -> Meeting {
    let [dx, dy] = less(second, first);
    let apart = dx.hypot(dy);
    if apart < NEAR_MM {
        return [None, None];
    }
    let (unit, along) = ([dx / apart, dy / apart], (r1 * r1 - r2 * r2 + apart * apart) / (2.0 * apart));
    half_way(r1, along).map_or([None, None], |half| {
        [half, -half].map(|half| {
            Some([first[0] + unit[0] * along - unit[1] * half, first[1] + unit[1] * along + unit[0] * half])
        })
    })
}

/// Half the chord of a circle at a distance from its center; a line that only just misses it touches it.
fn half_way(radius: f64, beside: f64) -> Option<f64> {
    let square = radius * radius - beside * beside;
    (square >= -2.0 * radius * NEAR_MM).then(|| square.max(0.0).sqrt())
}
