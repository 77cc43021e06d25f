//! Can I do it in one heat? The answer, the heat along the bar and over time, and what the metal stands.

use crate::gui::desk::Desk;
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use fh_core::plan::{Operation, Plan, SwungBy};
use fh_heat::cooled::Workable;
use fh_work::{OneHeat, Shop, Verdict, Worked, one_heat, work_out};

const NONE: Modifiers = Modifiers::NONE;
const SLIDER: &str = "Seconds since it left the fire";

/// A line pin for the bean rows: a long point on a bar that is thick for a hand hammer.
fn pin(more: &str) -> Plan {
    let text = format!(
        r#"{{ "firstheat": 1, "title": "Line pin", {more} "bars": [ {{ "name": "pin", "stock": {{ "square": "16 mm" }}, "segments": [
          {{ "name": "point", "form": {{ "taper": {{ "length": "120 mm", "to": "point" }} }} }},
          {{ "name": "shank", "form": {{ "plain": {{ "length": "300 mm" }} }} }} ] }} ] }}"#
    );
    fh_core::file::read(text.as_bytes()).unwrap()
}

fn worked(desk: &Desk) -> Worked {
    work_out(desk.plan(), desk.editor().balance(), &Shop::default())
}

fn tapering(worked: &Worked) -> usize {
    let tapers = |step: &fh_work::WorkedStep| step.tasks.iter().any(|task| task.operation == Operation::Taper);
    worked.steps.iter().position(tapers).unwrap()
}

/// What one heat does for the point, as the model says it.
fn model(desk: &Desk) -> OneHeat {
    let worked = worked(desk);
    one_heat(desk.plan(), desk.editor().balance(), &worked, tapering(&worked)).unwrap()
}

/// At a plan, with the order of work open at a step, counted from 0, and the view of one heat beside it.
fn at_step(plan: Plan, find: impl Fn(&Worked) -> usize) -> Desk {
    let mut desk = Desk::with_plan(plan);
    desk.keys(NONE, Key::F9);
    let at = find(&worked(&desk));
    desk.press("One heat");
    desk.keys(NONE, Key::Home);
    while !desk.shows(&format!("After step {} of", at + 1)) {
        desk.keys(NONE, Key::PageDown);
    }
    desk
}

fn at_the_point(more: &str) -> Desk {
    at_step(pin(more), tapering)
}

fn answer(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Yes => "✓ In one heat? Yes.",
        Verdict::Likely => "● In one heat? Likely.",
        Verdict::Hardly => "▲ In one heat? Not likely.",
        Verdict::No => "■ In one heat? No.",
    }
}

/// Shows what stands further down in the panel.
fn scroll_to(desk: &mut Desk, name: &str) {
    desk.harness.get_by_label(name).scroll_to_me();
    desk.harness.run();
}

/// Writes a rule of heats and comes back to the answer.
fn with_rule(desk: &mut Desk, field: &str, value: &str) {
    scroll_to(desk, "Change hammer and fire");
    desk.press("Change hammer and fire");
    desk.type_in(field, value);
    desk.press("One heat");
}

#[test]
fn the_answer_stands_with_its_figures_reasons_and_doubts() {
    let desk = at_the_point("");
    let one = model(&desk);
    assert!(desk.shows(answer(one.verdict)), "{:?}", one.verdict);
    assert!(desk.shows(&format!("Heats: {:.0} ({:.0} to {:.0})", one.heats.likely, one.heats.low, one.heats.high)));
    for words in one.reasons.iter().chain(&one.doubts) {
        assert!(desk.shows(words), "{words}");
    }
    assert!(desk.shows("Scale of shades: 0 to "));
    assert!(desk.shows("Mild steel in the fire"));
    assert!(desk.shows("Never hammer or bend it at black heat."));
    assert!(desk.shows("By Chapman 1972, "), "a color word names its author");
}

#[test]
fn the_slider_moves_the_temperatures() {
    let mut desk = at_the_point("");
    let (first, one) = (said(&desk, "Heat along the bar."), model(&desk));
    let hottest = |seconds| one.cooled.along(seconds).iter().map(|cell| cell.1).fold(0.0, f64::max);
    assert!(first.contains(&format!("After 0 s: {:.0} °C at the hottest", hottest(0.0))), "{first}");
    desk.harness.get_by_role_and_label(Role::Slider, SLIDER).focus();
    desk.harness.run();
    for _ in 0..20 {
        desk.keys(NONE, Key::ArrowRight);
    }
    let later = said(&desk, "Heat along the bar.");
    assert!(hottest(20.0) < hottest(0.0) - 20.0);
    assert!(later.contains(&format!("After 20 s: {:.0} °C at the hottest", hottest(20.0))), "{later}");
    assert!(said(&desk, "Heat over time").contains("after 20 s middle"));
    assert!(said(&desk, "Hot length over time").contains("after 20 s"));
    desk.keys(NONE, Key::ArrowLeft);
    assert!(desk.shows("After 19 s: "));
}

