//! The center line of a scroll, wound out from its eye.

use super::place::Place;
use std::f64::consts::FRAC_PI_2;

/// A spiral about its pole from the radius at its eye to the radius at its open end, in mm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct SpiralLine {
    inner: f64,
    angle: f64,
    /// Even, r = a + b φ: b. Opening, r = a e^{kφ}: k.
    rate: f64,
    opening: bool,
}

impl SpiralLine {
    /// A spiral through an angle in radians; it opens by the same share each turn, or by the same distance.
    pub(crate) fn new([inner, outer]: [f64; 2], angle: f64, opening: bool) -> Self {
        let opening = opening && inner > 0.0;
        let rate = if opening { (outer / inner).ln() / angle } else { (outer - inner) / angle };
        Self { inner, angle, rate, opening }
    }

    /// How far its line turns.
    pub(crate) fn angle(&self) -> f64 {
        self.heading(self.angle)
    }

    /// The place at a share of its length.
    pub(crate) fn place(&self, share: f64) -> Place {
        let angle = self.angle_at(share * self.length_to(self.angle));
        let (start, here) = (self.about_pole(0.0), self.about_pole(angle));
        let away = [here[0] - start[0], here[1] - start[1]];
        let (sin, cos) = self.line_angle(0.0).sin_cos();
        Place { heading: self.heading(angle), at: [away[0] * cos + away[1] * sin, away[1] * cos - away[0] * sin] }
    }

    /// The share of its length at a share of its angle.
    pub(crate) fn length_at(&self, share: f64) -> f64 {
        self.length_to(self.angle * share) / self.length_to(self.angle)
    }

    fn radius(&self, angle: f64) -> f64 {
        if self.opening { self.inner * (self.rate * angle).exp() } else { self.inner + self.rate * angle }
    }

    /// How fast the radius grows with the angle.
    fn growth(&self, angle: f64) -> f64 {
        if self.opening { self.rate * self.radius(angle) } else { self.rate }
    }

    fn about_pole(&self, angle: f64) -> [f64; 2] {
        let (sin, cos) = angle.sin_cos();
        [self.radius(angle) * cos, self.radius(angle) * sin]
    }

    /// The direction of the line from that of the first radius.
    fn line_angle(&self, angle: f64) -> f64 {
        angle + FRAC_PI_2 - self.growth(angle).atan2(self.radius(angle))
    }

    fn heading(&self, angle: f64) -> f64 {
        self.line_angle(angle) - self.line_angle(0.0)
    }

    /// The length of its line from the eye to an angle, in mm: `b/2 [u √(1+u²) + asinh u]` with u = r/b for an even one,
    /// `(r₁ - r₀) √(1+k²)/k` for an opening one (plane geometry); r φ where the radius does not change.
    fn length_to(&self, angle: f64) -> f64 {
        let (start, end) = (self.radius(0.0), self.radius(angle));
        if (end - start).abs() <= 1e-9 * end.abs() {
            return start.hypot(self.growth(0.0)) * angle;
        }
        if self.opening {
            return (end - start) * self.rate.hypot(1.0) / self.rate;
        }
        let grown = |radius: f64| {
            let u = radius / self.rate;
            u * u.hypot(1.0) + u.asinh()
        };
        self.rate.abs() / 2.0 * (grown(end) - grown(start))
    }

    /// The angle at a length from the eye, by Newton's method: the length grows ever faster with the angle, or ever slower.
    fn angle_at(&self, length: f64) -> f64 {
        let whole = self.length_to(self.angle);
        if length >= whole {
            return self.angle;
        }
        let mut angle = self.angle * (length / whole).clamp(0.0, 1.0);
        for _ in 0..40 {
            let speed = self.radius(angle).hypot(self.growth(angle));
            let off = (self.length_to(angle) - length) / speed;
            angle = (angle - off).clamp(0.0, self.angle);
            if off.abs() < 1e-14 * self.angle {
                break;
            }
        }
        angle
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::TAU;

    #[test]
    fn lengths_and_places_agree() {
        for (inner, outer, turns, opening) in [
            (5.0, 40.0, 2.0, false),
            (0.0, 50.0, 3.0, false),
            (40.0, 5.0, 2.0, false),
            (10.0, 60.0, 1.75, true),
            (9.0, 9.0, 1.0, true),
        ] {
            let line = SpiralLine::new([inner, outer], turns * TAU, opening);
            let whole = line.length_to(line.angle);
            let steps = 20_000;
            let at = |step: usize| line.place(step as f64 / f64::from(steps)).at;
            let run: f64 = (0..steps as usize)
                .map(|step| (at(step + 1)[0] - at(step)[0]).hypot(at(step + 1)[1] - at(step)[1]))
                .sum();
            assert!((run / whole - 1.0).abs() < 1e-5, "{inner} {outer} {opening}: {run} {whole}");
            // The line goes where it points.
            let (before, here, after) = (line.place(0.5 - 1e-6), line.place(0.5), line.place(0.5 + 1e-6));
            let pointing = (after.at[1] - before.at[1]).atan2(after.at[0] - before.at[0]);
            assert!((pointing - here.heading).sin().abs() < 1e-5);
        }
    }
}
