//! The slices that the program itself shows along a segment: they add up to its volume.

use crate::volumes::integrate::over_length;
use crate::volumes::sections::{area_and_moment, every};
use fh_core::balance::SegmentBalance;
use fh_core::plan::{Form, FormKind};
use serde_json::{Value, json};
use std::f64::consts::PI;
use tests::{assert_close, balanced, mm, mm2, mm3, one_bar, read};

/// One of every form but the shoulder, whose slices leave its fillets out, and the hole and the split, which stand below.
fn forms() -> Vec<Value> {
    let flat = json!({ "flat": { "width": "30 mm", "thickness": "6 mm" } });
    let flag =
        |outline: Value| json!({ "flag": { "outline": outline, "thickness": { "root": "5 mm", "tip": "2 mm" } } });
    vec![
        json!({ "plain": { "length": "40 mm" } }),
        json!({ "drawn": { "length": "40 mm", "section": flat } }),
        json!({ "taper": { "length": "40 mm", "to": flat, "runout": { "power": 2 } } }),
        flag(json!({ "leaf": { "length": "60 mm", "width": "24 mm" } })),
        flag(json!({ "disc": { "diameter": "30 mm" } })),
        flag(json!({ "trapezoid": { "length": "40 mm", "root": "10 mm", "tip": "30 mm" } })),
        json!({ "peak": { "section": flat } }),
        json!({ "ball": { "diameter": "25 mm" } }),
        json!({ "cube": { "side": "21 mm" } }),
        json!({ "tenon": { "section": { "round": "9 mm" }, "grip": "12 mm", "allowance": "14 mm" } }),
        json!({ "rivet": { "diameter": "8 mm", "grip": "10 mm", "allowance": "12 mm" } }),
        json!({ "collar": { "section": flat, "width": "24 mm", "height": "12 mm" } }),
        json!({ "weld": { "allowance": "14 mm" } }),
        json!({ "trim": { "length": "15 mm" } }),
        json!({ "hold": { "length": "120 mm" } }),
        json!({ "open": { "length": "25 mm" } }),
    ]
}

/// The one place that knows the interface.
fn check(what: &Value, segment: &SegmentBalance) {
    let sliced = over_length(|share| mm2(segment.area_at(share))) * mm(segment.forged_length);
    let volume = mm3(segment.finished_volume) + mm3(segment.trimmed_volume);
    assert_close(&what.to_string(), sliced, volume, 1e-6);
}

#[test]
fn slices_add_up_to_the_volume_at_both_ends_of_the_bar() {
    let stock = json!({ "square": "16 mm" });
    for form in forms() {
        let mut part = json!({ "name": "part", "form": form });
        if form.get("peak").is_some() {
            part["bend"] = json!({ "corner": { "angle": "90 deg", "inside_radius": "4 mm" } });
        }
        let shank = json!({ "name": "shank", "form": { "plain": { "length": "50 mm" } } });
        check(&form, &balanced(&one_bar(&stock, &[part.clone(), shank.clone()])).bars[0].segments[0]);
        check(&form, &balanced(&one_bar(&stock, &[shank, part])).bars[0].segments[1]);
    }
}

#[test]
fn every_form_has_a_case_here() {
    let kinds: Vec<FormKind> = forms()
        .into_iter()
        .map(|form| {
            read(&one_bar(&json!({ "square": "16 mm" }), &[json!({ "form": form })])).bars[0].segments[0].form.clone()
        })
        .map(|form: Form| form.kind())
        .collect();
    for kind in FormKind::ALL {
        let stands_elsewhere = matches!(kind, FormKind::Shoulder | FormKind::Hole | FormKind::Split);
        assert!(stands_elsewhere || kinds.contains(&kind), "{} has no case", kind.name());
    }
}

#[test]
fn the_slices_of_a_boss_leave_its_hole_out() {
    // Before the hole, through it, and behind it: its edge is a step.
    let boss = json!({ "hole": {
        "outline": { "rectangle": { "length": "50 mm", "width": "30 mm" } }, "thickness": "8 mm",
        "hole": { "slot": { "length": "20 mm", "width": "10 mm" } }, "made": "drifted", "at": "18 mm",
    } });
    let balance = balanced(&one_bar(&json!({ "square": "16 mm" }), &[json!({ "form": boss })]));
    let segment = &balance.bars[0].segments[0];
    let part = |from: f64, to: f64| {
        let share = |along: f64| (from + (to - from) * along) / 50.0;
        over_length(|along| mm2(segment.area_at(share(along)))) * (to - from)
    };
    let sliced = part(0.0, 8.0) + part(8.0, 13.0) + part(13.0, 23.0) + part(23.0, 28.0) + part(28.0, 50.0);
    assert_close("boss", sliced, mm3(segment.finished_volume), 1e-4);
}

#[test]
fn the_slices_of_a_split_are_those_of_its_branches() {
    let branch = |length: &str| {
        json!({ "segments": [
            { "form": { "drawn": { "length": "40 mm", "section": { "square": "8 mm" } } } },
            { "form": { "taper": { "length": length, "to": { "square": "4 mm" } } } },
        ] })
    };
    let split = json!({ "split": { "branches": [branch("60 mm"), branch("60 mm")] } });
    let plain = json!({ "form": { "plain": { "length": "50 mm" } } });
    let balance = balanced(&one_bar(&json!({ "square": "16 mm" }), &[plain, json!({ "form": split })]));
    let segment = &balance.bars[0].segments[1];
    let sliced = over_length(|share| mm2(segment.area_at(share))) * mm(segment.forged_length);
    // For drawing they are taken at a few places only.
    assert_close("split", sliced, mm3(segment.finished_volume), 5e-3);
}

#[test]
fn balls_and_cubes_are_what_their_slices_make() {
    let ball = json!({ "name": "ball", "form": { "ball": { "diameter": "30 mm" } } });
    let balance = balanced(&one_bar(&json!({ "round": "16 mm" }), &[ball]));
    let sliced = 30.0 * over_length(|share| PI * (15.0_f64.powi(2) - (30.0 * share - 15.0).powi(2)));
    assert_close("ball", mm3(balance.bars[0].segments[0].finished_volume), sliced, 1e-9);
    let cube = json!({ "name": "cube", "form": { "cube": { "side": "30 mm" } } });
    let balance = balanced(&one_bar(&json!({ "round": "16 mm" }), &[cube]));
    assert_close("cube", mm3(balance.bars[0].segments[0].finished_volume), 27000.0, 1e-12);
}

#[test]
fn a_ring_holds_what_turning_its_section_round_holds() {
    // Pappus, done by rings of slices: ∮ of the section over 2π times the distance from the axis. Bent toward up, the ring's
    // axis lies above the section by the inside radius.
    for outline in every() {
        let ring = json!({ "inside_diameter": "60 mm", "side": "0 deg" });
        let eye = json!({ "name": "eye", "form": { "drawn": { "section": outline.text } }, "bend": { "ring": ring } });
        let balance = balanced(&one_bar(&json!({ "square": "16 mm" }), &[eye]));
        let top = (outline.touch)(PI / 2.0)[1];
        let (area, moment) = area_and_moment(&outline.touch);
        let volume = 2.0 * PI * ((30.0 + top) * area - moment);
        assert_close(&outline.text.to_string(), mm3(balance.bars[0].segments[0].finished_volume), volume, 1e-5);
    }
}
