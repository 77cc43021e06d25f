//! Bars that are already cut: the marks add up to the bar, or the plan says why not.

use crate::properties::cases;
use crate::properties::plans::{bar, plan};
use crate::properties::sizes::{Sizes, Written};
use fh_core::balance::balance;
use fh_core::findings::Severity;
use proptest::prelude::*;
use serde_json::json;
use tests::mm;

proptest! {
    #![proptest_config(cases(500))]

    #[test]
    fn a_segment_that_takes_up_fits_the_bar_or_a_finding_stops_the_plan(
        plan in plan(Sizes::Usual), bar in bar(Sizes::Usual), length in 50_u32..1500, at in 0_usize..6,
    ) {
        let (Written(mut plan), Written(mut bar)) = (plan, bar);
        bar["length"] = json!(format!("{length} mm"));
        bar["takes_up"] = json!(format!("s{at}"));
        plan["bars"] = json!([bar]);
        let balance = balance(&tests::read(&plan));
        let fitted = &balance.bars[0];
        let length = f64::from(length);
        prop_assert!((mm(fitted.stock_length) - length).abs() <= 1e-12 * length);
        let stopped = balance.findings.iter().any(|finding| finding.severity == Severity::Stop);
        if !stopped {
            prop_assert!((mm(fitted.last_mark()) - length).abs() <= 1e-9 * length, "{} of {}", mm(fitted.last_mark()), length);
        }
    }

    #[test]
    fn a_bar_that_is_too_short_stops_the_plan(plan in plan(Sizes::Usual), bar in bar(Sizes::Usual), length in 1_u32..400) {
        let (Written(mut plan), Written(mut bar)) = (plan, bar);
        bar["length"] = json!(format!("{length} mm"));
        bar.as_object_mut().unwrap().remove("takes_up");
        plan["bars"] = json!([bar]);
        let balance = balance(&tests::read(&plan));
        let short = mm(balance.bars[0].last_mark()) > f64::from(length) + 0.01;
        let said = balance.findings.iter().any(|finding| finding.id == "bar-too-short");
        prop_assert_eq!(short, said);
    }
}
