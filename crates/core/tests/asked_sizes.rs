//! Asked sizes against reference values that were computed outside this project, with scipy and by closed forms, and by hand.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]

use crate::blocks::{cases, check, read};
use fh_core::balance::{Balance, GaveFor, SizeMissed, balance};
use fh_core::edit::{Edit, History};
use fh_core::plan::{AskedSize, Plan};
use serde_json::{Value, json};
use uom::si::f64::Length;
use uom::si::length::millimeter;

fn mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// One part of a path: a straight of so many mm, or a bend with its angle, inside radius and side.
fn part(index: usize, step: &Value, now: f64) -> Value {
    let name = format!("p{index}");
    if step[0] == "s" {
        let long = step[1].as_f64().unwrap_or(now);
        return json!({ "name": name, "form": { "plain": { "length": format!("{long} mm") } } });
    }
    let curve = json!({
        "angle": format!("{} deg", step[1]), "inside_radius": format!("{} mm", step[2]), "side": format!("{} deg", step[4])
    });
    json!({ "name": name, "form": { "plain": {} }, "bend": { "curve": curve } })
}

/// A bar of a stock bent along a path, what gives being `now` mm long, with sizes asked.
fn bent(stock: &Value, path: &Value, now: &[f64], sizes: &Value) -> Plan {
    let mut now = now.iter();
    let steps = path.as_array().unwrap().iter().enumerate();
    let parts: Vec<Value> = steps
        .map(|(index, step)| {
            let gives = step[0] == "s" && step[1].is_null();
            part(index, step, if gives { *now.next().unwrap() } else { 0.0 })
        })
        .collect();
    let plan =
        json!({ "firstheat": 1, "bars": [{ "name": "bar", "stock": stock, "segments": parts }], "sizes": sizes });
    read(&plan.to_string())
}

fn square(side: &Value) -> Value {
    json!({ "square": format!("{side} mm") })
}

fn long(balance: &Balance, part: usize) -> f64 {
    mm(balance.bars[0].segments[part].forged_length)
}

fn end_to_end(size: &Value, kept_by: &str) -> Value {
    json!([{ "name": "reach", "from": { "part": "p0", "at": "start" }, "to": size["to"], "size": size["size"],
        "kept_by": kept_by }])
}

/// The reference case of an id.
fn case(id: &str) -> Value {
    let topics = ["asked size, apex to apex", "asked size in space", "asked size, overall", "two asked sizes at once"];
    let more =
        ["asked size, eye to shoulder", "block and asked size at once", "asked size, overall, round bar in space"];
    let mut all = topics.into_iter().chain(more).flat_map(cases);
    all.find(|case| case["id"] == id).unwrap_or_else(|| panic!("{id}"))
}

#[test]
fn apex_to_apex_is_taken_along_the_leg_and_in_space() {
    for id in ["e-o01", "e-o02"] {
        let (case, inputs) = (case(id), case(id)["inputs"]["mm"].clone());
        let corner = |index: usize, side: u32| {
            let of = &inputs["corners"][index];
            json!({ "name": format!("c{index}"), "form": { "peak": { "section": "stock" } }, "bend": { "corner": {
                "angle": format!("{} deg", of[0]), "inside_radius": format!("{} mm", of[1]), "side": format!("{side} deg") } } })
        };
        let straight = |name: &str| json!({ "name": name, "form": { "plain": { "length": "90 mm" } } });
        let far_side = if inputs["opposite"] == true { 180 } else { 0 };
        let parts = json!([straight("a"), corner(0, 0), straight("leg"), corner(1, far_side), straight("b")]);
        let size = |taken: Value| {
            json!({ "name": "apexes", "from": { "part": "c0", "at": "apex" }, "to": { "part": "c1", "at": "apex" },
                "taken": taken, "size": format!("{} mm", inputs["wanted"]), "kept_by": "leg" })
        };
        for (taken, key) in [
            (json!({ "along": "leg" }), "straight_between_for_size_along_the_leg"),
            (json!("in_space"), "straight_between_for_size_in_space"),
        ] {
            let stock = square(&inputs["thickness"]);
            let middles = json!({ "from": { "part": "c0", "at": "middle" }, "to": { "part": "c1", "at": "middle" },
                "taken": "on_straight_bar", "size": "1 mm" });
            let plan = json!({ "firstheat": 1, "bars": [{ "stock": stock, "segments": parts }],
                "sizes": [size(taken), middles] });
            let balance = balance(&read(&plan.to_string()));
            check(&case, key, long(&balance, 2), &case["expected"][key]);
            check(&case, "size", mm(balance.sizes[0].value.unwrap()), &inputs["wanted"]);
            assert!(balance.sizes[0].met && balance.sizes[0].missed.is_none());
            if key.ends_with("leg") {
                let key = "middle_to_middle_on_the_straight_forged_bar";
                check(&case, key, mm(balance.sizes[1].value.unwrap()), &case["expected"][key]);
            }
        }
    }
}

