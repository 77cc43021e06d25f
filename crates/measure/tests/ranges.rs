//! Sizes with a tolerance: how a range may be written, its ends and its middle.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_measure::{LengthRange, LengthUnit, WrittenLength};
use proptest::prelude::*;

fn read(text: &str, range: LengthRange) -> WrittenLength {
    WrittenLength::parse(text, None, range).unwrap_or_else(|error| panic!("{error}"))
}

fn ends(text: &str) -> (f64, f64, f64) {
    let read = read(text, LengthRange::AboveZero);
    assert!(read.is_range(), "{text}");
    assert_eq!(read.text(), text);
    (read.lowest_mm(), read.mm(), read.highest_mm())
}

fn refusal(text: &str, range: LengthRange) -> String {
    match WrittenLength::parse(text, None, range) {
        Ok(read) => panic!("{text:?} was read as {read:?}"),
        Err(error) => error.to_string(),
    }
}

#[test]
fn a_size_without_tolerance_is_no_range() {
    let plain = read("1/4 in", LengthRange::AboveZero);
    assert!(!plain.is_range());
    assert_eq!((plain.lowest_mm(), plain.mm(), plain.highest_mm()), (6.35, 6.35, 6.35));
    assert_eq!(plain.tolerance_mm(), 0.0);
}

#[test]
fn one_range_may_be_written_in_many_ways() {
    for text in [
        "1/4 to 9/32 in",
        "1/4 in to 9/32 in",
        "1/4 TO 9/32\"",
        "¼″ to 9⁄32″",
        "1/4to9/32in",
        "17/64 ± 1/64 in",
        "17/64±1/64 in",
        "17/64 in ± 1/64 in",
        "17/64 in ± 1/64",
        "17/64 +- 1/64 in",
        "17/64 +/- 1/64 in",
        "17/64 +− 1/64 in",
        "1/4 +1/32 -0 in",
        "1/4 in +1/32 in -0 in",
        "1/4\" +1/32 −0",
        "1/4 -0 +1/32 in",
        "9/32 +0 -1/32 in",
        "6.35 mm to 9/32 in",
        "0.25 to 0,28125 in",
    ] {
        assert_eq!(ends(text), (6.35, 6.746_875, 7.143_75), "{text}");
    }
}

#[test]
fn each_end_keeps_its_unit_and_a_bare_one_takes_the_other_s() {
    assert_eq!(ends("6 to 6.5 mm"), (6.0, 6.25, 6.5));
    assert_eq!(ends("6 mm to 6.5"), (6.0, 6.25, 6.5));
    assert_eq!(ends("6 mm to 1/4 in"), (6.0, 6.175, 6.35));
    assert_eq!(ends("1 cm ± 0.5 mm"), (9.5, 10.0, 10.5));
    assert_eq!(ends("6 +0.5 -0.25 mm"), (5.75, 6.125, 6.5));
    assert_eq!(ends("1 to 2 ft"), (304.8, 457.2, 609.6));
    assert_eq!(ends("1' to 1' 2\""), (304.8, 330.2, 355.6));
    assert_eq!(ends("1' 2\" ± 1/2 in"), (342.9, 355.6, 368.3));
    assert_eq!(read("6 mm to 1/4 in", LengthRange::Any).unit(), LengthUnit::Inch);
}

#[test]
fn the_middle_and_the_tolerance_are_those_of_the_range() {
    let range = read("6 +0.5 -0 mm", LengthRange::AboveZero);
    assert_eq!((range.mm(), range.tolerance_mm()), (6.25, 0.25));
    assert_eq!(read("1/3 to 2/3 mm", LengthRange::AboveZero).mm(), 0.5);
}

#[test]
fn a_bare_range_takes_the_default_unit_once() {
    for (typed, kept) in [("6 to 7", "6 to 7 mm"), ("6 ± 0.5", "6 ± 0.5 mm"), ("6 +0.5 -0", "6 +0.5 -0 mm")] {
        let range = WrittenLength::parse(typed, Some(LengthUnit::Millimeter), LengthRange::AboveZero).unwrap();
        assert_eq!(range.text(), kept);
        assert_eq!(range, read(kept, LengthRange::AboveZero));
    }
    let own = WrittenLength::parse("6 mm to 7", Some(LengthUnit::Inch), LengthRange::AboveZero).unwrap();
    assert_eq!((own.text(), own.highest_mm()), ("6 mm to 7", 7.0));
}

