//! The order of work: stepped through, changed by keys and by hand, put in words, and taken back.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use fh_core::plan::{Operation, Plan, Step};
use fh_work::{Shop, work_out};

const NONE: Modifiers = Modifiers::NONE;
const ALT: Modifiers = Modifiers::ALT;

/// A hook whose bow is bent after its nib is drawn: there are orders that are wrong.
pub(crate) fn hook() -> Plan {
    let text = r#"{
      "firstheat": 1,
      "title": "Bean hook",
      "units": { "length": "mm", "marks": "1 mm" },
      "bars": [ {
        "name": "hook",
        "stock": { "square": "12 mm" },
        "segments": [
          { "name": "nib", "form": { "taper": { "length": "60 mm", "to": "point" } } },
          { "name": "bow", "form": { "drawn": { "section": { "round": "8 mm" }, "length": "110 mm" } },
            "bend": { "curve": { "angle": "160 deg" } } },
          { "name": "shank", "form": { "plain": { "length": "120 mm" } } }
        ]
      } ]
    }"#;
    fh_core::file::read(text.as_bytes()).unwrap()
}

/// At a hook, with the order of work open.
fn at_the_order() -> Desk {
    let mut desk = Desk::with_plan(hook());
    desk.keys(NONE, Key::F9);
    desk
}

fn titles(desk: &Desk) -> Vec<String> {
    let worked = work_out(desk.plan(), desk.editor().balance(), &Shop::default());
    worked.steps.iter().map(|step| step.title.clone()).collect()
}

fn own_steps(desk: &Desk) -> Vec<Step> {
    desk.plan().work.steps.clone().expect("the order is the smith's own")
}

/// The number of the first step that does something, counted from 1.
fn number_of(desk: &Desk, operation: Operation) -> usize {
    let worked = work_out(desk.plan(), desk.editor().balance(), &Shop::default());
    let found = worked.steps.iter().position(|step| step.tasks.iter().any(|task| task.operation == operation));
    found.unwrap() + 1
}

/// Chooses a step by its number, counted from 1.
fn choose(desk: &mut Desk, number: usize) {
    let name = format!("Step {number}: {}", titles(desk)[number - 1]);
    while desk.harness.query_by_role_and_label(Role::Button, &name).is_none() {
        desk.keys(NONE, Key::PageDown);
    }
    desk.press(&name);
}

/// What is said of the steps, from the list's own name.
fn chosen(desk: &Desk) -> String {
    let list = desk.harness.get_by_role(Role::ListBox);
    list.accesskit_node().label().unwrap_or_default()
}

#[test]
fn the_order_is_opened_and_closed_and_remembered() {
    let mut desk = Desk::with_plan(hook());
    assert!(desk.harness.query_by_label("List of steps").is_none());
    desk.press("Order of work");
    assert!(chosen(&desk).starts_with("List of steps: step 1 of"));
    assert!(desk.shows("Step 1: "));
    let Desk { folder, harness } = desk;
    drop(harness);
    let again = Desk::in_folder(folder, Vec::new(), |services, _| fh_app::Editor::with_plan(services, hook()));
    assert!(again.shows("Step 1: "), "the view is as it was left");
}

#[test]
fn stepping_shows_the_bar_as_it_is_then() {
    let mut desk = at_the_order();
    assert!(desk.shows("After step 1 of"));
    assert!(desk.harness.query_by_label("Mark 1: end of nib").is_none(), "nothing can be dragged at a step");
    let before = desk.harness.get_by_role_and_label(Role::Image, "The piece. Turned").rect();
    desk.keys(NONE, Key::PageDown);
    assert!(desk.shows("After step 2 of"));
    let after = desk.harness.get_by_role_and_label(Role::Image, "The piece. Turned").rect();
    assert_eq!(before, after, "the view stays where it is");
    desk.press("Step after");
    assert!(desk.shows("After step 3 of"));
    desk.press("Step before");
    assert!(desk.shows("After step 2 of"));
    desk.keys(NONE, Key::Escape);
    assert!(desk.shows("Finished bars"));
    assert!(desk.harness.query_by_label("Mark 1: end of nib").is_some(), "the plan's own bars can be dragged again");
}

