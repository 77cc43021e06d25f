//! The foot of every page: two lines of known length that show whether the printer kept the scale, and the page's number.

use crate::drawing::{Item, Text, at};
use crate::paper::Area;
use crate::pen::Pen;
use crate::sheets::type_sizes::{BODY, CAPTION};

/// The lengths of the check lines in mm, and what they are called: 4 in is 101.6 mm.
const LINES: [(f64, &str); 2] = [(100.0, "100 mm"), (101.6, "4 in")];

/// The words that belong to them.
const WORDS: &str = "Print at 100 % (actual size). Measure both lines before you trust the sheet.";

/// Half the length of the tick at each end of a line.
const TICK_MM: f64 = 1.8;
/// Between the two lines where they stand side by side.
const BETWEEN_MM: f64 = 10.0;
/// From one line to the next where they stand below each other.
const PITCH_MM: f64 = 5.8;
/// From the foot of the page up to the words' baseline.
const WORDS_UP_MM: f64 = 1.2;
/// From the foot of the page up to the lowest line.
const LINE_UP_MM: f64 = 7.5;

/// Whether the two lines have room side by side, beside the number of the page.
fn side_by_side(width: f64) -> bool {
    width >= LINES[0].0 + LINES[1].0 + BETWEEN_MM + 30.0
}

/// How much of the page's foot they take.
pub(super) fn height_mm(width: f64) -> f64 {
    if side_by_side(width) { 16.0 } else { 16.0 + PITCH_MM }
}

/// What is free beside the lines, where they stand below each other.
pub(super) fn free_beside(area: Area) -> Option<Area> {
    let width = area.width();
    (!side_by_side(width)).then(|| Area {
        left: area.left + LINES[1].0 + BETWEEN_MM,
        top: area.bottom - height_mm(width) + 1.0,
        right: area.right,
        bottom: area.bottom - LINE_UP_MM,
    })
}

/// The foot of page `number` of `count`.
pub(super) fn items(area: Area, number: usize, count: usize) -> Vec<Item> {
    let mut items = Vec::new();
    for ((length, name), (left, y)) in LINES.into_iter().zip(places(area)) {
        items.extend(check_line(left, y, length, name));
    }
    let baseline = area.bottom - WORDS_UP_MM;
    items.push(Text::new(at(area.left, baseline), BODY, WORDS).bold().into());
    items.push(self::number(area, number, count));
    items
}

/// The number of a page at its foot.
pub(super) fn number(area: Area, number: usize, count: usize) -> Item {
    let page = format!("page {number} of {count}");
    Text::new(at(area.right, area.bottom - WORDS_UP_MM), BODY, &page).right().bold().into()
}

/// Where each line starts.
fn places(area: Area) -> [(f64, f64); 2] {
    let y = area.bottom - LINE_UP_MM;
    if side_by_side(area.width()) {
        [(area.left, y), (area.left + LINES[0].0 + BETWEEN_MM, y)]
    } else {
        [(area.left, y - PITCH_MM), (area.left, y)]
    }
}

fn check_line(left: f64, y: f64, length: f64, name: &str) -> Vec<Item> {
    let tick = |x: f64| Item::line(at(x, y - TICK_MM), at(x, y + TICK_MM), Pen::Dimension);
    let label = Text::new(at(left + length / 2.0, y - 1.0), CAPTION, name).centered().bold();
    vec![Item::line(at(left, y), at(left + length, y), Pen::Dimension), tick(left), tick(left + length), label.into()]
}
