//! Drawn, tapered and upset work.

use crate::handbook::Tolerance::{Geometry, RoundsUp};
use crate::handbook::{INCH, bar_of, check, forged, warns};
use serde_json::{Value, json};
use tests::{balanced, kg, mm, mm3, one_bar, segment};

const GEOMETRY: &str = "plane geometry";

fn square(side: &str) -> Value {
    json!({ "square": side })
}

fn round(diameter: &str) -> Value {
    json!({ "round": diameter })
}

fn flat(width: &str, thickness: &str) -> Value {
    json!({ "flat": { "width": width, "thickness": thickness } })
}

fn drawn(length: &str, section: &Value) -> Value {
    forged(&json!({ "drawn": { "length": length, "section": section } }))
}

fn taper(length: &str, to: &Value) -> Value {
    forged(&json!({ "taper": { "length": length, "to": to } }))
}

fn plate(length: &str, width: &str, thickness: &str) -> Value {
    let outline = json!({ "rectangle": { "length": length, "width": width } });
    forged(&json!({ "flag": { "outline": outline, "thickness": thickness } }))
}

#[test]
fn the_middle_of_a_plunger_rod() {
    let source = "Cameron Knight, The Mechanician (c. 1869-79), plunger joints: 12.5 : 7 :: 20 : 11.2";
    // 12.5 in² and 7 in² as flats; the sections' shape does not matter. The book prints 11 3/16 in.
    let bar = bar_of(&flat("5 in", "2.5 in"), &[drawn("20 in", &flat("3.5 in", "2 in"))], 0);
    check(source, bar, 11.2 * INCH, Geometry);
}

#[test]
fn the_weight_of_a_stepped_forging() {
    let source = "Shop Practice, vol. 2, weight of forging, fig. 87: 2 15/28 in³ with π = 22/7, 0.7 lb";
    // Parts of 11/14, 1 and 3/4 in³ in wrought iron. 11/14 in³ is a round of 1 in by 1 in with 22/7.
    let parts = [drawn("1 in", &round("1 in")), plate("2 in", "1 in", "1/2 in"), plate("1 1/2 in", "1 in", "1/2 in")];
    let mut plan = one_bar(&flat("1 in", "1/2 in"), &parts);
    plan["material"] = json!("wrought iron");
    let bar = &balanced(&plan).bars[0];
    check(source, mm3(bar.finished_volume), (2.0 + 15.0 / 28.0) * INCH.powi(3), Geometry);
    // At the book's 0.2779 lb/in³ that is 0.7047 lb.
    check(source, kg(bar.finished_mass), (2.0 + 15.0 / 28.0) * 0.2779 * 0.453_592_37, Geometry);
    // Net lengths of 1/2 × 1 in bar: 1 4/7, 2 and 1 1/2 in, worked out from the volumes.
    for (part, inches) in bar.segments.iter().zip([11.0 / 7.0, 2.0, 1.5]) {
        check(source, mm(part.stock_length), inches * INCH, Geometry);
    }
}

#[test]
fn a_square_bolt_head() {
    let source = "Shop Practice, vol. 1, bolts: 1 1/4 in square, 5/8 in high, cut 2 1/4 in of 3/4 in round";
    let head = drawn("5/8 in", &square("1 1/4 in"));
    let bar = bar_of(&round("3/4 in"), &[head], 0);
    check(source, bar, 2.210 * INCH, Geometry);
    check(source, bar, 2.25 * INCH, RoundsUp);
}

#[test]
fn rough_bolt_heads_of_two_inch_bolts() {
    let source =
        "Shop Practice, vol. 2, bolts, upset heads: 3 1/8 in across flats, 2 in high; the bar worked out from them";
    let head = |section: &Value| bar_of(&round("2 in"), &[drawn("2 in", section)], 0);
    check(source, head(&square("3 1/8 in")), 6.217 * INCH, Geometry);
    check(source, head(&json!({ "hexagon": "3 1/8 in" })), 5.384 * INCH, Geometry);
}

#[test]
fn head_stock_by_the_two_book_rules() {
    // W = 1.5 d + 1/8 in; H = W/2 or d. In inches of bar of the same diameter (worked out from the rules).
    let source = "Shop Practice, vols 1 and 2, bolt heads; bar worked out from the rules";
    let rows: [(f64, f64, [f64; 4]); 6] = [
        (0.25, 0.5, [1.273, 1.103, 1.273, 1.103]),
        (0.375, 0.6875, [1.471, 1.274, 1.605, 1.390]),
        (0.5, 0.875, [1.706, 1.477, 1.950, 1.688]),
        (0.625, 1.0625, [1.955, 1.693, 2.300, 1.992]),
        (0.75, 1.25, [2.210, 1.914, 2.653, 2.297]),
        (1.0, 1.625, [2.732, 2.366, 3.362, 2.912]),
    ];
    for (d, w, bars) in rows {
        let (half, full) = (format!("{} in", w / 2.0), format!("{d} in"));
        let across = format!("{w} in");
        let heads = [
            (&half, square(&across)),
            (&half, json!({ "hexagon": across })),
            (&full, square(&across)),
            (&full, json!({ "hexagon": across })),
        ];
        for ((height, section), inches) in heads.into_iter().zip(bars) {
            let bar = bar_of(&round(&full), &[drawn(height, &section)], 0);
            check(source, bar, inches * INCH, Geometry);
        }
    }
}

#[test]
fn swapping_one_stock_for_another() {
    let bar = bar_of(&round("1/2 in"), &[drawn("10 in", &square("3/8 in"))], 0);
    check(GEOMETRY, bar, 7.162 * INCH, Geometry);
}

