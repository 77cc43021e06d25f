//! How the finished piece hangs or stands: three angles by which it is turned.

use crate::theme::Text;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields, heading};
use egui::{RichText, Ui};
use fh_core::plan::Hangs;

/// What it is for.
const WORDS: &str = "The piece is seen and printed so. Marks, sizes and work do not change.";

/// Shows the angles.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, now: &mut Hangs) {
    heading::show(ui, sizing.theme, "How it hangs");
    ui.label(RichText::new(WORDS).text_style(Text::Small.style()).color(sizing.theme.ink_quiet));
    let Hangs { rolled, tipped, turned } = now;
    for (angle, label, name) in [
        (rolled, "Rolled", "Rolled towards you"),
        (tipped, "Tipped up", "Tipped up, its far end"),
        (turned, "Turned", "Turned away from you, its far end"),
    ] {
        let entry = Entry::named(label, name).hint("as planned");
        if let Some(next) = fields::optional_angle(ui, sizing, &entry, angle.as_ref(), Some(0.0)) {
            *angle = next;
        }
    }
}
