//! A place on the center line with its directions.

use super::vector::{Vector, dot, plus, times};

/// Where the section's middle lies, and how the section stands there: three unit vectors at right angles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// The place in mm.
    pub at: [f64; 3],
    /// Along the bar, away from the datum end.
    pub along: [f64; 3],
    /// The section's width, toward the smith while the bar is straight.
    pub toward: [f64; 3],
    /// The section's thickness, up while the bar is straight.
    pub up: [f64; 3],
}

impl Frame {
    /// The start of a bar that lies as it is planned.
    pub const START: Self =
        Self { at: [0.0, 0.0, 0.0], along: [1.0, 0.0, 0.0], toward: [0.0, 1.0, 0.0], up: [0.0, 0.0, 1.0] };

    /// The place of a point given along, toward and up from here, in mm.
    pub fn place(&self, point: [f64; 3]) -> [f64; 3] {
        plus(self.at, self.direction(point))
    }

    /// A direction given along, toward and up.
    pub fn direction(&self, [along, toward, up]: [f64; 3]) -> [f64; 3] {
        plus(times(self.along, along), plus(times(self.toward, toward), times(self.up, up)))
    }

    /// Another frame, given as seen from here.
    pub fn carry(&self, local: &Self) -> Self {
        Self {
            at: self.place(local.at),
            along: self.direction(local.along),
            toward: self.direction(local.toward),
            up: self.direction(local.up),
        }
    }

    /// The start as it is seen from here: what carries this frame to the start.
    pub fn inverse(&self) -> Self {
        let seen = |v: Vector| [dot(self.along, v), dot(self.toward, v), dot(self.up, v)];
        let [along, toward, up] = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]].map(seen);
        Self { at: times(seen(self.at), -1.0), along, toward, up }
    }

    /// It moved along, toward and up by so many mm.
    pub fn moved(&self, by: Vector) -> Self {
        Self { at: self.place(by), ..*self }
    }

    /// It turned about the bar: toward is turned to up.
    pub fn rolled(&self, angle: f64) -> Self {
        let (sin, cos) = angle.sin_cos();
        let toward = self.direction([0.0, cos, sin]);
        Self { toward, up: self.direction([0.0, -sin, cos]), ..*self }
    }

    /// It bent through an angle toward a side (radians from up by way of toward-you), standing where it stands.
    pub fn bent(&self, angle: f64, side: f64) -> Self {
        let (sin, cos) = angle.sin_cos();
        let [toward, up] = of_side(side);
        // Of the two directions across the bar, the one toward the inside turns with it, the other stays.
        let inside = [-sin, cos * toward, cos * up];
        let across = [0.0, -up, toward];
        let mixed = |a: f64, b: f64| self.direction(plus(times(inside, a), times(across, b)));
        Self {
            at: self.at,
            along: self.direction([cos, sin * toward, sin * up]),
            toward: mixed(toward, -up),
            up: mixed(up, toward),
        }
    }
}

/// The direction of a side across the bar: its parts toward the smith and up.
pub fn of_side(side: f64) -> [f64; 2] {
    let (sin, cos) = side.sin_cos();
    // A quarter turn is written in degrees; its cosine is 0, not 6e-17.
    let clean = |part: f64| if part.abs() < 1e-15 { 0.0 } else { part };
    [clean(sin), clean(cos)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::space::vector::{cross, minus};
    use std::f64::consts::FRAC_PI_2;

    #[test]
    fn a_bend_toward_each_side_keeps_the_three_at_right_angles() {
        for side in 0..8 {
            let frame = Frame::START.bent(1.1, f64::from(side) * 0.8).rolled(0.4);
            let off = minus(cross(frame.along, frame.toward), frame.up);
            assert!(off.iter().all(|part| part.abs() < 1e-15), "{frame:?}");
        }
    }

    #[test]
    fn a_quarter_bend_goes_to_its_side() {
        let ends = [(0.0, [0.0, 0.0, 1.0]), (1.0, [0.0, 1.0, 0.0]), (2.0, [0.0, 0.0, -1.0]), (3.0, [0.0, -1.0, 0.0])];
        for (quarter, along) in ends {
            let frame = Frame::START.bent(FRAC_PI_2, quarter * FRAC_PI_2);
            assert!(minus(frame.along, along).iter().all(|part| part.abs() < 1e-15), "{quarter}: {frame:?}");
        }
    }
}
