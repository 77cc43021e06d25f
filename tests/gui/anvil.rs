//! At the anvil: one step at a time, by any key, with the heat's clock.

use crate::gui::desk::Desk;
use crate::gui::order::hook;
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use fh_app::Editor;
use fh_work::{Shop, work_out};

const NONE: Modifiers = Modifiers::NONE;

fn at_the_anvil() -> Desk {
    let mut desk = Desk::with_plan(hook());
    desk.keys(NONE, Key::F11);
    desk
}

/// The number of the step that is shown, counted from 1.
fn step(desk: &Desk) -> usize {
    let count = count(desk);
    let shown = |number: &usize| desk.shows(&format!("Step {number} of {count}."));
    (1..=count).find(shown).expect("a step is shown")
}

fn count(desk: &Desk) -> usize {
    work_out(desk.plan(), desk.editor().balance(), &Shop::default()).steps.len()
}

fn clock(desk: &Desk) -> Option<String> {
    let node = desk.harness.query_by(|node| node.value().is_some_and(|words| words.starts_with("Clock of the heat")));
    node.and_then(|node| node.accesskit_node().value())
}

/// What the clock shows, below a minute.
fn seconds(desk: &Desk) -> u64 {
    clock(desk).unwrap().trim_start_matches("Clock of the heat: 0:").parse().unwrap()
}

#[test]
fn keys_turn_the_pages() {
    let mut desk = at_the_anvil();
    assert_eq!(step(&desk), 1);
    let on = [Key::Space, Key::Enter, Key::PageDown, Key::ArrowRight];
    for key in on {
        let before = step(&desk);
        desk.keys(NONE, key);
        assert_eq!(step(&desk), (before + 1).min(count(&desk)), "{key:?}");
    }
    for key in [Key::ArrowLeft, Key::PageUp, Key::Backspace] {
        let before = step(&desk);
        desk.keys(NONE, key);
        assert_eq!(step(&desk), before - 1, "{key:?}");
    }
    desk.keys(NONE, Key::B);
    assert_eq!(step(&desk), on.len() - 1, "any letter goes on");
}

#[test]
fn what_the_keys_do_is_told_whole_however_large_the_text_is() {
    for (size, words) in
        [("1.0", "any letter, right half"), ("2.0", "Next: Space   Back: ←   Clock: Home   Leave: Esc")]
    {
        let folder = tempfile::tempdir().unwrap();
        let settings = format!(r#"{{ "tour_seen": true, "text_size": {size} }}"#);
        std::fs::write(folder.path().join("settings.json"), settings).unwrap();
        let mut desk = Desk::in_folder(folder, Vec::new(), |services, _| Editor::with_plan(services, hook()));
        desk.keys(NONE, Key::F11);
        assert!(desk.shows(words), "{size}: {words}");
    }
}

#[test]
fn the_first_and_the_last_page_stay() {
    let mut desk = at_the_anvil();
    desk.keys(NONE, Key::Backspace);
    assert_eq!(step(&desk), 1);
    for _ in 0..count(&desk) + 3 {
        desk.keys(NONE, Key::Space);
    }
    assert_eq!(step(&desk), count(&desk));
}

#[test]
fn the_halves_of_the_screen_turn_the_pages() {
    let mut desk = at_the_anvil();
    desk.press("On to the next step");
    assert_eq!(step(&desk), 2);
    desk.press("Back a step");
    assert_eq!(step(&desk), 1);
}

#[test]
fn escape_and_the_button_lead_back_to_the_editor() {
    let mut desk = at_the_anvil();
    assert!(desk.harness.query_by_role_and_label(Role::Button, "Save").is_none());
    desk.keys(NONE, Key::Escape);
    assert!(desk.harness.query_by_role_and_label(Role::Button, "Save").is_some());
    desk.keys(NONE, Key::F11);
    desk.press("Leave the anvil");
    assert!(desk.harness.query_by_role_and_label(Role::Button, "Save").is_some());
}

#[test]
fn the_clock_starts_with_each_heat_and_by_its_key() {
    let mut desk = at_the_anvil();
    let worked = work_out(desk.plan(), desk.editor().balance(), &Shop::default());
    assert!(!worked.steps[0].is_hot() && clock(&desk).is_none(), "marking is done cold");
    let first_hot = worked.steps.iter().position(fh_work::WorkedStep::is_hot).unwrap();
    for _ in 0..first_hot {
        desk.keys(NONE, Key::Space);
    }
    assert!(seconds(&desk) <= 1);
    // A frame of the test takes a quarter of a second.
    for _ in 0..40 {
        desk.harness.step();
    }
    assert!(seconds(&desk) >= 8);
    desk.keys(NONE, Key::Home);
    assert!(seconds(&desk) <= 1);
}

#[test]
fn words_that_are_too_many_for_the_page_are_set_smaller() {
    let mut plan = hook();
    let mut steps = fh_work::proposal(&plan, &fh_core::balance::balance(&plan));
    steps[1].caution = Some("Keep the nib out of the fire, and quench it where it has been there. ".repeat(12));
    steps[1].note = Some("Look along the bar after every third blow. ".repeat(12));
    plan.work.steps = Some(steps);
    let mut desk = Desk::with_plan(plan);
    desk.keys(NONE, Key::F11);
    desk.keys(NONE, Key::Space);
    assert_eq!(step(&desk), 2);
}

#[test]
fn the_cautions_of_the_plan_stand_at_the_anvil() {
    let mut plan = hook();
    plan.material = Some("brass".to_owned());
    plan.duty = Some(fh_core::plan::Duty::HoldsPeople);
    plan.coating = Some(fh_core::plan::Coating::Galvanised);
    let mut desk = Desk::with_plan(plan);
    desk.keys(NONE, Key::F11);
    assert!(desk.shows("Stop: The stock is galvanised.") && desk.shows("it must hold nobody"));
    assert!(desk.shows("Never strike it below 650 °C"));
    desk.keys(NONE, Key::Space);
    assert!(desk.shows("Stop: The stock is galvanised.") && desk.shows("it must hold nobody"), "at every step");
    assert!(!desk.shows("Never strike it below 650 °C"), "the metal's own once");
}
