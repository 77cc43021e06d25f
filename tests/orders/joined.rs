//! What the cards say where parts are joined: what is held, and how a bar lies that has no room in the vice.

use crate::orders::{demo, doing, lay, worked};
use fh_core::plan::{AnvilPlace, JointKind, Operation as O, Plan};
use fh_store::demos::DEMOS;
use fh_work::{ToolKind, Worked, WorkedStep};
use serde_json::{Value, json};

fn plain(name: &str, length: &str) -> Value {
    json!({ "name": name, "form": { "plain": { "length": length } } })
}

/// The first step that makes a joint of this kind.
fn joint<'w>(plan: &Plan, worked: &'w Worked, kind: JointKind) -> &'w WorkedStep {
    let is_it = |step: &&WorkedStep| {
        step.tasks.iter().any(|task| task.joint.is_some_and(|joint| plan.joints[joint].kind == kind))
    };
    worked.steps.iter().find(is_it).unwrap()
}

/// The ring is 12 mm square and 580 mm round: opposite the weld it is cold, and as thick as it came.
#[test]
fn a_ring_is_held_opposite_its_weld_in_tongs() {
    let plan = demo("pot-stand.plan.json");
    let worked = worked(&plan);
    let weld = joint(&plan, &worked, JointKind::Weld);
    let hold = weld.hold.unwrap();
    assert_eq!((weld.held_bar, hold.by_hand, hold.jaw_mm), (Some(0), false, [12.0, 12.0]));
    assert!((200.0..380.0).contains(&hold.at_mm), "{hold:?}");
    assert_eq!(weld.held_words(&plan).as_deref(), Some("hold “arc 3”: tongs, jaw 12 mm"));
    let tongs = worked.tools.iter().filter(|tool| tool.kind == ToolKind::Tongs);
    let number = worked.steps.iter().position(|step| step == weld).unwrap();
    assert!(tongs.into_iter().any(|tool| tool.steps().contains(&number)), "they are not laid out");
}

#[test]
fn every_joint_that_is_made_hot_is_held() {
    let mut seen = 0;
    for own in DEMOS {
        let plan = demo(own.file_name);
        for step in worked(&plan).steps.iter().filter(|step| step.is_hot() && step.bar.is_none()) {
            let words = step.held_words(&plan);
            assert!(step.place == AnvilPlace::Vice || words.is_some(), "{}: {}", own.file_name, step.title);
            assert!(words.is_none_or(|words| !words.contains("nothing")), "{}: {}", own.file_name, step.title);
            seen += 1;
        }
    }
    assert!(seen > 10, "{seen}");
}

fn with_a_leg(long: &str) -> Plan {
    let boss = json!({ "name": "eye", "form": { "hole": { "outline": { "rectangle": { "length": "40 mm", "width": "30 mm" } },
        "thickness": "8 mm", "hole": { "round": "8 mm" }, "made": "drilled" } } });
    let tenon = json!({ "name": "tenon", "form": { "tenon": { "section": { "round": "8 mm" }, "grip": "8 mm", "allowance": "10 mm" } } });
    tests::read(&json!({ "firstheat": 1, "bars": [
        { "name": "plate", "stock": { "flat": { "width": "30 mm", "thickness": "8 mm" } }, "segments": [boss, plain("rest", "100 mm")] },
        { "name": "leg", "stock": { "square": "14 mm" }, "segments": [plain("shank", long), tenon] }],
        "joints": [{ "kind": "tenon", "fixed": { "bar": "plate", "segment": "eye" }, "moved": [{ "bar": "leg", "segment": "tenon" }] }] }))
}

