//! The editor window.

pub mod theme;
