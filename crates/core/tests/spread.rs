//! What tolerances do to lengths and marks, against every corner of the ranges worked out one by one.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_core::balance::{Between, Spread, balance, spread};
use fh_core::edit::{BoundaryMove, BoundaryTarget, Edit, History, Neighbor};
use fh_core::file;
use fh_core::forms;
use fh_core::plan::{Form, Plan};
use proptest::prelude::*;
use uom::si::f64::Length;
use uom::si::length::millimeter;

fn plan(bar: &str, segments: &str) -> Plan {
    let text = format!(
        r#"{{ "firstheat": 1, "title": "t", "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{{
            "name": "bar", {bar}, "segments": [{segments}] }}] }}"#
    );
    file::read(text.as_bytes()).unwrap()
}

fn mm(between: Between) -> (f64, f64) {
    (between.lowest.get::<millimeter>(), between.highest.get::<millimeter>())
}

#[track_caller]
fn assert_near(found: (f64, f64), expected: (f64, f64)) {
    let near = (found.0 - expected.0).abs() < 1e-6 && (found.1 - expected.1).abs() < 1e-6;
    assert!(near, "{found:?} is not {expected:?}");
}

const STOCK: &str = r#""stock": { "square": "12 mm" }"#;

fn drawn(length: &str, side: &str) -> String {
    format!(
        r#"{{ "name": "leg", "form": {{ "drawn": {{ "length": "{length}", "section": {{ "square": "{side}" }} }} }} }}"#
    )
}

#[test]
fn a_plan_of_single_sizes_has_no_spread() {
    let plan = plan(STOCK, &drawn("100 mm", "6 mm"));
    assert_eq!(spread(&plan), Spread::default());
    assert!(spread(&plan).bar(0).is_none() && spread(&plan).segment(0, 0).is_none());
}

#[test]
fn a_fatter_section_takes_more_bar() {
    let spread = spread(&plan(STOCK, &drawn("100 mm", "6 to 6.5 mm")));
    let segment = spread.segment(0, 0).unwrap();
    assert_near(mm(segment.stock_length), (25.0, 100.0 * 42.25 / 144.0));
    assert!(segment.mark_end.is_range() && !segment.forged_length.is_range());
    assert_eq!(spread.bar(0).unwrap().stock_length, segment.mark_end);
    assert!(spread.segment(0, 1).is_none());
}

#[test]
fn two_sizes_together_do_more_than_each_alone() {
    let spread = spread(&plan(STOCK, &drawn("100 ± 5 mm", "6 to 6.5 mm")));
    let segment = spread.segment(0, 0).unwrap();
    assert_near(mm(segment.stock_length), (95.0 * 36.0 / 144.0, 105.0 * 42.25 / 144.0));
    assert_near(mm(segment.forged_length), (95.0, 105.0));
    assert_near(mm(spread.bar(0).unwrap().forged_length), (95.0, 105.0));
}

#[test]
fn a_fatter_bar_makes_the_marks_shorter() {
    let bar = r#""stock": { "round": "10 +0.2 -0.2 mm" }"#;
    let spread = spread(&plan(bar, &drawn("100 ± 5 mm", "6 mm")));
    let bar_length = |length: f64, stock: f64| length * 36.0 / (std::f64::consts::FRAC_PI_4 * stock * stock);
    let expected = (bar_length(95.0, 10.2), bar_length(105.0, 9.8));
    assert_near(mm(spread.segment(0, 0).unwrap().mark_end), expected);
}

#[test]
fn later_marks_carry_the_spread_of_those_before() {
    let segments = format!(
        r#"{}, {{ "name": "rest", "form": {{ "hold": {{ "length": "50 mm" }} }} }}"#,
        drawn("96 ± 4 mm", "6 mm")
    );
    let spread = spread(&plan(STOCK, &segments));
    let rest = spread.segment(0, 1).unwrap();
    assert_near(mm(rest.mark_end), (73.0, 75.0));
    assert!(!rest.stock_length.is_range());
}