/// What the picture whose name begins so says.
fn said(desk: &Desk, name: &str) -> String {
    let mut nodes = desk.harness.query_all_by(|node| node.label().is_some_and(|label| label.starts_with(name)));
    nodes.next().and_then(|node| node.accesskit_node().label()).expect(name)
}

#[test]
fn a_power_hammer_does_in_one_heat_what_a_hand_does_not() {
    let mut desk = at_the_point("");
    assert!(matches!(model(&desk).verdict, Verdict::No | Verdict::Hardly), "{:?}", model(&desk).verdict);
    with_rule(&mut desk, "Hammer, kg", "33");
    desk.press("Heat rules");
    desk.choose("Who swings the hammer", SwungBy::Power.name());
    desk.press("One heat");
    let one = model(&desk);
    assert!(matches!(one.verdict, Verdict::Yes | Verdict::Likely), "{:?}", one.verdict);
    assert!(desk.shows(answer(one.verdict)));
    assert!(desk.shows("33 kg, by a power hammer"));
    assert!(desk.shows("a hammer of 33 kg"), "the reason names it");
}

#[test]
fn a_hotter_fire_gives_more_seconds() {
    let mut desk = at_the_point(r#""work": { "heats": { "fire_celsius": 1000 } },"#);
    let seconds = |desk: &Desk| match model(desk).on_anvil {
        Workable::Until(time) => time.likely,
        other => panic!("{other:?}"),
    };
    let before = seconds(&desk);
    assert!(desk.shows("Out of the fire at 1000 °C"));
    with_rule(&mut desk, "Fire, °C", "1240");
    assert!(desk.shows("Out of the fire at 1240 °C"));
    assert!(seconds(&desk) > before + 5.0);
    assert!(desk.shows(&model(&desk).reasons[0]));
    with_rule(&mut desk, "Fire, °C", "1320");
    assert!(desk.shows("A fire of 1320 °C spoils this metal"));
}

#[test]
fn a_metal_that_shows_no_color_is_told() {
    let desk = at_the_point(r#""material": "aluminium","#);
    assert!(desk.shows("This metal shows no colour before it melts: measure its heat."));
    assert!(desk.shows("▲ It shows no colour before it melts."));
    assert!(!desk.shows("By Chapman 1972, "), "no color word stands where nothing glows");
}

#[test]
fn a_cold_step_needs_no_heat() {
    let desk = at_step(pin(""), |worked| worked.steps.iter().position(|step| !step.is_hot()).unwrap());
    assert!(desk.shows("This step is done cold: it needs no heat."));
    assert!(!desk.shows("In one heat?"));
}

#[test]
fn without_a_step_it_asks_for_one() {
    let mut desk = at_the_point("");
    desk.keys(NONE, Key::Escape);
    assert!(desk.shows("No step is chosen."));
}

#[test]
fn every_look_and_large_text_keep_it_readable() {
    for look in ["light", "dark", "high_contrast"] {
        let folder = tempfile::tempdir().unwrap();
        let settings = format!(r#"{{ "tour_seen": true, "order_open": true, "text_size": 2.0, "look": "{look}" }}"#);
        std::fs::write(folder.path().join("settings.json"), settings).unwrap();
        let mut desk = Desk::in_folder(folder, Vec::new(), |services, _| fh_app::Editor::with_plan(services, pin("")));
        desk.press("One heat");
        for _ in 0..worked(&desk).steps.len() {
            desk.keys(NONE, Key::PageDown);
        }
        desk.keys(NONE, Key::PageUp);
        assert!(desk.shows("in the fire"));
    }
}

/// Step after step, branches and all: nothing is asked that cannot be drawn.
#[test]
fn every_step_of_a_branched_plan_can_be_looked_at() {
    let plan = std::fs::read(tests::project().join("demo-plans/weeding-fork.plan.json")).unwrap();
    let mut desk = at_step(fh_core::file::read(&plan).unwrap(), |_| 0);
    let steps = worked(&desk).steps.len();
    let mut answered = 0;
    for _ in 0..steps {
        answered += usize::from(desk.shows("In one heat? "));
        desk.keys(NONE, Key::PageDown);
    }
    assert!(answered > 0);
}
