//! Standard output, and what may go there.

use crate::failure::Failure;
use std::io::{self, Write};

/// Prints a whole text.
pub(crate) fn print(text: &str) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes())?;
    out.flush()?;
    Ok(())
}

/// A text from a plan, fit for a line of a terminal: control characters would move its cursor or change its colours.
pub(crate) fn tame(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}
