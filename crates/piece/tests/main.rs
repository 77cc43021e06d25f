//! The piece in space, from outside.

mod dies;
mod files;
mod other_hand;
mod places;
mod plate_holes;
mod solids;
