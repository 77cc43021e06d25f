//! Why a command gave up.

use fh_core::describe::plain_line;
use fh_store::StoreError;
use std::fmt;
use std::io::{self, Write};
use std::process::ExitCode;

/// The exit status of a plan that cannot be read, a command that is wrong, or a file that cannot be written.
const STATUS: u8 = 2;

/// Why a command gave up.
#[derive(Debug)]
pub(crate) enum Failure {
    /// To be told on standard error.
    Told(String),
    /// Whoever was reading the output has stopped, as `head` does. There is nobody to tell.
    NobodyReads,
}

impl Failure {
    /// A failure to be told.
    pub(crate) fn new(message: impl fmt::Display) -> Self {
        Self::Told(message.to_string())
    }

    /// Tells it on standard error in one line, and names the exit status.
    pub(crate) fn report(self) -> ExitCode {
        match self {
            Self::NobodyReads => ExitCode::SUCCESS,
            Self::Told(message) => {
                // There is no one left to tell that standard error is closed.
                let _ = writeln!(io::stderr().lock(), "error: {}", plain_line(&message));
                ExitCode::from(STATUS)
            }
        }
    }
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Self {
        Self::new(error)
    }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        match error.kind() {
            io::ErrorKind::BrokenPipe => Self::NobodyReads,
            _ => Self::Told(format!("cannot write to standard output: {error}")),
        }
    }
}
