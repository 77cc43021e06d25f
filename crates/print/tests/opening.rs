//! The opening of the step sheets: the piece, its parts, and what lies ready.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use crate::reading::{texts, words};
use crate::sound::assert_sound;
use fh_core::balance::balance;
use fh_core::plan::{Operation, Plan};
use fh_print::drawing::{Drawing, Text};
use fh_print::paper::{Orientation, Paper};
use fh_print::sheets::{Sheet, document, document_for, usual_orientation};
use fh_work::{OwnedTool, Shop, ToolKind, hot_note, work_out};

fn demo(name: &str) -> Plan {
    let path = format!("{}/../../demo-plans/{name}.plan.json", env!("CARGO_MANIFEST_DIR"));
    fh_core::file::read(&std::fs::read(path).unwrap()).unwrap()
}

fn read(json: &str) -> Plan {
    fh_core::file::read(json.as_bytes()).unwrap()
}

fn sheet(plan: &Plan, sheet: Sheet, paper: Paper, orientation: Orientation) -> Drawing {
    document(plan, &balance(plan), &[sheet], paper, orientation)
}

fn steps(plan: &Plan) -> Drawing {
    sheet(plan, Sheet::Steps, Paper::A4, Orientation::Portrait)
}

/// A straight bar of so many parts, long for its thickness.
fn long_plan(count: usize) -> Plan {
    let part = |number: usize| {
        let side = 8 + number % 4;
        format!(
            r#"{{ "name": "part {number}", "form": {{ "drawn": {{ "length": "33 mm", "section": {{ "square": "{side} mm" }} }} }} }}"#
        )
    };
    let parts: Vec<String> = (1..=count).map(part).collect();
    read(&format!(
        r#"{{ "firstheat": 1, "title": "Rod", "units": {{ "length": "mm", "marks": "1 mm" }},
        "bars": [ {{ "name": "rod", "stock": {{ "square": "12 mm" }}, "segments": [ {} ] }} ] }}"#,
        parts.join(", ")
    ))
}

/// The words up to the first card, in one line.
fn opening(drawing: &Drawing) -> String {
    let said = words(drawing).replace('\n', " ");
    said.split(" done ").next().unwrap().to_owned()
}

#[test]
fn every_part_is_named_with_its_number() {
    let plan = demo("herb-bracket");
    let bar = &plan.bars[0];
    let said = opening(&steps(&plan));
    assert!(said.contains(plan.notes.as_deref().unwrap()), "{said}");
    assert!(said.contains("datum: tip of the leaf"), "{said}");
    let names: Vec<String> =
        (0..bar.count_segments()).map(|at| format!("{} {}", bar.path(at), bar.segment(at).unwrap().name)).collect();
    assert!(said.contains(&names.join(" · ")), "{names:?} in {said}");
}

#[test]
fn every_part_of_every_demo_has_its_number_on_a_picture_on_both_papers() {
    for name in ["herb-bracket", "weeding-fork", "pot-stand", "gate-hook", "twine-stake", "cloche-lifter"] {
        let plan = demo(name);
        for paper in Paper::ALL {
            for orientation in [Orientation::Portrait, Orientation::Landscape] {
                let drawing = sheet(&plan, Sheet::Steps, paper, orientation);
                assert_sound(&drawing, &format!("{name}, {paper:?}, {orientation:?}"));
                let said = opening(&drawing);
                assert!(!said.contains("numbers without room are left out"), "{name}, {paper:?}: {said}");
            }
        }
        let drawing = steps(&plan);
        let said: Vec<&str> = drawing.pages.iter().flat_map(texts).map(Text::content).collect();
        for at in 0..plan.bars[0].count_segments() {
            let (path, segment) = (plan.bars[0].path(at), plan.bars[0].segment(at).unwrap());
            let is_seen = said.iter().any(|words| **words == path);
            assert!(is_seen || !segment.form.is_finished(), "{name}: {path} has no number");
        }
    }
}

#[test]
fn each_bar_has_its_picture_and_its_names() {
    let plan = demo("pot-stand");
    let said = opening(&steps(&plan));
    for words in ["bar 1 of 2: ring, make 1", "bar 2 of 2: leg, make 3", "datum: left end", "datum: tenon end", "knee"]
    {
        assert!(said.contains(words), "{words} in {said}");
    }
}

#[test]
fn a_very_long_bar_of_many_parts_is_drawn_and_told_in_full() {
    let plan = long_plan(60);
    for (paper, orientation) in [(Paper::A4, Orientation::Portrait), (Paper::Letter, Orientation::Landscape)] {
        let drawing = sheet(&plan, Sheet::Steps, paper, orientation);
        assert_sound(&drawing, &format!("sixty parts, {paper:?}"));
        let said = opening(&drawing);
        for number in 1..=60 {
            let row = format!("{number} part {number}");
            assert!(said.contains(&row), "{row} in {said}");
        }
        assert!(said.contains("thickness drawn"), "{said}");
    }
}

#[test]
fn what_has_no_part_or_no_end_does_not_break_the_opening() {
    for form in ["", r#"{ "name": "a", "form": { "plain": { "length": "900000000000 mm" } } }"#] {
        let plan = read(&format!(
            r#"{{ "firstheat": 1, "title": "Nothing", "notes": "{}", "units": {{ "length": "mm", "marks": "1 mm" }},
            "bars": [ {{ "name": "bar", "stock": {{ "square": "12 mm" }}, "segments": [ {form} ] }} ] }}"#,
            "many words ".repeat(500)
        ));
        assert_sound(&steps(&plan), form);
    }
}

