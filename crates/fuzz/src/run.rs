//! A plan on its way through the stages, and what was found.

use crate::Fault;
use crate::caught::{caught, without_figures};
use std::time::Instant;

/// No stage takes longer, in seconds; on a slow machine, unoptimised, with others at work on it.
const SLOW: f64 = 20.0;

/// A plan on its way.
pub(crate) struct Run {
    pub(crate) faults: Vec<Fault>,
    pub(crate) tried: usize,
}

impl Run {
    /// One stage: what it gave, unless it panicked.
    pub(crate) fn stage<T>(&mut self, name: &str, work: impl FnOnce() -> T) -> Option<T> {
        self.tried += 1;
        let began = Instant::now();
        let done = caught(work);
        let seconds = began.elapsed().as_secs_f64();
        if seconds > SLOW {
            self.wrong(&format!("{name} is slow"), format!("{seconds:.0} s"));
        }
        done.map_err(|words| self.wrong(&format!("{name} panics: {}", without_figures(&words)), words)).ok()
    }

    pub(crate) fn wrong(&mut self, what: &str, words: impl Into<String>) {
        self.faults.push(Fault::new(what, words));
    }

    /// That a text which goes to a terminal or into a file does no more than it shows.
    pub(crate) fn tame(&mut self, what: &str, text: &str) {
        let is_wild = |c: char| (c.is_control() && !matches!(c, '\n' | '\t')) || matches!(c, '\u{fffe}' | '\u{ffff}');
        if text.contains(is_wild) {
            self.wrong(&format!("control characters in {what}"), text.escape_debug().take(400).collect::<String>());
        }
    }
}