#[test]
fn an_end_at_which_the_plan_cannot_be_met_is_left_out() {
    // Bent half round, 10 mm of 12 mm square has no inside radius.
    let segments = r#"{ "name": "hook", "form": { "drawn": { "length": "10 to 100 mm", "section": { "square": "12 mm" } } },
        "bend": { "curve": { "angle": "180 deg" } } }"#;
    let spread = spread(&plan(STOCK, segments));
    let bar = spread.bar(0).unwrap();
    assert!(bar.unmet);
    assert_near(mm(bar.stock_length), (55.0, 100.0));
}

/// The lowest and the highest of every result over all corners of the ranges, in the order of [`listed`].
fn over_all_corners(plan: &Plan) -> Vec<(f64, f64)> {
    let mut ranges = 0;
    plan.bars[0].lengths(&mut |length| ranges += u32::from(length.is_range()));
    let mut all = vec![(f64::INFINITY, f64::NEG_INFINITY); 2 + 3 * plan.bars[0].count_segments()];
    for corner in 0..1_u32 << ranges {
        let (mut at, mut plan) = (0, plan.clone());
        plan.bars[0].lengths_mut(&mut |length| {
            if length.is_range() {
                *length = if corner >> at & 1 == 1 { length.at_highest() } else { length.at_lowest() };
                at += 1;
            }
        });
        let balance = balance(&plan);
        let bar = &balance.bars[0];
        let of_segment = |segment: &fh_core::balance::SegmentBalance| {
            [segment.stock_length, segment.mark_end, segment.forged_length]
        };
        let results = [bar.stock_length, bar.forged_length].into_iter().chain(bar.segments.iter().flat_map(of_segment));
        for ((lowest, highest), result) in all.iter_mut().zip(results) {
            *lowest = lowest.min(result.get::<millimeter>());
            *highest = highest.max(result.get::<millimeter>());
        }
    }
    all
}

fn listed(spread: &Spread) -> Vec<(f64, f64)> {
    let bar = spread.bar(0).unwrap();
    let segments =
        bar.segments.iter().flat_map(|segment| [segment.stock_length, segment.mark_end, segment.forged_length]);
    [bar.stock_length, bar.forged_length].into_iter().chain(segments).map(mm).collect()
}

fn assert_worst_case(plan: &Plan) {
    let (found, all) = (spread(plan), over_all_corners(plan));
    assert!(!found.bar(0).unwrap().unmet);
    for (found, corner) in listed(&found).into_iter().zip(all) {
        assert_near(found, corner);
    }
}

