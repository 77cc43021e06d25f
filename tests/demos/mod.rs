//! The demo plans: they open, balance and print, they use everything there is, and their marks are those worked by hand.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod coverage;
mod hand_worked;
mod three_beds;

use fh_core::balance::balance;
use fh_core::file;
use fh_core::findings::Severity;
use fh_core::plan::Plan;
use fh_print::paper::{Orientation, Paper};
use fh_store::demos::DEMOS;
use fh_work::{Shop, work_out};
use tests::mm;

/// The demo of this file name.
fn demo(file_name: &str) -> Plan {
    let demo = DEMOS.iter().find(|demo| demo.file_name == file_name).unwrap();
    file::read(demo.text.as_bytes()).unwrap()
}

#[test]
fn the_marks_are_those_worked_by_hand() {
    for case in &hand_worked::ALL {
        let plan = demo(case.file_name);
        let balance = balance(&plan);
        let segments = &balance.bars[case.bar].segments;
        assert_eq!(segments.len(), case.marks.len(), "{}", case.file_name);
        for (at, (segment, mark)) in segments.iter().zip(case.marks).enumerate() {
            let (got, want) = (mm(segment.mark_end), mark * case.unit_mm);
            let name = &plan.bars[case.bar].segment(at).unwrap().name;
            assert!((got - want).abs() < 0.01, "{}, {name}: {got} mm where {want} mm is right", case.file_name);
        }
    }
}

#[test]
fn every_bar_is_worked_by_hand() {
    for demo in DEMOS {
        let bars = file::read(demo.text.as_bytes()).unwrap().bars.len();
        for bar in 0..bars {
            let worked = hand_worked::ALL.iter().any(|case| case.file_name == demo.file_name && case.bar == bar);
            assert!(worked, "{}, bar {bar}", demo.file_name);
        }
    }
}

#[test]
fn no_demo_has_a_stop_or_a_warning() {
    for demo in DEMOS {
        let plan = file::read(demo.text.as_bytes()).unwrap();
        let balance = balance(&plan);
        let worked = work_out(&plan, &balance, &Shop::default());
        // What a demo accepts it has a reason for.
        let of_order = worked.open_findings().map(|found| &found.finding);
        let of_heats = worked.scale_short.iter().chain(&worked.into_itself);
        let all = balance.findings.iter().chain(of_order).chain(of_heats);
        let grave = all.filter(|finding| finding.severity != Severity::Note);
        let words: Vec<_> = grave.map(|finding| &finding.message).collect();
        assert!(words.is_empty(), "{}: {words:?}", demo.file_name);
    }
}

#[test]
fn joints_that_a_demo_names_are_checked_against_its_parts() {
    // A bar more or less, and the hole no longer fits: the joints are there to be held against each other.
    for (demo_name, from, to, id) in [
        ("bean-frame.plan.json", r#""square": "21/64 to 11/32 in""#, r#""square": "1/4 in""#, "tenon-hole"),
        ("bean-frame.plan.json", r#""round": "17/64 in""#, r#""round": "15/64 in""#, "rivet-hole"),
        ("pot-stand.plan.json", r#""round": "8.5 +0.5 -0 mm""#, r#""round": "7.5 mm""#, "tenon-hole"),
    ] {
        let text = DEMOS.iter().find(|demo| demo.file_name == demo_name).unwrap().text;
        let ids = |text: &str| -> Vec<_> {
            balance(&file::read(text.as_bytes()).unwrap()).findings.iter().map(|finding| finding.id).collect()
        };
        assert!(text.contains(from) && !ids(text).contains(&id), "{demo_name}");
        assert!(ids(&text.replace(from, to)).contains(&id), "{demo_name}: {id}");
    }
}

#[test]
fn every_demo_prints_on_both_papers() {
    for demo in DEMOS {
        let plan = file::read(demo.text.as_bytes()).unwrap();
        let balance = balance(&plan);
        for paper in Paper::ALL {
            for orientation in [Orientation::Landscape, Orientation::Portrait] {
                let sheet = fh_print::sheets::mark_sheet(&plan, &balance, paper, orientation);
                assert!(fh_print::pdf(&sheet).unwrap().starts_with(b"%PDF"), "{}", demo.file_name);
            }
        }
    }
}

/// The figures are those worked by hand beside the marks, and on the handbook's page.
#[test]
fn the_lantern_arm_is_made_in_its_own_way() {
    let plan = demo("lantern-arm.plan.json");
    let balance = balance(&plan);
    let segments = &balance.bars[0].segments;
    for (at, length) in [(1, 105.390), (2, 145.5), (4, 100.328)] {
        assert!((mm(segments[at].forged_length) - length).abs() < 1e-3, "part {}", at + 1);
    }
    let leaf = segments[0].via[0].follows.unwrap();
    assert!((mm(leaf.size) - 18.0 * 216.0 / 98.0).abs() < 1e-9 && (mm(leaf.low) - 18.0 * 209.52 / 98.0).abs() < 1e-9);
    assert!(segments[6].grown.is_some(), "what the plate grows to is told where its length fills a block");
    let worked = work_out(&plan, &balance, &Shop::default());
    let accepted: Vec<_> = worked.findings.iter().map(|found| (found.finding.id, found.accepted.is_some())).collect();
    assert_eq!(accepted, [("wrong-order", true), ("wrong-order", true)]);
}
