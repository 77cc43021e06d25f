//! Written lengths against reference values computed outside this project with exact fractions (tests/data/fractions.json).

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]

use fh_measure::{LengthRange, LengthUnit, Rounding, WrittenLength, format_decimal};
use proptest::prelude::*;
use serde_json::Value;

fn cases(kind: &str) -> Vec<Value> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/data/fractions.json");
    let text = std::fs::read_to_string(path).expect("the reference file is there");
    let data: Value = serde_json::from_str(&text).expect("the reference file reads");
    let all = data["cases"].as_array().expect("cases").clone();
    let prefix = format!("fractions-{kind}-");
    all.into_iter().filter(|case| case["id"].as_str().is_some_and(|id| id.starts_with(&prefix))).collect()
}

fn unit(case: &Value) -> Option<LengthUnit> {
    match case["inputs"]["default_unit"].as_str()? {
        "in" => Some(LengthUnit::Inch),
        "mm" => Some(LengthUnit::Millimeter),
        other => panic!("the reference uses the unit {other}"),
    }
}

fn exact(text: &str) -> f64 {
    let (numerator, denominator) = text.split_once('/').unwrap_or((text, "1"));
    numerator.parse::<f64>().unwrap() / denominator.parse::<f64>().unwrap()
}

#[test]
fn lengths_are_accepted_exactly() {
    let cases = cases("accept");
    assert!(cases.len() >= 20, "{} cases", cases.len());
    for case in cases {
        let text = case["inputs"]["text"].as_str().unwrap();
        let read = WrittenLength::parse(text, unit(&case), LengthRange::AboveZero);
        if text.contains(" + ") {
            // Sums are no feature, and must then be refused, never read as their first part.
            assert!(read.is_err(), "{text}");
            continue;
        }
        let read = read.unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!(read.mm(), exact(case["expected"]["mm_exact"].as_str().unwrap()), "{text}");
    }
}

#[test]
fn what_is_no_length_is_refused() {
    let cases = cases("reject");
    assert!(cases.len() >= 15, "{} cases", cases.len());
    for case in cases {
        let text = case["inputs"]["text"].as_str().unwrap();
        let read = WrittenLength::parse(text, unit(&case), LengthRange::AboveZero);
        assert!(read.is_err(), "{text} was read as {read:?}");
    }
}

#[test]
fn inches_are_rounded_and_printed_as_reduced_fractions() {
    let cases = cases("round");
    assert!(cases.len() >= 10, "{} cases", cases.len());
    for case in cases {
        let inches = exact(case["inputs"]["inch_exact"].as_str().unwrap());
        for (step, rounding) in [
            ("1/16", Rounding::SIXTEENTH_INCH),
            ("1/32", Rounding::THIRTY_SECOND_INCH),
            ("1/64", Rounding::SIXTY_FOURTH_INCH),
        ] {
            let expected = case["expected"][step]["text"].as_str().unwrap();
            assert_eq!(rounding.round(inches * 25.4).bare_text(), expected, "{inches} in to {step}");
        }
    }
}

#[test]
fn marks_are_rounded_totals_and_steps_their_differences() {
    for case in cases("marks") {
        let lengths = case["inputs"]["lengths_inch_exact"].as_array().unwrap();
        let rounding = Rounding::parse(&format!("1/{} in", case["inputs"]["denominator"])).unwrap();
        let mut total = 0.0;
        let mut before = rounding.round(0.0);
        for (index, length) in lengths.iter().enumerate() {
            total += exact(length.as_str().unwrap()) * 25.4;
            let mark = rounding.round(total);
            assert_eq!(mark.bare_text(), case["expected"]["marks"][index].as_str().unwrap());
            let gap = exact(case["expected"]["gaps_between_marks"][index].as_str().unwrap());
            assert!(((mark - before).mm() - gap * 25.4).abs() < 1e-9);
            before = mark;
        }
    }
}

#[test]
fn a_refusal_says_what_where_and_what_would_be_right() {
    let refusal = WrittenLength::parse("3 1/", Some(LengthUnit::Inch), LengthRange::AboveZero).unwrap_err().to_string();
    for words in ["“3 1/”", "no denominator", "character 5", "3 1/4 in"] {
        assert!(refusal.contains(words), "{refusal}");
    }
    let refusal = WrittenLength::parse("5 furlongs", None, LengthRange::AboveZero).unwrap_err().to_string();
    assert!(refusal.contains("furlongs") && refusal.contains("in, ft, mm, cm and m"), "{refusal}");
}

