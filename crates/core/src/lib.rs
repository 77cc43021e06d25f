//! The metal: sections, transitions, forms, bends, the plan, the balance, marks, findings, the plan file.
//!
//! Conventions of the whole crate:
//! - x runs along the bar from the datum end; y points toward the smith, z up. A section's width lies along y, its
//!   thickness along z. Angles around the bar start at up (0°) and go by way of toward-you (90°) to down (180°).
//! - Volumes are kept: a segment takes as much bar as its finished metal, its trimmed metal and its scale need.
//! - A plan that cannot be met is still a plan: [`balance::balance`] always answers, and says in findings what it could not do.
//!
//! The crate knows no screen, paper, disk or clock.

pub mod balance;
pub mod cautions;
pub mod contents;
pub mod describe;
pub mod edit;
pub mod file;
pub mod findings;
pub mod first_sizes;
pub mod forms;
pub mod joints;
pub mod material;
pub mod metal;
pub mod motif;
pub mod new_segment;
pub mod plan;
pub mod space;
