//! The grays and the fonts of a sheet of paper that is shown on the screen.

use super::fonts;
use egui::{Color32, FontFamily, FontId};
use fh_print::fonts::Weight;
use fh_print::pen::Gray;

/// A gray of the paper as it is printed, whatever the look.
pub(crate) fn paper(gray: Gray) -> Color32 {
    Color32::from_gray(gray.lightness())
}

/// The font that a sheet is set in, so many points high.
pub(crate) fn paper_font(points: f32, weight: Weight) -> FontId {
    let family = match weight {
        Weight::Regular => FontFamily::Proportional,
        Weight::SemiBold => fonts::strong(),
    };
    // To quarters, so that not every size of paper has letters of its own in the window's store of them.
    FontId::new((points * 4.0).round() / 4.0, family)
}
