//! Settling a segment: the third of three tied sizes, and the shape with every size known.

use super::draft::{BendSize, Draft};
use super::solve::solve;
use super::trouble::Trouble;
use super::{Derived, Grown, ViaBalance};
use crate::forms::Rolled;
use crate::metal::{Bent, CornerSize, Dressing, GAUSS_8, Moved, Runout, Shape, Standing, in_mm, mm};
use crate::plan::SizeName;
use crate::space::Formed;
use uom::si::f64::Length;

/// A segment's settled shape. There is none where its length could not be found.
#[derive(Clone, Debug, Default)]
pub(crate) struct Settled {
    pub(crate) shape: Option<Shape>,
    pub(crate) bent: Option<Bent>,
    /// How many times more metal than its shape it takes: a twist that shortens it swells it.
    pub(crate) swell: Option<f64>,
    /// What is left standing for its corner.
    pub(crate) standing: Option<Standing>,
    /// What its section grows to, where that is left as it grows.
    pub(crate) grown: Option<Grown>,
    /// The shapes that it has on the way.
    pub(crate) via: Vec<ViaBalance>,
    /// Whether it is read from its other end.
    pub(crate) reversed: bool,
    pub(crate) derived: Vec<Derived>,
    pub(crate) trouble: Option<Trouble>,
    /// What is dressed of it.
    pub(crate) dressed: Vec<Dressing>,
    /// What its dies move.
    pub(crate) moved: Moved,
}

impl Draft {
    /// Works out the tied sizes.
    pub(crate) fn settle(&self) -> Settled {
        let settled = match self.bend {
            Some(BendSize::Corner { angle, inside_radius, side }) => self.settle_corner(angle, inside_radius, side),
            _ if matches!(self.shape, Shape::Peak { .. }) => Settled::failed(Trouble::PeakWithoutCorner),
            Some(BendSize::Curve { angle, inside_radius, side }) => self.settle_curve(angle, inside_radius, side),
            Some(BendSize::Ring { inside_diameter, sweep, side }) => self.settle_ring(inside_diameter, sweep, side),
            Some(BendSize::Scroll(scroll)) => self.settle_scroll(&scroll),
            Some(BendSize::Socket { mandrel, sweep, less, axis, side }) => {
                self.settle_socket(mandrel, sweep, less, axis, side)
            }
            Some(BendSize::Twist { angle, shortening }) => self.settle_twist(angle, shortening),
            None if self.rolled != Rolled::Given => Settled::failed(Trouble::NoLength),
            None if self.length_given => self.as_given(),
            None => Settled::failed(Trouble::NoLength),
        };
        settled.with_metal().dressed_in(&self.dressed, self.reversed)
    }

    pub(super) fn as_given(&self) -> Settled {
        Settled { shape: Some(self.shape.clone()), ..Settled::default() }
    }

    fn settle_corner(&self, angle: f64, inside_radius: Length, side: f64) -> Settled {
        let Shape::Peak { section, .. } = &self.shape else {
            return Settled { trouble: Some(Trouble::CornerWithoutPeak), ..self.length_as_given() };
        };
        let Some(corner) = CornerSize::new(section, angle, inside_radius, side) else {
            return Settled::failed(Trouble::CornerTooFar);
        };
        let mut derived = vec![Derived::tied(SizeName::Length, corner.length())];
        derived.push(Derived::tied(SizeName::BendToApex, corner.to_apex()));
        let bent = Some(Bent::Corner { side });
        Settled { shape: Some(Shape::Peak { section: *section, corner }), bent, derived, ..Settled::default() }
    }

    /// The shape as far as its own length goes, without its bend.
    pub(super) fn length_as_given(&self) -> Settled {
        if self.length_given { self.as_given() } else { Settled::failed(Trouble::NoLength) }
    }

