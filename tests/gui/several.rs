//! Several parts are selected at once: moved, copied, scaled and removed together, each as one step.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::Queryable;

fn names(desk: &Desk) -> String {
    desk.plan().bars[0].segments.iter().map(|segment| segment.name.clone()).collect::<Vec<_>>().join(" ")
}

/// Clicks a line of the list while a key is held.
fn click_with(desk: &mut Desk, modifiers: Modifiers, line: &str) {
    let at = desk.harness.get_by_role_and_label(Role::Button, line).rect().center();
    desk.harness.event(Event::PointerMoved(at));
    desk.harness.run();
    for pressed in [true, false] {
        let button = egui::PointerButton::Primary;
        desk.harness.event_modifiers(Event::PointerButton { pos: at, button, pressed, modifiers }, modifiers);
        desk.harness.step();
    }
    desk.harness.run();
}

/// Point and shank are selected.
fn at_two() -> Desk {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 1: point");
    click_with(&mut desk, Modifiers::SHIFT, "Part 2: shank");
    assert!(desk.shows("2 parts are selected"));
    desk
}

#[test]
fn parts_are_removed_together_and_come_back_with_one_undo() {
    let mut desk = at_two();
    desk.press("Remove part");
    assert_eq!(names(&desk), "rest");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(names(&desk), "point shank rest");
}

#[test]
fn parts_are_moved_together_and_stay_selected() {
    let mut desk = at_two();
    desk.press("Move down");
    assert_eq!(names(&desk), "rest point shank");
    desk.press("Move down");
    assert_eq!(names(&desk), "rest point shank", "they are at the end");
    desk.press("Move up");
    assert_eq!(names(&desk), "point shank rest");
}

#[test]
fn ctrl_takes_one_more_or_one_less() {
    let mut desk = at_two();
    click_with(&mut desk, Modifiers::COMMAND, "Part 3: rest");
    assert!(desk.shows("3 parts are selected"));
    click_with(&mut desk, Modifiers::COMMAND, "Part 2: shank");
    desk.press("Remove part");
    assert_eq!(names(&desk), "shank");
}

#[test]
fn copies_are_pasted_and_doubled_together() {
    let mut desk = at_two();
    desk.harness.event(Event::Copy);
    desk.harness.run();
    let text = serde_json::to_string(&desk.plan().bars[0].segments[0..2]).unwrap();
    desk.press("Part 3: rest");
    desk.harness.event(Event::Paste(text));
    desk.harness.run();
    assert_eq!(names(&desk), "point shank rest point 2 shank 2");
    desk.keys(Modifiers::COMMAND, Key::Z);
    let mut desk = at_two();
    desk.press("Duplicate part");
    assert_eq!(names(&desk), "point shank point 2 shank 2 rest");
}

#[test]
fn parts_are_scaled_together() {
    let mut desk = at_two();
    let at = desk.place_of("Part 2: shank");
    desk.harness.event(Event::PointerMoved(at));
    desk.harness.run();
    for pressed in [true, false] {
        let (button, modifiers) = (egui::PointerButton::Secondary, Modifiers::NONE);
        desk.harness.event(Event::PointerButton { pos: at, button, pressed, modifiers });
        desk.harness.step();
    }
    desk.harness.run();
    let scale = desk.harness.get_by(|node| node.label().is_some_and(|label| label.starts_with("Scale part…")));
    scale.click();
    desk.harness.run();
    desk.letters("1/2");
    desk.keys(Modifiers::NONE, Key::Enter);
    let lengths: Vec<_> =
        desk.plan().bars[0].segments.iter().map(|part| part.form.length().unwrap().text().to_owned()).collect();
    assert_eq!(lengths, ["30 mm", "60 mm", "150 mm"]);
}
