//! What holds the bar, on small plans worked by hand: jaws for what is in them, and no tongs in the middle of a long bar.

use crate::orders::doing;
use fh_core::balance::balance;
use fh_core::plan::{Operation as O, Plan};
use fh_work::{Shop, ToolKind, Worked, WorkedStep, work_out};
use serde_json::{Value, json};

fn on_12_square(segments: &[Value]) -> (Plan, Worked) {
    let plan = tests::read(&tests::one_bar(&json!({ "square": "12 mm" }), segments));
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    (plan, worked)
}

fn body(length: &str) -> Value {
    json!({ "name": "body", "form": { "plain": { "length": length } } })
}

#[test]
fn a_long_cold_bar_is_held_by_hand_and_a_longer_one_is_propped() {
    let point = json!({ "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } });
    let held = |length: &str| {
        let (plan, worked) = on_12_square(&[body(length), point.clone()]);
        let words = doing(&worked, O::Taper).held_words(&plan).unwrap();
        (words, worked.tools.iter().any(|tool| tool.kind == ToolKind::Tongs))
    };
    assert_eq!(held("300 mm"), ("hold “body”: tongs, jaw 12 mm".to_owned(), true));
    assert_eq!(held("600 mm"), ("hold “body” by hand".to_owned(), false));
    assert_eq!(held("1400 mm"), ("hold “body” by hand, the bar on a stand or with a helper".to_owned(), false));
}

/// The taper runs from 12 to 6 mm thick over 260 mm, so that only its thin end is within reach.
#[test]
fn jaws_are_for_what_is_in_them_by_then() {
    let (_, worked) = on_12_square(&[
        json!({ "name": "end", "form": { "taper": { "length": "260 mm", "from": { "flat": { "width": "12 mm",
            "thickness": "6 mm" } }, "to": { "square": "12 mm" } } } }),
        body("40 mm"),
        json!({ "name": "other", "form": { "drawn": { "length": "300 mm", "section": { "square": "8 mm" } } } }),
    ]);
    let taper = worked.steps.iter().position(|step| step.tasks[0].operation == O::Taper).unwrap();
    let draw = worked.steps.iter().position(|step| step.tasks[0].operation == O::Draw).unwrap();
    let (first, then) = (taper.min(draw), taper.max(draw));
    assert_eq!(worked.steps[first].hold.unwrap().jaw_mm, [12.0, 12.0]);
    let hold = worked.steps[then].hold.unwrap();
    let jaw = hold.jaw_mm;
    let wanted = if then == draw { [12.0, 6.0 + 6.0 * hold.at_mm / 260.0] } else { [8.0, 8.0] };
    assert!(then == taper || (hold.part == 0 && (15.0..=150.0).contains(&hold.at_mm)), "{hold:?}");
    assert!((jaw[0] - wanted[0]).abs() < 0.01 && (jaw[1] - wanted[1]).abs() < 0.01, "{jaw:?} for {wanted:?}");
}

/// Between parts at the ends of a bar of 400 mm jaws never go round its middle.
#[test]
fn tongs_grip_within_reach_of_the_end() {
    let flat = |name: &str| {
        json!({ "name": name, "form": { "hole": { "outline": { "disc": { "diameter": "18 mm" } },
        "thickness": "7 mm", "hole": { "round": "6 mm" }, "made": "punched" } } })
    };
    let (_, worked) = on_12_square(&[flat("one"), body("370 mm"), flat("other"), body("150 mm"), flat("last")]);
    for step in worked.steps.iter().filter(|step| step.hold.is_some_and(|hold| !hold.by_hand && hold.length_mm > 0.0)) {
        let (hold, zone) = (step.hold.unwrap(), step.zone_mm);
        assert!([0, 1, 3, 4].contains(&hold.part), "{}: {hold:?} with {zone:?} hot", step.title);
    }
}

fn with_a_tang(head: &[Value], rest: bool) -> (Plan, Worked) {
    let tail = [
        json!({ "name": "step", "form": { "shoulder": { "to": { "square": "6 mm" }, "radius": "2 mm", "sides": "all" } } }),
        json!({ "name": "tang", "form": { "taper": { "length": "80 mm", "to": { "square": "4 mm" } } } }),
        json!({ "name": "rest", "form": { "hold": { "length": "120 mm" } } }),
    ];
    on_12_square(&[head, if rest { &tail[..] } else { &tail[..2] }].concat())
}

fn name_held<'p>(plan: &'p Plan, step: &WorkedStep) -> &'p str {
    &plan.bars[0].segment(step.hold.unwrap().part).unwrap().name
}

