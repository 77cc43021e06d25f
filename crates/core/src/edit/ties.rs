//! Sizes that are tied by a bend: all but one are given, and that one follows. Which one it is can be chosen.

use crate::balance::SegmentBalance;
use crate::first_sizes::FirstSizes;
use crate::forms;
use crate::plan::{Bend, Form, OutlineSpec, PlanUnit, Segment, SizeName, SocketAxis};
use fh_measure::{LengthRange, WrittenAngle, WrittenLength};
use std::f64::consts::{FRAC_PI_2, TAU};
use uom::si::length::millimeter;

/// A first length in mm where none can be told.
const LENGTH_MM: f64 = 100.0;
/// A first radius or diameter against the bar.
const SIZE: f64 = 2.0;

/// How far in mm a size may be moved to be written evenly: no mark shows it.
const SLACK_MM: f64 = 0.004;

/// The value of a tied size: mm, radians or turns.
type Value = f64;

/// The sizes that a segment's bend ties together.
pub fn tied(segment: &Segment) -> Vec<SizeName> {
    let mut all = tied_by_bend(segment);
    if segment.form.one().outline().is_some() && !matches!(segment.bend, Some(Bend::Socket { .. })) {
        // A plate keeps the length of its outline.
        all.retain(|size| *size != SizeName::Length);
    }
    all
}

fn tied_by_bend(segment: &Segment) -> Vec<SizeName> {
    match &segment.bend {
        Some(Bend::Curve { .. }) => vec![SizeName::Length, SizeName::Angle, SizeName::InsideRadius],
        Some(Bend::Ring { .. }) => vec![SizeName::Length, SizeName::InsideDiameter],
        Some(Bend::Scroll { .. }) => {
            vec![SizeName::Length, SizeName::InnerRadius, SizeName::OuterRadius, SizeName::Turns]
        }
        Some(Bend::Socket { axis, .. }) => match &segment.form {
            Form::Flag(forms::Flag { outline: OutlineSpec::Rectangle { .. }, .. }) => {
                vec![rolled_size(*axis), SizeName::Mandrel, SizeName::HowFarRound]
            }
            _ => vec![SizeName::Mandrel, SizeName::HowFarRound],
        },
        Some(Bend::Corner { .. } | Bend::Twist { .. }) | None => Vec::new(),
    }
}

/// Those of the tied sizes that are left out. How far round a socket goes is one turn where another size is left out.
fn left_out(segment: &Segment) -> Vec<SizeName> {
    let all: Vec<_> = tied(segment).into_iter().filter(|size| is_left_out(segment, *size)).collect();
    if all.len() > 1 { all.into_iter().filter(|size| *size != SizeName::HowFarRound).collect() } else { all }
}

fn is_left_out(segment: &Segment, size: SizeName) -> bool {
    match (size, &segment.bend) {
        (SizeName::Length, _) => segment.form.length().is_none(),
        (SizeName::Angle, Some(Bend::Curve { angle, .. })) => angle.is_none(),
        (SizeName::InsideRadius, Some(Bend::Curve { inside_radius, .. })) => inside_radius.is_none(),
        (SizeName::InsideDiameter, Some(Bend::Ring { inside_diameter, .. })) => inside_diameter.is_none(),
        (SizeName::InnerRadius, Some(Bend::Scroll { inner_radius, .. })) => inner_radius.is_none(),
        (SizeName::OuterRadius, Some(Bend::Scroll { outer_radius, .. })) => outer_radius.is_none(),
        (SizeName::Turns, Some(Bend::Scroll { turns, .. })) => turns.is_none(),
        (SizeName::Mandrel, Some(Bend::Socket { mandrel, .. })) => mandrel.is_none(),
        (SizeName::HowFarRound, Some(Bend::Socket { sweep, .. })) => sweep.is_none(),
        (SizeName::Width, _) => rolled_width(&segment.form).is_some_and(Option::is_none),
        _ => false,
    }
}

/// The size of a flag that is rolled up about an axis.
fn rolled_size(axis: SocketAxis) -> SizeName {
    match axis {
        SocketAxis::Along => SizeName::Width,
        SocketAxis::Across => SizeName::Length,
    }
}

/// The width of a rectangle.
fn rolled_width(form: &Form) -> Option<&Option<WrittenLength>> {
    match form {
        Form::Flag(forms::Flag { outline: OutlineSpec::Rectangle { width, .. }, .. }) => Some(width),
        _ => None,
    }
}

/// The one size that follows; none where too many or too few are given.
pub fn follows(segment: &Segment) -> Option<SizeName> {
    match left_out(segment).as_slice() {
        [one] => Some(*one),
        _ => None,
    }
}

/// Whether more is given than the bend needs.
pub fn too_much(segment: &Segment) -> bool {
    left_out(segment).is_empty()
}

