//! What is selected, and where the cursor stands on the bar.

use super::Document;
use fh_core::plan::Chain;

/// What the inspector shows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub(crate) enum Focus {
    /// The whole plan.
    #[default]
    Plan,
    /// The bar.
    Bar,
    /// A segment of the bar, counted through it.
    Segment(usize),
    /// A branch of a split.
    Branch {
        /// The split, counted through the bar.
        split: usize,
        /// Which of its branches, counted from 0.
        branch: usize,
    },
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
            Focus::Plan | Focus::Bar | Focus::Branch { .. } => None,
        }
    }

    /// Keeps it on what is there, after an undo for example.
    pub(crate) fn settle(&mut self, document: &Document) {
        let plan = document.plan();
        self.bar = self.bar.min(plan.bars.len().saturating_sub(1));
        let Some(bar) = plan.bars.get(self.bar) else { return };
        let segment = match self.focus {
            Focus::Plan | Focus::Bar => return,
            Focus::Branch { split, branch } if bar.chain(Chain::Branch { split, branch }).is_some() => return,
            Focus::Branch { split: segment, .. } | Focus::Segment(segment) => segment,
        };
        self.focus = match bar.count_segments() {
            0 => Focus::Bar,
            count => Focus::Segment(segment.min(count - 1)),
        };
    }
}
