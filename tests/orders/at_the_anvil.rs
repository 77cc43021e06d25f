//! What a card says that would burn a hand, spoil a size or be looked for in vain.

use crate::orders::worked;
use fh_core::plan::{Operation as O, Plan};
use fh_store::demos::DEMOS;
use fh_work::{Size, Warmth, Worked, WorkedStep};
use serde_json::{Value, json};

fn plan_on(stock: Value, segments: &[Value]) -> Plan {
    tests::read(&tests::one_bar(&stock, segments))
}

fn each(check: impl Fn(&str, &Plan, &Worked)) {
    for demo in DEMOS {
        let plan = fh_core::file::read(demo.text.as_bytes()).unwrap();
        check(demo.file_name, &plan, &worked(&plan));
    }
}

fn doing(worked: &Worked, operation: O) -> &WorkedStep {
    let does = |step: &&WorkedStep| step.tasks.iter().any(|task| task.operation == operation && task.part.is_some());
    worked.steps.iter().find(does).unwrap_or_else(|| panic!("nothing does {}", operation.name()))
}

fn size<'s>(step: &'s WorkedStep, what: &str) -> &'s Size {
    let all = || step.sizes.iter().map(|size| size.what.as_str()).collect::<Vec<_>>();
    step.sizes.iter().find(|size| size.what == what).unwrap_or_else(|| panic!("{what} is not in {:?}", all()))
}

fn point(name: &str) -> Value {
    json!({ "name": name, "form": { "taper": { "length": "60 mm", "to": "point" } } })
}

fn body(length: &str) -> Value {
    json!({ "name": "body", "form": { "plain": { "length": length } } })
}

#[test]
fn a_hand_takes_what_was_hot_only_once_it_is_cooled_and_tested() {
    for (material, words) in
        [("mild steel", ", cooled and tested"), ("spring steel", ", cooled in air, never in water, and tested")]
    {
        let mut plan = plan_on(json!({ "square": "12 mm" }), &[point("one"), body("500 mm"), point("other")]);
        plan.material = Some(material.to_owned());
        let worked = worked(&plan);
        let tapers: Vec<&WorkedStep> =
            worked.steps.iter().filter(|step| step.tasks.iter().any(|task| task.operation == O::Taper)).collect();
        let held: Vec<String> = tapers.iter().map(|step| step.held_words(&plan).unwrap()).collect();
        assert!(held[0].starts_with("hold “body” by hand") && !held[0].contains("cool"), "{held:?}");
        assert!(held[1].starts_with("hold “body” by hand") && held[1].ends_with(words), "{held:?}");
    }
}

#[test]
fn cold_work_on_a_bar_from_the_fire_begins_with_cooling_it() {
    let boss = json!({ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } },
        "thickness": "6 mm", "hole": { "round": "8 mm" }, "made": "drilled" } } });
    let plan = plan_on(json!({ "square": "12 mm" }), &[boss, body("200 mm")]);
    let step = doing(&worked(&plan), O::Drill).clone();
    assert!(
        step.caution.as_deref().unwrap_or_default().starts_with("Cool it first, and test it."),
        "{:?}",
        step.caution
    );
    let mut hardens = plan.clone();
    hardens.material = Some("carbon steel".to_owned());
    let caution = doing(&worked(&hardens), O::Drill).caution.clone().unwrap_or_default();
    assert!(caution.starts_with("Let it cool in still air, never in water, and test it."), "{caution}");
    let as_it_is = json!({ "name": "boss", "form": { "hole": { "outline": { "rectangle": { "length": "30 mm", "width": "25 mm" } },
        "thickness": "6 mm", "hole": { "round": "8 mm" }, "made": "drilled" } } });
    let plan = plan_on(json!({ "flat": { "width": "25 mm", "thickness": "6 mm" } }), &[as_it_is, body("200 mm")]);
    let caution = doing(&worked(&plan), O::Drill).caution.clone().unwrap_or_default();
    assert!(caution.starts_with("Clamp it, and wear no gloves"), "it was never in the fire: {caution}");
}

