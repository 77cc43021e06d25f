//! Blocks between fixed marks, against reference values that were computed outside this project, and by hand.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]

use fh_core::balance::{BarBalance, balance};
use fh_core::contents::{contents, disc_diameter, leaf_width, length_as, twice_as_long_leaf};
use fh_core::edit::{BoundaryMove, BoundaryTarget, Edit, MarkEdit, Neighbor};
use fh_core::file;
use fh_core::metal::SectionSize;
use fh_core::plan::Plan;
use serde_json::Value;
use uom::si::length::millimeter;
use uom::si::volume::cubic_millimeter;

/// The reference cases of a topic: `tests/data/marks_first.json` says how they were made.
pub(crate) fn cases(topic: &str) -> Vec<Value> {
    let all: Value = serde_json::from_str(include_str!("../../../tests/data/marks_first.json")).unwrap();
    let cases = all["cases"].as_array().unwrap();
    let of_topic: Vec<Value> = cases.iter().filter(|case| case["topic"] == topic).cloned().collect();
    assert!(!of_topic.is_empty(), "there is no topic {topic}");
    of_topic
}

pub(crate) fn plan_of(case: &Value) -> Plan {
    read(&case["plan"].to_string())
}

pub(crate) fn read(text: &str) -> Plan {
    file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{text}"))
}

/// Fails where a figure is not the wanted one to the case's tolerance.
pub(crate) fn check(case: &Value, what: &str, got: f64, want: &Value) {
    let want = want.as_f64().unwrap_or_else(|| panic!("{}: {what} is no number", case["id"]));
    let close = (case["rel_tol"].as_f64().unwrap() * want.abs()).max(1e-7);
    assert!((got - want).abs() <= close, "{} {what}: {got} where {want} is right", case["id"]);
}

fn mm(length: uom::si::f64::Length) -> f64 {
    length.get::<millimeter>()
}

/// The numbers of a part by its name, `fork / upper / tine` in a branch: the last name may be the kind of its form.
fn find(plan: &Plan, name: &str) -> usize {
    let flat = plan.bars[0].flat();
    let names: Vec<&str> = name.split(" / ").collect();
    let at = flat.iter().position(|it| it.segment.name == names[0]).unwrap();
    let [split, branch, part] = names.as_slice() else { return at };
    let branches = plan.bars[0].segment(at).unwrap().form.branches();
    let index = branches.iter().position(|it| it.name == *branch).unwrap();
    let chain = fh_core::plan::Chain::Branch { split: at, branch: index };
    let own: Vec<usize> = (0..flat.len()).filter(|other| flat[*other].chain == chain).collect();
    let giving = own.iter().find(|other| flat[**other].segment.gives.is_some());
    *giving.unwrap_or_else(|| panic!("{split} {branch} {part}"))
}

fn check_blocks(case: &Value, plan: &Plan, bar: &BarBalance) {
    let blocks = case["expected"]["blocks"].as_array().unwrap();
    assert_eq!(blocks.len(), bar.blocks.len(), "{}", case["id"]);
    for (want, got) in blocks.iter().zip(&bar.blocks) {
        check(case, "start", mm(got.mark_start), &want["from_mm"]);
        assert_eq!(want["to_mm"].is_number(), got.is_fixed[1], "{}", case["id"]);
        if want["to_mm"].is_number() {
            check(case, "end", mm(got.mark_end), &want["to_mm"]);
        }
        match want["factor"].as_f64() {
            Some(_) => check(case, "factor", got.factor.unwrap(), &want["factor"]),
            None => assert_eq!(got.factor, None, "{}", case["id"]),
        }
        let over = got.over.get::<cubic_millimeter>();
        for (key, sign) in [("over_volume", 1.0), ("short_volume", -1.0)] {
            if want.get(key).is_some() {
                check(case, key, sign * over, &want[key]);
            }
        }
        for (key, sign) in [("over_bar_length", 1.0), ("short_bar_length", -1.0)] {
            if want.get(key).is_some() {
                check(case, key, sign * mm(got.over_length), &want[key]);
            }
        }
        if want["feasible"] == true {
            assert_eq!(over, 0.0, "{}", case["id"]);
        }
        for (name, length) in want["giving_lengths_mm"].as_object().into_iter().flatten() {
            let at = find(plan, name);
            assert!(got.gives.contains(&at), "{}: {name} gives", case["id"]);
            check(case, name, mm(bar.segments[at].forged_length), length);
        }
    }
}

