//! Sizes that are tied by a bend: all but one are given, and that one follows. Which one it is can be chosen.

use crate::widgets::Sizing;
use fh_core::balance::SegmentBalance;
use fh_core::forms;
use fh_core::plan::{Bend, Form, OutlineSpec, PlanUnit, Segment, SizeName, SocketAxis};
use fh_measure::{LengthRange, WrittenAngle, WrittenLength};
use std::f64::consts::{FRAC_PI_2, TAU};
use uom::si::length::millimeter;

/// A first length in mm where none can be told.
const LENGTH_MM: f64 = 100.0;
/// A first radius or diameter against the bar.
const SIZE: f64 = 2.0;

/// How far in mm a size may be moved to be written evenly: no mark shows it.
const SLACK_MM: f64 = 0.004;

/// A size that is tied to others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Tied {
    /// The form's length.
    Length,
    /// How far a curve turns.
    Angle,
    /// A curve's radius.
    InsideRadius,
    /// A ring's diameter.
    InsideDiameter,
    /// A scroll's radius at its eye.
    InnerRadius,
    /// A scroll's radius at its open end.
    OuterRadius,
    /// A scroll's turns.
    Turns,
    /// The size of a flag that is rolled up.
    Rolled(SocketAxis),
    /// What a socket is rolled round.
    Mandrel,
    /// How far round a socket goes.
    Sweep,
}

impl Tied {
    /// Its name among the sizes that follow.
    pub(super) fn name(self) -> SizeName {
        match self {
            Self::Length | Self::Rolled(SocketAxis::Across) => SizeName::Length,
            Self::Angle => SizeName::Angle,
            Self::InsideRadius => SizeName::InsideRadius,
            Self::InsideDiameter => SizeName::InsideDiameter,
            Self::InnerRadius => SizeName::InnerRadius,
            Self::OuterRadius => SizeName::OuterRadius,
            Self::Turns => SizeName::Turns,
            Self::Rolled(SocketAxis::Along) => SizeName::Width,
            Self::Mandrel => SizeName::Mandrel,
            Self::Sweep => SizeName::HowFarRound,
        }
    }
}

/// The value of a tied size: mm, radians or turns.
type Value = f64;

/// The sizes that a segment's bend ties together.
pub(super) fn tied(segment: &Segment) -> Vec<Tied> {
    match &segment.bend {
        Some(Bend::Curve { .. }) => vec![Tied::Length, Tied::Angle, Tied::InsideRadius],
        Some(Bend::Ring { .. }) => vec![Tied::Length, Tied::InsideDiameter],
        Some(Bend::Scroll { .. }) => vec![Tied::Length, Tied::InnerRadius, Tied::OuterRadius, Tied::Turns],
        Some(Bend::Socket { axis, .. }) => match &segment.form {
            Form::Flag(forms::Flag { outline: OutlineSpec::Rectangle { .. }, .. }) => {
                vec![Tied::Rolled(*axis), Tied::Mandrel, Tied::Sweep]
            }
            _ => vec![Tied::Mandrel, Tied::Sweep],
        },
        Some(Bend::Corner { .. } | Bend::Twist { .. }) | None => Vec::new(),
    }
}

/// Those of the tied sizes that are left out. How far round a socket goes is one turn where another size is left out.
fn left_out(segment: &Segment) -> Vec<Tied> {
    let all: Vec<_> = tied(segment).into_iter().filter(|size| is_left_out(segment, *size)).collect();
    if all.len() > 1 { all.into_iter().filter(|size| *size != Tied::Sweep).collect() } else { all }
}

fn is_left_out(segment: &Segment, size: Tied) -> bool {
    match (size, &segment.bend) {
        (Tied::Length, _) => segment.form.length().is_none(),
        (Tied::Angle, Some(Bend::Curve { angle, .. })) => angle.is_none(),
        (Tied::InsideRadius, Some(Bend::Curve { inside_radius, .. })) => inside_radius.is_none(),
        (Tied::InsideDiameter, Some(Bend::Ring { inside_diameter, .. })) => inside_diameter.is_none(),
        (Tied::InnerRadius, Some(Bend::Scroll { inner_radius, .. })) => inner_radius.is_none(),
        (Tied::OuterRadius, Some(Bend::Scroll { outer_radius, .. })) => outer_radius.is_none(),
        (Tied::Turns, Some(Bend::Scroll { turns, .. })) => turns.is_none(),
        (Tied::Mandrel, Some(Bend::Socket { mandrel, .. })) => mandrel.is_none(),
        (Tied::Sweep, Some(Bend::Socket { sweep, .. })) => sweep.is_none(),
        (Tied::Rolled(axis), _) => rolled(&segment.form, axis).is_some_and(Option::is_none),
        _ => false,
    }
}