#[test]
fn the_arrows_choose_in_the_list() {
    let mut desk = at_the_order();
    choose(&mut desk, 2);
    desk.keys(NONE, Key::ArrowDown);
    assert!(chosen(&desk).contains("step 3 of"), "{}", chosen(&desk));
    desk.keys(NONE, Key::ArrowUp);
    desk.keys(NONE, Key::ArrowUp);
    assert!(chosen(&desk).contains("step 1 of"));
    desk.keys(NONE, Key::End);
    let count = titles(&desk).len();
    assert!(chosen(&desk).contains(&format!("step {count} of {count}")));
}

#[test]
fn playing_goes_on_by_itself_and_ends() {
    let mut desk = at_the_order();
    let count = titles(&desk).len();
    desk.press("Run through the steps");
    for _ in 0..count * 8 {
        desk.harness.step();
    }
    desk.harness.run();
    assert!(desk.shows(&format!("After step {count} of {count}")));
    assert!(!desk.shows("Stop"));
}

#[test]
fn a_bad_order_is_told_and_undo_takes_it_back() {
    let mut desk = at_the_order();
    let bend = number_of(&desk, Operation::Bend);
    let calm = desk.shows("Nothing found wrong. Strength is not checked.");
    choose(&mut desk, bend);
    for _ in 1..bend {
        desk.keys(ALT, Key::ArrowUp);
    }
    assert_eq!(own_steps(&desk)[0].work[0].operation, Operation::Bend, "the bend comes first now");
    let worked = work_out(desk.plan(), desk.editor().balance(), &Shop::default());
    let broken = worked.findings.iter().find(|found| found.why.is_some()).expect("a rule is broken");
    let name = format!("{}: {}", broken.finding.severity.name(), broken.finding.message);
    assert!(desk.harness.query_all_by_label(&name).next().is_some(), "it is told: {name}");
    for _ in 1..bend {
        desk.keys(Modifiers::COMMAND, Key::Z);
    }
    assert!(desk.plan().work.steps.is_none(), "the proposal is back");
    assert_eq!(desk.shows("Nothing found wrong. Strength is not checked."), calm);
    assert!(desk.harness.query_all_by_label(&name).next().is_none());
}

#[test]
fn what_the_smith_knows_is_kept_and_undo_tells_it_again() {
    let mut desk = at_the_order();
    let bend = number_of(&desk, Operation::Bend);
    choose(&mut desk, bend);
    for _ in 1..bend {
        desk.keys(ALT, Key::ArrowUp);
    }
    let worked = |desk: &Desk| work_out(desk.plan(), desk.editor().balance(), &Shop::default());
    let before = worked(&desk);
    let broken = before.findings.iter().find(|found| found.why.is_some() && found.steps.contains(&0)).expect("a rule");
    desk.type_in(&format!("I know, because: {}", broken.finding.message), "It hangs in my way.");
    let after = worked(&desk);
    assert_eq!(own_steps(&desk)[0].accepts(broken.finding.id), Some("It hangs in my way."));
    assert!(after.open_findings().count() < before.open_findings().count());
    assert!(desk.shows("I know: It hangs in my way."));
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert!(own_steps(&desk)[0].accepted.is_empty());
}

#[test]
fn a_step_is_carried_by_hand() {
    let mut desk = at_the_order();
    let before = titles(&desk);
    let (from, to) =
        (desk.place_of(&format!("Step 1: {}", before[0])), desk.place_of(&format!("Step 3: {}", before[2])));
    desk.harness.hover_at(from);
    desk.harness.run();
    desk.harness.drag_at(from);
    desk.harness.run();
    for step in 1..=6 {
        desk.harness.hover_at(from + (to - from) * (step as f32 / 6.0) + vec2(0.0, 6.0));
        desk.harness.step();
    }
    desk.harness.drop_at(to + vec2(0.0, 6.0));
    desk.harness.run();
    let after = titles(&desk);
    assert_eq!(after[2], before[0], "the first step is the third now: {after:?}");
    assert!(desk.plan().work.steps.is_some());
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(titles(&desk), before);
}

