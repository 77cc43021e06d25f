//! Settling a scroll: of its length, its radii and its turns any three fix the fourth.

use super::Derived;
use super::draft::{Draft, ScrollSize};
use super::settle::Settled;
use super::solve::solve;
use super::trouble::Trouble;
use crate::metal::{Bent, Spiral, in_mm, mm};
use crate::plan::SizeName;

impl Draft {
    pub(super) fn settle_scroll(&self, scroll: &ScrollSize) -> Settled {
        if scroll.opening && scroll.inner.is_some_and(|inner| in_mm(inner) <= 0.0) {
            return Settled { trouble: Some(Trouble::ScrollFromCenter), ..self.length_as_given() };
        }
        let sizes = (scroll.inner.map(in_mm), scroll.outer.map(in_mm), scroll.turns);
        let line =
            |inner_mm: f64, outer_mm: f64, turns: f64| Spiral { inner_mm, outer_mm, turns, opening: scroll.opening };
        match (self.length_given, sizes) {
            (false, (Some(inner), Some(outer), Some(turns))) => {
                let spiral = line(inner, outer, turns);
                self.of_length(mm(spiral.length_mm()), scroll.bent(spiral))
            }
            (true, (Some(_), Some(_), Some(_))) => Settled { trouble: Some(Trouble::TooMuchGiven), ..self.as_given() },
            (true, (Some(inner), Some(outer), None)) => {
                let least = (outer - inner).abs();
                let length = in_mm(self.shape.length());
                if length <= least {
                    return Settled { trouble: Some(Trouble::ScrollTooShort(mm(least))), ..self.as_given() };
                }
                let guess = length / (std::f64::consts::PI * (inner + outer));
                let turns = solve(|turns| line(inner, outer, turns).length_mm(), length, guess);
                let spiral = turns.map(|turns| line(inner, outer, turns)).ok_or(Trouble::CannotFit);
                self.scrolled(scroll, spiral, |spiral| Derived::turns(spiral.turns))
            }
            (true, (Some(inner), None, Some(turns))) => {
                let outer = self.solve_radius(inner, |outer| line(inner, outer, turns));
                let derived = |spiral: &Spiral| Derived::tied(SizeName::OuterRadius, mm(spiral.outer_mm));
                self.scrolled(scroll, outer, derived)
            }
            (true, (None, Some(outer), Some(turns))) => {
                let inner = self.solve_radius(0.0, |inner| line(inner, outer, turns));
                let derived = |spiral: &Spiral| Derived::tied(SizeName::InnerRadius, mm(spiral.inner_mm));
                self.scrolled(scroll, inner, derived)
            }
            _ => Settled { trouble: Some(Trouble::TooLittleGiven), ..self.length_as_given() },
        }
    }

    /// The spiral whose radius above a least one makes it as long as the segment.
    fn solve_radius(&self, least: f64, line: impl Fn(f64) -> Spiral) -> Result<Spiral, Trouble> {
        let length = in_mm(self.shape.length());
        let shortest = line(least).length_mm();
        if length <= shortest {
            return Err(Trouble::ScrollTooMuchTurned(mm(shortest)));
        }
        let more = solve(|more| line(least + more).length_mm(), length, length / 4.0).ok_or(Trouble::CannotFit)?;
        Ok(line(least + more))
    }

    fn scrolled(
        &self,
        scroll: &ScrollSize,
        spiral: Result<Spiral, Trouble>,
        derived: impl Fn(&Spiral) -> Derived,
    ) -> Settled {
        match spiral {
            Ok(spiral) => {
                Settled { derived: vec![derived(&spiral)], bent: Some(scroll.bent(spiral)), ..self.as_given() }
            }
            Err(trouble) => Settled { trouble: Some(trouble), ..self.as_given() },
        }
    }
}

impl ScrollSize {
    fn bent(&self, spiral: Spiral) -> Bent {
        Bent::Scroll { spiral, eye_at_start: self.eye_at_start, side: self.side }
    }
}
