//! Arrows between the files of a crate: none runs in a circle.

use super::assert_none;
use super::modules::{Crate, crates};
use std::collections::BTreeSet;

/// Circles that are there for a reason: the crate, the files, the reason.
const ALLOWED: [(&str, &[&str], &str); 2] = [
    (
        "core",
        &["plan/form", "plan/segment", "plan/split", "plan/via"],
        "a segment has a form, also on the way, and a form may be a split whose branches hold segments",
    ),
    ("core", &["plan/grown", "plan/section"], "a section may be one that another section grows to"),
];

/// Whether a circle is one that is known.
fn is_known(name: &str, circle: &BTreeSet<&str>) -> bool {
    let within = |files: &[&str]| circle.iter().all(|file| files.contains(file));
    ALLOWED.iter().any(|(of, files, _)| *of == name && within(files))
}

/// The circles of a crate: files each of which leads to every other.
fn circles(of: &Crate) -> Vec<BTreeSet<&str>> {
    let reached: Vec<(&str, BTreeSet<&str>)> = of.files().map(|file| (file, of.reached_from(file))).collect();
    let leads = |from: &str, to: &str| reached.iter().any(|(file, to_all)| *file == from && to_all.contains(to));
    let mut circles: Vec<BTreeSet<&str>> = Vec::new();
    for (file, all) in &reached {
        let mates: BTreeSet<&str> = all.iter().copied().filter(|mate| leads(mate, file)).collect();
        if !mates.is_empty() && !circles.contains(&mates) {
            circles.push(mates);
        }
    }
    circles
}

#[test]
fn no_arrows_between_files_run_in_a_circle() {
    let mut faults = Vec::new();
    for of in crates() {
        for circle in circles(&of).into_iter().filter(|circle| !is_known(&of.name, circle)) {
            let mut lines = vec![format!("{}: {} files", of.name, circle.len())];
            for arrow in of.arrows().filter(|arrow| circle.contains(arrow.from) && circle.contains(arrow.to)) {
                lines.push(format!("    {} uses {} of {}", arrow.from, arrow.names, arrow.to));
            }
            faults.push(lines.join("\n"));
        }
    }
    assert_none("these files use each other in a circle", &faults);
}

#[test]
fn a_circle_and_its_arrows_are_seen() {
    let of = Crate::of(
        "sample",
        &[
            ("", "mod a; mod b; mod c; pub use a::Top;"),
            ("a", "use crate::b::{self, Below as Under}; pub struct Top;"),
            ("b", "// use crate::c::Nothing;\nfn f() { crate::c::g(\"use super::a\") }"),
            ("c", "#[cfg(test)]\nmod tests {\n    use super::super::a::Top;\n}\nfn g(_: super::Top) {}"),
        ],
    );
    let all: Vec<_> = circles(&of).into_iter().map(Vec::from_iter).collect();
    assert_eq!(all, [["a", "b", "c"]]);
    let arrows: Vec<String> = of.arrows().map(|arrow| format!("{} {} {}", arrow.from, arrow.to, arrow.names)).collect();
    assert_eq!(arrows, ["a b Below, self", "b c g", "c a Top"]);
}
