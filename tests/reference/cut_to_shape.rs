//! Plates that are spread to a blank and cut to an outline.
//!
//! `tests/data/cut_to_shape.json` was computed independently of this project: polygons with 4,000 chords to an arc (shapely),
//! as each case says.

use crate::reference::cases::number;
use fh_core::balance::Balance;
use fh_core::metal::Shape;
use serde_json::{Value, json};
use std::f64::consts::PI;
use tests::{Spelling, balanced, mm, mm3, one_bar, read};
use uom::si::area::square_millimeter;

fn cases() -> Vec<Value> {
    let all: Value = serde_json::from_str(include_str!("../data/cut_to_shape.json")).unwrap();
    all["cases"].as_array().unwrap().clone()
}

/// Corners as they are written, the other way round where `back`.
fn polygon(corners: &Value, write: Spelling, back: bool) -> Value {
    let mut all: Vec<[f64; 3]> =
        corners.as_array().unwrap().iter().map(|corner| [0, 1, 2].map(|at| number(&corner[at]))).collect();
    if back {
        all.reverse();
        // An arc belongs to the side after its corner.
        let bulges: Vec<f64> = all.iter().cycle().skip(1).take(all.len()).map(|corner| corner[2]).collect();
        all.iter_mut().zip(bulges).for_each(|(corner, bulge)| corner[2] = bulge);
    }
    let mut list = Vec::new();
    for [along, across, bulge] in all {
        list.push(json!([write.of(along), write.of(across)]));
        if bulge != 0.0 {
            let bulges = if bulge > 0.0 { "out" } else { "in" };
            list.push(json!({ "arc": format!("{} deg", 4.0 * bulge.abs().atan() * 180.0 / PI), "bulges": bulges }));
        }
    }
    json!({ "polygon": list })
}

/// A blank by its length and width, and how far its base line lies from its edge; every one of the cases is a rectangle.
fn rectangle(blank: &Value, write: Spelling) -> (Value, String) {
    let [low, high] = [0, 2].map(|corner| [0, 1].map(|at| number(&blank[corner][at])));
    let size = json!({ "length": write.of(high[0]), "width": write.of(high[1] - low[1]) });
    (json!({ "rectangle": size }), write.of(low[1].abs()))
}

fn flags(case: &Value, write: Spelling) -> [Value; 2] {
    let inputs = &case["inputs"]["mm"];
    let thickness = write.of(number(&inputs["thickness"]));
    let outline = polygon(&inputs["outline"], write, false);
    let corners =
        json!({ "outline": outline, "blank": polygon(&inputs["blank"], write, true), "thickness": thickness });
    let (blank, base) = rectangle(&inputs["blank"], write);
    let backward = polygon(&inputs["outline"], write, true);
    let sizes = json!({ "outline": backward, "blank": blank, "base_line": { "blank": base }, "thickness": thickness });
    [corners, sizes]
}

fn plans(case: &Value, write: Spelling) -> impl Iterator<Item = Value> {
    let share = number(&case["inputs"]["mm"]["scale"]) * 100.0;
    let shank = json!({ "name": "shank", "form": { "plain": { "length": "80 mm" } } });
    flags(case, write).into_iter().flat_map(move |flag| {
        let plate = json!({ "name": "plate", "form": { "flag": flag }, "scale": format!("{share} %") });
        let stock = json!({ "square": "12 mm" });
        [one_bar(&stock, &[plate.clone(), shank.clone()]), one_bar(&stock, &[shank.clone(), plate])]
    })
}

fn near(case: &Value, key: &str, got: f64) {
    let Some(want) = case["expected"].get(key).and_then(Value::as_f64) else { return };
    let close = (number(&case["rel_tol"]) * want.abs()).max(1e-7);
    assert!((got - want).abs() <= close, "{} {key}: {got} where {want} is right", case["id"]);
}

