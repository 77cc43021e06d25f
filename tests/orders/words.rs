//! What a step says, against figures worked out by hand from the demo's own sizes, and against what hands and fire allow.

use crate::orders::demo;
use fh_core::balance::balance;
use fh_core::file;
use fh_core::plan::Operation as O;
use fh_store::demos::DEMOS;
use fh_work::{Shop, Task, Worked, WorkedStep, work_out};

fn worked(file_name: &str) -> Worked {
    let plan = demo(file_name);
    work_out(&plan, &balance(&plan), &Shop::default())
}

fn each(check: impl Fn(&str, &[WorkedStep])) {
    for demo in DEMOS {
        let plan = file::read(demo.text.as_bytes()).unwrap();
        check(demo.file_name, &work_out(&plan, &balance(&plan), &Shop::default()).steps);
    }
}

fn titled<'a>(worked: &'a Worked, title: &str) -> &'a WorkedStep {
    worked.steps.iter().find(|step| step.title == title).unwrap_or_else(|| panic!("no step “{title}”"))
}

fn cold<'a>(step: &'a WorkedStep, what: &str) -> &'a str {
    let found = step.sizes.iter().find(|size| size.what == what);
    found.map(|size| size.cold.as_str()).unwrap_or_else(|| panic!("no {what} in {:?}", step.sizes))
}

fn is_hot_with(step: &WorkedStep, heat: usize) -> bool {
    step.is_hot() && (step.heat..step.heat + step.needs).contains(&heat)
}

#[test]
fn a_neck_lies_in_what_goes_thin_and_keeps_what_stands_there_in_the_end() {
    let worked = worked("herb-bracket.plan.json");
    // Between legs of the bar's own 12 mm the boss is what goes thin, to 5 mm; it is spread, so half of that is left to it.
    let boss = titled(&worked, "Neck off “lower screw boss”");
    assert_eq!(cold(boss, "left in the necks, at least"), "8.5 mm");
    assert!(boss.lay.as_ref().unwrap().contains("inside of the marks"), "{:?}", boss.lay);
    // The stalk runs out to 7 mm round where the leaf begins.
    let leaf = titled(&worked, "Neck off “leaf”");
    assert_eq!(cold(leaf, "left in the neck, at least"), "7.0 mm");
    assert!(leaf.lay.as_ref().unwrap().contains("outside of the mark, all round"), "{:?}", leaf.lay);
    // What is measured is what is marked: from 50 to 82 mm.
    assert_eq!(cold(titled(&worked, "Neck off “upper screw boss”"), "block, mark to mark"), "32.0 mm");
}

#[test]
fn what_is_cut_away_or_pushed_aside_later_is_in_the_size() {
    let worked = worked("herb-bracket.plan.json");
    // 34 × 26 × 5 mm less a slot of 11 × 7 mm with round ends, (4 × 7 + π 3.5²) × 5, is 4087.6 mm³. The slit, half the slot's
    // girth of 8 + 7 π less 5 %, is 14.25 mm: drifting shortens the boss by 3.25 mm, so it is 37.25 mm long and 21.95 wide.
    let drifted = titled(&worked, "Flatten the boss “lower screw boss”");
    assert_eq!((cold(drifted, "length"), cold(drifted, "width")), ("37.2 mm", "21.9 mm"));
    let opened = titled(&worked, "Drift “lower screw boss”");
    assert_eq!((cold(opened, "length"), cold(opened, "width")), ("34.0 mm", "26.0 mm"));
    // The punch drives its slug out: until then it is there.
    assert_eq!(cold(titled(&worked, "Flatten the boss “upper screw boss”"), "width"), "26.0 mm");
    // 5 % more until it is trimmed, counted of what is left, the same all round: √1.05 times 64 × 26 mm.
    let leaf = titled(&worked, "Spread “leaf”");
    assert_eq!((cold(leaf, "length"), cold(leaf, "width")), ("65.6 mm", "26.6 mm"));
    assert_eq!(cold(titled(&worked, "Trim “leaf”"), "width"), "26.0 mm");
}

#[test]
fn a_hexagon_is_upset_until_a_cube_can_be_squared_from_it() {
    // 1.1625 in of hexagon 1/2, 0.2165 in² each, hold 0.2517 in³: at the cube's 25/64 in² they are 0.644 in long.
    let worked = worked("twine-stake.plan.json");
    let upset = titled(&worked, "Upset “finial”");
    assert_eq!(cold(upset, "length, about"), "41/64 in");
}

