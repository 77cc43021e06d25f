//! What may be written for a length, an angle and a share, and what may not.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_measure::{LengthRange, LengthUnit, WrittenAngle, WrittenLength, WrittenShare};
use proptest::prelude::*;
use std::f64::consts::{FRAC_PI_2, TAU};

fn mm(text: &str) -> f64 {
    WrittenLength::parse(text, None, LengthRange::AboveZero).unwrap_or_else(|error| panic!("{error}")).mm()
}

fn refusal(text: &str, default_unit: Option<LengthUnit>, range: LengthRange) -> String {
    match WrittenLength::parse(text, default_unit, range) {
        Ok(read) => panic!("{text:?} was read as {read:?}"),
        Err(error) => error.to_string(),
    }
}

#[test]
fn one_length_may_be_written_in_many_ways() {
    let nbsp = "3\u{A0}1/4\u{A0}in";
    let narrow = "3\u{202F}1/4\u{2009}in";
    for text in [
        "3 1/4 in",
        "3 1/4in",
        "3-1/4\"",
        "3\u{2010}1/4 in",
        "3 1 / 4 in",
        "3 1⁄4 in",
        "3¼\"",
        "3 ¼ in",
        "3-¼ in",
        "13/4 in",
        "3.25 in",
        "3,25 in",
        "3.25\"",
        "3 1/4″",
        "3 1/4”",
        "3 1/4''",
        "3 1/4′′",
        "3 1/4’’",
        "3 1/4 INCH",
        "3 1/4 inches",
        "3 1/4 in.",
        "+3 1/4 in",
        "\t3  1/4\tin ",
        nbsp,
        narrow,
        "82.55 mm",
        "8.255 cm",
        "0.08255 m",
        "0' 3 1/4\"",
    ] {
        assert_eq!(mm(text), 82.55, "{text}");
    }
}

#[test]
fn feet_take_inches() {
    for text in [
        "1' 2 1/2\"",
        "1'-2 1/2\"",
        "1' - 2 1/2\"",
        "1'2 1/2\"",
        "1′ 2 1/2″",
        "1’ 2½”",
        "1 ft 2 1/2 in",
        "1ft. 2.5in.",
        "1 foot 2 1/2 inches",
        "14 1/2 in",
    ] {
        assert_eq!(mm(text), 368.3, "{text}");
    }
    assert_eq!(mm("1/2 ft"), 152.4);
    assert_eq!(mm("6 feet"), 1828.8);
}

#[test]
fn every_fraction_character_is_read() {
    for (character, twelfths_of_420) in [
        ("½", 1260.0),
        ("⅓", 840.0),
        ("⅔", 1680.0),
        ("¼", 630.0),
        ("¾", 1890.0),
        ("⅕", 504.0),
        ("⅖", 1008.0),
        ("⅗", 1512.0),
        ("⅘", 2016.0),
        ("⅙", 420.0),
        ("⅚", 2100.0),
        ("⅐", 360.0),
        ("⅛", 315.0),
        ("⅜", 945.0),
        ("⅝", 1575.0),
        ("⅞", 2205.0),
        ("⅑", 280.0),
        ("⅒", 252.0),
    ] {
        assert_eq!(mm(&format!("{character} mm")), twelfths_of_420 / 2520.0, "{character}");
    }
}

#[test]
fn a_value_is_the_number_nearest_to_what_was_typed() {
    assert_eq!(mm("0.1 mm"), 0.1);
    assert_eq!(mm("1/3 mm"), 1.0 / 3.0);
    assert_eq!(mm("999999999999.9999 mm"), 999_999_999_999.999_9);
    assert_eq!(mm("12.3456789012345678 mm"), "12.3456789012345678".parse::<f64>().unwrap());
}

