//! Arithmetic of places and directions in space.

/// A place or a direction.
pub type Vector = [f64; 3];

/// Both together.
#[inline]
pub fn plus(a: Vector, b: Vector) -> Vector {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

/// The way from the second to the first.
#[inline]
pub fn minus(a: Vector, b: Vector) -> Vector {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

/// So many times as long.
#[inline]
pub fn times(a: Vector, factor: f64) -> Vector {
    [a[0] * factor, a[1] * factor, a[2] * factor]
}

/// The product that says how far one goes along the other.
#[inline]
pub fn dot(a: Vector, b: Vector) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// The direction at right angles to both.
#[inline]
pub fn cross(a: Vector, b: Vector) -> Vector {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// How long it is.
#[inline]
pub fn length(a: Vector) -> f64 {
    dot(a, a).sqrt()
}

/// Its direction; none where it has no length.
#[inline]
pub fn direction(a: Vector) -> Option<Vector> {
    let long = length(a);
    (long.is_finite() && long > 1e-9).then(|| times(a, 1.0 / long))
}
