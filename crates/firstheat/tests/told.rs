//! What the marks of plates, of corners left and of sizes that grow tell other programs.

#![allow(clippy::unwrap_used, reason = "tests")]

use crate::command_line::{Shop, keys};
use serde_json::Value;

#[test]
fn what_a_blank_has_not_got_is_told_to_other_programs() {
    let shop = Shop::new();
    // 60 × 30 mm, 5 mm thick, from a blank of 60 × 20: 60 × 10 mm of it are missing, and nothing is cut away. From one of
    // 60 × 40 mm as much is cut away.
    for (wide, away, missing) in [("20 mm", 0.0, 3000.0), ("40 mm", 3000.0, 0.0)] {
        let plan = format!(
            r#"{{ "firstheat": 1, "bars": [{{ "stock": {{ "square": "12 mm" }}, "segments": [
            {{ "form": {{ "plain": {{ "length": "100 mm" }} }} }}, {{ "form": {{ "flag": {{ "thickness": "5 mm",
            "outline": {{ "rectangle": {{ "length": "60 mm", "width": "30 mm" }} }},
            "blank": {{ "rectangle": {{ "length": "60 mm", "width": "{wide}" }} }} }} }} }}] }}] }}"#
        );
        shop.write("plate.plan.json", plan);
        let json: Value = serde_json::from_str(&shop.succeed(&["marks", "plate.plan.json", "--json"])).unwrap();
        let segments = &json["bars"][0]["segments"];
        assert!(segments[0].get("blank").is_none());
        assert_eq!(keys(&segments[1]["blank"]), ["cut_away_mm3", "missing_mm3", "missing_mm2"]);
        let figure = |key: &str| segments[1]["blank"][key].as_f64().unwrap();
        assert!((figure("cut_away_mm3") - away).abs() < 1e-6 && (figure("missing_mm3") - missing).abs() < 1e-6);
        assert!((figure("missing_mm2") - missing / 5.0).abs() < 1e-6);
    }
}

/// Legs of 12 mm square round an inside radius of 2 mm: the corner takes 12 × (2 + 12)² × (tan 45° − 45° in radians) mm³. What grows
/// is held to its reference in `tests/reference/growth.rs`.
#[test]
fn a_corner_that_is_left_and_a_size_as_it_grows_are_told_to_other_programs() {
    let shop = Shop::new();
    shop.write("arm.plan.json", include_str!("../../../demo-plans/lantern-arm.plan.json"));
    let json: Value = serde_json::from_str(&shop.succeed(&["marks", "arm.plan.json", "--json"])).unwrap();
    let segments = json["bars"][0]["segments"].as_array().unwrap();
    let of = |key: &str| segments.iter().map(|segment| &segment[key]).find(|told| told.is_object()).unwrap();
    let figure = |key: &str, name: &str| of(key)[name].as_f64().unwrap();
    let needed = 12.0 * 14.0 * 14.0 * (1.0 - std::f64::consts::FRAC_PI_4);
    assert!((figure("corner", "needed_mm3") - needed).abs() < 1e-6);
    assert!(figure("corner", "standing_mm3") >= needed - 1e-6);
    let [low, likely, high] = ["low_mm", "likely_mm", "high_mm"].map(|name| figure("grown", name));
    // From a bar of 12 by 18 mm, struck to 8 mm thick: it grows beyond the 12 mm, to no more than the metal gives.
    assert!(12.0 < low && low < likely && likely < high && high < 12.0 * 18.0 / 8.0, "{low} {likely} {high}");
}
