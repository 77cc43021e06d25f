//! Where a bent bar lies in space: the center line of each segment, one after the other.
//!
//! A bar starts at the origin: x runs along it from the datum end, y toward the smith, z up. Everything here is in mm and radians.

mod formed;
mod frame;
mod run;
mod turn;
pub mod vector;
mod way;

pub use formed::Formed;
pub use frame::{Frame, of_side};
pub use run::{Run, runs};
pub use way::Way;
