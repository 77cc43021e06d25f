//! Why no quote can be made.

use crate::list::wanted::ListError;
use thiserror::Error;

/// The most of a job in one quote.
pub const MOST: u32 = 10_000;

/// Why no quote can be made.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum QuoteError {
    /// The cut list cannot be made.
    #[error("{0}")]
    List(#[from] ListError),
    /// Money of two currencies, or an amount that cannot be read in the one.
    #[error("{0}")]
    Money(String),
    /// A count that makes no sense.
    #[error("{0} was found; a quote is for 1 to {MOST} of a job")]
    Count(u32),
    /// A finish that the shop does not have.
    #[error("there is no finish called \"{0}\" in the shop's figures")]
    NoFinish(String),
}
