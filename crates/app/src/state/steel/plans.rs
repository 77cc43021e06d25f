//! The plans of a job that are not open, read from their files, and read again where somebody changes those.

use super::paths::resolved;
use crate::state::Document;
use fh_core::plan::Plan;
use fh_rack::kept::job::JobPlan;
use fh_store::Stamp;
use std::collections::BTreeMap;
use std::path::Path;

/// In place of a plan's file: the plan that is open, whichever that is. It has no file yet, or none was asked for.
pub(crate) const OPEN: &str = "the open plan";
/// How often the disk is looked at, in seconds.
const LOOK: f64 = 1.0;

/// A plan, or why it cannot be read.
struct Read {
    plan: Result<Plan, String>,
    stamp: Option<Stamp>,
}

/// The plans, by the whole paths of their files.
#[derive(Default)]
pub(super) struct JobPlans {
    read: BTreeMap<String, Read>,
    looked: f64,
}

/// Whether a line of a job is the open plan.
pub(super) fn is_open(line: &JobPlan, document: &Document) -> bool {
    let is_file = || {
        let path = document.file()?.path.to_str()?;
        Some(line.plan == path || line.plan == resolved(&std::env::current_dir().ok()?, path))
    };
    line.plan == OPEN || is_file().unwrap_or(false)
}

fn load(path: &str) -> Read {
    match fh_store::load(Path::new(path)) {
        Ok(loaded) => Read { plan: Ok(loaded.plan), stamp: Some(loaded.stamp) },
        Err(error) => Read { plan: Err(error.to_string()), stamp: None },
    }
}

impl JobPlans {
    /// Reads what is not read yet, and now and then looks for what was changed; whether anything is another now.
    pub(super) fn read(&mut self, lines: &[JobPlan], document: &Document, now: f64) -> bool {
        let is_time = now - self.looked >= LOOK;
        if is_time {
            self.looked = now;
        }
        let mut is_other = false;
        for line in lines.iter().filter(|line| !is_open(line, document)) {
            let known = self.read.get(&line.plan);
            let is_stale = |read: &Read| {
                is_time && !read.stamp.as_ref().is_some_and(|stamp| stamp.looks_unchanged(Path::new(&line.plan)))
            };
            if known.is_none_or(is_stale) {
                let next = load(&line.plan);
                is_other |= known.is_none_or(|known| known.plan != next.plan);
                self.read.insert(line.plan.clone(), next);
            }
        }
        is_other
    }

    /// A plan.
    pub(super) fn plan(&self, path: &str) -> Result<&Plan, &str> {
        match self.read.get(path) {
            Some(Read { plan: Ok(plan), .. }) => Ok(plan),
            Some(Read { plan: Err(why), .. }) => Err(why),
            None => Err("it is being read"),
        }
    }
}
