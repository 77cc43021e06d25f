//! Bars of one section, and of one running into another.

use super::loft::{Ring, loft, ring_of};
use crate::Mesh;
use crate::fineness::Fineness;
use fh_core::metal::{MatchedPoint, Runout, SectionSize, matched_outline};
use fh_core::space::Way;

/// One section all along.
pub(super) fn prism(section: &SectionSize, way: &Way, fineness: &Fineness) -> Mesh {
    let outline = outline([section, section], way, fineness);
    let ring = ring_of(&outline, 0.0, 0.0);
    let rings: Vec<Ring> =
        fineness.stations_mm(way).into_iter().map(|at| Ring { at, points: ring.points.clone() }).collect();
    loft(&rings, way.twist_radians != 0.0)
}

/// One section running into another.
pub(super) fn taper(
    [from, to]: [&SectionSize; 2],
    runout: Runout,
    reversed: bool,
    way: &Way,
    fineness: &Fineness,
) -> Mesh {
    let outline = outline([from, to], way, fineness);
    let ring = |at: f64| {
        let along = at / way.length_mm;
        ring_of(&outline, at, runout.share_at(if reversed { 1.0 - along } else { along }))
    };
    let rings: Vec<Ring> = stations(runout, reversed, way, fineness).into_iter().map(ring).collect();
    loft(&rings, way.twist_radians != 0.0)
}

/// Both outlines point by point; where the bar is twisted its faces are cut along, or they would bulge.
fn outline([from, to]: [&SectionSize; 2], way: &Way, fineness: &Fineness) -> Vec<MatchedPoint> {
    let outline = matched_outline(&from.section(), &to.section(), fineness.round);
    if way.twist_radians == 0.0 { outline } else { cut_edges(&outline, fineness.round / 4) }
}

/// Cuts the longer edges of an outline to no more than an even share of its perimeter, each in an even number of pieces.
pub(super) fn cut_edges(outline: &[MatchedPoint], parts: usize) -> Vec<MatchedPoint> {
    let next = |index: usize| outline[(index + 1) % outline.len()];
    let size = |a: &MatchedPoint, b: &MatchedPoint| {
        let of = |a: [f64; 2], b: [f64; 2]| (b[0] - a[0]).hypot(b[1] - a[1]);
        of(a.first, b.first).max(of(a.second, b.second))
    };
    let around: f64 = outline.iter().enumerate().map(|(index, point)| size(point, &next(index))).sum();
    let most = around / parts.max(1) as f64;
    let mut cut = Vec::with_capacity(outline.len() + parts);
    for (index, a) in outline.iter().enumerate() {
        let b = next(index);
        let shares = size(a, &b) / most;
        let pieces = if shares < 0.5 { 1 } else { 2 * (shares / 2.0 - 1e-9).ceil() as usize };
        let mix = |a: [f64; 2], b: [f64; 2], share: f64| [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
        for piece in 0..pieces {
            let share = piece as f64 / pieces as f64;
            cut.push(MatchedPoint { first: mix(a.first, b.first, share), second: mix(a.second, b.second, share) });
        }
    }
    cut
}

/// Where a taper is cut: as finely as its run-out needs, and as finely as its way does.
pub(super) fn stations(runout: Runout, reversed: bool, way: &Way, fineness: &Fineness) -> Vec<f64> {
    let along = fineness.stations_mm(way);
    let steps = if runout == Runout::Straight { 1 } else { fineness.runout };
    // For t^p the straight pieces between cuts miss least metal where the cuts lie as the cube root of its curvature asks.
    let bunching = if let Runout::Power(power) = runout { 3.0 / (power + 1.0) } else { 1.0 };
    let of_runout = (0..=steps).map(|step| {
        let share = (step as f64 / steps as f64).powf(bunching);
        way.length_mm * if reversed { 1.0 - share } else { share }
    });
    merged(along.into_iter().chain(of_runout).collect(), way.length_mm)
}

/// Places in order, those that all but touch only once; the first and the last stay where they are.
pub(super) fn merged(mut places: Vec<f64>, length: f64) -> Vec<f64> {
    places.sort_by(f64::total_cmp);
    let touching = length * 1e-6;
    let mut kept: Vec<f64> = Vec::with_capacity(places.len());
    for place in places {
        if kept.last().is_none_or(|last| place - last > touching) {
            kept.push(place);
        }
    }
    if let (Some(last), true) = (kept.last_mut(), length > 0.0) {
        *last = length;
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_that_touch_are_one() {
        assert_eq!(merged(vec![0.0, 1e-9, 5.0, 10.0 - 1e-9, 10.0], 10.0), [0.0, 5.0, 10.0]);
    }
}
