//! The physics of a heat: how a bar cools, how it measures hot, how it spreads, what it takes in blows, what it loses to scale.
//!
//! Plain functions of plain figures: no plan, no clock, no paper, nothing of ours and nothing but the standard library. It can be
//! used and cited alone.
//!
//! # Units
//!
//! Names carry them: `_mm`, `_mm2`, `_mm3`, `_um`, `_celsius`, `_seconds`, `_joules`, `_mpa`, `_kg`, `_w_mk`, `_j_kgk`, `_w_m2k`.
//! Lengths and volumes are always those of the cold bar. A share is 0 to 1. What is not finite is held to the nearest figure that
//! has a meaning; nothing here panics.
//!
//! # What is answered, and by whose law
//!
//! | module | answers | law |
//! |---|---|---|
//! | [`steel`] | specific heat, conductivity, enthalpy, elongation | EN 1993-1-2 §3.4.1, to 1200 °C |
//! | [`substance`] | the same of steel, or of a metal with constant figures | |
//! | [`loss`] | what a bar loses to air and anvil | Stefan and Boltzmann; Churchill and Chu 1975; contact our own estimate |
//! | [`profile`], [`section`] | the bar as cooling sees it: area and girth along it | |
//! | [`cooling`], [`cooled`] | its temperatures by place and time, and what of it is still in range | finite volumes, trapezoidal rule |
//! | [`lumped`] | the quick answer for the middle of a heat | one section that cools as one |
//! | [`hot_zone`] | where it is hot out of the fire | soft edges, our own choice |
//! | [`hot_size`] | a cold size as it reads hot | the elongation, or a coefficient |
//! | [`spread`], [`drawing`] | a bar drawn or spread pass by pass | Tomlinson and Stringer 1959, from memory |
//! | [`growth`] | what a bar grows to, and what growth flat tools give | the same, in ever smaller passes |
//! | [`upset`] | when a free length folds, and what it takes | Forging Industry Association; common practice |
//! | [`flow_stress`] | how hard hot carbon steel resists | Misaka and Yoshimoto 1967, Shida 1969, from memory |
//! | [`blows`], [`hammer`], [`heats`] | work, blows, and the heats of a drawing | Siebel; von Mises; common practice |
//! | [`scale`] | steel lost to scale | Markworth; Stanley, von Hoene and Huntoon 1950 |
//! | [`colors`] | words for the colors of heat | Chapman 1972 and two others |
//!
//! Each law has its source where it stands; `docs/sources.md` lists them with what is from memory, and
//! `docs/handbook/heat-model.md` says in a smith's words how far each can be trusted.
//!
//! # Doubt
//!
//! Whatever is meant to be shown comes as an [`estimate::Estimate`]: what it is seldom under, what it most likely is, and what it is
//! seldom over. Blows are known to a factor of two, scale too, times to about a third.
//!
//! # How it is held
//!
//! `tests/analytic.rs` holds it against closed forms, `tests/reference.rs` against published figures, `tests/hammering.rs` against
//! what is usual at the anvil, `tests/absurd.rs` against inputs that no bar has; `reference/cooling.py` cools the bar of the bench
//! by a general solver.

mod air;
pub mod blows;
pub mod colors;
pub mod cooled;
pub mod cooling;
pub mod drawing;
pub mod estimate;
pub mod flow_stress;
mod grid;
pub mod growth;
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
