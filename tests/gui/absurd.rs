//! Absurd sizes neither freeze nor break it.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use fh_core::plan::Plan;

#[test]
fn absurd_sizes_are_taken_or_refused_and_everything_goes_on() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Segment 2: shank");
    for typed in ["1e9", "1000000000", "0", "-5", "0.0001", "999999999999999999999999", "1/0", "", "NaN", "∞", "3"] {
        desk.type_in("Length", typed);
        desk.keys(Modifiers::COMMAND, Key::Plus);
        desk.keys(Modifiers::COMMAND, Key::Num0);
    }
    assert_eq!(desk.plan().bars[0].segments[1].form.length().unwrap().text(), "3 mm");
}

#[test]
fn a_bar_of_absurd_size_is_shown() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Bar: hook");
    for typed in ["1000000000", "0.001", "12"] {
        desk.type_in("Side of stock", typed);
    }
    assert_eq!(desk.plan().bars[0].stock.describe(), "12 mm square");
}

#[test]
fn a_thousand_segments_are_shown_and_edited() {
    let mut plan: Plan = small_plan();
    let shank = plan.bars[0].segments[1].clone();
    plan.bars[0].segments =
        (0..1000).map(|index| fh_core::plan::Segment { name: format!("part {index}"), ..shank.clone() }).collect();
    let mut desk = Desk::with_plan(plan);
    desk.press("Segment 2: part 1");
    desk.type_in("Length", "33");
    assert_eq!(desk.plan().bars[0].segments[1].form.length().unwrap().text(), "33 mm");
    desk.keys(Modifiers::COMMAND, Key::D);
    assert_eq!(desk.plan().bars[0].segments.len(), 1001);
}

#[test]
fn large_text_in_a_small_window_and_every_look_are_shown() {
    let mut desk = Desk::with_plan(small_plan());
    for _ in 0..4 {
        desk.keys(Modifiers::COMMAND, Key::CloseBracket);
    }
    desk.harness.set_size(egui::vec2(640.0, 400.0));
    desk.harness.run();
    for _ in 0..4 {
        desk.keys(Modifiers::COMMAND, Key::OpenBracket);
    }
    desk.harness.set_size(egui::vec2(1366.0, 768.0));
    desk.harness.run();
}
