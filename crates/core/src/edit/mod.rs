//! Edits of a plan, as data, and their history.

mod boundary;
mod command;
mod history;
mod joint_names;
mod rewrite;
pub mod ties;
mod work_parts;

pub use boundary::{BoundaryMove, BoundaryTarget, Gave, Moved, Neighbor, move_boundary};
pub use command::{BarHeader, Edit, PlanHeader, Refusal};
pub use history::History;
