//! The blank of a plate that is cut to shape.

use super::Outline;
use uom::si::f64::Length;

/// What a flag is spread to before it is cut to its outline; both have one root and one base line.
#[derive(Clone, Debug, PartialEq)]
pub struct Blank {
    /// Its outline.
    pub outline: Outline,
    /// Its thickness at its tip; at its root it is that of the flag.
    pub tip: Length,
}
