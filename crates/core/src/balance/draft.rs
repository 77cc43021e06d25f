//! A segment's sizes as numbers, before the bend's ties are settled.

use super::dress_draft::{DressDraft, dress_drafts};
use super::trouble::Trouble;
use crate::forms::{Rolled, Surroundings};
use crate::metal::{Shape, mm};
use crate::plan::{Bend, Gives, ScrollEye, ScrollRun, Segment, SocketAxis};
use fh_measure::{WrittenAngle, WrittenLength};
use uom::si::f64::Length;

/// A segment as numbers. The shape's length counts only where `length_given`.
#[derive(Clone, Debug)]
pub(crate) struct Draft {
    pub(crate) shape: Shape,
    pub(crate) length_given: bool,
    pub(crate) bend: Option<BendSize>,
    /// Whether it is left as stock: its section is not its own to give.
    pub(crate) as_stock: bool,
    /// Whether none of its sizes may give.
    pub(crate) holds: bool,
    /// The size of a flag's outline that is left to follow from its socket.
    pub(crate) rolled: Rolled,
    /// What is dressed in dies.
    pub(crate) dressed: Vec<DressDraft>,
    /// Whether it is read from its other end.
    pub(crate) reversed: bool,
}

/// A bend as numbers; what is none follows.
#[derive(Clone, Copy, Debug)]
pub(crate) enum BendSize {
    Curve { angle: Option<f64>, inside_radius: Option<Length>, side: f64 },
    Ring { inside_diameter: Option<Length>, sweep: f64, side: f64 },
    Corner { angle: f64, inside_radius: Length, side: f64 },
    Scroll(ScrollSize),
    Socket { mandrel: Option<Length>, sweep: Option<f64>, less: Length, axis: SocketAxis, side: f64 },
    Twist { angle: f64, shortening: f64 },
}

/// A scroll as numbers; of its radii, its turns and its length one is none.
#[derive(Clone, Copy, Debug)]
pub(crate) struct ScrollSize {
    pub(crate) inner: Option<Length>,
    pub(crate) outer: Option<Length>,
    pub(crate) turns: Option<f64>,
    pub(crate) opening: bool,
    pub(crate) eye_at_start: bool,
    pub(crate) side: f64,
}

impl Draft {
    /// The numbers of a segment.
    pub(crate) fn new(segment: &Segment, around: Surroundings) -> Self {
        let (shape, length_given) = segment.form.one().draft(around);
        let bend = segment.bend.as_ref().map(bend_size);
        let as_stock = segment.form.is_as_stock();
        let holds = segment.form.one().holds();
        let dressed = dress_drafts(segment);
        let reversed = around.at_free_end && segment.form.one().has_free_end();
        let rolled = segment.form.one().rolled();
        Self { shape, length_given, bend, as_stock, holds, rolled, dressed, reversed }
    }

    /// It with the size that gives multiplied.
    ///
    /// Where the length follows from the bend, a length that gives takes the bend's radius or diameter with it. Where no
    /// length is written at all, the factor counts millimetres.
    pub(crate) fn scaled(&self, gives: Gives, factor: f64) -> Result<Self, Trouble> {
        if self.holds || (self.as_stock && gives != Gives::Length) {
            return Err(Trouble::NothingGives);
        }
        if self.rolled != Rolled::Given && gives != Gives::Thickness {
            return self.scaled_socket(gives, factor);
        }
        if gives != Gives::Length || self.length_given {
            let shape = self.shape.scaled(gives, factor).ok_or(Trouble::NothingGives)?;
            return Ok(Self { shape, ..self.clone() });
        }
        let whole = match self.bend {
            None => self.shape.with_length(mm(1.0)),
            Some(_) => self.settle().shape,
        };
        let shape = whole.ok_or(Trouble::NothingGives)?;
        let shape = shape.scaled(gives, factor).ok_or(Trouble::NothingGives)?;
        let bend = self.bend.map(BendSize::freed);
        Ok(Self { shape, length_given: true, bend, ..self.clone() })
    }

    /// A flag whose rolled size follows from its mandrel: where that size gives, it takes the mandrel with it.
    fn scaled_socket(&self, gives: Gives, factor: f64) -> Result<Self, Trouble> {
        let shape = self.settle().shape.ok_or(Trouble::NothingGives)?;
        let shape = shape.scaled(gives, factor).ok_or(Trouble::NothingGives)?;
        let follows = if gives == Gives::Length { Rolled::LengthFollows } else { Rolled::WidthFollows };
        if self.rolled != follows {
            return Ok(Self { shape, ..self.clone() });
        }
        Ok(Self { shape, rolled: Rolled::Given, bend: self.bend.map(BendSize::freed), ..self.clone() })
    }
}

impl BendSize {
    /// It with its radius or diameter left to follow.
    fn freed(self) -> Self {
        match self {
            Self::Curve { angle, side, .. } => Self::Curve { angle, inside_radius: None, side },
            Self::Ring { sweep, side, .. } => Self::Ring { inside_diameter: None, sweep, side },
            Self::Scroll(scroll) => Self::Scroll(ScrollSize { outer: None, ..scroll }),
            Self::Socket { sweep, less, axis, side, .. } => {
                Self::Socket { mandrel: None, sweep: Some(sweep.unwrap_or(std::f64::consts::TAU)), less, axis, side }
            }
            Self::Corner { .. } | Self::Twist { .. } => self,
        }
    }
}

fn bend_size(bend: &Bend) -> BendSize {
    let side = bend.side_radians();
    match bend {
        Bend::Curve { angle, inside_radius, .. } => BendSize::Curve {
            angle: angle.as_ref().map(WrittenAngle::radians),
            inside_radius: inside_radius.as_ref().map(WrittenLength::length),
            side,
        },
        Bend::Ring { inside_diameter, sweep, .. } => BendSize::Ring {
            inside_diameter: inside_diameter.as_ref().map(WrittenLength::length),
            sweep: sweep.as_ref().map_or(std::f64::consts::TAU, WrittenAngle::radians),
            side,
        },
        Bend::Corner { angle, inside_radius, .. } => {
            BendSize::Corner { angle: angle.radians(), inside_radius: inside_radius.length(), side }
        }
        Bend::Scroll { inner_radius, outer_radius, turns, run, eye, .. } => BendSize::Scroll(ScrollSize {
            inner: inner_radius.as_ref().map(WrittenLength::length),
            outer: outer_radius.as_ref().map(WrittenLength::length),
            turns: *turns,
            opening: *run == ScrollRun::Opening,
            eye_at_start: *eye == ScrollEye::Start,
            side,
        }),
        Bend::Socket { mandrel, sweep, less, axis, .. } => BendSize::Socket {
            mandrel: mandrel.as_ref().map(WrittenLength::length),
            sweep: sweep.as_ref().map(WrittenAngle::radians),
            less: or_zero(less.as_ref()),
            axis: *axis,
            side,
        },
        Bend::Twist { turns, shortening } => BendSize::Twist {
            angle: turns * std::f64::consts::TAU,
            shortening: shortening.as_ref().map_or(0.0, fh_measure::WrittenShare::ratio),
        },
    }
}

fn or_zero(length: Option<&WrittenLength>) -> Length {
    length.map_or(mm(0.0), WrittenLength::length)
}
