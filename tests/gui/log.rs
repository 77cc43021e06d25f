//! The log: what came out at a step, held against what was planned, learnt from, kept for the next plans, and taken back.

use crate::gui::desk::Desk;
use crate::gui::order::hook;
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use fh_app::Editor;
use fh_core::plan::{Logged, Operation};
use fh_work::{Shop, Worked, WorkedStep, offered, work_out};

const NONE: Modifiers = Modifiers::NONE;

fn worked(desk: &Desk) -> Worked {
    work_out(desk.plan(), desk.editor().balance(), &Shop::default())
}

/// The place of the first step that does something, counted from 0.
fn place_of(desk: &Desk, operation: Operation) -> usize {
    let does = |step: &WorkedStep| step.tasks.iter().any(|task| task.operation == operation);
    worked(desk).steps.iter().position(does).unwrap()
}

fn step(desk: &Desk, operation: Operation) -> WorkedStep {
    worked(desk).steps[place_of(desk, operation)].clone()
}

/// At a step of the order that is open, with a tab beside it.
fn go_to(desk: &mut Desk, operation: Operation, tab: &str) {
    let at = place_of(desk, operation);
    desk.press(tab);
    desk.keys(NONE, Key::Home);
    let words = format!("After step {} of", at + 1);
    for _ in 0..worked(desk).steps.len() {
        if desk.shows(&words) {
            return;
        }
        desk.keys(NONE, Key::PageDown);
    }
    assert!(desk.shows(&words), "{words}");
}

/// At the log of drawing the bow of a hook.
fn at_the_log() -> Desk {
    let mut desk = Desk::with_plan(hook());
    desk.keys(NONE, Key::F9);
    go_to(&mut desk, Operation::Draw, "Log");
    desk
}

fn log(desk: &Desk) -> &[Logged] {
    &desk.plan().work.log
}

/// Minutes twice the planned ones, to a tenth.
fn twice(desk: &Desk) -> f64 {
    (step(desk, Operation::Draw).minutes * 20.0).round() / 10.0
}

/// Takes out what stands in a field.
fn empty(desk: &mut Desk, field: &str) {
    desk.harness.get_by_role_and_label(Role::TextInput, field).focus();
    desk.harness.run();
    desk.keys(Modifiers::COMMAND, Key::A);
    desk.keys(NONE, Key::Delete);
    desk.keys(NONE, Key::Tab);
}

/// Presses a button further down in the panel.
fn press_below(desk: &mut Desk, name: &str) {
    desk.harness.get_by_role_and_label(Role::Button, name).scroll_to_me();
    desk.harness.run();
    desk.press(name);
}

#[test]
fn twice_the_minutes_are_learnt_and_undo_takes_them_back() {
    let mut desk = at_the_log();
    assert!(desk.shows("Nothing is logged yet."));
    let (before, minutes) = (step(&desk, Operation::Draw), twice(&desk));
    desk.type_in("Minutes it took", &minutes.to_string());
    let [entry] = log(&desk) else { panic!("{:?}", log(&desk)) };
    assert_eq!((entry.operation, entry.minutes), (Operation::Draw, Some(minutes)));
    assert_eq!(entry.parts, before.step.work[0].parts);
    let after = step(&desk, Operation::Draw);
    assert!((after.minutes / before.minutes - 2_f64.sqrt()).abs() < 0.1, "one job moves it half way");
    assert!(desk.shows("To draw takes you 1.4 times as long as worked out (1 job)."));
    assert!(desk.shows("Next time you plan this piece: "));
    assert!(desk.shows(&format!("+{:.1}", minutes - before.minutes)), "the difference is told");
    assert!(desk.plan().work.steps.is_none(), "the order is still proposed");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert!(log(&desk).is_empty());
    assert_eq!(step(&desk, Operation::Draw), before);
    assert!(desk.shows("Nothing is logged yet."));
}