    fn settle_curve(&self, angle: Option<f64>, inside_radius: Option<Length>, side: f64) -> Settled {
        let way = Way::new(&self.shape, side);
        let bend = |angle, inside_radius| Bent::Curve { angle, inside_radius, side };
        match (self.length_given, angle, inside_radius) {
            (true, Some(_), Some(_)) => Settled { trouble: Some(Trouble::TooMuchGiven), ..self.as_given() },
            (true, Some(angle), None) => {
                self.with_radius(&way, angle, |radius| (SizeName::InsideRadius, radius, bend(angle, radius)))
            }
            (_, _, Some(radius)) if way.is_pinched(in_mm(radius)) => {
                Settled { trouble: Some(Trouble::Pinched), ..self.length_as_given() }
            }
            (true, None, Some(radius)) => {
                let angle = in_mm(self.shape.length()) * way.turn_per_length(in_mm(radius));
                let derived = vec![Derived::tied_angle(SizeName::Angle, angle)];
                Settled { derived, bent: Some(bend(angle, radius)), ..self.as_given() }
            }
            (false, Some(angle), Some(radius)) => self.with_length(&way, angle, radius, bend(angle, radius)),
            _ => Settled { trouble: Some(Trouble::TooLittleGiven), ..self.length_as_given() },
        }
    }

    fn settle_ring(&self, inside_diameter: Option<Length>, sweep: f64, side: f64) -> Settled {
        let way = Way::new(&self.shape, side);
        let bend = |inside_diameter| Bent::Ring { inside_diameter, sweep, side };
        match (self.length_given, inside_diameter) {
            (true, Some(_)) => Settled { trouble: Some(Trouble::TooMuchGiven), ..self.as_given() },
            (true, None) => {
                self.with_radius(&way, sweep, |radius| (SizeName::InsideDiameter, radius * 2.0, bend(radius * 2.0)))
            }
            (false, Some(diameter)) if way.is_pinched(in_mm(diameter) / 2.0) => Settled::failed(Trouble::Pinched),
            (false, Some(diameter)) => self.with_length(&way, sweep, diameter / 2.0, bend(diameter)),
            (false, None) => Settled::failed(Trouble::TooLittleGiven),
        }
    }

    /// The length that an angle at an inside radius takes: `(rᵢ + c) θ`.
    fn with_length(&self, way: &Way, angle: f64, radius: Length, bent: Bent) -> Settled {
        self.of_length(mm(angle / way.turn_per_length(in_mm(radius))), bent)
    }

    /// The shape with the length that its bend takes.
    pub(super) fn of_length(&self, length: Length, bent: Bent) -> Settled {
        match self.shape.with_length(length) {
            Some(shape) => {
                let derived = vec![Derived::tied(SizeName::Length, length)];
                Settled { shape: Some(shape), derived, bent: Some(bent), ..Settled::default() }
            }
            None => Settled { trouble: Some(Trouble::TooMuchGiven), ..self.as_given() },
        }
    }

    /// The inside radius that a length bent through an angle takes; `named` says under which name and as which bend.
    fn with_radius(&self, way: &Way, angle: f64, named: impl Fn(Length) -> (SizeName, Length, Bent)) -> Settled {
        match way.radius(in_mm(self.shape.length()), angle) {
            Ok(radius) => {
                let (name, size, bent) = named(mm(radius));
                let derived = vec![Derived::tied(name, size)];
                Settled { derived, bent: Some(bent), ..self.as_given() }
            }
            Err(radius) => Settled { trouble: Some(Trouble::RadiusBelowZero(mm(radius))), ..self.as_given() },
        }
    }

    fn settle_twist(&self, angle: f64, shortening: f64) -> Settled {
        let swell = (shortening > 0.0).then(|| 1.0 / (1.0 - shortening));
        Settled { bent: Some(Bent::Twist { angle }), swell, ..self.length_as_given() }
    }
}

/// The centroid's distance from the inside face of a bend, along the segment, in mm.
struct Way {
    start: f64,
    end: f64,
    runout: Runout,
}

impl Way {
    fn new(shape: &Shape, side: f64) -> Self {
        let (start, end) = shape.inside_to_centroid(side);
        Self { start, end, runout: shape.runout() }
    }

