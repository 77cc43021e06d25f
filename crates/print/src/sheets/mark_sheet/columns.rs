//! The columns of the table of marks.

use crate::drawing::{Align, Item, Text, at};
use crate::fonts::Weight;
use crate::sheets::paragraph;
use crate::sheets::type_sizes::{BODY, SMALLEST};
use crate::typeset;

/// Free to the right of each column.
const GUTTER_MM: f64 = 4.0;
/// A table narrower than this has no column for the side.
const NARROW_MM: f64 = 220.0;
/// The lines that one cell is given at most.
const MOST_LINES: usize = 10;

/// One column: where it stands, and how.
#[derive(Clone, Copy)]
pub(super) struct Column {
    /// What is written over it.
    pub(super) head: &'static str,
    /// Its width with its gutter; a column that is left out has none.
    pub(super) width: f64,
    left: f64,
    align: Align,
}

/// The columns of the table, from the left.
pub(super) struct Columns {
    /// The mark's number.
    pub(super) number: Column,
    /// The running total.
    pub(super) total: Column,
    /// The exact running total.
    pub(super) exact: Column,
    /// From the mark before.
    pub(super) step: Column,
    /// The block's name.
    pub(super) block: Column,
    /// What it becomes.
    pub(super) becomes: Column,
    /// The side that is set down or left standing.
    pub(super) side: Column,
    /// How the mark is struck.
    pub(super) strike: Column,
}

impl Columns {
    /// Columns that fill a width: numbers and figures take what they need, the words share the rest. The side has a column where
    /// most rows tell one, and stands under what the block becomes where not.
    pub(super) fn fill(width: f64, numbers_mm: f64, tells_sides: bool) -> Self {
        let figures_mm = [numbers_mm.max(10.0), 33.0, 23.0, 30.0];
        const WIDE: [f64; 4] = [0.19, 0.44, 0.18, 0.19];
        const NO_SIDE: [f64; 4] = [0.22, 0.61, 0.0, 0.17];
        // On a narrow page the side stands under what the block becomes.
        const NARROW: [f64; 4] = [0.22, 0.52, 0.0, 0.26];
        let rest = width - figures_mm.iter().sum::<f64>();
        let words = match width < NARROW_MM {
            true => NARROW,
            false if tells_sides => WIDE,
            false => NO_SIDE,
        }
        .map(|share| share * rest);
        let mut left = 0.0;
        let mut column = |head, width, align| {
            let column = Column { head, width, left, align };
            left += width;
            column
        };
        Self {
            number: column("mark", figures_mm[0], Align::Left),
            total: column("from datum", figures_mm[1], Align::Right),
            exact: column("exact mm", figures_mm[2], Align::Right),
            step: column("step", figures_mm[3], Align::Right),
            block: column("part", words[0], Align::Left),
            becomes: column("becomes", words[1], Align::Left),
            side: column("side", words[2], Align::Left),
            strike: column("strike", words[3], Align::Left),
        }
    }

    /// The columns that are not left out.
    pub(super) fn shown(&self) -> impl Iterator<Item = &Column> {
        let all =
            [&self.number, &self.total, &self.exact, &self.step, &self.block, &self.becomes, &self.side, &self.strike];
        all.into_iter().filter(|column| column.width > 0.0)
    }
}

impl Column {
    /// The width that its words may take.
    fn room(self) -> f64 {
        self.width - GUTTER_MM
    }

    /// The same column, so many mm wider.
    pub(super) fn wider(self, mm: f64) -> Self {
        Self { width: self.width + mm, ..self }
    }

    /// The same column, its words so many mm further to the right.
    pub(super) fn indented(self, mm: f64) -> Self {
        Self { left: self.left + mm, width: self.width - mm, ..self }
    }

    /// The words in it, at the height that they stand at; the gutter is to the right.
    pub(super) fn place(self, text: Text) -> Text {
        let y = text.at.y;
        match self.align {
            Align::Right => text.right().moved_to(at(self.left + self.room(), y)),
            _ => text.moved_to(at(self.left, y)),
        }
    }

    /// A figure in it, reduced where it would not fit.
    pub(super) fn figure(self, baseline: f64, size: f64, words: &str, weight: Weight) -> Option<Item> {
        if words.is_empty() {
            return None;
        }
        let size = typeset::fitting_size(words, size, SMALLEST, weight, self.room());
        Some(self.place(Text::new(at(0.0, baseline), size, words).weight(weight)).into())
    }

    /// Sentences in lines that fit it, each sentence on a line of its own; none where it is left out.
    pub(super) fn lines(self, sentences: &[impl AsRef<str>], weight: Weight) -> Vec<String> {
        if self.room() <= 0.0 {
            return Vec::new();
        }
        let set = |words: &str| paragraph::lines(words, BODY, weight, self.room(), MOST_LINES);
        sentences.iter().flat_map(|words| set(words.as_ref())).take(MOST_LINES).collect()
    }
}
