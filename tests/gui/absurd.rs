//! Absurd sizes neither freeze nor break it.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use fh_core::plan::Plan;

#[test]
fn absurd_sizes_are_taken_or_refused_and_everything_goes_on() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
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
    desk.press("Part 2: part 1");
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

/// More letters than any line, field or list of the window has room for.
const MOST_LETTERS: usize = 60_000;

#[test]
fn names_of_a_megabyte_are_cut_short_wherever_they_stand() {
    let long = "wrought ".repeat(1 << 17);
    let fork = include_str!("../../demo-plans/weeding-fork.plan.json");
    let mut plan = fh_core::file::read(fork.as_bytes()).unwrap();
    plan.title.clone_from(&long);
    let rest = fh_core::plan::Bar { segments: plan.bars[0].segments.split_off(5), ..plan.bars[0].clone() };
    plan.bars.push(rest);
    for bar in &mut plan.bars {
        bar.name.clone_from(&long);
        for at in 0..bar.count_segments() {
            let segment = bar.segment_mut(at).unwrap();
            segment.name.clone_from(&long);
            if let fh_core::plan::Form::Split(split) = &mut segment.form {
                split.branches.iter_mut().for_each(|branch| branch.name.clone_from(&long));
            }
        }
    }
    let worked = fh_work::work_out(&plan, &fh_core::balance::balance(&plan), &fh_work::Shop::default());
    let mut steps: Vec<_> = worked.steps.into_iter().map(|step| step.step).collect();
    steps.iter_mut().for_each(|step| step.title = Some(long.clone()));
    plan.work.steps = Some(steps);
    let mut desk = Desk::with_plan(plan);
    assert_short(&desk, "the plan");
    for key in [Key::F9, Key::PageDown, Key::F11] {
        desk.keys(Modifiers::NONE, key);
        assert_short(&desk, &format!("{key:?}"));
    }
    desk.keys(Modifiers::NONE, Key::Escape);
    for tab in ["One heat", "Log", "Heat rules", "Tools"] {
        desk.press(tab);
        assert_short(&desk, tab);
    }
}

/// That nothing which is set or spoken is longer than there is room for.
fn assert_short(desk: &Desk, place: &str) {
    let is_long = |text: String| text.chars().count() > MOST_LETTERS;
    let long = desk.harness.query_all_by(|node| node.label().or_else(|| node.value()).is_some_and(is_long)).next();
    let begins =
        long.and_then(|node| node.accesskit_node().label()).map(|text| text.chars().take(60).collect::<String>());
    assert_eq!(begins, None, "{place}: a text of the window does not end");
}
