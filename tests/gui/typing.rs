//! What is typed into fields: taken, refused, taken back.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers, Rect, vec2};
use egui_kittest::kittest::Queryable;

fn length(desk: &Desk, segment: usize) -> String {
    desk.plan().bars[0].segments[segment].form.length().map(|length| length.text().to_owned()).unwrap_or_default()
}

fn at_the_shank() -> Desk {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
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
    desk.press("Part 1: point");
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
    assert!(desk.shows("follows"), "the field says so within itself");
}

#[test]
fn units_are_changed_and_sizes_stay_as_typed() {
    let mut desk = at_the_shank();
    desk.press("Inches");
    assert_eq!(length(&desk, 1), "120 mm");
    desk.type_in("Length", "5");
    assert_eq!(length(&desk, 1), "5 in");
}

/// The small plan with a shank of 3 in.
fn at_a_shank_of_3_in() -> Desk {
    let mut plan = small_plan();
    plan.units = fh_core::plan::Units::inches();
    let text = serde_json::to_string(&plan).unwrap().replace("120 mm", "3 in");
    let mut desk = Desk::with_plan(fh_core::file::read(text.as_bytes()).unwrap());
    desk.press("Part 2: shank");
    desk
}

/// Every way to get into the field of the shank's length.
type Way = (&'static str, fn(&mut Desk));
const WAYS: [Way; 6] = [
    ("a click at the left edge", |desk| desk.click_at(desk.field("Length").left_center() + vec2(8.0, 0.0))),
    ("a click at the right edge", |desk| desk.click_at(desk.field("Length").right_center() - vec2(8.0, 0.0))),
    ("a double-click", |desk| desk.double_click_at(desk.field("Length").left_center() + vec2(12.0, 0.0))),
    ("Tab", |desk| {
        desk.click_at(desk.field("Name").center());
        desk.keys(Modifiers::NONE, Key::Tab);
        for _ in 0..4 {
            if !desk.has_keyboard("Length") {
                desk.keys(Modifiers::NONE, Key::Tab);
            }
        }
    }),
    ("F2", |desk| desk.keys(Modifiers::NONE, Key::F2)),
    ("a double-click on the part in the drawing", |desk| desk.double_click_at(desk.place_of("Part shank"))),
];

#[test]
fn what_is_typed_takes_the_place_of_what_was_there_however_the_field_was_reached() {
    for (name, reach) in WAYS {
        let mut desk = at_a_shank_of_3_in();
        reach(&mut desk);
        assert!(desk.has_keyboard("Length"), "{name}");
        desk.letters("3 1/2");
        assert_eq!(desk.text_of("Length"), "3 1/2", "{name}");
        desk.keys(Modifiers::NONE, Key::Enter);
        assert_eq!(length(&desk, 1), "3 1/2 in", "{name}");
    }
}

#[test]
fn a_second_click_places_the_caret() {
    let mut desk = at_a_shank_of_3_in();
    let left = desk.field("Length").left_center() + vec2(2.0, 0.0);
    desk.click_at(left);
    desk.harness.run_steps(8);
    desk.click_at(left);
    desk.letters("1");
    assert_eq!(desk.text_of("Length"), "13 in");
}

#[test]
fn a_refused_entry_keeps_the_keyboard_and_the_next_one_takes_its_place() {
    let mut desk = at_a_shank_of_3_in();
    desk.keys(Modifiers::NONE, Key::F2);
    desk.letters("3 5/");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert!(desk.shows("“3 5/”") && desk.has_keyboard("Length"));
    desk.letters("4");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(length(&desk, 1), "4 in");
}

#[test]
fn the_keyboard_is_not_kept_for_a_size_that_is_not_there() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.choose("Form", "Split");
    desk.keys(Modifiers::NONE, Key::F2);
    desk.press("Part 1: point");
    assert!(!desk.has_keyboard("Length"));
}

#[test]
fn a_fraction_that_no_rule_has_is_taken_and_doubted_and_nothing_moves() {
    let mut desk = at_a_shank_of_3_in();
    let below = desk.list("Bend");
    desk.type_in("Length", "3 1/23");
    assert_eq!(length(&desk, 1), "3 1/23 in");
    assert!(desk.shows("No rule shows 1/23"));
    assert!(stays(below, desk.list("Bend")));
    assert!(desk.editor().balance().findings.iter().any(|finding| finding.id == "odd-fraction"));
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(length(&desk, 1), "3 in");
    assert!(!desk.shows("No rule shows"));
    for quiet in ["3 1/2", "3 5/64", "3 1/10", "77 mm"] {
        desk.type_in("Length", quiet);
        assert!(!desk.shows("Did you mean this?"), "{quiet}");
    }
}