#[test]
fn what_is_brushed_to_be_closed_in_is_in_the_heat_that_closes_it() {
    each(|name, _, worked| {
        for pair in worked.steps.windows(2) {
            let brushes = pair[0].tasks.iter().any(|task| task.operation == O::Brush && task.part.is_some());
            if brushes && pair[1].parts() == pair[0].parts() {
                let Warmth::Hot { first, last } = pair[0].warmth() else { panic!("{name}: {}", pair[0].title) };
                assert_eq!((first, last), (pair[1].heat, pair[1].heat), "{name}: {}", pair[0].title);
            }
        }
        let whole = |operation: O| {
            let does = |step: &&WorkedStep| step.tasks.iter().any(|it| it.operation == operation && it.part.is_none());
            worked.steps.iter().rev().find(does).unwrap().warmth()
        };
        assert_eq!((whole(O::Brush), whole(O::Wax)), (Warmth::Cold, Warmth::Warm), "{name}");
        assert_eq!(whole(O::Wax).words(), "warm");
    });
}

/// A right-handed screw runs away from the eye clockwise, so its near end stands turned against the clock from the far one.
#[test]
fn a_twist_names_its_hand_and_the_way_of_the_wrench() {
    let plan = |turns: f64| {
        let twist = json!({ "name": "twist", "form": { "plain": { "length": "80 mm" } }, "bend": { "twist": { "turns": turns } } });
        let hook = json!({ "name": "hook", "form": { "plain": { "length": "80 mm" } }, "bend": { "curve": { "angle": "90 deg" } } });
        plan_on(json!({ "square": "12 mm" }), &[body("150 mm"), twist, body("60 mm"), hook])
    };
    let of = |turns: f64| {
        let worked = worked(&plan(turns));
        let twist = doing(&worked, O::Twist);
        let bend = doing(&worked, O::Bend).lay.clone().unwrap();
        (size(twist, "turns").cold.clone(), twist.lay.clone().unwrap(), bend)
    };
    let (right, left) = (of(1.25), of(-0.75));
    assert_eq!((right.0.as_str(), left.0.as_str()), ("1.25, right-handed", "0.75, left-handed"));
    assert!(right.1.contains("turn it anticlockwise, seen from the wrench (right-handed"), "{}", right.1);
    assert!(left.1.contains("turn it clockwise, seen from the wrench"), "{}", left.1);
    assert!(
        right.2.starts_with("The twist has turned this end: its top is still the side that was marked."),
        "{}",
        right.2
    );
    let lifter = worked(&super::demo("cloche-lifter.plan.json"));
    let basket = doing(&lifter, O::Open);
    assert!(
        size(basket, "turns").cold.ends_with("-handed")
            && basket.lay.as_ref().unwrap().contains("seen from the wrench")
    );
}

#[test]
fn a_note_stands_where_its_part_is_worked_first_and_is_never_lost() {
    let mut end = json!({ "name": "end", "form": { "taper": { "length": "60 mm", "to": { "square": "8 mm" } } },
        "bend": { "curve": { "angle": "90 deg" } } });
    end["notes"] = json!("File its edge.");
    let mut shank = body("200 mm");
    shank["notes"] = json!("Two holes of 5 mm.");
    let worked = worked(&plan_on(json!({ "square": "12 mm" }), &[shank, end]));
    let told: Vec<(&str, &[String])> = worked
        .steps
        .iter()
        .filter(|step| !step.part_notes.is_empty())
        .map(|step| (step.title.as_str(), step.part_notes.as_slice()))
        .collect();
    let bar = "Check the bar against the plan";
    assert_eq!(told[0], ("Taper “end”", &["File its edge.".to_owned()][..]));
    assert_eq!(told[1..], [(told[1].0, &["“body”: Two holes of 5 mm.".to_owned()][..])]);
    assert!(told[1].0.starts_with("Check") || told[1].0 == bar, "{told:?}");
    each(|name, plan, worked| {
        for flat in plan.bars.iter().flat_map(|bar| bar.flat()) {
            let Some(note) = flat.segment.notes.as_deref().filter(|note| !note.trim().is_empty()) else { continue };
            for sentence in note.split_inclusive(". ").map(str::trim) {
                let told = worked.steps.iter().flat_map(|step| &step.part_notes);
                assert!(told.filter(|told| told.contains(sentence)).count() >= 1, "{name}: {sentence}");
            }
        }
    });
}

