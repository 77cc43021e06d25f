//! `firstheat steps`, run as its users run it.

#![allow(clippy::unwrap_used, reason = "tests")]

use serde_json::{Value, json};
use std::fs;
use std::process::{Command, Output};

const HOOK: &str = include_str!("hook.plan.json");

/// The order of work of a plan in a folder of its own, without a display.
fn steps(plan: &str, args: &[&str]) -> Output {
    run("steps", plan, args)
}

/// A command on a plan in a folder of its own, without a display.
fn run(command: &str, plan: &str, args: &[&str]) -> Output {
    let word = command;
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("hook.plan.json"), plan).unwrap();
    let mut command = Command::new(env!("CARGO_BIN_EXE_firstheat"));
    command.current_dir(folder.path()).env("FIRSTHEAT_HOME", folder.path()).env_remove("DISPLAY");
    command.env_remove("WAYLAND_DISPLAY").args([word, "hook.plan.json"]).args(args).output().unwrap()
}

fn printed(plan: &str, args: &[&str]) -> String {
    let output = steps(plan, args);
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).unwrap()
}

fn as_json(plan: &str) -> Value {
    serde_json::from_str(&printed(plan, &["--json"])).unwrap()
}

fn keys(value: &Value) -> Vec<&str> {
    value.as_object().unwrap().keys().map(String::as_str).collect()
}

/// The hook with an order of its own: bent before it is forged, and a part that is not there.
fn in_a_bad_order() -> String {
    let mut plan: Value = serde_json::from_str(HOOK).unwrap();
    let hook = plan["bars"][0]["segments"].as_array().unwrap().iter().position(|it| it.get("bend").is_some()).unwrap();
    let part = (hook + 1).to_string();
    plan["work"] = json!({ "steps": [
        { "work": [{ "operation": "bend", "parts": [part] }] },
        { "work": [{ "operation": "mark" }], "title": "Marks at last" },
        { "work": [{ "operation": "draw", "parts": ["99"] }] },
    ] });
    plan.to_string()
}

#[test]
fn steps_for_other_programs_keep_their_keys_and_order() {
    let json = as_json(HOOK);
    // What is added is added behind these.
    assert_eq!(keys(&json)[..7], ["title", "proposed", "heats", "steps", "tools", "gauges", "findings"]);
    assert_eq!(json["proposed"], true);
    let all = json["steps"].as_array().unwrap();
    let wanted = [
        "step",
        "bar",
        "title",
        "work",
        "heat",
        "heats",
        "minutes",
        "place",
        "tool",
        "sizes",
        "measure",
        "leave",
        "check",
        "caution",
        "because",
        "lay",
        "heat_with",
        "marks",
        "hot",
    ];
    for (number, step) in all.iter().enumerate() {
        assert_eq!(keys(step)[..wanted.len()], wanted);
        assert_eq!(step["step"], number + 1);
        assert!(step["work"].as_array().unwrap().iter().all(|deed| keys(deed) == ["operation", "path"]));
        let sizes = step["sizes"].as_array().unwrap();
        assert!(sizes.iter().all(|size| keys(size)[..5] == ["what", "cold", "hot", "mm", "tolerance_mm"]), "{step}");
    }
    assert_eq!(keys(&all[0]["marks"][0]), ["mark", "at", "ends", "begins"]);
    assert_eq!(keys(&json["tools"][0])[..5], ["kind", "words", "size_mm", "reason", "steps"]);
    assert_eq!(keys(&json["gauges"][0])[..5], ["what", "size_mm", "go_mm", "no_go_mm", "hot_mm"]);
    let hot: u64 = all.iter().filter_map(|step| step["heats"].as_u64()).sum();
    assert!(hot >= json["heats"].as_u64().unwrap() && hot > 0);
    assert!(json["heats_of_all"].as_u64() >= json["heats"].as_u64(), "{json}");
    let [low, likely, high] = ["heats_low", "heats", "heats_high"].map(|key| json[key].as_u64().unwrap());
    assert!(0 < low && low <= likely && likely <= high && high <= 2 * likely, "{low} {likely} {high}");
    let all = json["heats_all_pieces"].as_array().unwrap();
    assert!(all[0].as_u64().unwrap() >= low && all[1].as_u64().unwrap() >= high, "{all:?}");
}

