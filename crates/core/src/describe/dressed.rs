//! Dressed lengths in the smith's words: which die, how deep, on which side, from where to where.

use super::{Face, segment_end_words};
use crate::balance::{BarBalance, SegmentBalance};
use crate::metal::{Die, Dressing, in_mm, mm};
use crate::plan::{Bar, Dressed, DressedSide, PlanUnit};
use fh_measure::format_decimal;
use uom::si::f64::Length;

/// One line for each dressed length of a segment, and one for what becomes of its metal.
pub fn dressed_lines(unit: PlanUnit, bar: &Bar, worked: &BarBalance, at: usize) -> Vec<String> {
    let (Some(segment), Some(balance)) = (bar.segment(at), worked.segments.get(at)) else { return Vec::new() };
    let start = segment_end_words(bar, worked, at)[0];
    let each = segment.dressed.iter().zip(&balance.dressed);
    let mut lines: Vec<String> = each
        .map(|(dressed, dressing)| {
            let words = dressed_words(dressed, dressing, unit);
            let place = dressed_place_words(balance, dressing, unit, start);
            format!("dressed: {words}, {place}, forged")
        })
        .collect();
    lines.extend(dressed_longer_words(balance, unit));
    lines
}

/// What a die leaves, with its size: `groove 2 mm deep on the top, fuller of radius 3 mm`.
pub fn dressed_words(dressed: &Dressed, dressing: &Dressing, unit: PlanUnit) -> String {
    let depth = dressed.depth.text();
    let side = dressed_side_words(dressed, dressing);
    match dressing.die {
        Die::Fuller { .. } => format!("groove {depth} deep on {side}, {}", die_words(dressing, unit)),
        Die::FullerAcross { .. } => format!("groove {depth} deep across {side}, {}", die_words(dressing, unit)),
        Die::Swage { .. } => format!("{side} rounded, {depth} in the {}", die_words(dressing, unit)),
        Die::VBlock { .. } => format!("keel on {side}, {depth} in the {}", die_words(dressing, unit)),
    }
}

/// The side that is dressed: `the top`, `the outside of the bend, the bottom`.
pub fn dressed_side_words(dressed: &Dressed, dressing: &Dressing) -> String {
    let face = Face::at_radians(dressing.side).name();
    match dressed.side {
        DressedSide::Outside => format!("the outside of the bend, the {face}"),
        DressedSide::Inside => format!("the inside of the bend, the {face}"),
        DressedSide::Around(_) | DressedSide::Up => format!("the {face}"),
    }
}

/// A die with its whole size: `fuller of radius 3 mm`, `V-block of 90°`.
pub fn die_words(dressing: &Dressing, unit: PlanUnit) -> String {
    match dressing.die {
        Die::Fuller { radius } | Die::FullerAcross { radius } => {
            format!("fuller of radius {}", size_words(radius, unit))
        }
        Die::Swage { radius } => format!("swage of radius {}", size_words(radius, unit)),
        Die::VBlock { angle } => format!("V-block of {}", super::angle_words(angle)),
    }
}

/// From where to where it reaches on the forged part: `from 10 mm to 70 mm beyond its start`, `all along`.
pub fn dressed_place_words(balance: &SegmentBalance, dressing: &Dressing, unit: PlanUnit, start: &str) -> String {
    /// What lies nearer to an end than this, in mm, is there.
    const AT: f64 = 0.05;
    let words = |place: Length| size_words(place, unit);
    if let Die::FullerAcross { .. } = dressing.die {
        return format!("its middle {} from {start}", words((dressing.start + dressing.end) / 2.0));
    }
    let long = balance.forged_length;
    let (at_start, at_end) = (in_mm(dressing.start) < AT, in_mm(long - dressing.end).abs() < AT);
    match (at_start, at_end) {
        (true, true) => "all along".to_owned(),
        (true, false) => format!("from {start} for {}", words(dressing.end)),
        (false, true) => format!("from {} beyond {start} to the other end", words(dressing.start)),
        (false, false) => format!("from {} to {} beyond {start}", words(dressing.start), words(dressing.end)),
    }
}

/// By how much the dies make it longer, for its metal stays in it; none where they do not.
pub fn dressed_longer_words(balance: &SegmentBalance, unit: PlanUnit) -> Option<String> {
    /// Less than this, in mm, no smith measures.
    const LITTLE: f64 = 0.05;
    let before = balance.shape_before_dies()?.length();
    let longer = in_mm(balance.forged_length - before);
    let words = size_words(mm(longer.abs()), unit);
    // Of inches a little may come to nothing that can be said.
    let is_nothing = unit == PlanUnit::Inch && words.starts_with('0');
    (longer.abs() >= LITTLE && !is_nothing).then(|| format!("its metal stays in it: the dies make it {words} longer"))
}

/// A size: to a tenth of a millimetre, without a needless nought, or to 1/64 in.
fn size_words(size: Length, unit: PlanUnit) -> String {
    match unit {
        PlanUnit::Inch => unit.finest().round(in_mm(size)).text(),
        PlanUnit::Millimeter => format_decimal(in_mm(size), unit.length_unit(), 1),
    }
}
