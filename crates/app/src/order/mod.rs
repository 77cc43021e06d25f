//! The order of work as the window shows it: its list and its buttons, the chosen step, the rules of heats, the tools.

mod add;
pub(crate) mod banner;
mod deeds;
mod groups;
mod how;
pub(crate) mod list;
pub(crate) mod panel;
mod row;
mod rules;
mod said;
mod step;
mod targets;
mod tools;
mod words;
mod your_tools;

pub(crate) use add::step_on;
