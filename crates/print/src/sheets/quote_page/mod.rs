//! The two papers of a quote: the customer's page, and the smith's own reckoning with every line and where it is from.

mod customer;
mod own;

pub use customer::customer_page;
pub use own::reckoning;

use fh_rack::kept::job::Job;
use fh_rack::kept::shop::Shop;
use fh_rack::list::wanted::Ordered;

/// What both papers are made from beside the quote.
#[derive(Clone, Copy, Debug)]
pub struct QuoteHead<'a> {
    /// The job.
    pub job: &'a Job,
    /// Its plans.
    pub order: &'a [Ordered],
    /// The shop's figures.
    pub shop: &'a Shop,
    /// The date; may be empty.
    pub date: &'a str,
}
