//! The mark at the selected segment's end: where it is fixed, or that it follows from the parts.

use crate::state::{Desk, Request};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields};
use egui::Ui;
use fh_core::edit::{Edit, MarkEdit};
use fh_core::plan::Chain;
use fh_measure::LengthRange;

/// Shows the field: empty where the mark follows.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, sizing: &Sizing<'_>, at: usize, out: &mut Vec<Request>) {
    let bar = desk.selection.bar;
    let Some(written) = desk.document.plan().bars.get(bar) else { return };
    let Some(segment) = written.segment(at).filter(|_| matches!(written.place_of(at), Some((Chain::Bar, _)))) else {
        return;
    };
    let balance = desk.document.balance().bars.get(bar).and_then(|bar| bar.segments.get(at));
    let follows = balance.map(|balance| balance.mark_end_shop);
    let hint = follows.map_or_else(String::new, |mark| mark.text());
    let because = segment.ends_at.is_none().then_some("Type where it is to lie, and it is fixed there.");
    let entry = Entry::named("Fixed at", "Mark fixed at").hint(&hint).because(because);
    let now = segment.ends_at.as_ref();
    let follows_mm = follows.map(|mark| mark.mm());
    let Some(typed) = fields::optional_length(ui, sizing, &entry, now, LengthRange::AboveZero, follows_mm) else {
        return;
    };
    let edit = match (typed, now) {
        (Some(at_mark), None) => MarkEdit::Fix { bar, segment: at, at: at_mark },
        (Some(to), Some(_)) => MarkEdit::Move { bar, segment: at, to },
        (None, Some(_)) => MarkEdit::Loosen { bar, segment: at },
        (None, None) => return,
    };
    out.push(Request::Edit(Edit::Mark(edit)));
}
