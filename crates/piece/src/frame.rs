//! A place on the center line with its directions.

/// Where the section's middle lies, and how the section stands there: three unit vectors at right angles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// The place in mm.
    pub at: [f64; 3],
    /// Along the bar, away from the datum end.
    pub along: [f64; 3],
    /// The section's width, toward the smith while the bar is straight.
    pub toward: [f64; 3],
    /// The section's thickness, up while the bar is straight: `along × toward`.
    pub up: [f64; 3],
}

impl Frame {
    /// The start of a bar that lies as it is planned.
    pub const START: Self =
        Self { at: [0.0, 0.0, 0.0], along: [1.0, 0.0, 0.0], toward: [0.0, 1.0, 0.0], up: [0.0, 0.0, 1.0] };
}
