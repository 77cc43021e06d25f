//! The marks of a bar, for the strip and for the table.

use super::made::{branch_words, made_lines};
use super::sane::sane;
use super::slits::{branch_marks, holes, slits};
use super::struck::{fate, mark_kind};
use super::tolerances::add_tolerances;
use super::words::{MarkKind, Strip, StripBlock, StripMark, TableRow};
use crate::sheets::type_sizes::SMALLEST;
use fh_core::balance::{BarBalance, BarSpread, HoleMark, LaidOff, SegmentBalance};
use fh_core::describe::{
    bend_words, dressed_lines, hole_words, made_words, repeat_lines, segment_name, side_words, slit_line_words,
};
use fh_core::metal::{Shape, View};
use fh_core::plan::{Bar, Chain, Flat, Form, Plan, Segment};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// The bar as it is drawn; none where nothing is marked on it.
pub(super) fn strip(plan: &Plan, bar: &Bar, worked: &BarBalance) -> Option<Strip> {
    let (_, last) = worked.whole().last()?;
    let laid = worked.laid_off();
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
        height_mm: sane(across(laid.view)),
        length_mm: sane(length_mm),
        length,
        marks: strip_marks(bar, worked),
        blocks: strip_blocks(bar, worked),
        slits: slits(worked, &laid),
        branch_marks: branch_marks(bar, worked, &laid),
        holes: holes(&laid),
        seen: match laid.view {
            View::Top => ["above", "top"],
            View::Side => ["where you stand", "near side"],
        },
        is_wide: across(laid.view) > across(other(laid.view)) + 1e-6,
        scale: 1.0,
        least: SMALLEST,
        slit_words: slit_words(plan, bar, worked, &laid),
    })
}

fn other(view: View) -> View {
    match view {
        View::Side => View::Top,
        View::Top => View::Side,
    }
}

/// Where each slit is cut.
fn slit_words(plan: &Plan, bar: &Bar, worked: &BarBalance, laid: &LaidOff) -> Vec<String> {
    let words = |slit: &fh_core::balance::SlitMark| {
        let line = slit_line_words(plan.units.length, bar, worked, slit.segment)?;
        Some(format!("“{}”: {line}.", segment_name(bar, slit.segment)))
    };
    laid.slits.iter().filter_map(words).collect()
}

fn datum_words(bar: &Bar) -> String {
    bar.datum.as_ref().map_or_else(|| bar.datum_name().to_owned(), |name| format!("datum: {name}"))
}

fn strip_marks(bar: &Bar, worked: &BarBalance) -> Vec<StripMark> {
    let mark = |(place, (number, _)): (usize, (usize, &SegmentBalance))| StripMark {
        number: bar.path(number),
        at_mm: sane(worked.struck_mm(number).unwrap_or_default()),
        total: worked.mark_text(number).unwrap_or_default(),
        kind: struck_kind(worked, &bar.segments, place),
        is_fixed: worked.segments.get(number).is_some_and(|segment| segment.fixed_mark.is_some()),
    };
    worked.whole().enumerate().map(mark).fold(Vec::new(), with_mark)
}

/// One mark more; where one stands at that very place already, that one has both numbers.
fn with_mark(mut marks: Vec<StripMark>, next: StripMark) -> Vec<StripMark> {
    match marks.last_mut().filter(|last| is_same_place(last.at_mm, next.at_mm)) {
        Some(last) => {
            last.number = format!("{}, {}", last.number, next.number);
            last.is_fixed |= next.is_fixed;
            // The bar's end is cut, whatever ends there with it; else what is punched is seen on the hot bar.
            if next.kind == MarkKind::Cut || !last.kind.is_punched() && next.kind.is_punched() {
                last.kind = next.kind;
            }
        }
        None => marks.push(next),
    }
    marks
}

/// Whether two marks are one line on the bar.
fn is_same_place(one_mm: f64, other_mm: f64) -> bool {
    (one_mm - other_mm).abs() < 1e-6
}

/// The number of the mark on the bar itself before a part's own, where both are one line.
fn same_mark(bar: &Bar, worked: &BarBalance, number: usize) -> Option<String> {
    let (before, _) = worked.whole().take_while(|(at, _)| *at < number).last()?;
    let [one, other] = [before, number].map(|at| worked.struck_mm(at));
    is_same_place(one?, other?).then(|| bar.path(before))
}

fn strip_blocks(bar: &Bar, worked: &BarBalance) -> Vec<StripBlock> {
    let block = |(segment, (number, balance)): (&Segment, (usize, &SegmentBalance))| StripBlock {
        name: segment_name(bar, number),
        number: bar.path(number),
        start_mm: sane(balance.mark_start_shop.mm()),
        end_mm: sane(balance.mark_end_shop.mm()),
        fate: fate(segment),
    };
    bar.segments.iter().zip(worked.whole()).map(block).collect()
}

