//! What is ordered: a job, or plans as they are named on the command line.

use crate::failure::Failure;
use crate::input::{self, is_standard};
use fh_rack::kept::job::{self, Job, JobPlan};
use fh_rack::list::wanted::{Ordered, title};
use fh_store::document;
use std::path::{Path, PathBuf};

/// A job with its plans read.
#[derive(Debug)]
pub(crate) struct Order {
    /// The job; made up where plans were named.
    pub(crate) job: Job,
    /// Its plans, in its order.
    pub(crate) plans: Vec<Ordered>,
}

/// Reads a job, or plans.
pub(crate) fn read(paths: &[PathBuf]) -> Result<Order, Failure> {
    for path in paths.iter().filter(|path| !is_standard(path)) {
        let bytes = document::load(path, |bytes| Ok(bytes.to_vec()))?.value;
        if job::is_job(&bytes) {
            if paths.len() > 1 {
                return Err(Failure::new(format!(
                    "a job stands alone; its plans are named in it ({})",
                    path.display()
                )));
            }
            return of_job(path);
        }
    }
    let plans =
        paths.iter().map(|path| Ok(Ordered::new(input::read(path)?, 1))).collect::<Result<Vec<_>, Failure>>()?;
    let titles: Vec<String> = plans.iter().map(|ordered| title(&ordered.plan)).collect();
    let named = paths.iter().map(|path| JobPlan::one(&path.to_string_lossy())).collect();
    Ok(Order { job: Job::of(&titles.join(", "), named), plans })
}

fn of_job(path: &Path) -> Result<Order, Failure> {
    let job = document::load(path, job::read)?.value;
    let folder = path.parent().unwrap_or(Path::new(""));
    let plan = |line: &JobPlan| {
        let file = folder.join(&line.plan);
        let plan =
            fh_store::load(&file).map_err(|error| Failure::new(format!("of the job {}: {error}", path.display())))?;
        Ok(Ordered {
            plan: plan.plan,
            count: line.pieces(),
            cut: line.cut.clone(),
            also_from: line.also_from.iter().map(|said| said.section.clone()).collect(),
        })
    };
    let plans = job.plans.iter().map(plan).collect::<Result<Vec<_>, Failure>>()?;
    Ok(Order { job, plans })
}
