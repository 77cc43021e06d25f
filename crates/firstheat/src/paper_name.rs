//! The sizes of paper by name.

use clap::ValueEnum;
use fh_print::paper::Paper;

/// A size of paper.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum PaperName {
    /// 210 mm by 297 mm.
    A4,
    /// 8 1/2 in by 11 in.
    Letter,
}

impl PaperName {
    /// The paper.
    pub(crate) fn paper(self) -> Paper {
        match self {
            Self::A4 => Paper::A4,
            Self::Letter => Paper::Letter,
        }
    }
}