#[test]
fn a_straight_that_gives_keeps_a_size_in_space_by_the_nearest_of_all_lengths() {
    for id in ["e-o03", "e-o04", "e-o05", "e-o06"] {
        let (case, inputs) = (case(id), case(id)["inputs"]["mm"].clone());
        let path = inputs["path"].as_array().unwrap();
        let gives = path.iter().position(|step| step[0] == "s" && step[1].is_null()).unwrap();
        let (thick, last) = (path[1][3].clone(), path.len() - 1);
        let to = if id == "e-o04" {
            json!({ "part": "p7", "at": "apex" })
        } else {
            json!({ "part": format!("p{last}"), "at": "end" })
        };
        let asked = |size: &Value| {
            let size = json!({ "to": to, "size": format!("{size} mm") });
            end_to_end(&size, &format!("p{gives}"))
        };
        let at = |size: &Value, now: f64| balance(&bent(&square(&thick), &inputs["path"], &[now], &asked(size)));
        let found = at(&inputs["wanted"], inputs["now"].as_f64().unwrap());
        check(&case, "length", long(&found, gives), &case["expected"]["giving_length"]);
        check(&case, "all", mm(found.bars[0].forged_length), &case["expected"]["centre_line_length_in_all"]);
        for other in case["expected"]["all_solutions"].as_array().unwrap() {
            let near = at(&inputs["wanted"], other.as_f64().unwrap() + 0.4);
            check(&case, "other length", long(&near, gives), other);
        }
        let least = &case["expected"]["least_distance_possible"];
        let none = at(&json!(least.as_f64().unwrap() / 2.0), 60.0);
        let Some(SizeMissed::OutOfReach { nearest }) = none.sizes[0].missed else { panic!("{id}: {:?}", none.sizes) };
        assert!((mm(nearest) - least.as_f64().unwrap()).abs() < 1e-3, "{id}: {} where {least} is least", mm(nearest));
        assert!((long(&none, gives) - 60.0).abs() < 1e-9, "nothing moves");
    }
}

#[test]
fn a_size_overall_is_taken_on_the_metal() {
    for id in ["e-o07", "e-o08", "e-o12"] {
        let (case, inputs) = (case(id), case(id)["inputs"]["mm"].clone());
        let path = inputs["path"].as_array().unwrap();
        let gives = path.iter().position(|step| step[0] == "s" && step[1].is_null()).unwrap();
        let stock = match inputs.get("diameter") {
            Some(diameter) => json!({ "round": format!("{diameter} mm") }),
            None => square(&inputs["thickness"]),
        };
        let word = |axis: &str| match axis {
            "x" => "along",
            "z" => "up",
            _ => "across",
        };
        let size = |axis: &str| json!({ "overall": { "direction": word(axis) }, "size": "1 mm" });
        let kept = json!({ "overall": { "direction": word(inputs["axis"].as_str().unwrap()) },
            "size": format!("{} mm", inputs["wanted"]), "kept_by": format!("p{gives}") });
        let balance = balance(&bent(&stock, &inputs["path"], &[50.0], &json!([kept, size("x"), size("y"), size("z")])));
        check(&case, "length", long(&balance, gives), &case["expected"]["giving_length"]);
        for (index, axis) in ["x", "y", "z"].into_iter().enumerate() {
            let expected = &case["expected"];
            let want = expected.get(format!("overall_{axis}")).unwrap_or(&expected["overall"][axis]);
            if want.is_number() {
                check(&case, axis, mm(balance.sizes[index + 1].value.unwrap()), want);
            }
        }
    }
}

