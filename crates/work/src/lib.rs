//! The order of work: what must come before what, in how many heats, with which tools, and what the bar is after each step.
//!
//! Everything follows from [`fh_core::plan::Plan`] and its balance. A plan without steps of its own gets the proposal; the
//! smith's own order is held against the same rules, and what breaks them is told, never forbidden.

mod after;
mod answers;
mod bar;
mod compare;
mod decisions;
mod findings;
mod fire;
mod job;
mod says;
mod seen;
mod setup;
mod step;
mod walk;
mod warmth;
mod ways;
mod work_out;
mod worked;

pub use after::{after, bar_after, bar_states, joined_after};
pub use answers::into_itself::INTO_ITSELF;
pub use answers::one_heat::{OneHeat, Verdict, estimate_words, one_heat, seconds_words};
pub use answers::passes::{Passes, passes};
pub use answers::scale_loss::ScaleLoss;
pub use answers::scale_short::{SCALE_SHORT, offered, short_parts, taken_up};
pub use bar::held::Hold;
pub use bar::progress::Stage;
pub use compare::{ComparedGroup, ComparedLine, Version, compare};
pub use findings::IDS;
pub use fire::hot::{checking_celsius, hot_mm, hot_note};
pub use fire::learnt::{Experience, Learnt};
pub use fire::smith::Smith;
pub use job::legs::{Held, WayToBend};
pub use job::task::Task;
pub use job::why::Why;
pub use says::gauges::Gauge;
pub use says::marks::{LaidLine, LaidPlace, MarkLine};
pub use says::shop::{OwnedTool, Shop, ToolKind};
pub use says::size::{Measure, Size};
pub use says::wanted::{Tool, ToolUse};
pub use seen::OrderFinding;
pub use step::WorkedStep;
pub use warmth::Warmth;
pub use work_out::{proposal, rules, work_out};
pub use worked::Worked;
