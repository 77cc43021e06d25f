//! Edits, their history, and boundaries that are moved.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]

use fh_core::balance::balance;
use fh_core::edit::{BarHeader, BoundaryMove, BoundaryTarget, Edit, History, Neighbor};
use fh_core::file;
use fh_core::plan::{Joint, JointKind, Member, Plan, SizeName};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// 12 mm square: a point of 60 mm takes 20 mm, a drawn part 100 mm of 6 mm square takes 25 mm, then 50 mm plain, a
/// curve whose length follows, and 200 mm of hold. No scale.
const PLAN: &str = r#"{ "firstheat": 1, "title": "stake", "units": { "length": "mm", "marks": "1 mm" }, "bars": [{
  "name": "stake", "stock": { "square": "12 mm" }, "segments": [
  { "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } },
  { "name": "stem", "form": { "drawn": { "length": "100 mm", "section": { "square": "6 mm" } } } },
  { "name": "shank", "form": { "plain": { "length": "50 mm" } } },
  { "name": "crook", "form": { "plain": {} }, "bend": { "curve": { "angle": "180 deg", "inside_radius": "20 mm" } } },
  { "name": "rest", "form": { "hold": { "length": "200 mm" } } } ] }] }"#;

fn history() -> History {
    History::new(file::read(PLAN.as_bytes()).expect("the plan reads"))
}

fn marks(plan: &Plan) -> Vec<f64> {
    balance(plan).bars[0].segments.iter().map(|segment| segment.mark_end.get::<millimeter>()).collect()
}

fn move_end(segment: usize, to_mm: f64, neighbor: Neighbor) -> Edit {
    let to = BoundaryTarget::Mark(Length::new::<millimeter>(to_mm));
    Edit::MoveBoundary(BoundaryMove { bar: 0, segment, to, neighbor })
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.002
}

#[test]
fn the_length_gives_and_the_bar_grows() {
    let mut history = history();
    let before = marks(history.plan());
    assert!(near(before[0], 20.0) && near(before[1], 45.0) && near(before[2], 95.0), "{before:?}");
    let gave = history.apply(&move_end(1, 50.0, Neighbor::KeepsMetal)).unwrap();
    // 30 mm of bar at 144 mm² make 120 mm at 36 mm².
    assert_eq!((gave[0].size, gave[0].text.as_str()), (SizeName::Length, "120 mm"));
    let after = marks(history.plan());
    assert!(near(after[1], 50.0) && near(after[4] - before[4], 5.0), "{after:?}");
}

#[test]
fn a_neighbor_that_trades_keeps_the_later_marks() {
    let mut history = history();
    let before = marks(history.plan());
    history.apply(&move_end(1, 50.0, Neighbor::TradesMetal)).unwrap();
    let after = marks(history.plan());
    assert!(near(after[1], 50.0) && near(after[2], before[2]) && near(after[4], before[4]), "{after:?}");
}

#[test]
fn where_the_length_follows_from_the_bend_its_radius_gives() {
    let mut history = history();
    let start = marks(history.plan())[2];
    // (rᵢ + 6) π = 100 mm of bar: rᵢ = 25.831 mm.
    let gave = history.apply(&move_end(3, start + 100.0, Neighbor::KeepsMetal)).unwrap();
    assert_eq!((gave[0].size, gave[0].text.as_str()), (SizeName::InsideRadius, "25.831 mm"));
    assert!(near(marks(history.plan())[3], start + 100.0));
}

#[test]
fn the_forged_end_is_moved_and_the_mark_follows() {
    let mut history = history();
    let to = BoundaryTarget::Forged(Length::new::<millimeter>(60.0 + 80.0));
    history
        .apply(&Edit::MoveBoundary(BoundaryMove { bar: 0, segment: 1, to, neighbor: Neighbor::KeepsMetal }))
        .unwrap();
    assert!(near(marks(history.plan())[1], 40.0), "80 mm at 36 mm² take 20 mm of bar");
}

#[test]
fn what_cannot_be_is_refused_in_words_and_leaves_the_plan() {
    let mut history = history();
    let before = history.snapshot();
    let refusal = history.apply(&move_end(1, 10.0, Neighbor::KeepsMetal)).unwrap_err().to_string();
    assert!(refusal.contains("stem") && refusal.contains("no bar would be left"), "{refusal}");
    assert!(history.apply(&move_end(9, 10.0, Neighbor::KeepsMetal)).is_err());
    assert!(history.apply(&move_end(1, f64::NAN, Neighbor::KeepsMetal)).is_err());
    assert_eq!(*history.plan(), *before);
    assert!(!history.can_undo());
}