#[test]
fn a_note_on_a_bend_is_told_at_the_bend_and_what_comes_first_before_it() {
    let mut hook = json!({ "name": "hook", "form": { "drawn": { "length": "120 mm", "section": { "square": "8 mm" } } },
        "bend": { "curve": { "angle": "90 deg" } } });
    hook["notes"] = json!(
        "Curl it loosely. Keep its corners sharp. Leave it fat before it is bent. Paint it twice. Look at it last."
    );
    let worked = worked(&plan_on(json!({ "square": "12 mm" }), &[body("200 mm"), hook]));
    let told: Vec<(O, &str)> = worked
        .steps
        .iter()
        .flat_map(|step| step.part_notes.iter().map(|note| (step.tasks[0].operation, note.as_str())))
        .collect();
    let bend = told.iter().find(|(operation, _)| *operation == O::Bend).expect("at the bend").1;
    assert!(bend.contains("Curl it loosely.") && bend.contains("Look at it last."), "{told:?}");
    assert!(told[0].1.contains("Keep its corners sharp. Leave it fat before it is bent."), "{told:?}");
    assert_eq!(told.last().unwrap(), &(O::Wax, "“hook”: Paint it twice."), "{told:?}");
    let at = |file: &str, words: &str| {
        let worked = super::worked(&super::demo(file));
        let step = worked.steps.into_iter().find(|step| step.part_notes.iter().any(|note| note.contains(words)));
        step.unwrap_or_else(|| panic!("{file}: {words}")).tasks[0].operation
    };
    assert_eq!(at("gate-hook.plan.json", "Set back as tight as the eye is bent"), O::Bend);
    assert_eq!(at("gate-hook.plan.json", "Draw the stem before the leaf"), O::Isolate);
}

/// Hot steel is longer by 1.3 %.
#[test]
fn the_monkey_tool_goes_over_the_stoutest_tenon_that_its_step_allows() {
    let tenon = json!({ "name": "tenon", "form": { "tenon": { "section": { "round": "8 mm" }, "grip": "6 mm", "allowance": "10 mm" } } });
    let worked = worked(&plan_on(json!({ "square": "12 mm" }), &[body("200 mm"), tenon]));
    let stoutest = size(doing(&worked, O::Draw), "diameter").between_mm.unwrap()[1];
    let bore =
        worked.tools.iter().find_map(|tool| tool.words.starts_with("monkey tool").then_some(tool.size_mm?)).unwrap();
    assert!(bore > stoutest * 1.013 && bore < stoutest * 1.013 + 0.5, "{bore} for {stoutest}");
}

/// A full point of power 2, 16 mm to nothing: at the share f of its length the square of f of it is gone.
#[test]
fn a_point_that_does_not_run_straight_has_its_sizes_at_the_quarters() {
    let full = json!({ "name": "point", "form": { "taper": { "length": "120 mm", "from": { "round": "16 mm" }, "to": "point",
        "runout": { "power": 2.0 } } } });
    let worked = worked(&plan_on(json!({ "round": "16 mm" }), &[body("200 mm"), full]));
    let step = doing(&worked, O::Taper);
    for (place, f) in [("30.0 mm", 0.25_f64), ("60.0 mm", 0.5), ("90.0 mm", 0.75)] {
        let size = size(step, &format!("diameter {place} from its start"));
        assert!((size.mm.unwrap() - 16.0 * (1.0 - f * f)).abs() < 0.05, "{size:?}");
        let notch = |gauge: &&fh_work::Gauge| (gauge.size_mm - size.mm.unwrap()).abs() < 1e-6;
        assert!(worked.gauges.iter().any(|gauge| notch(&gauge)), "{}", size.what);
    }
}

