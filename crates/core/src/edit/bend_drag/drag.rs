//! The wish to drag a bend, and the size that it writes.

use super::knob::Knob;
use super::scroll;
use super::sizes::BendSizes;
use super::write::{LEAST_ANGLE, MOST_ANGLE, MOST_CORNER, Steps, Written};
use crate::balance::balance;
use crate::edit::{Gave, Refusal};
use crate::plan::{Bend, Plan, Segment, SizeName};
use std::f64::consts::TAU;

/// Where a size is wished to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BendTo {
    /// At an angle in radians, or at a radius in mm.
    Size(f64),
    /// One step further, or where not `up` one step back.
    Step {
        /// Whether it grows.
        up: bool,
    },
}

/// A wish to bend a segment further or less far, or to another radius.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BendDrag {
    /// The bar.
    pub bar: usize,
    /// The segment.
    pub at: usize,
    /// Which size is in hand.
    pub knob: Knob,
    /// Where it is wished to be.
    pub to: BendTo,
    /// Whether it is free of the usual steps: written more finely.
    pub free: bool,
}

impl BendDrag {
    /// The segment as it is bent then, and the size that was written.
    pub(in crate::edit) fn bent(&self, plan: &Plan) -> Result<(Segment, Gave), Refusal> {
        let mut segment = plan.segment(self.bar, self.at).ok_or(Refusal::NoSuchPlace)?.clone();
        let balance = balance(plan);
        let settled = balance.bars.get(self.bar).and_then(|bar| bar.segments.get(self.at));
        let sizes = settled.and_then(|settled| BendSizes::of(&segment, settled)).ok_or_else(not_settled)?;
        let steps = Steps { units: plan.units, free: self.free };
        let wish = match self.to {
            BendTo::Size(wish) => wish,
            BendTo::Step { up } => sizes.one_step(self.knob, up, steps),
        };
        let bend = segment.bend.as_mut().ok_or(Refusal::NoSuchPlace)?;
        let (size, text) = written(bend, &sizes, self.knob, wish, steps).ok_or_else(out_of_range)?;
        Ok((segment, Gave { segment: self.at, size, text }))
    }
}

fn not_settled() -> Refusal {
    Refusal::CannotBe("its bend is not settled yet".to_owned())
}

fn out_of_range() -> Refusal {
    Refusal::CannotBe("the size would be out of range".to_owned())
}

/// Writes the size of a bend that brings what is in hand to where it is wished, in radians or mm.
fn written(bend: &mut Bend, sizes: &BendSizes, knob: Knob, wish: f64, steps: Steps) -> Option<Written> {
    match bend {
        Bend::Scroll { .. } => scroll::written(bend, &sizes.spiral?, sizes.length, knob, wish, steps),
        Bend::Curve { .. } => curve(bend, sizes, knob, wish, steps),
        Bend::Ring { .. } => ring(bend, sizes, knob, wish, steps),
        Bend::Corner { angle, inside_radius, .. } => match knob {
            Knob::Angle => {
                let (next, text) = steps.angle(wish, MOST_CORNER)?;
                *angle = next;
                Some((SizeName::Angle, text))
            }
            Knob::Radius => {
                *inside_radius = steps.length(wish)?;
                Some((SizeName::InsideRadius, inside_radius.text().to_owned()))
            }
        },
        Bend::Socket { .. } | Bend::Twist { .. } => None,
    }
}

fn curve(bend: &mut Bend, sizes: &BendSizes, knob: Knob, wish: f64, steps: Steps) -> Option<Written> {
    let Bend::Curve { angle, inside_radius, .. } = bend else { return None };
    let by_angle = if knob == Knob::Angle { angle.is_some() } else { inside_radius.is_none() };
    if by_angle {
        let wish = if knob == Knob::Angle { wish } else { sizes.angle_at(wish.max(0.0)) };
        let (next, text) = steps.angle(wish, MOST_ANGLE)?;
        *angle = Some(next);
        return Some((SizeName::Angle, text));
    }
    let wish = if knob == Knob::Radius { wish } else { sizes.radius_at(wish.clamp(LEAST_ANGLE, MOST_ANGLE)) };
    let next = steps.length(wish)?;
    Some((SizeName::InsideRadius, inside_radius.insert(next).text().to_owned()))
}

/// A ring is dragged by how far it goes round, or by its diameter where that is written.
fn ring(bend: &mut Bend, sizes: &BendSizes, knob: Knob, wish: f64, steps: Steps) -> Option<Written> {
    let Bend::Ring { inside_diameter, sweep, .. } = bend else { return None };
    if knob == Knob::Radius && inside_diameter.is_some() {
        let next = steps.length((2.0 * wish).max(steps.units.marks.step_mm()))?;
        return Some((SizeName::InsideDiameter, inside_diameter.insert(next).text().to_owned()));
    }
    let wish = if knob == Knob::Angle { wish } else { sizes.angle_at(wish.max(0.0)) };
    let (next, text) = steps.angle(wish, MOST_ANGLE)?;
    *sweep = Some(next);
    Some((SizeName::Angle, text))
}

impl BendSizes {
    /// Where a size in hand comes to be one step further or back, in radians or mm.
    fn one_step(&self, knob: Knob, up: bool, steps: Steps) -> f64 {
        let sign = if up { 1.0 } else { -1.0 };
        match knob {
            Knob::Angle if self.spiral.is_some() => self.angle + sign * steps.turns() * TAU,
            Knob::Angle => self.angle + sign * steps.degrees().to_radians(),
            Knob::Radius => self.radius + sign * steps.mm(),
        }
    }
}
