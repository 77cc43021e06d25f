//! Edits of a plan, as data, and their history. Every change comes in here, be it typed, dragged or chosen.

mod across;
mod apply;
mod asked_names;
mod bend_drag;
mod between_marks;
mod boundary;
mod command;
mod gave;
mod headers;
mod history;
mod joint_names;
mod kept;
mod marks;
mod part_change;
mod refusal;
mod rewrite;
mod round_size;
mod steps;
pub mod ties;
mod via_change;
mod whole;
mod work_parts;

pub use across::{ACROSS_RANGE, Across, AcrossAt};
pub use bend_drag::{BendDrag, BendSizes, BendTo, Knob};
pub use boundary::{BoundaryMove, BoundaryTarget, Moved, Neighbor, move_boundary};
pub use command::Edit;
pub use gave::Gave;
pub use headers::{BarHeader, PlanHeader};
pub use history::History;
pub use marks::{MarkEdit, marks_in_row};
pub use part_change::PartChange;
pub use refusal::Refusal;
pub use steps::{StepChange, can_join, can_take_apart};
pub use via_change::{ViaChange, effective};
pub use whole::{SCALE_RANGE, WholeChange, made_of, shop_size};
