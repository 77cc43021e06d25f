//! The log of a piece: what came out at each step, held against what was planned, and what the next plan learns from it.

mod against;
mod at_anvil;
mod entries;
mod entry;
mod figure;
mod learnt;
mod ledger;
mod passes;
mod scale;
mod view;

pub(crate) use at_anvil::{Spent, add_spent};
pub(crate) use ledger::Ledger;
pub(crate) use passes::show as show_passes;
pub(crate) use view::show;
