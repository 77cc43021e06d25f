//! One line of text that is cut off with … where there is no room for all of it.

use egui::text::{LayoutJob, TextFormat, TextWrapping};
use egui::{Color32, FontId, Galley, Ui};
use std::sync::Arc;

/// The most letters that are laid out: more than a line of any width has room for.
const MOST_LETTERS: usize = 500;

/// Lays out one line in a width. Of a text that is longer than any line only the beginning is laid out.
pub(crate) fn lay(ui: &Ui, text: &str, font: FontId, color: Color32, width: f32) -> Arc<Galley> {
    let end = text.char_indices().nth(MOST_LETTERS).map(|(end, _)| end);
    let text = end.and_then(|end| text.get(..end)).map_or_else(|| text.to_owned(), |start| format!("{start}…"));
    let mut job = LayoutJob::single_section(text, TextFormat::simple(font, color));
    job.wrap = TextWrapping::truncate_at_width(width.max(1.0));
    ui.painter().layout_job(job)
}

/// Lays out the first of some texts, from the longest to the shortest, that has room in a width; else the last, cut off.
pub(crate) fn lay_first(ui: &Ui, texts: &[&str], font: &FontId, color: Color32, width: f32) -> Arc<Galley> {
    let laid = texts.iter().map(|text| lay(ui, text, font.clone(), color, width));
    let (fits, cut): (Vec<_>, Vec<_>) = laid.partition(|galley| !galley.elided);
    let chosen = fits.into_iter().next().or_else(|| cut.into_iter().last());
    chosen.unwrap_or_else(|| lay(ui, "", font.clone(), color, width))
}