#[test]
fn two_parts_keep_two_sizes_together() {
    let (case, inputs) = (case("e-o09"), case("e-o09")["inputs"]["mm"].clone());
    let sizes = json!([
        { "name": "reach", "overall": { "direction": "along" }, "size": format!("{} mm", inputs["wanted"][0]), "kept_by": "p0" },
        { "name": "height", "overall": { "direction": "up" }, "size": format!("{} mm", inputs["wanted"][1]), "kept_by": "p2" }
    ]);
    let balance = balance(&bent(&square(&inputs["thickness"]), &inputs["path"], &[100.0, 80.0], &sizes));
    check(&case, "first", long(&balance, 0), &case["expected"]["giving_lengths"][0]);
    check(&case, "second", long(&balance, 2), &case["expected"]["giving_lengths"][1]);
    check(&case, "all", mm(balance.bars[0].forged_length), &case["expected"]["centre_line_length_in_all"]);
}

#[test]
fn the_inside_of_an_eye_has_a_near_and_a_far_side() {
    let (case, inputs) = (case("e-o10"), case("e-o10")["inputs"]["mm"].clone());
    for (at, key) in [
        ("far_inside", "straight_if_far_inside"),
        ("middle", "straight_if_centre"),
        ("near_inside", "straight_if_near_inside"),
    ] {
        let ring = json!({ "name": "eye", "form": { "plain": {} },
            "bend": { "ring": { "inside_diameter": format!("{} mm", inputs["inside_diameter"]) } } });
        let shoulder =
            json!({ "name": "shoulder", "form": { "shoulder": { "to": "stock", "radius": "1 mm", "sides": "all" } } });
        let shank = json!({ "name": "shank", "form": { "plain": { "length": "60 mm" } } });
        let size = json!({ "from": { "part": "shank", "at": "start" }, "to": { "part": "eye", "at": at },
            "taken": { "along": "shank" }, "size": format!("{} mm", inputs["wanted"]), "kept_by": "shank" });
        let stock = json!({ "square": format!("{} mm", inputs["thickness"]) });
        let plan = json!({ "firstheat": 1, "bars": [{ "stock": stock, "segments": [shoulder, shank, ring] }], "sizes": [size] });
        let balance = balance(&read(&plan.to_string()));
        check(&case, key, long(&balance, 1), &case["expected"][key]);
        check(&case, "eye", long(&balance, 2), &case["expected"]["eye_centre_line"]);
    }
}

#[test]
fn a_block_and_a_size_are_settled_together() {
    let (case, inputs) = (case("e-o11"), case("e-o11")["inputs"]["mm"].clone());
    let at = |now: f64| {
        let corner = json!({ "name": "c", "form": { "peak": { "section": "stock" } }, "bend": { "corner": {
            "angle": format!("{} deg", inputs["corner"][0]), "inside_radius": format!("{} mm", inputs["corner"][1]) } } });
        let curve = json!({ "name": "d", "form": { "plain": {} }, "bend": { "curve": {
            "angle": format!("{} deg", inputs["curve"][0]), "inside_radius": format!("{} mm", inputs["curve"][1]),
            "side": "180 deg" } } });
        let straight =
            |name: &str, long: f64| json!({ "name": name, "form": { "plain": { "length": format!("{long} mm") } } });
        let parts = json!([straight("A", 60.0), corner, straight("B", now), curve, straight("last", 40.0)]);
        let size = json!({ "from": { "part": "A", "at": "start" }, "to": { "part": "last", "at": "end" },
            "size": format!("{} mm", inputs["wanted"]), "kept_by": "B" });
        let bar = json!({ "stock": square(&inputs["side"]), "length": format!("{} mm", inputs["bar"]), "takes_up": "A",
            "segments": parts });
        balance(&read(&json!({ "firstheat": 1, "bars": [bar], "sizes": [size] }).to_string()))
    };
    let found = at(inputs["now"].as_f64().unwrap());
    check(&case, "A", long(&found, 0), &case["expected"]["A"]);
    check(&case, "B", long(&found, 2), &case["expected"]["B"]);
    for other in case["expected"]["all_B"].as_array().unwrap() {
        check(&case, "other B", long(&at(other.as_f64().unwrap() + 1.0), 2), other);
    }
}

