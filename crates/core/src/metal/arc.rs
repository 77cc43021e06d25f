//! Arcs: as points, and the piece between one and its chord.

/// A round outline is drawn by points so close that no chord between two lies farther inside it than this, in mm.
const OFF_ROUND_MM: f64 = 0.01;

/// An arc about a center from one angle to another, cut as finely as an arc of a radius `drawn` in mm has to be.
pub(super) fn arc(center: [f64; 2], radius: f64, [from, to]: [f64; 2], drawn: f64) -> Vec<[f64; 2]> {
    const MOST_STEPS: f64 = 720.0;
    // A chord of an angle a lies r a²/8 inside its arc.
    let step = (8.0 * OFF_ROUND_MM / drawn.max(1e-9)).sqrt();
    let steps = ((to - from).abs() / step).ceil().clamp(9.0, MOST_STEPS) as usize;
    let place = |index: usize| {
        let (sin, cos) = (from + (to - from) * index as f64 / steps as f64).sin_cos();
        // The ends lie on the outline's own ends.
        let clean = |part: f64| if part.abs() < 1e-15 { 0.0 } else { part };
        [center[0] + radius * clean(cos), center[1] + radius * clean(sin)]
    };
    (0..=steps).map(place).collect()
}

/// θ - sin θ without losing figures where θ is small.
pub(super) fn less_sine(angle: f64) -> f64 {
    if angle < 0.1 {
        let square = angle * angle;
        angle * square / 6.0 * (1.0 - square / 20.0 * (1.0 - square / 42.0 * (1.0 - square / 72.0)))
    } else {
        angle - angle.sin()
    }
}