#[test]
fn what_may_be_read_in_two_ways_is_refused() {
    let inch = Some(LengthUnit::Inch);
    for text in [
        "3 - 1/4",
        "3 -1/4",
        "3- 1/4",
        "5/8 - 1/16",
        "5/8 + 1/16",
        "1,250",
        "1 250",
        "1,250.5",
        "1.250,5",
        "1'250",
        "1' -2\"",
        "3/4/5",
        "½/2",
        "1/½",
        "½ ½",
        "1/2 3/4",
        "3 4",
        "3 1/4 1/8",
        "1.5 1/4",
        "2 x 3",
        "3 in in",
        "3 in mm",
        "2 in 1 ft",
        "1 ft 2",
        "1 ft 2 ft",
        "1 in 2 in",
        "1e3",
        "1e3 mm",
        "0x1F",
        "#5",
        "५",
        "５",
    ] {
        refusal(text, inch, LengthRange::Any);
    }
}

#[test]
fn broken_numbers_are_refused() {
    let long = "9".repeat(1_000_000);
    for text in [
        "",
        "   ",
        "in",
        "\"",
        "'",
        "/",
        "1/",
        "/4",
        "1/0",
        "0/0",
        ".",
        ",",
        "5.",
        "..5",
        "5..",
        ".5.",
        "+-5",
        "--5",
        "nan",
        "inf",
        "infinity mm",
        "NaN in",
        "1/99999999999999999999",
        "0.00000000000000000000001",
        "3\n1/4",
        "3\u{200B}1/4",
        "\u{FEFF}3",
        "3\0",
        &long,
    ] {
        refusal(text, Some(LengthUnit::Millimeter), LengthRange::Any);
    }
}

#[test]
fn nothing_has_no_minus_in_front_of_it() {
    for text in ["-0", "-0 mm", "-0.0 in", "−0", "-0' 0\""] {
        refusal(text, Some(LengthUnit::Millimeter), LengthRange::Any);
    }
    let zero = WrittenLength::parse("0", Some(LengthUnit::Millimeter), LengthRange::Any).unwrap();
    assert!(zero.mm().is_sign_positive());
}

#[test]
fn a_coordinate_may_lie_below_zero() {
    let signed = |text: &str| WrittenLength::parse(text, None, LengthRange::Any).unwrap().mm();
    assert_eq!(signed("-3 1/4 in"), -82.55);
    assert_eq!(signed("− 6 mm"), -6.0);
    assert_eq!(signed("-1' 6\""), -457.2);
    for range in [LengthRange::AboveZero, LengthRange::ZeroOrMore] {
        assert!(refusal("-6 mm", None, range).contains("not below 0"));
    }
}

#[test]
fn lengths_end_somewhere() {
    assert_eq!(mm("1000000000000 mm"), 1e12);
    assert!(refusal("1000000001 m", None, LengthRange::AboveZero).contains("a million kilometres"));
    assert!(WrittenLength::from_mm(1.1e12, LengthUnit::Meter, LengthRange::Any).is_err());
    assert!(WrittenLength::from_mm(f64::NEG_INFINITY, LengthUnit::Meter, LengthRange::Any).is_err());
}

#[test]
fn a_refusal_names_the_place() {
    for (text, place, words) in [
        ("5 furlongs", 3, "“furlongs” isn't a unit of length"),
        ("3 1/4", 6, "the unit is missing"),
        ("3 1/0 in", 5, "divided by 0"),
        ("1 2 3/4 in", 3, "more than one number"),
        ("5/8 + 1/16 in", 5, "sums are not worked out"),
        ("3 in\u{200B}", 5, "U+200B"),
        ("  1,250 mm", 2, "thousands"),
        ("12,5 mm cm", 9, "“cm” does not belong here"),
        ("", 1, "nothing is written"),
    ] {
        let refusal = refusal(text, None, LengthRange::AboveZero);
        assert!(refusal.contains(words), "{refusal}");
        assert!(refusal.contains(&format!("(at character {place})")), "{refusal}");
        assert!(refusal.ends_with("write for example 3 1/4 in or 82.5 mm"), "{refusal}");
    }
}

#[test]
fn a_long_text_is_cut_in_its_refusal() {
    assert!(refusal(&"9 ".repeat(100_000), None, LengthRange::Any).len() < 300);
}

