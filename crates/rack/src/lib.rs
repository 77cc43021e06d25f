//! Steel on the rack: what is on hand, which bar a piece is made from, how to cut bars for the pieces of a job, and what to ask.
//!
//! Lengths are whole nanometres (`_nm`), money whole hundredths or whatever the smallest unit is: nothing here is rounded, so a
//! plan fits or it does not. What is said to be the least is proven; what is not proven is given with the bound that is.

pub mod cut;
pub mod kept;
pub mod lengths;
pub mod list;
pub mod quote;
pub mod said;
pub mod weight;
pub mod which;
