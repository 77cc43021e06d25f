//! `firstheat cut`, `bars`, `quote` and `rack book`, really run on the demo job of three beds.

#![allow(clippy::unwrap_used, reason = "tests")]

use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

fn jobs() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo-plans/jobs")
}

fn file(name: &str) -> String {
    jobs().join(name).to_string_lossy().into_owned()
}

/// A command on the job with its rack, its merchant's list and its shop.
fn run(home: &Path, args: &[&str]) -> Output {
    let stock =
        ["--merchant", &file("three-beds.merchant.json"), "--shop", &file("three-beds.shop.json")].map(str::to_owned);
    let mut command = Command::new(env!("CARGO_BIN_EXE_firstheat"));
    command.args(args).env("FIRSTHEAT_HOME", home);
    if args[0] != "bars" && args[0] != "rack" || args.get(1) == Some(&"book") {
        command.args(&stock);
    }
    if !args.contains(&"--rack") {
        command.args(["--rack", &file("three-beds.rack.json")]);
    }
    command.output().unwrap()
}

fn out(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap()
}

#[test]
fn the_job_is_cut_in_words_as_json_and_on_paper() {
    let home = tempfile::tempdir().unwrap();
    let job = file("three-beds.job.json");
    let words = out(&run(home.path(), &["cut", &job]));
    assert!(words.contains("17 × Row marker: stake 318 (318, 639, 960"), "{words}");
    assert!(
        words.contains(
            "2 bars used, 1 bar to buy for EUR 6.84; less is impossible. Scrap 233 mm, and no list leaves less."
        ),
        "{words}"
    );
    let report: Value = serde_json::from_slice(&run(home.path(), &["cut", &job, "--json"]).stdout).unwrap();
    assert_eq!((&report["feasible"], report["groups"].as_array().unwrap().len()), (&true.into(), 5));
    let group = report["groups"].as_array().unwrap().iter().find(|group| group["section"] == "10 mm square").unwrap();
    assert_eq!(
        (&group["material"], &group["bars_used"], &group["new_bars"]),
        (&"mild steel".into(), &2.into(), &1.into())
    );
    assert_eq!((&group["cost"], &group["lower_bound"], &group["proven"]), (&4.36.into(), &4.36.into(), &true.into()));
    assert_eq!((&group["longest_offcut_mm"], &group["scrap_mm"]), (&712.0.into(), &54.0.into()));
    assert_eq!(group["bars"][0]["from"], "rack");
    let pdf = home.path().join("cut.pdf");
    let output = run(home.path(), &["cut", &job, "-o", pdf.to_str().unwrap()]);
    assert!(output.status.success() && std::fs::read(&pdf).unwrap().starts_with(b"%PDF"));
}

#[test]
fn booking_changes_the_rack_and_undoing_puts_it_back() {
    let home = tempfile::tempdir().unwrap();
    let rack = home.path().join("rack.json");
    std::fs::copy(jobs().join("three-beds.rack.json"), &rack).unwrap();
    let named = rack.to_str().unwrap();
    let list = |home: &Path| -> Value {
        serde_json::from_slice(&run(home, &["rack", "list", "--json", "--rack", named]).stdout).unwrap()
    };
    assert_eq!(list(home.path())["count"], 7);
    let booked = out(&run(home.path(), &["rack", "book", &file("three-beds.job.json"), "--rack", named]));
    assert!(booked.starts_with("Booking 1\nOff the rack:\n") && booked.contains("10 mm square, 712 mm"), "{booked}");
    assert_eq!(list(home.path())["count"], 3);
    // What is left is too little to book it again without buying: all is new then, and the offcuts are used.
    assert!(run(home.path(), &["rack", "undo", "--rack", named]).status.success());
    assert_eq!(list(home.path())["count"], 7);
    assert_eq!(list(home.path())["booked"][0]["undone"], true);
}

#[test]
fn the_job_is_quoted_for_some_counts_and_both_papers_are_written() {
    let home = tempfile::tempdir().unwrap();
    let job = file("three-beds.job.json");
    let report: Value =
        serde_json::from_slice(&run(home.path(), &["quote", &job, "--count", "1,10", "--json"]).stdout).unwrap();
    let [one, ten] = [0, 1].map(|at| report["counts"][at].clone());
    assert_eq!((&one["count"], &ten["count"], &report["currency"]), (&1.into(), &10.into(), &"EUR".into()));
    // The parts of the price add up, and ten are cheaper each.
    let of = |quote: &Value, key: &str| (quote[key].as_f64().unwrap() * 100.0).round() as i64;
    let lines: i64 = one["lines"].as_array().unwrap().iter().map(|line| of(line, "amount")).sum();
    assert_eq!(lines, of(&one, "direct_cost"));
    assert_eq!(of(&one, "direct_cost") + of(&one, "overheads") + of(&one, "contingency"), of(&one, "cost"));
    assert_eq!(of(&one, "cost") + of(&one, "profit") - of(&one, "discount") + of(&one, "rounding"), of(&one, "price"));
    assert_eq!(of(&one, "price") + of(&one, "tax"), of(&one, "total"));
    assert!(of(&ten, "each") < of(&one, "each"));
    for (whom, name) in [("customer", "quote.pdf"), ("smith", "figures.pdf")] {
        let pdf = home.path().join(name);
        let output = run(home.path(), &["quote", &job, "-o", pdf.to_str().unwrap(), "--paper-for", whom]);
        assert!(output.status.success() && std::fs::read(&pdf).unwrap().starts_with(b"%PDF"), "{whom}");
    }
}

#[test]
fn a_plan_is_told_which_bars_it_can_be_made_from() {
    let home = tempfile::tempdir().unwrap();
    let plan = jobs().join("../trellis-bracket.plan.json");
    let args = ["bars", plan.to_str().unwrap(), "--quick", "--json"];
    let report: Value = serde_json::from_slice(&run(home.path(), &args).stdout).unwrap();
    let options = report["bars"][0]["options"].as_array().unwrap();
    let own = options.iter().find(|option| option["own"] == true).unwrap();
    assert_eq!(
        (&own["section"], &own["length"], &own["on_rack"]),
        (&"12 mm square".into(), &"298 mm".into(), &true.into())
    );
    assert!(options.len() > 40);
    let words = out(&run(home.path(), &["bars", plan.to_str().unwrap(), "--quick"]));
    assert!(words.contains("12 mm square") && words.contains("--all prints them"), "{words}");
}

#[test]
fn what_cannot_be_cut_or_quoted_is_told_in_one_line() {
    let home = tempfile::tempdir().unwrap();
    let job = file("three-beds.job.json");
    let bad = home.path().join("bad.job.json");
    std::fs::write(&bad, "{ \"firstheat_job\": 1, \"plans\": [{ \"plan\": \"none.plan.json\" }] }").unwrap();
    for (args, words) in [
        (vec!["cut", bad.to_str().unwrap()], "there is no such file"),
        (vec!["cut", &job, &job], "a job stands alone"),
        (vec!["cut", &job, "--kerf", "-2 mm"], "the kerf"),
        (vec!["cut", &job, "--kerf", "wide"], "the kerf"),
        (vec!["quote", &job, "--count", "0"], "a quote is for 1 to"),
        (vec!["cut", &job, "-o", "cut.txt"], "written as .pdf or .svg"),
    ] {
        let output = run(home.path(), &args);
        let error = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(2), "{args:?}: {error}");
        assert!(error.contains(words) && error.lines().count() == 1, "{args:?}: {error}");
    }
}