/// How a mark on the bar itself is struck, where of two marks beside a short step one is not struck.
fn struck_kind(worked: &BarBalance, chain: &[Segment], place: usize) -> MarkKind {
    let mut around = worked.whole().map(|(number, _)| number).skip(place);
    match (around.next(), around.next()) {
        (Some(before), Some(after)) if !worked.is_struck(before, after) => MarkKind::LineOnly,
        _ => mark_kind(chain, place),
    }
}

/// The datum's row, then one for each mark.
pub(super) fn table_rows(plan: &Plan, bar: &Bar, worked: &BarBalance, spread: Option<&BarSpread>) -> Vec<TableRow> {
    if worked.segments.is_empty() {
        return Vec::new();
    }
    let datum =
        TableRow { total: "0".to_owned(), exact_mm: "0.00".to_owned(), block: datum_words(bar), ..TableRow::default() };
    let mut rows = vec![datum];
    let laid = worked.laid_off();
    for (number, flat) in bar.flat().iter().take(worked.segments.len()).enumerate() {
        rows.extend(branch_row(plan, bar, worked, flat));
        rows.extend(
            laid.holes.iter().filter(|hole| hole.segment == number).map(|hole| hole_row(plan, bar, flat, hole)),
        );
        let mut row = block_row(plan, bar, worked, number, flat);
        row.becomes.extend(slit_line_words(plan.units.length, bar, worked, number));
        row.step = worked.step_shop(number).map_or(String::new(), |step| step.text());
        if let Some(spread) = spread.and_then(|spread| spread.segments.get(number)) {
            add_tolerances(&mut row, plan, spread);
        }
        row.becomes.extend(dressed_lines(plan.units.length, bar, worked, number));
        row.becomes.extend(repeat_lines(plan.units.length, bar, worked, number));
        row.becomes.extend(notes(flat.segment));
        rows.push(row);
    }
    rows
}

/// The row that tells which branch the next ones belong to; none but before the first of a branch.
fn branch_row(plan: &Plan, bar: &Bar, worked: &BarBalance, flat: &Flat<'_>) -> Option<TableRow> {
    let Chain::Branch { split, branch } = flat.chain else { return None };
    if flat.place > 0 {
        return None;
    }
    let title = bar.segment(split)?.form.branches().get(branch)?.title(branch);
    let size = match &worked.segments.get(split)?.shape {
        Some(Shape::Split(size)) => size.branches.get(branch).map(|size| branch_words(plan, size)),
        _ => None,
    };
    let becomes = size.into_iter().collect();
    Some(TableRow { block: title, becomes, depth: flat.depth, ..TableRow::default() })
}

/// The row of the middle of a hole.
fn hole_row(plan: &Plan, bar: &Bar, flat: &Flat<'_>, hole: &HoleMark) -> TableRow {
    TableRow {
        number: "hole".to_owned(),
        total: hole.shop.text(),
        exact_mm: format!("{:.2}", hole.middle.get::<millimeter>()),
        off_by: off_by(hole.shop.mm(), hole.middle),
        block: segment_name(bar, hole.segment),
        becomes: vec![hole_words(hole, plan.units.length)],
        strike: if hole.is_hammered { MarkKind::LaidOffAgain } else { MarkKind::CentrePunch }.name().to_owned(),
        depth: flat.depth,
        is_hole: true,
        ..TableRow::default()
    }
}

/// The row of a mark, as far as it follows from the block that ends there.
fn block_row(plan: &Plan, bar: &Bar, worked: &BarBalance, number: usize, flat: &Flat<'_>) -> TableRow {
    let Some(balance) = worked.segments.get(number) else { return TableRow::default() };
    let (shop, exact) = match worked.block_shop(number).zip(worked.block_exact(number)) {
        Some(([_, shop], [_, exact])) => (shop, exact),
        None => (balance.mark_end_shop, balance.mark_end),
    };
    let chain = bar.chain(flat.chain).map_or(&[][..], Vec::as_slice);
    // The end of a branch is the end of its slit, which the split's own mark tells.
    let ends_branch = flat.chain != Chain::Bar && flat.place + 1 == chain.len();
    let same = (flat.chain == Chain::Bar).then(|| same_mark(bar, worked, number)).flatten();
    let same = same.map(|before| format!("with {before}, one mark"));
    let strike = match flat.chain {
        Chain::Bar if same.is_some() => same.as_deref().unwrap_or_default(),
        Chain::Bar => struck_kind(worked, chain, flat.place).name(),
        _ if ends_branch => "end of the slit",
        _ => mark_kind(chain, flat.place).name(),
    };
    TableRow {
        number: bar.path(number),
        total: worked.mark_text(number).unwrap_or_default(),
        exact_mm: format!("{:.2}", exact.get::<millimeter>()),
        off_by: if balance.fixed_mark.is_some() { String::new() } else { off_by(shop.mm(), exact) },
        block: segment_name(bar, number),
        becomes: becomes(plan, flat.segment, balance),
        side: side(flat.segment),
        strike: if balance.fixed_mark.is_some() { format!("{strike}, set by you") } else { strike.to_owned() },
        depth: flat.depth,
        ..TableRow::default()
    }
}

