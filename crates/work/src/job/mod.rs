//! What has to be done to each part, and what must come before what.

pub(crate) mod along;
pub(crate) mod beside;
pub(crate) mod circles;
pub(crate) mod ends;
pub(crate) mod forging;
pub(crate) mod heat_rules;
pub(crate) mod hung;
pub(crate) mod kind;
pub(crate) mod leaving;
pub(crate) mod legs;
pub(crate) mod loose;
pub(crate) mod neck;
pub(crate) mod order;
pub(crate) mod part;
pub(crate) mod rules;
pub(crate) mod scarf;
pub(crate) mod site;
pub(crate) mod staged;
pub(crate) mod task;
pub(crate) mod upsets;
pub(crate) mod why;
