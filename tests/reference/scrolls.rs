//! Scrolls, even and opening, and tapers bent into them; twists; and the rods of an opened basket.

use crate::reference::cases::{Case, cases};
use fh_core::metal::{Bent, Shape};
use fh_core::plan::SizeName;
use serde_json::{Value, json};
use std::f64::consts::TAU;
use tests::{Spelling, balanced, figures, mm, mm3, one_bar, segment};

/// A scroll of a case with one of its sizes left out.
fn scroll(sizes: [(&str, f64); 3], run: &str, eye: &str, form: Value, left_out: &str, write: Spelling) -> Value {
    let mut scroll = json!({ "run": run, "eye": eye });
    for (key, size) in sizes.into_iter().filter(|(key, _)| *key != left_out) {
        // A spiral may begin at its very center.
        scroll[key] = if key == "turns" { json!(size) } else { json!(write.of(size)) };
    }
    json!({ "name": "scroll", "form": form, "bend": { "scroll": scroll } })
}

fn drawn(length: Option<String>) -> Value {
    let mut drawn = json!({ "section": { "square": "6 mm" } });
    if let Some(length) = length {
        drawn["length"] = json!(length);
    }
    json!({ "drawn": drawn })
}

/// The radii of a case from the inside out, its turns, and how it opens.
fn sizes(case: &Case) -> ([(&'static str, f64); 3], &'static str) {
    let (start, end) = (case.input("r_start"), case.input("r_end"));
    let run = if case.id.contains("archimedean") { "even" } else { "opening" };
    let radii = [("inner_radius", start.min(end)), ("outer_radius", start.max(end)), ("turns", case.input("turns"))];
    (radii, run)
}

fn all() -> Vec<Case> {
    let all: Vec<Case> =
        cases("curves", "curves-archimedean-").into_iter().chain(cases("curves", "curves-log-")).collect();
    assert_eq!(all.len(), 5);
    all
}

#[test]
fn the_length_of_a_scroll_follows_from_its_radii_and_turns() {
    for case in all() {
        let (sizes, run) = sizes(&case);
        for write in Spelling::ALL {
            for eye in ["start", "end"] {
                let balance = balanced(&one_bar(
                    &json!({ "square": "10 mm" }),
                    &[scroll(sizes, run, eye, drawn(None), "", write)],
                ));
                case.check("length", mm(segment(&balance, 0).forged_length));
            }
        }
    }
}

#[test]
fn a_scroll_opens_as_the_case_says() {
    for case in all() {
        let (sizes, run) = sizes(&case);
        let bend = scroll(sizes, run, "start", drawn(None), "", Spelling::Millimeters);
        let balance = balanced(&one_bar(&json!({ "square": "10 mm" }), &[bend]));
        let Some(Bent::Scroll { spiral, .. }) = segment(&balance, 0).bent else { panic!("{} is no scroll", case.id) };
        if case.expects("pitch") {
            // By how much the radius grows from one turn to the next.
            case.check("pitch", spiral.radius_at(TAU) - spiral.radius_at(0.0));
        } else {
            case.check("k", spiral.pitch_angle_at(1.0).tan());
            case.check("polar_tangent_angle_deg", 90.0 - spiral.pitch_angle_at(1.0).to_degrees());
        }
    }
}

#[test]
fn each_size_of_a_scroll_follows_from_the_others() {
    for case in all() {
        let (sizes, run) = sizes(&case);
        let length = figures(case.expected("length"));
        for (key, want) in sizes {
            if want == 0.0 {
                continue;
            }
            let form = drawn(Some(format!("{length} mm")));
            let bend = scroll(sizes, run, "start", form, key, Spelling::Millimeters);
            let balance = balanced(&one_bar(&json!({ "square": "10 mm" }), &[bend]));
            let got = segment(&balance, 0);
            let Some(Bent::Scroll { spiral, .. }) = got.bent else { panic!("{} without {key} is no scroll", case.id) };
            let found = match key {
                "inner_radius" => spiral.inner_mm,
                "outer_radius" => spiral.outer_mm,
                _ => spiral.turns,
            };
            assert!((found - want).abs() <= 1e-7 * want, "{} {key}: {found}, {want}", case.id);
            assert_eq!(got.derived.len(), 1, "{} {key}", case.id);
        }
    }
}

#[test]
fn a_scroll_tapers_along_its_length() {
    let all = cases("curves", "curves-scroll-taper-");
    assert_eq!(all.len(), 2);
    for case in all {
        for write in Spelling::ALL {
            let section = |which: &str| {
                let size = |key: &str| write.of(case.inputs[which][key].as_f64().unwrap());
                // Bent upward: the radial size is the thickness.
                json!({ "flat": { "width": size("axial"), "thickness": size("radial") } })
            };
            let taper = json!({ "taper": { "from": section("section_outer"), "to": section("section_inner") } });
            let sizes = [
                ("inner_radius", case.input("r_inner")),
                ("outer_radius", case.input("r_outer")),
                ("turns", case.input("turns")),
            ];
            let plain = json!({ "form": { "plain": { "length": "20 mm" } } });
            let bend = scroll(sizes, "even", "end", taper, "", write);
            let balance = balanced(&one_bar(&json!({ "square": "12 mm" }), &[plain, bend]));
            case.check("length", mm(segment(&balance, 1).forged_length));
            case.check("volume", mm3(segment(&balance, 1).finished_volume));
        }
    }
}

#[test]
fn a_twist_takes_no_more_bar_and_stretches_its_edges() {
    let all = cases("curves", "curves-twist-");
    assert_eq!(all.len(), 2);
    for case in all {
        let (side, length) = (case.input("side"), case.input("length"));
        for turns in [case.input("turns"), -case.input("turns")] {
            let stock = json!({ "square": format!("{side} mm") });
            let twist = json!({
                "form": { "plain": { "length": format!("{length} mm") } }, "bend": { "twist": { "turns": turns } },
            });
            let balance = balanced(&one_bar(&stock, &[twist]));
            let got = segment(&balance, 0);
            case.check("volume", mm3(got.finished_volume));
            case.check("bar_length_needed", mm(got.stock_length));
            let stretch = got.derived(SizeName::EdgeFibre).unwrap();
            case.check("edge_fibre_length", mm(stretch.length.unwrap()));
        }
    }
}

#[test]
fn a_basket_is_as_high_as_its_rods_reach() {
    let case = cases("curves", "curves-basket-1").remove(0);
    let rod = figures(case.expected("rod_length"));
    let branch = |name: &str| {
        let form = json!({ "drawn": { "length": format!("{rod} mm"), "section": { "round": "6 mm" } } });
        json!({ "name": name, "segments": [{ "form": form }] })
    };
    let split = json!({ "name": "basket", "form": { "split": {
        "branches": [branch("one"), branch("two")],
        "opening": { "width": format!("{} mm", 2.0 * case.input("r_max")), "turns": case.input("turns") },
    } } });
    let plain = json!({ "form": { "plain": { "length": "40 mm" } } });
    let balance = balanced(&one_bar(&json!({ "square": "12 mm" }), &[plain.clone(), split, plain]));
    let Some(Shape::Split(split)) = &segment(&balance, 1).shape else { panic!("no split") };
    let height = case.input("height");
    assert!((mm(split.length) - height).abs() <= 1e-8 * height, "{}", mm(split.length));
    case.check("rod_length", split.opening.unwrap().rod_mm(height));
}
