//! The ladder sheet: how long each drawn or tapered segment is where it is left fat or goes thin.

mod from_plan;
mod gauge;
mod table;
mod words;

use self::words::{BarWords, SegmentWords, SheetWords};
use crate::drawing::{Text, at};
use crate::fonts::Weight;
use crate::pen::Gray;
use crate::sheets::cautions;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT, TITLE};
use crate::typeset;
use fh_core::balance::Balance;
use fh_core::cautions::Cautions;
use fh_core::plan::Plan;

/// Between two parts of a sheet.
const BETWEEN_MM: f64 = 6.0;

/// Puts the ladder sheet of a plan, with a part for each of its bars.
///
/// Where the page is wide enough, each ladder is also drawn at full scale, to be laid beside the bar.
pub(super) fn put(flow: &mut Flow, plan: &Plan, balance: &Balance, warned: &Cautions) {
    let words = from_plan::sheet_words(plan, balance);
    let (shown, none): (Vec<&BarWords>, Vec<&BarWords>) = words.bars.iter().partition(|bar| !bar.segments.is_empty());
    for (index, bar) in shown.iter().enumerate() {
        flow.start_part(format!("{} · {} · ladder", words.title, bar.name));
        flow.put(title_block(&words.title, &bar.name, flow.width()).then_free(2.0));
        if index == 0 {
            cautions::put_own(flow, warned);
        }
        put_bar(flow, &words.explained, bar, if index == 0 { &none } else { &[] });
    }
    if shown.is_empty() {
        put_nothing(flow, &words, warned);
    }
}

/// The page of a plan without a ladder.
fn put_nothing(flow: &mut Flow, words: &SheetWords, warned: &Cautions) {
    flow.start_part(words.title.clone());
    flow.put(title_block(&words.title, "", flow.width()).then_free(2.0));
    cautions::put_own(flow, warned);
    let nothing = if words.bars.is_empty() { "This plan has no bar yet." } else { "Nothing here is drawn or tapered." };
    flow.put(paragraph(nothing, BODY, Weight::Regular, flow.width()));
}

/// What the ladders are, those of a bar, and which bars have `none`.
fn put_bar(flow: &mut Flow, explained: &str, bar: &BarWords, none: &[&BarWords]) {
    let width = flow.width();
    let mut head = paragraph(explained, BODY, Weight::Regular, width);
    if !none.is_empty() {
        let names: Vec<&str> = none.iter().map(|bar| bar.name.as_str()).collect();
        let words = format!("Nothing is drawn or tapered on {}.", names.join("; "));
        head = head.over(paragraph(&words, BODY, Weight::Regular, width));
    }
    flow.put(head.then_free(BETWEEN_MM));
    for segment in &bar.segments {
        flow.put(segment_block(segment, width).then_free(BETWEEN_MM));
    }
}

fn title_block(title: &str, bar: &str, width: f64) -> Block {
    let bar_name = typeset::shorten(bar, BODY * 1.2, Weight::SemiBold, width * 0.4);
    let right = Text::new(at(width, 7.2), BODY * 1.2, &bar_name).right().bold();
    let room = width - right.width_mm() - 6.0;
    let size = typeset::fitting_size(title, TITLE, 0.6 * TITLE, Weight::SemiBold, room);
    let title = typeset::shorten(title, size, Weight::SemiBold, room);
    let kind = Text::new(at(width, 2.4), CAPTION, "LADDER").right().gray(Gray::DARK);
    Block { height: 10.0, items: vec![Text::new(at(0.0, 7.2), size, &title).bold().into(), kind.into(), right.into()] }
}

/// The segment's name, its ladder in figures, and its gauge.
fn segment_block(segment: &SegmentWords, width: f64) -> Block {
    let block = head(segment, width).over(table::block(segment, width));
    match gauge::block(segment, width) {
        Some(gauge) => block.then_free(2.0).over(gauge),
        None => block,
    }
}

fn head(segment: &SegmentWords, width: f64) -> Block {
    let name = format!("{} · {}", segment.number, segment.name);
    let name = Text::new(at(0.0, 5.0), FACT, &typeset::shorten(&name, FACT, Weight::SemiBold, width * 0.5)).bold();
    let left = name.width_mm() + 4.0;
    let becomes = typeset::shorten(&segment.becomes, BODY, Weight::Regular, width - left);
    Block { height: 7.5, items: vec![name.into(), Text::new(at(left, 5.0), BODY, &becomes).into()] }
}
