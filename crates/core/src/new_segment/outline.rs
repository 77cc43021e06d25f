//! An outline changed into another kind.

use crate::first_sizes::FirstSizes;
use crate::metal::{Shape, in_mm};
use crate::plan::{CornerSpec, Corners, OutlineKind, OutlineSpec};
use fh_measure::{LengthRange, WrittenLength};

/// A first outline in mm, where none of the sizes before can be kept.
const FIRST_MM: [f64; 2] = [60.0, 30.0];

/// Another outline that keeps length and width, as they are written or as the shape has them.
pub fn convert_outline(
    now: &OutlineSpec,
    kind: OutlineKind,
    shape: Option<&Shape>,
    sizes: &FirstSizes,
) -> Option<OutlineSpec> {
    let (length, width) = written(now, shape, sizes)?;
    Some(match kind {
        OutlineKind::Rectangle => OutlineSpec::Rectangle { length: Some(length), width: Some(width) },
        OutlineKind::Trapezoid => OutlineSpec::Trapezoid { length, root: sizes.size(width.mm() / 2.0)?, tip: width },
        OutlineKind::Disc => OutlineSpec::Disc { diameter: length },
        OutlineKind::Ellipse => OutlineSpec::Ellipse { length, width },
        OutlineKind::Leaf => OutlineSpec::Leaf { length, width },
        OutlineKind::Stadium => OutlineSpec::Stadium { length, width },
        OutlineKind::Polygon => OutlineSpec::Polygon(corners(now, [length.mm(), width.mm()], sizes)?),
    })
}

/// Length and width of an outline as they are written, or as they follow.
fn written(outline: &OutlineSpec, shape: Option<&Shape>, sizes: &FirstSizes) -> Option<(WrittenLength, WrittenLength)> {
    let clone = |length: &WrittenLength, width: &WrittenLength| Some((length.clone(), width.clone()));
    match outline {
        OutlineSpec::Rectangle { length, width } => {
            let settled = settled_mm(shape).unwrap_or(FIRST_MM);
            let or = |written: &Option<WrittenLength>, mm: f64| written.clone().or_else(|| sizes.size(mm));
            Some((or(length, settled[0])?, or(width, settled[1])?))
        }
        OutlineSpec::Ellipse { length, width }
        | OutlineSpec::Leaf { length, width }
        | OutlineSpec::Stadium { length, width } => clone(length, width),
        OutlineSpec::Trapezoid { length, root, tip } => clone(length, if root.mm() > tip.mm() { root } else { tip }),
        OutlineSpec::Disc { diameter } => clone(diameter, diameter),
        OutlineSpec::Polygon(_) => Some((sizes.size(FIRST_MM[0])?, sizes.size(FIRST_MM[1])?)),
    }
}

fn settled_mm(shape: Option<&Shape>) -> Option<[f64; 2]> {
    match shape? {
        Shape::Flag { outline, .. } | Shape::Hole { outline, .. } => {
            Some([in_mm(outline.length()), in_mm(outline.width())])
        }
        _ => None,
    }
}

/// A first outline by its corners: those that it has, or a kite of this length and width.
fn corners(now: &OutlineSpec, [length, width]: [f64; 2], sizes: &FirstSizes) -> Option<Corners> {
    let at = |along: f64, across: f64| {
        let write = |mm| WrittenLength::from_mm(mm, sizes.units.length.length_unit(), LengthRange::Any).ok();
        Some(CornerSpec::straight([write(along)?, write(across)?]))
    };
    let half = width / 2.0;
    let ends = match now {
        OutlineSpec::Rectangle { .. } => Some([half, half]),
        OutlineSpec::Trapezoid { root, tip, .. } => Some([root.mm() / 2.0, tip.mm() / 2.0]),
        _ => None,
    };
    if let Some([root, tip]) = ends {
        return Some(Corners(vec![at(0.0, -root)?, at(length, -tip)?, at(length, tip)?, at(0.0, root)?]));
    }
    Some(Corners(vec![at(0.0, 0.0)?, at(length / 2.0, half)?, at(length, 0.0)?, at(length / 2.0, -half)?]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::plan::Units;

    #[test]
    fn every_outline_becomes_every_other_and_keeps_its_length() {
        let sizes = FirstSizes::without_stock(Units::millimeters());
        let leaf = OutlineSpec::Leaf { length: sizes.size(80.0).unwrap(), width: sizes.size(25.0).unwrap() };
        for kind in OutlineKind::ALL {
            let other = convert_outline(&leaf, kind, None, &sizes).unwrap();
            assert_eq!(other.kind(), kind);
            if let Some(length) = other.length() {
                assert_eq!(length.text(), "80 mm", "{kind:?}");
            }
        }
    }

    #[test]
    fn a_rectangle_becomes_its_own_corners() {
        let sizes = FirstSizes::without_stock(Units::millimeters());
        let plate = OutlineSpec::Rectangle { length: sizes.size(70.0), width: sizes.size(40.0) };
        let polygon = convert_outline(&plate, OutlineKind::Polygon, None, &sizes).unwrap();
        let area = |outline: &OutlineSpec| crate::metal::Outline::from(outline).area();
        assert!(((area(&polygon) / area(&plate)).value - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_width_that_followed_is_written_as_the_shape_has_it() {
        let sizes = FirstSizes::without_stock(Units::millimeters());
        let rolled = OutlineSpec::Rectangle { length: sizes.size(80.0), width: None };
        let Some(OutlineSpec::Stadium { width, .. }) = convert_outline(&rolled, OutlineKind::Stadium, None, &sizes)
        else {
            panic!("a round-ended outline")
        };
        assert_eq!(width.text(), "30 mm");
    }
}
