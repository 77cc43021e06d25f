//! Facts in boxes side by side: what the smith fetches and cuts, and what lies ahead.

use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph::lines;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT, LINE_PITCH, SMALLEST};
use crate::typeset;

/// The height of a box of facts with one line below its value.
const FACT_MM: f64 = 18.0;
/// Free inside the edges of a box.
const PAD_MM: f64 = 2.2;
/// The width that a box takes at least.
const NARROWEST_MM: f64 = 24.0;
/// The width that what stands below a value asks for at most; what is longer runs over several lines.
const ALSO_MM: f64 = 44.0;
/// The lines below a value at most.
const MOST_LINES: usize = 6;

/// One fact of the heading.
pub(super) struct Fact {
    /// What it is.
    pub(super) caption: &'static str,
    /// What it says.
    pub(super) value: String,
    /// The same in the other units, or empty.
    pub(super) also: String,
}

/// The facts, each in its box: in as few lines as give every value its room.
pub(super) fn facts_block(facts: &[Fact], width: f64) -> Block {
    let asks = |facts: &[Fact]| facts.iter().map(asked_width).sum::<f64>();
    let in_lines = |lines: usize| facts.chunks(facts.len().div_ceil(lines).max(1));
    let lines = (1..facts.len()).find(|lines| in_lines(*lines).all(|line| asks(line) <= width)).unwrap_or(facts.len());
    in_lines(lines.max(1)).fold(Block::default(), |above, line| above.over(fact_line(line, width)))
}

/// One line of boxes; each is as wide as its words ask for, stretched to fill the line.
fn fact_line(facts: &[Fact], width: f64) -> Block {
    let asks: Vec<f64> = facts.iter().map(asked_width).collect();
    let stretch = width / asks.iter().sum::<f64>();
    let boxes: Vec<FactBox<'_>> =
        facts.iter().zip(asks).map(|(fact, asked)| FactBox::new(fact, asked * stretch)).collect();
    let height = boxes.iter().map(FactBox::height).fold(FACT_MM, f64::max);
    let mut items = Vec::new();
    let mut left = 0.0;
    for one in &boxes {
        items.extend(one.items(height).into_iter().map(|item| item.shifted(left, 0.0)));
        left += one.width;
    }
    Block { height, items }
}

fn asked_width(fact: &Fact) -> f64 {
    let value = typeset::width_mm(&typeset::printable(&fact.value), FACT, Weight::SemiBold);
    let also = typeset::width_mm(&typeset::printable(&fact.also), BODY, Weight::Regular).min(ALSO_MM);
    (value.max(also) + 2.0 * PAD_MM + 0.1).clamp(NARROWEST_MM, 120.0)
}

/// A fact set to a width.
struct FactBox<'a> {
    fact: &'a Fact,
    width: f64,
    also: Vec<String>,
}

impl<'a> FactBox<'a> {
    fn new(fact: &'a Fact, width: f64) -> Self {
        let also = lines(&fact.also, BODY, Weight::Regular, width - 2.0 * PAD_MM, MOST_LINES);
        Self { fact, width, also }
    }

    fn height(&self) -> f64 {
        FACT_MM + BODY * LINE_PITCH * self.also.len().saturating_sub(1) as f64
    }

    fn items(&self, height: f64) -> Vec<Item> {
        let room = self.width - 2.0 * PAD_MM;
        let size = typeset::fitting_size(&self.fact.value, FACT, SMALLEST, Weight::SemiBold, room);
        let value = typeset::shorten(&self.fact.value, size, Weight::SemiBold, room);
        let also = self
            .also
            .iter()
            .enumerate()
            .map(|(index, line)| Text::new(at(PAD_MM, 15.6 + BODY * LINE_PITCH * index as f64), BODY, line).into());
        let head: [Item; 3] = [
            Item::rectangle(at(0.0, 0.0), at(self.width, height), None, Some(Pen::Frame)),
            Text::new(at(PAD_MM, 4.2), CAPTION, self.fact.caption).gray(Gray::DARK).into(),
            Text::new(at(PAD_MM, 10.2), size, &value).bold().into(),
        ];
        head.into_iter().chain(also).collect()
    }
}