/// A J of 12 mm square, 100 and 40 mm long, its reach kept by its shank; `more` goes into the size.
fn hook(more: &str) -> Plan {
    read(&format!(
        r#"{{ "firstheat": 1, "bars": [{{ "name": "hook", "stock": {{ "square": "12 mm" }}, "segments": [
          {{ "name": "shank", "form": {{ "plain": {{ "length": "100 mm" }} }} }},
          {{ "name": "bow", "form": {{ "plain": {{}} }}, "bend": {{ "curve": {{ "angle": "90 deg", "inside_radius": "14 mm" }} }} }},
          {{ "name": "arm", "form": {{ "plain": {{ "length": "40 mm" }} }} }}] }}],
          "sizes": [{{ "name": "reach", "overall": {{ "direction": "along" }}, "size": "140 mm"{more} }}] }}"#
    ))
}

#[test]
fn a_size_without_a_part_that_gives_is_only_checked() {
    let found = balance(&hook(""));
    // The shank, the bow's outside radius: 100 + 26.
    assert!((mm(found.sizes[0].value.unwrap()) - 126.0).abs() < 1e-9);
    assert!(!found.sizes[0].met);
    let finding = found.findings.iter().find(|finding| finding.id == "size-missed").unwrap();
    assert_eq!(finding.message, "“reach”: it is 126 mm, and 140 mm is asked.");
}

