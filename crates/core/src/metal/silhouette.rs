//! The silhouette of a shape, forged and still straight, as it is seen from the side or from above.

use super::{CornerSize, SectionSize, Shape, View, in_mm};
use crate::plan::Sides;
use std::f64::consts::{FRAC_PI_2, TAU};

/// Steps along a curved edge.
const STEPS: usize = 24;

impl Shape {
    /// Its outline in mm from its own start and middle: along the bar, then up (from the side) or away from you (from above).
    pub(crate) fn silhouette(&self, view: View) -> Vec<[f64; 2]> {
        let length = in_mm(self.length());
        match self {
            Self::Prism { section, .. } => strip(&[(0.0, half(section, view)), (length, half(section, view))]),
            Self::Taper { from, to, runout, .. } => {
                let (start, end) = (half(from, view), half(to, view));
                let steps = if matches!(runout, super::Runout::Straight) { 1 } else { STEPS };
                let edge: Vec<_> = (0..=steps)
                    .map(|step| {
                        let t = step as f64 / steps as f64;
                        (t * length, start + (end - start) * runout.share_at(t))
                    })
                    .collect();
                strip(&edge)
            }
            Self::Shoulder { from, to, sides, .. } => shoulder(from, to, sides, view, length),
            Self::Flag { outline, root, tip, .. } => match view {
                View::Top => outline.points_mm(),
                View::Side => strip(&[(0.0, in_mm(*root) / 2.0), (length, in_mm(*tip) / 2.0)]),
            },
            Self::Hole { outline, thickness, .. } => match view {
                View::Top => outline.points_mm(),
                View::Side => strip(&[(0.0, in_mm(*thickness) / 2.0), (length, in_mm(*thickness) / 2.0)]),
            },
            // Its branches are drawn, each with its own outline.
            Self::Split(_) => Vec::new(),
            Self::Peak { section, corner } => peak(section, corner, view, length),
            Self::Ball { .. } => (0..STEPS * 2)
                .map(|step| {
                    let (sin, cos) = (TAU * step as f64 / (STEPS * 2) as f64).sin_cos();
                    [length / 2.0 * (1.0 - cos), length / 2.0 * sin]
                })
                .collect(),
            Self::Cube { .. } => strip(&[(0.0, length / 2.0), (length, length / 2.0)]),
        }
    }

    /// How far the bar's middle moves across it, toward you and up, in mm: a one-sided set-down moves it.
    pub fn middle_shift(&self) -> [f64; 2] {
        let Self::Shoulder { from, to, sides, .. } = self else { return [0.0, 0.0] };
        let shift = |view: View, high: u16, low: u16| {
            let change = half(from, view) - half(to, view);
            match (sides.contains(high), sides.contains(low)) {
                (true, false) => -change,
                (false, true) => change,
                _ => 0.0,
            }
        };
        [shift(View::Top, 90, 270), shift(View::Side, 0, 180)]
    }
}

/// Half the size of a section that is seen.
fn half(section: &SectionSize, view: View) -> f64 {
    section.seen_mm(view) / 2.0
}

/// The closed outline of a symmetric strip through (along, half size).
fn strip(edge: &[(f64, f64)]) -> Vec<[f64; 2]> {
    let upper = edge.iter().map(|(x, h)| [*x, *h]);
    let lower = edge.iter().rev().map(|(x, h)| [*x, -*h]);
    upper.chain(lower).collect()
}

/// A step with its fillet: the fillet lies in the smaller section, against the larger one.
fn shoulder(from: &SectionSize, to: &SectionSize, sides: &Sides, view: View, length: f64) -> Vec<[f64; 2]> {
    let (before, after) = (half(from, view), half(to, view));
    let (low_half, falls) = (before.min(after), before >= after);
    let (high_side, low_side) = match view {
        View::Side => (0, 180),
        View::Top => (270, 90),
    };
    // Set down on one side the whole difference lies there, on both half of it on each.
    let sided = if sides.contains(high_side) && sides.contains(low_side) { 1.0 } else { 2.0 };
    let fillet = |stepped: bool| -> Vec<[f64; 2]> {
        let depth = if stepped { length.min((before - after).abs() * sided) } else { 0.0 };
        (0..=STEPS)
            .map(|step| {
                let (sin, cos) = (FRAC_PI_2 * step as f64 / STEPS as f64).sin_cos();
                let x = length * (1.0 - cos);
                [if falls { x } else { length - x }, low_half + depth * (1.0 - sin)]
            })
            .collect()
    };
    let mut upper = fillet(sides.contains(high_side));
    let mut lower: Vec<_> = fillet(sides.contains(low_side)).into_iter().map(|[x, h]| [x, -h]).collect();
    if falls {
        lower.reverse()
    } else {
        upper.reverse()
    }
    // The shape is placed by the middle of the section before it; where that is the larger, the smaller lies off the middle.
    let shift = middle_before(falls, before - after, sides, high_side, low_side);
    upper.into_iter().chain(lower).map(|[x, h]| [x, h + shift]).collect()
}

/// How far the smaller section's middle lies from the middle of the section before, upward as seen.
fn middle_before(falls: bool, change: f64, sides: &Sides, high: u16, low: u16) -> f64 {
    match (falls, sides.contains(high), sides.contains(low)) {
        (true, true, false) => -change,
        (true, false, true) => change,
        _ => 0.0,
    }
}

/// The legs' strip with the peak on the outside of the bend, where it is seen from this side.
fn peak(section: &SectionSize, corner: &CornerSize, view: View, length: f64) -> Vec<[f64; 2]> {
    let h = half(section, view);
    // The outside lies opposite to the side it is bent toward; from above, away from you is up.
    let outward = match view {
        View::Side => -corner.side.cos(),
        View::Top => corner.side.sin(),
    };
    let height = corner.peak_height_mm() * outward;
    let (top, bottom) = (h + height.max(0.0), -h + height.min(0.0));
    vec![[0.0, h], [length / 2.0, top], [length, h], [length, -h], [length / 2.0, bottom], [0.0, -h]]
}
