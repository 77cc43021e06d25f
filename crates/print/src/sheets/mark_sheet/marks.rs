//! The marks of a bar, for the strip and for the table.

use super::repeats::repeat_lines;
use super::tolerances::add_tolerances;
use super::words::{Fate, MarkKind, Strip, StripBlock, StripMark, TableRow};
use fh_core::balance::{BarBalance, BarSpread, SegmentBalance};
use fh_core::describe::{bend_words, derived_words, form_words, segment_name, side_words};
use fh_core::metal::View;
use fh_core::plan::{Bar, Form, Plan, Segment};
use uom::si::length::millimeter;

/// The bar as it is drawn; none where nothing is marked on it.
pub(super) fn strip(bar: &Bar, worked: &BarBalance) -> Option<Strip> {
    let last = worked.segments.last()?;
    // As it lies on the sheet: a flat lies on its width.
    let across = |view: View| {
        let [low, high] = worked.stock_edges_mm(view);
        high - low
    };
    let (length_mm, length) = match &bar.length {
        Some(length) => (length.mm(), length.text().to_owned()),
        None => (last.mark_end_shop.mm(), last.mark_end_shop.text()),
    };
    Some(Strip {
        datum: datum_words(bar),
        height_mm: sane(across(View::Side).max(across(View::Top))),
        length_mm: sane(length_mm),
        length,
        marks: strip_marks(bar, worked),
        blocks: strip_blocks(bar, worked),
    })
}

fn datum_words(bar: &Bar) -> String {
    bar.datum.as_ref().map_or_else(|| bar.datum_name().to_owned(), |name| format!("datum: {name}"))
}

fn strip_marks(bar: &Bar, worked: &BarBalance) -> Vec<StripMark> {
    let mark = |(index, segment): (usize, &SegmentBalance)| StripMark {
        number: index + 1,
        at_mm: sane(segment.mark_end_shop.mm()),
        total: segment.mark_end_shop.text(),
        kind: mark_kind(bar, index),
    };
    worked.segments.iter().enumerate().map(mark).collect()
}

fn strip_blocks(bar: &Bar, worked: &BarBalance) -> Vec<StripBlock> {
    let ends = worked.segments.iter().map(|segment| sane(segment.mark_end_shop.mm()));
    let starts = std::iter::once(0.0).chain(ends.clone());
    let block = |(index, ((segment, start_mm), end_mm)): (usize, ((&Segment, f64), f64))| StripBlock {
        name: segment_name(segment, index),
        start_mm,
        end_mm,
        fate: fate(segment),
    };
    bar.segments.iter().zip(starts).zip(ends).enumerate().map(block).collect()
}

fn fate(segment: &Segment) -> Fate {
    match segment.form {
        Form::Trim { .. } => Fate::CutAway,
        Form::Hold { .. } => Fate::Held,
        _ => Fate::Stays,
    }
}

/// How the mark at the end of a segment is struck (common practice, no source): the bar's end is cut now; what is
/// trimmed or held is cut off later; a set-down has an edge; anything else is a punch mark, which is seen when hot.
fn mark_kind(bar: &Bar, index: usize) -> MarkKind {
    let (before, after) = (bar.segments.get(index), bar.segments.get(index + 1));
    let beside = |test: fn(&Segment) -> bool| before.is_some_and(test) || after.is_some_and(test);
    if after.is_none() {
        MarkKind::Cut
    } else if beside(|segment| fate(segment) != Fate::Stays) {
        MarkKind::CutLater
    } else if beside(|segment| matches!(segment.form, Form::Shoulder { .. })) {
        MarkKind::SetDownEdge
    } else {
        MarkKind::CentrePunch
    }
}

/// The datum's row, then one for each mark.
pub(super) fn table_rows(plan: &Plan, bar: &Bar, worked: &BarBalance, spread: Option<&BarSpread>) -> Vec<TableRow> {
    if worked.segments.is_empty() {
        return Vec::new();
    }
    let datum =
        TableRow { total: "0".to_owned(), exact_mm: "0.00".to_owned(), block: datum_words(bar), ..TableRow::default() };
    let marks = bar.segments.iter().zip(&worked.segments).enumerate();
    let mut before = plan.units.marks.round(0.0);
    let rows = marks.map(|(index, (segment, balance))| {
        let step = balance.mark_end_shop - before;
        before = balance.mark_end_shop;
        let strike = mark_kind(bar, index).name().to_owned();
        let mut row = TableRow { step: step.text(), strike, ..block_row(plan, index, segment, balance) };
        if let Some(spread) = spread.and_then(|spread| spread.segments.get(index)) {
            add_tolerances(&mut row, plan, spread);
        }
        row.becomes.extend(repeat_lines(plan.units.length, bar, worked, index, segment));
        row.becomes.extend(notes(segment));
        row
    });
    std::iter::once(datum).chain(rows).collect()
}

/// The row of a mark, as far as it follows from the block that ends there.
fn block_row(plan: &Plan, index: usize, segment: &Segment, balance: &SegmentBalance) -> TableRow {
    TableRow {
        number: (index + 1).to_string(),
        total: balance.mark_end_shop.text(),
        exact_mm: format!("{:.2}", balance.mark_end.get::<millimeter>()),
        off_by: off_by(balance),
        block: segment_name(segment, index),
        becomes: becomes(plan, segment, balance),
        side: side(segment),
        ..TableRow::default()
    }
}

/// How far the rounded mark lies from its true place, where that is a hundredth of a millimetre or more.
fn off_by(balance: &SegmentBalance) -> String {
    let error = balance.mark_end_shop.mm() - balance.mark_end.get::<millimeter>();
    match error {
        error if error >= 0.005 => format!("mark +{error:.2}"),
        error if error <= -0.005 => format!("mark −{:.2}", error.abs()),
        _ => String::new(),
    }
}

/// What the block becomes: its form, its bend, and the sizes that follow.
fn becomes(plan: &Plan, segment: &Segment, balance: &SegmentBalance) -> Vec<String> {
    let bend = bend_words(segment, &balance.derived).map_or_else(String::new, |bend| format!(", then {bend}"));
    let sizes: Vec<String> = balance.derived.iter().filter_map(|size| derived_words(size, plan.units.length)).collect();
    let mut words = vec![form_words(segment) + &bend];
    if !sizes.is_empty() {
        words.push(format!("→ {}", sizes.join(", ")));
    }
    words
}

/// The smith's own notes.
fn notes(segment: &Segment) -> Option<String> {
    segment.notes.clone().filter(|notes| !notes.trim().is_empty())
}

fn side(segment: &Segment) -> String {
    match (side_words(segment), &segment.form) {
        (Some(side), Form::Shoulder { .. }) => format!("set down: {side}"),
        (Some(side), Form::Peak { .. }) => format!("peak: {side}"),
        (Some(side), _) => side,
        (None, _) => String::new(),
    }
}

/// A length that can be drawn: what is not a number, or below zero, is nothing.
fn sane(mm: f64) -> f64 {
    if mm.is_finite() { mm.max(0.0) } else { 0.0 }
}
