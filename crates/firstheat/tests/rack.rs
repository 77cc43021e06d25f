//! `firstheat rack`, really run.

#![allow(clippy::unwrap_used, reason = "tests")]

use serde_json::Value;
use std::path::Path;
use std::process::{Command, Output};

/// A command with a home of its own.
fn run(home: &Path, args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_firstheat")).args(args).env("FIRSTHEAT_HOME", home).output().unwrap()
}

fn out(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap()
}

#[test]
fn bars_are_put_on_the_rack_listed_with_their_mass_and_taken_off() {
    let home = tempfile::tempdir().unwrap();
    assert!(out(&run(home.path(), &["rack", "list"])).starts_with("The rack is empty."));
    for bar in ["3 x 12 mm square, 2.4 m", "2 x 12 mm square, 2.4 m", "1/2 in round, 20 ft"] {
        assert!(run(home.path(), &["rack", "add", bar]).status.success());
    }
    let words = out(&run(home.path(), &["rack", "list"]));
    // 5 × 2.4 m × 1.1304 kg/m, and 6.096 m × 0.9944 kg/m of round.
    assert!(words.contains("5 x 12 mm square, 2.4 m  13.56 kg"), "{words}");
    assert!(words.contains("6 bars, 19.63 kg"), "{words}");
    assert!(run(home.path(), &["rack", "take", "4 x 12 mm square, 2.4 m"]).status.success());
    let report: Value = serde_json::from_slice(&run(home.path(), &["rack", "list", "--json"]).stdout).unwrap();
    assert_eq!((&report["count"], &report["bars"][0]["count"]), (&2.into(), &1.into()));
}

#[test]
fn the_rack_never_has_less_than_nothing_and_a_wrong_word_changes_nothing() {
    let home = tempfile::tempdir().unwrap();
    run(home.path(), &["rack", "add", "12 mm square, 2.4 m"]);
    let before = std::fs::read_to_string(home.path().join("rack.json")).unwrap();
    for (args, words) in [
        (vec!["rack", "take", "2 x 12 mm square, 2.4 m"], "you asked for 2 of 12 mm square, 2.4 m; the rack has 1"),
        (vec!["rack", "add", "12 mm square, 0 m"], "greater than 0"),
        (vec!["rack", "add", "12 mm square, 1 m", "--price", "-3"], "below 0"),
        (vec!["rack", "add", "12 mm square, 1 m", "--price", "3 EUR"], "is in EUR, and no currency is named here"),
        (vec!["rack", "add", "12 mm square, 1 m", "--end", "2 m"], "as long as the bar"),
        (vec!["rack", "add", "12 mm square, 1 m", "--material", "cheese"], "no material"),
        (vec!["rack", "undo"], "nothing was booked"),
    ] {
        let output = run(home.path(), &args);
        let error = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(2), "{args:?}");
        assert!(error.contains(words) && error.lines().count() == 1, "{args:?}: {error}");
    }
    assert_eq!(std::fs::read_to_string(home.path().join("rack.json")).unwrap(), before);
}

#[test]
fn each_schema_is_printed() {
    let home = tempfile::tempdir().unwrap();
    for sort in ["plan", "rack", "merchant", "shop", "job"] {
        let schema: Value = serde_json::from_slice(&run(home.path(), &["schema", sort]).stdout).unwrap();
        assert!(schema["properties"].is_object(), "{sort}");
    }
    assert_eq!(out(&run(home.path(), &["schema"])), out(&run(home.path(), &["schema", "plan"])));
}
