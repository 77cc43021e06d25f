//! The piece in space: its center line bend after bend, and its surface as closed meshes.
//!
//! Everything here is in mm. A bar starts at the origin: x runs along it from the datum end, y away from the smith, z up, so
//! that the three are right-handed. A [`Frame`] carries along, toward (the smith) and up, as the core has them, along the
//! center line.

mod chain;
mod fineness;
mod flat;
mod make;
mod mesh;
mod on_plate;
mod overlap;
mod path;
mod piece;
mod placement;
mod rotation;
mod seen;
mod solid;
mod welded;

pub mod files;
pub mod raster;
pub mod svg_text;

pub use fh_core::space::{Frame, vector};
pub use fineness::Quality;
pub use flat::{Flat, flats};
pub use make::{hung, piece};
pub use mesh::{Bounds, Mesh};
pub use on_plate::place_on_plate;
pub use overlap::{Overlap, PartOf, overlaps, overlaps_along};
pub use piece::{Line, Piece, Solid};
pub use placement::{ClosedLoop, Placement, Placements, placements};
pub use seen::Seen;
