//! What of a settled segment says where it lies.

use crate::metal::{Bent, Shape};

/// A segment as it is forged and bent.
#[derive(Clone, Copy, Debug)]
pub struct Formed<'a> {
    /// Its shape; none where a size could not be settled.
    pub shape: Option<&'a Shape>,
    /// Its bend; none where it stays straight or a size could not be settled.
    pub bent: Option<Bent>,
    /// Whether it is read from its other end.
    pub reversed: bool,
    /// How many times more metal than its shape it takes.
    pub swell: f64,
}