/// The size of a rectangle that is rolled up.
fn rolled(form: &Form, axis: SocketAxis) -> Option<&Option<WrittenLength>> {
    match form {
        Form::Flag(forms::Flag { outline: OutlineSpec::Rectangle { length, width }, .. }) => Some(match axis {
            SocketAxis::Along => width,
            SocketAxis::Across => length,
        }),
        _ => None,
    }
}

/// The one size that follows; none where too many or too few are given.
pub(super) fn follows(segment: &Segment) -> Option<Tied> {
    match left_out(segment).as_slice() {
        [one] => Some(*one),
        _ => None,
    }
}

/// Whether more is given than the bend needs.
pub(super) fn too_much(segment: &Segment) -> bool {
    left_out(segment).is_empty()
}

/// Lets another size follow. What followed until now is written down as it is, so that nothing moves.
pub(super) fn choose(segment: &mut Segment, size: Tied, balance: Option<&SegmentBalance>, sizing: &Sizing<'_>) {
    for other in left_out(segment).into_iter().filter(|other| *other != size) {
        write_down(segment, other, balance, sizing);
    }
    set(segment, size, None, sizing);
}

/// Lets another size follow where the one that followed was typed over: which one, where that was so and it is clear which.
pub(super) fn give_way(before: &Segment, next: &mut Segment, sizing: &Sizing<'_>) -> Option<Tied> {
    let typed = follows(before)?;
    let same = before.bend.as_ref().map(Bend::kind) == next.bend.as_ref().map(Bend::kind);
    if !same || !tied(next).contains(&typed) || !too_much(next) {
        return None;
    }
    let other = gives_way_to(next, typed)?;
    set(next, other, None, sizing);
    Some(other)
}

/// The size that follows once another one is typed: the length of bar, or where that is typed, what it is bent to.
fn gives_way_to(segment: &Segment, typed: Tied) -> Option<Tied> {
    match (&segment.bend, typed) {
        (Some(Bend::Curve { .. }), Tied::Length) => Some(Tied::InsideRadius),
        (Some(Bend::Ring { .. }), Tied::Length) => Some(Tied::InsideDiameter),
        (Some(Bend::Scroll { .. }), Tied::Length) => Some(Tied::Turns),
        (Some(Bend::Curve { .. } | Bend::Ring { .. } | Bend::Scroll { .. }), _) => Some(Tied::Length),
        (Some(Bend::Socket { .. }), Tied::Rolled(_)) => Some(Tied::Mandrel),
        (Some(Bend::Socket { axis, .. }), Tied::Mandrel) => {
            Some(Tied::Rolled(*axis)).filter(|rolled| tied(segment).contains(rolled))
        }
        _ => None,
    }
}

/// Writes down the form's own size that follows from its bend, for when the bend is taken away.
pub(super) fn keep_form(segment: &mut Segment, balance: Option<&SegmentBalance>, sizing: &Sizing<'_>) {
    let own = |size: &Tied| matches!(size, Tied::Length | Tied::Rolled(_));
    for size in left_out(segment).into_iter().filter(own) {
        write_down(segment, size, balance, sizing);
    }
}

/// Lays the axis of a socket another way; the other size of the flag is then the one that is rolled up.
pub(super) fn turn_axis(
    segment: &mut Segment,
    axis: SocketAxis,
    balance: Option<&SegmentBalance>,
    sizing: &Sizing<'_>,
) {
    let followed = follows(segment);
    if let Some(size @ Tied::Rolled(_)) = followed {
        write_down(segment, size, balance, sizing);
    }
    if let Some(Bend::Socket { axis: now, .. }) = &mut segment.bend {
        *now = axis;
    }
    if matches!(followed, Some(Tied::Rolled(_))) {
        set(segment, Tied::Rolled(axis), None, sizing);
    }
}

