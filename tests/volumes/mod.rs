//! Volumes of every form against numeric integration, with sections, widths and edges written down anew in the tests.
//!
//! Nothing here uses the closed formulas of the metal: sections are integrated from their chords and support points, tapers
//! from slices, outlines from their widths, corners from their rays.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod corners;
mod dies;
mod flags;
mod integrate;
mod plate_holes;
mod sections;
mod slices;
mod tapers;
