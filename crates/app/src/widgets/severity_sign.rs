//! The sign and color of a finding: a shape and a word as well as a color.

use crate::theme::Theme;
use egui::Color32;
use fh_core::findings::Severity;
use fh_measure::counted;

/// The sign of a severity.
pub(crate) fn sign(severity: Severity) -> &'static str {
    match severity {
        Severity::Stop => "■",
        Severity::Warning => "▲",
        Severity::Note => "●",
    }
}

/// The color of a severity.
pub(crate) fn color(theme: &Theme, severity: Severity) -> Color32 {
    match severity {
        Severity::Stop => theme.stop,
        Severity::Warning => theme.warning,
        Severity::Note => theme.note,
    }
}

/// The word for so many findings: `2 warnings`.
pub(crate) fn count_words(count: usize, severity: Severity) -> String {
    counted(count, severity.name())
}
