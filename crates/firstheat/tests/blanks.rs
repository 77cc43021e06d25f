//! Plates that are cut to shape, for other programs.

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
