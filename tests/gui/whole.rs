//! The whole piece changed in one step, and the plan beside another one.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use fh_app::Editor;
use fh_core::plan::{Bend, Form};

const CTRL: Modifiers = Modifiers::COMMAND;
const NONE: Modifiers = Modifiers::NONE;

/// Runs a command by its words.
fn run(desk: &mut Desk, words: &str) {
    desk.keys(CTRL, Key::F);
    desk.type_only("Words to find", words);
    desk.keys(NONE, Key::Enter);
}

fn turns(desk: &Desk) -> Option<f64> {
    match desk.plan().bars[0].segments[1].bend {
        Some(Bend::Twist { turns, .. }) => Some(turns),
        _ => None,
    }
}

#[test]
fn the_other_hand_is_one_step_and_says_so() {
    let mut desk = Desk::with_plan(small_plan());
    run(&mut desk, "make the other hand");
    assert!(desk.shows("nothing has changed"), "a straight point has no hand");
    desk.press("Part 2: shank");
    desk.choose("Bend", "twist");
    let before = turns(&desk);
    run(&mut desk, "make the other hand");
    assert_eq!(turns(&desk), before.map(|turns| -turns));
    assert!(desk.shows("Now the other hand."));
    desk.keys(CTRL, Key::Z);
    assert_eq!(turns(&desk), before);
}

#[test]
fn another_bar_is_shown_first_and_keeps_the_sizes() {
    let mut desk = Desk::with_plan(small_plan());
    run(&mut desk, "make it from another bar");
    desk.type_in("In short: new bar", "16 mm square");
    assert!(desk.shows("16 mm square") && desk.shows("as it is"), "what it takes is shown");
    assert_eq!(desk.plan(), &small_plan(), "and nothing is done yet");
    desk.press("Make it from this");
    assert_eq!(desk.plan().bars[0].stock.describe(), "16 mm square");
    assert!(
        matches!(&desk.plan().bars[0].segments[1].form, Form::Drawn(drawn) if drawn.section.describe() == "12 mm square")
    );
    desk.keys(CTRL, Key::Z);
    assert_eq!(desk.plan(), &small_plan());
}

#[test]
fn the_piece_is_scaled_by_a_number_or_to_a_size() {
    let mut desk = Desk::with_plan(small_plan());
    run(&mut desk, "scale the piece");
    assert!(desk.has_keyboard("How many times as large?"));
    desk.type_only("How many times as large?", "nine");
    assert!(desk.shows("isn't a scale"));
    desk.type_only("How many times as large?", "1.5");
    desk.press("Scale");
    assert_eq!(desk.plan().bars[0].stock.describe(), "18 mm square");
    assert_eq!(desk.plan().bars[0].segments[1].form.length().unwrap().text(), "180 mm");
    desk.keys(CTRL, Key::Z);
    assert_eq!(desk.plan(), &small_plan());
    // The point and the shank are 180 mm long together; the hold is no part of the piece.
    run(&mut desk, "scale the piece");
    desk.harness.get_by_label_contains("by how wide it is: 180 mm").click();
    desk.harness.run();
    desk.type_only("How much is it to be?", "90");
    assert!(desk.shows("That is 0.5 times as large."));
    desk.press("Scale");
    assert_eq!(desk.plan().bars[0].segments[1].form.length().unwrap().text(), "60 mm");
}

