//! Changes of a whole piece: its other hand, another bar, another size.

mod mirror;
mod other_bar;
mod scale;

pub use other_bar::made_of;
pub use scale::{SCALE_RANGE, shop_size};

use super::Refusal;
use crate::plan::{Plan, SectionSpec};

/// A change of a whole piece, as data.
#[derive(Clone, Debug, PartialEq)]
pub enum WholeChange {
    /// The same piece as a mirror shows it: what was bent toward you is bent away, what was twisted one way the other.
    OtherHand,
    /// The same piece from another bar: what was left as the bar is now drawn or upset to what the bar was.
    OtherBar {
        /// The bar.
        bar: usize,
        /// The section that it is made from.
        section: Box<SectionSpec>,
    },
    /// The same piece so many times as large, its sizes rounded as a shop does.
    Scaled(f64),
}

impl WholeChange {
    /// The plan after it.
    ///
    /// # Errors
    /// Where there is no such bar, or a size cannot be written.
    pub fn changed(&self, plan: &Plan) -> Result<Plan, Refusal> {
        match self {
            Self::OtherHand => mirror::mirrored(plan).map_err(|error| Refusal::CannotBe(error.to_string())),
            Self::OtherBar { bar, section } => made_of(plan, *bar, section).ok_or(Refusal::NoSuchPlace),
            Self::Scaled(factor) => scale::scaled(plan, *factor),
        }
    }
}
