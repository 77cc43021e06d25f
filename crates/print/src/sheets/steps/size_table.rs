//! The sizes to reach in large figures, each with room for what was measured.

use super::cell::{fitted, put_lines};
use crate::drawing::{Align, Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph;
use crate::sheets::type_sizes::{BODY, CAPTION};
use crate::typeset;
use fh_work::Size;

/// The height of the heads.
const HEAD_MM: f64 = 4.3;
/// The least height of a row.
const ROW_MM: f64 = 6.3;
/// The width of the box for what was measured.
const BOX_MM: f64 = 14.0;
/// The shares of what is left: what, cold, hot, ±.
const SHARES: [f64; 4] = [0.37, 0.225, 0.225, 0.18];
/// The em of the figures.
const FIGURE: f64 = 5.7;
/// The em of what is measured.
const WHAT: f64 = 3.75;
/// Free beside a figure.
const PAD_MM: f64 = 1.4;

/// The table with so many rows at most; nothing where there are no sizes.
pub(super) fn size_table(sizes: &[Size], width: f64, most: usize) -> Block {
    if sizes.is_empty() {
        return Block::default();
    }
    let rest = width - BOX_MM;
    let columns = SHARES.map(|share| share * rest);
    let unit = unit_of(sizes);
    let mut block = head(columns, width, unit);
    for size in sizes.iter().take(most) {
        block = block.over(row(&without_unit(size, unit), columns, width));
    }
    if sizes.len() > most {
        let words = format!("… and {} more sizes: see the plan.", sizes.len() - most);
        block = block.over(paragraph::paragraph(&words, BODY, Weight::SemiBold, width));
    }
    block
}

/// The unit of most sizes; it stands over their column.
fn unit_of(sizes: &[Size]) -> &'static str {
    let count = |unit: &str| sizes.iter().filter(|size| size.cold.ends_with(unit)).count();
    if count(" in") > count(" mm") { " in" } else { " mm" }
}

/// A size without the unit that stands over its column.
fn without_unit(size: &Size, unit: &str) -> Size {
    let bare = |words: &str| words.strip_suffix(unit).unwrap_or(words).to_owned();
    // What has figures of two kinds keeps its units.
    if size.cold.matches(unit).count() != 1 || !size.cold.ends_with(unit) {
        return size.clone();
    }
    Size {
        cold: bare(&size.cold),
        hot: size.hot.as_deref().map(bare),
        tolerance: size.tolerance.as_deref().map(bare),
        ..size.clone()
    }
}

/// Where each column ends.
fn ends(columns: [f64; 4]) -> [f64; 4] {
    let mut end = 0.0;
    columns.map(|width| {
        end += width;
        end
    })
}

fn head(columns: [f64; 4], width: f64, unit: &str) -> Block {
    let baseline = HEAD_MM - 1.6;
    let [_, cold, hot, off] = ends(columns);
    let figure =
        |x: f64, words: &str| Text::new(at(x - PAD_MM, baseline), CAPTION, words).right().gray(Gray::DARK).into();
    let mut items: Vec<Item> = vec![
        Text::new(at(0.0, baseline), CAPTION, &format!("to size,{unit}")).gray(Gray::DARK).into(),
        figure(cold, "cold"),
        figure(hot, "hot"),
        figure(off, "±"),
        Text::new(at(width - BOX_MM / 2.0, baseline), CAPTION, "measured").centered().gray(Gray::DARK).into(),
    ];
    items.push(Item::line(at(0.0, HEAD_MM), at(width, HEAD_MM), Pen::Frame));
    Block { height: HEAD_MM, items }
}

fn row(size: &Size, columns: [f64; 4], width: f64) -> Block {
    let [_, cold, hot, off] = ends(columns);
    let lines = paragraph::lines(&size.what, WHAT, Weight::SemiBold, columns[0] - PAD_MM, 5);
    let follows = size.follows.as_ref().map(|from| format!("follows from {from}")).unwrap_or_default();
    let follows = paragraph::lines(&follows, CAPTION, Weight::Regular, columns[0] - PAD_MM, 3);
    let (what_mm, follows_mm) = (WHAT * 1.1 * lines.len() as f64, CAPTION * 1.1 * follows.len() as f64);
    let off_words = size.tolerance.as_deref().unwrap_or_default();
    // A range stands in two lines.
    let ends = off_words.split_once(" to ").map(|(low, high)| [format!("{low} to"), high.to_owned()]);
    let range_mm = if ends.is_some() { BODY * 2.2 } else { 0.0 };
    let height = ROW_MM.max(what_mm + follows_mm + 0.8).max(range_mm + 0.8);
    let baseline = height / 2.0 + FIGURE * 0.33;
    let figure = |end: f64, room: f64, size_mm: f64, words: &str, weight: Weight| {
        fitted(words, size_mm, weight, room - 2.0 * PAD_MM, at(end - PAD_MM, baseline), Align::Right)
    };
    let mut items = put_lines(&lines, WHAT, Weight::SemiBold, height - follows_mm);
    let below = put_lines(&follows, CAPTION, Weight::Regular, follows_mm);
    items.extend(below.into_iter().map(|item| item.shifted(0.0, height - follows_mm - 0.4)));
    let is_wide = size.hot.is_none() && size.mm.is_none() && is_wide(&size.cold, columns[1] - 2.0 * PAD_MM);
    let (end, room) = if is_wide { (hot, columns[1] + columns[2]) } else { (cold, columns[1]) };
    items.extend(figure(end, room, FIGURE, &size.cold, Weight::SemiBold));
    items.extend(figure(hot, columns[2], FIGURE, size.hot.as_deref().unwrap_or_default(), Weight::SemiBold));
    match ends {
        Some(ends) => {
            for (words, down) in ends.iter().zip([-0.55, 0.55]) {
                let place = at(off - PAD_MM, height / 2.0 + BODY * (0.33 + down));
                items.extend(fitted(words, BODY, Weight::Regular, columns[3] - PAD_MM, place, Align::Right));
            }
        }
        None => items.extend(figure(off, columns[3], BODY, off_words, Weight::Regular)),
    }
    items.push(Item::rectangle(at(width - BOX_MM + 1.0, 0.8), at(width, height - 0.8), None, Some(Pen::MarkLine)));
    for x in [cold, hot].into_iter().skip(usize::from(is_wide)) {
        items.push(Item::line(at(x, 0.0), at(x, height), Pen::Hairline));
    }
    items.push(Item::line(at(0.0, height), at(width, height), Pen::Hairline));
    Block { height, items }
}

/// Whether words are too long for a column of figures as large as they are meant; they take the next along with it.
fn is_wide(words: &str, room: f64) -> bool {
    typeset::width_mm(&typeset::printable(words), FIGURE, Weight::SemiBold) > room
}
