//! What a bend dragged by hand writes into the plan: the size that is written, never one that follows.

use super::knob::{Knob, Steps, write_length};
use super::scroll;
use crate::figures;
use fh_core::balance::SegmentBalance;
use fh_core::metal::{Bent, Spiral};
use fh_core::plan::{Bend, Segment};
use fh_measure::WrittenAngle;
use std::f64::consts::TAU;

/// The least and the greatest angle that the hand reaches, in radians: two turns, and for a corner short of folding up.
const LEAST_ANGLE: f64 = 1.0 / 360.0 * TAU;
const MOST_ANGLE: f64 = 2.0 * TAU;
const MOST_CORNER: f64 = 150.0 / 360.0 * TAU;
/// The steps of an angle, in degrees: usually, and while it is free.
const DEGREE: f64 = 1.0;
const FREE_DEGREE: f64 = 0.1;

impl Knob {
    /// Its name for people and screen readers.
    pub(super) fn name(self, sizes: &Sizes) -> &'static str {
        match (self, sizes.spiral) {
            (Self::Angle, None) => "Angle",
            (Self::Angle, Some(_)) => "Turns",
            (Self::Radius, None) => "Inside radius",
            (Self::Radius, Some(_)) => "Outer radius",
        }
    }
}

/// The sizes of a bend as they are now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Sizes {
    /// How far it turns, in radians.
    pub(super) angle: f64,
    /// The inside radius in mm; of a scroll the radius to the center line at its open end.
    pub(super) radius: f64,
    /// The center line's length, in mm.
    pub(super) length: f64,
    /// The line of a scroll.
    pub(super) spiral: Option<Spiral>,
    /// The radius of the center line where it starts, in mm.
    pub(super) start_radius: f64,
}

impl Sizes {
    /// The sizes of a segment's bend; none where it has none that can be dragged, or they are not settled.
    pub(super) fn of(segment: &Segment, balance: &SegmentBalance) -> Option<Self> {
        let length = figures::mm(balance.forged_length);
        let mut spiral = None;
        let mut starts_at = None;
        let (angle, radius) = match *balance.bent.as_ref()? {
            Bent::Curve { angle, inside_radius, .. } => (angle, figures::mm(inside_radius)),
            Bent::Ring { inside_diameter, sweep, .. } => (sweep, figures::mm(inside_diameter) / 2.0),
            Bent::Corner { .. } => match segment.bend.as_ref()? {
                Bend::Corner { angle, inside_radius, .. } => (angle.radians(), inside_radius.mm()),
                _ => return None,
            },
            Bent::Scroll { spiral: line, eye_at_start, .. } => {
                spiral = Some(line);
                starts_at = Some(if eye_at_start { line.inner_mm } else { line.outer_mm });
                (line.turns * TAU, line.outer_mm)
            }
            _ => return None,
        };
        let start_radius = starts_at.unwrap_or(length / angle);
        let is_sound = [angle, radius, length].iter().all(|size| size.is_finite()) && angle > 0.0 && length > 0.0;
        is_sound.then_some(Self { angle, radius, length, spiral, start_radius })
    }

    /// How far the center line lies from the inside face, in mm.
    fn inset(&self) -> f64 {
        self.length / self.angle - self.radius
    }

    /// The angle at which the same length has another inside radius.
    fn angle_at(&self, inside_radius: f64) -> f64 {
        self.length / (inside_radius + self.inset()).max(1e-6)
    }

    /// The inside radius at which the same length turns through another angle.
    fn radius_at(&self, angle: f64) -> f64 {
        self.length / angle - self.inset()
    }
}

