//! The order of work and its heats, from outside.

mod compare;
mod experience;
mod into_itself;
mod metals;
mod one_heat;
mod passes;
mod scale;