#[test]
fn a_peak_is_measured_over_its_swelling() {
    let worked = worked("herb-bracket.plan.json");
    let upset = titled(&worked, "Upset “corner”");
    // (4 + 12)² (tan 45° - 45° in radians) / ((4 + 6) × 90° in radians) × 2 = 6.99 mm over the bar's 12 mm.
    assert_eq!(cold(upset, "thickness over the swelling, at least"), "19.0 mm");
    // Bent upward, its outside is the bottom.
    assert!(upset.lay.as_ref().unwrap().contains("swelling is on the bottom"), "{:?}", upset.lay);
}

#[test]
fn a_mark_that_has_moved_is_found_from_what_is_felt_beside_it() {
    let worked = worked("herb-bracket.plan.json");
    // What twists is hot and nothing beside it: so what is measured before it is cold.
    // Behind the boss: 40 mm of leg, the peak's (4 + 6) × 90° in radians = 15.7 mm, and 60 mm of arm.
    let twist = titled(&worked, "Twist “twist”");
    let start = "the start of “twist”: mark 8, struck at 302 mm, now 115.7 mm from the end of “lower screw boss”";
    assert_eq!(twist.measure[0], start);
    let first = titled(&worked, "Upset “corner”");
    assert_eq!(first.measure[0], "the start of “corner”: mark 6, struck at 221 mm");
}

#[test]
fn every_mark_is_laid_off_by_its_number() {
    each(|name, steps| {
        for step in steps.iter().filter(|step| step.title.ends_with(", and mark it")) {
            assert!(step.marks.len() > 1, "{name}: {}", step.title);
            let (last, others) = step.marks.split_last().unwrap();
            assert!(
                last.begins.is_none() && others.iter().all(|mark| mark.begins.is_some()),
                "{name}: {:?}",
                step.marks
            );
        }
    });
}

#[test]
fn no_tongs_grip_what_is_hot() {
    each(|name, steps| {
        for (number, step) in steps.iter().enumerate() {
            let Some(hold) = step.hold.filter(|hold| hold.length_mm > 0.0) else { continue };
            // The step's own heat, those before it and those after it in its last heat; a cut heats only what is beside it.
            let own = (step.heat, step.heat + step.needs - 1);
            let is_same = |(at, other): &(usize, &WorkedStep)| {
                other.bar == step.bar && is_hot_with(other, if *at > number { own.1 } else { own.0 })
            };
            let is_cut =
                |other: &WorkedStep| other.tasks.iter().all(|task| matches!(task.operation, O::PartOff | O::Trim));
            let same = steps.iter().enumerate().filter(is_same).map(|(_, other)| other).filter(|other| !is_cut(other));
            assert!(!same.flat_map(WorkedStep::parts).any(|part| part == hold.part), "{name}: {}", step.title);
            let clear = step.zone_mm.is_none_or(|[from, to]| hold.at_mm < from || hold.at_mm > to);
            assert!(clear, "{name}: {} at {}, {:?} is hot", step.title, hold.at_mm, step.zone_mm);
        }
    });
}

#[test]
fn what_is_upset_or_straightened_has_its_heat_to_itself() {
    each(|name, steps| {
        for (number, step) in steps.iter().enumerate().filter(|(_, step)| step.is_hot() && step.bar.is_some()) {
            let alone = step
                .tasks
                .iter()
                .any(|task| task.operation == O::Upset || (task.operation == O::Straighten && task.part.is_none()));
            let shared = |other: &WorkedStep| {
                let beside =
                    |task: &Task| matches!(task.operation, O::Isolate | O::SetDown | O::Taper | O::Corner | O::Bend);
                let is_elsewhere = !other.parts().iter().all(|at| step.parts().contains(at));
                let last = step.heat + step.needs - 1;
                other.is_hot() && other.heat == last && (is_elsewhere || other.tasks.iter().any(beside))
            };
            let next =
                steps[number + 1..].iter().take_while(|other| other.bar == step.bar).find(|other| other.is_hot());
            let before = steps[..number].iter().rfind(|other| other.is_hot());
            assert!(!alone || !next.is_some_and(shared), "{name}: {}", step.title);
            let runs_in = before.is_some_and(|other| other.heat + other.needs > step.heat);
            // The bar is trued with what is left of the heat before.
            let is_truing = step.tasks.iter().all(|task| task.operation == O::Straighten);
            assert!(!alone || is_truing || !runs_in, "{name}: {}", step.title);
        }
    });
}

