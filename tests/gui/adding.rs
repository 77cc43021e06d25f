//! Parts are found by letters, and ready-made wholes are put in.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use fh_core::findings::Severity;
use fh_core::new_segment::Whole;
use fh_core::plan::{Bend, Form};

fn names(desk: &Desk) -> String {
    desk.plan().bars[0].segments.iter().map(|segment| segment.name.clone()).collect::<Vec<_>>().join(", ")
}

fn at_the_shank() -> Desk {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk
}

#[test]
fn a_part_is_added_by_letters_and_takes_its_length_at_once() {
    let mut desk = at_the_shank();
    desk.keys(Modifiers::COMMAND, Key::Enter);
    assert!(desk.has_keyboard("Find a part"));
    desk.letters("dra");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(names(&desk), "point, shank, drawn, rest");
    desk.letters("70");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(desk.plan().bars[0].segments[2].form.length().map(|length| length.text()), Some("70 mm"));
}

#[test]
fn a_curl_is_added_as_a_whole() {
    let mut desk = at_the_shank();
    desk.keys(Modifiers::COMMAND, Key::Enter);
    desk.letters("cur");
    desk.keys(Modifiers::NONE, Key::Enter);
    let curl = &desk.plan().bars[0].segments[2];
    assert_eq!(curl.name, "curl");
    assert!(matches!((&curl.form, &curl.bend), (Form::Taper(_), Some(Bend::Scroll { .. }))));
    assert!(desk.has_keyboard("Length"));
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(names(&desk), "point, shank, rest");
}

#[test]
fn a_screw_plate_comes_with_its_two_holes_as_one_step() {
    let mut desk = at_the_shank();
    desk.press("Add part after");
    desk.press("Screw plate");
    assert_eq!(names(&desk), "point, shank, screw plate, screw plate end, rest");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(names(&desk), "point, shank, rest");
}

#[test]
fn an_eye_takes_its_inside_diameter_at_once_and_runs_into_nothing() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.keys(Modifiers::NONE, Key::Delete);
    desk.press("Part 2: rest");
    desk.keys(Modifiers::COMMAND, Key::Enter);
    desk.letters("eye");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(names(&desk), "point, rest, eye neck, eye");
    assert!(desk.has_keyboard("Inside diameter"));
    desk.letters("20");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert!(desk.plan().bars[0].segments[3].bend.is_some() && !desk.shows("runs"));
}

#[test]
fn arrows_choose_among_what_is_offered_and_nothing_is_added_without_a_choice() {
    let mut desk = at_the_shank();
    desk.keys(Modifiers::COMMAND, Key::Enter);
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(names(&desk), "point, shank, rest");
    desk.keys(Modifiers::NONE, Key::ArrowDown);
    desk.keys(Modifiers::NONE, Key::ArrowRight);
    desk.keys(Modifiers::NONE, Key::Enter);
    // Curl, hook.
    assert_eq!(names(&desk), "point, shank, hook, rest");
}

#[test]
fn letters_that_find_nothing_say_so() {
    let mut desk = at_the_shank();
    desk.keys(Modifiers::COMMAND, Key::Enter);
    desk.letters("zzz");
    assert!(desk.shows("No match."));
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(names(&desk), "point, shank, rest");
}

/// What is warned of in a plan: its own findings, and what the fire takes beyond what the marks allow.
fn warned(desk: &Desk) -> Vec<String> {
    let (plan, balance) = (desk.plan(), desk.editor().balance());
    let worked = fh_work::work_out(plan, balance, &fh_work::Shop::default());
    let all = balance.findings.iter().chain(&worked.scale_short);
    all.filter(|found| found.severity > Severity::Note).map(|found| found.message.clone()).collect()
}

#[test]
fn no_whole_that_is_offered_is_warned_of_whatever_the_fire_takes_of_it() {
    let mut with_own = 0;
    for stock in [r#"{ "square": "3/8 in" }"#, r#"{ "flat": { "width": "1 in", "thickness": "1/4 in" } }"#] {
        let text = format!(
            r#"{{ "firstheat": 1, "scale": "2 %", "units": {{ "length": "in", "marks": "1/16 in" }}, "bars": [{{
            "name": "fork", "stock": {stock}, "segments": [
            {{ "name": "shank", "form": {{ "plain": {{ "length": "12 in" }} }} }} ] }}] }}"#
        );
        for whole in Whole::ALL {
            let mut desk = Desk::with_plan(fh_core::file::read(text.as_bytes()).unwrap());
            desk.press("Part 1: shank");
            desk.keys(Modifiers::COMMAND, Key::Enter);
            desk.letters(whole.name());
            desk.keys(Modifiers::NONE, Key::Enter);
            assert!(desk.plan().bars[0].segments.len() > 1, "{whole:?} was added");
            assert_eq!(warned(&desk), Vec::<String>::new(), "{whole:?} on {stock}");
            with_own += desk.plan().bars[0].flat().iter().filter(|flat| flat.segment.scale.is_some()).count();
        }
    }
    assert!(with_own > 0, "some of them lose more than the plan allows");
}

#[test]
fn what_is_added_after_a_whole_goes_after_all_of_it() {
    let mut desk = at_the_shank();
    desk.press("Part 1: point");
    desk.press("Add part before");
    desk.press("Eye");
    assert_eq!(names(&desk), "eye, eye neck, point, shank, rest");
    desk.letters("30");
    desk.keys(Modifiers::NONE, Key::Enter);
    desk.keys(Modifiers::COMMAND, Key::Enter);
    desk.letters("twist");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(names(&desk), "eye, eye neck, twist, point, shank, rest");
    // Chosen by hand, a part of it is a part like others.
    desk.press("Part 1: eye");
    desk.keys(Modifiers::COMMAND, Key::Enter);
    desk.letters("plain");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(names(&desk), "eye, plain, eye neck, twist, point, shank, rest");
}
