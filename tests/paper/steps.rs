//! Step cards, the short table and the gauge strip as they come out of the printer.

use crate::paper::page::{Rendered, Run};
use crate::paper::words::{joined, words};
use crate::paper::{CLOSE_MM, Printed};
use fh_core::file;
use fh_print::drawing::{Item, Point};
use fh_print::paper::Paper;
use fh_print::pen::Pen;
use fh_print::sheets::{Sheet, document, usual_orientation};
use fh_store::demos::DEMOS;
use fh_work::{Shop, Worked, work_out};

fn printed(text: &str, sheet: Sheet, paper: Paper) -> Printed {
    Printed::of(file::read(text.as_bytes()).unwrap(), |plan, balance| {
        document(plan, balance, &[sheet], paper, usual_orientation(&[sheet]))
    })
}

fn worked(printed: &Printed) -> Worked {
    work_out(&printed.plan, &printed.balance, &Shop::default())
}

fn demo(file_name: &str) -> &'static str {
    DEMOS.iter().find(|demo| demo.file_name == file_name).unwrap().text
}

#[test]
fn every_demo_prints_its_steps_in_words() {
    for (index, demo) in DEMOS.iter().enumerate() {
        let paper = Paper::ALL[index % 2];
        for sheet in [Sheet::Steps, Sheet::StepList] {
            let printed = printed(demo.text, sheet, paper);
            let all = joined(&words(&printed, None));
            for step in worked(&printed).steps {
                // A title may be cut off, and broken over two lines.
                let title: String = joined(&step.title).chars().take(12).collect();
                assert!(all.contains(&title), "{}, {}: {title}", demo.file_name, sheet.name());
            }
            let count = printed.drawing.pages.len();
            for number in 1..=count {
                let page = words(&printed, Some(number));
                assert!(page.contains(&format!("page {number} of {count}")), "{}: {page}", demo.file_name);
            }
        }
    }
}

#[test]
fn every_demo_prints_its_gauges_with_their_sizes() {
    for (index, demo) in DEMOS.iter().enumerate() {
        let printed = printed(demo.text, Sheet::Gauges, Paper::ALL[index % 2]);
        let all = joined(&words(&printed, None));
        for gauge in worked(&printed).gauges {
            assert!(all.contains(&joined(&gauge.words)), "{}: {} in {all}", demo.file_name, gauge.words);
        }
    }
}

/// The first strip of a page: its outline's corners.
fn strip(printed: &Printed, page: usize) -> Vec<Point> {
    let outline = |item: &Item| match item {
        Item::Polygon { points, fill: None, pen: Some(Pen::MarkLine) } if points.len() > 4 => Some(points.clone()),
        _ => None,
    };
    printed.drawing.pages[page].items.iter().find_map(outline).unwrap()
}

/// The middles of the narrow runs of ink at a height.
fn lines_at(page: &Rendered, y: f64) -> Vec<f64> {
    page.runs_at(y).into_iter().filter(|run| run.length() < 0.6).map(Run::middle).collect()
}

fn check_gauges(file_name: &str, paper: Paper) {
    let printed = printed(demo(file_name), Sheet::Gauges, paper);
    let page = Rendered::new(&printed, 0);
    let strip = strip(&printed, 0);
    let top = strip.iter().map(|point| point.y).fold(f64::INFINITY, f64::min);
    // Through the notches: the end of the strip, both sides of each notch, the other end.
    let lines = lines_at(&page, top + 4.0);
    let gauges = worked(&printed).gauges;
    let first = gauges.iter().find(|gauge| !gauge.caliper).unwrap();
    let mut wanted: Vec<f64> = first.go_mm.into_iter().chain([first.no_go_mm]).collect();
    wanted.extend(first.hot_mm);
    for (index, width) in wanted.into_iter().enumerate() {
        let found = lines[2 + 2 * index] - lines[1 + 2 * index];
        assert!((found - width).abs() <= CLOSE_MM, "{file_name}, {paper:?}: {found} for {width}");
    }
    // The length of the strip as it is drawn, and as it is printed beside it.
    let (left, right) =
        strip.iter().fold((f64::INFINITY, 0.0_f64), |(left, right), point| (left.min(point.x), right.max(point.x)));
    let long = lines[lines.len() - 1] - lines[0];
    assert!((long - (right - left)).abs() <= CLOSE_MM, "{file_name}, {paper:?}: {long}");
    if printed.plan.units.length == fh_core::plan::PlanUnit::Millimeter {
        let said = words(&printed, Some(1));
        let told = said.split("strip ").nth(1).and_then(|rest| rest.split(' ').next()).unwrap();
        assert!((long - told.parse::<f64>().unwrap()).abs() <= CLOSE_MM, "{told} for {long}");
    }
}

#[test]
fn a_notch_and_the_strip_measure_what_they_say() {
    check_gauges("herb-bracket.plan.json", Paper::A4);
    check_gauges("weeding-fork.plan.json", Paper::Letter);
}

/// A bar that has room on the page, drawn at full size.
const SHORT_BAR: &str = r#"{ "firstheat": 1, "title": "Peg", "units": { "length": "mm", "marks": "0.1 mm" },
  "bars": [ { "name": "peg", "stock": { "square": "16 mm" }, "segments": [
    { "name": "point", "form": { "taper": { "length": "60 mm", "to": { "square": "4 mm" } } } },
    { "name": "shank", "form": { "plain": { "length": "90 mm" } } } ] } ] }"#;

#[test]
fn a_bar_that_has_room_is_drawn_at_full_size() {
    let printed = printed(SHORT_BAR, Sheet::Steps, Paper::A4);
    assert!(words(&printed, None).contains("full size"));
    // The last card of the bar shows it finished: 150 mm from tip to end, 16 mm thick.
    let mut widths = Vec::new();
    for page in &printed.drawing.pages {
        for item in &page.items {
            let Item::Polygon { points, fill: None, pen: Some(Pen::MarkLine | Pen::Outline) } = item else { continue };
            let ys = points.iter().map(|point| point.y);
            let (low, high) = ys.fold((f64::INFINITY, 0.0_f64), |(low, high), y| (low.min(y), high.max(y)));
            let xs = points.iter().map(|point| point.x);
            let (left, right) = xs.fold((f64::INFINITY, 0.0_f64), |(low, high), x| (low.min(x), high.max(x)));
            widths.push((right - left, high - low));
        }
    }
    let has = |long: f64, thick: f64| widths.iter().any(|(x, y)| (x - long).abs() < 0.15 && (y - thick).abs() < 0.15);
    assert!(has(90.0, 16.0) && has(60.0, 16.0), "{widths:?}");
}

#[test]
fn check_lines_stand_on_every_page_of_the_cards() {
    let printed = printed(demo("gate-hook.plan.json"), Sheet::Steps, Paper::Letter);
    for number in [0, printed.drawing.pages.len() - 1] {
        let lengths = crate::paper::check_lines::check_lines_mm(&Rendered::new(&printed, number));
        for wanted in [100.0, 101.6] {
            assert!(
                lengths.iter().any(|length| (length - wanted).abs() <= CLOSE_MM),
                "page {}: {lengths:?}",
                number + 1
            );
        }
    }
}
