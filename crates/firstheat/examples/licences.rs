//! Prints the licences of everything that is in the program, from what `cargo metadata` says on standard input.

#![allow(clippy::print_stdout, reason = "it prints what is put into the package")]

use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;
use std::fs;
use std::path::Path;

/// The beginnings of names of files that hold a licence or what goes with it.
const NAMES: [&str; 5] = ["license", "licence", "copying", "notice", "ofl"];
/// The package that is the program.
const PROGRAM: &str = "firstheat";

fn main() -> Result<(), Box<dyn Error>> {
    let metadata: Value = serde_json::from_reader(std::io::stdin())?;
    let packages: BTreeMap<&str, &Value> =
        list(&metadata["packages"]).iter().map(|package| (words(&package["id"]), package)).collect();
    let others: Vec<&Value> = inside(&metadata, &packages)
        .into_iter()
        .filter_map(|id| packages.get(id).copied())
        .filter(|package| !package["source"].is_null())
        .collect();
    println!("First Heat: MIT or Apache-2.0. Its fonts: SIL Open Font License 1.1.\n");
    println!("It is built from these crates:\n");
    for package in &others {
        println!("{} {}: {}", words(&package["name"]), words(&package["version"]), words(&package["license"]));
    }
    for (text, names) in texts(&others) {
        println!("\n\n==== {}\n\n{}", names.join(", "), text.trim_end());
    }
    Ok(())
}

fn words(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

/// Everything that the program is linked from: not what only tests and build scripts use.
fn inside<'a>(metadata: &'a Value, packages: &BTreeMap<&'a str, &'a Value>) -> Vec<&'a str> {
    let nodes: BTreeMap<&str, &Value> =
        list(&metadata["resolve"]["nodes"]).iter().map(|node| (words(&node["id"]), node)).collect();
    let is_program = |(_, package): &(&&str, &&Value)| words(&package["name"]) == PROGRAM;
    let mut open: Vec<&str> = packages.iter().filter(is_program).map(|(id, _)| *id).collect();
    let mut found = BTreeSet::new();
    while let Some(id) = open.pop() {
        if !found.insert(id) {
            continue;
        }
        let Some(node) = nodes.get(id) else { continue };
        let is_linked = |dep: &&Value| list(&dep["dep_kinds"]).iter().any(|kind| kind["kind"].is_null());
        open.extend(list(&node["deps"]).iter().filter(is_linked).map(|dep| words(&dep["pkg"])));
    }
    let mut all: Vec<&str> = found.into_iter().collect();
    all.sort_by_key(|id| packages.get(id).map(|package| words(&package["name"])));
    all
}

/// The texts of the licences, each once, with the crates that carry it.
fn texts(packages: &[&Value]) -> Vec<(String, Vec<String>)> {
    let mut all: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for package in packages {
        let folder = Path::new(words(&package["manifest_path"])).parent().map(Path::to_owned).unwrap_or_default();
        for file in fs::read_dir(folder).into_iter().flatten().flatten() {
            let name = file.file_name().to_string_lossy().to_lowercase();
            if NAMES.iter().any(|start| name.starts_with(start))
                && let Ok(text) = fs::read_to_string(file.path())
            {
                all.entry(text).or_default().push(words(&package["name"]).to_owned());
            }
        }
    }
    all.into_iter().collect()
}
