//! The quote: what a job costs line by line, what is asked for it, and from what each figure follows.

pub mod error;
pub mod hours;
pub mod lines;
pub mod price;
pub mod quoted;
mod steel;