    /// How far a bend at an inside radius turns per length of center line, in rad/mm: the mean of `1/(rᵢ + c)`.
    ///
    /// On an even section that is `1/(rᵢ + c)`. Along a taper bent round one mandrel c changes with the section, and
    /// the mean is the integral over the length (plane geometry: dθ = ds / (rᵢ + c)).
    fn turn_per_length(&self, radius: f64) -> f64 {
        let (a, change) = (radius + self.start, self.end - self.start);
        if change == 0.0 {
            return 1.0 / a;
        }
        match self.runout {
            Runout::Straight => (change / a).ln_1p() / change,
            // Counted along f instead of t: t^p turns too sharply at its start for a quadrature.
            Runout::Power(power) if power < 1.0 => {
                let rest = 1.0 / power;
                gauss_mean(|f| rest * f.powf(rest - 1.0) / (a + change * f))
            }
            runout => gauss_mean(|t| 1.0 / (a + change * runout.share_at(t))),
        }
    }

    /// Whether the centroid lies in the inside face at this radius: there a length turns through any angle.
    fn is_pinched(&self, radius: f64) -> bool {
        radius + self.start.min(self.end) <= 0.0
    }

    /// The inside radius at which a length turns through an angle, in mm; where it would be below 0, that is the error.
    fn radius(&self, length: f64, angle: f64) -> Result<f64, f64> {
        let even = length / angle - (self.start + self.end) / 2.0;
        if self.start == self.end {
            return if even >= 0.0 { Ok(even) } else { Err(even) };
        }
        if !self.is_pinched(0.0) && angle / self.turn_per_length(0.0) > length {
            return Err(even);
        }
        solve(|radius| angle / self.turn_per_length(radius), length, even.max(1e-6)).ok_or(even)
    }
}

/// The mean of a smooth function over 0 to 1 by Gauss's rule of 8 points on 16 pieces, finer toward both ends.
fn gauss_mean(f: impl Fn(f64) -> f64) -> f64 {
    const PIECES: usize = 16;
    let bound = |piece: usize| (1.0 - (std::f64::consts::PI * piece as f64 / PIECES as f64).cos()) / 2.0;
    let mut sum = 0.0;
    for piece in 0..PIECES {
        let (low, high) = (bound(piece), bound(piece + 1));
        let (middle, half) = ((low + high) / 2.0, (high - low) / 2.0);
        for (node, weight) in GAUSS_8 {
            sum += weight * half * (f(middle - half * node) + f(middle + half * node));
        }
    }
    sum
}

impl Settled {
    /// The metal of the finished segment in mm³.
    pub(crate) fn volume_mm3(&self) -> f64 {
        let volume = self.shape.as_ref().map_or(0.0, |shape| (shape.volume() / crate::metal::mm3(1.0)).value);
        (volume - self.moved.along_mm3) * self.swell.unwrap_or(1.0)
    }

    /// What says where it lies in space.
    pub(super) fn formed(&self) -> Formed<'_> {
        let swell = self.swell.unwrap_or(1.0);
        Formed { shape: self.shape.as_ref(), bent: self.bent, reversed: self.reversed, swell }
    }

    pub(super) fn failed(trouble: Trouble) -> Self {
        Self { trouble: Some(trouble), ..Self::default() }
    }

    /// A shape without metal is no shape.
    fn with_metal(self) -> Self {
        match &self.shape {
            Some(shape @ Shape::Hole { outline, hole, at, .. }) if !outline.holds(hole, *at) => {
                let trouble = self.trouble.unwrap_or(Trouble::HoleTooLarge);
                if holds_metal(shape) { Self { trouble: Some(trouble), ..self } } else { Self::failed(trouble) }
            }
            Some(shape) if !holds_metal(shape) => {
                let none = if shape.holds_its_holes() { Trouble::NoArea } else { Trouble::HoleTooLarge };
                Self::failed(self.trouble.unwrap_or(none))
            }
            Some(shape) if !shape.holds_its_holes() => {
                Self { trouble: Some(self.trouble.unwrap_or(Trouble::HoleTooLarge)), ..self }
            }
            _ => self,
        }
    }
}

fn holds_metal(shape: &Shape) -> bool {
    let volume = shape.volume().value;
    let even = match shape {
        Shape::Prism { section, .. } | Shape::Peak { section, .. } => !section.is_end(),
        Shape::Shoulder { from, to, .. } => !from.is_end() && !to.is_end(),
        _ => true,
    };
    even && volume.is_finite() && volume > 0.0
}
