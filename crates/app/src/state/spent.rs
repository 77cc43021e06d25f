//! What a step took at the anvil, as the clock there saw it.

use super::log_entries;
use fh_core::plan::Logged;
use fh_work::WorkedStep;

/// Less than this is turning a page, not work, in minutes: common practice, no source.
const LEAST: f64 = 5.0 / 60.0;

/// What a step took at the anvil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Spent {
    /// How many times the clock began.
    pub(crate) heats: u32,
    /// How many minutes it ran.
    pub(crate) minutes: f64,
}

/// Adds what a step took to what is remembered of it.
pub(crate) fn add_spent(all: &mut Vec<Logged>, step: &WorkedStep, spent: Spent) {
    let Some(mut entry) = log_entries::blanks(step).into_iter().next() else { return };
    if spent.minutes < LEAST {
        return;
    }
    let before = log_entries::written(all, &entry);
    entry.heats = Some(before.heats.unwrap_or(0).saturating_add(spent.heats));
    entry.minutes = Some(before.minutes.unwrap_or(0.0) + spent.minutes);
    *all = log_entries::with(all, entry);
}
