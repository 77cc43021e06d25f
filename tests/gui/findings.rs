//! Findings lead to what they speak of.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};

/// The small plan with a step that is too deep for its radius.
fn too_sharp_a_step() -> Desk {
    let mut plan = small_plan();
    let shoulder = r#"{ "name": "step", "form": { "shoulder": { "to": { "square": "4 mm" }, "radius": "0.5 mm", "sides": "all" } } }"#;
    plan.bars[0].segments.insert(2, serde_json::from_str(shoulder).unwrap());
    Desk::with_plan(plan)
}

#[test]
fn a_finding_selects_its_place() {
    let mut desk = too_sharp_a_step();
    let finding = desk.editor().balance().findings.iter().find(|finding| finding.place.segment == Some(2)).cloned();
    let finding = finding.expect("the step is too deep");
    assert_eq!(desk.editor().selected(), Some(0));
    desk.press(&format!("{}: {}", finding.severity.name(), finding.message));
    assert_eq!(desk.editor().selected(), Some(2));
}

#[test]
fn f6_brings_the_finding_that_it_looks_at_in_sight() {
    let mut plan = small_plan();
    let odd = |at: usize| format!(r#"{{ "name": "part {at}", "form": {{ "plain": {{ "length": "3 1/23 in" }} }} }}"#);
    plan.bars[0].segments = (0..20).map(|at| serde_json::from_str(&odd(at)).unwrap()).collect();
    let mut desk = Desk::with_plan(plan);
    let findings = desk.editor().balance().findings.clone();
    assert!(findings.len() >= 20);
    for finding in findings.iter().take(12) {
        desk.keys(Modifiers::NONE, Key::F6);
        let name = format!("{}: {}", finding.severity.name(), finding.message);
        let row = desk.harness.get_by_role_and_label(egui::accesskit::Role::Button, &name).rect();
        let foot = desk.harness.get_by_label("Cut length").rect();
        assert!(row.bottom() <= foot.top() && row.top() > foot.top() - 150.0, "{name}: {row:?}, {foot:?}");
    }
}

#[test]
fn f6_goes_from_finding_to_finding() {
    let mut desk = too_sharp_a_step();
    let places: Vec<_> = desk.editor().balance().findings.iter().map(|finding| finding.place.segment).collect();
    for place in places {
        desk.keys(Modifiers::NONE, Key::F6);
        assert_eq!(desk.editor().selected(), place);
    }
}

#[test]
fn the_list_of_findings_is_closed_and_opened() {
    let mut desk = too_sharp_a_step();
    let finding = desk.editor().balance().findings[0].clone();
    let name = format!("{}: {}", finding.severity.name(), finding.message);
    let toggle = |desk: &mut Desk| {
        let button = desk.harness.get_by(|node| node.label().is_some_and(|label| label.starts_with("Findings: ")));
        button.click();
        desk.harness.run();
    };
    assert!(desk.harness.query_by_label(&name).is_some());
    toggle(&mut desk);
    assert!(desk.harness.query_by_label(&name).is_none());
    toggle(&mut desk);
    assert!(desk.harness.query_by_label(&name).is_some());
}

#[test]
fn what_the_fire_takes_of_too_small_a_scale_is_told_with_the_order_closed_or_open() {
    let mut desk = Desk::with_plan(super::order::hook());
    let worked = fh_work::work_out(desk.plan(), desk.editor().balance(), &fh_work::Shop::default());
    let short = worked.scale_short.first().expect("the plan allows no scale");
    let name = format!("{}: {}", short.severity.name(), short.message);
    assert!(desk.harness.query_by_label(&name).is_some(), "{name}");
    let told = |desk: &Desk| {
        let button = desk.harness.get_by(|node| node.label().is_some_and(|label| label.starts_with("Findings: ")));
        button.accesskit_node().label().unwrap()
    };
    let closed = told(&desk);
    desk.keys(Modifiers::NONE, Key::F9);
    assert_eq!(told(&desk), closed);
    desk.keys(Modifiers::NONE, Key::F9);
    // With metal enough for the fire nothing is short of it.
    let mut plan = super::order::hook();
    plan.scale = Some(fh_measure::WrittenShare::parse("40 %", true).unwrap());
    let desk = Desk::with_plan(plan);
    assert!(!desk.shows("of scale for"));
}

#[test]
fn a_large_plan_is_asked_what_the_fire_takes_once_it_rests() {
    let mut plan = super::order::hook();
    let nib = plan.bars[0].segments[0].clone();
    let drawn = plan.bars[0].segments[1].clone();
    for number in 0..30 {
        let part = fh_core::plan::Segment { name: format!("part {number}"), bend: None, ..drawn.clone() };
        plan.bars[0].segments.insert(1, part);
    }
    assert_eq!(plan.bars[0].segments[0], nib);
    plan.scale = Some(fh_measure::WrittenShare::parse("40 %", true).unwrap());
    let mut desk = Desk::with_plan(plan);
    desk.press("Plan: Bean hook");
    desk.harness.run_steps(8);
    assert!(!desk.shows("of scale for “part 29”"));
    desk.type_only("Scale of the plan", "0.1 %");
    desk.harness.key_press(Key::Tab);
    desk.harness.step();
    desk.harness.step();
    // Not while sizes are still being typed.
    assert!(!desk.shows("of scale for “part 29”"));
    desk.harness.run_steps(8);
    assert!(desk.shows("of scale for “part 29”"));
}