#[test]
fn every_form_and_bend_comes_out_as_in_its_worst_corner() {
    let point =
        r#"{ "form": { "taper": { "length": "60 ± 2 mm", "from": { "square": "11 to 12 mm" }, "to": "point" } } }"#;
    let step =
        r#"{ "form": { "shoulder": { "to": { "square": "8 +0.5 -0 mm" }, "radius": "3 mm", "sides": "all" } } }"#;
    let same = r#"{ "form": { "taper": { "length": "40 mm", "from": "same", "to": { "round": "5 ± 0.25 mm" } } } }"#;
    let eye = r#"{ "form": { "drawn": { "section": { "round": "8 ± 0.5 mm" } } },
        "bend": { "ring": { "inside_diameter": "25 to 27 mm" } } }"#;
    let leaf = r#"{ "form": { "flag": { "outline": { "leaf": { "length": "60 mm", "width": "24 ± 1 mm" } },
        "thickness": { "root": "3 to 4 mm", "tip": "2 mm" } } } }"#;
    let knob = r#"{ "form": { "ball": { "diameter": "18 to 20 mm" } } }"#;
    let corner = r#"{ "form": { "peak": { "section": { "square": "12 ± 0.5 mm" } } },
        "bend": { "corner": { "angle": "90 deg", "inside_radius": "2 to 3 mm" } } }"#;
    for segments in [
        format!("{point}, {step}, {same}"),
        format!("{eye}, {leaf}, {knob}"),
        format!("{corner}, {eye}"),
        format!("{point}, {step}, {same}, {knob}"),
    ] {
        assert_worst_case(&plan(r#""stock": { "square": "12 ± 0.1 mm" }"#, &segments));
    }
}

#[test]
fn the_branches_of_a_split_have_a_spread_of_their_own() {
    let tine = |length: &str| {
        format!(
            r#"{{ "name": "tine", "form": {{ "drawn": {{ "length": "{length}", "section": {{ "round": "8 ± 0.5 mm" }} }} }} }}"#
        )
    };
    let segments = format!(
        r#"{{ "name": "shank", "form": {{ "plain": {{ "length": "80 ± 2 mm" }} }} }},
           {{ "name": "fork", "form": {{ "split": {{ "branches": [
               {{ "segments": [{}] }}, {{ "segments": [{}] }} ] }} }} }}"#,
        tine("118 to 122 mm"),
        tine("120 mm")
    );
    let plan = plan(r#""stock": { "square": "20 mm" }"#, &segments);
    assert_worst_case(&plan);
    let spread = spread(&plan);
    assert_eq!(spread.bar(0).unwrap().segments.len(), 4);
    assert!(spread.segment(0, 2).unwrap().forged_length.is_range());
    assert!(!spread.segment(0, 3).unwrap().forged_length.is_range());
}

#[test]
fn a_bar_already_cut_comes_out_as_in_its_worst_corner() {
    let segments = format!(
        r#"{}, {{ "name": "shank", "form": {{ "drawn": {{ "length": "50 mm", "section": {{ "round": "8 to 8.5 mm" }} }} }} }},
           {{ "name": "rest", "form": {{ "hold": {{ "length": "30 ± 1 mm" }} }} }}"#,
        drawn("96 ± 4 mm", "6 ± 0.25 mm")
    );
    let bar = r#""stock": { "square": "12 ± 0.1 mm" }, "length": "150 to 152 mm", "takes_up": "shank""#;
    assert_worst_case(&plan(bar, &segments));
}

#[test]
fn a_size_that_gives_keeps_its_tolerance() {
    // 100 mm of 6 mm square take 25 mm of 12 mm square.
    let mut history = History::new(plan(STOCK, &drawn("95 to 105 mm", "6 ± 0.25 mm")));
    let to = BoundaryTarget::Mark(Length::new::<millimeter>(30.0));
    let neighbor = Neighbor::KeepsMetal;
    history.apply(&Edit::MoveBoundary(BoundaryMove { bar: 0, segment: 0, to, neighbor })).unwrap();
    let Form::Drawn(forms::Drawn { length, section }) = &history.plan().segment(0, 0).unwrap().form else {
        panic!("no drawn part")
    };
    assert_eq!(length.as_ref().unwrap().text(), "120 mm ± 5 mm");
    assert_eq!(section.describe(), "6 ± 0.25 mm square");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn the_spread_is_the_worst_case_over_all_corners(
        stock in 100..200_u32, sizes in prop::collection::vec((200..900_u32, 1..50_u32, 40..90_u32, 1..20_u32), 1..4),
    ) {
        let segment = |(length, more, side, wider): &(u32, u32, u32, u32)| {
            let tenths = |size: u32| format!("{}.{}", size / 10, size % 10);
            drawn(&format!("{} ± {} mm", tenths(*length), tenths(*more)), &format!("{} to {} mm", tenths(*side), tenths(side + wider)))
        };
        let segments: Vec<_> = sizes.iter().map(segment).collect();
        let bar = format!(r#""stock": {{ "square": "{}.{} ± 0.1 mm" }}"#, stock / 10, stock % 10);
        assert_worst_case(&plan(&bar, &segments.join(", ")));
    }
}