/// A segment with a size dragged to where the hand wants it, in radians or mm, and what was written in words.
pub(super) fn dragged(
    segment: &Segment,
    sizes: &Sizes,
    knob: Knob,
    wish: f64,
    steps: Steps,
) -> Option<(Segment, String)> {
    let mut next = segment.clone();
    if let (Some(bend @ Bend::Scroll { .. }), Some(spiral)) = (next.bend.as_mut(), sizes.spiral) {
        let words = scroll::drag(bend, &spiral, sizes.length, knob, wish, steps)?;
        return Some((next, words));
    }
    let words = match (next.bend.as_mut()?, knob) {
        (Bend::Curve { angle: angle @ Some(_), .. }, Knob::Angle) => write_angle(angle, wish, MOST_ANGLE, steps)?,
        (Bend::Curve { inside_radius, .. }, Knob::Angle) => {
            let wish = wish.clamp(LEAST_ANGLE, MOST_ANGLE);
            let words = write_length(inside_radius, sizes.radius_at(wish), "inside radius", steps)?;
            format!("{words}; the angle follows")
        }
        (Bend::Curve { inside_radius: radius @ Some(_), .. }, Knob::Radius) => {
            write_length(radius, wish, "inside radius", steps)?
        }
        (Bend::Curve { angle, .. }, Knob::Radius) => {
            let words = write_angle(angle, sizes.angle_at(wish.max(0.0)), MOST_ANGLE, steps)?;
            format!("{words}; the inside radius follows")
        }
        (Bend::Ring { sweep, .. }, Knob::Angle) => write_angle(sweep, wish, MOST_ANGLE, steps)?,
        (Bend::Ring { inside_diameter: diameter @ Some(_), .. }, Knob::Radius) => {
            let least = steps.units.marks.step_mm();
            write_length(diameter, (2.0 * wish).max(least), "inside diameter", steps)?
        }
        (Bend::Ring { sweep, .. }, Knob::Radius) => {
            let words = write_angle(sweep, sizes.angle_at(wish.max(0.0)), MOST_ANGLE, steps)?;
            format!("{words}; the inside diameter follows")
        }
        (Bend::Corner { angle, .. }, Knob::Angle) => {
            let mut written = Some(angle.clone());
            let words = write_angle(&mut written, wish, MOST_CORNER, steps)?;
            *angle = written?;
            words
        }
        (Bend::Corner { inside_radius, .. }, Knob::Radius) => {
            let mut written = Some(inside_radius.clone());
            let words = write_length(&mut written, wish, "inside radius", steps)?;
            *inside_radius = written?;
            words
        }
        _ => return None,
    };
    Some((next, words))
}

/// One step of a size up or down, by the keyboard.
pub(super) fn nudged(sizes: &Sizes, knob: Knob, up: bool, steps: Steps) -> f64 {
    let sign = if up { 1.0 } else { -1.0 };
    match knob {
        Knob::Angle if sizes.spiral.is_some() => sizes.angle + sign * scroll::turn_step(steps) * TAU,
        Knob::Angle => sizes.angle + sign * degree(steps).to_radians(),
        Knob::Radius => {
            let step = if steps.free { steps.units.marks.step_mm() / 4.0 } else { steps.units.marks.step_mm() };
            sizes.radius + sign * step
        }
    }
}

fn degree(steps: Steps) -> f64 {
    if steps.free { FREE_DEGREE } else { DEGREE }
}