#[test]
fn blocks_are_filled_as_reckoned_outside() {
    for case in cases("blocks") {
        let plan = plan_of(&case);
        let balanced = balance(&plan);
        let bar = &balanced.bars[0];
        check_blocks(&case, &plan, bar);
        for want in case["expected"]["marks"].as_array().unwrap() {
            let name = want["part"].as_str().unwrap();
            let got = &bar.segments[find(&plan, name)];
            check(&case, &format!("{name} ends"), mm(got.mark_end), &want["mark_end_mm"]);
            check(&case, &format!("{name} takes"), mm(got.stock_length), &want["bar_mm"]);
            if want["forged_length_mm"].is_number() {
                check(&case, &format!("{name} is long"), mm(got.forged_length), &want["forged_length_mm"]);
            }
        }
    }
}

#[test]
fn a_block_hands_its_section_on() {
    for case in cases("blocks that hand a section on") {
        let balanced = balance(&plan_of(&case));
        let [first, second] = [0, 1].map(|at| balanced.bars[0].segments[at].clone());
        let thickness = first.derived_length(fh_core::plan::SizeName::Thickness).unwrap();
        check(&case, "thickness", mm(thickness), &case["expected"]["thickness"]);
        check(&case, "taper", mm(second.forged_length), &case["expected"]["taper_length"]);
    }
}

/// A 10 mm square bar in millimetres with these parts.
pub(crate) fn square_bar(bar: &str, segments: &str) -> Plan {
    read(&format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{{ "name": "bar",
            "stock": {{ "square": "10 mm" }}, {bar} "segments": [{segments}] }}] }}"#
    ))
}

fn ids(plan: &Plan) -> Vec<&'static str> {
    balance(plan).findings.iter().map(|finding| finding.id).collect()
}

#[test]
fn less_than_half_a_step_of_the_marks_is_even() {
    let plan = |mark: &str| {
        square_bar("", &format!(r#"{{ "form": {{ "plain": {{ "length": "50 mm" }} }}, "ends_at": "{mark}" }}"#))
    };
    for mark in ["50 mm", "50.5 mm", "49.5 mm", "50.3 mm"] {
        assert!(!ids(&plan(mark)).iter().any(|id| id.starts_with("block")), "{mark}");
    }
    assert!(ids(&plan("50.6 mm")).contains(&"block-over"));
    assert!(ids(&plan("49.4 mm")).contains(&"block-short"));
}

#[test]
fn what_has_no_length_takes_what_the_others_leave() {
    // 100 mm² over 40 mm, less 10 mm of bar for the rest: 3000 mm³ at 25 mm² are 120 mm.
    let plan = square_bar(
        "",
        r#"{ "form": { "drawn": { "section": { "square": "5 mm" } } } },
           { "form": { "plain": { "length": "10 mm" } }, "ends_at": "40 mm" }"#,
    );
    let balanced = balance(&plan);
    assert!((mm(balanced.bars[0].segments[0].forged_length) - 120.0).abs() < 1e-9);
    assert_eq!(balanced.bars[0].blocks[0].gives, [0]);
    assert!(!ids(&plan).contains(&"no-length"));
}

#[test]
fn a_part_named_to_take_up_gives_to_its_block() {
    let plan = square_bar(
        r#""takes_up": "leg","#,
        r#"{ "name": "leg", "form": { "drawn": { "length": "70 mm", "section": { "square": "5 mm" } } }, "ends_at": "30 mm" },
           { "name": "rest", "form": { "plain": { "length": "10 mm" } } }"#,
    );
    let balanced = balance(&plan);
    assert!((mm(balanced.bars[0].segments[0].forged_length) - 120.0).abs() < 1e-9);
    assert!(!ids(&plan).contains(&"takes-up"));
    assert!((mm(balanced.bars[0].segments[1].mark_end) - 40.0).abs() < 1e-9);
}

#[test]
fn a_bend_gives_no_further_than_to_a_sharp_inside() {
    // Round 10 mm square bent through a half turn at a length that gives: at an inside radius of 0 it is 5 π long.
    let plan = square_bar(
        "",
        r#"{ "name": "crook", "form": { "plain": { "length": "60 mm" } }, "bend": { "curve": { "angle": "180 deg" } },
             "gives": "length", "ends_at": "10 mm" }"#,
    );
    let balanced = balance(&plan);
    let [crook] = balanced.bars[0].segments.as_slice() else { panic!() };
    let least = 5.0 * std::f64::consts::PI;
    assert!((mm(crook.forged_length) - least).abs() < 1e-6, "{}", mm(crook.forged_length));
    assert!((mm(balanced.bars[0].blocks[0].over_length) - (10.0 - least)).abs() < 1e-6);
    assert!(ids(&plan).contains(&"block-short") && !ids(&plan).contains(&"bend-too-tight"));
}

#[test]
fn a_leaf_gets_no_shorter_than_it_is_wide() {
    let plan = square_bar(
        "",
        r#"{ "form": { "flag": { "outline": { "leaf": { "length": "60 mm", "width": "20 mm" } }, "thickness": "2 mm" } },
             "gives": "length", "ends_at": "2 mm" }"#,
    );
    let balanced = balance(&plan);
    assert!((mm(balanced.bars[0].segments[0].forged_length) - 20.0).abs() < 1e-6);
    assert!(ids(&plan).contains(&"block-short"));
}

