//! A blank that a plate is cut from, as it is first offered, and the base line that goes with it.

use super::convert_outline;
use crate::first_sizes::FirstSizes;
use crate::forms::Flag;
use crate::metal::{Outline, Shape, in_mm};
use crate::plan::{BaseLine, OutlineKind, OutlineSpec};
use fh_measure::{LengthRange, WrittenLength};

/// Gives a flag a blank of a kind, or takes it away. The first one holds all of the outline; another kind keeps its sizes.
pub fn set_blank(flag: &mut Flag, kind: Option<OutlineKind>, shape: Option<&Shape>, sizes: &FirstSizes) {
    match (kind, &flag.blank) {
        (None, _) => flag.blank = None,
        (Some(kind), Some(blank)) => {
            let of_blank = shape.and_then(Shape::blank);
            if let Some(other) = convert_outline(blank, kind, of_blank.as_ref(), sizes) {
                flag.blank = Some(other);
            }
        }
        (Some(kind), None) => {
            let Some((rectangle, base)) = around(flag, shape, sizes) else { return };
            flag.blank = convert_outline(&rectangle, kind, None, sizes);
            flag.trim = None;
            if let (Some(base), Some(_)) = (base, &flag.blank) {
                flag.base_line.get_or_insert_default().blank = Some(base);
            }
        }
    }
    tidy_base_line(flag);
}

/// Takes away what a base line can't say: a polygon's corners count from it already, and a blank may not be there.
pub fn tidy_base_line(flag: &mut Flag) {
    let by_corners = |outline: &OutlineSpec| matches!(outline, OutlineSpec::Polygon(_));
    let Some(base) = &mut flag.base_line else { return };
    let before = base.clone();
    if by_corners(&flag.outline) {
        base.outline = None;
    }
    if flag.blank.as_ref().is_none_or(by_corners) {
        base.blank = None;
    }
    // What was written empty stays as it is.
    if *base != before && *base == BaseLine::default() {
        flag.base_line = None;
    }
}

/// The rectangle around an outline, and how far the base line lies from its edge where that is not its middle.
fn around(flag: &Flag, shape: Option<&Shape>, sizes: &FirstSizes) -> Option<(OutlineSpec, Option<WrittenLength>)> {
    let outline = match shape {
        Some(Shape::Flag { outline, .. }) => outline.clone(),
        _ => Outline::from(&flag.outline),
    };
    let [low, high] = outline.across_mm();
    let unit = sizes.units.length.length_unit();
    // In the middle of a bar a blank that runs on beyond its outline hangs on nothing.
    let length = WrittenLength::from_mm(in_mm(outline.length()), unit, LengthRange::AboveZero).ok()?;
    let width = sizes.size_that_holds(high - low)?;
    let is_middle = (low + high).abs() < 1e-6 * (high - low);
    let base =
        if is_middle { None } else { WrittenLength::from_mm((-low).max(0.0), unit, LengthRange::ZeroOrMore).ok() };
    Some((OutlineSpec::Rectangle { length: Some(length), width: Some(width) }, base))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::plan::Units;

    fn latch() -> Flag {
        let text = r#"{ "outline": { "polygon": [["0 mm", "0 mm"], ["70 mm", "0 mm"], ["50 mm", "32 mm"], ["0 mm", "40 mm"]] },
            "thickness": "4 mm", "trim": "5 %" }"#;
        serde_json::from_str(text).unwrap()
    }

    #[test]
    fn a_first_blank_holds_the_outline_and_takes_the_place_of_what_is_trimmed() {
        let (mut flag, sizes) = (latch(), FirstSizes::without_stock(Units::millimeters()));
        set_blank(&mut flag, Some(OutlineKind::Rectangle), None, &sizes);
        assert_eq!(flag.blank.as_ref().unwrap().describe(), "rectangle 70 mm × 40 mm");
        assert_eq!(flag.base_line.as_ref().unwrap().blank.as_ref().unwrap().mm(), 0.0);
        assert!(flag.trim.is_none());
        let outlines = [&flag.outline, flag.blank.as_ref().unwrap()].map(Outline::from);
        let shape = Shape::flag(
            outlines[0].clone(),
            Some(outlines[1].clone().on_base_line(Some(crate::metal::mm(0.0)))),
            crate::metal::mm(4.0),
            crate::metal::mm(4.0),
        );
        assert_eq!(shape.cut().unwrap().missing_area.value, 0.0);
    }

    #[test]
    fn a_first_blank_is_never_rounded_to_less_than_its_outline() {
        let sizes = FirstSizes::without_stock(Units::millimeters());
        for (width, blank) in [("31 mm", "rectangle 72 mm × 35 mm"), ("13.1 mm", "rectangle 72 mm × 13.5 mm")] {
            let text = format!(
                r#"{{ "outline": {{ "polygon": [["0 mm", "0 mm"], ["72 mm", "0 mm"], ["0 mm", "{width}"]] }}, "thickness": "4 mm" }}"#
            );
            let mut flag: Flag = serde_json::from_str(&text).unwrap();
            set_blank(&mut flag, Some(OutlineKind::Rectangle), None, &sizes);
            assert_eq!(flag.blank.as_ref().unwrap().describe(), blank);
        }
    }

    #[test]
    fn a_blank_that_goes_takes_its_base_line_along_and_one_of_another_kind_keeps_its_sizes() {
        let (mut flag, sizes) = (latch(), FirstSizes::without_stock(Units::millimeters()));
        set_blank(&mut flag, Some(OutlineKind::Rectangle), None, &sizes);
        set_blank(&mut flag, Some(OutlineKind::Stadium), None, &sizes);
        assert_eq!(flag.blank.as_ref().unwrap().describe(), "stadium 70 mm × 40 mm");
        set_blank(&mut flag, Some(OutlineKind::Polygon), None, &sizes);
        assert!(flag.base_line.is_none(), "its corners count from the base line");
        set_blank(&mut flag, Some(OutlineKind::Disc), None, &sizes);
        set_blank(&mut flag, None, None, &sizes);
        assert!(flag.blank.is_none() && flag.base_line.is_none());
    }
}