/// A blade of 3 mm or two tines with points: before the cut the rest of the bar is gripped, 12 mm square; for cut, step and tang the full
/// block that blade or tines are made from afterwards, held by the other end. What is cut off holds nothing, and hangs on no thin step.
#[test]
fn nothing_fine_is_gripped_while_something_stout_stays_cold() {
    let blade = json!({ "name": "blade", "form": { "flag": { "outline": { "rectangle": { "length": "160 mm", "width": "40 mm" } },
        "thickness": "3 mm" } } });
    let neck = json!({ "name": "neck", "form": { "drawn": { "length": "90 mm", "section": { "square": "9 mm" } } } });
    let tine = json!([{ "name": "tine", "form": { "taper": { "length": "140 mm", "from": { "square": "6 mm" }, "to": "point" } } }]);
    let tines =
        json!({ "name": "tines", "form": { "split": { "branches": [{ "segments": tine }, { "segments": tine }] } } });
    for (head, wanted, fine) in [([blade, neck], "blade", O::Spread), ([tines, body("60 mm")], "body", O::Split)] {
        let (plan, worked) = with_a_tang(&head, true);
        let cut = worked.steps.iter().position(|step| step.tasks[0].operation == O::PartOff).unwrap();
        let held = worked.steps[..cut].iter().filter(|step| step.hold.is_some());
        for step in held {
            assert_eq!(step.hold.unwrap().jaw_mm, [12.0, 12.0], "as it came from the rack: {}", step.title);
        }
        for (title, after) in [("Cut off “rest”", 0), ("Set down “step”", 1), ("Taper “tang”", 2)] {
            let step = &worked.steps[cut + after];
            assert_eq!(step.title, title);
            assert_eq!((name_held(&plan, step), step.hold.unwrap().jaw_mm), (wanted, [12.0, 12.0]), "{title}");
        }
        let last = worked.steps.iter().position(|step| step.tasks[0].operation == fine).unwrap();
        assert!(last > cut + 2, "the blade or the points last: {last}");
    }
}

