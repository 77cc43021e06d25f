//! The papers keep up with the order of work: findings, operations, places, and where the books differ.

use crate::orders::hardware;
use crate::orders::pieces::all;
use fh_core::plan::{AnvilPlace, Operation};
use fh_work::{IDS, INTO_ITSELF, SCALE_SHORT, Why};
use serde_json::Value;
use std::collections::BTreeSet;
use std::fs;
use tests::project;

fn paper(path: &str) -> String {
    fs::read_to_string(project().join(path)).unwrap()
}

#[test]
fn every_finding_of_an_order_has_its_row() {
    let handbook = paper("docs/handbook/findings.md");
    for id in IDS.into_iter().chain([SCALE_SHORT, INTO_ITSELF]) {
        assert!(handbook.contains(&format!("| `{id}` |")), "{id} has no row in docs/handbook/findings.md");
    }
    let told: BTreeSet<&str> = Why::ALL.into_iter().map(Why::id).collect();
    assert!(told.iter().all(|id| IDS.contains(id)), "{told:?}");
}

#[test]
fn every_operation_and_place_is_in_the_format() {
    let format = paper("docs/plan-format.md");
    let operations = Operation::ALL.into_iter().map(|operation| serde_json::to_value(operation).unwrap());
    for word in operations.filter_map(|word| word.as_str().map(str::to_owned)) {
        assert!(format.contains(&format!("`{word}`")), "{word} is not in docs/plan-format.md");
    }
    for place in AnvilPlace::ALL {
        let Value::String(word) = serde_json::to_value(place).unwrap() else { panic!("{place:?} is no word") };
        assert!(format.contains(&format!("`\"{word}\"`")), "{word} is not in docs/plan-format.md");
    }
}

#[test]
fn the_example_of_the_format_is_read_as_it_stands() {
    let format = paper("docs/plan-format.md");
    let block = format.split("### An order of one's own").nth(1).unwrap();
    let json = block.split("```json").nth(1).and_then(|rest| rest.split("```").next()).unwrap();
    let plan = fh_core::file::read(json.as_bytes()).unwrap();
    assert_eq!(plan.work.steps.as_ref().map(Vec::len), Some(3));
    let balance = fh_core::balance::balance(&plan);
    let worked = fh_work::work_out(&plan, &balance, &fh_work::Shop::default());
    assert!(worked.findings.is_empty(), "{:?}", crate::orders::ids(&worked.findings));
}

#[test]
fn the_handbook_counts_its_pieces() {
    let page = paper("docs/handbook/order-of-work.md");
    let count = all().len() + hardware::all().len();
    assert_eq!(count, 25, "say the new number in docs/handbook/order-of-work.md");
    assert!(page.contains("Twenty-five small pieces"));
    let sources = paper("docs/sources.md");
    for piece in all() {
        let book = piece.source.split(',').nth(usize::from(!piece.source.starts_with("Shop"))).unwrap().trim();
        let title = if piece.source.starts_with("Shop") { "Shop Practice" } else { book };
        assert!(sources.contains(title), "{title} is not in docs/sources.md");
    }
}
