//! What one heat does for the chosen step. It is worked out anew only when the plan, the tools or the step have changed.

use super::Document;
use fh_work::{OneHeat, Worked, one_heat};

/// For which plan, which revision of it and which tools something was worked out.
type Stamp = (u64, u64, u64);

/// What was worked out last.
#[derive(Default)]
pub(crate) struct Reckoned {
    of: Option<(Stamp, usize)>,
    one: Option<OneHeat>,
}

impl Reckoned {
    /// Works it out for a step, where it is not known yet.
    pub(crate) fn refresh(&mut self, stamp: Stamp, document: &Document, worked: &Worked, at: Option<usize>) {
        let now = at.map(|at| (stamp, at));
        if self.of != now {
            self.of = now;
            self.one = at.and_then(|at| one_heat(document.plan(), document.balance(), worked, at));
        }
    }

    /// What one heat does; none where nothing has to be hot, or nothing can be said.
    pub(crate) fn one(&self) -> Option<&OneHeat> {
        self.one.as_ref()
    }
}
