//! Splits: where the cuts stand and how long the slit is.

use crate::reference::cases::{Case, cases, number};
use fh_core::metal::{Shape, SplitSize};
use serde_json::{Value, json};
use tests::{Spelling, balanced, mm, mm3, one_bar, segment};

/// A branch of this volume: drawn to 10 mm square, so that its length is a short decimal.
fn branch(volume: f64, write: Spelling) -> Value {
    json!({ "segments": [{ "form": { "drawn": { "length": write.of(volume / 100.0), "section": { "square": "10 mm" } } } }] })
}

/// Splits a bar that lies so that the side of its first branch sees its width.
fn split(case: &Case, side: u32, write: Spelling) -> SplitSize {
    let stock = match case.inputs.get("d") {
        Some(diameter) => json!({ "round": write.of(number(diameter)) }),
        None => {
            let (width, thickness) = (write.of(case.input("width")), write.of(case.input("thickness")));
            match side {
                90 | 270 => json!({ "flat": { "width": width, "thickness": thickness } }),
                _ => json!({ "flat": { "width": thickness, "thickness": width } }),
            }
        }
    };
    let volumes: Vec<f64> = case.inputs["branch_volumes"].as_array().unwrap().iter().map(number).collect();
    let branches: Vec<Value> = volumes.iter().map(|volume| branch(*volume, write)).collect();
    let split = json!({ "form": { "split": { "branches": branches, "side": format!("{side} deg") } } });
    let plain = json!({ "form": { "plain": { "length": "50 mm" } } });
    let balance = balanced(&one_bar(&stock, &[plain, split]));
    let got = segment(&balance, 1);
    let whole: f64 = volumes.iter().sum();
    assert!((mm3(got.finished_volume) - whole).abs() <= 1e-9 * whole, "{}", case.id);
    case.check("slit_length", mm(got.stock_length));
    // The parts of each branch lie one behind the other along the whole slit.
    for (number, volume) in volumes.iter().enumerate() {
        let part = segment(&balance, 2 + number);
        case.check("slit_length", mm(part.stock_length));
        assert!((mm3(part.finished_volume) - volume).abs() <= 1e-9 * volume, "{}", case.id);
    }
    let Some(Shape::Split(split)) = &got.shape else { panic!("{} is no split", case.id) };
    (**split).clone()
}

fn check_list(case: &Case, key: &str, got: Vec<f64>) {
    let want: Vec<f64> = case.expected_list(key).iter().map(number).collect();
    assert_eq!(want.len(), got.len(), "{} {key}", case.id);
    for (want, got) in want.iter().zip(&got) {
        assert!((want - got).abs() <= 1e-8 * want, "{} {key}: {got} where {want} is right", case.id);
    }
}

#[test]
fn cuts_stand_where_each_branch_gets_its_metal() {
    let all: Vec<Case> = cases("splits", "splits-2way").into_iter().chain(cases("splits", "splits-3way")).collect();
    assert_eq!(all.len(), 5);
    for case in all {
        for (side, write) in [0, 90, 180, 270].into_iter().zip(Spelling::ALL) {
            let split = split(&case, side, write);
            check_list(&case, "cut_offsets_from_first_side", split.cuts.iter().map(|cut| mm(*cut)).collect());
            let widths = split.branches.iter().map(|branch| mm(branch.raw_width)).collect();
            check_list(&case, "raw_branch_widths", widths);
        }
    }
}

#[test]
fn a_round_bar_is_cut_where_the_chord_divides_its_area() {
    let all = cases("splits", "splits-round");
    assert_eq!(all.len(), 2);
    for case in all {
        for side in [0, 90, 180, 270] {
            let split = split(&case, side, Spelling::Millimeters);
            case.check("cut_offset_from_first_side", mm(split.cuts[0]));
        }
    }
}

/// Plane geometry: a hexagon stood on a flat and cut level by its middle line, and at a quarter of its area.
#[test]
fn a_hexagonal_bar_is_cut_as_the_polygon_it_is() {
    let cut = |first: f64, second: f64, side: &str| {
        let branches = [branch(first, Spelling::Millimeters), branch(second, Spelling::Millimeters)];
        let split = json!({ "form": { "split": { "branches": branches, "side": side } } });
        let plain = json!({ "form": { "plain": { "length": "50 mm" } } });
        let balance = balanced(&one_bar(&json!({ "hexagon": "20 mm" }), &[plain, split]));
        let Some(Shape::Split(split)) = &segment(&balance, 1).shape else { panic!("no split") };
        mm(split.cuts[0])
    };
    assert!((cut(5000.0, 5000.0, "0 deg") - 10.0).abs() < 1e-8);
    // From the flat of side s the width grows by 2/√3 of the depth: s d + d²/√3 = a quarter of (√3/2) f².
    let (flats, root) = (20.0_f64, 3.0_f64.sqrt());
    let (side, quarter) = (flats / root, root / 8.0 * flats * flats);
    let depth = (-side + (side * side + 4.0 * quarter / root).sqrt()) / (2.0 / root);
    let got = cut(2500.0, 7500.0, "0 deg");
    assert!((got - depth).abs() < 1e-8, "{got} where {depth} is right");
}

/// 60 mm of a 20 mm square split into two halves, each drawn to 10 mm square, gives two tines of 120 mm.
#[test]
fn a_fork_of_two_equal_tines() {
    let tine =
        json!({ "segments": [{ "form": { "drawn": { "length": "120 mm", "section": { "square": "10 mm" } } } }] });
    let split = json!({ "form": { "split": { "branches": [tine.clone(), tine] } } });
    let plain = json!({ "form": { "plain": { "length": "50 mm" } } });
    let balance = balanced(&one_bar(&json!({ "square": "20 mm" }), &[split, plain]));
    assert!((mm(segment(&balance, 0).stock_length) - 60.0).abs() < 1e-9);
}
