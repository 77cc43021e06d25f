//! What the user chose about the program itself, kept between runs.

use super::Views;
use crate::theme::Look;
use fh_core::plan::PlanUnit;
use fh_print::paper::Paper;
use serde::{Deserialize, Serialize};
use std::path::PathBuf;

/// The user's choices.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub(crate) struct Settings {
    /// Colors.
    pub(crate) look: Look,
    /// The size of text: 1 is 100 %.
    pub(crate) text_size: f32,
    /// Which views of the bar are shown.
    pub(crate) views: Views,
    /// The paper that sheets are printed on; where none was chosen, what is usual beside the plan's unit.
    pub(crate) paper: Option<PaperSize>,
    /// The kind of file that sheets are written to.
    pub(crate) sheet: SheetKind,
    /// The sheets that were printed last, by their words in names of files; where none were, the usual ones.
    pub(crate) sheets: Vec<String>,
    /// Whether the last plan is opened at the start.
    pub(crate) reopens_last: bool,
    /// Whether the tour was seen or skipped.
    pub(crate) tour_seen: bool,
    /// Whether the list of findings is open; where it was not said, it is where there is room for it.
    pub(crate) findings_open: Option<bool>,
    /// Whether the plot is open; where it was not said, it is where there is room for it.
    pub(crate) plot_open: Option<bool>,
    /// Whether the view of the piece is open; where it was not said, it is where there is room for it.
    pub(crate) piece_open: Option<bool>,
    /// Whether the order of work stands in place of the list of parts.
    pub(crate) order_open: bool,
    /// The folder of the last file that was opened or saved.
    pub(crate) folder: Option<PathBuf>,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            look: Look::Light,
            text_size: 1.0,
            views: Views::Both,
            paper: None,
            sheet: SheetKind::Pdf,
            sheets: Vec::new(),
            reopens_last: true,
            tour_seen: false,
            findings_open: None,
            plot_open: None,
            piece_open: None,
            order_open: false,
            folder: None,
        }
    }
}

/// A size of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum PaperSize {
    /// 210 mm × 297 mm.
    A4,
    /// 8 1/2 in × 11 in.
    Letter,
}

impl PaperSize {
    /// Every size, in the order they are offered.
    pub(crate) const ALL: [Self; 2] = [Self::A4, Self::Letter];

    /// What is usual where lengths are in a unit: common practice, no source.
    pub(crate) fn usual(unit: PlanUnit) -> Self {
        match unit {
            PlanUnit::Inch => Self::Letter,
            PlanUnit::Millimeter => Self::A4,
        }
    }

    /// The paper to print on.
    pub(crate) fn paper(self) -> Paper {
        match self {
            Self::A4 => Paper::A4,
            Self::Letter => Paper::Letter,
        }
    }
}

/// A kind of file for sheets.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum SheetKind {
    /// For printing.
    #[default]
    Pdf,
    /// For drawing programs and browsers.
    Svg,
}

impl SheetKind {
    /// Every kind, in the order they are offered.
    pub(crate) const ALL: [Self; 2] = [Self::Pdf, Self::Svg];

    /// The word for it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Pdf => "PDF",
            Self::Svg => "SVG",
        }
    }

    /// The ending of its files.
    pub(crate) fn ending(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Svg => "svg",
        }
    }
}
