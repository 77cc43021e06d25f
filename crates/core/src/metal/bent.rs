//! A bend with every size settled.

use super::Spiral;
use crate::plan::SocketAxis;
use uom::si::f64::Length;

/// What is done to a segment once it is forged. Angles are in radians; sides run from up by way of toward-you.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bent {
    /// Through an angle at an inside radius.
    Curve {
        /// How far it turns.
        angle: f64,
        /// The radius of its inside face.
        inside_radius: Length,
        /// The side it is bent toward.
        side: f64,
    },
    /// Into a ring or an eye.
    Ring {
        /// The diameter inside.
        inside_diameter: Length,
        /// How far round it goes.
        sweep: f64,
        /// The side it is bent toward.
        side: f64,
    },
    /// To a sharp corner; its sizes are in the shape.
    Corner {
        /// The side it is bent toward.
        side: f64,
    },
    /// Into a scroll.
    Scroll {
        /// Its line.
        spiral: Spiral,
        /// Whether its eye is toward the datum end.
        eye_at_start: bool,
        /// The side it is bent toward.
        side: f64,
    },
    /// Rolled round a mandrel.
    Socket {
        /// The mandrel's diameter.
        mandrel: Length,
        /// How far round it goes.
        sweep: f64,
        /// How its axis lies.
        axis: SocketAxis,
        /// The side it is rolled toward.
        side: f64,
    },
    /// Turned about its own axis.
    Twist {
        /// How far, in radians; below 0 the other way round.
        angle: f64,
    },
}
