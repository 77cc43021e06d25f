//! The piece in space, from outside.

mod files;
mod places;
mod solids;