/// In a heat the bar lies in one fire: what is hot at its first step is hot enough for all of them.
#[test]
fn what_is_hot_at_a_step_covers_all_that_follows_in_its_heat() {
    each(|name, plan, worked| {
        for pair in worked.steps.windows(2) {
            let [one, next] = pair else { continue };
            let is_shared =
                one.needs > 0 && next.needs > 0 && one.heat + one.needs - 1 == next.heat && one.bar == next.bar;
            let (Some([from, to]), Some([next_from, next_to])) = (one.hot_mm, next.zone_mm) else { continue };
            if !is_shared {
                continue;
            }
            if one.needs == 1 {
                assert!(
                    from <= next_from + 0.1 && to >= next_to - 0.1,
                    "{name}: “{}” then “{}”",
                    one.title,
                    next.title
                );
            } else if one.parts() != next.parts() {
                let words = one.heat_with.as_deref().unwrap_or_default();
                assert!(words.contains(" altogether: step"), "{name}: “{}”: {words:?}", one.title);
            }
        }
        let _ = plan;
    });
}

#[test]
fn a_swelling_has_a_least_size_and_a_straight_bar_one_length() {
    each(|name, _, worked| {
        for step in &worked.steps {
            for size in &step.sizes {
                let is_swelling = size.what.contains("over the swelling");
                assert!(
                    !is_swelling || (size.what.ends_with("at least") && size.between_mm.is_none()),
                    "{name}: {size:?}"
                );
                let is_piece = size.what.starts_with("length of the piece") || size.what.starts_with("length without");
                assert!(!is_piece || size.tolerance.is_none(), "{name}: {size:?}");
            }
        }
    });
    let lasts = worked(&super::demo("herb-bracket.plan.json"));
    let swelling = lasts.gauges.iter().find(|gauge| gauge.what.contains("swelling")).unwrap();
    assert_eq!((swelling.go_mm, swelling.no_go_mm), (None, swelling.size_mm));
}

/// 9 mm round to be welded by an end of 16 mm square: one and a half times 9 mm.
#[test]
fn a_scarf_is_as_long_as_the_bar_that_it_closes_asks_for() {
    let of = |allowance: &str| {
        let ring = json!({ "name": "ring", "form": { "drawn": { "length": "110 mm", "section": { "round": "9 mm" } } }, "bend": { "ring": {} } });
        let lap = json!({ "name": "lap", "form": { "weld": { "allowance": allowance } } });
        let worked = worked(&plan_on(json!({ "square": "16 mm" }), &[body("100 mm"), ring, lap]));
        let step = doing(&worked, O::Scarf);
        (size(step, "scarf").mm.unwrap(), step.lay.clone().unwrap())
    };
    // A block shorter than one and a half thicknesses is drawn along with the ring: a quarter of 13.5 mm is upset.
    let (long, words) = of("9 mm");
    assert!((long - 13.5).abs() < 1e-9 && words.starts_with("Upset the end by 3.4 mm first"), "{long}: {words}");
    let (long, words) = of("30 mm");
    assert!(
        (long - 13.5).abs() < 1e-9 && words.starts_with("The end is left thick for it: forge it down"),
        "{long}: {words}"
    );
    let (_, words) = of("1 mm");
    assert!(words.starts_with("Upset the end first"), "{words}");
}

#[test]
fn only_what_is_forged_already_and_goes_into_the_fire_is_kept_out_of_its_heart() {
    each(|name, plan, worked| {
        let mut last = 0;
        for (number, step) in worked.steps.iter().enumerate() {
            let begins = step.needs > 0 && step.heat + step.needs - 1 > last;
            last = last.max(step.heat + step.needs.saturating_sub(1));
            let caution = step.caution.as_deref().unwrap_or_default();
            let told = caution.find("Keep “").map_or("", |at| &caution[at..]);
            assert!(begins || told.is_empty(), "{name}: “{}”: {caution}", step.title);
            let same = worked.steps[number..].iter().take_while(|next| next.heat <= last || next.needs == 0);
            for next in same.filter(|next| next.bar == step.bar && next.needs > 0) {
                let bar = &plan.bars[next.bar.unwrap_or_default()];
                for part in next.parts() {
                    let own = format!("“{}”", bar.segment(part).unwrap().name);
                    let is_told = told.split(" out of the fire").next().is_some_and(|names| names.contains(&own));
                    assert!(!is_told, "{name}: “{}” keeps out what is worked in its heat: {told}", step.title);
                }
            }
        }
    });
}

