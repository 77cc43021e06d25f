//! Changes of which segments and bars there are.

use super::Editor;
use crate::dialogs::Dialog;
use crate::new_segment::new_segment;
use crate::state::{Focus, Side};
use crate::widgets::Sizing;
use fh_core::edit::Edit;
use fh_core::plan::{Bar, Form, FormKind, SectionSpec, Segment};

impl Editor {
    /// Asks which form a new segment has.
    pub(crate) fn ask_form(&mut self, side: Side) {
        self.dialog = Some(Dialog::AddSegment(side));
    }

    /// Adds a segment of a form.
    pub(super) fn add_segment(&mut self, kind: FormKind, side: Side) {
        self.dialog = None;
        let plan = self.document.plan();
        let sizing = Sizing::new(&self.theme, plan.units, self.document.balance().bars.get(self.selection.bar));
        if let Some(mut segment) = new_segment(kind, &sizing) {
            if let Form::Shoulder { to, .. } = &mut segment.form
                && self.is_set_down_before(self.place_beside(side))
            {
                *to = SectionSpec::Stock;
            }
            self.insert_segment(segment, side);
        }
    }

    /// Whether the bar is no longer as bought where a segment would be put: a shoulder there steps back up.
    fn is_set_down_before(&self, at: usize) -> bool {
        let Some(bar) = self.document.balance().bars.get(self.selection.bar) else { return false };
        let before = at.checked_sub(1).and_then(|before| bar.segments.get(before));
        let end = before.and_then(|before| Some(before.shape.as_ref()?.end(before.reversed, bar.stock)));
        end.is_some_and(|end| end != bar.stock)
    }

    /// The place beside the selected segment: the end of the bar where none is selected, or its datum end.
    fn place_beside(&self, side: Side) -> usize {
        let count = self.document.plan().bars.get(self.selection.bar).map_or(0, |bar| bar.segments.len());
        match (side, self.selection.segment()) {
            (Side::Before, Some(selected)) => selected,
            (Side::After, Some(selected)) => selected + 1,
            (Side::Before, None) => 0,
            (Side::After, None) => count,
        }
    }

    /// Puts a segment beside the selected one.
    pub(crate) fn insert_segment(&mut self, mut segment: Segment, side: Side) {
        let bar = self.selection.bar;
        let Some(segments) = self.document.plan().bars.get(bar).map(|bar| &bar.segments) else { return };
        let at = self.place_beside(side);
        segment.name = free_name(segments, &segment.name);
        self.edit(&Edit::InsertSegment { bar, at, segment: Box::new(segment) });
        self.select_segment(at);
    }

    /// Takes the selected segment out.
    pub(crate) fn remove_segment(&mut self) {
        if let Some(at) = self.selection.segment() {
            self.edit(&Edit::RemoveSegment { bar: self.selection.bar, at });
        }
    }

    /// Moves a segment on its bar; it stays selected.
    pub(crate) fn move_segment(&mut self, from: usize, to: usize) {
        self.edit(&Edit::MoveSegment { bar: self.selection.bar, from, to });
        self.select_segment(to);
    }

    /// Selects a segment of the bar, or the last one where there are fewer.
    pub(crate) fn select_segment(&mut self, at: usize) {
        self.selection.focus = Focus::Segment(at);
        self.selection.settle(&self.document);
    }

    /// Adds a bar of the same stock after the selected one.
    pub(crate) fn add_bar(&mut self) {
        let plan = self.document.plan();
        let Some(stock) = plan.bars.get(self.selection.bar).map(|bar| bar.stock.clone()) else { return };
        let at = self.selection.bar + 1;
        let bar = Bar::new(&format!("bar {}", plan.bars.len() + 1), stock);
        self.edit(&Edit::AddBar { at, bar: Box::new(bar) });
        self.selection.bar = at;
        self.selection.focus = Focus::Bar;
        self.selection.settle(&self.document);
    }

    /// Takes the selected bar out.
    pub(crate) fn remove_bar(&mut self) {
        self.edit(&Edit::RemoveBar { bar: self.selection.bar });
    }
}

/// A name that no segment of the bar has yet: `taper`, `taper 2`, …
pub(super) fn free_name(segments: &[Segment], wanted: &str) -> String {
    let is_taken = |name: &str| !name.is_empty() && segments.iter().any(|segment| segment.name == name);
    if !is_taken(wanted) {
        return wanted.to_owned();
    }
    let stem = wanted.trim_end_matches(|c: char| c.is_ascii_digit()).trim_end();
    let numbered = (2..=segments.len() + 2).map(|number| format!("{stem} {number}"));
    numbered.into_iter().find(|name| !is_taken(name)).unwrap_or_else(|| wanted.to_owned())
}