#[test]
fn the_words_of_a_step_are_the_smiths_own() {
    let mut desk = at_the_order();
    choose(&mut desk, 2);
    let own = titles(&desk)[1].clone();
    desk.type_in("Title", "Draw the nib, thin and straight");
    assert_eq!(own_steps(&desk)[1].title.as_deref(), Some("Draw the nib, thin and straight"));
    assert!(desk.shows("Step 2: Draw the nib, thin and straight"));
    desk.type_in("Minutes of the step", "2.5");
    assert_eq!(own_steps(&desk)[1].minutes, Some(2.5));
    desk.harness.get_by_role_and_label(Role::TextInput, "Title").focus();
    desk.harness.run();
    desk.keys(Modifiers::COMMAND, Key::A);
    desk.keys(NONE, Key::Backspace);
    desk.keys(NONE, Key::Tab);
    assert_eq!(own_steps(&desk)[1].title, None);
    assert_eq!(titles(&desk)[1], own, "without words of its own it is called as before");
}

#[test]
fn steps_are_added_removed_doubled_merged_and_split() {
    let mut desk = at_the_order();
    let before = titles(&desk);
    choose(&mut desk, 2);
    desk.keys(ALT, Key::D);
    assert_eq!(titles(&desk).len(), before.len() + 1);
    desk.keys(ALT, Key::Delete);
    assert_eq!(titles(&desk), before);
    let deeds = |desk: &Desk, at: usize| own_steps(desk)[at].work.len();
    let (first, next) = (deeds(&desk, 1), deeds(&desk, 2));
    choose(&mut desk, 2);
    desk.keys(ALT, Key::J);
    assert_eq!(titles(&desk).len(), before.len() - 1);
    assert_eq!(deeds(&desk, 1), first + next);
    desk.keys(ALT, Key::S);
    assert_eq!(titles(&desk).len(), before.len() - 2 + first + next);
    for _ in 0..4 {
        desk.keys(Modifiers::COMMAND, Key::Z);
    }
    assert!(desk.plan().work.steps.is_none());
}

#[test]
fn a_step_of_ones_own_is_added() {
    let mut desk = at_the_order();
    choose(&mut desk, 2);
    desk.keys(ALT, Key::Enter);
    desk.choose("What is done", "in your own words");
    desk.type_only("Words of the step", "Let it cool in the ash");
    desk.press("Add the step");
    assert!(desk.shows("Step 3: Let it cool in the ash"));
    let step = &own_steps(&desk)[2];
    assert_eq!(step.work[0].operation, Operation::Own);
    assert!(chosen(&desk).contains("step 3 of"), "the new step is chosen");
}

#[test]
fn the_proposal_is_taken_up_again_after_asking() {
    let mut desk = at_the_order();
    let before = titles(&desk);
    choose(&mut desk, 2);
    desk.keys(ALT, Key::ArrowDown);
    assert_ne!(titles(&desk), before);
    desk.press("Go back to the program's order");
    desk.press("Cancel");
    assert_ne!(titles(&desk), before);
    desk.press("Go back to the program's order");
    desk.press("Go back");
    assert!(desk.plan().work.steps.is_none());
    assert_eq!(titles(&desk), before);
}

#[test]
fn tools_that_are_ticked_are_known_at_the_next_start() {
    let mut desk = at_the_order();
    desk.press("Tools");
    let missing = |desk: &Desk| {
        let worked = work_out(desk.plan(), desk.editor().balance(), &Shop::default());
        worked.tools.iter().find(|tool| !tool.owned).map(|tool| format!("I have it: {}", tool.words)).unwrap()
    };
    let name = missing(&desk);
    desk.harness.get_by_label(&name).scroll_to_me();
    desk.harness.run();
    desk.harness.get_by_label(&name).click();
    desk.harness.run();
    let is_ticked = |desk: &Desk| {
        desk.harness
            .get_by_label(&name)
            .accesskit_node()
            .toggled()
            .is_some_and(|on| on == egui::accesskit::Toggled::True)
    };
    assert!(is_ticked(&desk));
    let Desk { folder, harness } = desk;
    drop(harness);
    let kept = std::fs::read_to_string(folder.path().join("tools.json")).unwrap();
    assert!(kept.contains("kind"), "{kept}");
    let mut again = Desk::in_folder(folder, Vec::new(), |services, _| fh_app::Editor::with_plan(services, hook()));
    again.press("Tools");
    assert!(is_ticked(&again));
}

#[test]
fn the_rules_of_heats_are_fields() {
    let mut desk = at_the_order();
    desk.press("Heat rules");
    desk.type_in("Hot zone", "90 mm");
    assert_eq!(desk.plan().work.heats.zone.as_ref().map(|zone| zone.text().to_owned()), Some("90 mm".to_owned()));
    assert!(desk.plan().work.steps.is_none(), "rules leave the proposal a proposal");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(desk.plan().work.heats.zone, None);
}

