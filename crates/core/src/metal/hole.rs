//! A hole through the thickness of a boss.

use super::{in_mm, mm, mm2};
use crate::plan::HoleSpec;
use std::f64::consts::PI;
use uom::si::f64::{Area, Length};

/// A hole with its sizes settled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HoleSize {
    /// A round hole.
    Round {
        /// Its diameter.
        diameter: Length,
    },
    /// A square hole.
    Square {
        /// Its side.
        side: Length,
    },
    /// A slot with round ends, over all.
    Slot {
        /// Along the bar.
        length: Length,
        /// Across the bar.
        width: Length,
    },
}

impl From<&HoleSpec> for HoleSize {
    fn from(spec: &HoleSpec) -> Self {
        match spec {
            HoleSpec::Round(diameter) => Self::Round { diameter: diameter.length() },
            HoleSpec::Square(side) => Self::Square { side: side.length() },
            HoleSpec::Slot { length, width } => Self::Slot { length: length.length(), width: width.length() },
        }
    }
}

impl HoleSize {
    /// Its area.
    pub fn area(&self) -> Area {
        match *self {
            Self::Round { diameter } => diameter * diameter * (PI / 4.0),
            Self::Square { side } => side * side,
            Self::Slot { length, width } => {
                let (long, short) = (length.max(width), length.min(width));
                (long - short) * short + short * short * (PI / 4.0)
            }
        }
    }

    /// Its perimeter.
    pub fn perimeter(&self) -> Length {
        match *self {
            Self::Round { diameter } => diameter * PI,
            Self::Square { side } => side * 4.0,
            Self::Slot { length, width } => {
                let (long, short) = (length.max(width), length.min(width));
                (long - short) * 2.0 + short * PI
            }
        }
    }

    /// Its size along the bar.
    pub fn length(&self) -> Length {
        match *self {
            Self::Round { diameter: size } | Self::Square { side: size } | Self::Slot { length: size, .. } => size,
        }
    }

    /// Its size across the bar.
    pub fn width(&self) -> Length {
        match *self {
            Self::Round { diameter: size } | Self::Square { side: size } | Self::Slot { width: size, .. } => size,
        }
    }

    /// Its size in mm between two parallel lines that touch it, in the direction of an angle from along the bar to
    /// toward-you.
    pub fn extent_mm(&self, angle: f64) -> f64 {
        let (length, width) = (in_mm(self.length()), in_mm(self.width()));
        let (sin, cos) = angle.sin_cos();
        match self {
            Self::Square { .. } => length * (sin.abs() + cos.abs()),
            Self::Round { .. } | Self::Slot { .. } => {
                let short = length.min(width);
                short + (length - short) * cos.abs() + (width - short) * sin.abs()
            }
        }
    }

    /// Its width in mm at a distance from its middle along the bar.
    pub fn width_at_mm(&self, from_middle: f64) -> f64 {
        let (half, width) = (in_mm(self.length()) / 2.0, in_mm(self.width()));
        let from_end = half - from_middle.abs();
        if from_end < 0.0 {
            return 0.0;
        }
        let radius = match self {
            Self::Square { .. } => return width,
            Self::Round { .. } => half,
            Self::Slot { .. } => half.min(width / 2.0),
        };
        let short = (radius - from_end).max(0.0);
        width - 2.0 * radius + 2.0 * (radius * radius - short * short).max(0.0).sqrt()
    }

    /// Whether a place lies within it, in mm from its middle: along the bar, and across it.
    pub fn contains_mm(&self, [along, across]: [f64; 2]) -> bool {
        let (a, b) = (in_mm(self.length()) / 2.0, in_mm(self.width()) / 2.0);
        if let Self::Square { .. } = self {
            return along.abs() < a && across.abs() < b;
        }
        let radius = a.min(b);
        (along.abs() - (a - radius)).max(0.0).hypot((across.abs() - (b - radius)).max(0.0)) < radius
    }

    /// Its outline in mm about its middle, counter-clockwise: along the bar, and across it toward you.
    pub fn points_mm(&self, turn_points: usize) -> Vec<[f64; 2]> {
        let (a, b) = (in_mm(self.length()) / 2.0, in_mm(self.width()) / 2.0);
        let radius = match self {
            Self::Square { .. } => return vec![[-a, -b], [a, -b], [a, b], [-a, b]],
            Self::Round { .. } | Self::Slot { .. } => a.min(b),
        };
        let steps = (turn_points / 4).max(2);
        let mut points = Vec::with_capacity(4 * steps + 4);
        for (quarter, center) in
            [[a - radius, b - radius], [radius - a, b - radius], [radius - a, radius - b], [a - radius, radius - b]]
                .into_iter()
                .enumerate()
        {
            for step in 0..=steps {
                let angle = PI / 2.0 * (quarter as f64 + step as f64 / steps as f64);
                let point = [center[0] + radius * angle.cos(), center[1] + radius * angle.sin()];
                let near = |other: &[f64; 2]| (other[0] - point[0]).hypot(other[1] - point[1]) < 1e-9;
                if !points.last().is_some_and(near) && !points.first().is_some_and(near) {
                    points.push(point);
                }
            }
        }
        points
    }

    /// The length of the slit that is drifted to it: half the finished perimeter less 5 % (common practice, no source).
    pub fn slit_half_perimeter(&self) -> Length {
        self.perimeter() * (0.5 * 0.95)
    }

    /// The length of the slit that is drifted to it, by the rule of three quarters of its length.
    ///
    /// Controlled Hand Forging, lesson 8: a chisel of about 75 % of the finished length, the drift stretches it.
    pub fn slit_three_quarters(&self) -> Length {
        self.length() * 0.75
    }
}

/// The area of a slug of this diameter.
pub(crate) fn slug_area(diameter: Length) -> Area {
    mm2(PI / 4.0 * in_mm(diameter).powi(2))
}

/// A hole of no size, for a boss that is drawn without it.
impl Default for HoleSize {
    fn default() -> Self {
        Self::Round { diameter: mm(0.0) }
    }
}
