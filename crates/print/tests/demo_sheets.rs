//! The demos' sheets as a smith reads them: nothing cut off, no page for a line or two, no line through words or through another.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use crate::reading::{extent, texts, words};
use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_print::drawing::{Drawing, Item, Page, Point};
use fh_print::paper::{Area, Paper};
use fh_print::pen::Pen;
use fh_print::sheets::{Sheet, document, usual_orientation};

/// Every demo plan with its name.
fn demos() -> Vec<(String, Plan)> {
    let folder = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-plans")).unwrap();
    let paths =
        folder.map(|entry| entry.unwrap().path()).filter(|path| path.extension().is_some_and(|it| it == "json"));
    let read = |path: std::path::PathBuf| {
        let plan = fh_core::file::read(&std::fs::read(&path).unwrap()).expect("a plan");
        (path.file_stem().unwrap().to_string_lossy().into_owned(), plan)
    };
    paths.map(read).collect()
}

/// A kind of sheet of every demo on every paper, named.
fn printed(sheet: Sheet) -> Vec<(String, Plan, Drawing)> {
    let on = |(name, plan): &(String, Plan), paper: Paper| {
        let drawing = document(plan, &balance(plan), &[sheet], paper, usual_orientation(&[sheet]));
        (format!("{name}, {} on {}", sheet.name(), paper.name()), plan.clone(), drawing)
    };
    let demos = demos();
    assert!(demos.len() > 10);
    demos.iter().flat_map(|demo| Paper::ALL.map(|paper| on(demo, paper))).collect()
}

#[test]
fn no_words_on_mark_sheets_templates_and_ladders_are_cut_off() {
    for sheet in [Sheet::Marks, Sheet::Templates, Sheet::Ladder] {
        for (name, _, drawing) in printed(sheet) {
            for text in drawing.pages.iter().flat_map(texts) {
                assert!(!text.content().ends_with('…'), "{name}: {}", text.content());
            }
        }
    }
}

#[test]
fn no_page_of_a_mark_sheet_has_the_notes_alone() {
    for (name, _, drawing) in printed(Sheet::Marks) {
        for page in &drawing.pages {
            let own = texts(page);
            let has_notes = own.iter().any(|text| text.content().starts_with("Notes"));
            let is_marks = |words: &str| words == "mark" || words.starts_with("row ") || words.contains("datum");
            let has_marks = own.iter().any(|text| is_marks(text.content()));
            assert!(!has_notes || has_marks, "{name}");
        }
    }
}

#[test]
fn a_bar_without_a_ladder_has_no_page_for_saying_so() {
    let mut left_out = 0;
    for (name, _, drawing) in printed(Sheet::Ladder) {
        left_out += usize::from(words(&drawing).contains("Nothing is drawn or tapered on"));
        for page in &drawing.pages {
            let has_figures = texts(page).iter().any(|text| text.content() == "length, cold");
            assert!(has_figures || drawing.pages.len() == 1, "{name}");
        }
    }
    assert!(left_out > 0);
}

/// The straight pieces of the lines drawn with some pens.
fn pieces(page: &Page, pens: &[Pen]) -> Vec<[Point; 2]> {
    let of = |item: &Item| match item {
        Item::Line { from, to, pen } if pens.contains(pen) => vec![[*from, *to]],
        Item::Polyline { points, pen } if pens.contains(pen) => {
            points.windows(2).map(|pair| [pair[0], pair[1]]).collect()
        }
        _ => Vec::new(),
    };
    page.items.iter().flat_map(of).collect()
}

/// Whether two pieces run through each other, and do not only meet at an end.
fn cross([a, b]: [Point; 2], [c, d]: [Point; 2]) -> bool {
    let side = |from: Point, to: Point, at: Point| {
        let across = (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);
        if across.abs() < 1e-6 {
            0
        } else if across > 0.0 {
            1
        } else {
            -1
        }
    };
    side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0
}

/// Whether a piece runs through a space.
fn runs_through([from, to]: [Point; 2], area: Area) -> bool {
    (0..=200).any(|step| {
        let share = f64::from(step) / 200.0;
        let (x, y) = (from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
        x > area.left && x < area.right && y > area.top && y < area.bottom
    })
}

#[test]
fn the_leaders_of_a_ladder_run_through_no_other_and_through_no_words() {
    let mut leaders = 0;
    for (name, _, drawing) in printed(Sheet::Ladder) {
        for page in &drawing.pages {
            let own = pieces(page, &[Pen::Leader]);
            let all = pieces(page, &[Pen::Leader, Pen::MarkLine, Pen::CutLine]);
            leaders += own.len();
            for piece in &own {
                assert!(!all.iter().any(|other| cross(*piece, *other)), "{name}: {piece:?}");
                let words = texts(page).into_iter().find(|text| runs_through(*piece, extent(text)));
                assert!(words.is_none(), "{name}: {piece:?} through {words:?}");
            }
        }
    }
    assert!(leaders > 100, "{leaders}");
}

#[test]
fn every_part_that_a_template_lists_has_its_number_in_the_drawing() {
    let mut looked_at = 0;
    for (name, _, drawing) in printed(Sheet::Templates) {
        // A number in its box is white; in the list it stands once, and in the drawing once more.
        let numbers: Vec<&str> = drawing
            .pages
            .iter()
            .flat_map(texts)
            .filter(|text| text.gray == fh_print::pen::Gray::WHITE)
            .map(|text| text.content())
            .collect();
        for number in &numbers {
            let times = numbers.iter().filter(|other| other == &number).count();
            assert!(times.is_multiple_of(2), "{name}: {number} stands {times} times");
            looked_at += 1;
        }
    }
    assert!(looked_at > 50, "{looked_at}");
}

#[test]
fn no_dimension_on_a_template_runs_through_words() {
    let mut dimensions = 0;
    for (name, _, drawing) in printed(Sheet::Templates) {
        for page in &drawing.pages {
            for piece in pieces(page, &[Pen::Dimension]) {
                dimensions += 1;
                let words = texts(page).into_iter().find(|text| runs_through(piece, extent(text)));
                assert!(words.is_none(), "{name}: {piece:?} through {words:?}");
            }
        }
    }
    assert!(dimensions > 20, "{dimensions}");
}
