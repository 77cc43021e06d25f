//! Transitions between sections, with every run-out, in every unit, from either end and after another segment.

use crate::reference::cases::{Case, cases, number};
use fh_core::metal::{Shape, mixed_area};
use serde_json::{Value, json};
use tests::{Spelling, balanced, mm2, mm3, one_bar, segment};

/// A section of a case as the plan file names it.
fn section(case: &Value, write: Spelling) -> Value {
    let size = |key: &str| write.of(number(&case[key]));
    match case["kind"].as_str().unwrap() {
        "square" => json!({ "square": size("a") }),
        "diamond" => json!({ "diamond": size("a") }),
        "round" => json!({ "round": size("d") }),
        "flat" => json!({ "flat": { "width": size("w"), "thickness": size("t") } }),
        "rounded_flat" => json!({ "flat": { "width": size("w"), "thickness": size("t"), "edge_radius": size("r") } }),
        "stadium" => json!({ "oval": { "width": size("w"), "thickness": size("t") } }),
        "hexagon" => json!({ "hexagon": size("af") }),
        "octagon" => json!({ "octagon": size("af") }),
        "half_round" => {
            json!({ "half_round": { "width": size("d"), "height": write.of(number(&case["d"]) / 2.0) } })
        }
        "point" => json!("point"),
        "edge" => json!({ "edge": size("w") }),
        kind => panic!("the section {kind} is not known here"),
    }
}

fn runout(case: &Case) -> Value {
    match &case.inputs["profile"] {
        Value::String(eased) if eased == "smoothstep" => json!("eased"),
        profile => match number(&profile["power"]) {
            1.0 => json!("straight"),
            power => json!({ "power": power }),
        },
    }
}

/// The one place that knows the interface: the taper at a place of a plan's bar against all that its case expects.
fn check(case: &Case, plan: &Value, at: usize, turned: bool) {
    let balance = balanced(plan);
    let taper = segment(&balance, at);
    case.check("volume", mm3(taper.finished_volume));
    case.check("area_mid", mm2(taper.area_at(0.5)));
    let (start, end) = if turned != taper.reversed { (1.0, 0.0) } else { (0.0, 1.0) };
    case.check("A0", mm2(taper.area_at(start)));
    case.check("A1", mm2(taper.area_at(end)));
    let Some(Shape::Taper { from, to, .. }) = &taper.shape else { panic!("{} is no taper", case.id) };
    case.check("mixed_area", mm2(mixed_area(&from.section(), &to.section())));
    case.check("mixed_area", mm2(mixed_area(&to.section(), &from.section())));
}

fn taper(case: &Case, write: Spelling, from: Option<Value>, to: &Value, runout: &Value) -> Value {
    let mut form = json!({ "length": write.of(case.input("length")), "to": to, "runout": runout });
    if let Some(from) = from {
        form["from"] = from;
    }
    json!({ "name": "taper", "form": { "taper": form } })
}

#[test]
fn tapers_are_exact_in_every_unit() {
    for case in cases("tapers", "") {
        for write in Spelling::ALL {
            let (from, to) = (section(&case.inputs["start"], write), section(&case.inputs["end"], write));
            let taper = taper(&case, write, Some(from), &to, &runout(&case));
            check(&case, &one_bar(&json!({ "square": "7 mm" }), &[taper]), 0, false);
        }
    }
}

#[test]
fn a_taper_starts_as_the_segment_before_it_ends() {
    let write = Spelling::Millimeters;
    for case in cases("tapers", "") {
        let (from, to) = (section(&case.inputs["start"], write), section(&case.inputs["end"], write));
        let plain = json!({ "name": "shank", "form": { "plain": { "length": "30 mm" } } });
        let drawn = json!({ "name": "neck", "form": { "drawn": { "length": "30 mm", "section": from } } });
        let other = json!({ "round": "33 mm" });
        for start in [None, Some(json!("same"))] {
            let taper = taper(&case, write, start, &to, &runout(&case));
            check(&case, &one_bar(&from, &[plain.clone(), taper.clone()]), 1, false);
            check(&case, &one_bar(&other, &[drawn.clone(), taper]), 1, false);
        }
        let from_stock = taper(&case, write, Some(json!("stock")), &to, &runout(&case));
        check(&case, &one_bar(&from, &[plain, from_stock]), 1, false);
    }
}

#[test]
fn the_first_taper_starts_as_the_stock() {
    let write = Spelling::Centimeters;
    for case in cases("tapers", "") {
        let (from, to) = (section(&case.inputs["start"], write), section(&case.inputs["end"], write));
        let taper = taper(&case, write, None, &to, &runout(&case));
        check(&case, &one_bar(&from, &[taper]), 0, false);
    }
}

#[test]
fn straight_and_eased_tapers_hold_the_same_metal_from_the_other_end() {
    let write = Spelling::Inches;
    for case in cases("tapers", "") {
        let runout = runout(&case);
        if runout.get("power").is_some() {
            continue;
        }
        let (from, to) = (section(&case.inputs["start"], write), section(&case.inputs["end"], write));
        let taper = taper(&case, write, Some(to), &from, &runout);
        let plain = json!({ "name": "shank", "form": { "plain": { "length": "30 mm" } } });
        check(&case, &one_bar(&json!({ "hexagon": "1 in" }), &[plain, taper]), 1, true);
    }
}
