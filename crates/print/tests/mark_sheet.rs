//! The mark sheet of whole plans: what it says, where it is drawn, and that nothing is cut off or overlaps.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use crate::reading::{extent, texts, words};
use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_print::drawing::{Drawing, Item, Page, Point, Text};
use fh_print::paper::{Area, MARGIN_MM, Orientation, Paper};
use fh_print::pen::Pen;
use fh_print::sheets::mark_sheet;
use std::sync::LazyLock;

/// How far the bar's datum end stands from the left edge of the page: the margin, and room for the arrow.
const DATUM_MM: f64 = MARGIN_MM + 7.0;

const GATE_HOOK: &str = r#"{ "firstheat": 1, "title": "Gate hook", "units": { "length": "in", "marks": "1/16 in" }, "scale": "2 %",
  "notes": "One left hand, one right hand.",
  "bars": [ { "name": "hook", "count": 2, "stock": { "square": "1/2 in" }, "datum": "point end", "segments": [
    { "name": "point", "form": { "taper": { "length": "2 1/2 in", "from": { "square": "3/8 in" }, "to": "point" } } },
    { "name": "hook", "form": { "drawn": { "length": "4 in", "section": { "square": "3/8 in" } } } },
    { "name": "shoulder", "form": { "shoulder": { "to": { "square": "1/2 in" }, "radius": "1/8 in", "sides": "all" } } },
    { "name": "shank", "form": { "plain": { "length": "5 in" } } },
    { "name": "flag", "form": { "flag": { "outline": { "disc": { "diameter": "1 1/2 in" } }, "thickness": "3/16 in", "trim": "5 %" } } },
    { "name": "rest", "form": { "hold": { "length": "4 in" } } } ] } ] }"#;

fn read(json: &str) -> Plan {
    fh_core::file::read(json.as_bytes()).expect("a plan")
}

/// A plan in mm whose segments are left as stock, with these lengths.
fn plain_plan(lengths: &[f64]) -> Plan {
    let segments: Vec<String> = lengths
        .iter()
        .enumerate()
        .map(|(i, mm)| format!(r#"{{ "name": "block {}", "form": {{ "plain": {{ "length": "{mm} mm" }} }} }}"#, i + 1))
        .collect();
    read(&format!(
        r#"{{ "firstheat": 1, "title": "Trellis", "units": {{ "length": "mm", "marks": "1 mm" }},
             "bars": [ {{ "name": "rail", "stock": {{ "square": "12 mm" }}, "segments": [ {} ] }} ] }}"#,
        segments.join(", ")
    ))
}

#[test]
fn a_plan_of_several_bars_says_what_all_of_them_take_and_a_plan_of_one_does_not() {
    let mut plan = plain_plan(&[100.0]);
    assert!(!words(&landscape(&plan)).contains("whole plan"));
    let mut legs = plain_plan(&[50.0]).bars.remove(0);
    legs.count = Some(3);
    plan.bars.push(legs);
    let words = words(&landscape(&plan)).replace('\n', " ");
    // 100 + 3 × 50 mm; 12 · 12 · 250 mm³ × 7.85 mg/mm³ = 0.28 kg.
    for said in ["whole plan, all bars", "4 pieces, cut 250 mm", "bars weigh 0.28 kg, pieces 0.28 kg"] {
        assert_eq!(words.matches(said).count(), 1, "{said} in\n{words}");
    }
}

fn sheet(plan: &Plan, paper: Paper, orientation: Orientation) -> Drawing {
    mark_sheet(plan, &balance(plan), paper, orientation)
}

fn landscape(plan: &Plan) -> Drawing {
    sheet(plan, Paper::A4, Orientation::Landscape)
}

