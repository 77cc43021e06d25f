//! The short form: the whole job in a table. On an upright page two lines a step, so that most jobs take one page; on a wide
//! one also what to check and to beware of.

use super::cell::{fitted, lines_block};
use super::words::CardWords;
use crate::drawing::{Align, Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph::lines;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT};
use crate::typeset;
use fh_core::plan::PlanUnit;
use fh_work::{Size, WorkedStep};

/// The lines of what is said in a cell at most.
const MOST_LINES: usize = 5;
/// The sizes of one step at most.
const MOST_SIZES: usize = 6;
/// Above and below the words of a row.
const PAD_MM: f64 = 0.45;
/// Between two columns.
const GUTTER_MM: f64 = 3.0;
/// The room of the sign of a caution.
const SIGN_MM: f64 = 5.0;
/// The side of the box to tick.
const TICK_MM: f64 = 5.0;
/// Number, heat, and box.
const FIXED_MM: [f64; 3] = [11.0, 20.0, 8.0];
/// On a page narrower than this there is room for what, where and the sizes alone.
const NARROW_MM: f64 = 220.0;

/// Where the columns start, and how wide each is: number, box, heat, step, where, sizes, check.
pub(super) struct ShortColumns {
    width: f64,
    step: [f64; 2],
    place: [f64; 2],
    sizes: [f64; 2],
    check: [f64; 2],
    unit: PlanUnit,
}

impl ShortColumns {
    /// Columns that fill a width, for sizes in a unit.
    pub(super) fn fill(width: f64, unit: PlanUnit) -> Self {
        let shares = if width < NARROW_MM { [0.42, 0.0, 0.58, 0.0] } else { [0.25, 0.17, 0.29, 0.29] };
        let first = FIXED_MM.iter().sum::<f64>();
        let mut left = first;
        let [step, place, sizes, check] = shares.map(|share| {
            let column = [left, share * (width - first)];
            left += column[1];
            column
        });
        Self { width, step, place, sizes, check, unit }
    }

    /// Whether the unit of all sizes stands over their column.
    fn in_mm(&self) -> bool {
        self.is_narrow() && self.unit == PlanUnit::Millimeter
    }

    fn is_narrow(&self) -> bool {
        self.check[1] <= 0.0
    }

    /// The heads of the columns.
    pub(super) fn head(&self) -> Block {
        let baseline = 4.0;
        let heads = [
            (0.0, "step"),
            (FIXED_MM[0] + FIXED_MM[2], "heat"),
            (self.step[0], if self.is_narrow() { "what, where, with what" } else { "what" }),
            (self.place[0], if self.is_narrow() { "" } else { "where, with what" }),
            (self.sizes[0], if self.in_mm() { "to size in mm, cold (hot)" } else { "to size, cold (hot)" }),
            (self.check[0], if self.is_narrow() { "" } else { "check, caution" }),
        ];
        let named = heads.into_iter().filter(|(_, words)| !words.is_empty());
        let mut items: Vec<Item> =
            named.map(|(x, words)| Text::new(at(x, baseline), CAPTION, words).gray(Gray::DARK).into()).collect();
        items.push(Item::line(at(0.0, 5.6), at(self.width, 5.6), Pen::Frame));
        Block { height: 5.6, items }
    }

    /// One step; a heavier line over it where a heat begins.
    pub(super) fn row(&self, words: &CardWords<'_>, step: &WorkedStep, begins: bool) -> Block {
        let cells = [
            (self.step[0], self.what(words)),
            (self.place[0], self.place_cell(words)),
            (self.sizes[0], self.sizes_cell(words, step)),
            (self.check[0], self.check_cell(words)),
        ];
        let height = cells.iter().map(|(_, cell)| cell.height).fold(6.0, f64::max) + 2.0 * PAD_MM;
        let baseline = PAD_MM + FACT * 0.82;
        let mut items =
            vec![Item::line(at(0.0, 0.0), at(self.width, 0.0), if begins { Pen::Frame } else { Pen::Hairline })];
        let number_mm = FIXED_MM[0] - 1.5;
        items.extend(fitted(&words.number, FACT * 1.15, Weight::SemiBold, number_mm, at(0.0, baseline), Align::Left));
        let tick = FIXED_MM[0];
        let box_ =
            Item::rectangle(at(tick, PAD_MM + 0.3), at(tick + TICK_MM, PAD_MM + 0.3 + TICK_MM), None, Some(Pen::Frame));
        items.push(box_);
        // The word stands over the column.
        let heat = step.warmth().figures();
        let heat_left = FIXED_MM[0] + FIXED_MM[2];
        items.extend(fitted(&heat, FACT, Weight::SemiBold, FIXED_MM[1] - 4.0, at(heat_left, baseline), Align::Left));
        for (left, cell) in cells {
            items.extend(cell.items.into_iter().map(|item| item.shifted(left, PAD_MM)));
        }
        Block { height, items }
    }

    fn what(&self, words: &CardWords<'_>) -> Block {
        let room = self.step[1] - GUTTER_MM;
        if self.is_narrow() {
            return narrow_what(words, room);
        }
        let size = typeset::fitting_size(words.title, BODY, CAPTION, Weight::SemiBold, room - 0.01);
        let title = set(words.title, size, Weight::SemiBold, room, 6);
        title.over(set(&words.becomes, CAPTION, Weight::Regular, room, 6))
    }