#[test]
fn heats_blows_sizes_day_and_note_stand_in_one_entry() {
    let mut desk = at_the_log();
    let size = step(&desk, Operation::Draw).sizes.into_iter().find(|size| size.mm.is_some()).unwrap();
    desk.type_in("Heats it took", "3");
    desk.type_in("Minutes it took", "2.4");
    desk.type_in("Blows it took", "180");
    desk.type_in(&format!("Came out: {}", size.what), &format!("{} mm", size.mm.unwrap() + 0.5));
    desk.type_in("Day of the work", "first frost");
    let [entry] = log(&desk) else { panic!("{:?}", log(&desk)) };
    assert_eq!((entry.heats, entry.minutes, entry.blows), (Some(3), Some(2.4), Some(180)));
    assert_eq!(entry.sizes.len(), 1);
    assert!(desk.shows("+0.5 mm"));
    assert!(desk.shows("times as long as worked out") && desk.shows("as many blows as worked out"));
    assert!(desk.shows(", first frost"));
    empty(&mut desk, &format!("Came out: {}", size.what));
    assert!(log(&desk)[0].sizes.is_empty());
    for field in ["Heats it took", "Minutes it took", "Blows it took", "Day of the work"] {
        empty(&mut desk, field);
    }
    assert!(log(&desk).is_empty(), "an entry that says nothing is none");
}

#[test]
fn what_is_no_figure_is_told_and_not_taken() {
    let mut desk = at_the_log();
    desk.type_in("Heats it took", "1.5");
    assert!(desk.shows("a whole number above 0"));
    desk.type_in("Minutes it took", "-2");
    assert!(desk.shows("isn't a number above 0"));
    assert!(log(&desk).is_empty());
    desk.type_in("Minutes it took", "1e300");
    assert!(worked(&desk).steps.iter().all(|step| step.minutes.is_finite()));
}

#[test]
fn what_is_kept_helps_the_next_plan_after_a_restart() {
    let mut desk = at_the_log();
    let minutes = twice(&desk);
    desk.type_in("Minutes it took", &minutes.to_string());
    press_below(&mut desk, "Keep for my next plans");
    assert!(desk.shows("✓ Kept in your profile"));
    let Desk { folder, harness } = desk;
    drop(harness);
    let mut plan = hook();
    plan.title = "Another hook".to_owned();
    let mut again = Desk::in_folder(folder, Vec::new(), |services, _| Editor::with_plan(services, plan));
    again.press("Discard");
    if !again.shows("After step ") {
        again.keys(NONE, Key::F9);
    }
    go_to(&mut again, Operation::Draw, "Log");
    assert!(again.shows("To draw takes you 1.4 times as long as worked out (1 job)."));
    assert!(again.shows("Nothing is logged yet."), "of this piece");
}

#[test]
fn the_scale_is_taken_up_and_taken_back() {
    let mut desk = at_the_log();
    let loss = worked(&desk).scale.remove(0);
    assert!(desk.shows(&loss.reason()));
    let (share, parts) = offered(desk.plan(), &loss).unwrap();
    let own: String = parts
        .iter()
        .map(|(at, share)| format!(", {} for “{}”", share.text(), desk.plan().bars[0].segments[*at].name))
        .collect();
    let cut = desk.editor().balance().bars[0].segments[0].stock_length;
    press_below(&mut desk, &format!("Use {} as the scale allowance{own}", share.text()));
    assert_eq!(desk.plan().scale.as_ref().unwrap().text(), share.text());
    for (at, share) in &parts {
        assert_eq!(desk.plan().bars[0].segments[*at].scale.as_ref(), Some(share));
    }
    assert!(worked(&desk).scale_short.is_empty(), "what is taken up is enough");
    assert!(desk.editor().balance().bars[0].segments[0].stock_length > cut, "the bar has to be longer");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert!(desk.plan().scale.is_none());
}

