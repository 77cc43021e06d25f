//! The log of a piece: what came out at each step, held against what was planned, and what the next plan learns from it.

mod against;
mod at_anvil;
mod entry;
mod figure;
mod learnt;
mod passes;
mod scale;
mod view;

pub(crate) use passes::show as show_passes;
pub(crate) use view::show;
