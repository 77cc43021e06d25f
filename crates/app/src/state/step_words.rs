//! A step in few words: its number and title, and its heat.

use fh_core::describe::{short_name, upper_first};
use fh_work::WorkedStep;

/// A step by its number and its title: `Step 4: Taper point`.
pub(crate) fn step_words(at: usize, step: &WorkedStep) -> String {
    format!("Step {}: {}", at + 1, short_name(&step.title))
}

/// In which heat a step is done, in words: `Heat 4`, `Heats 2 to 3`, `Cold`.
pub(crate) fn heat_words(step: &WorkedStep) -> String {
    upper_first(&step.warmth().words())
}