/// The jaws of a vice are about 1 m up.
#[test]
fn a_leg_too_long_to_stand_in_the_vice_is_laid_level() {
    let words = |long: &str| {
        let plan = with_a_leg(long);
        let worked = worked(&plan);
        lay(joint(&plan, &worked, JointKind::Tenon)).to_owned()
    };
    let (short, long) = (words("400 mm"), words("1500 mm"));
    assert!(short.contains("Hold it below its shoulder in the vice"), "{short}");
    assert!(!long.contains("Hold it below") && long.contains("lay it level"), "{long}");
}

/// Round a stem between a shoulder and a flag no closed ring goes; over the end of a plain pin it does.
#[test]
fn a_ring_that_does_not_go_on_closed_is_closed_where_it_hangs() {
    let of = |held: &[Value]| {
        let ring = json!({ "name": "ring", "form": { "drawn": { "section": "stock" } }, "bend": { "ring": { "inside_diameter": "12 mm" } } });
        let plan = tests::read(&json!({ "firstheat": 1, "bars": [
            { "name": "stake", "stock": { "round": "10 mm" }, "segments": held },
            { "name": "label", "stock": { "round": "6 mm" }, "segments": [plain("shank", "80 mm"), ring] }],
            "joints": [{ "name": "hung", "kind": "hook", "fixed": { "bar": "stake", "segment": "stem" },
                "moved": [{ "bar": "label", "segment": "ring" }] }] }));
        let worked = worked(&plan);
        let bend = worked.steps.iter().find(|step| step.title == "Bend “ring”").unwrap();
        (lay(bend).to_owned(), doing(&worked, O::Fit).clone(), plan)
    };
    let flag = json!({ "name": "flag", "form": { "flag": { "outline": { "rectangle": { "length": "40 mm", "width": "30 mm" } }, "thickness": "3 mm" } } });
    let step = json!({ "name": "step", "form": { "shoulder": { "to": { "round": "8 mm" }, "radius": "2 mm", "sides": "all" } } });
    let stem = json!({ "name": "stem", "form": { "drawn": { "length": "60 mm", "section": { "round": "8 mm" } } } });
    let (bend, fit, plan) = of(&[plain("leg", "100 mm"), step, stem, flag]);
    assert!(
        bend.contains("Leave it open: it is closed at “hung”") && !bend.contains("Close it on the mandrel"),
        "{bend}"
    );
    assert!(fit.is_hot() && lay(&fit).contains("close it there"), "{}", lay(&fit));
    assert!(fit.held_words(&plan).unwrap().starts_with("hold “leg”"), "{:?}", fit.held_words(&plan));
    let (bend, fit, _) = of(&[plain("stem", "200 mm")]);
    assert!(bend.contains("Close it on the mandrel") && !fit.is_hot(), "{bend}");
}

/// The lap of a ring of 12 mm square is one and a half thicknesses, 18 mm; what is heated with it is a thickness on both sides. How it is
/// seen to have taken is common practice, no source.
#[test]
fn a_weld_says_how_long_its_lap_is_what_to_heat_and_when_it_has_taken() {
    let plan = crate::orders::demo("pot-stand.plan.json");
    let worked = crate::orders::worked(&plan);
    let weld = joint(&plan, &worked, JointKind::Weld);
    let words = crate::orders::lay(weld);
    assert!(words.contains("heat the lap, 18.0 mm long, and 12.0 mm more on both sides of it, slowly"), "{words}");
    let check = weld.check.clone().unwrap_or_default();
    let scarf = crate::orders::doing(&worked, fh_core::plan::Operation::Scarf);
    assert_eq!(scarf.title, "Scarf “scarf” and the end of “arc 1”");
    let lifter = crate::orders::worked(&crate::orders::demo("cloche-lifter.plan.json"));
    let weld = crate::orders::doing(&lifter, fh_core::plan::Operation::Weld);
    assert!(crate::orders::lay(weld).contains("heat the lap, 13.5 mm long"), "{:?}", weld.lay);
    let check = check + weld.check.as_deref().unwrap_or_default();
    assert!(check.contains("It has taken when the lap moves as one"), "{check}");
}
