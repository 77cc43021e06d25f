//! The outline of a flag as a loop of points that keeps its area.

use fh_core::metal::{HoleSize, Outline, OutlineCorner, arc_swell};
use fh_measure::in_mm;
use std::f64::consts::{FRAC_PI_2, PI};

/// The fewest steps of an arc between two corners.
const LEAST_STEPS: f64 = 8.0;

/// The outline in mm: along the bar from its root, and toward the smith; a full turn is cut in `round` steps.
pub(super) fn outline_loop(outline: &Outline, round: usize) -> Vec<[f64; 2]> {
    let length = in_mm(outline.length());
    match outline {
        Outline::Rectangle { width, .. } => {
            let half = in_mm(*width) / 2.0;
            vec![[0.0, -half], [length, -half], [length, half], [0.0, half]]
        }
        Outline::Trapezoid { root, tip, .. } => {
            let (root, tip) = (in_mm(*root) / 2.0, in_mm(*tip) / 2.0);
            vec![[0.0, -root], [length, -tip], [length, tip], [0.0, root]]
        }
        Outline::Ellipse { width, .. } | Outline::Disc { diameter: width } => {
            ellipse([length / 2.0, 0.0], [length / 2.0, in_mm(*width) / 2.0], round)
        }
        Outline::Leaf { width, .. } => leaf(length, in_mm(*width), round),
        Outline::Stadium { width, .. } => stadium([length / 2.0, 0.0], [length, in_mm(*width)], round),
        // As the strip draws it: the second size of a corner runs away from the smith.
        Outline::Polygon(corners) => polygon(corners, round).into_iter().map(|[x, y]| [x, -y]).collect(),
        Outline::OffMiddle { outline, base } => {
            let up = in_mm(outline.width()) / 2.0 - in_mm(*base);
            outline_loop(outline, round).into_iter().map(|[along, toward]| [along, toward - up]).collect()
        }
    }
}

/// An outline by its corners, its arcs such that each keeps its area.
fn polygon(corners: &[OutlineCorner], round: usize) -> Vec<[f64; 2]> {
    let next = corners.iter().cycle().skip(1);
    let points: Vec<[f64; 2]> = corners
        .iter()
        .zip(next)
        .flat_map(|(corner, next)| match corner.arc_to(next) {
            None => vec![corner.at],
            Some((center, radius, [start, turn])) => {
                // Also a flat arc is seen to be round.
                let round = round.max((2.0 * PI / turn.abs().max(0.01) * LEAST_STEPS) as usize);
                arc(center, radius, [start, start + turn], round).collect()
            }
        })
        .collect();
    let root = in_mm(Outline::Polygon(corners.to_vec()).root());
    points.into_iter().map(|[along, across]| [along - root, across]).collect()
}

/// A hole's outline with its middle at a place along the bar, both in mm.
pub(super) fn hole_loop(hole: &HoleSize, at: f64, round: usize) -> Vec<[f64; 2]> {
    let (length, width) = (in_mm(hole.length()), in_mm(hole.width()));
    match hole {
        HoleSize::Square { .. } => {
            let half = length / 2.0;
            vec![[at - half, -half], [at + half, -half], [at + half, half], [at - half, half]]
        }
        HoleSize::Round { .. } => ellipse([at, 0.0], [length / 2.0, width / 2.0], round),
        HoleSize::Slot { .. } => stadium([at, 0.0], [length, width], round),
    }
}

/// An ellipse about a middle by its two half sizes.
fn ellipse(middle: [f64; 2], half: [f64; 2], round: usize) -> Vec<[f64; 2]> {
    let mut points = Vec::with_capacity(round + 4);
    for quarter in 0..4 {
        let start = f64::from(quarter) * FRAC_PI_2;
        points.extend(arc([0.0, 0.0], 1.0, [start, start + FRAC_PI_2], round));
    }
    points.iter().map(|[x, y]| [middle[0] + half[0] * x, middle[1] + half[1] * y]).collect()
}

/// Straight sides and round ends about a middle, by its sizes over all.
fn stadium(middle: [f64; 2], [length, width]: [f64; 2], round: usize) -> Vec<[f64; 2]> {
    let radius = length.min(width) / 2.0;
    let (ahead, aside) = (length / 2.0 - radius, width / 2.0 - radius);
    let mut points: Vec<[f64; 2]> = Vec::with_capacity(round + 8);
    for (quarter, [x, y]) in [[1.0, 1.0], [-1.0, 1.0], [-1.0, -1.0], [1.0, -1.0]].into_iter().enumerate() {
        let center = [middle[0] + x * ahead, middle[1] + y * aside];
        let start = quarter as f64 * FRAC_PI_2;
        points.extend(arc(center, radius, [start, start + FRAC_PI_2], round));
        points.push([center[0] + radius * (start + FRAC_PI_2).cos(), center[1] + radius * (start + FRAC_PI_2).sin()]);
    }
    points.dedup_by(|next, before| (next[0] - before[0]).abs() + (next[1] - before[1]).abs() < 1e-9);
    points
}

/// Two equal arcs through both tips: R = (L² + W²)/(4W), each of half angle 2 atan(W/L).
fn leaf(length: f64, width: f64, round: usize) -> Vec<[f64; 2]> {
    let radius = (length * length + width * width) / (4.0 * width);
    let spread = 2.0 * (width / length).atan();
    let mut points = Vec::with_capacity(round);
    for (turn, side) in [(-FRAC_PI_2, 1.0), (FRAC_PI_2, -1.0)] {
        let center = [length / 2.0, side * (radius - width / 2.0)];
        for span in [[turn - spread, turn], [turn, turn + spread]] {
            points.extend(arc(center, radius, span, round.max((PI / spread * 8.0) as usize)));
        }
    }
    points
}

/// The points of an arc but its last, such that its sector keeps its area.
fn arc(center: [f64; 2], radius: f64, [start, end]: [f64; 2], round: usize) -> impl Iterator<Item = [f64; 2]> {
    let steps = ((round as f64 * (end - start).abs() / (2.0 * PI)).ceil() as usize).max(2);
    let step = (end - start) / steps as f64;
    let swell = arc_swell(steps, step);
    (0..steps).map(move |index| {
        let reach = if index == 0 { radius } else { radius * swell };
        let (sin, cos) = (start + step * index as f64).sin_cos();
        [center[0] + reach * cos, center[1] + reach * sin]
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::f64::Length;
    use uom::si::length::millimeter;

    #[test]
    fn a_loop_keeps_its_area_and_its_sizes_over_all() {
        let mm = Length::new::<millimeter>;
        for (length, width) in [(60.0, 24.0), (24.0, 60.0), (30.0, 30.0)] {
            let (length, width) = (mm(length), mm(width));
            for outline in [
                Outline::Rectangle { length, width },
                Outline::Trapezoid { length, root: width / 2.0, tip: width },
                Outline::Ellipse { length, width },
                Outline::Stadium { length, width },
                Outline::Leaf { length, width },
            ] {
                let points = outline_loop(&outline, 16);
                let next = |index: usize| points[(index + 1) % points.len()];
                let area: f64 =
                    points.iter().enumerate().map(|(i, a)| (a[0] * next(i)[1] - next(i)[0] * a[1]) / 2.0).sum();
                let want = outline.area().get::<uom::si::area::square_millimeter>();
                assert!((area / want - 1.0).abs() < 1e-12, "{outline:?}: {area} {want}");
                let reach = points.iter().map(|point| point[1]).fold(0.0, f64::max);
                assert!((reach * 2.0 - in_mm(width)).abs() < 1e-9, "{outline:?}: {reach}");
            }
        }
    }
}