/// Both ends of this strap are flat and one is hot: only a plate of 3 mm is left.
#[test]
fn what_is_gripped_for_want_of_better_is_said() {
    let plate = json!({ "name": "plate", "form": { "flag": { "outline": { "rectangle": { "length": "110 mm", "width": "30 mm" } },
        "thickness": "3 mm" } } });
    let hook = json!({ "name": "hook", "form": { "drawn": { "section": { "round": "6 mm" } } },
        "bend": { "ring": { "inside_diameter": "25 mm" } } });
    let (plan, worked) = on_12_square(&[plate, hook]);
    let words = doing(&worked, O::Bend).held_words(&plan).unwrap();
    assert!(words.starts_with("hold “plate”") && words.ends_with("; with care, nothing better stays cold"), "{words}");
    let short = json!({ "name": "pin", "form": { "drawn": { "length": "60 mm", "section": { "square": "8 mm" } } } });
    let (plan, worked) = on_12_square(&[short]);
    assert_eq!(doing(&worked, O::Draw).held_words(&plan).as_deref(), Some("nothing stays cold to hold"));
    let form = json!({ "rivet": { "diameter": "8 mm", "grip": "12 mm", "allowance": "12 mm" } });
    let plan = tests::read(&tests::one_bar(&json!({ "round": "8 mm" }), &[json!({ "name": "rivet", "form": form })]));
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    assert_eq!(doing(&worked, O::Upset).held_words(&plan), None, "it stands in its header");
    let (plan, worked) = on_12_square(&[
        body("200 mm"),
        json!({ "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } }),
    ]);
    assert!(!doing(&worked, O::Taper).held_words(&plan).unwrap().contains("with care"));
}

/// With 20 mm between them the second end is drawn while the first, which was in the fire just before, is in the jaws.
#[test]
fn what_was_hot_in_the_heat_before_is_cooled_before_it_is_gripped() {
    let drawn = |name: &str| json!({ "name": name, "form": { "drawn": { "length": "90 mm", "section": { "square": "10 mm" } } } });
    let (plan, worked) = on_12_square(&[drawn("one"), body("20 mm"), drawn("other")]);
    let hot: Vec<&WorkedStep> = worked.steps.iter().filter(|step| step.hold.is_some()).collect();
    let words = |step: &WorkedStep| step.held_words(&plan).unwrap();
    assert!(!words(hot[0]).contains("cooled"), "{}", words(hot[0]));
    let mut draws = hot.iter().filter(|step| step.title.starts_with("Draw out"));
    assert!(draws.any(|step| words(step).ends_with(", cooled")), "{hot:?}");
    let told =
        worked.tools.iter().filter(|tool| tool.kind == ToolKind::Tongs).map(|tool| tool.reason()).collect::<String>();
    assert!(told.contains("once it is cooled"), "{told}");
}

/// A plate of 60 mm is no handle: the ring beside it is drawn while the rest of the bar is on, and parted off then. A shank of
/// 150 mm is one: the same end is drawn once that is free.
#[test]
fn the_rest_is_parted_off_once_the_piece_has_a_handle() {
    let plate = json!({ "name": "head", "form": { "flag": { "outline": { "rectangle": { "length": "60 mm", "width": "28 mm" } },
        "thickness": "3 mm" } } });
    let end = json!({ "name": "end", "form": { "drawn": { "length": "40 mm", "section": { "round": "6 mm" } } } });
    let rest = json!({ "name": "rest", "form": { "hold": { "length": "120 mm" } } });
    for (head, is_handle) in [(plate, false), (body("150 mm"), true)] {
        let (plan, worked) = on_12_square(&[head, end.clone(), rest.clone()]);
        let at = |operation: O, name: &str| {
            let does = |step: &WorkedStep| step.tasks[0].operation == operation && step.title.contains(name);
            worked.steps.iter().position(does).unwrap_or_else(|| panic!("{operation:?} {name}"))
        };
        let (cut, draw) = (at(O::PartOff, "rest"), at(O::Draw, "end"));
        assert_eq!(cut < draw, is_handle);
        assert_eq!(name_held(&plan, &worked.steps[draw]), if is_handle { "body" } else { "rest" });
        assert!(worked.findings.iter().all(|found| found.finding.id != "no-hold-left"), "{:?}", worked.findings);
    }
}

/// Rods of 8 mm square side by side bend one by one: both ends of a grip are drawn before its slit is cut, or held beside it.
#[test]
fn no_heavy_work_is_held_through_a_slit() {
    let plan = crate::orders::demo("cloche-lifter.plan.json");
    let worked = crate::orders::worked(&plan);
    let slit = 5;
    assert!(matches!(plan.bars[0].segments[slit].form, fh_core::plan::Form::Split(_)));
    for step in worked.steps.iter().filter(|step| step.tasks.iter().any(|task| task.operation == O::Draw)) {
        let Some((hold, part)) = step.hold.zip(step.parts().first().copied()) else { continue };
        let flat = plan.bars[0].flat();
        let is_cut = step.stages[slit].cut && flat[part].depth == 0;
        let through = (hold.part < slit) != (part < slit);
        assert!(!(is_cut && through), "“{}” is held by part {} through the slit", step.title, hold.part + 1);
    }
}

#[test]
fn no_hand_holds_a_bar_at_a_welding_heat() {
    let ring = json!({ "name": "ring", "form": { "drawn": { "section": "stock" } }, "bend": { "ring": { "inside_diameter": "60 mm" } } });
    let lap = json!({ "name": "lap", "form": { "weld": { "allowance": "14 mm" } } });
    let (_, worked) = on_12_square(&[body("900 mm"), ring, lap]);
    assert!(!doing(&worked, O::Weld).hold.unwrap().by_hand);
    assert!(doing(&worked, O::Bend).hold.unwrap().by_hand);
}

/// A leaf of 12 mm square beyond a neck of 5 mm square: its section is a sixth of what is struck.
#[test]
fn tongs_keep_off_a_stub_beyond_a_thin_neck_while_stout_bar_is_struck() {
    let (plan, worked) = on_12_square(&[
        json!({ "name": "stub", "form": { "plain": { "length": "40 mm" } } }),
        json!({ "name": "thin", "form": { "drawn": { "length": "30 mm", "section": { "square": "5 mm" } } } }),
        body("200 mm"),
        json!({ "name": "other", "form": { "drawn": { "length": "60 mm", "section": { "square": "10 mm" } } } }),
    ]);
    let other = worked.steps.iter().find(|step| step.title == "Draw out “other”").unwrap();
    assert_eq!(name_held(&plan, other), "body");
}

/// Both ends are drawn thin: the first of them while the other is still thick enough to hold by, and neither by a rod that bends
/// under the blows.
#[test]
fn a_thick_end_is_not_struck_by_a_thin_rod_in_the_tongs() {
    let plan = crate::orders::demo("cloche-lifter.plan.json");
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    let ring =
        worked.steps.iter().find(|step| step.title.contains("“hanging ring”") && step.tasks[0].operation == O::Draw);
    let jaw = ring.unwrap().hold.unwrap().jaw_mm;
    assert!(jaw[0].min(jaw[1]) > 12.0, "16 mm octagon struck while held by {jaw:?}");
}
