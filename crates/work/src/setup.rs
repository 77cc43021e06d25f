//! An order with everything that it is worked out from.

use crate::fire::hearth::Fire;
use crate::job::order::{Job, Ordered};
use crate::job::rules::Rule;
use crate::job::site::Site;
use crate::says::shop::Shop;
use fh_core::plan::Plan;

/// An order with everything that it is worked out from.
pub(crate) struct Setup<'b, 'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) sites: &'b [Site<'a>],
    pub(crate) job: &'b Job,
    pub(crate) ordered: &'b [Ordered],
    pub(crate) dropped: &'b [Rule],
    pub(crate) shop: &'b Shop,
    pub(crate) proposed: bool,
    pub(crate) fire: Option<&'b Fire>,
}