#[test]
fn a_comma_that_may_mean_thousands_is_refused() {
    assert!(WrittenLength::parse("1,250 mm", None, LengthRange::AboveZero).is_err());
    assert_eq!(WrittenLength::parse("0,125 in", None, LengthRange::AboveZero).unwrap().mm(), 3.175);
}

#[test]
fn the_text_is_kept_and_a_default_unit_is_added() {
    let kept = WrittenLength::parse(" 3-1/4\" ", None, LengthRange::AboveZero).unwrap();
    assert_eq!(kept.text(), "3-1/4\"");
    let added = WrittenLength::parse("3 1/4", Some(LengthUnit::Inch), LengthRange::AboveZero).unwrap();
    assert_eq!(added.text(), "3 1/4 in");
}

#[test]
fn zeros_before_the_first_figure_do_not_count() {
    let read = WrittenLength::parse("0.012345678901234567 m", None, LengthRange::AboveZero).unwrap();
    assert!((read.mm() - 12.345_678_901_234_567).abs() < 1e-14);
    let endless = format!("0.{}1 mm", "0".repeat(40));
    assert!(WrittenLength::parse(&endless, None, LengthRange::AboveZero).is_err());
}

#[test]
fn ranges_are_held() {
    assert!(WrittenLength::parse("0 mm", None, LengthRange::AboveZero).is_err());
    assert_eq!(WrittenLength::parse("0 mm", None, LengthRange::ZeroOrMore).unwrap().mm(), 0.0);
    assert_eq!(WrittenLength::parse("-6 mm", None, LengthRange::Any).unwrap().mm(), -6.0);
    assert!(WrittenLength::parse("-6 mm", None, LengthRange::ZeroOrMore).is_err());
}

#[test]
fn a_computed_length_is_written_as_a_fraction_where_it_is_one() {
    let inches = |mm| WrittenLength::from_mm(mm, LengthUnit::Inch, LengthRange::AboveZero).unwrap();
    assert_eq!(inches(82.55).text(), "3 1/4 in");
    assert_eq!(inches(80.0).text(), "3.1496 in");
    assert!(WrittenLength::from_mm(f64::NAN, LengthUnit::Inch, LengthRange::Any).is_err());
    assert!(WrittenLength::from_mm(-1.0, LengthUnit::Millimeter, LengthRange::AboveZero).is_err());
}

fn any_rounding() -> impl Strategy<Value = Rounding> {
    prop::sample::select(Rounding::CHOICES.to_vec())
}

proptest! {
    #[test]
    fn what_is_printed_reads_back(mm in -1e7..1e7_f64, rounding in any_rounding()) {
        let rounded = rounding.round(mm);
        let read = WrittenLength::parse(&rounded.text(), None, LengthRange::Any).unwrap();
        prop_assert!((read.mm() - rounded.mm()).abs() <= 1e-9 * read.mm().abs().max(1.0));
        prop_assert!((rounded.mm() - mm).abs() <= rounding.step_mm() * 0.500_001);
    }

    #[test]
    fn a_computed_length_reads_back_to_a_hair(mm in 0.0..1e7_f64, inches in any::<bool>()) {
        let unit = if inches { LengthUnit::Inch } else { LengthUnit::Millimeter };
        let written = WrittenLength::from_mm(mm, unit, LengthRange::ZeroOrMore).unwrap();
        prop_assert!((written.mm() - mm).abs() <= 0.0013, "{} for {mm}", written.text());
        let again = WrittenLength::parse(written.text(), None, LengthRange::ZeroOrMore).unwrap();
        prop_assert_eq!(again, written);
    }

    #[test]
    fn no_text_panics(text in "\\PC*", zero in any::<bool>()) {
        let range = if zero { LengthRange::ZeroOrMore } else { LengthRange::Any };
        let _ = WrittenLength::parse(&text, Some(LengthUnit::Inch), range);
        let _ = fh_measure::WrittenAngle::parse(&text, true);
        let _ = fh_measure::WrittenShare::parse(&text, true);
        let _ = Rounding::parse(&text);
    }

    #[test]
    fn no_near_length_panics(text in "[-+0-9 ./,'\"inftcm¼½⅞⁄°%]{0,20}") {
        let _ = WrittenLength::parse(&text, Some(LengthUnit::Millimeter), LengthRange::Any);
    }

    #[test]
    fn printing_never_shows_minus_zero(mm in -1e-6..1e-6_f64) {
        prop_assert_eq!(format_decimal(mm, LengthUnit::Millimeter, 3), "0 mm");
    }
}
