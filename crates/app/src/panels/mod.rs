//! The parts of the window. Each reads what it is given and asks for what the hand wants; none changes the plan.

pub(crate) mod area_plot;
pub(crate) mod empty_bar;
pub(crate) mod findings;
pub(crate) mod inspector;
pub(crate) mod menu_bar;
pub(crate) mod part_row;
pub(crate) mod parts_list;
pub(crate) mod strips_bar;
pub(crate) mod totals;