#[test]
fn the_weight_at_the_last_check_tells_what_the_fire_took() {
    let mut plan = hook();
    plan.scale = Some(fh_measure::WrittenShare::parse("4 %", true).unwrap());
    let mut desk = Desk::with_plan(plan);
    desk.keys(NONE, Key::F9);
    go_to(&mut desk, Operation::Check, "Log");
    let planned = desk.editor().balance().bars[0].finished_mass.get::<uom::si::mass::kilogram>();
    desk.type_in("Weight in kg", &format!("{:.4}", planned * 0.99));
    let [planned, out] = worked(&desk).experience[0].scale.unwrap();
    assert!(out > planned, "the piece is lighter than planned");
    assert!(desk.shows(&format!(
        "The fire took {:.1} % of the bar; {:.1} % was planned.",
        out * 100.0,
        planned * 100.0
    )));
    desk.type_in("Weight in kg", "70");
    assert!(desk.shows("The weight does not fit this bar"));
}

#[test]
fn an_empty_plan_has_an_empty_log() {
    let mut desk = Desk::empty();
    desk.keys(NONE, Key::Escape);
    if !desk.shows("List of steps") {
        desk.keys(NONE, Key::F9);
    }
    desk.press("Log");
    assert!(desk.shows("Nothing is logged yet."));
    assert!(log(&desk).is_empty());
}

#[test]
fn the_passes_of_a_step_are_told() {
    let mut desk = at_the_log();
    desk.press("One heat");
    let at = place_of(&desk, Operation::Draw);
    let passes = fh_work::passes(desk.plan(), desk.editor().balance(), &worked(&desk), at).unwrap();
    assert!(desk.shows("Pass by pass") && desk.shows("Best bite"));
    assert!(desk.shows("Pass 1") && desk.shows(&format!("{:.2} times longer", passes.after[0][2])));
    for doubt in &passes.doubts {
        assert!(desk.shows(doubt), "{doubt}");
    }
    go_to(&mut desk, Operation::Bend, "One heat");
    assert!(!desk.shows("Pass by pass"), "nothing is drawn in bending");
}

#[test]
fn the_clock_at_the_anvil_is_offered_and_taken_up() {
    let mut desk = at_the_log();
    let number = place_of(&desk, Operation::Draw) + 1;
    desk.keys(NONE, Key::F11);
    // A frame of the test takes a quarter of a second: a minute and a half in all.
    for _ in 0..200 {
        desk.harness.step();
    }
    desk.keys(NONE, Key::Home);
    for _ in 0..160 {
        desk.harness.step();
    }
    desk.keys(NONE, Key::Space);
    desk.keys(NONE, Key::Escape);
    assert!(log(&desk).is_empty(), "nothing is written by itself");
    assert!(desk.shows(&format!("Step {number}, written at the anvil: 2 heats, 1.5 min")));
    desk.press(&format!("Add step {number} from the anvil to the log"));
    let [entry] = log(&desk) else { panic!("{:?}", log(&desk)) };
    assert_eq!((entry.operation, entry.heats, entry.minutes), (Operation::Draw, Some(2), Some(1.5)));
    assert!(!desk.shows("written at the anvil"), "it is offered once");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert!(log(&desk).is_empty() && desk.shows("written at the anvil"));
}

#[test]
fn every_look_and_large_text_keep_it_readable() {
    for look in ["light", "dark", "high_contrast"] {
        let folder = tempfile::tempdir().unwrap();
        let settings = format!(r#"{{ "tour_seen": true, "order_open": true, "text_size": 2.0, "look": "{look}" }}"#);
        std::fs::write(folder.path().join("settings.json"), settings).unwrap();
        let mut plan = hook();
        let entry = Logged::new(Operation::Draw, 0, vec!["2".to_owned()]);
        plan.work.log = vec![Logged { heats: Some(3), minutes: Some(4.0), ..entry }];
        let mut desk = Desk::in_folder(folder, Vec::new(), |services, _| Editor::with_plan(services, plan));
        desk.press("Log");
        assert!(desk.shows("Planned against actual") && desk.shows("actual"));
    }
}
