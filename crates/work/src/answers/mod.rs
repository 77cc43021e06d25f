//! What is asked of a whole order: its heats in full, its passes, what its fire takes.

pub(crate) mod at_the_anvil;
pub(crate) mod into_itself;
pub(crate) mod one_heat;
pub(crate) mod passes;
pub(crate) mod scale_loss;
pub(crate) mod scale_short;