/// How far the rounded mark lies from its true place, where that is a hundredth of a millimetre or more.
fn off_by(shop_mm: f64, exact: Length) -> String {
    let error = shop_mm - exact.get::<millimeter>();
    match error {
        error if error >= 0.005 => format!("mark +{error:.2}"),
        error if error <= -0.005 => format!("mark −{:.2}", error.abs()),
        _ => String::new(),
    }
}

/// What the block becomes: its form, its bend, and the sizes that follow.
fn becomes(plan: &Plan, segment: &Segment, balance: &SegmentBalance) -> Vec<String> {
    let bend = bend_words(segment, &balance.derived).map_or_else(String::new, |bend| format!(", then {bend}"));
    let made = made_words(segment, balance, plan.units.length);
    // The line of a slit is told from where to where.
    let has_follows = !made.follows.is_empty() && segment.form.branches().is_empty();
    let follows: Vec<String> = made.follows.into_iter().map(|size| size.words).collect();
    let follows = if has_follows { format!(" → {}", follows.join(", ")) } else { String::new() };
    let mut words = vec![made.form + &bend + &follows];
    words.extend(made_lines(plan, segment, balance));
    words
}

/// The smith's own notes.
fn notes(segment: &Segment) -> Option<String> {
    segment.notes.clone().filter(|notes| !notes.trim().is_empty())
}

fn side(segment: &Segment) -> String {
    match (side_words(segment), &segment.form) {
        (Some(side), Form::Shoulder(_)) => format!("set down: {side}"),
        (Some(side), Form::Peak(_)) => format!("peak: {side}"),
        (Some(side), _) => side,
        (None, _) => String::new(),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]
mod tests {
    use super::*;

    fn demo(name: &str) -> Plan {
        let path = format!("{}/../../demo-plans/{name}.plan.json", env!("CARGO_MANIFEST_DIR"));
        fh_core::file::read(&std::fs::read(path).unwrap()).unwrap()
    }

    #[test]
    fn two_marks_at_one_place_are_one_line_with_both_numbers() {
        let plan = demo("weeding-fork");
        let balance = fh_core::balance::balance(&plan);
        let (bar, worked) = (&plan.bars[0], &balance.bars[0]);
        let strip = strip(&plan, bar, worked).unwrap();
        let at: Vec<(&str, &str)> =
            strip.marks.iter().map(|mark| (mark.number.as_str(), mark.total.as_str())).collect();
        // The ferrule's step takes less bar than a mark can tell.
        assert!(at.contains(&("4, 5", "178 mm")), "{at:?}");
        let rows = table_rows(&plan, bar, worked, None);
        let strike = |number: &str| rows.iter().find(|row| row.number == number).unwrap().strike.clone();
        assert_eq!([strike("4"), strike("5")], ["punch the step", "with 4, one mark"]);
    }

    #[test]
    fn no_two_lines_stand_at_one_place_on_a_strip_and_every_mark_is_on_it() {
        let folder = format!("{}/../../demo-plans", env!("CARGO_MANIFEST_DIR"));
        for file in std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().file_name().into_string().unwrap()) {
            let Some(name) = file.strip_suffix(".plan.json") else { continue };
            let plan = demo(name);
            let balance = fh_core::balance::balance(&plan);
            for (bar, worked) in plan.bars.iter().zip(&balance.bars) {
                let strip = strip(&plan, bar, worked).unwrap();
                let places = strip.marks.windows(2).map(|pair| pair[1].at_mm - pair[0].at_mm);
                assert!(places.clone().all(|apart| apart > 1e-6), "{name}: {:?}", places.collect::<Vec<_>>());
                let numbers: Vec<&str> = strip.marks.iter().flat_map(|mark| mark.number.split(", ")).collect();
                assert_eq!(numbers.len(), bar.segments.len(), "{name}");
            }
        }
    }
}
