//! The order of work: what must come before what, in how many heats, with which tools, and what the bar is after each step.
//!
//! Everything follows from [`fh_core::plan::Plan`] and its balance. A plan without steps of its own gets the proposal; the
//! smith's own order is held against the same rules, and what breaks them is told, never forbidden.

mod along;
mod because;
mod bend_tools;
mod brief;
mod effort;
mod ends;
mod experience;
mod findings;
mod fire;
mod gauges;
mod grip;
pub mod heat;
mod heat_rules;
mod heat_with;
mod heating;
mod held;
mod hot;
mod hot_profile;
mod landmarks;
mod lay;
mod legs;
mod marks;
mod neck;
mod one_heat;
mod order;
mod passes;
mod progress;
mod rules;
mod scale_loss;
mod scale_short;
mod schedule;
mod shop;
mod site;
mod size;
mod sized;
mod sizes;
mod spots;
mod state;
mod task;
mod tools;
mod walk;
mod why;
mod words;
mod worked;

pub use experience::{Experience, Learnt};
pub use findings::{IDS, OrderFinding};
pub use gauges::Gauge;
pub use held::Hold;
pub use hot::{checking_celsius, hot_mm, hot_note};
pub use legs::{Held, WayToBend};
pub use marks::{LaidLine, LaidPlace, MarkLine};
pub use one_heat::{OneHeat, Verdict, estimate_words, one_heat, seconds_words};
pub use passes::{Passes, passes};
pub use progress::Stage;
pub use rules::Rule;
pub use scale_loss::ScaleLoss;
pub use scale_short::{SCALE_SHORT, offered, taken_up};
pub use shop::{OwnedTool, Shop, ToolKind};
pub use size::{Measure, Size};
pub use task::Task;
pub use tools::{Tool, ToolUse};
pub use why::Why;
pub use worked::{Worked, WorkedStep, after, bar_after, joined_after, proposal, work_out};
