//! What is selected, and where the cursor stands on the bar.

use super::Document;

/// What the inspector shows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Focus {
    /// The whole plan.
    #[default]
    Plan,
    /// The bar.
    Bar,
    /// A segment of the bar.
    Segment(usize),
}

/// What is selected.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Selection {
    /// The bar that the strips show.
    pub(crate) bar: usize,
    /// What the inspector shows.
    pub(crate) focus: Focus,
    /// The cursor, in mm on the starting bar.
    pub(crate) cursor_mm: Option<f64>,
}

impl Selection {
    /// The first segment of the first bar, or the bar where it has none.
    pub(crate) fn first(document: &Document) -> Self {
        let has_segment = document.plan().segment(0, 0).is_some();
        Self { focus: if has_segment { Focus::Segment(0) } else { Focus::Bar }, ..Self::default() }
    }

    /// The selected segment.
    pub(crate) fn segment(&self) -> Option<usize> {
        match self.focus {
            Focus::Segment(segment) => Some(segment),
            Focus::Plan | Focus::Bar => None,
        }
    }

    /// Keeps it on what is there, after an undo for example.
    pub(crate) fn settle(&mut self, document: &Document) {
        let plan = document.plan();
        self.bar = self.bar.min(plan.bars.len().saturating_sub(1));
        if let (Focus::Segment(segment), Some(bar)) = (self.focus, plan.bars.get(self.bar)) {
            self.focus = match bar.segments.len() {
                0 => Focus::Bar,
                count => Focus::Segment(segment.min(count - 1)),
            };
        }
    }
}
