//! What a heat can do: how the bar cools, how it measures hot, how it spreads, what it takes in blows, what it loses to scale.
//!
//! Everything here is a plain function of plain figures: no plan, no clock, no paper. Names carry their units; temperatures are
//! in °C. Whatever is meant to be shown comes as an [`estimate::Estimate`], with how far it can be trusted.

mod air;
pub mod blows;
pub mod colors;
pub mod cooled;
pub mod cooling;
pub mod drawing;
pub mod estimate;
pub mod flow_stress;
mod grid;
pub mod hammer;
pub mod heats;
pub mod hot_size;
pub mod hot_zone;
pub mod loss;
pub mod lumped;
pub mod profile;
pub mod scale;
pub mod section;
pub mod spread;
pub mod steel;
pub mod substance;
mod tridiagonal;
pub mod upset;
