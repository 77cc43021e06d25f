//! What is wanted once unsaved changes stand in its way no more.

use std::path::PathBuf;

/// What to do with unsaved changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Choice {
    /// Save them.
    Save,
    /// Let them go.
    Discard,
}

/// What was wanted before unsaved changes were asked about.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Then {
    /// Begin a new plan: ask for its stock.
    New,
    /// Ask which plan to open.
    AskOpen,
    /// Open a plan's file.
    Open(PathBuf),
    /// Open a demo plan.
    OpenDemo(usize),
    /// Open recovered work.
    Recover(usize),
    /// Read the plan's file again.
    Reload,
    /// Begin a new job.
    NewJob,
    /// Ask which job to open.
    AskOpenJob,
    /// Open a job's file.
    OpenJob(PathBuf),
    /// Close the window.
    Close,
}

impl Then {
    /// Whether the open plan is left for it.
    pub(crate) fn leaves_plan(&self) -> bool {
        !self.is_of_job()
    }

    /// Whether the job in hand is left for it.
    pub(crate) fn leaves_job(&self) -> bool {
        self.is_of_job() || *self == Self::Close
    }

    fn is_of_job(&self) -> bool {
        matches!(self, Self::NewJob | Self::AskOpenJob | Self::OpenJob(_))
    }
}
