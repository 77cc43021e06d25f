//! Rows of marks are added, changed and removed, and what is counted is told.

use crate::gui::desk::{Desk, small_plan};
use fh_core::plan::{Repeat, RepeatFrom};

fn repeats(desk: &Desk) -> Vec<Repeat> {
    desk.plan().bars[0].segments[1].repeats.clone()
}

#[test]
fn a_row_of_marks_is_added_and_counted() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.press("Add a row of marks");
    desk.type_in("Marks of row 1", "dots");
    desk.type_in("Step of row 1", "25");
    // 120 mm are 4 steps of 25 mm and 20 mm over, half of it at each end.
    assert!(desk.shows("5 at 25 mm, first 10 mm from its start."));
    assert!(desk.shows("At 10, 35, 60, 85, 110\u{a0}mm from its start, forged."));
    desk.choose("Counted from of row 1", "its end");
    assert!(desk.shows("5 at 25 mm, first at its end."));
    desk.type_in("Margin of row 1", "15");
    assert!(desk.shows("4 at 25 mm, first 15 mm from its end."));
    let row = &repeats(&desk)[0];
    assert_eq!((row.what.as_str(), row.from), ("dots", RepeatFrom::End));
    assert_eq!(row.step.as_ref().map(|step| step.text()), Some("25 mm"));
}

#[test]
fn a_row_can_be_paced_by_a_tool_or_by_a_count() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.press("Add a row of marks");
    desk.choose("Pace of row 1", "tools side by side");
    desk.type_in("Tool width of row 1", "14");
    assert!(desk.shows("8 side by side, 14 mm each, edge of the first 4 mm from its start."));
    desk.choose("Pace of row 1", "a count, spread evenly");
    desk.type_in("How many of row 1", "7");
    assert!(desk.shows("7 at 20 mm, first at its start."));
    let row = repeats(&desk)[0].clone();
    assert_eq!((row.step, row.width, row.count), (None, None, Some(7)));
    desk.type_in("How many of row 1", "none");
    assert!(desk.shows("isn't a count of marks"));
    desk.type_in("How many of row 1", "7");
    desk.press("Remove “chisel lines”");
    assert_eq!(repeats(&desk), []);
}

#[test]
fn a_row_that_runs_off_is_told() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.press("Add a row of marks");
    desk.type_in("Step of row 1", "30");
    desk.type_in("How many of row 1", "6");
    assert!(desk.shows("reaches 30 mm beyond the part."));
}
