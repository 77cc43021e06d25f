//! The cut list of plans and jobs: what is wanted, what it can be cut from, and bar after bar how.

pub mod booked;
pub mod make;
pub mod source;
pub mod wanted;
pub mod words;
