//! The editor window.

pub mod canvas;
pub mod theme;