#[test]
fn nothing_on_the_bar_has_no_steps() {
    let mut plan = small_plan();
    plan.bars[0].segments.clear();
    let mut desk = Desk::with_plan(plan);
    desk.keys(NONE, Key::F9);
    for key in [Key::PageDown, Key::PageUp, Key::F7, Key::Escape] {
        desk.keys(NONE, key);
    }
    for key in [Key::ArrowUp, Key::ArrowDown, Key::D, Key::J, Key::S, Key::Delete] {
        desk.keys(ALT, key);
    }
    desk.keys(NONE, Key::F11);
    desk.keys(NONE, Key::Space);
    desk.keys(NONE, Key::Escape);
    assert!(desk.shows("0 heats"));
}

#[test]
fn a_plan_of_several_bars_shows_the_bar_of_the_step() {
    let mut plan = hook();
    let mut other = plan.bars[0].clone();
    other.name = "twin".to_owned();
    plan.bars.push(other);
    let mut desk = Desk::with_plan(plan);
    desk.keys(NONE, Key::F9);
    let worked = work_out(desk.plan(), desk.editor().balance(), &Shop::default());
    let first_of_twin = worked.steps.iter().position(|step| step.bar == Some(1)).unwrap();
    choose(&mut desk, first_of_twin + 1);
    assert!(desk.shows(", twin"), "the heat names its bar");
    assert!(desk.shows(&format!("After step {} of", first_of_twin + 1)));
}

#[test]
fn a_part_on_the_strip_leads_to_the_step_that_works_on_it() {
    let mut desk = at_the_order();
    desk.harness.get_by_role_and_label(Role::Button, "Part bow").click();
    desk.harness.run();
    let now = chosen(&desk);
    let worked = work_out(desk.plan(), desk.editor().balance(), &Shop::default());
    let on_bow = worked.steps.iter().position(|step| step.parts().contains(&1)).unwrap();
    assert!(now.contains(&format!("step {} of", on_bow + 1)), "{now}");
}

#[test]
fn large_text_and_dark_looks_keep_the_order_usable() {
    for look in ["dark", "high_contrast"] {
        let folder = tempfile::tempdir().unwrap();
        let settings = format!(r#"{{ "tour_seen": true, "order_open": true, "text_size": 2.0, "look": "{look}" }}"#);
        std::fs::write(folder.path().join("settings.json"), settings).unwrap();
        let mut desk = Desk::in_folder(folder, Vec::new(), |services, _| fh_app::Editor::with_plan(services, hook()));
        desk.keys(NONE, Key::PageDown);
        assert!(desk.shows("After step 2 of"));
        assert!(chosen(&desk).contains("step 2 of"));
        desk.keys(NONE, Key::F11);
        assert!(desk.shows("Step 2 of"));
    }
}

#[test]
fn a_drag_at_the_finished_bars_changes_the_order_once_it_is_over() {
    let mut desk = at_the_order();
    choose(&mut desk, 2);
    desk.keys(ALT, Key::ArrowDown);
    desk.keys(NONE, Key::Escape);
    let before = desk.plan().work.clone();
    desk.drag("Mark 2: end of bow", 40.0);
    assert_eq!(desk.plan().work, before, "the order itself stays");
    desk.keys(NONE, Key::PageDown);
    let worked = work_out(desk.plan(), desk.editor().balance(), &Shop::default());
    let cold = &worked.steps[0].sizes;
    for size in cold {
        assert!(desk.shows(&size.cold), "{} is shown as it is now", size.what);
    }
    assert!(desk.shows("After step 1 of"));
}

#[test]
fn the_cards_are_printed_from_the_order() {
    let mut desk = at_the_order();
    desk.keys(Modifiers::COMMAND, Key::P);
    for sheet in ["mark sheet", "bench sheet", "step cards"] {
        desk.harness.get_by_role_and_label(Role::CheckBox, sheet).click();
        desk.harness.run();
    }
    desk.press("Make the file");
    let path = desk.folder.path().join("bean-hook-steps.pdf");
    assert!(std::fs::read(&path).unwrap().starts_with(b"%PDF"), "the cards are written");
    assert!(desk.shows("step cards"), "it is said what was written");
}
