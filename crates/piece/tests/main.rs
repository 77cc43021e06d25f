//! The piece in space, from outside.

mod files;
mod other_hand;
mod places;
mod solids;
