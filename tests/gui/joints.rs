//! Joints are added, written and taken out from the plan's page, and what does not fit is told.

use crate::gui::desk::{Desk, small_plan};
use fh_core::file;
use fh_core::plan::{JointKind, JointSide, Plan};

/// A ring with a boss, and three legs with a tenon.
fn stand() -> Plan {
    let text = r#"{ "firstheat": 1, "title": "Stand", "units": { "length": "mm", "marks": "1 mm" }, "bars": [
      { "name": "ring", "stock": { "flat": { "width": "20 mm", "thickness": "6 mm" } }, "segments": [
        { "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "30 mm" } }, "thickness": "6 mm",
          "hole": { "round": "8.5 mm" }, "made": "punched" } } },
        { "name": "arc", "form": { "plain": { "length": "120 mm" } } } ] },
      { "name": "leg", "count": 3, "stock": { "square": "12 mm" }, "segments": [
        { "name": "tenon", "form": { "tenon": { "section": { "round": "8 mm" }, "grip": "6 mm", "allowance": "12 mm" } } },
        { "name": "shank", "form": { "plain": { "length": "110 mm" } } } ] } ] }"#;
    file::read(text.as_bytes()).unwrap()
}

#[test]
fn a_joint_is_added_and_written() {
    let mut desk = Desk::with_plan(stand());
    desk.press("Plan: Stand");
    desk.press("Add a joint");
    let joint = &desk.plan().joints[0];
    assert_eq!((joint.fixed.segment.as_str(), joint.moved[0].segment.as_str()), ("boss", "tenon"));
    desk.type_in("Name of joint 1", "leg to ring");
    desk.choose("Side of what stays in joint 1", "down");
    desk.type_in("Number of part 1 of joint 1", "2");
    desk.type_in("Turn of part 1 of joint 1", "90");
    let joint = desk.plan().joints[0].clone();
    assert_eq!((joint.name.as_str(), joint.kind), ("leg to ring", JointKind::Tenon));
    assert!(matches!(&joint.fixed.side, Some(JointSide::Around(angle)) if angle.text() == "180 deg"));
    assert_eq!(joint.moved[0].copy, Some(2));
    assert_eq!(joint.moved[0].turn.as_ref().map(|turn| turn.text()), Some("90 deg"));
    assert!(desk.editor().balance().findings.iter().all(|finding| !finding.id.starts_with("joint")));
    desk.press("Remove joint 1");
    assert!(desk.plan().joints.is_empty());
}

#[test]
fn parts_are_chosen_by_name() {
    let mut desk = Desk::with_plan(stand());
    desk.press("Plan: Stand");
    desk.press("Add a joint");
    desk.choose("Kind of joint 1", "weld");
    desk.choose("Part of what stays in joint 1", "arc");
    desk.choose("Side of what stays in joint 1", "its end");
    desk.press("Add a part to joint 1");
    desk.choose("Bar of part 2 of joint 1", "ring");
    desk.choose("Part of part 2 of joint 1", "boss");
    let joint = &desk.plan().joints[0];
    assert_eq!(joint.fixed.side, Some(JointSide::End));
    assert_eq!((joint.moved[1].bar.as_str(), joint.moved[1].segment.as_str()), ("ring", "boss"));
    desk.press("Remove part 2 of joint 1");
    assert_eq!(desk.plan().joints[0].moved.len(), 1);
}

#[test]
fn what_does_not_fit_is_told() {
    let mut desk = Desk::with_plan(stand());
    desk.press("Plan: Stand");
    desk.press("Add a joint");
    desk.choose("Part of part 1 of joint 1", "shank");
    let ids: Vec<_> = desk.editor().balance().findings.iter().map(|finding| finding.id).collect();
    assert!(ids.contains(&"joint-members"), "{ids:?}");
}

#[test]
fn a_plan_without_joints_says_what_they_are_for() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Plan: Bean hook");
    assert!(desk.shows("Joints"));
    desk.press("Add a joint");
    assert_eq!(desk.plan().joints.len(), 1);
    desk.press("Undo");
    assert!(desk.plan().joints.is_empty());
}

#[test]
fn the_piece_tells_what_runs_into_what() {
    let mut plan = stand();
    let leg = |copy| {
        let text = format!(
            r#"{{ "kind": "weld", "fixed": {{ "bar": "ring", "segment": "arc", "at": "60 mm" }},
                "moved": [{{ "bar": "leg", "copy": {copy}, "segment": "shank", "side": "180 deg", "turn": "{copy}0 deg" }}] }}"#
        );
        serde_json::from_str(&text).unwrap()
    };
    plan.joints = vec![leg(1), leg(2)];
    let desk = Desk::with_plan(plan);
    assert!(desk.shows("overlaps shank of leg by"));
}
