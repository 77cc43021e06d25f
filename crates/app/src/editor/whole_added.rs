//! A ready-made whole, as it was put in last.

use fh_core::plan::Chain;

/// A whole as it was put in, with the part of it that was selected then.
pub(super) struct WholeAdded {
    pub(super) bar: usize,
    pub(super) chain: Chain,
    pub(super) first: usize,
    pub(super) names: Vec<String>,
    pub(super) selected: usize,
}