#[test]
fn a_kept_size_moves_the_part_and_says_so() {
    let found = balance(&hook(r#", "kept_by": "shank""#));
    assert!((long(&found, 0) - 114.0).abs() < 1e-9);
    assert!(found.findings.iter().all(|finding| !finding.id.starts_with("size-")));
    let shank = &found.bars[0].segments[0];
    assert!(shank.derived.iter().any(|size| size.gave == Some(GaveFor::AskedSize)));
}

#[test]
fn what_cannot_keep_a_size_is_told() {
    let id = |more: &str| {
        let found = balance(&hook(more));
        assert!((long(&found, 0) - 100.0).abs() < 1e-9, "nothing moves");
        found.findings.iter().find(|finding| finding.id.starts_with("size-")).unwrap().id
    };
    assert_eq!(id(r#", "kept_by": "arm""#), "size-not-changed");
    assert_eq!(id(r#", "kept_by": "leg""#), "size-unknown");
    assert_eq!(id(r#", "bar": "rod""#), "size-unknown");
    let mut plan = hook(r#", "kept_by": "shank""#);
    plan.sizes[0].size = read_size("20 mm");
    let found = balance(&plan);
    let finding = found.findings.iter().find(|finding| finding.id == "size-out-of-reach").unwrap();
    // The bow alone with the arm square to it takes 26 mm, and a shank is 1 mm long at least.
    assert_eq!(finding.message, "“reach”: no size of “shank” makes it 20 mm; the nearest is 27 mm.");
    plan.sizes.push(AskedSize { size: read_size("150 mm"), ..plan.sizes[0].clone() });
    assert!(balance(&plan).findings.iter().any(|finding| finding.id == "size-not-kept"));
}

fn read_size(text: &str) -> fh_measure::WrittenLength {
    fh_measure::WrittenLength::parse(text, None, fh_measure::LengthRange::AboveZero).unwrap()
}

#[test]
fn every_edit_keeps_the_size_and_is_taken_back_in_one_step() {
    let start = hook(r#", "kept_by": "shank""#);
    let mut history = History::new(start.clone());
    let mut bow = start.bars[0].segments[1].clone();
    let Some(fh_core::plan::Bend::Curve { inside_radius, .. }) = &mut bow.bend else { panic!() };
    *inside_radius = Some(read_size("30 mm"));
    let gave = history.apply(&Edit::ReplaceSegment { bar: 0, at: 1, segment: Box::new(bow) }).unwrap();
    assert_eq!(gave.iter().map(|gave| (gave.segment, gave.text.as_str())).collect::<Vec<_>>(), [(0, "98 mm")]);
    assert!(balance(history.plan()).sizes[0].met);
    assert!(history.undo());
    assert_eq!(*history.plan(), start);
}

#[test]
fn a_part_that_is_renamed_stays_in_its_sizes() {
    let start = hook(r#", "kept_by": "shank""#);
    let mut shank = start.bars[0].segments[0].clone();
    shank.name = "stem".to_owned();
    let (renamed, _) = Edit::ReplaceSegment { bar: 0, at: 0, segment: Box::new(shank) }.applied(&start).unwrap();
    assert_eq!(renamed.sizes[0].kept_by.as_deref(), Some("stem"));
    assert!(balance(&renamed).sizes[0].met);
}

#[test]
fn the_gap_between_two_tines_is_taken_between_branches() {
    // Two tines of round 6 mm off a square of 12: as forged they lie as they were cut, 6 mm from middle to middle.
    let plan = read(
        r#"{ "firstheat": 1, "bars": [{ "name": "fork", "stock": { "square": "12 mm" }, "segments": [
          { "name": "shank", "form": { "plain": { "length": "60 mm" } } },
          { "name": "fork", "form": { "split": { "side": "0 deg", "branches": [
            { "name": "one", "segments": [{ "name": "upper", "form": { "drawn": { "length": "80 mm", "section": { "round": "6 mm" } } } }] },
            { "name": "two", "segments": [{ "name": "lower", "form": { "drawn": { "length": "80 mm", "section": { "round": "6 mm" } } } }] }
          ] } } }] }],
          "sizes": [{ "name": "gap", "from": { "part": "upper", "at": "tip" }, "to": { "part": "lower", "at": "tip" }, "size": "6 mm" }] }"#,
    );
    let found = balance(&plan);
    assert!((mm(found.sizes[0].value.unwrap()) - 6.0).abs() < 1e-9, "{:?}", found.sizes);
}

/// An eye bent in the middle of a bar of 10 mm square, between two corners of 70°, 320° round; `more` goes into its size.
fn eye(asked: &str, more: &str) -> Plan {
    let corner = |name: &str| {
        format!(
            r#"{{ "name": "{name}", "form": {{ "peak": {{ "section": "stock" }} }},
              "bend": {{ "corner": {{ "angle": "70 deg", "inside_radius": "2 mm", "side": "180 deg" }} }} }}"#
        )
    };
    read(&format!(
        r#"{{ "firstheat": 1, "bars": [{{ "name": "tie", "stock": {{ "square": "10 mm" }}, "segments": [
          {{ "name": "leg", "form": {{ "plain": {{ "length": "100 mm" }} }} }}, {},
          {{ "name": "eye", "form": {{ "plain": {{}} }}, "bend": {{ "ring": {{ "inside_diameter": "70 mm", "sweep": "320 deg" }} }} }}, {},
          {{ "name": "other leg", "form": {{ "plain": {{ "length": "100 mm" }} }} }}] }}],
          "sizes": [{{ "name": "neck", "from": {{ "part": "left", "at": "apex" }}, "to": {{ "part": "right", "at": "apex" }},
            "size": "{asked}", "kept_by": "eye" }}{more}] }}"#,
        corner("left"),
        corner("right")
    ))
}

/// Inside the eye, in mm, worked by hand: half of its opening is 20° about its middle. Each corner is bent away from the eye, so
/// its outside edge lies 12 tan 35° on in line with the eye's end, and 5 mm nearer to the eye's middle than that line:
/// (R - 5) sin 20° - 12 tan 35° cos 20° is half of the gap, and R - 5 half of the eye.
fn eye_by_hand(gap: f64) -> f64 {
    let (sin, cos) = 20.0_f64.to_radians().sin_cos();
    2.0 * (gap / 2.0 + 12.0 * 35.0_f64.to_radians().tan() * cos) / sin
}