/// A tied size in words: `the inside radius`.
pub fn words(segment: &Segment, size: SizeName) -> String {
    let of = if matches!(size, SizeName::Length | SizeName::Width) && matches!(segment.form, Form::Flag(_)) {
        " of the flag"
    } else {
        ""
    };
    match size {
        SizeName::Turns => "the number of turns".to_owned(),
        // It is called by itself.
        SizeName::HowFarRound => size.words().to_owned(),
        _ => format!("the {}{of}", size.words()),
    }
}

/// Lets another size follow. What followed until now is written down as it is, so that nothing moves.
pub(super) fn choose(segment: &mut Segment, size: SizeName, balance: Option<&SegmentBalance>, sizes: &FirstSizes) {
    for other in left_out(segment).into_iter().filter(|other| *other != size) {
        write_down(segment, other, balance, sizes);
    }
    set(segment, size, None, sizes);
}

/// Lets another size follow where the one that followed was typed over: which one, where that was so and it is clear which.
pub(super) fn give_way(before: &Segment, next: &mut Segment, sizes: &FirstSizes) -> Option<SizeName> {
    let typed = follows(before)?;
    let same = before.bend.as_ref().map(Bend::kind) == next.bend.as_ref().map(Bend::kind);
    if !same || !tied(next).contains(&typed) || !too_much(next) {
        return None;
    }
    let other = gives_way_to(next, typed)?;
    set(next, other, None, sizes);
    Some(other)
}

/// The size that follows once another one is typed: the length of bar, or where that is typed, what it is bent to.
fn gives_way_to(segment: &Segment, typed: SizeName) -> Option<SizeName> {
    match (&segment.bend, typed) {
        (Some(Bend::Curve { .. }), SizeName::Length) => Some(SizeName::InsideRadius),
        (Some(Bend::Ring { .. }), SizeName::Length) => Some(SizeName::InsideDiameter),
        (Some(Bend::Scroll { .. }), SizeName::Length) => Some(SizeName::Turns),
        (Some(Bend::Curve { .. } | Bend::Ring { .. } | Bend::Scroll { .. }), _) => Some(SizeName::Length),
        (Some(Bend::Socket { .. }), SizeName::Length | SizeName::Width) => Some(SizeName::Mandrel),
        (Some(Bend::Socket { axis, .. }), SizeName::Mandrel) => {
            Some(rolled_size(*axis)).filter(|rolled| tied(segment).contains(rolled))
        }
        _ => None,
    }
}

/// Writes down the form's own size that follows from its bend, for when the bend is taken away.
pub(super) fn keep_form(segment: &mut Segment, balance: Option<&SegmentBalance>, sizes: &FirstSizes) {
    let own = |size: &SizeName| matches!(size, SizeName::Length | SizeName::Width);
    for size in left_out(segment).into_iter().filter(own) {
        write_down(segment, size, balance, sizes);
    }
}

/// Lays the axis of a socket another way; the other size of the flag is then the one that is rolled up.
pub(super) fn turn_axis(segment: &mut Segment, axis: SocketAxis, balance: Option<&SegmentBalance>, sizes: &FirstSizes) {
    let followed = follows(segment);
    if let Some(size @ (SizeName::Length | SizeName::Width)) = followed {
        write_down(segment, size, balance, sizes);
    }
    if let Some(Bend::Socket { axis: now, .. }) = &mut segment.bend {
        *now = axis;
    }
    if matches!(followed, Some(SizeName::Length | SizeName::Width)) {
        set(segment, rolled_size(axis), None, sizes);
    }
}

fn write_down(segment: &mut Segment, size: SizeName, balance: Option<&SegmentBalance>, sizes: &FirstSizes) {
    let found = balance.and_then(|balance| balance.derived(size));
    let value = found.and_then(|found| found.length.map(|length| length.get::<millimeter>()));
    let value = value.or(found.and_then(|found| found.radians.or(found.count)));
    let value = value.unwrap_or_else(|| usual(size, sizes));
    set(segment, size, Some(evened(size, value, sizes)), sizes);
}

/// A value as a smith would write it, where that is as good as the same. Each size that was written down was rounded a
/// little, and the others follow with all its digits.
fn evened(size: SizeName, value: Value, sizes: &FirstSizes) -> Value {
    let near = |steps: &[f64], slack: f64| {
        let rounded = steps.iter().map(|step| (value / step).round() * step);
        rounded.into_iter().find(|rounded| (rounded - value).abs() < slack).unwrap_or(value)
    };
    match size {
        SizeName::Turns => near(&[0.25, 0.05, 0.01], 1e-4),
        SizeName::Angle | SizeName::HowFarRound => near(&[1.0_f64.to_radians(), 0.1_f64.to_radians()], 1e-5),
        _ if sizes.units.length == PlanUnit::Inch => near(&[25.4 / 16.0, 25.4 / 64.0], SLACK_MM),
        _ => near(&[1.0, 0.1, 0.01], SLACK_MM),
    }
}

