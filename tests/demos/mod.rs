//! The demo plans: they open, balance and print, they use everything there is, and their marks are those worked by hand.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod coverage;
mod hand_worked;

use fh_core::balance::balance;
use fh_core::file;
use fh_core::findings::Severity;
use fh_core::plan::Plan;
use fh_print::paper::{Orientation, Paper};
use fh_store::demos::DEMOS;
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
        let balance = balance(&file::read(demo.text.as_bytes()).unwrap());
        let grave = balance.findings.iter().filter(|finding| finding.severity != Severity::Note);
        let words: Vec<_> = grave.map(|finding| &finding.message).collect();
        assert!(words.is_empty(), "{}: {words:?}", demo.file_name);
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
