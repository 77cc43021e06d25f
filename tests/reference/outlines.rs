//! Flags: every outline, with even and with running thickness.

use crate::reference::cases::{Case, cases, number};
use serde_json::{Value, json};
use tests::{Spelling, balanced, mm, mm3, one_bar, segment};

fn outline(case: &Case, write: Spelling) -> Value {
    let size = |key: &str| write.of(case.input(key));
    let both = || json!({ "length": size("length"), "width": size("width") });
    if let Some(points) = case.inputs.get("points") {
        return polygon(points.as_array().unwrap().iter().map(|at| (number(&at[0]), number(&at[1]))), write);
    }
    match case.inputs["outline"].as_str() {
        Some("lens (two equal circular arcs)" | "lens") => json!({ "leaf": both() }),
        Some("ellipse") => json!({ "ellipse": both() }),
        Some("trapezoid") => {
            json!({ "trapezoid": { "length": size("length"), "root": size("width_0"), "tip": size("width_1") } })
        }
        Some(fishtail) if fishtail.starts_with("fishtail") => {
            let (root, tip) = (case.input("root_width") / 2.0, case.input("end_width") / 2.0);
            let (length, notch) = (case.input("length"), case.input("notch_depth"));
            let corners = [(0.0, -root), (length, -tip), (length - notch, 0.0), (length, tip), (0.0, root)];
            polygon(corners.into_iter(), write)
        }
        _ => json!({ "disc": { "diameter": write.of(number(&case.inputs["outline"]["d"])) } }),
    }
}

fn polygon(corners: impl Iterator<Item = (f64, f64)>, write: Spelling) -> Value {
    let corners: Vec<Value> = corners.map(|(along, across)| json!([write.of(along), write.of(across)])).collect();
    json!({ "polygon": corners })
}

/// Root and tip of a thickness that runs along the bar; one size where it is even.
fn thickness(case: &Case, write: Spelling) -> Value {
    let running = |root: f64, tip: f64| json!({ "root": write.of(root), "tip": write.of(tip) });
    if let Some(at) = case.inputs.get("thickness_at") {
        assert_eq!(at["axis"], "x");
        return running(number(&at["from_"][1]), number(&at["to"][1]));
    }
    match case.inputs.get("thickness_start") {
        Some(start) => running(number(start), case.input("thickness_end")),
        None => json!(write.of(case.input("thickness"))),
    }
}

/// The one place that knows the interface: a flag first, last and in the middle of a bar.
fn check(case: &Case, flag: &Value) {
    let plain = json!({ "name": "shank", "form": { "plain": { "length": "30 mm" } } });
    let stock = json!({ "round": "14 mm" });
    for (at, segments) in
        [vec![flag.clone()], vec![plain.clone(), flag.clone()], vec![plain.clone(), flag.clone(), plain]]
            .into_iter()
            .enumerate()
    {
        let at = at.min(1);
        let balance = balanced(&one_bar(&stock, &segments));
        let flag = segment(&balance, at);
        let key = if case.expects("volume") { "volume" } else { "volume_finished" };
        case.check(key, mm3(flag.finished_volume));
        if case.expects("area") && case.inputs["thickness"].is_number() {
            case.check("area", mm3(flag.finished_volume) / case.input("thickness"));
        }
        let bar = mm3(flag.finished_volume) / (std::f64::consts::PI * 49.0);
        assert!((mm(flag.stock_length) - bar).abs() <= 1e-9 * bar, "{}", case.id);
    }
}

#[test]
fn flags_are_exact_in_every_unit() {
    let all: Vec<Case> = cases("outlines", "").into_iter().filter(|case| case.inputs["hole"].is_null()).collect();
    assert_eq!(all.len(), 10);
    for case in all {
        for write in Spelling::ALL {
            let (outline, thickness) = (outline(&case, write), thickness(&case, write));
            check(
                &case,
                &json!({ "name": "flag", "form": { "flag": { "outline": outline, "thickness": thickness } } }),
            );
        }
    }
}

#[test]
fn a_polygon_may_run_either_way_round_and_start_at_any_corner() {
    for case in cases("outlines", "outlines-polygon").into_iter().chain(cases("outlines", "outlines-lintaper")) {
        let write = Spelling::Millimeters;
        let outline = outline(&case, write);
        let corners = outline["polygon"].as_array().unwrap();
        for turn in 0..corners.len() {
            let mut turned = corners.clone();
            turned.rotate_left(turn);
            turned.reverse();
            let flag = json!({ "flag": { "outline": { "polygon": turned }, "thickness": thickness(&case, write) } });
            check(&case, &json!({ "name": "flag", "form": flag }));
        }
    }
}

#[test]
fn a_hole_loses_what_its_making_loses() {
    let all: Vec<Case> =
        cases("outlines", "outlines-boss-").into_iter().filter(|case| !case.inputs["hole"].is_null()).collect();
    assert_eq!(all.len(), 2);
    for case in all {
        for write in Spelling::ALL {
            let of = |key: &str| write.of(number(&case.inputs["hole"][key]));
            let hole = match case.inputs["hole"].get("d") {
                Some(_) => json!({ "round": of("d") }),
                None => json!({ "slot": { "length": of("w"), "width": of("h") } }),
            };
            for (made, lost) in [("drifted", false), ("punched", true), ("drilled", true)] {
                let boss = json!({ "hole": {
                    "outline": outline(&case, write), "thickness": write.of(case.input("thickness")),
                    "hole": hole, "made": made,
                } });
                let stock = json!({ "square": "20 mm" });
                let balance = balanced(&one_bar(&stock, &[json!({ "form": boss })]));
                let boss = segment(&balance, 0);
                case.check("volume_finished", mm3(boss.finished_volume));
                let key = if lost { "stock_volume_if_punched" } else { "stock_volume_if_drifted" };
                case.check(key, mm(boss.stock_length) * 400.0);
                let slug = if lost { case.expected("slug_volume") } else { 0.0 };
                assert!((mm3(boss.trimmed_volume) - slug).abs() <= 1e-9 * slug, "{} {made}", case.id);
            }
        }
    }
}

/// A slug thinner than the hole is deep is planned as a slug of less diameter; here one of half the hole's.
#[test]
fn a_smaller_slug_loses_less() {
    let boss = json!({ "hole": {
        "outline": { "rectangle": { "length": "20 mm", "width": "20 mm" } }, "thickness": "10 mm",
        "hole": { "round": "10 mm" }, "made": "punched", "slug": "5 mm",
    } });
    let balance = balanced(&one_bar(&json!({ "square": "20 mm" }), &[json!({ "form": boss })]));
    let want = std::f64::consts::PI / 4.0 * 25.0 * 10.0;
    assert!((mm3(segment(&balance, 0).trimmed_volume) - want).abs() <= 1e-9 * want);
}
