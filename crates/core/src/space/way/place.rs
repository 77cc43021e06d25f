//! A place on a plane curve.

/// A place on a plane curve: how far it has turned, and where it is ahead and toward the inside, in mm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Place {
    pub(crate) heading: f64,
    pub(crate) at: [f64; 2],
}

/// A place on a circle after this length and this turn.
pub(crate) fn arc_place(length: f64, heading: f64) -> Place {
    if heading.abs() < 1e-9 {
        return Place { heading, at: [length, length * heading / 2.0] };
    }
    let radius = length / heading;
    let half = (heading / 2.0).sin();
    Place { heading, at: [radius * heading.sin(), radius * 2.0 * half * half] }
}