#[test]
fn a_square_point_uses_a_third_of_its_length() {
    let source = "Controlled Hand Forging, lesson 1 (the target); the answer is plane geometry";
    let bar = bar_of(&square("1/2 in"), &[taper("3 in", &json!("point"))], 0);
    check(source, bar, 1.0 * INCH, Geometry);
}

#[test]
fn a_flat_from_a_heavy_round() {
    let bar = bar_of(&round("2 in"), &[drawn("16 in", &flat("2 in", "1/2 in"))], 0);
    check(GEOMETRY, bar, 5.093 * INCH, Geometry);
}

#[test]
fn quick_ratios_of_forged_to_used_length() {
    // Square to round is 4/π, where the trade says a quarter more.
    let one = square("1 in");
    let bar = |segment: Value| bar_of(&one, &[segment], 0);
    check(GEOMETRY, bar(taper("12 in", &json!({ "edge": "1 in" }))) * 2.0, 12.0 * INCH, Geometry);
    check(GEOMETRY, bar(taper("12 in", &json!("point"))) * 3.0, 12.0 * INCH, Geometry);
    check(GEOMETRY, bar(drawn("15.28 in", &round("1 in"))), 12.0 * INCH, Geometry);
    let halved = bar_of(&round("1 in"), &[drawn("12 in", &round("1/2 in"))], 0);
    check(GEOMETRY, halved * 4.0, 12.0 * INCH, Geometry);
}

#[test]
fn the_bulb_of_a_spoon() {
    let bulb = |side: &str| bar_of(&square("1/2 in"), &[drawn("1 in", &square(side))], 0);
    check(GEOMETRY, bulb("5/8 in"), 1.5625 * INCH, Geometry);
    check(GEOMETRY, bulb("3/4 in"), 2.25 * INCH, Geometry);
}

#[test]
fn a_round_tenon_with_burn_off() {
    let source = "German trade tables (Tabellenbuch Metall, Rohlänge von Schmiedeteilen), from memory";
    // q = 10 % of the net volume: the book's V (1 + q) is our V / (1 - s) with s = q / (1 + q).
    let mut plan = one_bar(&flat("50 mm", "30 mm"), &[drawn("60 mm", &round("24 mm"))]);
    check(source, mm(segment(&balanced(&plan), 0).stock_length), 18.096, Geometry);
    plan["scale"] = json!("9.0909090909 %");
    check(source, mm(segment(&balanced(&plan), 0).stock_length), 19.905, Geometry);
}

#[test]
fn tapers_and_drawing() {
    let bar = |stock: Value, segment: Value| bar_of(&stock, &[segment], 0);
    check(GEOMETRY, bar(square("20 mm"), taper("120 mm", &json!("point"))), 40.0, Geometry);
    check(GEOMETRY, bar(square("20 mm"), taper("150 mm", &square("8 mm"))), 78.0, Geometry);
    check(GEOMETRY, bar(square("25 mm"), taper("100 mm", &json!({ "edge": "25 mm" }))), 50.0, Geometry);
    check(GEOMETRY, bar(round("12 mm"), taper("100 mm", &round("6 mm"))), 58.33, Geometry);
    check(GEOMETRY, bar(square("16 mm"), drawn("200 mm", &round("16 mm"))), 157.08, Geometry);
}

#[test]
fn a_ball_beyond_the_upset_limit_warns() {
    // 25 mm ball on 12 mm round: (2/3) (D/d)³ d = 72.34 mm, which is 6.03 diameters of bar. The limit of 3 diameters in one
    // blow: Forging Industry Association, design rules for upset forgings, rule 1.
    let balance = balanced(&one_bar(&round("12 mm"), &[forged(&json!({ "ball": { "diameter": "25 mm" } }))]));
    check(GEOMETRY, mm(segment(&balance, 0).stock_length), 72.34, Geometry);
    assert!(warns(&balance, "upset-buckles"), "{:#?}", balance.findings);
    let words = &balance.findings.iter().find(|finding| finding.id == "upset-buckles").unwrap().message;
    assert!(words.contains("6.0 times"), "{words}");
}

#[test]
fn a_small_ball_does_not_warn() {
    // 16 mm on 12 mm round: 1.58 diameters of bar.
    let balance = balanced(&one_bar(&round("12 mm"), &[forged(&json!({ "ball": { "diameter": "16 mm" } }))]));
    assert!(!warns(&balance, "upset-buckles"), "{:#?}", balance.findings);
}

#[test]
fn a_flag_of_forty_millimeters() {
    // 40 mm of 12 mm square spread to 3 mm: 1920 mm² of leaf.
    let bar = bar_of(&square("12 mm"), &[plate("60 mm", "32 mm", "3 mm")], 0);
    check(GEOMETRY, bar, 40.0, Geometry);
}

#[test]
fn a_flat_taper_both_ways_is_no_mean_of_its_ends() {
    // 40 × 10 to 20 × 4 over 90: the prismoid gives 49.50 mm. The mean of the end areas would give 54.0, 9 % too much.
    let bar = bar_of(&flat("40 mm", "10 mm"), &[taper("90 mm", &flat("20 mm", "4 mm"))], 0);
    check(GEOMETRY, bar, 49.50, Geometry);
}

#[test]
fn scale_is_a_share_of_what_goes_in() {
    // 100 mm net. 7.5 % of the gross: 108.11 mm. 7.5 % of the net would be 107.50 mm: the plan's scale is of the gross.
    let mut plan = one_bar(&square("20 mm"), &[drawn("100 mm", &square("20 mm"))]);
    plan["scale"] = json!("7.5 %");
    check(GEOMETRY, mm(segment(&balanced(&plan), 0).stock_length), 108.11, Geometry);
}
