//! Lengths that can be drawn, whatever a plan says.

/// A length that can be drawn: what is not a number, or below zero, is nothing.
pub(super) fn sane(mm: f64) -> f64 {
    if mm.is_finite() { mm.max(0.0) } else { 0.0 }
}