fn write_angle(written: &mut Option<WrittenAngle>, wish: f64, most: f64, steps: Steps) -> Option<String> {
    let step = degree(steps);
    let degrees = (wish.clamp(LEAST_ANGLE, most).to_degrees() / step).round() * step;
    let next = WrittenAngle::from_degrees(degrees).ok()?;
    let words = format!("angle {}°", (degrees * 10.0).round() / 10.0);
    *written = Some(next);
    Some(words)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use fh_core::forms;
    use fh_core::plan::{Form, Units};
    use fh_measure::{LengthRange, WrittenLength};

    const STEPS: Steps = Steps { units: millimeters(), free: false };

    const fn millimeters() -> Units {
        Units { length: fh_core::plan::PlanUnit::Millimeter, marks: fh_measure::Rounding::MILLIMETER }
    }

    fn length(text: &str) -> Option<WrittenLength> {
        WrittenLength::parse(text, None, LengthRange::ZeroOrMore).ok()
    }

    fn angle(text: &str) -> Option<WrittenAngle> {
        WrittenAngle::parse(text, false).ok()
    }

    fn curve(form_length: Option<&str>, angle_text: Option<&str>, radius: Option<&str>) -> Segment {
        let mut segment = Segment::new("hook", Form::Plain(forms::Plain { length: form_length.and_then(length) }));
        segment.bend =
            Some(Bend::Curve { angle: angle_text.and_then(angle), inside_radius: radius.and_then(length), side: None });
        segment
    }

    fn sizes(angle: f64, inside_radius: f64, inset: f64) -> Sizes {
        let angle = angle.to_radians();
        let middle = inside_radius + inset;
        Sizes { angle, radius: inside_radius, length: angle * middle, spiral: None, start_radius: middle }
    }

    fn written(segment: &Segment) -> (Option<String>, Option<String>) {
        match segment.bend.as_ref().unwrap() {
            Bend::Curve { angle, inside_radius, .. } => (
                angle.as_ref().map(|angle| angle.text().to_owned()),
                inside_radius.as_ref().map(|radius| radius.text().to_owned()),
            ),
            _ => (None, None),
        }
    }

    #[test]
    fn a_written_size_is_written_anew_to_its_step() {
        let hook = curve(None, Some("90 deg"), Some("20 mm"));
        let now = sizes(90.0, 20.0, 6.0);
        let (next, words) = dragged(&hook, &now, Knob::Angle, 95.3_f64.to_radians(), STEPS).unwrap();
        assert_eq!(written(&next), (Some("95 deg".to_owned()), Some("20 mm".to_owned())));
        assert_eq!(words, "angle 95°");
        let (next, words) = dragged(&hook, &now, Knob::Radius, 23.4, STEPS).unwrap();
        assert_eq!(written(&next).1.as_deref(), Some("23 mm"));
        assert_eq!(words, "inside radius 23 mm");
        let free = Steps { free: true, ..STEPS };
        let (next, _) = dragged(&hook, &now, Knob::Radius, 23.44, free).unwrap();
        assert_eq!(written(&next).1.as_deref(), Some("23.44 mm"));
    }

    #[test]
    fn a_size_that_follows_stays_unwritten_and_the_other_one_is_written() {
        let now = sizes(90.0, 20.0, 6.0);
        let by_angle = curve(Some("41 mm"), Some("90 deg"), None);
        let (next, words) = dragged(&by_angle, &now, Knob::Radius, 14.0, STEPS).unwrap();
        assert_eq!(written(&next), (Some("117 deg".to_owned()), None), "{words}");
        assert!(words.ends_with("follows"));
        let by_radius = curve(Some("41 mm"), None, Some("20 mm"));
        let (next, _) = dragged(&by_radius, &now, Knob::Angle, 117.0_f64.to_radians(), STEPS).unwrap();
        assert_eq!(written(&next), (None, Some("14 mm".to_owned())));
    }

    #[test]
    fn a_ring_that_follows_from_its_length_is_dragged_by_how_far_it_goes_round() {
        let mut ring = Segment::new("eye", Form::Plain(forms::Plain { length: length("200 mm") }));
        ring.bend = Some(Bend::Ring { inside_diameter: None, sweep: None, side: None });
        let now = sizes(360.0, 25.0, 6.0);
        let (next, _) = dragged(&ring, &now, Knob::Radius, 40.0, STEPS).unwrap();
        let Some(Bend::Ring { inside_diameter: None, sweep: Some(sweep), .. }) = next.bend else { panic!("a ring") };
        assert!(sweep.radians() < TAU);
    }

    #[test]
    fn absurd_wishes_stay_within_what_can_be_bent() {
        let hook = curve(None, Some("90 deg"), Some("20 mm"));
        let now = sizes(90.0, 20.0, 6.0);
        for wish in [-1e9, 0.0, 1e9, f64::INFINITY] {
            for knob in [Knob::Angle, Knob::Radius] {
                assert!(dragged(&hook, &now, knob, wish, STEPS).is_some(), "{knob:?} {wish}");
            }
        }
    }
}