#[test]
fn computed_lengths_are_written_in_their_unit() {
    let written = |mm, unit| WrittenLength::from_mm(mm, unit, LengthRange::Any).unwrap().text().to_owned();
    assert_eq!(written(-12.7, LengthUnit::Inch), "-1/2 in");
    assert_eq!(written(25.4 * 63.0 / 64.0, LengthUnit::Inch), "63/64 in");
    assert_eq!(written(0.0, LengthUnit::Inch), "0 in");
    assert_eq!(written(-0.0, LengthUnit::Millimeter), "0 mm");
    assert_eq!(written(82.549_999_9, LengthUnit::Millimeter), "82.55 mm");
    assert_eq!(written(1828.8, LengthUnit::Foot), "6 ft");
}

#[test]
fn angles_have_three_units() {
    let radians = |text: &str| WrittenAngle::parse(text, false).unwrap().radians();
    for text in ["90 deg", "90°", "90 DEGREES", "1/4 turn", "¼ turn", "0.25 turns", "+90 deg", "90 º"] {
        assert_eq!(radians(text), FRAC_PI_2, "{text}");
    }
    assert_eq!(radians("1.5 rad"), 1.5);
    assert_eq!(radians("2 1/2 turns"), 2.5 * TAU);
    assert_eq!(radians("-90 deg"), -FRAC_PI_2);
    assert!(radians("0 deg").is_sign_positive());
    for text in ["90", "", "deg", "90 in", "90'", "90 deg 30", "-0 deg", "nan deg", "1/0 turn", "99999999999 turns"] {
        assert!(WrittenAngle::parse(text, false).is_err(), "{text}");
    }
}

#[test]
fn a_bare_angle_in_the_editor_is_in_degrees() {
    let bare = WrittenAngle::parse(" 37,5 ", true).unwrap();
    assert_eq!(bare.text(), "37,5 deg");
    assert_eq!(bare, WrittenAngle::parse(bare.text(), false).unwrap());
    assert!(WrittenAngle::parse("90 in", true).is_err());
    assert_eq!(WrittenAngle::from_degrees(-22.5).unwrap().text(), "-22.5 deg");
    assert!(WrittenAngle::from_degrees(f64::NAN).is_err());
}

#[test]
fn a_share_is_from_0_to_below_100_per_cent() {
    let ratio = |text: &str| WrittenShare::parse(text, false).unwrap().ratio();
    assert_eq!(ratio("2 %"), 0.02);
    assert_eq!(ratio("2,5%"), 0.025);
    assert_eq!(ratio("½ %"), 0.005);
    assert_eq!(ratio("7 %"), 0.07);
    assert_eq!(ratio("0 %"), 0.0);
    for text in ["2", "-2 %", "-0 %", "100 %", "250 %", "2 % %", "%", "", "2 in", "2 % 3", "1,500 %"] {
        assert!(WrittenShare::parse(text, false).is_err(), "{text}");
    }
}

#[test]
fn a_bare_share_in_the_editor_is_in_per_cent() {
    let bare = WrittenShare::parse("2,5", true).unwrap();
    assert_eq!(bare.text(), "2,5 %");
    assert_eq!(bare, WrittenShare::parse(bare.text(), false).unwrap());
    assert!(WrittenShare::parse("2 in", true).is_err());
}

proptest! {
    #[test]
    fn what_was_typed_is_kept_and_reads_back(
        whole in 0..1000_u32, numerator in 1..64_u32, gap in "[ \u{A0}\u{202F}-]", unit in "in|\"|″|''| inches|mm| cm|'|",
        before in " {0,3}",
    ) {
        let typed = format!("{whole}{gap}{numerator}/64{unit}");
        let read = WrittenLength::parse(&format!("{before}{typed}{before}"), Some(LengthUnit::Inch), LengthRange::AboveZero).unwrap();
        let kept = if unit.is_empty() { format!("{typed} in") } else { typed };
        prop_assert_eq!(read.text(), kept);
        let again = WrittenLength::parse(read.text(), None, LengthRange::AboveZero).unwrap();
        prop_assert_eq!(again, read);
    }

    #[test]
    fn a_decimal_is_read_as_its_literal(figures in "[1-9][0-9]{0,8}", decimals in "[0-9]{1,2}|[0-9]{4,8}", comma in any::<bool>()) {
        let sign = if comma { ',' } else { '.' };
        let literal: f64 = format!("{figures}.{decimals}").parse().unwrap();
        prop_assert_eq!(mm(&format!("{figures}{sign}{decimals} mm")), literal);
    }
}
