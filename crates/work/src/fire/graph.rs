//! Which steps wait for which.

use crate::job::rules::Rule;

/// Which units wait for which.
pub(crate) struct Graph {
    /// For each unit those that wait for it.
    pub(crate) after: Vec<Vec<usize>>,
    /// For each unit how many it waits for.
    pub(crate) waits: Vec<usize>,
}

impl Graph {
    pub(crate) fn new(units: &[Vec<usize>], tasks: usize, rules: &[Rule]) -> Self {
        let mut unit_of = vec![0; tasks];
        for (unit, members) in units.iter().enumerate() {
            members.iter().for_each(|task| unit_of[*task] = unit);
        }
        let (mut after, mut waits) = (vec![Vec::new(); units.len()], vec![0; units.len()]);
        for rule in rules {
            let (before, then) = (unit_of[rule.before], unit_of[rule.after]);
            if before != then {
                after[before].push(then);
                waits[then] += 1;
            }
        }
        Self { after, waits }
    }
}
