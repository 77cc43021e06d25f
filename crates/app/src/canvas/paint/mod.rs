//! The painters: each adds what it paints to the stage.

pub(in crate::canvas) mod bands;
pub(crate) mod bare;
mod branch_names;
mod captions;
mod cursor;
mod cuts;
mod details;
mod dimensions;
pub(in crate::canvas) mod empty;
mod hole_places;
mod lengths;
mod marks;
mod names;
mod repeats;
mod ruler;
mod shapes;
mod step;
mod strips;
mod ticks;