#[test]
fn a_collar_is_bent_round_a_bar_of_the_bundle_and_joints_are_tried_dry() {
    let text = json!({ "firstheat": 1, "title": "joint", "bars": [
        { "name": "band", "stock": { "flat": { "width": "12 mm", "thickness": "3 mm" } }, "segments": [
            { "name": "wrap", "form": { "collar": { "section": "stock", "width": "24 mm", "height": "12 mm" } } }] },
        { "name": "one", "stock": { "square": "12 mm" }, "segments": [body("200 mm"), point("tip")] },
        { "name": "two", "stock": { "square": "12 mm" }, "segments": [body("200 mm"), point("tip")] }],
        "joints": [{ "kind": "collar", "fixed": { "bar": "one", "segment": "body" },
            "moved": [{ "bar": "two", "segment": "body" }, { "bar": "band", "segment": "wrap" }] }] });
    let plan = tests::read(&text);
    let worked = worked(&plan);
    assert_eq!(doing(&worked, O::Bend).tool, "mandrel, 24.0 mm × 12.0 mm");
    let fit = worked.steps.iter().find(|step| step.tasks.iter().any(|task| task.operation == O::Fit)).unwrap();
    let words = fit.lay.as_deref().unwrap();
    let order = ["Fit it dry", "Heat the collar", "slip it over", "close one leg"].map(|part| words.find(part));
    assert!(order.iter().all(Option::is_some) && order.is_sorted(), "{words}");
}

#[test]
fn a_bar_bent_on_its_edge_is_levelled_before_it_buckles() {
    let bent = |side: &str| {
        let arc = json!({ "name": "arc", "form": { "plain": { "length": "150 mm" } },
            "bend": { "curve": { "angle": "90 deg", "side": side } } });
        let worked = worked(&plan_on(
            json!({ "flat": { "width": "20 mm", "thickness": "6 mm" } }),
            &[body("200 mm"), arc, body("100 mm")],
        ));
        doing(&worked, O::Bend).clone()
    };
    let (hard, easy) = (bent("90 deg"), bent("0 deg"));
    assert!(
        hard.caution.as_deref().is_some_and(|words| words.contains("buckles inside and thins outside")),
        "{:?}",
        hard.caution
    );
    assert!(hard.check.as_deref().is_some_and(|words| words.contains("not thinned")), "{:?}", hard.check);
    assert!(easy.caution.is_none_or(|words| !words.contains("edge")));
}

#[test]
fn one_cut_is_told_once() {
    let end = json!({ "name": "end", "form": { "drawn": { "length": "80 mm", "section": { "square": "12 mm" } } } });
    let cut = json!({ "name": "saw cut", "form": { "trim": { "length": "3 mm" } } });
    let rest = json!({ "name": "rest", "form": { "hold": { "length": "200 mm" } } });
    let worked = worked(&plan_on(json!({ "square": "16 mm" }), &[body("100 mm"), end, cut, rest]));
    let words = doing(&worked, O::PartOff).lay.as_deref().unwrap();
    assert_eq!(words.matches("Cut at the mark").count(), 1, "{words}");
    assert_eq!(words.matches("keep").count(), 1, "{words}");
}

#[test]
fn waste_no_wider_than_a_saws_cut_is_sawn_cold() {
    let of = |length: &str| {
        let waste = json!({ "name": "sheared end", "form": { "trim": { "length": length } } });
        let worked = worked(&plan_on(json!({ "square": "12 mm" }), &[waste, point("point"), body("200 mm")]));
        let step = doing(&worked, O::Trim).clone();
        (step.tool.clone(), step.warmth())
    };
    assert_eq!(of("3 mm"), ("saw".to_owned(), Warmth::Cold));
    let (tool, warmth) = of("12 mm");
    assert!(tool == "hot cut" && warmth.is_hot(), "{tool}");
}
