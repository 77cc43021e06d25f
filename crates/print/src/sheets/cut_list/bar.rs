//! One bar of a cut list, or several that are cut alike: drawn to the list's scale with its pieces, kerfs and offcut.

use super::Pieces;
use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph::lines;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT, LINE_PITCH};
use crate::typeset;
use fh_rack::list::make::{BarCuts, CutList, Group};
use fh_rack::list::source::{From, Source};
use fh_rack::list::words::{marked, tenths};

/// The column at the left: how many, from where, boxes to tick.
const LEFT_MM: f64 = 50.0;
/// How thick a bar is drawn.
const THICK_MM: f64 = 9.0;
/// Over the bar, for what stands on the offcut.
const ABOVE_MM: f64 = 1.0;
/// The least between two running totals that are written upward.
const APART_MM: f64 = 4.2;
/// The boxes to tick at most; of more bars how many there are is written.
const MOST_BOXES: u64 = 12;
/// A box and what is free beside it.
const BOX_MM: f64 = 4.0;

/// The block of a bar.
pub(super) fn block(
    list: &CutList,
    group: &Group,
    bar: &BarCuts,
    pieces: &Pieces,
    longest_nm: i64,
    width: f64,
) -> Block {
    let Some(source) = list.sources.get(bar.source) else { return Block::default() };
    let scale = (width - LEFT_MM) / longest_nm as f64;
    let mut items = head(bar, source, group.sections.len() > 1);
    let (top, foot) = (ABOVE_MM, ABOVE_MM + THICK_MM);
    let end = LEFT_MM + source.length_nm as f64 * scale;
    items.push(Item::rectangle(at(LEFT_MM, top), at(end, foot), None, Some(Pen::Outline)));
    let mut start_nm = 0;
    for cut in &bar.cuts {
        let [from, to] = [start_nm, start_nm + cut.length_nm].map(|nm| LEFT_MM + nm as f64 * scale);
        items.extend(piece(from, to, [top, foot], &pieces.letter(cut.piece)));
        start_nm += cut.length_nm + group.kerf_nm;
        let kerf = (LEFT_MM + start_nm as f64 * scale).min(end).max(to + 0.35);
        items.push(Item::rectangle(at(to, top), at(kerf, foot), Some(Gray::BLACK), None));
    }
    let cut_end = (LEFT_MM + start_nm as f64 * scale).min(end);
    items.extend(offcut(bar, source, [cut_end, end], [top, foot]));
    let totals = totals(group, bar, source, scale, end - cut_end);
    let (deep, more) = (totals.deep, totals.words);
    items.extend(totals.items.into_iter().map(|item| item.shifted(LEFT_MM, foot)));
    let mut height = foot + deep;
    for line in lines(&more, CAPTION, Weight::Regular, width - LEFT_MM, 6) {
        items.push(Text::new(at(LEFT_MM, height + CAPTION), CAPTION, &line).into());
        height += CAPTION * LINE_PITCH;
    }
    let head_mm = if bar.times > 1 { 20.0 } else { 16.0 };
    Block { height: height.max(head_mm) + 3.0, items }
}

/// How many, from where, and the boxes to tick.
fn head(bar: &BarCuts, source: &Source, names_section: bool) -> Vec<Item> {
    let room = LEFT_MM - 3.0;
    let times = format!("{} × {}", bar.times, source.called.text());
    let from = match source.from {
        From::Rack(_) => source.place.as_ref().map_or("rack".to_owned(), |place| format!("rack: {place}")),
        From::New(_) => "new".to_owned(),
    };
    let section = if names_section { format!("{}, ", source.section.describe()) } else { String::new() };
    let called = (source.called.mm() * 1e6).round() as i64;
    let measures = if called == source.length_nm {
        String::new()
    } else {
        format!(", measures {}", marked(source.length_nm, source))
    };
    let size = typeset::fitting_size(&times, FACT, BODY, Weight::SemiBold, room);
    let mut items = vec![Text::new(at(0.0, 5.0), size, &times).bold().into()];
    for (index, line) in
        lines(&format!("{section}{from}{measures}"), CAPTION, Weight::Regular, room, 2).iter().enumerate()
    {
        items.push(Text::new(at(0.0, 9.2 + CAPTION * LINE_PITCH * index as f64), CAPTION, line).into());
    }
    let top = 14.8;
    for number in 0..bar.times.min(MOST_BOXES) {
        let left = number as f64 * (BOX_MM - 0.3);
        items.push(Item::rectangle(at(left, top), at(left + BOX_MM - 1.0, top + BOX_MM - 1.0), None, Some(Pen::Frame)));
    }
    if bar.times > MOST_BOXES {
        let words = format!("… {} in all", bar.times);
        items.push(Text::new(at(0.0, top + 7.0), CAPTION, &words).into());
    }
    items
}

