//! Settling a socket: a flag rolled round a mandrel. Of the mandrel, the rolled size and how far it goes round, two fix the third.

use super::Derived;
use super::draft::Draft;
use super::settle::Settled;
use super::trouble::Trouble;
use crate::forms::Rolled;
use crate::metal::{Bent, Outline, Shape, in_mm};
use crate::plan::{SizeName, SocketAxis};
use std::f64::consts::TAU;
use uom::si::f64::Length;

impl Draft {
    /// The rolled size is `(D + t)/2 · θ` less what another part supplies; t is the metal's mean thickness.
    pub(super) fn settle_socket(
        &self,
        mandrel: Option<Length>,
        sweep: Option<f64>,
        less: Length,
        axis: SocketAxis,
        side: f64,
    ) -> Settled {
        let Shape::Flag { outline, root, tip, blank, holes } = &self.shape else {
            return Settled { trouble: Some(Trouble::SocketWithoutFlag), ..self.length_as_given() };
        };
        let thickness = (*root + *tip) / 2.0;
        let bent = |mandrel, sweep| Some(Bent::Socket { mandrel, sweep, axis, side });
        let follows = match axis {
            SocketAxis::Along => Rolled::WidthFollows,
            SocketAxis::Across => Rolled::LengthFollows,
        };
        if self.rolled == follows {
            let Some(mandrel) = mandrel else { return Settled::failed(Trouble::TooLittleGiven) };
            let sweep = sweep.unwrap_or(TAU);
            let size = (mandrel + thickness) / 2.0 * sweep - less;
            if in_mm(size) <= 0.0 {
                return Settled::failed(Trouble::NothingToRoll);
            }
            let (outline, name) = with_rolled(outline, axis, size);
            let plate = match blank {
                Some(blank) => Shape::flag(outline, Some(blank.outline.clone()), *root, blank.tip),
                None => Shape::plate(outline, *root, *tip),
            };
            let shape = Some(plate.with_holes(holes.clone()));
            let derived = vec![Derived::tied(name, size)];
            return Settled { shape, derived, bent: bent(mandrel, sweep), ..Settled::default() };
        }
        if self.rolled != Rolled::Given {
            return Settled::failed(Trouble::NoLength);
        }
        let size = less + if axis == SocketAxis::Along { outline.width() } else { outline.length() };
        match (mandrel, sweep) {
            (Some(_), Some(_)) => Settled { trouble: Some(Trouble::TooMuchGiven), ..self.as_given() },
            (Some(mandrel), None) => {
                let sweep = (size / ((mandrel + thickness) / 2.0)).value;
                let derived = vec![Derived::tied_angle(SizeName::HowFarRound, sweep)];
                Settled { derived, bent: bent(mandrel, sweep), ..self.as_given() }
            }
            (None, sweep) => {
                let sweep = sweep.unwrap_or(TAU);
                let mandrel = size * (2.0 / sweep) - thickness;
                if in_mm(mandrel) < 0.0 {
                    return Settled { trouble: Some(Trouble::RadiusBelowZero(mandrel / 2.0)), ..self.as_given() };
                }
                let derived = vec![Derived::tied(SizeName::Mandrel, mandrel)];
                Settled { derived, bent: bent(mandrel, sweep), ..self.as_given() }
            }
        }
    }
}

/// A rectangle with the size that is rolled up, and that size's name.
fn with_rolled(outline: &Outline, axis: SocketAxis, size: Length) -> (Outline, SizeName) {
    if let Outline::OffMiddle { outline, base } = outline {
        let (rolled, name) = with_rolled(outline, axis, size);
        return (rolled.on_base_line(Some(*base)), name);
    }
    match axis {
        SocketAxis::Along => (Outline::Rectangle { length: outline.length(), width: size }, SizeName::Width),
        SocketAxis::Across => (Outline::Rectangle { length: size, width: outline.width() }, SizeName::Length),
    }
}
