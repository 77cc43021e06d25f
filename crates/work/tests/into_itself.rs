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

/// A pin with an eye bent in mid-bar, 10 mm square: a loop of 320° between two sharp corners of 70°, both legs side by side.
/// `diameter` is that inside the loop, `gap` what is asked for between the outside edges of the corners.
fn pin(diameter: f64, gap: Option<f64>) -> fh_core::plan::Plan {
    let leg = |name: &str| format!(r#"{{ "name": "{name}", "form": {{ "plain": {{ "length": "80 mm" }} }} }}"#);
    let corner = |name: &str| {
        format!(
            r#"{{ "name": "{name}", "form": {{ "peak": {{ "section": "stock" }} }},
                 "bend": {{ "corner": {{ "angle": "70 deg", "inside_radius": "2 mm", "side": "180 deg" }} }} }}"#
        )
    };
    let eye = format!(
        r#"{{ "name": "eye", "form": {{ "plain": {{}} }},
             "bend": {{ "ring": {{ "inside_diameter": "{diameter} mm", "sweep": "320 deg" }} }} }}"#
    );
    let segments = [leg("leg"), corner("near corner"), eye, corner("far corner"), leg("other leg")].join(", ");
    let sizes = gap.map_or_else(String::new, |gap| {
        format!(
            r#", "sizes": [{{ "name": "neck", "from": {{ "part": "near corner", "at": "apex" }},
                "to": {{ "part": "far corner", "at": "apex" }}, "size": "{gap} mm", "kept_by": "eye" }}]"#
        )
    });
    let text = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "0.1 mm" }}, "bars": [
            {{ "name": "pin", "stock": {{ "square": "10 mm" }}, "segments": [{segments}] }} ]{sizes} }}"#
    );
    file::read(text.as_bytes()).unwrap()
}

/// A corner's outside edge lies R sin 20° - (r + t) tan 35° cos 20° - t/2 sin 20° from the middle of the neck, R being the
/// loop's radius to its middle line (plane geometry).
fn diameter_for(gap: f64) -> f64 {
    let (sin, cos) = 20_f64.to_radians().sin_cos();
    let radius = (gap / 2.0 + 12.0 * 35_f64.to_radians().tan() * cos + 5.0 * sin) / sin;
    2.0 * radius - 10.0
}

#[test]
fn an_eye_between_two_corners_keeps_the_gap_at_its_neck_and_its_diameter_follows() {
    for gap in [0.1, 2.0, 12.0] {
        let plan = pin(60.0, Some(gap));
        let balance = balance(&plan);
        let eye = balance.bars[0].segments[2].derived_length(fh_core::plan::SizeName::InsideDiameter);
        let eye = eye.map(|diameter| diameter.get::<uom::si::length::millimeter>());
        let want = diameter_for(gap);
        assert!(eye.is_some_and(|eye| (eye - want).abs() < 1e-6), "{eye:?} where {want} is right");
        assert!(balance.sizes[0].met, "{:?}", balance.sizes[0]);
        assert_eq!(work_out(&plan, &balance, &Shop::default()).into_itself, []);
    }
}

#[test]
fn a_neck_that_closes_on_itself_is_told_by_its_two_parts() {
    // Just closed at its neck it is not told; 4 mm narrower, with its corners through each other, it is.
    let told = |diameter: f64| {
        let plan = pin(diameter, None);
        work_out(&plan, &balance(&plan), &Shop::default()).into_itself
    };
    assert_eq!(told(diameter_for(0.0)), []);
    let found = told(diameter_for(-4.0));
    assert!(!found.is_empty() && found.iter().all(|found| found.id == INTO_ITSELF), "{found:?}");
    assert_eq!(found[0].message, "“leg” runs 4 mm deep into “other leg” of the same bar.");
}
