//! Step cards: the marks, the slits, the bends and the heats are told so that the piece can be forged from them alone.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use crate::reading::{extent, texts, words};
use fh_core::balance::balance;
use fh_core::plan::{Operation, Plan};
use fh_print::drawing::{Drawing, Item, Page};
use fh_print::paper::{Orientation, Paper};
use fh_print::pen::Pen;
use fh_print::sheets::{Sheet, document};
use fh_work::{Shop, WorkedStep, work_out};

/// A long bar with a slit boss and a corner far from its ends.
const HANGER: &str = r#"{ "firstheat": 1, "title": "Bucket hanger", "units": { "length": "mm", "marks": "1 mm" }, "material": "mild steel",
  "bars": [ { "name": "hanger", "stock": { "square": "12 mm" }, "segments": [
    { "name": "back", "form": { "plain": { "length": "380 mm" } } },
    { "name": "boss", "form": { "hole": { "outline": { "rectangle": { "length": "34 mm", "width": "26 mm" } }, "thickness": "5 mm",
      "hole": { "slot": { "length": "11 mm", "width": "7 mm" } }, "made": "drifted" } } },
    { "name": "middle", "form": { "plain": { "length": "120 mm" } } },
    { "name": "bend", "form": { "peak": { "section": { "square": "12 mm" } } }, "bend": { "corner": { "angle": "90 deg", "inside_radius": "4 mm", "side": "0 deg" } } },
    { "name": "arm", "form": { "plain": { "length": "350 mm" } } } ] } ] }"#;

fn read(json: &str) -> Plan {
    fh_core::file::read(json.as_bytes()).unwrap()
}

fn steps(plan: &Plan) -> Vec<WorkedStep> {
    work_out(plan, &balance(plan), &Shop::default()).steps
}

fn cards(plan: &Plan, paper: Paper, orientation: Orientation) -> Drawing {
    document(plan, &balance(plan), &[Sheet::Steps], paper, orientation)
}

fn upright(plan: &Plan) -> Drawing {
    cards(plan, Paper::A4, Orientation::Portrait)
}

/// What stands on the card with a title, as the items from its title to the next card.
fn card<'a>(drawing: &'a Drawing, title: &str) -> &'a [Item] {
    let is_title = |item: &Item| matches!(item, Item::Text(text) if text.content() == title);
    let is_done = |item: &Item| matches!(item, Item::Text(text) if text.content() == "done");
    let page: &Page = drawing.pages.iter().find(|page| page.items.iter().any(is_title)).expect("the card");
    let start = page.items.iter().position(is_title).unwrap();
    let items = &page.items[start..];
    let mut ends = items.iter().enumerate().filter(|(_, item)| is_done(item)).map(|(at, _)| at);
    &items[..ends.nth(1).unwrap_or(items.len())]
}

fn said(items: &[Item]) -> Vec<&str> {
    items.iter().filter_map(|item| if let Item::Text(text) = item { Some(text.content()) } else { None }).collect()
}

/// A bar of so many parts, each drawn to another size.
fn many_parts(count: usize) -> Plan {
    let part = |number: usize| {
        let side = 8 + number % 3;
        format!(
            r#"{{ "name": "part {number}", "form": {{ "drawn": {{ "length": "12 mm", "section": {{ "square": "{side} mm" }} }} }} }}"#
        )
    };
    let parts: Vec<String> = (1..=count).map(part).collect();
    let bar = HANGER.split("\"segments\"").next().unwrap();
    read(&format!("{bar}\"segments\": [ {} ] }} ] }}", parts.join(", ")))
}

fn marking(plan: &Plan) -> WorkedStep {
    steps(plan).into_iter().find(|step| !step.marks.is_empty()).expect("a step that lays off marks")
}

#[test]
fn the_marks_are_told_with_what_ends_and_what_begins() {
    let plan = read(HANGER);
    let step = marking(&plan);
    let drawing = upright(&plan);
    let said = said(card(&drawing, &step.title));
    assert_eq!(step.marks.len(), 5);
    for mark in &step.marks {
        let begins = mark.begins.as_deref().unwrap_or("cut here");
        let names = format!("{} | {begins}", mark.ends);
        assert!(said.contains(&names.as_str()), "{names} in {said:?}");
        assert!(said.contains(&mark.at.as_str()), "{} in {said:?}", mark.at);
        // Once over its line, once in the table.
        assert!(said.iter().filter(|said| **said == mark.number).count() >= 2, "{said:?}");
    }
}

#[test]
fn a_number_leads_to_the_line_of_its_mark() {
    let plan = read(HANGER);
    let step = marking(&plan);
    let drawing = upright(&plan);
    let lines = |wanted: Pen| {
        let ends = card(&drawing, &step.title).iter().filter_map(move |item| match item {
            Item::Line { from, to, pen } if *pen == wanted && from.y < to.y - 1.0 || to.y < from.y - 1.0 => {
                (*pen == wanted).then_some((*from, *to))
            }
            _ => None,
        });
        ends.collect::<Vec<_>>()
    };
    let (leaders, marks) = (lines(Pen::Leader), lines(Pen::CutLine));
    assert_eq!(leaders.len(), step.marks.len());
    assert_eq!(marks.len(), step.marks.len());
    for ((_, to), (mark, _)) in leaders.iter().zip(&marks) {
        assert!((to.x - mark.x).abs() < 1e-6, "{leaders:?} and {marks:?}");
    }
}