    fn place_cell(&self, words: &CardWords<'_>) -> Block {
        if self.is_narrow() {
            return Block::default();
        }
        let room = self.place[1] - GUTTER_MM;
        let place = std::iter::once(words.place.name().to_owned()).chain(words.lies.clone()).collect::<Vec<_>>();
        let block = set(&place.join(", "), CAPTION, Weight::SemiBold, room, 2);
        block.over(set(&words.tools.join("; "), CAPTION, Weight::Regular, room, 6))
    }

    fn sizes_cell(&self, words: &CardWords<'_>, step: &WorkedStep) -> Block {
        let room = self.sizes[1] - GUTTER_MM;
        let mut told: Vec<String> =
            words.sizes.iter().take(MOST_SIZES).map(|size| size_words(size, self.in_mm())).collect();
        told.extend(marks_words(step, self.in_mm()));
        if words.sizes.len() > MOST_SIZES {
            told.push(format!("and {} more", words.sizes.len() - MOST_SIZES));
        }
        set(&told.join("; "), CAPTION, Weight::SemiBold, room, 8)
    }

    fn check_cell(&self, words: &CardWords<'_>) -> Block {
        if self.is_narrow() { Block::default() } else { self.check_words(words, self.check[1]) }
    }

    /// The caution with a sign before it, then what is heated along, and what is checked.
    fn check_words(&self, words: &CardWords<'_>, room: f64) -> Block {
        let mut block = Block::default();
        if let Some(caution) = words.caution {
            let mut beware = set(caution, CAPTION, Weight::SemiBold, room - SIGN_MM, MOST_LINES).indented(SIGN_MM);
            beware.items.extend(sign());
            block = block.over(beware);
        }
        // What has to be hot along with it cannot wait until the card is looked up.
        for (head, said) in words.said.iter().filter(|(head, _)| ["heat", "check"].contains(head)) {
            let weight = if *head == "heat" { Weight::SemiBold } else { Weight::Regular };
            block = block.over(set(said, CAPTION, weight, room, MOST_LINES));
        }
        block
    }
}

/// What is done, with a sign before it where there is something to beware of; below it where, and with what.
fn narrow_what(words: &CardWords<'_>, room: f64) -> Block {
    let left = if words.caution.is_some() { SIGN_MM } else { 0.0 };
    let mut title = set(words.title, CAPTION, Weight::SemiBold, room - left, 3).indented(left);
    if words.caution.is_some() {
        title.items.extend(sign());
    }
    // Who has forged it before knows the other tools; what has no room is left to the cards.
    let main = words.tools.first().map(|tool| (*tool).to_owned());
    let wide = |words: &str| typeset::width_mm(&typeset::printable(words), CAPTION, Weight::Regular);
    let mut told = words.place.name().to_owned();
    for more in main.iter().chain(&words.lies) {
        let longer = format!("{told}; {more}");
        if wide(&longer) < room {
            told = longer;
        }
    }
    let used = left + typeset::width_mm(&typeset::printable(words.title), CAPTION, Weight::SemiBold) + GUTTER_MM;
    let place = set(&told, CAPTION, Weight::Regular, room, 1);
    if words.sizes.is_empty() && used + wide(&told) < room {
        title.items.extend(place.indented(used).items);
        return title;
    }
    title.over(place)
}

/// The sign of a caution.
fn sign() -> [Item; 2] {
    let triangle = vec![at(1.9, 0.1), at(3.8, 3.6), at(0.0, 3.6)];
    [
        Item::Polygon { points: triangle, fill: Some(Gray::BLACK), pen: None },
        Text::new(at(1.9, 3.2), 2.8, "!").centered().bold().gray(Gray::WHITE).into(),
    ]
}

/// What is laid off at a step, from the datum end: all marks in a row, then holes and slits; none at any other step.
fn marks_words(step: &WorkedStep, in_mm: bool) -> Vec<String> {
    let bare = |words: &str| words.trim_end_matches(" mm").trim_end_matches(" in").to_owned();
    let Some((last, others)) = step.marks.split_last() else { return Vec::new() };
    let last = if in_mm { bare(&last.at) } else { last.at.clone() };
    let marks: Vec<String> = others.iter().map(|mark| bare(&mark.at)).chain([last]).collect();
    let laid = step.laid.iter().map(|laid| format!("{} {}", laid.what, laid.at));
    std::iter::once(format!("marks {}", marks.join(", "))).chain(laid).collect()
}

/// A size, without its unit where that stands over the column.
fn size_words(size: &Size, in_mm: bool) -> String {
    let bare = |words: &str| if in_mm { words.trim_end_matches(" mm").to_owned() } else { words.to_owned() };
    match &size.hot {
        Some(hot) => format!("{} {} ({})", size.what, bare(&size.cold), bare(hot)),
        None => format!("{} {}", size.what, bare(&size.cold)),
    }
}

fn set(words: &str, size: f64, weight: Weight, room: f64, most: usize) -> Block {
    lines_block(&lines(words, size, weight, room, most), size, weight)
}