/// A first value, where none can be told.
fn usual(size: SizeName, sizes: &FirstSizes) -> Value {
    match size {
        SizeName::Length | SizeName::Width => LENGTH_MM,
        SizeName::Angle => FRAC_PI_2,
        SizeName::HowFarRound => TAU,
        SizeName::Turns => 1.0,
        SizeName::OuterRadius => 2.0 * SIZE * sizes.stock_mm[0],
        _ => SIZE * sizes.stock_mm[0],
    }
}

/// Gives a tied size a value, or leaves it out.
fn set(segment: &mut Segment, size: SizeName, value: Option<Value>, sizes: &FirstSizes) {
    let unit = sizes.units.length.length_unit();
    let length = |range| value.and_then(|mm| WrittenLength::from_mm(mm, unit, range).ok());
    let (size_mm, radius) = (length(LengthRange::AboveZero), length(LengthRange::ZeroOrMore));
    let written = value.and_then(|radians| WrittenAngle::from_degrees(radians.to_degrees()).ok());
    match (size, &mut segment.form, &mut segment.bend) {
        (
            SizeName::Length,
            Form::Plain(forms::Plain { length })
            | Form::Drawn(forms::Drawn { length, .. })
            | Form::Taper(forms::Taper { length, .. }),
            _,
        ) => {
            *length = size_mm;
        }
        (SizeName::Length, Form::Flag(forms::Flag { outline: OutlineSpec::Rectangle { length, .. }, .. }), _) => {
            *length = size_mm;
        }
        (SizeName::Width, Form::Flag(forms::Flag { outline: OutlineSpec::Rectangle { width, .. }, .. }), _) => {
            *width = size_mm;
        }
        (SizeName::Angle, _, Some(Bend::Curve { angle, .. })) => *angle = written,
        (SizeName::InsideRadius, _, Some(Bend::Curve { inside_radius, .. })) => *inside_radius = radius,
        (SizeName::InsideDiameter, _, Some(Bend::Ring { inside_diameter, .. })) => *inside_diameter = size_mm,
        (SizeName::InnerRadius, _, Some(Bend::Scroll { inner_radius, .. })) => *inner_radius = radius,
        (SizeName::OuterRadius, _, Some(Bend::Scroll { outer_radius, .. })) => *outer_radius = size_mm,
        (SizeName::Turns, _, Some(Bend::Scroll { turns, .. })) => *turns = value,
        (SizeName::Mandrel, _, Some(Bend::Socket { mandrel, .. })) => *mandrel = size_mm,
        (SizeName::HowFarRound, _, Some(Bend::Socket { sweep, .. })) => *sweep = written,
        _ => {}
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::balance::balance;
    use crate::file;
    use crate::plan::Plan;

    fn plan(segment: &str) -> Plan {
        let plan = format!(
            r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{{ "name": "bar",
            "stock": {{ "square": "10 mm" }}, "segments": [{segment}] }}] }}"#
        );
        file::read(plan.as_bytes()).unwrap()
    }

    const CURVE: &str = r#"{ "name": "hook", "form": { "drawn": { "length": "120 mm", "section": { "square": "8 mm" } } },
        "bend": { "curve": { "angle": "90 deg" } } }"#;

    #[test]
    fn what_followed_is_written_down_where_another_size_is_let_follow() {
        let plan = plan(CURVE);
        let settled = balance(&plan).bars[0].segments[0].clone();
        let mut segment = plan.bars[0].segments[0].clone();
        assert_eq!(follows(&segment), Some(SizeName::InsideRadius));
        let sizes = FirstSizes::without_stock(plan.units);
        choose(&mut segment, SizeName::Length, Some(&settled), &sizes);
        assert_eq!(follows(&segment), Some(SizeName::Length));
        let Some(Bend::Curve { inside_radius: Some(radius), .. }) = &segment.bend else { panic!("{segment:?}") };
        let was = settled.derived_length(SizeName::InsideRadius).unwrap().get::<millimeter>();
        assert!((radius.mm() - was).abs() < SLACK_MM, "{radius:?}");
    }

    #[test]
    fn typing_over_a_length_that_followed_lets_what_it_is_bent_to_follow() {
        let before = plan(
            &CURVE.replace(r#""length": "120 mm", "#, "").replace("90 deg\"", "90 deg\", \"inside_radius\": \"50 mm\""),
        );
        let before = &before.bars[0].segments[0];
        assert_eq!(follows(before), Some(SizeName::Length));
        let mut next = before.clone();
        let sizes = FirstSizes::without_stock(crate::plan::Units::millimeters());
        set(&mut next, SizeName::Length, Some(130.0), &sizes);
        assert!(too_much(&next));
        assert_eq!(give_way(before, &mut next, &sizes), Some(SizeName::InsideRadius));
        assert_eq!(follows(&next), Some(SizeName::InsideRadius));
    }
}