/// The bar weighs the same after every step but those that cut something off; its last shape is the planned one.
#[test]
fn each_step_says_where_it_lies_what_holds_it_and_what_the_bar_is_then() {
    let json = as_json(HOOK);
    let all = json["steps"].as_array().unwrap();
    let of_bar: Vec<&Value> = all.iter().filter(|step| step["bar"] != "").collect();
    for step in all {
        assert_eq!(keys(&step["placed"]), ["on", "edge", "up"]);
        assert_eq!(step["placed"]["on"], step["place"]);
        assert_eq!(step["shape"].as_array().unwrap().is_empty(), step["bar"] == "", "{}", step["title"]);
        if !step["held"].is_null() {
            let wanted = ["path", "by", "jaw_mm", "at_mm", "cold_mm", "from_the_side", "cool_first"];
            assert_eq!(keys(&step["held"]), wanted);
        }
    }
    let hot_on_bar = of_bar.iter().filter(|step| step["heats"].as_u64() > Some(0));
    assert!(hot_on_bar.clone().count() > 2 && hot_on_bar.clone().all(|step| !step["held"].is_null()), "{json}");
    let plan: fh_core::plan::Plan = fh_core::file::read(HOOK.as_bytes()).unwrap();
    let planned = fh_core::balance::balance(&plan);
    let last = of_bar.last().unwrap()["shape"].as_array().unwrap();
    for (part, planned) in last.iter().zip(&planned.bars[0].segments) {
        let long = planned.forged_length.get::<uom::si::length::millimeter>();
        let is_off = part["forged_length_mm"].as_f64().unwrap() < 1e-9;
        assert!(is_off || (part["forged_length_mm"].as_f64().unwrap() - long).abs() < 0.01, "{part} for {long}");
    }
}

#[test]
fn a_bad_order_is_told_and_is_no_failure() {
    let json = as_json(&in_a_bad_order());
    assert_eq!(json["proposed"], false);
    let findings = json["findings"].as_array().unwrap();
    let told = |id: &str| findings.iter().find(|found| found["id"] == id).unwrap_or(&Value::Null);
    assert_eq!(told("wrong-order")["steps"], json!([1, 2]), "{findings:?}");
    assert_eq!(told("part-unknown")["steps"], json!([3]), "{findings:?}");
    assert!(findings.iter().all(|found| !found["reason"].as_str().unwrap().is_empty()));
    assert!(findings.iter().filter(|found| found["id"] == "not-in-the-order").count() > 2, "{findings:?}");
}

#[test]
fn steps_are_printed_in_words() {
    let own = printed(&in_a_bad_order(), &[]);
    assert!(own.contains("your own order") && own.contains("Marks at last"), "{own}");
    let proposed = printed(HOOK, &[]);
    assert!(proposed.contains("proposed by the program") && proposed.contains("Tools\n"), "{proposed}");
    assert!(proposed.contains("  1  Cut “hook” to length, and mark it"), "{proposed}");
    assert!(proposed.contains("1: 5/16 in, from “point” to “hook”"), "the marks are told: {proposed}");
}

#[test]
fn a_plan_that_cannot_be_read_has_no_steps() {
    let output = steps("{}", &[]);
    assert_eq!(output.status.code(), Some(2));
    let error = String::from_utf8(output.stderr).unwrap();
    assert!(output.stdout.is_empty() && error.starts_with("error: ") && error.contains("hook.plan.json"), "{error}");
}

#[test]
fn an_empty_plan_has_nothing_to_do() {
    let empty = r#"{ "firstheat": 1, "title": "Latch", "bars": [{ "stock": { "square": "12 mm" } }] }"#;
    assert_eq!(printed(empty, &[]), "Latch: nothing has to be done yet.\n");
    assert_eq!(as_json(empty)["steps"], json!([]));
}

#[test]
fn the_cautions_of_the_plan_stand_over_its_steps() {
    let hung =
        HOOK.replacen(r#""firstheat": 1,"#, r#""firstheat": 1, "duty": "holds_people", "coating": "plated", "#, 1);
    let said = printed(&hung, &[]);
    let first_step = said.find("  1  ").unwrap();
    for words in ["STOP: The stock is plated.", "Caution: Not rated: it must hold nobody"] {
        assert!(said.find(words).is_some_and(|at| at < first_step), "{words} in {said}");
    }
}

#[test]
fn the_cautions_of_a_plan_stand_in_the_json_each_with_its_id() {
    let mut plan: Value = serde_json::from_str(HOOK).unwrap();
    assert_eq!(as_json(&plan.to_string())["cautions"], json!([]));
    plan["material"] = json!("brass");
    plan["coating"] = json!("galvanised");
    plan["duty"] = json!("holds_people");
    let cautions = as_json(&plan.to_string())["cautions"].as_array().unwrap().clone();
    let ids: Vec<&str> = cautions.iter().map(|caution| caution["id"].as_str().unwrap()).collect();
    for command in ["marks", "check"] {
        let output = run(command, &plan.to_string(), &["--json"]);
        let same: Value = serde_json::from_slice(&output.stdout).unwrap();
        assert_eq!(same["cautions"].as_array(), Some(&cautions), "{command}");
    }
    for id in ["rated-part", "metal", "fume"] {
        assert!(ids.contains(&id), "{ids:?}");
    }
    let coated = cautions.iter().find(|caution| caution["words"].as_str().unwrap().contains("galvanised")).unwrap();
    assert!(!coated["id"].as_str().unwrap().is_empty());
}
