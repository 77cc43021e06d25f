//! Findings lead to what they speak of.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;

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
fn f8_brings_the_finding_that_it_looks_at_in_sight() {
    let mut plan = small_plan();
    let odd = |at: usize| format!(r#"{{ "name": "part {at}", "form": {{ "plain": {{ "length": "3 1/23 in" }} }} }}"#);
    plan.bars[0].segments = (0..20).map(|at| serde_json::from_str(&odd(at)).unwrap()).collect();
    let mut desk = Desk::with_plan(plan);
    let findings = desk.editor().balance().findings.clone();
    assert!(findings.len() >= 20);
    for finding in findings.iter().take(12) {
        desk.keys(Modifiers::NONE, Key::F8);
        let name = format!("{}: {}", finding.severity.name(), finding.message);
        let row = desk.harness.get_by_role_and_label(egui::accesskit::Role::Button, &name).rect();
        let foot = desk.harness.get_by_label("Cut length").rect();
        assert!(row.bottom() <= foot.top() && row.top() > foot.top() - 150.0, "{name}: {row:?}, {foot:?}");
    }
}

#[test]
fn f8_goes_from_finding_to_finding() {
    let mut desk = too_sharp_a_step();
    let places: Vec<_> = desk.editor().balance().findings.iter().map(|finding| finding.place.segment).collect();
    for place in places {
        desk.keys(Modifiers::NONE, Key::F8);
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
