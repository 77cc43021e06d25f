//! Sections that are left as they grow, in a whole plan.
//!
//! `tests/data/growth.json` was computed independently of this project (mpmath, scipy's quadrature and `solve_ivp`).

use fh_core::balance::{balance, spread};
use serde_json::{Value, json};
use tests::{Spelling, mm, one_bar, read};

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("a number belongs where {value} stands"))
}

/// A bar that is already cut, all of it struck to a thickness or, on edge, to a width.
fn plan([width, height, to, bite, long]: [f64; 5], on_edge: bool, write: Spelling) -> Value {
    let (wide, thick, key) = if on_edge { (height, width, "width") } else { (width, height, "thickness") };
    let mut grown = json!({ "bite": write.of(bite) });
    grown[key] = json!(write.of(to));
    let blade = json!({ "name": "blade", "form": { "drawn": { "length": "50 mm", "section": { "grown": grown } } } });
    let stock = json!({ "flat": { "width": write.of(wide), "thickness": write.of(thick) } });
    let mut plan = one_bar(&stock, &[blade]);
    plan["bars"][0]["length"] = json!(write.of(long));
    plan["bars"][0]["takes_up"] = json!("blade");
    plan
}

#[test]
fn a_section_left_as_it_grows_is_what_ever_smaller_passes_make_of_it() {
    let all: Value = serde_json::from_str(include_str!("../data/growth.json")).unwrap();
    let cases = all["cases"].as_array().unwrap().iter().filter(|case| case["topic"] == "spread over passes");
    let mut checked = 0;
    for case in cases {
        let sizes = ["width", "height", "to_height", "bite", "length"].map(|key| number(&case["inputs"]["mm"][key]));
        let want = &case["expected"]["ever smaller passes (limit)"];
        for (on_edge, write) in
            [(false, Spelling::Millimeters), (true, Spelling::Millimeters), (false, Spelling::Inches)]
        {
            let balance = balance(&read(&plan(sizes, on_edge, write)));
            let blade = &balance.bars[0].segments[0];
            let grown = blade.grown.unwrap();
            let [_, likely, _] = grown.size.unwrap().map(mm);
            let near = |got: f64, want: &Value| {
                assert!((got / number(want) - 1.0).abs() < 2e-9, "{got} where {want} is right")
            };
            near(likely, &want["width"]);
            near(mm(blade.forged_length), &want["length"]);
            assert_eq!(grown.is_width, !on_edge);
            checked += 1;
        }
    }
    assert_eq!(checked, 3);
}

/// Where the bite is so long that the law is at its top all the way, the passes have a closed form: `w = w0 (h0/h1)^0.74`, and
/// with its doubt of 0.1 on either side. Worked by hand from the law.
#[test]
fn the_doubt_of_the_law_is_carried_into_length_and_marks() {
    let (width, height, to): (f64, f64, f64) = (6.0, 20.0, 14.0);
    let plan = read(&plan([width, height, to, 60.0, 50.0], false, Spelling::Millimeters));
    let [low, likely, high] = [0.64, 0.74, 0.84].map(|share| width * (height / to).powf(share));
    let worked = balance(&plan);
    let got = worked.bars[0].segments[0].grown.unwrap().size.unwrap().map(mm);
    for (got, want) in got.into_iter().zip([low, likely, high]) {
        assert!((got - want).abs() < 1e-9, "{got} where {want} is right");
    }
    let length = |wide: f64| 50.0 * width * height / (wide * to);
    let spread = spread(&plan);
    let of_blade = spread.segment(0, 0).expect("a bar with a doubt has a spread").forged_length;
    assert!((mm(of_blade.lowest) - length(high)).abs() < 1e-6 && (mm(of_blade.highest) - length(low)).abs() < 1e-6);
    let note = worked.findings.iter().find(|finding| finding.id == "as-it-grows").unwrap();
    assert!(note.message.contains("outside of what was measured"), "{}", note.message);
}
