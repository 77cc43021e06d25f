//! A bar is split, and each branch is forged on its own.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use fh_core::forms;
use fh_core::plan::{Branch, Form, Plan};

fn branches(plan: &Plan, at: usize) -> &[Branch] {
    plan.segment(0, at).unwrap().form.branches()
}

/// The names of all segments, counted through the bar.
fn names(desk: &Desk) -> String {
    desk.plan().bars[0].flat().iter().map(|flat| flat.segment.name.clone()).collect::<Vec<_>>().join(" ")
}

/// At a split after the shank.
fn at_a_split() -> Desk {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.press("Add part after");
    desk.press("Split");
    desk
}

#[test]
fn a_fork_is_built_from_an_empty_plan() {
    let mut desk = Desk::empty();
    desk.type_in("What is the piece called?", "Hand fork");
    desk.type_in("Side of bar", "1/2");
    desk.press("Begin");
    desk.press("Add part after");
    desk.press("Drawn");
    desk.type_in("Length", "6");
    desk.press("Add part after");
    desk.press("Split");
    desk.type_in("Name", "tines");
    desk.type_in("Name of branch 1", "left");
    desk.type_in("Name of branch 2", "right");
    for (segment, name) in [("Part 2.1.1: plain", "left tine"), ("Part 2.2.1: plain 2", "right tine")] {
        desk.press(segment);
        desk.choose("Form", "Taper");
        desk.type_in("Length", "5");
        desk.type_in("Name", name);
    }
    let split = branches(desk.plan(), 1);
    assert_eq!(split.iter().map(|branch| branch.name.as_str()).collect::<Vec<_>>(), ["left", "right"]);
    for branch in split {
        assert!(matches!(&branch.segments[..], [tine] if matches!(tine.form, Form::Taper(_))));
    }
    assert_eq!(names(&desk), "drawn tines left tine right tine");
    // A quarter of the area cut in two, tapered to a point: each tine takes a third of 5 in of half the bar, and the 2 % of
    // scale that a new plan is offered.
    let balance = &desk.editor().balance().bars[0];
    let slit = balance.segments[1].stock_length.value * 1000.0 / 25.4;
    // And the slit ends in a hole of 1/8 in through the half inch of the bar, whose area is a quarter of a square inch.
    let hole = std::f64::consts::PI / 4.0 * 0.125 * 0.125 * 0.5 / 0.25;
    assert!((slit - 5.0 / 3.0 / 0.98 - hole).abs() < 1e-6, "{slit}");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(names(&desk), "drawn tines left tine plain 2");
}

#[test]
fn a_selected_split_is_seen_with_its_branches() {
    let mut desk = at_a_split();
    assert!(desk.shows("Turned. Selected: split"));
    desk.press("Part 4: rest");
    assert!(!desk.shows("Selected: rest"), "the tongs hold the rest: it is no part of the piece");
}

#[test]
fn segments_are_added_within_a_branch() {
    let mut desk = at_a_split();
    assert_eq!(names(&desk), "point shank split plain plain 2 rest");
    desk.press("Part 3.1.1: plain");
    desk.press("Add part after");
    desk.press("Ball");
    assert_eq!(names(&desk), "point shank split plain ball plain 2 rest");
    assert_eq!(desk.editor().selected(), Some(4));
    desk.press("Move up");
    assert_eq!(names(&desk), "point shank split ball plain plain 2 rest");
    assert_eq!(desk.editor().selected(), Some(3));
    desk.press("Duplicate part");
    assert_eq!(names(&desk), "point shank split ball ball 2 plain plain 2 rest");
    // Beside the split itself nothing goes into a branch.
    desk.press("Part 3: split");
    desk.press("Add part after");
    desk.press("Cube");
    assert_eq!(names(&desk), "point shank split ball ball 2 plain plain 2 cube rest");
    assert_eq!(desk.plan().bars[0].segments.len(), 5);
}

#[test]
fn an_empty_branch_is_filled() {
    let mut desk = at_a_split();
    desk.press("Part 3.2.1: plain 2");
    desk.press("Remove part");
    assert!(branches(desk.plan(), 2)[1].segments.is_empty());
    assert_eq!(desk.editor().selected(), None, "the empty branch is selected");
    desk.press("Branch 3.2: branch 2");
    desk.press("Add part after");
    desk.press("Taper");
    assert_eq!(branches(desk.plan(), 2)[1].segments.len(), 1);
    assert_eq!(names(&desk), "point shank split plain taper rest");
    desk.type_in("Length", "70");
    assert_eq!(branches(desk.plan(), 2)[1].segments[0].form.length().map(|length| length.text()), Some("70 mm"));
}

#[test]
fn branches_are_added_renamed_moved_and_removed() {
    let mut desk = at_a_split();
    desk.press("Add a branch");
    desk.type_in("Name of branch 1", "wide");
    desk.press("Move branch 1 down");
    let titles = |desk: &Desk| {
        let all = branches(desk.plan(), 2).iter().enumerate();
        all.map(|(index, branch)| branch.title(index)).collect::<Vec<_>>().join(", ")
    };
    assert_eq!(titles(&desk), "branch 1, wide, branch 3");
    desk.press("Remove branch 3");
    assert_eq!(titles(&desk), "branch 1, wide");
    desk.press("Add a part to branch 2");
    desk.press("Ball");
    assert_eq!(branches(desk.plan(), 2)[1].segments.len(), 2);
    for _ in 0..6 {
        desk.keys(Modifiers::COMMAND, Key::Z);
    }
    assert!(!desk.editor().is_changed());
}

#[test]
fn a_slit_closed_at_both_ends_is_opened() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 1: point");
    desk.press("Add part after");
    desk.press("Split");
    desk.choose("How the split is opened", "to an eye or a basket");
    desk.type_in("Width of the opening, middle to middle", "30");
    desk.type_in("Turns of the branches round each other", "1 1/2");
    desk.choose("How the slit ends", "in a hole");
    desk.type_in("Hole at the end of the slit", "4");
    desk.choose("Side of the first branch", "up");
    let Form::Split(forms::Split { side, root, opening, .. }) = &desk.plan().segment(0, 1).unwrap().form else {
        panic!()
    };
    assert!(side.is_some() && root.is_some());
    assert_eq!(opening.as_ref().unwrap().turns, Some(1.5));
}

#[test]
fn the_list_is_walked_by_keyboard() {
    let mut desk = at_a_split();
    let down = |desk: &mut Desk| {
        desk.keys(Modifiers::COMMAND, Key::ArrowDown);
        desk.editor().selected()
    };
    let walk: Vec<_> = (0..6).map(|_| down(&mut desk)).collect();
    assert_eq!(walk, [None, Some(3), None, Some(4), Some(5), Some(5)], "branches have lines of their own");
    desk.keys(Modifiers::COMMAND, Key::ArrowUp);
    assert_eq!(desk.editor().selected(), Some(4));
}
