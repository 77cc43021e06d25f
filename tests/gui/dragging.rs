//! Boundaries are dragged on the strips.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use fh_core::plan::Plan;

fn mark_mm(desk: &Desk, segment: usize) -> f64 {
    desk.editor().balance().bars[0].segments[segment].mark_end.value * 1000.0
}

#[test]
fn a_dragged_mark_changes_the_plan_and_is_one_step() {
    let mut desk = Desk::with_plan(small_plan());
    let before: Plan = desk.plan().clone();
    let mark = mark_mm(&desk, 1);
    desk.drag("Mark 2: end of shank", 60.0);
    let moved = mark_mm(&desk, 1);
    assert!(moved > mark + 5.0, "{mark} -> {moved}");
    assert!((moved - moved.round()).abs() < 1e-6, "{moved} is on a whole mm");
    assert_eq!(desk.editor().selected(), Some(1));
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(*desk.plan(), before);
    desk.keys(Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    assert!((mark_mm(&desk, 1) - moved).abs() < 1e-9);
}

#[test]
fn a_dragged_forged_end_takes_the_mark_along() {
    let mut desk = Desk::with_plan(small_plan());
    let mark = mark_mm(&desk, 0);
    desk.drag("Forged end of point", 40.0);
    assert!(mark_mm(&desk, 0) > mark, "a longer taper takes more bar");
}
