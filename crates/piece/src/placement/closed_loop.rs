//! Loops of joints that do not close.

/// A joint that closes a loop of joints: what it says of its members' places, against where other joints put them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClosedLoop {
    /// The joint, counted from 0.
    pub joint: usize,
    /// How far its member lies from where this joint would put it, in mm.
    pub gap_mm: f64,
}
