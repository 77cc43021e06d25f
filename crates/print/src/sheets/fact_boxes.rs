//! Facts in boxes side by side: what the smith fetches and cuts, and what lies ahead.

use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT, SMALLEST};
use crate::typeset;

/// The height of a box of facts.
const FACT_MM: f64 = 18.0;
/// Free inside the edges of a box.
const PAD_MM: f64 = 2.2;
/// The least width of one box; with less room the boxes stand in two lines.
const NARROWEST_MM: f64 = 44.0;

/// One fact of the heading.
pub(super) struct Fact {
    /// What it is.
    pub(super) caption: &'static str,
    /// What it says.
    pub(super) value: String,
    /// The same in the other units, or empty.
    pub(super) also: String,
}

/// The facts, each in its box.
pub(super) fn facts_block(facts: &[Fact], width: f64) -> Block {
    let lines = (facts.len() as f64 * NARROWEST_MM / width).ceil().max(1.0) as usize;
    let in_line = facts.len().div_ceil(lines).max(1);
    let lines = facts.chunks(in_line);
    let height = FACT_MM * lines.len() as f64;
    let mut items = Vec::new();
    for (index, line) in lines.enumerate() {
        items.extend(fact_line(line, width).into_iter().map(|item| item.shifted(0.0, FACT_MM * index as f64)));
    }
    Block { height, items }
}

/// One line of boxes; each is as wide as its words ask for, stretched to fill the line.
fn fact_line(facts: &[Fact], width: f64) -> Vec<Item> {
    let asks: Vec<f64> = facts.iter().map(asked_width).collect();
    let stretch = width / asks.iter().sum::<f64>();
    let mut items = Vec::new();
    let mut left = 0.0;
    for (fact, asked) in facts.iter().zip(asks) {
        items.extend(fact_box(fact, left, asked * stretch));
        left += asked * stretch;
    }
    items
}

fn asked_width(fact: &Fact) -> f64 {
    let value = typeset::width_mm(&typeset::printable(&fact.value), FACT, Weight::SemiBold);
    let also = typeset::width_mm(&typeset::printable(&fact.also), BODY, Weight::Regular);
    (value.max(also) + 2.0 * PAD_MM).clamp(24.0, 120.0)
}

fn fact_box(fact: &Fact, left: f64, width: f64) -> Vec<Item> {
    let room = width - 2.0 * PAD_MM;
    let x = left + PAD_MM;
    let size = typeset::fitting_size(&fact.value, FACT, SMALLEST, Weight::SemiBold, room);
    let value = typeset::shorten(&fact.value, size, Weight::SemiBold, room);
    let also = typeset::shorten(&fact.also, BODY, Weight::Regular, room);
    vec![
        Item::rectangle(at(left, 0.0), at(left + width, FACT_MM), None, Some(Pen::Frame)),
        Text::new(at(x, 4.2), CAPTION, fact.caption).gray(Gray::DARK).into(),
        Text::new(at(x, 10.2), size, &value).bold().into(),
        Text::new(at(x, 15.6), BODY, &also).into(),
    ]
}
