//! How far a part may be off, and what its metal makes of that.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_core::balance::{Leeway, balance, blunt_tip_mm, leeway, tolerance_mm};
use fh_core::file;
use fh_core::metal::{SectionSize, Shape};
use fh_core::plan::Plan;
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// A plan of one segment on 16 mm square.
fn plan(unit: &str, form: &str) -> Plan {
    let text = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "{unit}", "marks": "1/64 in" }},
          "bars": [{{ "stock": {{ "square": "16 mm" }}, "segments": [
            {{ "form": {{ "plain": {{ "length": "50 mm" }} }} }}, {{ "form": {form} }},
            {{ "form": {{ "plain": {{ "length": "50 mm" }} }} }} ] }}] }}"#
    );
    file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{text}"))
}

fn of(form: &str) -> (Plan, Option<Leeway>) {
    let plan = plan("mm", form);
    let bar = balance(&plan).bars.remove(0);
    let shape = bar.segments[1].shape.clone().unwrap();
    let leeway = leeway(&plan, &plan.bars[0].segments[1].form, &shape, bar.stock);
    (plan, leeway)
}

fn mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn close(got: f64, want: f64) {
    assert!((got - want).abs() < 1e-6, "{got} where {want} is right");
}

#[test]
fn a_drawn_length_follows_from_its_section() {
    let (_, leeway) = of(r#"{ "drawn": { "length": "200 mm", "section": { "square": "10 mm" } } }"#);
    let leeway = leeway.unwrap();
    assert!(!leeway.length_binds);
    close(mm(leeway.thin.length()), 200.0 * (10.0_f64 / 9.5).powi(2));
    close(mm(leeway.fat.length()), 200.0 * (10.0_f64 / 10.5).powi(2));
}

#[test]
fn a_section_that_is_given_as_a_range_is_off_by_that() {
    let (_, leeway) = of(r#"{ "drawn": { "length": "200 mm", "section": { "square": "10 ± 1 mm" } } }"#);
    let leeway = leeway.unwrap();
    close(mm(leeway.thin.length()), 200.0 * (10.0_f64 / 9.0).powi(2));
    close(mm(leeway.fat.length()), 200.0 * (10.0_f64 / 11.0).powi(2));
}

#[test]
fn a_length_with_a_close_range_of_its_own_binds_the_section() {
    let (_, leeway) = of(r#"{ "drawn": { "length": "200 ± 2 mm", "section": { "square": "10 mm" } } }"#);
    let leeway = leeway.unwrap();
    assert!(leeway.length_binds);
    close(mm(leeway.thin.length()), 202.0);
    close(mm(leeway.fat.length()), 198.0);
    let Shape::Prism { section: SectionSize::Square { side, .. }, .. } = leeway.thin else { panic!("no square") };
    close(mm(side), 10.0 * (200.0_f64 / 202.0).sqrt());
    // A wide one does not: the section is closer.
    let (_, wide) = of(r#"{ "drawn": { "length": "200 ± 60 mm", "section": { "square": "10 mm" } } }"#);
    assert!(!wide.unwrap().length_binds);
}

#[test]
fn nothing_is_left_fatter_than_the_bar_and_what_is_as_the_bar_stays() {
    let (_, leeway) = of(r#"{ "drawn": { "length": "100 mm", "section": { "square": "15.8 mm" } } }"#);
    close(mm(leeway.unwrap().fat.length()), 100.0 * (15.8_f64 / 16.0).powi(2));
    // The width is the bar's own: only the thickness is off.
    let (_, flat) =
        of(r#"{ "drawn": { "length": "100 mm", "section": { "flat": { "width": "16 mm", "thickness": "8 mm" } } } }"#);
    close(mm(flat.unwrap().thin.length()), 100.0 * 8.0 / 7.5);
    assert_eq!(of(r#"{ "drawn": { "length": "100 mm", "section": "stock" } }"#).1, None);
}

#[test]
fn a_point_is_off_by_how_blunt_it_is_left() {
    let (plan, leeway) = of(r#"{ "taper": { "length": "90 mm", "to": "point" } }"#);
    let leeway = leeway.unwrap();
    close(mm(leeway.thin.length()), 90.0);
    // Blunt to half a millimetre: a frustum with the metal of the pyramid.
    let mean = (256.0 + 16.0 * 0.5 + 0.25) / 3.0;
    close(mm(leeway.fat.length()), 90.0 * (256.0 / 3.0) / mean);
    let shape = balance(&plan).bars[0].segments[1].shape.clone().unwrap();
    assert_eq!(blunt_tip_mm(&plan, &shape), Some(0.5));
}

#[test]
fn a_plate_spreads_both_ways_as_its_thickness_lets_it() {
    let form =
        r#"{ "flag": { "outline": { "ellipse": { "length": "60 mm", "width": "30 mm" } }, "thickness": "3 mm" } }"#;
    let leeway = of(form).1.unwrap();
    let grown = (3.0_f64 / 2.5).sqrt();
    let Shape::Flag { outline, .. } = &leeway.thin else { panic!("no plate") };
    close(mm(outline.length()), 60.0 * grown);
    close(mm(outline.width()), 30.0 * grown);
}

#[test]
fn a_boss_keeps_its_hole() {
    let form = r#"{ "hole": { "outline": { "disc": { "diameter": "30 mm" } }, "thickness": "6 mm", "hole": { "round": "10 mm" }, "made": "drilled" } }"#;
    let leeway = of(form).1.unwrap();
    // (D² - 10²) t is kept.
    close(mm(leeway.thin.length()), (800.0_f64 * 6.0 / 5.5 + 100.0).sqrt());
}

#[test]
fn thin_metal_is_off_by_a_share_of_itself() {
    let millimeters = plan("mm", r#"{ "plain": { "length": "50 mm" } }"#);
    for (size, off) in [(10.0, 0.5), (3.0, 0.5), (2.4, 0.4), (1.6, 0.2), (0.9, 0.1), (0.1, 0.05)] {
        close(tolerance_mm(&millimeters, size), off);
    }
    let inches = plan("in", r#"{ "plain": { "length": "50 mm" } }"#);
    for (size, off) in [(0.5, 1.0 / 32.0), (3.0 / 16.0, 1.0 / 32.0), (1.0 / 8.0, 1.0 / 64.0), (1.0 / 16.0, 1.0 / 64.0)]
    {
        close(tolerance_mm(&inches, size * 25.4), off * 25.4);
    }
}

/// A section as the reference cases name it, with its tolerances: `flat 30 x 6`.
fn section(words: &str, off: &serde_json::Value) -> String {
    let sizes: Vec<&str> = words.split([' ', 'x']).filter(|word| !word.is_empty()).collect();
    let size = |index: usize| format!("\"{} ± {} mm\"", sizes[index + 1], off[index]);
    match sizes[0] {
        "flat" => format!(r#"{{ "flat": {{ "width": {}, "thickness": {} }} }}"#, size(0), size(1)),
        kind => format!(r#"{{ "{kind}": {} }}"#, size(0)),
    }
}

#[test]
fn written_ranges_make_of_a_length_what_was_worked_out_outside() {
    let all: serde_json::Value = serde_json::from_str(include_str!("../../../tests/data/length_ranges.json")).unwrap();
    for case in all["cases"].as_array().unwrap() {
        let of = &case["inputs"]["mm"];
        let form = if let Some(words) = of["section"].as_str() {
            format!(
                r#"{{ "drawn": {{ "length": "{} mm", "section": {} }} }}"#,
                of["length"],
                section(words, &of["plus_minus"])
            )
        } else if let Some(start) = of["start"].as_str() {
            let [from, to] = [(start, 0), (of["end"].as_str().unwrap(), 1)]
                .map(|(words, end)| section(words, &of["plus_minus"][end]));
            format!(r#"{{ "taper": {{ "length": "{} mm", "from": {from}, "to": {to} }} }}"#, of["length"])
        } else {
            format!(
                r#"{{ "flag": {{ "outline": {{ "leaf": {{ "length": "{} mm", "width": "{} ± {} mm" }} }}, "thickness": "{} ± {} mm" }} }}"#,
                of["length"], of["width"], of["width_pm"], of["thickness"], of["thickness_pm"]
            )
        };
        let text = format!(
            r#"{{ "firstheat": 1, "bars": [{{ "stock": {{ "square": "40 mm" }}, "segments": [{{ "form": {{ "plain": {{ "length": "50 mm" }} }} }}, {{ "form": {form} }}] }}] }}"#
        );
        let plan = file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{text}"));
        let bar = balance(&plan).bars.remove(0);
        let shape = bar.segments[1].shape.clone().unwrap();
        let found = leeway(&plan, &plan.bars[0].segments[1].form, &shape, bar.stock).unwrap();
        for (shape, key) in [(&found.fat, "length_low"), (&found.thin, "length_high")] {
            let (got, want) = (mm(shape.length()), case["expected"][key].as_f64().unwrap());
            assert!((got - want).abs() < 1e-9 * want.max(100.0), "{} {key}: {got} where {want} is right", case["id"]);
        }
    }
}