/// A plan whose last segment is 300 mm long and held, from `start` mm on.
fn held_plan(start: f64) -> Plan {
    let mut plan = plain_plan(&[start - 60.0, 60.0]);
    let rest = read(&GATE_HOOK.replace(r#""4 in" } } } ] }"#, r#""300 mm" } } } ] }"#));
    plan.bars[0].segments.push(rest.bars[0].segments[5].clone());
    plan
}

fn every_plan() -> Vec<(&'static str, Plan)> {
    let mut unnamed = plain_plan(&[50.0, 60.0]);
    unnamed.title = String::new();
    unnamed.bars[0].name = String::new();
    let mut wordy = plain_plan(&[50.0, 60.0]);
    wordy.title = "A very long title that goes on and on ".repeat(8);
    wordy.notes = Some("Many words. ".repeat(2000));
    wordy.bars[0].segments[0].name = "Donaudampfschiff".repeat(20);
    wordy.bars[0].segments[1].notes = Some("Word for word. ".repeat(500));
    let mut two_bars = read(GATE_HOOK);
    two_bars.bars.push(plain_plan(&[30.0]).bars[0].clone());
    vec![
        ("gate hook", read(GATE_HOOK)),
        ("one", plain_plan(&[80.0])),
        ("none", plain_plan(&[])),
        ("tiny", plain_plan(&[0.1, 0.1, 0.1])),
        ("forty", plain_plan(&[6.0; 40])),
        ("two hundred", plain_plan(&[1.0; 200])),
        ("long", plain_plan(&[900.0, 14.0, 700.0, 5.0])),
        ("unnamed", unnamed),
        ("wordy", wordy),
        ("two bars", two_bars),
    ]
}

/// Every plan on every paper, drawn once for all tests.
static SHEETS: LazyLock<Vec<(String, Drawing)>> = LazyLock::new(every_sheet);

fn every_sheet() -> Vec<(String, Drawing)> {
    let held = (6..20).map(|step| f64::from(step) * 27.0);
    let mut sheets: Vec<_> = held.map(|start| (format!("held from {start}"), landscape(&held_plan(start)))).collect();
    for (name, plan) in every_plan() {
        for paper in Paper::ALL {
            for orientation in [Orientation::Landscape, Orientation::Portrait] {
                let label = format!("{name} on {} {orientation:?}", paper.name());
                sheets.push((label, sheet(&plan, paper, orientation)));
            }
        }
    }
    sheets
}

fn overlap(a: Area, b: Area) -> bool {
    let hair = 0.01;
    a.left < b.right - hair && b.left < a.right - hair && a.top < b.bottom - hair && b.top < a.bottom - hair
}

/// The lines of a page drawn with a pen, as their two ends.
fn lines(page: &Page, wanted: Pen) -> Vec<(Point, Point)> {
    let line = |item: &Item| match item {
        Item::Line { from, to, pen } if *pen == wanted => Some((*from, *to)),
        _ => None,
    };
    page.items.iter().filter_map(line).collect()
}

#[test]
fn nothing_is_cut_off() {
    for (name, drawing) in SHEETS.iter() {
        let area = drawing.paper.printable(drawing.orientation);
        let inside = |point: &Point| {
            point.x >= area.left - 0.5
                && point.x <= area.right + 0.5
                && point.y >= area.top - 0.5
                && point.y <= area.bottom + 0.5
        };
        for (number, page) in (1..).zip(&drawing.pages) {
            for item in &page.items {
                let corners = match item {
                    Item::Line { from, to, .. } => vec![*from, *to],
                    Item::Polyline { points, .. } | Item::Polygon { points, .. } => points.clone(),
                    Item::Text(text) => {
                        let extent = extent(text);
                        vec![Point { x: extent.left, y: extent.top }, Point { x: extent.right, y: extent.bottom }]
                    }
                };
                assert!(corners.iter().all(inside), "{name}, page {number}: {item:?}");
            }
        }
    }
}

#[test]
fn no_words_overlap() {
    for (name, drawing) in SHEETS.iter() {
        for (number, page) in (1..).zip(&drawing.pages) {
            let texts: Vec<(&Text, Area)> = texts(page).into_iter().map(|text| (text, extent(text))).collect();
            for (index, (text, place)) in texts.iter().enumerate() {
                let clash = texts[index + 1..].iter().find(|(_, other)| overlap(*place, *other));
                assert!(clash.is_none(), "{name}, page {number}: {text:?} and {clash:?}");
            }
        }
    }
}

#[test]
fn every_page_carries_both_check_lines_and_its_number() {
    for (name, drawing) in SHEETS.iter() {
        let count = drawing.pages.len();
        for (number, page) in (1..).zip(&drawing.pages) {
            let lengths: Vec<f64> = lines(page, Pen::Dimension).iter().map(|(from, to)| to.x - from.x).collect();
            for length in [100.0, 101.6] {
                assert!(lengths.iter().any(|drawn| (drawn - length).abs() < 1e-9), "{name}: no line of {length} mm");
            }
            let said = texts(page).iter().map(|text| text.content()).collect::<Vec<_>>().join("\n");
            assert!(said.contains("100 mm") && said.contains("4 in") && said.contains("Print at 100 %"), "{said}");
            assert!(said.contains(&format!("page {number} of {count}")), "{name}: {said}");
        }
    }
}

#[test]
fn marks_stand_at_the_totals_printed_beside_them() {
    // 12 mm square left as stock: the marks are the sums of the lengths, rounded to 1 mm.
    let drawing = landscape(&plain_plan(&[40.4, 60.3, 30.3]));
    let marks = [lines(&drawing.pages[0], Pen::MarkLine), lines(&drawing.pages[0], Pen::CutLine)].concat();
    let places: Vec<f64> = marks.iter().map(|(from, _)| from.x - DATUM_MM).collect();
    assert_eq!(places.len(), 3, "{places:?}");
    for (place, want) in places.iter().zip([40.0, 101.0, 131.0]) {
        assert!((place - want).abs() < 1e-9, "{places:?}");
    }
    let said = words(&drawing);
    for total in ["40 mm", "101 mm", "131 mm"] {
        assert!(said.contains(total), "{total} in {said}");
    }
}

#[test]
fn rows_overlap_by_10_mm_and_their_crosses_match() {
    let drawing = landscape(&plain_plan(&[900.0]));
    // 277 mm wide, 7 mm free on both sides: rows of 263 mm that start every 253 mm.
    let mut crosses = Vec::new();
    for (from, to) in drawing.pages.iter().flat_map(|page| lines(page, Pen::JoinCross)) {
        if from.y == to.y {
            crosses.push((from.x + to.x) / 2.0 - DATUM_MM);
        }
    }
    crosses.dedup();
    let want = [258.0, 5.0, 258.0, 5.0, 258.0, 5.0];
    assert_eq!(crosses.len(), want.len(), "{crosses:?}");
    assert!(crosses.iter().zip(want).all(|(cross, want)| (cross - want).abs() < 1e-9), "{crosses:?}");
    let letters: Vec<_> = words(&drawing)
        .lines()
        .filter(|line| line.len() == 1 && line.chars().all(char::is_uppercase))
        .map(str::to_owned)
        .collect();
    assert_eq!(letters, ["A", "A", "B", "B", "C", "C"]);
}

#[test]
fn the_table_says_total_exact_step_and_error() {
    let said = words(&landscape(&plain_plan(&[40.4, 60.3])));
    for figure in ["40.40", "mark −0.40", "100.70", "mark +0.30", "61 mm", "101 mm", "block 2", "datum end"] {
        assert!(said.contains(figure), "{figure} in {said}");
    }
}

#[test]
fn the_heading_says_what_to_fetch() {
    let said = words(&landscape(&read(GATE_HOOK)));
    for fact in [
        "Gate hook",
        "1⁄2 in square",
        "mild steel",
        "how many",
        "lb",
        "One left hand, one right hand.",
        "Eye protection",
    ] {
        assert!(said.contains(fact), "{fact} in {said}");
    }
}

#[test]
fn stops_and_warnings_are_printed_with_their_remedy() {
    // A step 6.35 mm deep with a radius of 0.5 mm is a cold shut, forging.md §6.
    let plan = read(&GATE_HOOK.replace(r#""radius": "1/8 in""#, r#""radius": "1/64 in""#));
    let balance = balance(&plan);
    let said = words(&landscape(&plan)).replace('\n', " ");
    for finding in balance.findings.iter().filter(|finding| finding.severity > fh_core::findings::Severity::Note) {
        let start: String = finding.remedy.chars().take(20).collect();
        assert!(said.contains(fh_print::typeset::printable(&start).trim()), "{start} in {said}");
    }
}

#[test]
fn a_long_rest_in_the_tongs_is_broken_off() {
    let drawing = landscape(&held_plan(100.0));
    assert!(words(&drawing).contains("bar goes on to 400 mm →"), "{}", words(&drawing));
    assert_eq!(lines(&drawing.pages[0], Pen::JoinCross).len(), 0);
    // One row shows 263 mm; the rest starts at 250, so it ends with that row and not in one of its own.
    assert_eq!(lines(&landscape(&held_plan(250.0)).pages[0], Pen::JoinCross).len(), 0);
}

#[test]
fn a_bar_of_absurd_length_ends_in_words() {
    let drawing = landscape(&plain_plan(&[90_000.0; 10]));
    assert!(drawing.pages.len() <= 80, "{} pages", drawing.pages.len());
    assert!(words(&drawing).contains("The strip stops here"), "no words");
}

#[test]
fn an_empty_plan_prints_a_sheet_that_says_so() {
    let drawing = landscape(&plain_plan(&[]));
    assert_eq!(drawing.pages.len(), 1);
    assert!(words(&drawing).contains("no parts"), "{}", words(&drawing));
    let mut nothing = plain_plan(&[]);
    nothing.bars.clear();
    assert_eq!(landscape(&nothing).pages.len(), 1);
}

#[test]
fn every_sheet_can_be_written() {
    for (name, drawing) in SHEETS.iter() {
        assert!(fh_print::pdf(drawing).is_ok(), "{name}");
        assert_eq!(fh_print::svg(drawing).len(), drawing.pages.len(), "{name}");
    }
}

#[test]
fn the_sheet_says_what_scale_it_allows_for_and_what_is_short() {
    let said = |json: &str| {
        let plan = read(json);
        words(&mark_sheet(&plan, &balance(&plan), Paper::A4, Orientation::Landscape)).replace('\n', " ")
    };
    assert!(said(GATE_HOOK).contains("scale allowed for 2 %"), "{}", said(GATE_HOOK));
    // The point alone has less, and many heats.
    let own = GATE_HOOK.replace(r#""to": "point" } } }"#, r#""to": "point" } }, "scale": "0.2 %" }"#);
    assert!(said(&own).contains("scale allowed for 2 %; “point” 0.2 %"), "{}", said(&own));
    let slow = own.replace(r#""bars": ["#, r#""work": { "heats": { "pace": 0.3 } }, "bars": ["#);
    let slow = said(&slow);
    assert!(slow.contains("The marks allow 0.2 % of scale for “point”") && slow.contains("Before you light"), "{slow}");
}
