//! The ladder sheet: what it says, that its gauges are at full scale, and that nothing is cut off or overlaps.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use crate::reading::words;
use crate::sound::assert_sound;
use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_print::drawing::{Drawing, Item};
use fh_print::paper::{MARGIN_MM, Orientation, Paper};
use fh_print::pen::Pen;
use fh_print::sheets::{ladder_sheet, mark_sheet};

const HOOK: &str = r#"{ "firstheat": 1, "title": "Gate hook", "units": { "length": "in", "marks": "1/16 in" },
  "bars": [ { "name": "hook", "stock": { "square": "1/2 in" }, "segments": [
    { "name": "point", "form": { "taper": { "length": "2 1/2 in", "from": { "square": "3/8 in" }, "to": "point" } } },
    { "name": "hook", "form": { "drawn": { "length": "4 in ± 1/8 in", "section": { "square": "11/32 to 13/32 in" } } } },
    { "name": "neck", "form": { "taper": { "length": "6 in", "from": "stock", "to": { "flat": { "width": "3/4 in", "thickness": "3/16 in" } } } } },
    { "name": "strap", "form": { "drawn": { "length": "14 in", "section": { "round": "1/4 in" } } } },
    { "name": "rest", "form": { "hold": { "length": "4 in" } } } ] } ] }"#;

/// 12 mm square drawn to 10 mm square, 100 mm long, of brass, of which no hot length is known.
const BRASS: &str = r#"{ "firstheat": 1, "title": "Knob", "units": { "length": "mm", "marks": "0.1 mm" }, "material": "brass",
  "bars": [ { "name": "bar", "stock": { "square": "12 mm" }, "segments": [
    { "name": "leg", "form": { "drawn": { "length": "100 mm", "section": { "square": "10 mm" } } } } ] } ] }"#;

const PLAIN: &str = r#"{ "firstheat": 1, "title": "", "units": { "length": "mm", "marks": "1 mm" },
  "bars": [ { "name": "", "stock": { "square": "12 mm" }, "segments": [
    { "name": "a", "form": { "plain": { "length": "100 mm" } } } ] } ] }"#;

fn read(json: &str) -> Plan {
    fh_core::file::read(json.as_bytes()).expect("a plan")
}

fn sheet(json: &str, paper: Paper, orientation: Orientation) -> Drawing {
    let plan = read(json);
    ladder_sheet(&plan, &balance(&plan), paper, orientation)
}

fn every_sheet() -> Vec<Drawing> {
    let mut sheets = Vec::new();
    for json in [HOOK, BRASS, PLAIN, &HOOK.replace("\"strap\"", &format!("\"{}\"", "long name ".repeat(40)))] {
        for paper in Paper::ALL {
            for orientation in [Orientation::Landscape, Orientation::Portrait] {
                sheets.push(sheet(json, paper, orientation));
            }
        }
    }
    sheets
}

/// The places along the page of the ticks drawn with a pen.
fn ticks(drawing: &Drawing, wanted: Pen) -> Vec<f64> {
    let tick = |item: &Item| match item {
        Item::Line { from, to, pen } if *pen == wanted && from.x == to.x => Some(from.x - MARGIN_MM),
        _ => None,
    };
    drawing.pages.iter().flat_map(|page| page.items.iter().filter_map(tick)).collect()
}

#[test]
fn nothing_is_cut_off_and_no_words_overlap() {
    for drawing in every_sheet() {
        assert_sound(&drawing, "ladder");
        assert!(fh_print::pdf(&drawing).is_ok());
    }
}

#[test]
fn the_gauge_is_at_full_scale() {
    let drawing = sheet(BRASS, Paper::A4, Orientation::Landscape);
    // 100 mm × (10 / s)² for s of 12 mm, the bar itself, down to 8 mm.
    let fat = [12.0, 11.5, 11.0, 10.5].map(|side: f64| 1e4 / (side * side));
    let thin = [9.5, 9.0, 8.5, 8.0].map(|side: f64| 1e4 / (side * side));
    let found = ticks(&drawing, Pen::MarkLine);
    assert_eq!(found.len(), 8);
    for (found, expected) in found.iter().zip(fat.into_iter().chain(thin)) {
        assert!((found - expected).abs() < 1e-6, "{found} is not {expected}");
    }
    assert!((ticks(&drawing, Pen::CutLine)[0] - 100.0).abs() < 1e-6);
}

#[test]
fn the_ladder_is_told_in_figures() {
    let said = words(&sheet(BRASS, Paper::A4, Orientation::Portrait));
    for figure in ["1 · leg", "side", "9.5 mm", "110.8 mm", "+10.8 mm", "−9.3 mm", "as planned", "length, cold"] {
        assert!(said.contains(figure), "{figure} in {said}");
    }
    assert!(!said.contains("hot\n"), "{said}");
    let said = words(&sheet(HOOK, Paper::A4, Orientation::Landscape));
    for figure in ["length, hot", "side at its root", "thickness at its end", "950 °C", "4 · strap"] {
        assert!(said.contains(figure), "{figure} in {said}");
    }
    assert!(!said.contains("rest"), "what is left as stock has no ladder");
    assert!(words(&sheet(PLAIN, Paper::A4, Orientation::Landscape)).contains("Nothing here is drawn or tapered."));
}

#[test]
fn a_mark_sheet_tells_what_tolerances_do() {
    let plan = read(HOOK);
    let said = words(&mark_sheet(&plan, &balance(&plan), Paper::A4, Orientation::Landscape));
    for figure in ["forged length 3 7⁄8 to 4 1⁄8 in", "forged, still straight", "30 3⁄8 to 30 5⁄8 in"] {
        assert!(said.contains(figure), "{figure} in {said}");
    }
    let plain = read(PLAIN);
    assert!(
        !words(&mark_sheet(&plain, &balance(&plain), Paper::A4, Orientation::Landscape))
            .contains("forged, still straight")
    );
}