#[test]
fn the_last_block_of_a_cut_bar_is_told_in_metal_too() {
    let plan = square_bar(
        r#""length": "100 mm","#,
        r#"{ "form": { "plain": { "length": "50 mm" } }, "ends_at": "50 mm" },
           { "form": { "plain": { "length": "30 mm" } } }"#,
    );
    let found = balance(&plan).findings;
    let over = found.iter().find(|finding| finding.id == "block-over").unwrap();
    assert_eq!(over.message, "From 50 mm to the end at 100 mm, 20 mm of bar is over (2.00 cm³).");
    assert!(!found.iter().any(|finding| finding.id == "bar-left-over"));
}

#[test]
fn a_fixed_mark_is_printed_as_it_was_typed() {
    let plan = square_bar(
        "",
        r#"{ "form": { "plain": { "length": "50 mm" } }, "gives": "length", "ends_at": "2 1/8 in" },
           { "form": { "plain": { "length": "30.2 mm" } } }"#,
    );
    let bar = &balance(&plan).bars[0];
    assert_eq!(bar.mark_text(0).unwrap(), "2 1/8 in");
    assert_eq!(bar.mark_text(1).unwrap(), "85 mm");
    assert!((mm(bar.segments[0].forged_length) - 53.975).abs() < 1e-9);
    assert_eq!(file::write(&read(&file::write(&plan))), file::write(&plan));
}

