//! What follows for the tools: slits, punches, drills, scarfs and cuts, and the lengths that a corner or a bundle fixes.

use super::sizes::caption;
use crate::state::Desk;
use crate::theme::Text;
use crate::widgets::{heading, row};
use egui::{RichText, Ui};
use fh_core::balance::Derived;
use fh_core::describe::derived_words;
use fh_core::edit::ties;

/// Shows the sizes that follow and stand in no field; nothing where there are none.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, at: usize) {
    let bar = desk.selection.bar;
    let Some(segment) = desk.document.plan().segment(bar, at) else { return };
    let Some(balance) = desk.document.balance().bars.get(bar).and_then(|bar| bar.segments.get(at)) else { return };
    let in_fields: Vec<_> = ties::tied(segment);
    let follow = balance.derived.iter().filter(|size| size.gave.is_none() && !in_fields.contains(&size.name));
    let follow: Vec<_> = follow.collect();
    if follow.is_empty() {
        return;
    }
    heading::show(ui, desk.theme, "What follows");
    let mut before = "";
    for size in follow {
        line(ui, desk, size, before);
        before = size.because;
    }
}

/// One size, and below it why it follows; not again where the size before it follows for the same reason.
fn line(ui: &mut Ui, desk: &Desk<'_>, size: &Derived, before: &str) {
    let Some(words) = derived_words(size, desk.document.plan().units.length) else { return };
    let value = words.strip_prefix(size.name.words()).unwrap_or(&words).trim();
    row::fact(ui, desk.theme, &caption(size.name), value);
    if size.because != before {
        let because = RichText::new(size.because).text_style(Text::Small.style()).italics();
        ui.label(because.color(desk.theme.ink_quiet));
    }
}
