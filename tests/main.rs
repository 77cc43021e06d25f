//! What crosses crates, but for the real window.

mod demos;
mod gui;
mod handbook;
mod house;
mod orders;
mod paper;
mod properties;
mod reference;
mod volumes;