/// A piece on the bar, its letter in the middle where it has room.
fn piece(from: f64, to: f64, [top, foot]: [f64; 2], letter: &str) -> Vec<Item> {
    let mut items = vec![Item::rectangle(at(from, top), at(to, foot), Some(Gray::LIGHT), Some(Pen::MarkLine))];
    let wide = typeset::width_mm(letter, BODY, Weight::SemiBold);
    if wide < to - from {
        let middle = at(f64::midpoint(from, to), f64::midpoint(top, foot) + BODY * 0.33);
        items.push(Text::new(middle, BODY, letter).centered().bold().into());
    }
    items
}

/// What is said of the end that is left; none where nothing is.
fn offcut_words(bar: &BarCuts, source: &Source) -> Option<Text> {
    let words = match (bar.is_kept, bar.offcut_nm) {
        (_, 0) => return None,
        (true, nm) => format!("keep {}", marked(nm, source)),
        (false, nm) => format!("scrap {}", marked(nm, source)),
    };
    let weight = if bar.is_kept { Weight::SemiBold } else { Weight::Regular };
    Some(Text::new(at(0.0, 0.0), CAPTION, &words).weight(weight))
}

/// Whether the words have room on the end that is left.
fn has_room(words: &Text, wide: f64) -> bool {
    words.width_mm() + 1.0 < wide
}

/// What is left at the end: its length, and whether it is kept.
fn offcut(bar: &BarCuts, source: &Source, [from, to]: [f64; 2], [top, foot]: [f64; 2]) -> Vec<Item> {
    let Some(words) = offcut_words(bar, source) else { return Vec::new() };
    let mut items = Vec::new();
    let fits = has_room(&words, to - from);
    if !bar.is_kept && !fits {
        // Crossed out: it goes.
        items.push(Item::line(at(from, top), at(to, foot), Pen::Hairline));
        items.push(Item::line(at(from, foot), at(to, top), Pen::Hairline));
    }
    let place = at(f64::midpoint(from, to), f64::midpoint(top, foot) + CAPTION * 0.33);
    items.extend(fits.then(|| words.centered().moved_to(place).into()));
    items
}

struct Totals {
    items: Vec<Item>,
    /// How deep they reach under the bar.
    deep: f64,
    /// All of them in words, where some have no room.
    words: String,
}

/// The running totals under the cuts; where some have no room, all of them in a line.
fn totals(group: &Group, bar: &BarCuts, source: &Source, scale: f64, end_mm: f64) -> Totals {
    let mut all = Totals { items: Vec::new(), deep: 1.0, words: String::new() };
    let is_narrow = |words: &Text| !has_room(words, end_mm);
    let offcut = offcut_words(bar, source).filter(is_narrow).map_or_else(String::new, |words| {
        let words = words.content().to_owned();
        format!("At the end: {words}.")
    });
    if group.hold_nm.is_some() {
        let each: Vec<String> = bar.cuts.iter().map(|cut| marked(cut.length_nm, source)).collect();
        all.words = format!("Cut off in turn: {}. {offcut}", each.join(" · "));
        return all;
    }
    let (mut last, mut has_all) = (f64::NEG_INFINITY, true);
    for cut in &bar.cuts {
        let x = cut.at_nm as f64 * scale;
        let words = figure(cut.at_nm, source);
        let long = typeset::width_mm(&typeset::printable(&words), CAPTION, Weight::SemiBold);
        if x - last < APART_MM {
            has_all = false;
            continue;
        }
        last = x;
        all.deep = all.deep.max(long + 3.4);
        all.items.push(Item::line(at(x, 0.0), at(x, 1.6), Pen::Leader));
        all.items.push(Text::new(at(x + CAPTION * 0.3, 2.2), CAPTION, &words).bold().right().upward().into());
    }
    if !has_all {
        let every: Vec<String> = bar.cuts.iter().map(|cut| figure(cut.at_nm, source)).collect();
        all.words = format!("Cut at {}. {offcut}", every.join(" · "));
    } else {
        all.words = offcut;
    }
    all
}

/// A length as it is marked, without its unit.
fn figure(nm: i64, source: &Source) -> String {
    marked(nm, source).trim_end_matches(" mm").trim_end_matches(" in").to_owned()
}

/// A mass in words for a sheet.
pub(super) fn mass_words(kg: f64) -> String {
    format!("{kg:.1} kg, {} lb", tenths(kg / 0.453_592_37))
}