#[test]
fn very_many_marks_still_fit_a_page() {
    for (paper, orientation) in [(Paper::A4, Orientation::Portrait), (Paper::Letter, Orientation::Landscape)] {
        let plan = many_parts(83);
        let drawing = cards(&plan, paper, orientation);
        let title = marking(&plan).title;
        let card = card(&drawing, &title);
        assert!(said(card).contains(&"and 23 more: see the mark sheet."), "{:?}", said(card));
        let area = paper.printable(orientation);
        for page in &drawing.pages {
            assert!(texts(page).iter().all(|text| extent(text).bottom <= area.bottom + 0.5));
        }
    }
}

#[test]
fn a_slit_is_drawn_as_long_as_it_is_and_a_hole_is_shown() {
    let plan = read(HANGER);
    let drawing = upright(&plan);
    let steps = steps(&plan);
    let slit = steps.iter().find(|step| !step.slits_mm.is_empty()).expect("a slit");
    let is_slit = |item: &&Item| matches!(item, Item::Line { pen: Pen::DatumLine, .. });
    let lines: Vec<&Item> = card(&drawing, &slit.title).iter().filter(is_slit).collect();
    let [Item::Line { from, to, .. }] = lines[..] else { panic!("{lines:?}") };
    assert!(to.x - from.x > 1.0 && (to.y - from.y).abs() < 1e-9, "{lines:?}");
    assert!(said(card(&drawing, &slit.title)).contains(&"above"));

    let drifted = steps.iter().find(|step| step.tasks.iter().any(|task| task.operation == Operation::Drift)).unwrap();
    let on_card = card(&drawing, &drifted.title);
    assert_eq!(on_card.iter().filter(is_slit).count(), 0);
    let is_hole =
        |item: &&Item| matches!(item, Item::Polygon { points, pen: Some(Pen::MarkLine), .. } if points.len() > 20);
    assert!(on_card.iter().any(|item| is_hole(&item)), "no hole");
}

#[test]
fn a_corner_in_a_long_bar_is_shown_larger_with_its_angle() {
    let plan = read(HANGER);
    let drawing = upright(&plan);
    let steps = steps(&plan);
    let corner = steps.iter().find(|step| step.tasks.iter().any(|task| task.operation == Operation::Corner)).unwrap();
    let said = said(card(&drawing, &corner.title));
    for words in ["detail", "1 : 2", "90°", "radius 4 mm"] {
        assert!(said.contains(&words), "{words} in {said:?}");
    }
}

#[test]
fn what_is_not_a_right_angle_says_that_it_turns_so_far() {
    let plan = read(&HANGER.replace("90 deg", "60 deg"));
    assert!(words(&upright(&plan)).contains("turns 60°\n"));
}

#[test]
fn what_is_waxed_is_warm() {
    let plan = read(HANGER);
    let said = words(&upright(&plan));
    let title = steps(&plan).pop().unwrap().title;
    let lines: Vec<&str> = said.lines().collect();
    let at = lines.iter().position(|line| *line == title).expect("the last card");
    assert_eq!(lines[at - 1], "warm", "{said}");
    assert_eq!(lines.iter().filter(|line| **line == "warm").count(), 1);
}

#[test]
fn what_is_heated_along_is_said() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-plans");
    for path in std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        if !path.to_string_lossy().ends_with(".plan.json") {
            continue;
        }
        let plan = fh_core::file::read(&std::fs::read(&path).unwrap()).unwrap();
        let said = words(&upright(&plan)).replace('\n', " ").replace('⁄', "/");
        for words in steps(&plan).iter().filter_map(|step| step.heat_with.as_ref()) {
            assert!(said.contains(&format!("heat {words}")), "{words} in {said}");
        }
    }
}

#[test]
fn no_reason_is_cut_off() {
    for count in [3, 12] {
        let plan = many_parts(count);
        for (paper, orientation) in [(Paper::A4, Orientation::Portrait), (Paper::Letter, Orientation::Landscape)] {
            assert!(!words(&cards(&plan, paper, orientation)).contains('…'));
        }
    }
}

#[test]
fn no_sentence_of_how_it_is_laid_or_checked_stands_twice_in_a_set() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-plans");
    let close = |words: &str| fh_print::typeset::printable(words).split_whitespace().collect::<String>();
    let mut seen = 0;
    for file in std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()) {
        if !file.to_string_lossy().ends_with(".plan.json") {
            continue;
        }
        let plan = fh_core::file::read(&std::fs::read(&file).unwrap()).unwrap();
        let all = close(&words(&upright(&plan)));
        let said = steps(&plan).into_iter().flat_map(|step| [step.lay, step.leave, step.check]).flatten();
        let said = said.flat_map(|text| text.split_inclusive(". ").map(close).collect::<Vec<_>>());
        let said: std::collections::BTreeSet<String> = said.filter(|sentence| sentence.len() >= 30).collect();
        // What is part of a longer one is found there too.
        let is_part =
            |sentence: &&String| said.iter().any(|other| other != *sentence && other.contains(sentence.as_str()));
        for sentence in said.iter().filter(|sentence| !is_part(sentence)) {
            let times = all.matches(sentence.as_str()).count();
            assert!(times <= 1, "{}: {times} times {sentence}", file.display());
            seen += times;
        }
    }
    assert!(seen > 100, "{seen}");
}
