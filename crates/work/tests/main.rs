//! The order of work and its heats, from outside.

mod experience;
mod heat_absurd;
mod heat_analytic;
mod heat_hammering;
mod heat_reference;
mod into_itself;
mod metals;
mod one_heat;
mod passes;
mod scale;
