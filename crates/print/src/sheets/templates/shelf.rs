//! Puts templates side by side as far as the page is wide, and the rows of them below each other.

use super::template::Wide;
use crate::sheets::flow::{Block, Flow};

/// Free between two templates.
const BETWEEN_MM: f64 = 10.0;

/// A row of templates that is being filled.
#[derive(Default)]
pub(super) struct Shelf {
    heading: Option<Block>,
    width: f64,
    block: Block,
}

impl Shelf {
    /// An empty row under a heading, which stays with it.
    pub(super) fn under(heading: Option<Block>) -> Self {
        Self { heading, ..Self::default() }
    }

    /// Adds a template, below what is there where the row is full.
    pub(super) fn add(&mut self, flow: &mut Flow, wide: Wide) {
        let left = if self.width > 0.0 { self.width + BETWEEN_MM } else { 0.0 };
        if left > 0.0 && left + wide.width > flow.width() + 1e-9 {
            self.put(flow);
            return self.add(flow, wide);
        }
        let height = self.block.height.max(wide.block.height);
        self.block.items.extend(wide.block.indented(left).items);
        self.block.height = height;
        self.width = left + wide.width;
    }

    /// Puts the row on the page.
    pub(super) fn put(&mut self, flow: &mut Flow) {
        let row = std::mem::take(self);
        if row.width > 0.0 || row.heading.is_some() {
            flow.put(row.heading.unwrap_or_default().over(row.block));
            flow.skip(BETWEEN_MM);
        }
    }
}
