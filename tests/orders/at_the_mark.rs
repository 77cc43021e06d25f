//! What a card says where full bar meets thin: the neck, the radius at a root, the block under a step, and which goes first.

use crate::orders::{demo, doing, lay, on, worked};
use fh_core::plan::Operation as O;
use fh_store::demos::DEMOS;
use fh_work::WorkedStep;
use serde_json::{Value, json};

fn plain(name: &str, length: &str) -> Value {
    json!({ "name": name, "form": { "plain": { "length": length } } })
}

fn titled<'w>(steps: &'w [WorkedStep], title: &str) -> &'w WorkedStep {
    steps.iter().find(|step| step.title == title).unwrap_or_else(|| panic!("{title} is no step"))
}

/// 14 × 7 mm beside a boss: a groove of 7 mm both ways would leave half of what is wanted from side to side.
#[test]
fn a_neck_beside_a_flat_part_keeps_its_width() {
    let boss = json!({ "name": "boss", "form": { "hole": { "outline": { "rectangle": { "length": "34 mm", "width": "24 mm" } },
        "thickness": "9 mm", "hole": { "round": "8 mm" }, "made": "punched" } } });
    let flat = json!({ "name": "flat", "form": { "drawn": { "length": "80 mm", "section": { "flat": { "width": "14 mm", "thickness": "7 mm" } } } } });
    let worked = on(json!({ "square": "16 mm" }), &[boss, flat, plain("shank", "150 mm")]);
    let neck = doing(&worked, O::Isolate);
    let left = |what: &str| neck.sizes.iter().find(|size| size.what == what).and_then(|size| size.mm);
    assert_eq!(left("left in the neck, at least"), Some(7.0), "{:?}", neck.sizes);
    assert_eq!(left("width left in the neck, at least"), Some(14.0), "{:?}", neck.sizes);
    assert!(lay(neck).contains("no deeper on either pair of sides"), "{}", lay(neck));
}

/// Two plates of 25 × 28 × 4 and 25 × 24 × 4 mm side by side, of 12 mm square: what is 4 mm thick between them has nothing for their
/// corners.
#[test]
fn of_two_plates_side_by_side_the_outer_is_flattened_first_and_the_neck_keeps_metal_for_both() {
    let boss = |name: &str, width: &str| {
        json!({ "name": name, "form": { "hole": {
        "outline": { "rectangle": { "length": "25 mm", "width": width } }, "thickness": "4 mm",
        "hole": { "round": "5 mm" }, "made": "drilled" } } })
    };
    let worked =
        on(json!({ "square": "12 mm" }), &[boss("upper", "28 mm"), boss("lower", "24 mm"), plain("leg", "200 mm")]);
    let at = |title: &str| worked.steps.iter().position(|step| step.title == title).unwrap();
    assert!(at("Flatten the boss “upper”") < at("Flatten the boss “lower”"));
    let neck = titled(&worked.steps, "Neck off “upper”");
    let left = neck.sizes.iter().find(|size| size.what == "left in the neck, at least").unwrap();
    assert_eq!(left.mm, Some(8.0), "{:?}", neck.sizes);
}

/// Between the two steps lies the seat, 27 mm long by then; beyond the lip the bar is full again.
#[test]
fn the_block_under_a_step_lies_under_what_goes_thin() {
    let worked = worked(&demo("trellis-bracket.plan.json"));
    let words = lay(titled(&worked.steps, "Set down “seat shoulder”"));
    assert!(words.contains("Put a block 4.0 mm thick and no longer than 27"), "{words}");
    assert!(
        words.contains("under “seat”") && words.contains("beyond “lip shoulder” the bar is thick again"),
        "{words}"
    );
}

