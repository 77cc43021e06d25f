//! `firstheat cut`, really run.

#![allow(clippy::unwrap_used, reason = "tests")]

use serde_json::Value;
use std::process::{Command, Output};

/// Cuts a list that stands in a file of its own.
fn cut(list: &str, json: bool) -> Output {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("saw.json");
    std::fs::write(&path, list).unwrap();
    let mut command = Command::new(env!("CARGO_BIN_EXE_firstheat"));
    command.arg("cut").arg("--lengths").arg(&path).env("FIRSTHEAT_HOME", folder.path());
    if json {
        command.arg("--json");
    }
    command.output().unwrap()
}

/// Six of 997 mm and a kerf of 3 mm are 5997 mm of a bar of 6 m; the last cut falls into what is left.
const SIX: &str = r#"{ "kerf": 3, "keep_from": 100, "bars": [{ "length": 6000 }], "pieces": [{ "name": "leg", "length": 997, "count": 6 }] }"#;

#[test]
fn a_list_is_cut_and_told_in_words() {
    let output = cut(SIX, false);
    assert_eq!(output.status.code(), Some(0));
    let words = String::from_utf8(output.stdout).unwrap();
    assert!(words.contains("6 × 997"), "{words}");
    assert!(words.contains("1 bar, scrap 18 mm, longest offcut 0 mm: no list is better."), "{words}");
}

#[test]
fn a_list_is_cut_for_other_programs() {
    let report: Value = serde_json::from_slice(&cut(SIX, true).stdout).unwrap();
    assert_eq!(report["feasible"], true);
    assert_eq!(report["objective_values"]["scrap"], 18.0);
    let group = &report["groups"][0];
    assert_eq!((&group["bars_used"], &group["new_bars"], &group["lower_bound"]), (&1.into(), &1.into(), &1.0.into()));
    assert_eq!(group["proven"], true);
    assert_eq!(group["bars"][0]["cuts"].as_array().unwrap().len(), 6);
    assert_eq!(group["bars"][0]["cuts"][5]["piece"], "leg");
}

#[test]
fn a_piece_that_fits_no_bar_is_named_and_the_rest_is_cut() {
    let list = r#"{ "kerf": 3, "bars": [{ "length": 6000 }], "pieces": [{ "length": 6001, "count": 1 }, { "length": 500, "count": 4 }] }"#;
    let output = cut(list, false);
    assert_eq!(output.status.code(), Some(1));
    let words = String::from_utf8(output.stdout).unwrap();
    assert!(words.contains("4 × 500") && words.contains("Not cut: 1 × piece 1: 1 mm too long for any bar."), "{words}");
}

#[test]
fn a_list_that_makes_no_sense_is_refused_in_one_line() {
    for (list, words) in [
        (r#"{ "bars": [{ "length": 0 }], "pieces": [] }"#, "bars[0].length"),
        (r#"{ "bars": [{ "length": 6000, "price": -2 }], "pieces": [] }"#, "bars[0].price"),
        ("saw these", "line 1"),
    ] {
        let output = cut(list, false);
        let error = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(2), "{error}");
        assert!(error.contains(words) && error.lines().count() == 1, "{error}");
    }
}
