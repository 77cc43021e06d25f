//! One template with its words: a name over it, and what its numbers mean under it or beside it.

use super::figure::{Figure, number_box, number_size};
use crate::drawing::{Text, at};
use crate::fonts::Weight;
use crate::sheets::flow::Block;
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::{BODY, FACT};

/// The height of a bar's heading.
pub(super) const HEADING_MM: f64 = 9.0;
/// The least width that words under a drawing are set to.
const WORDS_MM: f64 = 64.0;
/// The width of a column of words.
const COLUMN_MM: f64 = 84.0;
/// Free between two columns of words.
const GUTTER_MM: f64 = 6.0;
/// Free between name, drawing and words.
const BETWEEN_MM: f64 = 3.0;
/// Free between a drawing and words beside it.
const BESIDE_MM: f64 = 8.0;
/// The size of the words.
const WORDS: f64 = BODY * 1.12;

/// A template: a drawing at full scale and its words.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Template {
    /// What it is of.
    pub(super) name: String,
    /// What is drawn.
    pub(super) figure: Figure,
    /// What belongs to it.
    pub(super) lines: Vec<Line>,
}

/// One line of words, with the number that it explains.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Line {
    /// The number on the drawing, or empty.
    pub(super) number: String,
    /// What it says.
    pub(super) words: String,
}

/// A block and its width.
pub(super) struct Wide {
    /// Its width in mm.
    pub(super) width: f64,
    /// What is put on the page.
    pub(super) block: Block,
}

impl Template {
    /// The template as one block that is not broken, its words under or beside its drawing; none where a page has no room.
    pub(super) fn whole(&self, [width, height]: [f64; 2]) -> Option<Wide> {
        let under = self.words_under(width);
        let beside = self.words_beside();
        [under, beside].into_iter().find(|wide| wide.width <= width + 1e-9 && wide.block.height <= height)
    }

    fn words_under(&self, most: f64) -> Wide {
        let width = self.figure.width.max(WORDS_MM).min(most.max(self.figure.width));
        let block = self.head(width).over(self.drawn()).over(self.words(width));
        Wide { width, block }
    }

    fn words_beside(&self) -> Wide {
        let width = self.figure.width + BESIDE_MM + COLUMN_MM;
        let mut block = self.head(width);
        let words = self.words(COLUMN_MM);
        let height = self.figure.height.max(words.height);
        let mut side = self.drawn();
        side.items.extend(words.indented(self.figure.width + BESIDE_MM).items);
        side.height = height + BETWEEN_MM;
        block = block.over(side);
        Wide { width, block }
    }

    /// The name over it.
    pub(super) fn head(&self, width: f64) -> Block {
        paragraph(&self.name, FACT, Weight::SemiBold, width).then_free(BETWEEN_MM)
    }

    fn drawn(&self) -> Block {
        Block { height: self.figure.height + BETWEEN_MM, items: self.figure.items.clone() }
    }

    /// The words to a width, in columns where it has room for them.
    pub(super) fn words(&self, width: f64) -> Block {
        let numbers = self.lines.iter().map(|line| number_size(&line.number)[0]).fold(0.0, f64::max) + 2.0;
        let numbered = self.lines.iter().any(|line| !line.number.is_empty());
        let indent = if numbered { numbers } else { 0.0 };
        let fit = ((width + GUTTER_MM) / (COLUMN_MM + GUTTER_MM)).floor().max(1.0);
        let columns = if self.lines.len() > 3 { fit } else { 1.0 };
        let column_mm = (width + GUTTER_MM) / columns - GUTTER_MM;
        let mut all = Block::default();
        let in_one = self.lines.len().div_ceil(columns as usize).max(1);
        for (index, lines) in self.lines.chunks(in_one).enumerate() {
            let column = |above: Block, line: &Line| above.over(line_block(line, indent, column_mm));
            let column = lines.iter().fold(Block::default(), column);
            all.height = all.height.max(column.height);
            all.items.extend(column.indented(index as f64 * (column_mm + GUTTER_MM)).items);
        }
        all
    }
}

fn line_block(line: &Line, indent: f64, width: f64) -> Block {
    let mut block = paragraph(&line.words, WORDS, Weight::Regular, width - indent).indented(indent).then_free(1.4);
    if !line.number.is_empty() {
        let [box_width, _] = number_size(&line.number);
        block.items.extend(number_box(at(box_width / 2.0, WORDS * 0.52), &line.number));
    }
    block
}

/// Words that stand alone.
pub(super) fn note(words: &str, width: f64) -> Block {
    paragraph(words, BODY, Weight::Regular, width)
}

/// The name of a bar over its templates.
pub(super) fn bar_heading(words: &str) -> Block {
    Block { height: HEADING_MM, items: vec![Text::new(at(0.0, 6.0), FACT * 1.1, words).bold().into()] }
}