fn check(case: &Value, balance: &Balance) {
    let plate =
        balance.bars[0].segments.iter().find(|segment| matches!(segment.shape, Some(Shape::Flag { .. }))).unwrap();
    let shape = plate.shape.as_ref().unwrap();
    let (cut, blank) = (shape.cut().expect("a blank"), shape.blank().expect("a blank"));
    let (Shape::Flag { outline, .. }, Shape::Flag { outline: of_blank, .. }) = (shape, &blank) else {
        panic!("plates")
    };
    near(case, "blank_area", of_blank.area().get::<square_millimeter>());
    near(case, "outline_area", outline.area().get::<square_millimeter>());
    near(case, "blank_volume", mm3(blank.volume()));
    near(case, "finished_volume", mm3(plate.finished_volume));
    near(case, "bar_volume", mm(plate.stock_length) * 144.0);
    near(case, "trimmed_area", cut.away_area.get::<square_millimeter>());
    near(case, "trimmed_area_by_difference_of_shapes", cut.away_area.get::<square_millimeter>());
    near(case, "metal_missing_area", cut.missing_area.get::<square_millimeter>());
    near(case, "trimmed_volume", mm3(plate.trimmed_volume));
    near(case, "share_of_finished_percent", mm3(plate.trimmed_volume) / mm3(plate.finished_volume) * 100.0);
    for (key, outline) in [("outline_centroid", outline), ("blank_centroid", of_blank)] {
        let middle = outline.centroid_mm();
        for axis in [0, 1] {
            let want = number(&case["expected"][key][axis]);
            assert!(
                (middle[axis] - want).abs() <= number(&case["rel_tol"]) * want.abs() + 1e-7,
                "{} {key}",
                case["id"]
            );
        }
    }
    let lies_inside = case["expected"]["outline_lies_in_blank"] == json!(true);
    assert_eq!(cut.missing_area.get::<square_millimeter>() == 0.0, lies_inside, "{}", case["id"]);
    let taken = plate.finished_volume + plate.trimmed_volume - plate.missing_volume;
    assert!((mm3(taken) - mm3(blank.volume())).abs() < 1e-7, "{}: the bar holds the blank", case["id"]);
}

#[test]
fn what_is_cut_off_a_blank_is_what_polygons_with_fine_arcs_say() {
    for case in cases() {
        for write in [Spelling::Millimeters, Spelling::Inches] {
            for plan in plans(&case, write) {
                check(&case, &balanced(&plan));
            }
        }
    }
}

#[test]
fn an_outline_that_runs_out_of_its_blank_is_a_stop_with_the_metal_that_is_missing() {
    for case in cases() {
        for plan in plans(&case, Spelling::Millimeters) {
            let balance = balanced(&plan);
            let found = balance.findings.iter().find(|finding| finding.id == "outline-out-of-blank");
            let Some(missing) = case["expected"].get("metal_missing_area") else {
                assert!(found.is_none(), "{}", case["id"]);
                continue;
            };
            let found = found.expect("a stop");
            assert_eq!(found.severity.name(), "stop");
            let area = number(missing);
            let volume = area * number(&case["inputs"]["mm"]["thickness"]);
            assert!(
                found.message.contains(&format!("{area:.1} mm² of it are missing, {volume:.0} mm³")),
                "{}",
                found.message
            );
            // The arrow is 28 wide, 14 each way, its blank 10.
            assert!(found.remedy.contains("4 mm wider towards you, 4 mm wider away from you"), "{}", found.remedy);
        }
    }
}

#[test]
fn where_the_length_of_bar_is_given_the_blank_gives_and_the_outline_stays() {
    for case in cases() {
        for gives in ["length", "width", "thickness"] {
            let mut plan = plans(&case, Spelling::Millimeters).nth(3).unwrap();
            let free = balanced(&plan);
            let bar = mm(free.bars[0].segments[1].stock_length) * 1.25 + 80.0;
            plan["bars"][0]["length"] = json!(format!("{bar} mm"));
            plan["bars"][0]["takes_up"] = json!("plate");
            plan["bars"][0]["segments"][1]["gives"] = json!(gives);
            let settled = balanced(&plan);
            let [before, after] = [&free, &settled].map(|balance| balance.bars[0].segments[1].shape.clone().unwrap());
            let [own, other] = [&before, &after].map(|shape| match shape {
                Shape::Flag { outline, .. } => outline.clone(),
                _ => panic!("a plate"),
            });
            assert_eq!(own, other, "{} {gives}: the outline stays", case["id"]);
            let factor = (after.blank().unwrap().volume() / before.blank().unwrap().volume()).value;
            assert!((factor - 1.25).abs() < 1e-9, "{} {gives}: {factor}", case["id"]);
            assert!((mm(settled.bars[0].segments[1].stock_length) + 80.0 - bar).abs() < 1e-6);
        }
    }
}

#[test]
fn a_plan_with_a_blank_is_written_as_it_was_read() {
    for case in cases() {
        for plan in plans(&case, Spelling::Inches) {
            let read = read(&plan);
            let written = fh_core::file::write(&read);
            assert_eq!(fh_core::file::read(written.as_bytes()).unwrap(), read);
        }
    }
}