#[test]
fn who_heats_for_the_next_step_is_told() {
    let seen = std::cell::Cell::new(0);
    each(|name, steps| {
        let mut last = 0;
        for (number, pair) in steps.windows(2).enumerate() {
            let begins = pair[0].is_hot() && pair[0].heat > last;
            last = last.max(pair[0].heat + pair[0].needs.saturating_sub(1));
            let is_elsewhere = pair[1].parts().iter().any(|at| !pair[0].parts().contains(at));
            let shares = pair[1].is_hot() && pair[1].heat == last && pair[0].bar == pair[1].bar;
            if begins && pair[0].needs == 1 && is_elsewhere && shares && pair[0].bar.is_some() {
                let words = pair[0].heat_with.as_deref().unwrap_or_default();
                let is_told = words.starts_with("Heat “") && words.contains(" too: step");
                assert!(is_told && words.contains(&(number + 2).to_string()), "{name}: “{}”: {words}", pair[0].title);
                seen.set(seen.get() + 1);
            }
        }
    });
    assert!(seen.get() > 3, "{seen:?}");
}

#[test]
fn what_lies_on_the_anvil_for_a_bend_is_what_the_tongs_hold() {
    for (file_name, title) in [
        ("herb-bracket.plan.json", "Forge the corner “corner”"),
        ("trellis-bracket.plan.json", "Forge the corner “corner”"),
    ] {
        let worked = worked(file_name);
        let step = titled(&worked, title);
        let corner = step.parts()[0];
        let lies_far = step.lay.as_ref().unwrap().contains("the side away from");
        assert_eq!(step.hold.unwrap().part > corner, lies_far, "{file_name}: {:?}", step.lay);
        let from = if lies_far { "the end of “corner”" } else { "the start of “corner”" };
        assert!(step.measure[0].starts_with(from), "{file_name}: {:?}", step.measure);
    }
}

#[test]
fn a_card_names_the_gauge_only_where_the_strip_has_a_notch_for_its_step() {
    let mut seen = [0; 2];
    for demo in DEMOS {
        let plan = file::read(demo.text.as_bytes()).unwrap();
        let worked = work_out(&plan, &balance(&plan), &Shop::default());
        for (index, step) in worked.steps.iter().enumerate() {
            let check = step.check.as_deref().unwrap_or_default();
            let mut notches = worked.gauges.iter().filter(|gauge| !gauge.caliper && gauge.steps.contains(&index));
            let has_notch = notches.next().is_some();
            if check.contains("with the gauge") {
                seen[0] += 1;
                assert!(has_notch, "{}: {}: {check}", demo.file_name, step.title);
            } else if check.contains("with the caliper") {
                seen[1] += 1;
                assert!(!has_notch, "{}: {}: {check}", demo.file_name, step.title);
            }
        }
    }
    assert!(seen.iter().all(|count| *count > 0), "{seen:?}");
}

#[test]
fn what_is_larger_than_its_bar_is_upset_and_never_drawn() {
    let plan = demo("line-pin.plan.json");
    let balanced = balance(&plan);
    let told = |at: usize| {
        let segment = plan.bars[0].segment(at).unwrap();
        fh_core::describe::made_words(segment, &balanced.bars[0].segments[at], plan.units.length).form
    };
    // 3/4 in and 3/8 in round, of 1/2 in round.
    assert_eq!(told(2), "upset 3/8 in to 3/4 in round");
    assert_eq!(told(3), "drawn 1 1/2 in to 3/8 in round");
}

#[test]
fn every_card_that_names_the_half_round_swage_has_it_among_its_tools() {
    let mut named = 0;
    for demo in DEMOS {
        let plan = file::read(demo.text.as_bytes()).unwrap();
        let worked = work_out(&plan, &balance(&plan), &Shop::default());
        for (number, step) in worked.steps.iter().enumerate() {
            if !step.lay.as_ref().is_some_and(|lay| lay.contains("half-round swage")) {
                continue;
            }
            named += 1;
            let mut laid_ready = worked.tools.iter().filter(|tool| tool.steps().contains(&number));
            assert!(
                laid_ready.any(|tool| tool.words.contains("half-round groove")),
                "{}: {}",
                demo.file_name,
                step.title
            );
        }
    }
    assert!(named > 0, "{named}");
}

#[test]
fn without_a_half_round_swage_only_one_side_is_rounded() {
    let other_way = |demo: &str, words: &str| {
        let worked = worked(demo);
        worked.tools.iter().find(|tool| tool.words.starts_with(words)).unwrap().other_way
    };
    let half_round = other_way("trowel.plan.json", "swage, half-round groove");
    assert!(half_round.contains("one side only") && !half_round.contains("eight"), "{half_round}");
    let round = other_way("weeding-fork.plan.json", "swage, groove");
    assert!(round.contains("eight sides"), "{round}");
}
