//! Can I do it in one heat? The answer for the chosen step, how its bar cools along its length and over time, and what its
//! metal stands.

mod answer;
mod axes;
mod band;
mod brackets;
mod isotherms;
mod metal_card;
mod moment;
mod over_time;
mod scale;
mod shades;
mod view;
mod window;

pub(crate) use view::show;