#[test]
fn a_part_that_is_drawn_beside_full_bar_begins_over_a_rounded_edge() {
    let said = |steps: &[WorkedStep], part: &str| {
        let draws = |step: &&WorkedStep| step.title.starts_with("Draw out") && step.title.contains(part);
        lay(steps.iter().find(draws).unwrap()).to_owned()
    };
    let hoe = said(&worked(&demo("draw-hoe.plan.json")).steps, "goose neck");
    assert!(hoe.contains("At both ends, where the bar beside it is full"), "{hoe}");
    let fork = said(&worked(&demo("weeding-fork.plan.json")).steps, "near tine, out from the root");
    assert!(fork.contains("begin over a well-rounded edge"), "{fork}");
    let step = json!({ "name": "step", "form": { "shoulder": { "to": { "square": "9 mm" }, "radius": "3 mm", "sides": "all" } } });
    let neck = json!({ "name": "neck", "form": { "drawn": { "length": "90 mm", "section": { "square": "9 mm" } } } });
    let stepped = on(json!({ "square": "16 mm" }), &[plain("shank", "150 mm"), step, neck]);
    assert!(!lay(doing(&stepped, O::Draw)).contains("rounded edge"), "{}", lay(doing(&stepped, O::Draw)));
}

#[test]
fn how_far_branches_are_bent_apart_is_a_size_on_the_card() {
    let worked = worked(&demo("weeding-fork.plan.json"));
    let apart = doing(&worked, O::BendAside);
    let angle = apart.sizes.iter().find(|size| size.what == "angle between the branches").unwrap();
    assert_eq!(angle.cold, "90°");
    assert!(lay(apart).contains("at a right angle to each other"), "{}", lay(apart));
}

#[test]
fn a_root_wider_than_what_it_joins_keeps_a_radius_in_its_corners() {
    let hoe = worked(&demo("draw-hoe.plan.json"));
    let words = lay(titled(&hoe.steps, "Trim “socket”"));
    assert!(words.contains("leave a radius in both corners") && !words.contains("Leave the root as wide"), "{words}");
    let marker = worked(&demo("row-marker.plan.json"));
    let words = lay(titled(&marker.steps, "Trim “fishtail”"));
    assert!(words.contains("Leave the root as wide as what it joins"), "{words}");
}

/// What a note asked for is a step, in the order and with its tools: the nail's hole before the socket is rolled, the edge when all else
/// is done.
#[test]
fn what_the_hoe_asks_for_besides_is_a_step_with_its_tools() {
    let plan = demo("draw-hoe.plan.json");
    let worked = worked(&plan);
    assert!(plan.bars[0].flat().iter().all(|flat| flat.segment.notes.is_none()));
    let at = |title: &str| worked.steps.iter().position(|step| step.title == title).unwrap();
    let (drill, file) = (at("Drill “socket”"), at("File the edge of “blade”"));
    assert!(at("Trim “socket”") < drill && drill < at("Roll “socket”") && at("Bend “goose neck”") < file);
    for (step, tool) in [(drill, "drill, 5.0 mm"), (drill, "centre punch"), (file, "file")] {
        let is_listed = |it: &fh_work::Tool| it.words == tool && it.steps().contains(&step);
        assert!(worked.tools.iter().any(is_listed), "{tool}: {:?}", worked.tools);
    }
}

/// Of 12 mm square and 8.25 mm round 1.9 mm stand out on each side: half of that bears, and the countersink takes the rest.
#[test]
fn half_of_a_tenons_shoulder_is_left_to_bear_and_its_hole_is_countersunk_for_the_rest() {
    let mut seen = 0;
    for own in DEMOS {
        let plan = demo(own.file_name);
        let worked = worked(&plan);
        let is_tenon = |step: &&WorkedStep| step.title == "Set down “tenon”";
        let Some(tenon) = worked.steps.iter().find(is_tenon) else { continue };
        let edge = tenon.edge.clone().unwrap();
        let joints = worked.steps.iter().filter(|step| step.becomes.iter().any(|words| words.starts_with("tenon: ")));
        for joint in joints {
            let wanted = format!("Countersink the hole {edge} on the side of the shoulder");
            assert!(lay(joint).starts_with(&wanted), "{}: {}", own.file_name, lay(joint));
            assert!(joint.tool.contains("countersink") && worked.tools.iter().any(|tool| tool.words == "countersink"));
            seen += 1;
        }
    }
    assert!(seen >= 7, "{seen}");
}

#[test]
fn a_bar_that_is_heated_anywhere_is_held_where_it_is_cold() {
    let plan = demo("herb-bracket.plan.json");
    let worked = worked(&plan);
    let words = doing(&worked, O::Straighten).held_words(&plan).unwrap();
    assert!(words.starts_with("hold it where it is cold, as at “"), "{words}");
}