#[test]
fn a_gesture_is_one_step_and_starts_from_its_beginning() {
    let mut history = history();
    let first = history.snapshot();
    history.begin();
    for mm in [46.0, 48.0, 50.0, 55.0] {
        history.apply(&move_end(1, mm, Neighbor::KeepsMetal)).unwrap();
    }
    history.commit();
    assert!(near(marks(history.plan())[1], 55.0));
    assert!(history.undo());
    assert_eq!(*history.plan(), *first);
    assert!(!history.can_undo() && history.redo());
    history.begin();
    history.apply(&move_end(1, 70.0, Neighbor::KeepsMetal)).unwrap();
    history.cancel();
    assert!(near(marks(history.plan())[1], 55.0));
}

#[test]
fn a_part_in_trouble_takes_nothing_up_and_holds_no_mark() {
    // The crook has one size too many, so it cannot take up; the marks are those of the sizes as written.
    let text = PLAN.replace(r#""plain": {}"#, r#""plain": { "length": "80 mm" }"#).replace(
        r#""stock": { "square": "12 mm" },"#,
        r#""stock": { "square": "12 mm" }, "length": "500 mm", "takes_up": "crook","#,
    );
    let mut history = History::new(file::read(text.as_bytes()).unwrap());
    history.apply(&move_end(4, 400.0, Neighbor::KeepsMetal)).unwrap();
    assert!(near(marks(history.plan())[4], 400.0), "{:?}", marks(history.plan()));
}

#[test]
fn what_a_file_would_refuse_is_refused_in_an_edit() {
    let mut history = history();
    let mut header = fh_core::edit::BarHeader::from(&history.plan().bars[0]);
    header.count = Some(0);
    assert!(history.apply(&Edit::SetBar { bar: 0, header: Box::new(header) }).is_err());
    assert!(history.apply(&Edit::RemoveBar { bar: 0 }).is_err());
}

#[test]
fn a_segment_that_comes_to_be_the_first_has_the_stocks_section() {
    let text = PLAN
        .replace(r#""section": { "square": "6 mm" }"#, r#""section": "same""#)
        .replace(r#""to": "point""#, r#""to": { "square": "6 mm" }"#);
    let mut history = History::new(file::read(text.as_bytes()).unwrap());
    history.apply(&Edit::RemoveSegment { bar: 0, at: 0 }).unwrap();
    assert!(file::read(file::write(history.plan()).as_bytes()).is_ok());
    assert!(near(marks(history.plan())[0], 100.0));
}

#[test]
fn what_is_renamed_stays_in_its_joints() {
    let mut history = history();
    let joint = Joint {
        name: "closed".to_owned(),
        kind: JointKind::Weld,
        fixed: Member::new("stake", "shank"),
        moved: vec![Member::new("stake", "crook")],
    };
    history.apply(&Edit::SetJoints(vec![joint])).unwrap();
    let header = BarHeader { name: "peg".to_owned(), ..BarHeader::from(&history.plan().bars[0]) };
    history.apply(&Edit::SetBar { bar: 0, header: Box::new(header) }).unwrap();
    let mut segment = history.plan().segment(0, 3).unwrap().clone();
    segment.name = "hook".to_owned();
    history.apply(&Edit::ReplaceSegment { bar: 0, at: 3, segment: Box::new(segment) }).unwrap();
    let joint = &history.plan().joints[0];
    assert_eq!(joint.fixed, Member::new("peg", "shank"));
    assert_eq!(joint.moved, [Member::new("peg", "hook")]);
    assert!(history.undo() && history.undo() && history.undo());
    assert!(history.plan().joints.is_empty());
}

#[test]
fn several_edits_are_one_step_or_none() {
    let mut history = history();
    let before = history.plan().clone();
    let removed = |at| Edit::RemoveSegment { bar: 0, at };
    history.apply(&Edit::Several(vec![removed(3), removed(1)])).unwrap();
    let names: Vec<_> = history.plan().bars[0].segments.iter().map(|segment| segment.name.as_str()).collect();
    assert_eq!(names, ["point", "shank", "rest"]);
    assert!(history.undo());
    assert_eq!(*history.plan(), before);
    assert!(history.apply(&Edit::Several(vec![removed(0), removed(9)])).is_err());
    assert_eq!(*history.plan(), before);
}
