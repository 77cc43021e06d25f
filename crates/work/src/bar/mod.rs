//! The bar from step to step: how far it has come, where its parts lie, and what of it is hot.

pub(crate) mod been_hot;
pub(crate) mod grip;
pub(crate) mod held;
pub(crate) mod lengths;
pub(crate) mod profile;
pub(crate) mod progress;
pub(crate) mod rough;
pub(crate) mod spots;
pub(crate) mod state;