#[test]
fn a_plan_is_held_against_itself_as_it_was_saved() {
    let mut desk = Desk::with(Vec::new(), |services, folder| {
        let path = folder.join("hook.plan.json");
        std::fs::write(&path, fh_core::file::write(&small_plan())).unwrap();
        Editor::with_file(services, &path)
    });
    run(&mut desk, "compare");
    assert!(!desk.shows("This plan as it was saved"), "it is as it was saved");
    desk.keys(NONE, Key::Escape);
    desk.press("Part 2: shank");
    desk.type_in("Length", "140 mm");
    run(&mut desk, "compare");
    desk.press("This plan as it was saved");
    assert!(desk.shows("+ 20 mm") && desk.shows("end of shank"));
    assert!(!desk.shows("point; taper"), "what is the same is left out");
    desk.harness.get_by_label("Only what differs").click();
    desk.harness.run();
    assert!(desk.shows("point; taper"));
    desk.press("Another plan…");
    desk.type_only("File", "/there/is/none.plan.json");
    desk.press("Compare");
    assert!(desk.shows("■"), "why it cannot be read is said beside the field");
    desk.press("Gate hook");
    assert!(desk.shows("Gate hook"));
}

/// A hook bent of a leg, and a plate with a hole for it.
fn two_bars() -> fh_core::plan::Plan {
    let text = r#"{ "firstheat": 1, "title": "two", "units": { "length": "mm", "marks": "1 mm" }, "bars": [
        { "name": "plate", "stock": { "flat": { "width": "30 mm", "thickness": "6 mm" } }, "segments": [
          { "name": "strap", "form": { "plain": { "length": "80 mm" } } },
          { "name": "hole", "form": { "hole": { "outline": { "rectangle": { "length": "30 mm", "width": "30 mm" } },
            "thickness": "6 mm", "hole": { "round": "10 mm" }, "made": "drilled" } } } ] },
        { "name": "leg", "stock": { "round": "12 mm" }, "segments": [
          { "name": "stem", "form": { "plain": { "length": "90 mm" } } },
          { "name": "pin", "form": { "tenon": { "section": { "round": "10 mm" }, "grip": "6 mm", "allowance": "12 mm" } } }
        ] } ] }"#;
    fh_core::file::read(text.as_bytes()).unwrap()
}

#[test]
fn two_places_on_two_bars_are_joined_there() {
    let mut desk = Desk::with_plan(two_bars());
    desk.press("Piece from above");
    desk.press("Measure the piece");
    for name in ["In the piece: hole", "In the piece: pin"] {
        // On the metal beside the hole.
        let at = desk.place_of(name) + egui::vec2(0.0, if name.ends_with("hole") { 9.0 } else { 0.0 });
        desk.click_at(at);
    }
    desk.press("Join them here");
    let joint = desk.plan().joints[0].clone();
    assert_eq!((joint.fixed.segment.as_str(), joint.moved[0].segment.as_str()), ("hole", "pin"));
    assert_eq!(joint.kind, fh_core::plan::JointKind::Tenon, "a tenon and a hole");
    assert!(desk.shows("Kind of joint 1"), "it is open on the plan's page");
    desk.keys(CTRL, Key::Z);
    assert!(desk.plan().joints.is_empty());
}

#[test]
fn the_piece_hangs_as_it_was_turned_once() {
    let mut desk = Desk::with_plan(small_plan());
    assert!(desk.shows("180 mm wide, 12 mm deep, 12 mm high"));
    run(&mut desk, "turn it a quarter");
    assert!(desk.shows("12 mm wide, 12 mm deep, 180 mm high"));
    assert_eq!(desk.plan().hangs.tipped.as_ref().map(|angle| angle.text().to_owned()).as_deref(), Some("90 deg"));
    // From above the bar that stands is seen along its length: what is up on the screen, away from you, becomes up.
    desk.press("Piece from above");
    run(&mut desk, "let it hang as it is seen");
    assert!(desk.shows("12 mm wide, 180 mm deep, 12 mm high"));
    desk.press("Plan: Bean hook");
    desk.type_in("Tipped up, its far end", "30");
    assert_ne!(desk.plan().hangs.tipped, None);
    run(&mut desk, "let it lie as planned");
    assert!(desk.plan().hangs.is_default());
    for _ in 0..4 {
        desk.keys(CTRL, Key::Z);
    }
    assert_eq!(desk.plan(), &small_plan());
}