fn write_down(segment: &mut Segment, size: Tied, balance: Option<&SegmentBalance>, sizing: &Sizing<'_>) {
    let found = balance.and_then(|balance| balance.derived(size.name()));
    let value = found.and_then(|found| found.length.map(|length| length.get::<millimeter>()));
    let value = value.or(found.and_then(|found| found.radians.or(found.count)));
    let value = value.unwrap_or_else(|| usual(size, sizing));
    set(segment, size, Some(evened(size, value, sizing)), sizing);
}

/// A value as a smith would write it, where that is as good as the same. Each size that was written down was rounded a
/// little, and the others follow with all its digits.
fn evened(size: Tied, value: Value, sizing: &Sizing<'_>) -> Value {
    let near = |steps: &[f64], slack: f64| {
        let rounded = steps.iter().map(|step| (value / step).round() * step);
        rounded.into_iter().find(|rounded| (rounded - value).abs() < slack).unwrap_or(value)
    };
    match size {
        Tied::Turns => near(&[0.25, 0.05, 0.01], 1e-4),
        Tied::Angle | Tied::Sweep => near(&[1.0_f64.to_radians(), 0.1_f64.to_radians()], 1e-5),
        _ if sizing.units.length == PlanUnit::Inch => near(&[25.4 / 16.0, 25.4 / 64.0], SLACK_MM),
        _ => near(&[1.0, 0.1, 0.01], SLACK_MM),
    }
}

/// A first value, where none can be told.
fn usual(size: Tied, sizing: &Sizing<'_>) -> Value {
    match size {
        Tied::Length | Tied::Rolled(_) => LENGTH_MM,
        Tied::Angle => FRAC_PI_2,
        Tied::Sweep => TAU,
        Tied::Turns => 1.0,
        Tied::OuterRadius => 2.0 * SIZE * sizing.stock_mm[0],
        Tied::InsideRadius | Tied::InsideDiameter | Tied::InnerRadius | Tied::Mandrel => SIZE * sizing.stock_mm[0],
    }
}

/// Gives a tied size a value, or leaves it out.
fn set(segment: &mut Segment, size: Tied, value: Option<Value>, sizing: &Sizing<'_>) {
    let unit = sizing.units.length.length_unit();
    let length = |range| value.and_then(|mm| WrittenLength::from_mm(mm, unit, range).ok());
    let (size_mm, radius) = (length(LengthRange::AboveZero), length(LengthRange::ZeroOrMore));
    let written = value.and_then(|radians| WrittenAngle::from_degrees(radians.to_degrees()).ok());
    match (size, &mut segment.form, &mut segment.bend) {
        (
            Tied::Length,
            Form::Plain(forms::Plain { length })
            | Form::Drawn(forms::Drawn { length, .. })
            | Form::Taper(forms::Taper { length, .. }),
            _,
        ) => {
            *length = size_mm;
        }
        (Tied::Rolled(axis), Form::Flag(forms::Flag { outline: OutlineSpec::Rectangle { length, width }, .. }), _) => {
            match axis {
                SocketAxis::Along => *width = size_mm,
                SocketAxis::Across => *length = size_mm,
            }
        }
        (Tied::Angle, _, Some(Bend::Curve { angle, .. })) => *angle = written,
        (Tied::InsideRadius, _, Some(Bend::Curve { inside_radius, .. })) => *inside_radius = radius,
        (Tied::InsideDiameter, _, Some(Bend::Ring { inside_diameter, .. })) => *inside_diameter = size_mm,
        (Tied::InnerRadius, _, Some(Bend::Scroll { inner_radius, .. })) => *inner_radius = radius,
        (Tied::OuterRadius, _, Some(Bend::Scroll { outer_radius, .. })) => *outer_radius = size_mm,
        (Tied::Turns, _, Some(Bend::Scroll { turns, .. })) => *turns = value,
        (Tied::Mandrel, _, Some(Bend::Socket { mandrel, .. })) => *mandrel = size_mm,
        (Tied::Sweep, _, Some(Bend::Socket { sweep, .. })) => *sweep = written,
        _ => {}
    }
}