#[test]
fn what_is_read_before_the_first_heat_stands_in_its_order() {
    let plan = demo("herb-bracket");
    let said = opening(&steps(&plan));
    let heads = [
        "The piece",
        "How to read the cards",
        "Have ready, for these steps",
        "Gauges, and what the caliper measures",
        "Heat and scale",
    ];
    let places: Vec<usize> =
        heads.iter().map(|head| said.find(head).unwrap_or_else(|| panic!("{head} in {said}"))).collect();
    assert!(places.is_sorted(), "{places:?}");
    for thing in ["rule, square and scriber", "dividers", "the mark sheet", "the templates", "the gauge strip"] {
        assert!(said.contains(thing), "{thing} in {said}");
    }
    assert!(said.contains(&hot_note(&plan).unwrap()));
}

#[test]
fn a_tool_is_listed_once_with_its_steps_and_what_does_in_its_place() {
    let plan = demo("gate-hook");
    let said = opening(&steps(&plan)).replace('⁄', "/");
    for words in ["cross-peen hammer: 6", "spring fuller, 1/4 in: 3, 7"] {
        assert_eq!(said.matches(words).count(), 1, "{words} in {said}");
    }
    // Two mandrels of one size are one, and who has said nothing of their tools is not told what to do without them.
    assert_eq!(said.matches("mandrel, 5/8 in").count() + said.matches("mandrel 5/8 in").count(), 1, "{said}");
    assert!(!said.contains("No cross-peen hammer?"), "{said}");
    let shop = Shop { tools: vec![OwnedTool { kind: ToolKind::Swage, from_mm: None, to_mm: None }], ..Shop::default() };
    let own = document_for(&plan, &balance(&plan), &shop, &[Sheet::Steps], Paper::A4, Orientation::Portrait);
    let said = opening(&own).replace('⁄', "/");
    assert_eq!(said.matches("No cross-peen hammer? Spread over the horn").count(), 1, "{said}");
    // A mandrel that may be the horn says so in its name.
    assert!(!said.contains("No swage?") && !said.contains("No mandrel 1 1/4"), "{said}");
}

/// What a step's words send the hand for lies ready.
#[test]
fn what_the_words_of_a_step_name_is_laid_ready() {
    let mut seen = 0;
    for file in std::fs::read_dir(format!("{}/../../demo-plans", env!("CARGO_MANIFEST_DIR"))).unwrap() {
        let path = file.unwrap().path();
        if !path.to_string_lossy().ends_with(".plan.json") {
            continue;
        }
        let plan = fh_core::file::read(&std::fs::read(&path).unwrap()).unwrap();
        let worked = work_out(&plan, &balance(&plan), &Shop::default());
        let said = opening(&steps(&plan)).to_lowercase();
        for (number, step) in worked.steps.iter().enumerate() {
            let told: String =
                [&step.lay, &step.check].into_iter().flatten().map(|words| words.to_lowercase()).collect();
            let words = [" file ", "peen", "countersink", "v-block", "swage block", "caliper"];
            for word in words.iter().filter(|word| told.contains(**word)) {
                let listed = worked.tools.iter().any(|tool| tool.words.to_lowercase().contains(word.trim()));
                assert!(listed || said.contains(word.trim()), "{path:?}, {}: {word}", step.title);
                seen += 1;
            }
            if step.tasks.iter().any(|task| matches!(task.operation, Operation::Split | Operation::Drift)) {
                let hammer = worked.tools.iter().find(|tool| tool.kind == ToolKind::Hammer).unwrap();
                assert!(hammer.steps().contains(&number), "{path:?}: {}", step.title);
            }
        }
    }
    assert!(seen > 10, "{seen}");
}

#[test]
fn a_gauge_is_listed_with_its_steps_and_what_the_caliper_measures_says_so() {
    let plan = demo("herb-bracket");
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    let said = opening(&steps(&plan));
    assert!(worked.gauges.iter().any(|gauge| gauge.caliper) && worked.gauges.iter().any(|gauge| !gauge.caliper));
    for gauge in &worked.gauges {
        let by = if gauge.caliper { " (caliper)" } else { "" };
        assert!(said.contains(&format!("{}{by}: {}", gauge.words, gauge.steps[0] + 1)), "{gauge:?} in {said}");
    }
}

#[test]
fn the_notch_of_a_least_size_must_not_go_over() {
    let plan = demo("herb-bracket");
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    let least: Vec<_> = worked.gauges.iter().filter(|gauge| gauge.what.contains("at least")).collect();
    assert!(!least.is_empty());
    let said = opening(&steps(&plan));
    for gauge in least {
        assert!(gauge.go_mm.is_none() && (gauge.no_go_mm - gauge.size_mm).abs() < 1e-9, "{gauge:?}");
        assert!(gauge.hot_mm.is_none_or(|hot| hot > gauge.no_go_mm), "{gauge:?}");
        assert!(said.contains(&format!("at least {}", gauge.words)), "{gauge:?} in {said}");
    }
    let strip = words(&sheet(&plan, Sheet::Gauges, Paper::A4, Orientation::Landscape));
    assert!(strip.contains("hot no go"), "{strip}");
}

#[test]
fn the_table_of_steps_has_no_picture() {
    let plan = demo("herb-bracket");
    let said = words(&sheet(&plan, Sheet::StepList, Paper::A4, usual_orientation(&[Sheet::StepList])));
    assert!(!said.contains("The piece\n") && !said.contains("from the side"), "{said}");
    assert!(said.contains("Hot sizes are for 950 °C:"), "{said}");
}

#[test]
fn a_band_names_its_datum_end_and_contradicts_no_card() {
    let said = words(&steps(&demo("herb-bracket")));
    assert!(said.contains("at the left: tip of the leaf; hatched: what the step works"), "{said}");
    assert!(!said.contains("not to scale"), "{said}");
}