#[test]
fn a_coordinate_may_be_a_range_on_both_sides_of_zero() {
    let range = read("-1 to 1 mm", LengthRange::Any);
    assert_eq!((range.lowest_mm(), range.mm(), range.highest_mm()), (-1.0, 0.0, 1.0));
    assert_eq!(read("-6 ± 0.5 mm", LengthRange::Any).lowest_mm(), -6.5);
    assert_eq!(read("-6 to -5 mm", LengthRange::Any).highest_mm(), -5.0);
}

#[test]
fn a_refused_range_names_the_place() {
    for (text, place, words) in [
        ("9/32 to 1/4 in", 9, "from the smaller size to the greater"),
        ("6 to 6 mm", 6, "from the smaller size to the greater"),
        ("6 ± 0 mm", 5, "a tolerance greater than 0"),
        ("6 +0 -0 mm", 4, "a tolerance greater than 0"),
        ("6 ± 6 mm", 5, "the low end of a range is greater than 0"),
        ("0 to 6 mm", 1, "a size greater than 0"),
        ("6 +1 -7 mm", 4, "the low end of a range is greater than 0"),
        ("6 to mm", 6, "a number belongs here"),
        ("6 to", 5, "there is no number"),
        ("6 ±", 4, "there is no number"),
        ("6 ± -1 mm", 5, "no sign of its own"),
        ("6 to 7 to 8 mm", 8, "“to” does not belong here"),
        ("6 to 7 ± 1 mm", 8, "“±” does not belong here"),
        ("6 to 7", 7, "the unit is missing"),
        ("1' 2\" to 3", 11, "the unit is missing"),
        ("1 - 2 mm", 3, "a range is written with “to” or “±”"),
        ("6 + 0.5 - 0 mm", 3, "sums are not worked out"),
        ("6 +0.5 mm", 3, "sums are not worked out"),
        ("6 +0.5 +0.5 mm", 3, "sums are not worked out"),
        ("6 -0.5 -0.5 mm", 3, "sums are not worked out"),
        ("-6 to 6 mm", 1, "not below 0"),
    ] {
        let refusal = refusal(text, LengthRange::AboveZero);
        assert!(refusal.contains(words), "{refusal}");
        assert!(refusal.contains(&format!("(at character {place})")), "{refusal}");
    }
}

#[test]
fn the_rule_for_a_size_holds_for_the_low_end() {
    assert_eq!(read("0 to 6 mm", LengthRange::ZeroOrMore).lowest_mm(), 0.0);
    assert_eq!(read("3 ± 3 mm", LengthRange::ZeroOrMore).lowest_mm(), 0.0);
    assert!(refusal("3 ± 4 mm", LengthRange::ZeroOrMore).contains("not below 0"));
    assert!(refusal("1 to 1000000001 m", LengthRange::Any).contains("a million kilometres"));
}

#[test]
fn each_end_can_stand_alone() {
    let range = read("1/4 to 9/32 in", LengthRange::AboveZero);
    assert_eq!((range.at_lowest().text(), range.at_lowest().mm()), ("1/4 in", 6.35));
    assert_eq!((range.at_highest().text(), range.at_highest().mm()), ("9/32 in", 7.143_75));
    assert!(!range.at_lowest().is_range());
    let plain = read("3¼″", LengthRange::AboveZero);
    assert_eq!(plain.at_highest(), plain);
}

