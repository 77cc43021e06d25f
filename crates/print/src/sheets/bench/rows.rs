//! The steps of a bench sheet on paper: a line for each, with a box to tick and a heavier line where a heat begins.

use super::runs::{Run, runs_block};
use super::words::StepWords;
use crate::drawing::{Align, Item, Text, at};
use crate::fonts::{CAP_HEIGHT, Weight};
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::steps::cell::fitted;
use crate::sheets::type_sizes::{BELOW_STEP, CAPTION, CLOSE_PITCH};

/// Above and below the words of a row, and the same where rows are close.
const PADS_MM: [f64; 2] = [0.6, 0.35];
/// The side of the box to tick.
const TICK_MM: f64 = 4.6;
/// From one box to tick to the next.
const BOX_MM: f64 = 5.3;
/// From the left edge to the number, to the heat, and to the words, after one box.
const LEFTS_MM: [f64; 3] = [5.5, 13.5, 29.5];
/// The room of the sign of a caution.
const SIGN_MM: f64 = 5.2;
/// The height of the heads of the columns.
const HEAD_MM: f64 = 5.2;

/// From the left edge to the number, to the heat, and to the words, where a step has so many boxes.
fn lefts(boxes: usize) -> [f64; 3] {
    LEFTS_MM.map(|left| left + BOX_MM * boxes.saturating_sub(1) as f64)
}

/// The heads of the columns.
pub(super) fn head(width: f64, units: &str, boxes: usize) -> Block {
    let lefts = lefts(boxes);
    let baseline = HEAD_MM - 1.6;
    let words = |x: f64, words: &str| Item::from(Text::new(at(x, baseline), CAPTION, words).gray(Gray::DARK));
    let what = format!("what, which part, to what size in {units}, cold (hot) · where · with what");
    let items = vec![
        words(lefts[0], "step"),
        words(lefts[1], "heat, long"),
        words(lefts[2], &what),
        Item::line(at(0.0, HEAD_MM), at(width, HEAD_MM), Pen::Frame),
    ];
    Block { height: HEAD_MM, items }
}

/// One step with so many boxes to tick; the line over it is heavier where a heat begins.
///
/// Where rows are close, what stands below a line runs on in it.
pub(super) fn row(words: &StepWords, ([size, width], boxes): ([f64; 2], usize), begins: bool, is_close: bool) -> Block {
    let [number_left, heat_left, words_left] = lefts(boxes);
    let pad_mm = PADS_MM[usize::from(is_close)];
    let (told, hot) = told(words, size, width - words_left, is_close);
    let baseline = pad_mm + size * 0.85;
    let mut items = vec![Item::line(at(0.0, 0.0), at(width, 0.0), if begins { Pen::CutLine } else { Pen::Hairline })];
    let top = (baseline - (size * CAP_HEIGHT + TICK_MM) / 2.0).max(pad_mm);
    items.extend((0..boxes).map(|one| {
        let left = BOX_MM * one as f64;
        Item::rectangle(at(left, top), at(left + TICK_MM, top + TICK_MM), None, Some(Pen::Frame))
    }));
    let number_right = at(heat_left - 1.5, baseline);
    let number_mm = heat_left - number_left - 1.0;
    items.extend(fitted(&words.number, size * 1.1, Weight::SemiBold, number_mm, number_right, Align::Right));
    let heat_mm = words_left - heat_left - 1.0;
    items.extend(fitted(&words.heat, size, Weight::SemiBold, heat_mm, at(heat_left, baseline), Align::Left));
    let hot_at = at(heat_left, baseline + BELOW_STEP * CLOSE_PITCH);
    let left_mm = if hot.is_empty() { top + TICK_MM } else { hot_at.y + 0.6 };
    items.extend(told.items.into_iter().map(|item| item.shifted(words_left, pad_mm)));
    items.extend(fitted(hot, BELOW_STEP, Weight::Regular, heat_mm, hot_at, Align::Left));
    Block { height: (told.height + pad_mm).max(left_mm) + pad_mm, items }
}

/// What is said of a step, and how long its heat is where that stands beside it: in the line itself where that is all.
fn told(words: &StepWords, size: f64, room: f64, is_close: bool) -> (Block, &str) {
    let first = if words.is_careful { SIGN_MM } else { 0.0 };
    let line = |more: &str| {
        let runs = [Run::bold(&words.title), Run::bold(&words.sizes), Run::plain(&words.place), Run::plain(more)];
        runs_block(&runs, size, room, first)
    };
    let is_one_line = |block: &Block| block.height < 1.5 * size * CLOSE_PITCH;
    let has_below = !words.below.is_empty();
    let running = if is_close && has_below { format!("· {}", words.below) } else { String::new() };
    let (mut told, mut hot) = (line(&running), words.hot.as_str());
    if !hot.is_empty() && (is_close || !has_below) && is_one_line(&told) {
        let with_hot = line(&format!("{running} · heat {hot}"));
        if is_one_line(&with_hot) {
            (told, hot) = (with_hot, "");
        }
    }
    if words.is_careful {
        told.items.extend(sign(size));
    }
    let below =
        if is_close { Block::default() } else { runs_block(&[Run::plain(&words.below)], BELOW_STEP, room, 0.0) };
    (told.over(below), hot)
}

/// The sign of a caution, before words of a size.
pub(super) fn sign(size: f64) -> [Item; 2] {
    let foot = size * 0.85 + 0.1;
    let triangle = vec![at(2.1, foot - 3.9), at(4.2, foot), at(0.0, foot)];
    [
        Item::Polygon { points: triangle, fill: Some(Gray::BLACK), pen: None },
        Text::new(at(2.1, foot - 0.45), CAPTION, "!").centered().bold().gray(Gray::WHITE).into(),
    ]
}