#[test]
fn a_plate_that_hangs_on_a_stem_is_left_open_until_it_is_on() {
    let worked = worked(&demo("row-marker.plan.json"));
    let bend = titled(&worked.steps, "Bend “ring”");
    assert!(lay(bend).contains("Leave it open: it is closed at") && !lay(bend).contains("Close it"), "{}", lay(bend));
    let closes = |step: &&WorkedStep| {
        step.lay.as_deref().is_some_and(|words| words.contains("close it there round what it hangs on"))
    };
    assert_eq!(worked.steps.iter().filter(closes).count(), 6, "one for each stake");
}

/// 60 mm of 12 mm square is too long to go at once, wherever it lies.
#[test]
fn only_what_lies_at_an_end_is_upset_from_a_free_end() {
    let knob = |name: &str| json!({ "name": name, "form": { "drawn": { "length": "30 mm", "section": { "square": "17 mm" } } } });
    let goes = |segments: &[Value]| {
        let worked = on(json!({ "square": "12 mm" }), segments);
        let words = lay(doing(&worked, O::Upset)).to_owned();
        assert!(words.contains("goes from"), "{words}");
        words.contains("free end")
    };
    assert!(goes(&[plain("shank", "150 mm"), knob("knob")]));
    assert!(!goes(&[plain("one", "150 mm"), knob("knob"), plain("other", "150 mm")]));
}

/// The hammer takes a dot that is punched where a boss is flattened later: it is laid off again on the flat boss. What is pierced as
/// it came from the rack keeps its dot, and so does a root hole.
#[test]
fn no_dot_is_punched_where_the_hammer_takes_it() {
    let told = |name: &str| {
        let worked = worked(&demo(&format!("{name}.plan.json")));
        let step = worked.steps.iter().find(|step| !step.laid.is_empty()).unwrap().clone();
        let lines: Vec<bool> =
            step.laid.iter().map(|line| line.words.contains("laid off again once that is flat")).collect();
        (lines, lay(&step).to_owned(), worked)
    };
    let (lines, words, trellis) = told("trellis-bracket");
    assert_eq!(lines, [true, true]);
    assert!(words.contains("Do not punch the middles of the holes") && !words.contains("Punch the middles"), "{words}");
    let drills = trellis.steps.iter().filter(|step| step.tasks[0].operation == O::Drill);
    assert!(drills.clone().count() == 2 && drills.clone().all(|step| lay(step).starts_with("Lay off its middle")));
    let (lines, words, rack) = told("dibber-rack");
    assert_eq!(lines, [false, false]);
    assert!(words.contains("Punch the middles of the holes."), "{words}");
    assert!(rack.steps.iter().all(|step| step.tasks[0].operation != O::Drill || step.lay.is_none()));
    let (lines, ..) = told("weeding-fork");
    assert_eq!(lines, [false, false], "a root hole and its slit");
}

/// Two plates of 28 × 4 mm side by side are one: no neck beside the step that lays them flush, one step to flatten both, and nothing is measured from the
/// line between them, where no finger feels a step.
#[test]
fn two_plates_alike_are_forged_as_one() {
    let worked = worked(&demo("trellis-bracket.plan.json"));
    let count = |operation: O| worked.steps.iter().filter(|step| step.tasks[0].operation == operation).count();
    assert_eq!((count(O::Isolate), count(O::Flatten)), (0, 1));
    let flat = titled(&worked.steps, "Flatten the bosses “upper screw hole” and “lower screw hole”");
    assert!(lay(flat).contains("are one plate: forge it as one, with no neck in it"), "{}", lay(flat));
    let lower = titled(&worked.steps, "Drill “lower screw hole”");
    assert_eq!(
        lower.measure,
        ["the middle of the hole in “lower screw hole”: 12.5 mm from the shoulder “plate shoulder”"]
    );
    let rack = self::worked(&demo("dibber-rack.plan.json"));
    let plate = titled(&rack.steps, "Spread “rest”, “bow” and “back”");
    assert!(lay(plate).contains("“rest”, “bow” and “back” are one plate"), "{}", lay(plate));
    assert!(lay(plate).contains("“back”: narrow its tip first"), "{}", lay(plate));
}