#[test]
fn an_eye_between_two_corners_keeps_its_gap_or_closes_at_its_neck() {
    for (asked, gap) in [("2 mm", 2.0), ("0 mm", 0.0), ("0 in", 0.0), ("0 to 0.5 mm", 0.25)] {
        let found = balance(&eye(asked, ""));
        let size = &found.sizes[0];
        assert!(size.met && size.missed.is_none(), "{asked}: {size:?}");
        assert!((mm(size.value.unwrap()) - gap).abs() <= 1e-6, "{asked}: {size:?}");
        let radius = long(&found, 2) / 320.0_f64.to_radians();
        assert!((2.0 * radius - 10.0 - eye_by_hand(gap)).abs() < 1e-5, "{asked}: {} inside", 2.0 * radius - 10.0);
    }
}

#[test]
fn a_neck_is_closed_together_with_another_size() {
    let reach = r#", { "name": "leg", "from": { "part": "leg", "at": "start" }, "to": { "part": "left", "at": "apex" },
        "taken": { "along": "leg" }, "size": "120 mm", "kept_by": "leg" }"#;
    let found = balance(&eye("0 mm", reach));
    assert!(found.sizes.iter().all(|size| size.met && size.missed.is_none()), "{:?}", found.sizes);
    // The edge lies 12 tan 35° ahead of where the leg ends.
    let by_hand = 120.0 - 12.0 * 35.0_f64.to_radians().tan();
    assert!((long(&found, 0) - by_hand).abs() < 1e-6, "{}", long(&found, 0));
    let radius = long(&found, 2) / 320.0_f64.to_radians();
    assert!((2.0 * radius - 10.0 - eye_by_hand(0.0)).abs() < 1e-5);
}

#[test]
fn nothing_overall_is_refused() {
    let text = r#"{ "firstheat": 1, "bars": [{ "stock": { "square": "12 mm" }, "segments": [] }],
        "sizes": [{ "overall": { "direction": "along" }, "size": "0 mm" }] }"#;
    let error = fh_core::file::read(text.as_bytes()).unwrap_err();
    assert!(error.to_string().contains("an overall size is above 0"), "{error}");
}

/// A frame and a pin, each with a part called tip, and a size on the pin.
fn two_bars(size: &str) -> Plan {
    read(&format!(
        r#"{{ "firstheat": 1, "bars": [
          {{ "name": "frame", "stock": {{ "square": "12 mm" }}, "segments": [
            {{ "name": "side", "form": {{ "plain": {{ "length": "300 mm" }} }} }},
            {{ "name": "tip", "form": {{ "plain": {{ "length": "30 mm" }} }} }}] }},
          {{ "name": "pin", "stock": {{ "round": "8 mm" }}, "segments": [
            {{ "name": "shaft", "form": {{ "plain": {{ "length": "60 mm" }} }} }},
            {{ "name": "tip", "form": {{ "plain": {{ "length": "20 mm" }} }} }}] }}],
          "sizes": [{{ "name": "long", {size} }}] }}"#
    ))
}

#[test]
fn a_size_is_kept_on_the_bar_that_it_names() {
    let plan = two_bars(
        r#""bar": "pin", "from": { "part": "shaft", "at": "start" }, "to": { "part": "tip", "at": "end" },
            "size": "95 mm", "kept_by": "shaft""#,
    );
    let found = balance(&plan);
    assert!(found.sizes[0].met && found.sizes[0].bar == Some(1));
    assert!((mm(found.bars[1].segments[0].forged_length) - 75.0).abs() < 1e-9);
    assert!((mm(found.bars[0].segments[1].forged_length) - 30.0).abs() < 1e-9, "its namesake stays");
}

#[test]
fn a_size_across_two_bars_is_told() {
    let plan = two_bars(
        r#""bar": "frame", "from": { "part": "side", "at": "start" }, "to": { "part": "shaft", "at": "end" }, "size": "95 mm""#,
    );
    let found = balance(&plan);
    let finding = found.findings.iter().find(|finding| finding.id == "size-unknown").unwrap();
    assert_eq!(finding.message, "“long”: “shaft” is on the bar “pin”, not on “frame”, and a size is taken on one bar.");
}
