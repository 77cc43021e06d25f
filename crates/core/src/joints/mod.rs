//! Joints with their names looked up: which segment of which copy of which bar meets which, and what each is there.

mod lookup;
mod place;
mod tree;

pub use lookup::Lookup;
pub use place::{Joined, MemberPlace, Missing, PartSide, Role, joined};
pub use tree::{Link, links};
