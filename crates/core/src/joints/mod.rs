//! Joints with their names looked up: which segment of which copy of which bar meets which, and what each is there.

mod joined;
mod lookup;
mod place;
mod tree;

pub use joined::{Joined, joined};
pub use lookup::Lookup;
pub use place::{MemberPlace, Missing, PartSide, Role, kind_between};
pub use tree::{Link, links};
