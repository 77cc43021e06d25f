//! Arrows between crates: who may use whom, and which outside crate belongs to which of ours.

use crate::house::{assert_none, files, said, text};
use std::collections::BTreeMap;
use tests::project;
use toml::Table;

/// Each crate with those of ours that it may use.
const ARROWS: [(&str, &[&str]); 11] = [
    ("fh_measure", &[]),
    ("fh_heat", &[]),
    ("fh_core", &["fh_heat", "fh_measure"]),
    ("fh_store", &["fh_core", "fh_measure"]),
    ("fh_piece", &["fh_core", "fh_measure"]),
    ("fh_work", &["fh_piece", "fh_core", "fh_heat", "fh_measure"]),
    ("fh_rack", &["fh_work", "fh_core", "fh_measure"]),
    ("fh_print", &["fh_rack", "fh_work", "fh_piece", "fh_core", "fh_measure"]),
    ("fh_app", &["fh_print", "fh_rack", "fh_work", "fh_piece", "fh_store", "fh_core", "fh_heat", "fh_measure"]),
    ("firstheat", &["fh_rack", "fh_app", "fh_print", "fh_work", "fh_piece", "fh_store", "fh_core", "fh_measure"]),
    ("fh_fuzz", &["fh_app", "fh_print", "fh_rack", "fh_work", "fh_piece", "fh_store", "fh_core", "fh_measure"]),
];

/// Each outside crate with those of ours that may use it. What is not in the list is used by none.
const OWNERS: [(&str, &[&str]); 21] = [
    ("uom", &["fh_measure", "fh_core", "fh_piece", "fh_work", "fh_rack", "fh_print", "fh_app", "firstheat", "fh_fuzz"]),
    ("serde", &["fh_rack", "fh_measure", "fh_core", "fh_store", "fh_work", "fh_app", "firstheat", "fh_fuzz"]),
    ("schemars", &["fh_measure", "fh_core", "fh_rack"]),
    ("serde_json", &["fh_rack", "fh_core", "fh_store", "fh_app", "firstheat", "fh_fuzz"]),
    ("serde_path_to_error", &["fh_core"]),
    ("thiserror", &["fh_rack", "fh_measure", "fh_core", "fh_store", "fh_piece", "fh_print"]),
    ("strsim", &["fh_core"]),
    ("tempfile", &["fh_store", "fh_fuzz"]),
    ("etcetera", &["fh_store"]),
    ("stl_io", &["fh_piece"]),
    ("krilla", &["fh_print"]),
    ("harfrust", &["fh_print"]),
    ("skrifa", &["fh_print"]),
    ("any_ascii", &["fh_print"]),
    ("egui", &["fh_app", "fh_fuzz"]),
    ("eframe", &["fh_app"]),
    ("egui_plot", &["fh_app"]),
    ("image", &["fh_app"]),
    ("rfd", &["fh_app"]),
    ("clap", &["firstheat", "fh_fuzz"]),
    ("clap_complete", &["firstheat"]),
];

/// The manifest of every crate by its name.
fn manifests() -> BTreeMap<String, Table> {
    let all = files("crates", &["Cargo.toml"]);
    all.iter()
        .map(|path| {
            let manifest: Table = text(path).parse().unwrap_or_else(|error| panic!("{}: {error}", said(path)));
            (manifest["package"]["name"].as_str().unwrap().to_owned(), manifest)
        })
        .collect()
}

/// The names in one table of dependencies, and in the same tables for some platforms only.
fn names(manifest: &Table, table: &str) -> Vec<String> {
    let mut names = Vec::new();
    let mut add = |table: Option<&toml::Value>| {
        names.extend(table.and_then(toml::Value::as_table).into_iter().flat_map(|table| table.keys().cloned()));
    };
    add(manifest.get(table));
    for (_, target) in manifest.get("target").and_then(toml::Value::as_table).into_iter().flatten() {
        add(target.get(table));
    }
    names
}

fn is_ours(name: &str) -> bool {
    ARROWS.iter().any(|(ours, _)| *ours == name)
}

#[test]
fn every_crate_has_its_row() {
    let rows: Vec<&str> = ARROWS.iter().map(|(name, _)| *name).collect();
    for name in manifests().keys() {
        assert!(rows.contains(&name.as_str()), "{name} has no row of arrows");
    }
    assert_eq!(manifests().len(), rows.len());
}

#[test]
fn no_arrow_points_the_wrong_way() {
    let mut faults = Vec::new();
    for (name, manifest) in manifests() {
        let (_, allowed) = ARROWS.iter().find(|(row, _)| *row == name).unwrap();
        for table in ["dependencies", "dev-dependencies", "build-dependencies"] {
            for used in names(&manifest, table).into_iter().filter(|used| is_ours(used)) {
                if !allowed.contains(&used.as_str()) {
                    faults.push(format!("{name} must not use {used}"));
                }
            }
        }
    }
    assert_none("arrows between crates", &faults);
}

#[test]
fn every_outside_crate_stays_with_its_owners() {
    let mut faults = Vec::new();
    for (name, manifest) in manifests() {
        for used in names(&manifest, "dependencies").into_iter().filter(|used| !is_ours(used)) {
            let owners = OWNERS.iter().find(|(outside, _)| *outside == used).map(|(_, owners)| *owners);
            if !owners.is_some_and(|owners| owners.contains(&name.as_str())) {
                faults.push(format!("{name} uses {used}"));
            }
        }
    }
    assert_none("outside crates away from their owners", &faults);
}

#[test]
fn versions_are_named_once_in_the_workspace() {
    let mut faults = Vec::new();
    let mut all = files("crates", &["Cargo.toml"]);
    all.push(project().join("tests/Cargo.toml"));
    for path in all {
        let manifest: Table = text(&path).parse().unwrap();
        for table in ["dependencies", "dev-dependencies", "build-dependencies"] {
            for (name, value) in manifest.get(table).and_then(toml::Value::as_table).into_iter().flatten() {
                if value.get("workspace").and_then(toml::Value::as_bool) != Some(true) {
                    faults.push(format!("{}: {name}", said(&path)));
                }
            }
        }
        if manifest.get("lints").and_then(|lints| lints.get("workspace")).is_none() {
            faults.push(format!("{}: the workspace's lints are left out", said(&path)));
        }
    }
    assert_none("not taken from the workspace", &faults);
}

/// The rooms of the order of work, each with what of its crate it may use.
const ROOMS: [(&str, &[&str]); 5] = [
    ("job", &["job"]),
    ("bar", &["job", "bar"]),
    ("fire", &["job", "bar", "fire"]),
    ("says", &["job", "bar", "fire", "says", "step"]),
    ("answers", &["job", "bar", "fire", "says", "step", "worked", "answers"]),
];

#[test]
fn no_room_of_the_order_of_work_uses_one_above_it() {
    let mut faults = Vec::new();
    for (room, allowed) in ROOMS {
        let all = files(&format!("crates/work/src/{room}"), &["rs"]);
        assert!(all.len() > 3, "{room} is no room");
        for path in all {
            let code = text(&path);
            let lines = code.lines().filter(|line| !line.trim_start().starts_with("//"));
            for used in lines.flat_map(|line| line.split("crate::").skip(1)) {
                let name: String =
                    used.chars().take_while(|letter| letter.is_alphanumeric() || *letter == '_').collect();
                if !allowed.contains(&name.as_str()) {
                    faults.push(format!("{} uses crate::{name}", said(&path)));
                }
            }
        }
    }
    assert_none("rooms that use one above them", &faults);
}