#[test]
fn a_file_with_marks_that_cannot_be_says_where() {
    let refused = |segments: &str| {
        let text = format!(
            "{{ \"firstheat\": 1, \"bars\": [{{ \"stock\": {{ \"square\": \"10 mm\" }}, \"segments\": [\n{segments} ] }}] }}"
        );
        file::read(text.as_bytes()).unwrap_err()
    };
    let plain = |mark: &str| format!(r#"{{ "form": {{ "plain": {{ "length": "9 mm" }} }}, "ends_at": "{mark}" }}"#);
    let falls = refused(&format!("{},\n{}", plain("50 mm"), plain("40 mm")));
    assert_eq!((falls.path.as_str(), falls.line), ("bars[0].segments[1].ends_at", Some(3)));
    assert!(falls.message.contains("rise along the bar"), "{falls}");
    assert!(refused(&format!("{},\n{}", plain("50 mm"), plain("50 mm"))).message.contains("rise"));
    assert!(refused(&plain("49 to 51 mm")).message.contains("no range"));
    assert!(refused(&plain("0 mm")).path.ends_with("ends_at"));
    let branch = format!(r#"{{ "segments": [{}] }}"#, plain("5 mm"));
    let split = refused(&format!(r#"{{ "form": {{ "split": {{ "branches": [{branch}, {branch}] }} }} }}"#));
    assert_eq!(split.path, "bars[0].segments[0].form.split.branches[0].segments[0].ends_at");
    assert!(split.message.contains("branch"), "{split}");
}

/// A bar in two blocks: a stem that gives and 10 mm, then a leg that gives and a hold.
fn two_blocks() -> fh_core::edit::History {
    fh_core::edit::History::new(square_bar(
        "",
        r#"{ "name": "stem", "form": { "drawn": { "length": "100 mm", "section": { "square": "5 mm" } } }, "gives": "length" },
           { "name": "collar", "form": { "plain": { "length": "10 mm" } }, "ends_at": "40 mm" },
           { "name": "leg", "form": { "plain": { "length": "20 mm" } }, "gives": "length", "ends_at": "70 mm" },
           { "name": "rest", "form": { "hold": { "length": "50 mm" } } }"#,
    ))
}

fn lengths(plan: &Plan) -> Vec<f64> {
    balance(plan).bars[0].segments.iter().map(|segment| (mm(segment.forged_length) * 1e6).round() / 1e6).collect()
}

fn marks(plan: &Plan) -> Vec<f64> {
    balance(plan).bars[0].segments.iter().map(|segment| (mm(segment.mark_end) * 1e6).round() / 1e6).collect()
}

pub(crate) fn written(text: &str) -> fh_measure::WrittenLength {
    let unit = Some(fh_measure::LengthUnit::Millimeter);
    fh_measure::WrittenLength::parse(text, unit, fh_measure::LengthRange::AboveZero).unwrap()
}

#[test]
fn a_fixed_mark_that_is_moved_takes_its_neighbors_metal_along() {
    let mut history = two_blocks();
    let before = history.plan().clone();
    assert_eq!(lengths(&before), [120.0, 10.0, 30.0, 50.0]);
    let edit = Edit::Mark(MarkEdit::Move { bar: 0, segment: 1, to: written("45 mm") });
    let gave = history.apply(&edit).unwrap();
    assert_eq!(lengths(history.plan()), [140.0, 10.0, 25.0, 50.0]);
    assert_eq!(marks(history.plan())[1..], [45.0, 70.0, 120.0]);
    assert_eq!(gave.iter().map(|gave| gave.segment).collect::<Vec<_>>(), [0, 2]);
    assert!(history.undo() && *history.plan() == before);
}

#[test]
fn dragging_a_fixed_mark_moves_it() {
    let mut history = two_blocks();
    let to = BoundaryTarget::Mark(uom::si::f64::Length::new::<millimeter>(30.0));
    let wish = BoundaryMove { bar: 0, segment: 1, to, neighbor: Neighbor::KeepsMetal };
    history.apply(&Edit::MoveBoundary(wish)).unwrap();
    assert_eq!(history.plan().bars[0].segments[1].ends_at.as_ref().unwrap().text(), "30 mm");
    assert_eq!(lengths(history.plan()), [80.0, 10.0, 40.0, 50.0]);
}

#[test]
fn where_nothing_gives_the_parts_beside_a_moved_mark_do() {
    let mut history = two_blocks();
    for at in [0, 2] {
        let mut segment = history.plan().bars[0].segments[at].clone();
        segment.gives = None;
        history.apply(&Edit::ReplaceSegment { bar: 0, at, segment: Box::new(segment) }).unwrap();
    }
    history.apply(&Edit::Mark(MarkEdit::Move { bar: 0, segment: 1, to: written("41 mm") })).unwrap();
    // The collar lies next to the mark: 100 mm of stem take 25 mm of bar, and it the rest.
    assert_eq!(lengths(history.plan()), [100.0, 16.0, 29.0, 50.0]);
}

#[test]
fn a_boundary_within_a_block_moves_and_what_gives_makes_good() {
    let mut history = two_blocks();
    let wish = |segment, to| {
        let to = BoundaryTarget::Mark(uom::si::f64::Length::new::<millimeter>(to));
        Edit::MoveBoundary(BoundaryMove { bar: 0, segment, to, neighbor: Neighbor::KeepsMetal })
    };
    // The stem's end: the collar behind it gets shorter, for the stem gives to the block.
    history.apply(&wish(0, 34.0)).unwrap();
    assert_eq!(lengths(history.plan()), [136.0, 6.0, 30.0, 50.0]);
    assert_eq!(marks(history.plan())[1], 40.0);
    // The rest lies in the open block: its end moves as on any bar.
    history.apply(&wish(3, 110.0)).unwrap();
    assert_eq!(lengths(history.plan())[3], 40.0);
}

#[test]
fn a_mark_that_is_fixed_or_loosened_moves_nothing() {
    let mut history = two_blocks();
    let before = history.plan().clone();
    let (lengths_before, marks_before) = (lengths(&before), marks(&before));
    history.apply(&Edit::Mark(MarkEdit::Loosen { bar: 0, segment: 1 })).unwrap();
    assert!(history.plan().bars[0].segments[1].ends_at.is_none());
    assert_eq!((lengths(history.plan()), marks(history.plan())), (lengths_before.clone(), marks_before.clone()));
    history.apply(&Edit::Mark(MarkEdit::Fix { bar: 0, segment: 1, at: written("40 mm") })).unwrap();
    assert_eq!((lengths(history.plan()), marks(history.plan())), (lengths_before, marks_before));
    assert!(history.undo() && history.undo() && *history.plan() == before);
    let twice = Edit::Mark(MarkEdit::Loosen { bar: 0, segment: 0 }).applied(history.plan());
    assert!(twice.is_err(), "a mark that is not fixed cannot be loosened");
    let falls = Edit::Mark(MarkEdit::Fix { bar: 0, segment: 1, at: written("70 mm") }).applied(history.plan());
    assert!(falls.unwrap_err().to_string().contains("rise along the bar"));
}

#[test]
fn a_part_taken_away_leaves_its_mark_and_one_put_in_brings_none() {
    let mut history = two_blocks();
    history.apply(&Edit::RemoveSegment { bar: 0, at: 1 }).unwrap();
    assert_eq!(history.plan().bars[0].segments[0].ends_at.as_ref().unwrap().text(), "40 mm");
    assert_eq!(lengths(history.plan())[0], 160.0);
    history.undo();
    let copy = history.plan().bars[0].segments[1].clone();
    history.apply(&Edit::InsertSegment { bar: 0, at: 2, segment: Box::new(copy) }).unwrap();
    assert!(history.plan().bars[0].segments[2].ends_at.is_none());
    history.undo();
    history.apply(&Edit::MoveSegment { bar: 0, from: 1, to: 0 }).unwrap();
    assert_eq!(marks(history.plan())[..2], [10.0, 40.0]);
}

/// The demos and the handbook's examples as they were before marks could be fixed, with the figures that they gave then.
#[test]
fn plans_without_fixed_marks_come_out_as_ever() {
    let all: Value = serde_json::from_str(include_str!("../../../tests/data/old_marks.json")).unwrap();
    let plans = all["plans"].as_object().unwrap();
    assert!(plans.len() > 30);
    for (name, kept) in plans {
        let plan = read(&kept["plan"].to_string());
        let bars = balance(&plan).bars;
        for (index, (bar, want)) in bars.iter().zip(kept["marks"].as_array().unwrap()).enumerate() {
            let paths = plan.bars[index].paths();
            let got: Vec<Value> = bar
                .segments
                .iter()
                .zip(paths)
                .map(|(segment, path)| {
                    let (mark, shop) = (mm(segment.mark_end), segment.mark_end_shop.text());
                    serde_json::json!([path, mark, shop, mm(segment.forged_length)])
                })
                .collect();
            assert_eq!(Value::from(got), *want, "{name}");
        }
        assert_eq!(bars.len(), kept["marks"].as_array().unwrap().len(), "{name}");
    }
}

#[test]
fn what_is_in_a_block_comes_out_as_reckoned_outside() {
    for case in cases("block contents") {
        let plan = plan_of(&case);
        let balanced = balance(&plan);
        let told = contents(&plan, &plan.bars[0], &balanced.bars[0]);
        let [block] = told.as_slice() else { panic!("{}", case["id"]) };
        let (expected, metal) = (&case["expected"], block.metal);
        check(&case, "metal", metal.get::<cubic_millimeter>(), &expected["metal_after_scale"]);
        for (section, want) in expected["lengths"].as_object().unwrap() {
            check(&case, section, mm(length_as(metal, &section_of(section))), want);
        }
        for (what, want) in expected["leaf_width_at_length"].as_object().unwrap() {
            let numbers: Vec<f64> = what.split([' ', ',']).filter_map(|word| word.parse().ok()).collect();
            let width = leaf_width(metal, millimeters(numbers[1]), millimeters(numbers[0]));
            if want.is_null() {
                assert_eq!(width, None, "{} {what}", case["id"]);
            } else {
                check(&case, what, mm(width.unwrap()), want);
            }
        }
        for (thickness, want) in expected["leaf_twice_as_long_as_wide: width at thickness"].as_object().unwrap() {
            let [length, width] = twice_as_long_leaf(metal, millimeters(thickness.parse().unwrap()));
            check(&case, thickness, mm(width), want);
            assert!((mm(length) - 2.0 * mm(width)).abs() < 1e-9);
        }
        for (thickness, want) in expected["disc_diameter_at_thickness"].as_object().unwrap() {
            check(&case, thickness, mm(disc_diameter(metal, millimeters(thickness.parse().unwrap()))), want);
        }
        assert!(block.answers.len() > 8, "{}", block.answers.len());
    }
}

fn millimeters(mm: f64) -> uom::si::f64::Length {
    uom::si::f64::Length::new::<millimeter>(mm)
}

/// `square 10`, `round 8`, `flat 14 x 5`.
fn section_of(words: &str) -> SectionSize {
    let numbers: Vec<f64> = words.split(' ').filter_map(|word| word.parse().ok()).collect();
    match words.split(' ').next() {
        Some("square") => SectionSize::Square { side: millimeters(numbers[0]), edge_radius: millimeters(0.0) },
        Some("round") => SectionSize::Round { diameter: millimeters(numbers[0]) },
        _ => SectionSize::Flat {
            width: millimeters(numbers[0]),
            thickness: millimeters(numbers[1]),
            edge_radius: millimeters(0.0),
        },
    }
}

#[test]
fn a_plan_begins_with_marks_in_a_row_and_its_blocks_are_filled() {
    let mut history = fh_core::edit::History::new(square_bar("", ""));
    let empty = history.plan().clone();
    history.apply(&Edit::Mark(MarkEdit::Row { bar: 0, text: "20, 45 mm, 2 3/4 in".to_owned() })).unwrap();
    assert_eq!(marks(history.plan()), [20.0, 45.0, 69.85]);
    let texts: Vec<_> = (0..3).map(|at| balance(history.plan()).bars[0].mark_text(at).unwrap()).collect();
    assert_eq!(texts, ["20 mm", "45 mm", "2 3/4 in"]);
    let found = balance(history.plan()).findings;
    let open = found.iter().filter(|finding| finding.place.segment.is_some());
    assert_eq!(open.map(|finding| finding.id).collect::<Vec<_>>(), ["not-settled"; 3]);
    // Every answer fills its block, and every step is taken back.
    let told = contents(history.plan(), &history.plan().bars[0], &balance(history.plan()).bars[0]);
    for answer in &told[1].answers {
        let before = history.plan().clone();
        history.apply(&Edit::Mark(MarkEdit::Fill { bar: 0, segment: 1, with: *answer })).unwrap();
        assert_eq!(marks(history.plan()), [20.0, 45.0, 69.85], "{answer:?}");
        assert!(history.undo() && *history.plan() == before);
    }
    let twice = Edit::Mark(MarkEdit::Row { bar: 0, text: "90".to_owned() }).applied(history.plan());
    assert!(twice.unwrap_err().to_string().contains("empty bar"));
    assert!(history.undo() && *history.plan() == empty);
    for (text, want) in [("2,4 1/4,6", [2.0, 4.25, 6.0]), ("12,5; 20 ;30", [12.5, 20.0, 30.0])] {
        history.apply(&Edit::Mark(MarkEdit::Row { bar: 0, text: text.to_owned() })).unwrap();
        assert_eq!(marks(history.plan()), want, "{text}");
        history.undo();
    }
    for wrong in ["", "2, x, 6", "5, 4", "0, 3"] {
        let refused = Edit::Mark(MarkEdit::Row { bar: 0, text: wrong.to_owned() }).applied(history.plan());
        assert!(refused.is_err(), "{wrong}");
    }
}

#[test]
fn one_block_is_left_open_once() {
    let open = r#"{ "form": { "open": {} } }"#;
    let text = format!(
        r#"{{ "firstheat": 1, "bars": [{{ "stock": {{ "square": "10 mm" }}, "segments": [{open},
            {{ "form": {{ "open": {{}} }}, "ends_at": "50 mm" }}] }}] }}"#
    );
    let refused = file::read(text.as_bytes()).unwrap_err();
    assert_eq!(refused.path, "bars[0].segments[1].form.open");
    assert!(refused.message.contains("one is left open at most"), "{refused}");
}
