//! Heats: how long one lasts, what falls into it, and what the smith has learnt of it.

pub(crate) mod bench;
pub(crate) mod choice;
pub(crate) mod effort;
pub(crate) mod experience;
pub(crate) mod graph;
pub(crate) mod hands;
pub(crate) mod hearth;
pub(crate) mod heating;
pub(crate) mod hot;
pub(crate) mod inward;
pub(crate) mod late;
pub(crate) mod learnt;
pub(crate) mod peened;
pub(crate) mod propose;
pub(crate) mod schedule;
pub(crate) mod search;
pub(crate) mod smith;
pub(crate) mod units;