#[test]
fn a_size_ten_times_as_large_or_as_small_is_taken_and_doubted() {
    let mut desk = at_a_shank_of_3_in();
    desk.type_in("Length", "33 1/2");
    assert_eq!(length(&desk, 1), "33 1/2 in");
    assert!(desk.shows("11 times larger than before (3\u{a0}in)"));
    desk.type_in("Length", "3 1/2");
    assert!(!desk.shows("Did you mean this?"), "less than ten times smaller");
    desk.type_in("Length", "1/4");
    assert!(desk.shows("14 times smaller than before (3\u{a0}1/2\u{a0}in)"));
    desk.press("Both views");
    assert!(!desk.shows("Did you mean this?"), "gone when something else is done");
    desk.type_in("Length", "4");
    assert!(desk.shows("16 times larger"));
    desk.type_in("Name", "stem");
    assert!(!desk.shows("Did you mean this?"), "gone with the next entry");
}

#[test]
fn nothing_that_is_said_moves_what_is_below() {
    let mut desk = at_the_shank();
    desk.choose("Bend", "curve");
    let places = |desk: &Desk| [desk.list("Bend"), desk.list("Size that follows"), desk.field("Inside radius")];
    let before = places(&desk);
    desk.type_in("Length", "3 5/");
    assert!(desk.shows("“3 5/”"));
    let stay = |desk: &Desk| places(desk).into_iter().zip(before).all(|(now, before)| stays(before, now));
    assert!(stay(&desk), "{:?}", places(&desk));
    desk.type_in("Length", "120");
    desk.choose("Size that follows", "the angle");
    assert!(stay(&desk), "{:?}", places(&desk));
    desk.choose("Size that follows", "the length");
    assert!(stay(&desk), "{:?}", places(&desk));
}

/// Whether something is where it was: a list under the pointer is a hair larger than at rest.
fn stays(before: Rect, now: Rect) -> bool {
    (before.top() - now.top()).abs() < 3.0 && (before.left() - now.left()).abs() < 3.0
}

/// What marks are rounded to.
fn marks(desk: &Desk) -> String {
    desk.plan().units.marks.text()
}

#[test]
fn marks_come_back_to_their_step_with_their_unit() {
    let mut desk = at_a_shank_of_3_in();
    desk.press("Plan: Bean hook");
    desk.choose("Rounding of the marks", "1/32 in");
    desk.press("Millimetres");
    assert_eq!(marks(&desk), "0.5 mm", "about as fine");
    desk.choose("Rounding of the marks", "0.1 mm");
    desk.choose("Unit of lengths", "inches");
    assert_eq!(marks(&desk), "1/32 in");
    desk.choose("Unit of lengths", "millimetres");
    assert_eq!(marks(&desk), "0.1 mm");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(marks(&desk), "1/32 in");
}

#[test]
fn marks_come_back_to_their_step_when_the_plan_went_through_a_file() {
    for (inches, millimeters) in [("1/8 in", "2 mm"), ("1/16 in", "1 mm"), ("1/32 in", "0.5 mm"), ("1/64 in", "0.1 mm")]
    {
        let mut plan = small_plan();
        plan.units = fh_core::plan::Units::inches();
        plan.units.marks = fh_measure::Rounding::parse(inches).unwrap();
        let mut desk = Desk::with_plan(plan);
        desk.press("Millimetres");
        assert_eq!(marks(&desk), millimeters);
        let text = fh_core::file::write(desk.plan());
        let mut desk = Desk::with_plan(fh_core::file::read(text.as_bytes()).unwrap());
        desk.press("Inches");
        assert_eq!(marks(&desk), inches);
    }
}

#[test]
fn what_is_typed_at_a_mark_is_doubted_as_well() {
    let mut desk = at_a_shank_of_3_in();
    let is_mark = |node: &egui_kittest::kittest::AccessKitNode<'_>| {
        node.label().is_some_and(|label| label.starts_with("Marks on the bar"))
    };
    desk.harness.get_by(is_mark).focus();
    desk.harness.run();
    desk.keys(Modifiers::NONE, Key::Enter);
    desk.letters("3 1/23");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert!(desk.shows("No rule shows 1/23"));
}

#[test]
fn a_doubt_in_a_dialog_promises_no_undo() {
    let mut desk = Desk::empty();
    desk.type_in("Side of bar", "1/23");
    assert!(desk.shows("No rule shows 1/23. It is taken as typed.") && !desk.shows("Undo takes it back"));
}
