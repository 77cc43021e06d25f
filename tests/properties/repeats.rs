//! Rows of marks: equal steps within the margins, as many as fit and no more, and nothing lost at the ends.

use crate::properties::cases;
use fh_core::balance::{LaidRepeat, lay_repeat};
use fh_core::plan::{Repeat, RepeatFrom};
use fh_measure::{LengthRange, LengthUnit, WrittenLength};
use proptest::prelude::*;
use tests::mm;
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// What sums of many steps may be off, in mm.
const CLOSE: f64 = 1e-5;

fn written(mm: f64) -> WrittenLength {
    WrittenLength::from_mm(mm, LengthUnit::Millimeter, LengthRange::ZeroOrMore).unwrap()
}

fn row(pace: Option<bool>, size: f64, count: Option<u32>, margin: f64, from: RepeatFrom) -> Repeat {
    Repeat {
        what: "marks".to_owned(),
        from,
        step: (pace == Some(false)).then(|| written(size)),
        width: (pace == Some(true)).then(|| written(size)),
        count,
        margin: Some(written(margin)),
    }
}

/// From the first mark to the last, and half a tool at each end.
fn reach(laid: &LaidRepeat) -> f64 {
    let between = laid.places.last().map_or(0.0, |last| mm(*last - laid.places[0]));
    between + if laid.places.is_empty() { 0.0 } else { laid.width.map_or(0.0, mm) }
}

fn from() -> impl Strategy<Value = RepeatFrom> {
    prop_oneof![Just(RepeatFrom::Start), Just(RepeatFrom::End), Just(RepeatFrom::Middle)]
}

proptest! {
    #![proptest_config(cases(500))]

    #[test]
    fn as_many_stand_within_the_margins_as_fit(
        length in 1.0..2000.0_f64, size in 0.5..200.0_f64, margin in 0.0..300.0_f64, tools: bool, from in from(),
    ) {
        let laid = lay_repeat(&row(Some(tools), size, None, margin, from), Length::new::<millimeter>(length));
        prop_assume!(!laid.more);
        let (size, room) = (written(size).mm(), length - 2.0 * written(margin).mm());
        let one_more = reach(&laid) + if laid.places.is_empty() && !tools { 0.0 } else { size };
        prop_assert!(one_more > room - CLOSE, "one more would fit");
        prop_assert!(laid.places.is_empty() || reach(&laid) <= room + CLOSE, "all of them fit");
        prop_assert_eq!(mm(laid.over), 0.0);
        for pair in laid.places.windows(2) {
            prop_assert!((mm(pair[1] - pair[0]) - size).abs() < CLOSE);
        }
    }

    #[test]
    fn the_row_and_what_it_leaves_free_make_the_segment(
        length in 1.0..2000.0_f64, size in 0.5..200.0_f64, margin in 0.0..50.0_f64, count in 1..60_u32,
        pace in proptest::option::of(any::<bool>()), from in from(),
    ) {
        let laid = lay_repeat(&row(pace, size, Some(count), margin, from), Length::new::<millimeter>(length));
        prop_assume!(!laid.places.is_empty());
        prop_assert_eq!(laid.count(), count as usize);
        let sum = mm(laid.free_at_start) + reach(&laid) + mm(laid.free_at_end);
        prop_assert!((sum - length).abs() < CLOSE, "{sum} where the segment has {length}");
        let margin = written(margin).mm();
        match from {
            RepeatFrom::Start => prop_assert!((mm(laid.free_at_start) - margin).abs() < CLOSE),
            RepeatFrom::End => prop_assert!((mm(laid.free_at_end) - margin).abs() < CLOSE),
            RepeatFrom::Middle => prop_assert!((mm(laid.free_at_start - laid.free_at_end)).abs() < CLOSE),
        }
        let spare = length - 2.0 * margin - reach(&laid);
        prop_assert!((mm(laid.over) - (-spare).max(0.0)).abs() < CLOSE);
    }
}
