//! A bar that runs into itself in the finished piece is found, with its depth and what to do.
#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_core::balance::balance;
use fh_core::file;
use fh_core::findings::{Finding, Severity};
use fh_work::{INTO_ITSELF, Shop, work_out};

/// What is found of a hook of 10 mm round whose last part is a ring of 20 mm inside.
fn found(units: &str, before: &str, sweep: &str) -> Vec<Finding> {
    let text = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "{units}", "marks": "1 mm" }}, "bars": [
            {{ "name": "hook", "stock": {{ "round": "10 mm" }}, "count": 3, "segments": [
                {{ "name": "shank", "form": {{ "plain": {{ "length": "150 mm" }} }} }}, {before}
                {{ "name": "eye", "form": {{ "plain": {{}} }},
                   "bend": {{ "ring": {{ "inside_diameter": "20 mm", "sweep": "{sweep}" }} }} }} ] }} ] }}"#
    );
    let plan = file::read(text.as_bytes()).unwrap();
    work_out(&plan, &balance(&plan), &Shop::default()).into_itself
}

#[test]
fn a_ring_through_its_shank_is_told_once_with_its_depth_and_a_remedy() {
    // Its outside comes to the middle of the shank: 5 mm, 0.2 in.
    for (units, depth) in [("mm", "5 mm"), ("in", "0.2 in")] {
        let told = found(units, "", "360 deg");
        let [only] = told.as_slice() else { panic!("{told:?}") };
        assert_eq!((only.id, only.severity), (INTO_ITSELF, Severity::Warning));
        assert_eq!((only.place.bar, only.place.segment), (Some(0), Some(1)));
        assert_eq!(only.message, format!("“eye” runs {depth} deep into “shank” of the same bar."));
        assert!(only.remedy.starts_with("Set the neck back"), "{}", only.remedy);
    }
}

#[test]
fn a_ring_that_stops_at_its_set_back_neck_is_not_told() {
    let set_back = r#"{ "name": "neck", "form": { "plain": {} },
        "bend": { "curve": { "angle": "60 deg", "inside_radius": "10 mm", "side": "180 deg" } } },"#;
    assert_eq!(found("mm", set_back, "318 deg"), []);
}
