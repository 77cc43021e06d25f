//! The rules of the house that a machine can check: arrows between crates, tidiness of sources, and papers that keep up.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod arrows;
mod circles;
mod floors;
mod modules;
mod papers;
mod sources;
mod spelling;

use std::fs;
use std::path::{Path, PathBuf};
use tests::project;

/// Every file with one of these endings below a folder of the project, in order.
fn files(folder: &str, endings: &[&str]) -> Vec<PathBuf> {
    let mut found = Vec::new();
    gather(&project().join(folder), endings, &mut found);
    found.sort();
    assert!(!found.is_empty(), "nothing ends with {endings:?} in {folder}");
    found
}

fn gather(folder: &Path, endings: &[&str], found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if path.is_dir() {
            if name != "target" && !name.starts_with('.') {
                gather(&path, endings, found);
            }
        } else if endings.iter().any(|ending| name.ends_with(ending)) {
            found.push(path);
        }
    }
}

/// A file's text.
fn text(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// A path as it is said: from the project's folder on.
fn said(path: &Path) -> String {
    path.strip_prefix(project()).unwrap_or(path).display().to_string()
}

/// Fails with every fault that was found.
fn assert_none(what: &str, faults: &[String]) {
    assert!(faults.is_empty(), "{what}:\n  {}", faults.join("\n  "));
}
