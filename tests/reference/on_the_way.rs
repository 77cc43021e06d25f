//! Shapes that a part has on the way: the size that follows from the metal.
//!
//! `tests/data/on_the_way.json` was computed independently of this project (finished volumes by scipy's quadrature).

use fh_core::balance::balance;
use serde_json::{Value, json};
use tests::{Spelling, assert_close, mm, mm3, one_bar, read};

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("a number belongs where {value} stands"))
}

/// The section that some words name: `square 12.7`, `flat 14 x 6`, `octagon 10.5 across flats`, `point`.
fn section(words: &str, write: Spelling) -> Value {
    let mut parts = words.split_whitespace().filter(|word| !["x", "mm", "to"].contains(word));
    let kind = parts.next().unwrap();
    let mut next = || parts.next().and_then(|size| size.parse().ok()).map(|size| write.of(size)).unwrap();
    match kind {
        "point" => json!("point"),
        "flat" => json!({ "flat": { "width": next(), "thickness": next() } }),
        kind => json!({ kind: next() }),
    }
}

/// The form that some words name, with no length: `drawn to flat 14 x 6`, `a straight taper from square 12.7 to square 4`.
fn form(words: &str, write: Spelling) -> Value {
    if let Some(to) = words.strip_prefix("drawn to ") {
        return json!({ "drawn": { "section": section(to, write) } });
    }
    let ends = words.strip_prefix("a straight taper from ").unwrap();
    let (from, to) = ends.split_once(" to ").unwrap();
    json!({ "taper": { "from": section(from, write), "to": section(to, write) } })
}

/// The finished form of each case, in the words of its inputs.
fn finished(id: &str, write: Spelling) -> Value {
    let mm = |size: f64| write.of(size);
    let flag = |outline: Value, thick: f64, trim: &str| json!({ "flag": { "outline": outline, "thickness": mm(thick), "trim": trim } });
    match id {
        "h-o01" => flag(json!({ "leaf": { "length": mm(64.0), "width": mm(26.0) } }), 3.0, "8 %"),
        "h-o02" => {
            json!({ "taper": { "length": mm(152.4), "from": { "round": mm(9.525) }, "to": { "round": mm(3.175) } } })
        }
        "h-o03" => flag(json!({ "disc": { "diameter": mm(45.0) } }), 5.0, "15 %"),
        "h-o04" => json!({ "taper": { "length": mm(90.0), "from": { "round": mm(12.0) }, "to": "point" } }),
        // 5 % of it trimmed: a flag, for what is drawn is not trimmed.
        "h-o05" => flag(json!({ "rectangle": { "length": mm(180.0), "width": mm(50.0) } }), 4.0, "5 %"),
        other => panic!("{other} is a case that nobody knows"),
    }
}

/// The plan of a case, each of its shapes on the way with this form.
fn plan(case: &Value, write: Spelling, via: impl Fn(&str) -> Value) -> Value {
    let inputs = &case["inputs"]["mm"];
    let on_the_way = inputs["on_the_way"].as_array().unwrap().iter().map(|words| via(words.as_str().unwrap()));
    let part = json!({ "name": "part", "form": finished(case["id"].as_str().unwrap(), write),
        "via": on_the_way.collect::<Vec<_>>() });
    // A part beside it: the tip of the first one lies at the free end.
    let rest = json!({ "form": { "plain": { "length": "100 mm" } } });
    let mut plan = one_bar(&section(inputs["stock"].as_str().unwrap(), write), &[part, rest]);
    plan["scale"] = json!(format!("{} %", number(&inputs["scale"]) * 100.0));
    plan
}

fn cases() -> Vec<Value> {
    let all: Value = serde_json::from_str(include_str!("../data/on_the_way.json")).unwrap();
    all["cases"].as_array().unwrap().clone()
}

#[test]
fn a_shape_on_the_way_is_as_long_as_the_metal_that_it_then_has() {
    let mut checked = 0;
    for case in cases() {
        let (want, share) = (&case["expected"], number(&case["rel_tol"]));
        for write in [Spelling::Millimeters, Spelling::Inches] {
            let worked = balance(&read(&plan(&case, write, |words| json!({ "form": form(words, write) }))));
            let part = &worked.bars[0].segments[0];
            let id = case["id"].as_str().unwrap();
            assert_close(id, mm3(part.finished_volume), number(&want["finished_volume"]), share);
            assert_close(id, mm3(part.trimmed_volume), number(&want["trimmed_volume"]), share);
            assert_close(id, mm(part.stock_length), number(&want["bar_length"]), share);
            let shapes = want["shapes"].as_array().unwrap();
            assert_eq!(part.via.len(), shapes.len());
            for (via, want) in part.via.iter().zip(shapes) {
                let follows = via.follows.unwrap();
                assert_close(id, mm3(via.metal), number(&case["expected"]["bar_volume"]), share);
                assert_close(id, mm(follows.size), number(&want["length"]), share);
                assert_close(id, mm(follows.low), number(&want["length_low"]), share);
                checked += 1;
            }
            let told: Vec<_> = worked.findings.iter().filter(|finding| finding.id.starts_with("way-")).collect();
            assert!(told.is_empty(), "{told:?}");
        }
    }
    assert_eq!(checked, 2 * (2 + 2 + 2 + 2 + 3));
}

#[test]
fn where_its_length_is_written_another_size_can_follow() {
    let mut checked = 0;
    for case in cases() {
        let shapes = case["expected"]["shapes"].as_array().unwrap().clone();
        if shapes.iter().any(|shape| shape.get("width_if_60_long_and_as_thick").is_none()) {
            continue;
        }
        let write = Spelling::Millimeters;
        let via = |words: &str| {
            let mut form = form(words, write);
            form["drawn"]["length"] = json!("60 mm");
            json!({ "form": form, "gives": "width" })
        };
        let worked = balance(&read(&plan(&case, write, via)));
        for (via, want) in worked.bars[0].segments[0].via.iter().zip(shapes) {
            let width = number(&want["width_if_60_long_and_as_thick"]);
            assert_close("width", mm(via.follows.unwrap().size), width, number(&case["rel_tol"]));
            checked += 1;
        }
    }
    assert_eq!(checked, 5);
}
