//! Sums and products of places and directions in space.

/// Both together.
pub(super) fn add(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

/// The way from the second to the first.
pub(super) fn minus(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

/// So many times as long.
pub(super) fn scaled(a: [f64; 3], times: f64) -> [f64; 3] {
    a.map(|part| part * times)
}

/// The product that says how far one goes along the other.
pub(super) fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// The direction at right angles to both.
pub(super) fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// How long it is.
pub(super) fn length(a: [f64; 3]) -> f64 {
    dot(a, a).sqrt()
}

/// Its direction; none where it has no length.
pub(super) fn direction(a: [f64; 3]) -> Option<[f64; 3]> {
    let long = length(a);
    (long.is_finite() && long > 1e-9).then(|| scaled(a, 1.0 / long))
}
