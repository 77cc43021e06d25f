//! The line of a scroll: how long it is between two radii.

use std::f64::consts::TAU;

/// A spiral from the radius at its eye to the radius at its open end, in mm and turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spiral {
    /// The radius at the eye, to the center line.
    pub inner_mm: f64,
    /// The radius at the open end, to the center line.
    pub outer_mm: f64,
    /// How many turns it makes.
    pub turns: f64,
    /// Whether it opens by the same share each turn (logarithmic); by the same distance where not (Archimedes).
    pub opening: bool,
}

impl Spiral {
    /// The angle it turns through, in radians.
    pub fn angle(&self) -> f64 {
        self.turns * TAU
    }

    /// Its radius at an angle from the eye.
    pub fn radius_at(&self, angle: f64) -> f64 {
        let share = if self.angle() > 0.0 { angle / self.angle() } else { 0.0 };
        if self.opening && self.inner_mm > 0.0 {
            self.inner_mm * (self.outer_mm / self.inner_mm).powf(share)
        } else {
            self.inner_mm + (self.outer_mm - self.inner_mm) * share
        }
    }

    /// The length of its line in mm.
    ///
    /// Even, r = a + b φ: `b/2 [u √(1+u²) + asinh u]` with u = r/b between the two radii. Opening, r = a e^{kφ}:
    /// `(r₁ - r₀) √(1+k²)/k` (plane geometry). Both fall back to r φ where the radii are alike.
    pub fn length_mm(&self) -> f64 {
        let (low, high) = (self.inner_mm.min(self.outer_mm), self.inner_mm.max(self.outer_mm));
        let angle = self.angle();
        if high - low <= 1e-9 * high {
            return high * angle;
        }
        if self.opening {
            let k = (high / low).ln() / angle;
            return (high - low) * (1.0 + k * k).sqrt() / k;
        }
        let b = (high - low) / angle;
        let grown = |radius: f64| {
            let u = radius / b;
            u * (1.0 + u * u).sqrt() + u.asinh()
        };
        b / 2.0 * (grown(high) - grown(low))
    }

    /// The length of its line from the eye to an angle, in mm.
    pub fn length_to_mm(&self, angle: f64) -> f64 {
        let part = Self { outer_mm: self.radius_at(angle), turns: angle / TAU, ..*self };
        part.length_mm()
    }

    /// The angle between the line and the circle through the same place: how fast it opens there.
    pub fn pitch_angle_at(&self, angle: f64) -> f64 {
        let radius = self.radius_at(angle);
        let per_radian = if self.opening && self.inner_mm > 0.0 {
            radius * (self.outer_mm / self.inner_mm).ln() / self.angle()
        } else {
            (self.outer_mm - self.inner_mm) / self.angle()
        };
        per_radian.atan2(radius)
    }
}
