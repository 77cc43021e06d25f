//! Marks first: they are set on an empty bar, fixed and loosened, and an open block becomes what is in it.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use fh_core::plan::{Form, Plan};

/// A bar of 12 mm square with nothing on it.
fn bare_bar() -> Plan {
    let mut plan = small_plan();
    plan.bars[0].segments.clear();
    plan
}

fn marks(desk: &Desk) -> Vec<Option<String>> {
    let text = |segment: &fh_core::plan::Segment| segment.ends_at.as_ref().map(|mark| mark.text().to_owned());
    desk.plan().bars[0].segments.iter().map(text).collect()
}

fn mark_mm(desk: &Desk, segment: usize) -> f64 {
    desk.editor().balance().bars[0].segments[segment].end_on_bar().value * 1000.0
}

#[test]
fn marks_typed_in_a_row_cut_an_empty_bar_into_open_blocks() {
    let mut desk = Desk::with_plan(bare_bar());
    desk.type_only("Marks in a row", "50, 110, 155");
    desk.press("Set the marks");
    assert_eq!(marks(&desk), [Some("50 mm".into()), Some("110 mm".into()), Some("155 mm".into())]);
    assert!(desk.plan().bars[0].segments.iter().all(|segment| matches!(segment.form, Form::Open(_))));
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert!(desk.plan().bars[0].segments.is_empty());
}

#[test]
fn a_mark_is_clicked_on_an_empty_bar_and_comes_into_the_row_where_it_belongs() {
    let mut desk = Desk::with_plan(bare_bar());
    desk.type_only("Marks in a row", "20, 290");
    // The bar is drawn 319 mm long, so that the last mark has room: its middle is at 159.5 mm, and marks are whole mm.
    desk.click_at(desk.place_of("Set a mark on the empty bar"));
    desk.press("Set the marks");
    let texts: Vec<String> = marks(&desk).into_iter().flatten().collect();
    assert_eq!((texts.len(), texts[0].as_str(), texts[2].as_str()), (3, "20 mm", "290 mm"));
    assert!((mark_mm(&desk, 1) - 159.5).abs() <= 1.0, "{}", texts[1]);
}

#[test]
fn what_is_no_row_of_marks_is_refused_and_stays_in_the_field() {
    let mut desk = Desk::with_plan(bare_bar());
    desk.type_only("Marks in a row", "50, 40");
    desk.press("Set the marks");
    assert!(desk.plan().bars[0].segments.is_empty());
    assert!(desk.shows("fixed marks rise along the bar"));
    desk.type_only("Marks in a row", "40, 50");
    desk.press("Set the marks");
    assert_eq!(desk.plan().bars[0].segments.len(), 2);
}

/// 12 mm square drawn to 10 mm round takes 78.54 / 144 = 0.5454 mm of bar for each mm; 50 mm of bar make 91.67 mm of it.
#[test]
fn an_open_block_becomes_what_is_clicked() {
    let mut desk = Desk::with_plan(bare_bar());
    desk.type_only("Marks in a row", "50, 110");
    desk.press("Set the marks");
    desk.press("Part 1: block 1");
    desk.press("10 mm round 91.7 mm long");
    let segment = &desk.plan().bars[0].segments[0];
    assert!(matches!(segment.form, Form::Drawn(_)), "{:?}", segment.form);
    assert_eq!(segment.ends_at.as_ref().map(|mark| mark.text()), Some("50 mm"));
    let length = desk.editor().balance().bars[0].segments[0].forged_length.value * 1000.0;
    assert!((length - 50.0 * 144.0 / 78.539_816).abs() < 0.01, "{length}");
}

#[test]
fn a_mark_is_fixed_dragged_and_loosened() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.keys(Modifiers::COMMAND, Key::K);
    assert_eq!(marks(&desk), [None, Some("140 mm".into()), None]);
    assert!(desk.shows("fixed at 140 mm"));
    desk.drag("Mark 2, fixed: end of shank", 60.0);
    let moved = mark_mm(&desk, 1);
    assert!(moved > 145.0, "{moved}");
    assert_eq!(marks(&desk)[1].as_deref(), Some(format!("{moved:.0} mm").as_str()));
    desk.keys(Modifiers::COMMAND | Modifiers::SHIFT, Key::K);
    assert_eq!(marks(&desk), [None, None, None]);
    assert!((mark_mm(&desk, 1) - moved).abs() < 0.01, "the parts keep what they had");
}

#[test]
fn a_mark_is_fixed_where_it_is_typed_and_loosened_by_an_empty_field() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.type_in("Mark fixed at", "150");
    assert_eq!(marks(&desk)[1].as_deref(), Some("150 mm"));
    desk.type_in("Mark fixed at", "152");
    assert_eq!(marks(&desk)[1].as_deref(), Some("152 mm"));
    desk.type_only("Mark fixed at", "");
    desk.keys(Modifiers::NONE, Key::Backspace);
    desk.keys(Modifiers::NONE, Key::Tab);
    assert_eq!(marks(&desk), [None, None, None]);
}