#[test]
fn a_length_and_a_range_can_be_scaled() {
    let scaled = |text: &str, factor| read(text, LengthRange::Any).scaled(factor).unwrap().text().to_owned();
    assert_eq!(scaled("3 1/4 in", 2.0), "6 1/2 in");
    assert_eq!(scaled("10 mm", 1.5), "15 mm");
    assert_eq!(scaled("0 mm", 3.0), "0 mm");
    assert_eq!(scaled("-6 mm", 0.5), "-3 mm");
    assert_eq!(scaled("1' 2\"", 0.5), "7 in");
    assert_eq!(scaled("1/4 to 9/32 in", 2.0), "1/2 in to 9/16 in");
    assert_eq!(scaled("6 ± 0.5 mm", 2.0), "11 mm to 13 mm");
    for factor in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e300, 1e-9] {
        assert!(read("6 mm", LengthRange::AboveZero).scaled(factor).is_err(), "{factor}");
    }
}

#[test]
fn a_length_can_be_given_a_tolerance() {
    let given = |text: &str, mm| read(text, LengthRange::Any).with_tolerance_mm(mm, LengthRange::AboveZero);
    assert_eq!(given("3 1/4 in", 0.79375).unwrap().text(), "3 1/4 in ± 1/32 in");
    assert_eq!(given("1' 2\"", 25.4).unwrap().lowest_mm(), 330.2);
    assert!(given("6 mm", 6.0).is_err() && given("6 mm", 0.0).is_err() && given("6 to 7 mm", 0.1).is_err());
}

#[test]
fn a_length_and_a_range_can_be_moved() {
    let moved = |text: &str, mm| read(text, LengthRange::Any).longer_by(mm, LengthRange::AboveZero);
    assert_eq!(moved("3 in", 25.4).unwrap().text(), "4 in");
    assert_eq!(moved("6 ± 0.5 mm", -2.0).unwrap().text(), "3.5 mm to 4.5 mm");
    assert!(moved("6 ± 0.5 mm", -5.5).is_err());
}

proptest! {
    #[test]
    fn a_range_is_kept_and_reads_back(
        low in 1..1000_u32, more in 1..1000_u32, between in " to | TO |\u{A0}to\u{202F}", unit in "in|\"| mm| cm|'",
        both in any::<bool>(),
    ) {
        let high = low + more;
        let first = if both { unit.as_str() } else { "" };
        let typed = format!("{low}/64{first}{between}{high}/64{unit}");
        let range = WrittenLength::parse(&typed, None, LengthRange::AboveZero).unwrap();
        prop_assert_eq!(range.text(), typed.as_str());
        prop_assert_eq!(range.lowest_mm(), read(&format!("{low}/64{unit}"), LengthRange::AboveZero).mm());
        prop_assert_eq!(range.highest_mm(), read(&format!("{high}/64{unit}"), LengthRange::AboveZero).mm());
        prop_assert!(range.lowest_mm() < range.mm() && range.mm() < range.highest_mm());
    }

    #[test]
    fn a_tolerance_to_both_sides_leaves_the_middle(middle in 1000..10_000_u32, tolerance in 1..1000_u32) {
        let range = read(&format!("{middle}/64 ± {tolerance}/64 in"), LengthRange::AboveZero);
        prop_assert_eq!(range.mm(), read(&format!("{middle}/64 in"), LengthRange::AboveZero).mm());
        let limits = read(&format!("{middle}/64 +{tolerance}/64 -{tolerance}/64 in"), LengthRange::AboveZero);
        prop_assert_eq!(limits.lowest_mm(), range.lowest_mm());
        prop_assert_eq!(limits.highest_mm(), range.highest_mm());
    }

    #[test]
    fn no_near_range_panics(text in "[-+±0-9 ./,'\"to inm¼½]{0,24}") {
        let _ = WrittenLength::parse(&text, Some(LengthUnit::Millimeter), LengthRange::Any);
    }

    #[test]
    fn what_is_read_keeps_its_order(text in "[1-9] (to|±|\\+-) [1-9] (mm|in)") {
        if let Ok(range) = WrittenLength::parse(&text, None, LengthRange::Any) {
            prop_assert!(range.lowest_mm() < range.highest_mm());
            prop_assert_eq!(WrittenLength::parse(range.text(), None, LengthRange::Any).unwrap(), range);
        }
    }
}
