//! The selected bend, and its handle in hand.

use super::arc::Arc;
use super::place::Place;
use super::stage::Stage;
use crate::figures::finished as figure;
use crate::theme::space;
use egui::{Pos2, vec2};
use fh_core::edit::{BendDrag, BendSizes, BendTo, Knob};
use fh_core::plan::BendKind;
use fh_piece::vector::{plus, times};
use std::f64::consts::{PI, TAU};

/// How far a handle stands from the metal, in points.
const AWAY: f32 = 26.0;

/// How far the angle turns with each point where the bend is seen edge-on, in radians.
const TURN: f64 = 0.5 / 180.0 * PI;

/// The least share of its true length at which a step outward is still seen well enough to drag along it.
const LEAST_SEEN: f32 = 0.2;

/// A handle in hand: each move is counted from where it was taken.
pub(super) struct Held {
    pub(super) knob: Knob,
    pub(super) bend: Bend,
    pub(super) pressed: Pos2,
    /// How far round the pointer was last, and how far it has gone since it took the handle, in radians.
    pub(super) last: Option<f64>,
    pub(super) turned: f64,
    /// What was last asked for.
    pub(super) sent: Option<BendDrag>,
}

/// The selected bend.
#[derive(Clone)]
pub(super) struct Bend {
    pub(super) place: Place,
    pub(super) sizes: BendSizes,
    pub(super) arc: Arc,
}

impl Bend {
    pub(super) fn selected(stage: &Stage<'_>) -> Option<Self> {
        let place = stage.selected?;
        let segment = stage.plan.segment(place.0, place.1)?;
        let balance = stage.balance.bars.get(place.0)?.segments.get(place.1)?;
        let sizes = BendSizes::of(segment, balance)?;
        let arc = Arc::of(stage.model.line(place)?, sizes.start_radius)?;
        Some(Self { place, sizes, arc })
    }

    /// The wish to have a knob somewhere.
    pub(super) fn wish(&self, knob: Knob, to: BendTo, free: bool) -> BendDrag {
        BendDrag { bar: self.place.0, at: self.place.1, knob, to, free }
    }

    /// Where the metal is held, and where the handle stands.
    pub(super) fn stand(&self, knob: Knob, stage: &Stage<'_>) -> [Pos2; 2] {
        let away = f64::from(stage.theme.scaled(AWAY)) / stage.camera.points_per_mm();
        let (from, way) = match knob {
            Knob::Angle => (self.arc.end.at, self.arc.outward_at(&self.arc.end)),
            Knob::Radius => (self.arc.middle.at, self.arc.outward_at(&self.arc.middle)),
        };
        // Seen end-on it would stand on the metal; so it goes up a little.
        let seen = stage.camera.moved(way).length() / stage.camera.points_per_mm() as f32;
        let aside = if seen < LEAST_SEEN { stage.camera.step(vec2(0.0, -stage.theme.scaled(AWAY))) } else { [0.0; 3] };
        let stands = plus(plus(from, times(way, away)), aside);
        [stage.point(from), stage.within(stage.point(stands), space::GAP)]
    }

    /// The name of a knob for people and screen readers.
    pub(super) fn name(&self, knob: Knob) -> &'static str {
        match (knob, self.sizes.spiral) {
            (Knob::Angle, None) => "Angle",
            (Knob::Angle, Some(_)) => "Turns",
            (Knob::Radius, None) => "Inside radius",
            (Knob::Radius, Some(_)) => "Outer radius",
        }
    }

    pub(super) fn value(&self, knob: Knob) -> f64 {
        match knob {
            Knob::Angle => self.sizes.angle.to_degrees(),
            Knob::Radius => self.sizes.radius,
        }
    }

    /// Its name and its figure.
    pub(super) fn words(&self, knob: Knob, stage: &Stage<'_>) -> String {
        format!("{} {}", self.name(knob), self.number(knob, stage))
    }

    /// Its figure alone, with as few words as tell what it is.
    pub(super) fn figure(&self, knob: Knob, stage: &Stage<'_>) -> String {
        let number = self.number(knob, stage);
        match knob {
            Knob::Angle if self.sizes.spiral.is_some() => format!("{number} turns"),
            Knob::Angle => number,
            Knob::Radius => format!("r {number}"),
        }
    }

    fn number(&self, knob: Knob, stage: &Stage<'_>) -> String {
        match knob {
            Knob::Angle if self.sizes.spiral.is_some() => format!("{:.2}", self.sizes.angle / TAU),
            Knob::Angle => format!("{}°", (self.value(knob) * 10.0).round() / 10.0),
            Knob::Radius => figure(self.value(knob), stage.plan.units.length),
        }
    }

    /// The name of the field in which it is typed.
    pub(super) fn field(&self, knob: Knob, stage: &Stage<'_>) -> Option<&'static str> {
        let kind = stage.plan.segment(self.place.0, self.place.1)?.bend.as_ref()?.kind();
        Some(match (kind, knob) {
            (BendKind::Curve, Knob::Angle) => "Angle of the curve",
            (BendKind::Corner, Knob::Angle) => "Angle of the corner",
            (BendKind::Curve | BendKind::Corner, Knob::Radius) => "Inside radius",
            (BendKind::Ring, Knob::Angle) => "How far round it goes",
            (BendKind::Ring, Knob::Radius) => "Inside diameter",
            (BendKind::Scroll, Knob::Angle) => "Turns of the scroll",
            (BendKind::Scroll, Knob::Radius) => "Outer radius",
            (BendKind::Socket | BendKind::Twist, _) => return None,
        })
    }
}

impl Held {
    /// The angle in radians, or the inside radius in mm, that the pointer asks for.
    pub(super) fn wish(&mut self, pointer: Pos2, stage: &Stage<'_>) -> f64 {
        let moved = pointer - self.pressed;
        let sizes = &self.bend.sizes;
        match self.knob {
            Knob::Angle => {
                let now = self.bend.arc.angle_at(&stage.camera.sight(), stage.off_middle(pointer));
                let Some((now, last)) = now.zip(self.last) else {
                    return sizes.angle + f64::from(moved.x - moved.y) * TURN;
                };
                self.turned += (now - last + PI).rem_euclid(TAU) - PI;
                self.last = Some(now);
                sizes.angle + self.turned
            }
            Knob::Radius => {
                let outward = stage.camera.moved(self.bend.arc.outward_at(&self.bend.arc.middle));
                let scale = stage.camera.points_per_mm() as f32;
                let by = if outward.length() < LEAST_SEEN * scale {
                    -moved.y / scale
                } else {
                    moved.dot(outward) / outward.length_sq()
                };
                sizes.radius + f64::from(by)
            }
        }
    }
}
