//! The marks of branches are dragged on the strips of the whole editor.

use crate::gui::desk::Desk;
use egui::{Key, Modifiers};

const FORK: &str = r#"{
  "firstheat": 1, "title": "Weeding fork",
  "units": { "length": "mm", "marks": "1 mm" },
  "bars": [ { "name": "fork", "stock": { "flat": { "width": "30 mm", "thickness": "10 mm" } }, "segments": [
    { "name": "shank", "form": { "plain": { "length": "120 mm" } } },
    { "name": "fork", "form": { "split": { "root": { "hole": "6 mm" }, "branches": [
      { "name": "left tine", "segments": [
        { "name": "root", "form": { "drawn": { "length": "60 mm", "section": { "square": "9 mm" } } } },
        { "name": "prong", "form": { "taper": { "length": "70 mm", "to": "point" } } } ] },
      { "name": "right tine", "segments": [
        { "name": "long", "form": { "drawn": { "length": "130 mm", "section": { "square": "8 mm" } } } } ] } ] } } } ] } ] }"#;

#[test]
fn a_mark_within_a_branch_is_dragged_and_undone() {
    let mut desk = Desk::with_plan(fh_core::file::read(FORK.as_bytes()).unwrap());
    let before = desk.plan().clone();
    let mark = |desk: &Desk| desk.editor().balance().bars[0].segments[2].mark_end.value * 1000.0;
    let first = mark(&desk);
    desk.drag("Mark 2.1.1: end of root", 15.0);
    assert!(mark(&desk) > first + 1.0, "{first} -> {}", mark(&desk));
    assert_eq!(desk.editor().selected(), Some(2));
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(*desk.plan(), before);
}
