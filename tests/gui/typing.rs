//! What is typed into fields: taken, refused, taken back.

use crate::desk::{Desk, small_plan};
use egui::{Key, Modifiers};

fn length(desk: &Desk, segment: usize) -> String {
    desk.plan().bars[0].segments[segment].form.length().map(|length| length.text().to_owned()).unwrap_or_default()
}

fn at_the_shank() -> Desk {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Segment 2: shank");
    desk
}

#[test]
fn a_length_is_taken_in_any_unit_and_kept_as_typed() {
    let mut desk = at_the_shank();
    for (typed, kept) in [("3 5/8\"", "3 5/8\""), ("82,5", "82,5 mm"), ("1' 2 3/8\"", "1' 2 3/8\""), ("¼ in", "¼ in")]
    {
        desk.type_in("Length", typed);
        assert_eq!(length(&desk, 1), kept);
    }
}

#[test]
fn a_bad_entry_keeps_its_text_says_why_and_changes_nothing() {
    let mut desk = at_the_shank();
    desk.type_in("Length", "3 5/");
    assert_eq!(length(&desk, 1), "120 mm");
    assert_eq!(desk.text_of("Length"), "3 5/");
    assert!(desk.shows("“3 5/”"), "the field says why");
    desk.type_in("Length", "130");
    assert_eq!(length(&desk, 1), "130 mm");
    assert!(!desk.shows("“3 5/”"));
}

#[test]
fn escape_takes_back_what_was_typed() {
    let mut desk = at_the_shank();
    desk.type_only("Length", "999");
    desk.keys(Modifiers::NONE, Key::Escape);
    assert_eq!(length(&desk, 1), "120 mm");
    assert_eq!(desk.text_of("Length"), "120 mm");
}

#[test]
fn what_was_typed_is_taken_before_another_segment_is_selected() {
    let mut desk = at_the_shank();
    desk.type_only("Length", "140");
    desk.press("Segment 1: point");
    assert_eq!(length(&desk, 1), "140 mm");
    assert_eq!(length(&desk, 0), "60 mm");
    assert_eq!(desk.editor().selected(), Some(0));
}

#[test]
fn one_entry_is_one_step_of_undo() {
    let mut desk = at_the_shank();
    desk.type_in("Length", "130");
    desk.type_in("Length", "140");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(length(&desk, 1), "130 mm");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(length(&desk, 1), "120 mm");
    desk.keys(Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    desk.press("Redo");
    assert_eq!(length(&desk, 1), "140 mm");
}

#[test]
fn arrows_step_a_size_by_the_rounding_of_the_marks() {
    let mut desk = at_the_shank();
    desk.harness.run();
    desk.type_only("Length", "120 mm");
    desk.keys(Modifiers::NONE, Key::ArrowUp);
    assert_eq!(length(&desk, 1), "121 mm");
    desk.keys(Modifiers::NONE, Key::ArrowDown);
    desk.keys(Modifiers::NONE, Key::ArrowDown);
    assert_eq!(length(&desk, 1), "119 mm");
}

#[test]
fn a_size_that_follows_is_shown_as_such() {
    let mut desk = at_the_shank();
    desk.choose("Bend", "curve");
    assert_eq!(desk.text_of("Angle of the curve"), "90 deg");
    assert_eq!(desk.text_of("Inside radius"), "", "the radius follows from length and angle");
    assert!(desk.shows("follows"));
}

#[test]
fn units_are_changed_and_sizes_stay_as_typed() {
    let mut desk = at_the_shank();
    desk.press("Inches");
    assert_eq!(length(&desk, 1), "120 mm");
    desk.type_in("Length", "5");
    assert_eq!(length(&desk, 1), "5 in");
}
