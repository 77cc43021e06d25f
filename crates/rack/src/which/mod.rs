//! Which bar: every section that a piece can be forged from, and what each asks for.

pub mod options;
