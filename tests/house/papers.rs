//! Papers that keep up with the program: paths, findings, demo plans, and what lies in the project's folder.

use crate::house::{assert_none, files, said, text};
use fh_core::balance::balance;
use fh_core::file;
use fh_core::findings::{self, Severity};
use std::fs;
use std::path::{Path, PathBuf};
use tests::project;

/// What lies in the project's folder beside licences and files that begin with a point. `target` is made by building.
const TOP: [&str; 9] =
    ["Cargo.toml", "Cargo.lock", "README.md", "DEVELOPERS.md", "crates", "assets", "tests", "demo-plans", "docs"];

fn papers() -> Vec<PathBuf> {
    let top = ["README.md", "DEVELOPERS.md"].map(|name| project().join(name));
    let beside = files("demo-plans", &[".md"]).into_iter().chain(files("docs", &[".md"]));
    top.into_iter().chain(beside).collect()
}

#[test]
fn only_what_belongs_lies_in_the_project_folder() {
    let belongs =
        |name: &str| name.starts_with('.') || name.starts_with("LICENSE-") || name == "target" || TOP.contains(&name);
    let names = fs::read_dir(project()).unwrap().map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned());
    assert_none("strangers", &names.filter(|name| !belongs(name)).collect::<Vec<_>>());
}

#[test]
fn the_readme_has_two_commands_that_set_themselves_up() {
    let readme = text(&project().join("README.md"));
    let commands: Vec<&str> = readme.lines().filter(|line| line.contains("cargo ")).collect();
    let wanted = [".ci/setup window && cargo run --release", ".ci/setup tests && cargo test --workspace --locked"];
    assert_eq!(commands, wanted);
    // What must pass before a change lands runs the second of them as it is printed.
    assert!(text(&project().join(".ci/run")).contains("sed -n '/cargo test/p' README.md"));
}

/// The words between single backticks, outside blocks of code.
fn quoted(paper: &str) -> Vec<String> {
    let mut in_block = false;
    let mut words = Vec::new();
    for line in paper.lines() {
        if line.trim_start().starts_with("```") {
            in_block = !in_block;
        } else if !in_block {
            words.extend(line.split('`').skip(1).step_by(2).map(str::to_owned));
        }
    }
    words
}

/// The targets of links, without their anchors and without the net.
fn links(paper: &str) -> Vec<String> {
    let ends = paper.split("](").skip(1).filter_map(|rest| rest.split(')').next());
    let targets = ends.filter_map(|target| target.split('#').next()).filter(|target| !target.contains("://"));
    targets.filter(|target| !target.is_empty()).map(str::to_owned).collect()
}

/// Whether a quoted word is a path of the project.
fn looks_like_a_path(word: &str) -> bool {
    let plain = word.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '/' | '.' | '_' | '-'));
    let first = word.split('/').next().unwrap_or_default();
    let ours = TOP.contains(&first) || [".ci", ".cargo", ".github", ".config"].contains(&first);
    plain && ours
}

#[test]
fn every_path_that_a_paper_names_is_there() {
    let mut faults = Vec::new();
    for paper in papers() {
        let words = text(&paper);
        for path in quoted(&words).into_iter().filter(|word| looks_like_a_path(word)) {
            if !project().join(&path).exists() {
                faults.push(format!("{}: `{path}`", said(&paper)));
            }
        }
        for path in links(&words) {
            if !paper.parent().unwrap().join(&path).exists() {
                faults.push(format!("{}: ({path})", said(&paper)));
            }
        }
    }
    assert_none("papers name what is not there", &faults);
}

#[test]
fn every_finding_is_in_the_handbook() {
    let handbook: String = files("docs/handbook", &[".md"]).iter().map(|path| text(path)).collect();
    let words = quoted(&handbook);
    let faults: Vec<String> =
        findings::ids().filter(|id| !words.iter().any(|word| word == id)).map(str::to_owned).collect();
    assert_none("findings without a line in docs/handbook", &faults);
}

/// The plans in a folder.
fn plans(folder: &str) -> Vec<PathBuf> {
    files(folder, &[".plan.json"])
}

fn check_plan(path: &Path) {
    let written = text(path);
    let plan = file::read(written.as_bytes()).unwrap_or_else(|error| panic!("{}: {error}", said(path)));
    assert_eq!(file::write(&plan), written, "{} is not in the program's own layout", said(path));
}

#[test]
fn every_demo_plan_is_in_our_layout_and_has_no_stop() {
    for path in plans("demo-plans") {
        check_plan(&path);
        let plan = file::read(text(&path).as_bytes()).unwrap();
        let stops = balance(&plan).findings.into_iter().filter(|finding| finding.severity == Severity::Stop);
        let words: Vec<String> = stops.map(|finding| finding.message).collect();
        assert_none(&said(&path), &words);
    }
}

#[test]
fn every_plan_of_the_handbook_is_in_our_layout() {
    for path in plans("docs/handbook") {
        check_plan(&path);
    }
}

#[test]
fn every_demo_plan_comes_with_the_program_and_has_its_line() {
    let readme = text(&project().join("demo-plans/README.md"));
    for path in plans("demo-plans") {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        assert!(fh_store::demos::DEMOS.iter().any(|demo| demo.file_name == name), "{name} is not built in");
        assert!(readme.contains(&name), "{name} has no line in demo-plans/README.md");
    }
}
