//! The marks on the strip: measured from the datum, over all rows, cut out and joined cross on cross.

use crate::paper::page::{Rendered, Run};
use crate::paper::{CLOSE_MM, Printed};
use fh_print::drawing::Item;
use fh_print::paper::{Orientation, Paper};
use fh_print::pen::Pen;
use fh_store::demos::DEMOS;
use tests::mm;

/// Under the bar: here only marks still stand.
const MARKS_ONLY_MM: f64 = 4.35;
/// Under the bar: here marks stand, and the crosses of the joins; the line through a hole ends above.
const MARKS_AND_CROSSES_MM: f64 = 3.7;

/// One row of a strip: the middles of its marks, of its crosses, and of its datum line, where ink is.
struct Row {
    marks: Vec<f64>,
    crosses: Vec<f64>,
    datum: Option<f64>,
}

/// The lower edge of the bar in each row of a page: of the horizontal outlines every second one.
fn lower_edges(items: &[Item]) -> Vec<f64> {
    let level = items.iter().filter_map(|item| match item {
        Item::Line { from, to, pen: Pen::Outline } if (from.y - to.y).abs() < 1e-9 => Some(from.y),
        _ => None,
    });
    let edges: Vec<f64> = level.collect();
    edges.chunks(2).map(|pair| pair[0].max(pair[1])).collect()
}

/// Reads a row: the datum line is the heaviest of all, over 1 mm wide.
fn row(page: &Rendered, lower_edge: f64) -> Row {
    let lines = |under: f64| page.runs_at(lower_edge + under).into_iter().filter(|run| run.length() < 2.0);
    let (heavy, marks): (Vec<Run>, Vec<Run>) = lines(MARKS_ONLY_MM).partition(|run| run.length() > 1.0);
    let middles = |runs: &[Run]| runs.iter().map(|run| run.middle()).collect::<Vec<f64>>();
    let (datum, marks) = (middles(&heavy).first().copied(), middles(&marks));
    let is_mark = |x: f64| marks.iter().chain(&datum).any(|mark| (x - mark).abs() < 0.3);
    let crosses = lines(MARKS_AND_CROSSES_MM).map(Run::middle).filter(|x| !is_mark(*x)).collect();
    Row { marks, crosses, datum }
}

/// The rows of all bars, in order.
fn rows(printed: &Printed) -> Vec<Row> {
    let mut rows = Vec::new();
    for (number, page) in printed.drawing.pages.iter().enumerate() {
        let edges = lower_edges(&page.items);
        if !edges.is_empty() {
            let rendered = Rendered::new(printed, number);
            rows.extend(edges.into_iter().map(|edge| row(&rendered, edge)));
        }
    }
    rows
}

/// The places of the marks of each bar, in mm from the datum, measured across the joins.
fn measured(rows: &[Row]) -> Vec<Vec<f64>> {
    let mut bars: Vec<Vec<f64>> = Vec::new();
    let mut joined_at = 0.0;
    for row in rows {
        let zero = match row.datum {
            Some(datum) => {
                bars.push(Vec::new());
                datum
            }
            // Its first cross comes to lie on the last one of the row before.
            None => row.crosses.first().unwrap() - joined_at,
        };
        joined_at = row.crosses.last().map_or(0.0, |cross| cross - zero);
        let places = bars.last_mut().unwrap();
        for place in row.marks.iter().map(|mark| mark - zero) {
            // A mark in the overlap stands on both rows.
            if places.last().is_none_or(|last| place - last > CLOSE_MM) {
                places.push(place);
            }
        }
    }
    bars
}

fn check(file_name: &str, paper: Paper, orientation: Orientation) {
    let printed = Printed::new(file_name, paper, orientation);
    let bars = measured(&rows(&printed));
    assert_eq!(bars.len(), printed.plan.bars.len(), "{file_name}");
    for (bar, (places, balanced)) in bars.iter().zip(&printed.balance.bars).enumerate() {
        let what = format!("{file_name}, bar {bar}, {paper:?} {orientation:?}");
        let mut totals: Vec<f64> = balanced.whole().map(|(_, segment)| segment.mark_end_shop.mm()).collect();
        totals.dedup_by(|a, b| (*a - *b).abs() < 0.35);
        let near = |place: &f64, total: f64| (place - total).abs() <= CLOSE_MM;
        // Marks on the lower branch of a split stand here too.
        let on_branch = |place: &f64| balanced.segments.iter().any(|segment| near(place, segment.mark_end_shop.mm()));
        let is_whole = |place: &f64| totals.iter().any(|total| near(place, *total));
        let (whole, others): (Vec<f64>, Vec<f64>) = places.iter().copied().partition(is_whole);
        assert!(others.iter().all(on_branch), "{what}: {others:?} in no branch");
        // A long rest in the tongs is broken off, so the end of the bar may be missing.
        let shown = whole.len();
        assert!(shown == totals.len() || shown + 1 == totals.len(), "{what}: {places:?} for {totals:?}");
        for (place, total) in whole.iter().zip(totals) {
            assert!(near(place, total), "{what}: a mark at {place} where {total} is printed");
        }
        let step = printed.plan.units.marks.step_mm();
        assert!(mm(balanced.largest_rounding_error) <= step / 2.0 + 1e-9);
        // What is cut is never cut short.
        let (_, last) = balanced.whole().last().unwrap();
        let up = last.mark_end_shop.mm() - mm(last.mark_end);
        assert!((-0.05..step).contains(&up), "{what}: cut {up} mm longer than {}", mm(last.mark_end));
    }
}

#[test]
fn marks_stand_at_their_printed_totals_on_a4() {
    for demo in DEMOS {
        check(demo.file_name, Paper::A4, Orientation::Landscape);
    }
}

#[test]
fn marks_stand_at_their_printed_totals_on_letter() {
    check("gate-hook.plan.json", Paper::Letter, Orientation::Landscape);
    check("trellis-bracket.plan.json", Paper::Letter, Orientation::Portrait);
    check("boot-scraper.plan.json", Paper::Letter, Orientation::Portrait);
}
