//! Sizes that are worked out as they are typed.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_measure::{LengthRange, LengthUnit, WrittenLength, format_exact};
use proptest::prelude::*;

const INCH: LengthUnit = LengthUnit::Inch;
const MM: LengthUnit = LengthUnit::Millimeter;

fn size(text: &str) -> WrittenLength {
    WrittenLength::parse(text, None, LengthRange::AboveZero).unwrap()
}

fn typed(text: &str, unit: LengthUnit, it: Option<&str>) -> Result<String, String> {
    let it = it.map(size);
    let read = WrittenLength::typed(text, unit, LengthRange::AboveZero, it.as_ref());
    read.map(|length| length.text().to_owned()).map_err(|error| error.to_string())
}

#[test]
fn sums_and_shares_are_worked_out_and_written_as_a_size() {
    for (text, comes_to) in [
        ("10 - 2 1/2", "7 1/2 in"),
        ("10-2 1/2", "7 1/2 in"),
        ("10 − 2½ in", "7 1/2 in"),
        ("10 less 2 1/2", "7 1/2 in"),
        ("3/4-1/8", "5/8 in"),
        ("3/4 + 1/8", "7/8 in"),
        ("4 and 3/8", "4 3/8 in"),
        ("1' 2\" less 3", "11 in"),
        ("1' less 2\"", "10 in"),
        ("1/3 of 9", "3 in"),
        ("2/3 of 9 - 1/4", "5 3/4 in"),
        ("a third of 9 in", "3 in"),
        ("half of 3 1/4", "1 5/8 in"),
        ("a quarter of 1 ft", "3 in"),
        ("50 % of 9", "4 1/2 in"),
        ("3 times 1 1/8", "3 3/8 in"),
        ("2 times 3 + 1/2", "6 1/2 in"),
        ("100 mm - 1 in", "74.6 mm"),
        ("HALF OF 3", "1 1/2 in"),
    ] {
        assert_eq!(typed(text, INCH, None).as_deref(), Ok(comes_to), "{text}");
    }
}

#[test]
fn the_size_that_was_there_can_be_used() {
    for (text, comes_to) in [
        ("1/3 of", "40 mm"),
        ("half of it", "60 mm"),
        ("it + 5", "125 mm"),
        ("it less 2.5", "117.5 mm"),
        ("2 times it", "240 mm"),
        ("90 % of it", "108 mm"),
        ("200 - it", "80 mm"),
    ] {
        assert_eq!(typed(text, MM, Some("120 mm")).as_deref(), Ok(comes_to), "{text}");
    }
}

#[test]
fn what_was_a_size_before_stays_as_it_is_typed() {
    for text in ["3 1/2 in", "3-1/4\"", "1'-2\"", "1/4 to 9/32 in", "6 +0.5 -0 mm", "6 ± 0.5 mm", "+3 in"] {
        assert_eq!(typed(text, INCH, None).as_deref(), Ok(text), "{text}");
    }
}

#[test]
fn what_cannot_be_worked_out_says_why() {
    for (text, why) in [
        ("10 -", "a size belongs behind the sign"),
        ("10 - 12", "this comes to -2 in, and no size does"),
        ("10 - 10", "this comes to 0 in"),
        ("10 - 30 mm", "say the unit of this as well"),
        ("1' - 2\"", "may join feet and inches or take the inches away"),
        ("half", "“of” and a size belong here"),
        ("half 3", "“of” and a size belong here"),
        ("it + 2", "no size was there before"),
        ("10 - - 2", "one sign is enough"),
        ("10 - 2 to 3", "“to” does not belong here"),
        ("10 - ± 2", "a number belongs here"),
        ("10 less 2 apples", "“apples” isn't a unit of length"),
        ("3 4", "there is more than one number"),
        ("10 - (2 + 3)", "“(” does not belong in a size"),
        ("1/0 of 9", "nothing can be divided by 0"),
    ] {
        let told = typed(text, INCH, None).unwrap_err();
        assert!(told.contains(why), "{text}: {told}");
    }
    let range = typed("half of it", INCH, Some("1/4 to 9/32 in")).unwrap_err();
    assert!(range.contains("is a range"), "{range}");
}

proptest! {
    #[test]
    fn what_a_sum_comes_to_reads_back_as_the_same_size(a in 1_i64..4000, b in 1_i64..4000, takes_away: bool) {
        let [first, second] = [a, b].map(|parts| format_exact(parts as f64 * 25.4 / 64.0, INCH));
        let sign = if takes_away { "-" } else { "+" };
        let read = WrittenLength::typed(&format!("{first} {sign} {second}"), INCH, LengthRange::Any, None).unwrap();
        let wanted = if takes_away { a - b } else { a + b };
        prop_assert!((read.mm() - wanted as f64 * 25.4 / 64.0).abs() < 1e-9, "{}", read.text());
        let again = WrittenLength::parse(read.text(), None, LengthRange::Any).unwrap();
        prop_assert_eq!(again, read);
    }

    #[test]
    fn whatever_is_shown_is_typed_back_as_it_is(mm in 0.01_f64..1e5, unit in prop_oneof![Just(INCH), Just(MM)]) {
        let shown = WrittenLength::from_mm(mm, unit, LengthRange::AboveZero).unwrap();
        prop_assert_eq!(WrittenLength::typed(shown.text(), unit, LengthRange::AboveZero, None).unwrap(), shown);
    }

    #[test]
    fn any_text_is_read_or_refused(text in "[0-9 /+.,'\"a-z%½-]{0,24}") {
        let it = size("120 mm");
        let read = WrittenLength::typed(&text, MM, LengthRange::AboveZero, Some(&it));
        if let Ok(length) = read {
            prop_assert!(length.lowest_mm() > 0.0);
            prop_assert_eq!(WrittenLength::parse(length.text(), None, LengthRange::AboveZero).unwrap(), length);
        }
    }
}
