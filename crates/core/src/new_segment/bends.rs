//! Bends as they are first offered. Where a form has its length, a size of the bend is left to follow from it.

use crate::first_sizes::FirstSizes;
use crate::forms;
use crate::metal::Shape;
use crate::plan::{Bend, BendKind, Form, Limits, OutlineSpec, ScrollEye, ScrollRun, Segment, SocketAxis};
use fh_measure::{WrittenAngle, WrittenLength};
use std::f64::consts::{PI, TAU};
use uom::si::length::millimeter;

/// How far round a first scroll goes.
const TURNS: f64 = 1.25;
/// How small its eye is at least, against the thickness of the bar: its center line.
const EYE: f64 = 0.75;
/// Its eye and its open end against the sum of both.
const EYE_SHARE: f64 = 0.2;
/// The least that its open end is wider than its eye.
const OPENS: f64 = 1.5;

/// The inside radius of a corner against the bar's thickness: what the finding on a corner without one asks for.
const CORNER: f64 = 0.25;
/// The turns that a first twist may have, the most first.
const TWISTS: [f64; 3] = [1.0, 0.5, 0.25];

/// A right angle, sharp outside and with a radius inside, toward up.
pub fn corner(sizes: &FirstSizes) -> Option<Bend> {
    let [width, thickness] = sizes.stock_mm;
    let angle = WrittenAngle::from_degrees(90.0).ok()?;
    let inside_radius = sizes.size(CORNER * width.min(thickness))?;
    Some(Bend::Corner { angle, inside_radius, side: None })
}

/// Whether a bend can be made of a form.
pub fn suits(form: &Form, kind: BendKind) -> bool {
    match form {
        Form::Peak(_) => kind == BendKind::Corner,
        Form::Plain(_) | Form::Drawn(_) | Form::Taper(_) => !matches!(kind, BendKind::Corner | BendKind::Socket),
        Form::Flag(_) => !matches!(kind, BendKind::Corner | BendKind::Twist),
        Form::Hole(_) => kind == BendKind::Curve,
        _ => false,
    }
}

/// A first bend. `first` says whether the segment is the first of its chain, with the free end toward the datum.
pub fn first_bend(
    kind: BendKind,
    segment: &Segment,
    shape: Option<&Shape>,
    sizes: &FirstSizes,
    first: bool,
) -> Option<Bend> {
    // A plate has its length from its outline, also where that is not one size.
    let free = segment.form.length().is_none() && segment.form.one().outline().is_none();
    let size = if free { sizes.size(2.0 * sizes.stock_mm[0]) } else { None };
    match kind {
        BendKind::Curve => {
            Some(Bend::Curve { angle: WrittenAngle::from_degrees(90.0).ok(), inside_radius: size, side: None })
        }
        BendKind::Ring => Some(Bend::Ring { inside_diameter: size, sweep: None, side: None }),
        BendKind::Corner => corner(sizes),
        BendKind::Scroll => scroll(segment, sizes, first),
        BendKind::Socket => socket(segment, shape, sizes),
        BendKind::Twist => Some(Bend::Twist { turns: twist(segment, shape, sizes), shortening: None }),
    }
}

/// As much of a turn as the edges of the bar stand over the length.
fn twist(segment: &Segment, shape: Option<&Shape>, sizes: &FirstSizes) -> f64 {
    let settled = shape.map(|shape| shape.length().get::<millimeter>());
    let Some(length) = settled.or(segment.form.length().map(WrittenLength::mm)) else { return TWISTS[0] };
    let [width, thickness] = sizes.stock_mm;
    let reach = width.hypot(thickness) / 2.0;
    let stands = |turns: &f64| length.hypot(reach * TAU * turns) <= Limits::TWIST_STRETCH * length;
    TWISTS.into_iter().find(stands).unwrap_or(TWISTS[2])
}

/// A scroll of about so many turns as fit the length; its turns follow.
fn scroll(segment: &Segment, sizes: &FirstSizes, first: bool) -> Option<Bend> {
    let [width, thickness] = sizes.stock_mm;
    let thin = width.min(thickness);
    let length = segment.form.length().map(WrittenLength::mm);
    // The length of an even scroll: π times its turns times the sum of its radii.
    let sum = length.map_or(10.0 * thin, |length| length / (PI * TURNS));
    let inner = (sum * EYE_SHARE).max(thin * EYE);
    let outer = (sum - inner).max(inner * OPENS);
    Some(Bend::Scroll {
        inner_radius: Some(sizes.size(inner)?),
        outer_radius: Some(sizes.size(outer)?),
        turns: length.is_none().then_some(TURNS),
        run: ScrollRun::Opening,
        eye: if first { ScrollEye::Start } else { ScrollEye::End },
        side: None,
    })
}

/// A socket rolled of the flag's width; the mandrel follows from it where the flag is wide enough.
fn socket(segment: &Segment, shape: Option<&Shape>, sizes: &FirstSizes) -> Option<Bend> {
    let is_wide = match shape {
        Some(Shape::Flag { outline, root, tip, .. }) => {
            let thickness = ((*root + *tip) / 2.0).get::<millimeter>();
            outline.width().get::<millimeter>() / PI > 2.0 * thickness
        }
        _ => false,
    };
    let follows = is_wide
        && !matches!(&segment.form, Form::Flag(forms::Flag { outline: OutlineSpec::Rectangle { length, width }, .. })
            if length.is_none() || width.is_none());
    let mandrel = if follows { None } else { Some(sizes.size(2.0 * sizes.stock_mm[0])?) };
    Some(Bend::Socket { mandrel, sweep: None, less: None, axis: SocketAxis::Along, side: None })
}
