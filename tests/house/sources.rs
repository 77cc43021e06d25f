//! Tidy sources.

use crate::house::{assert_none, files, said, text};
use std::path::PathBuf;

/// The most lines of one file.
const MOST_LINES: usize = 500;

fn rust_files() -> Vec<PathBuf> {
    files("crates", &[".rs"]).into_iter().chain(files("tests", &[".rs"])).collect()
}

/// The sources of the crates, without their tests, benches and examples. A module `tests` in a file of its own is a test.
fn source_files() -> Vec<PathBuf> {
    let all = files("crates", &[".rs"]);
    let is_source = |path: &PathBuf| said(path).contains("/src/") && !path.ends_with("tests.rs");
    all.into_iter().filter(is_source).collect()
}

/// The lines of a source that are neither comments nor in a module for tests only, with their numbers.
pub(crate) fn working_lines(source: &str) -> Vec<(usize, &str)> {
    let mut kept = Vec::new();
    let mut lines = source.lines().enumerate();
    while let Some((index, line)) = lines.next() {
        if line.trim_start().starts_with("#[cfg(test)]") {
            skip_item(&mut lines);
        } else if !line.trim_start().starts_with("//") {
            kept.push((index + 1, line));
        }
    }
    kept
}

/// Passes over one item: up to its end at the margin it began at, or its semicolon.
fn skip_item<'a>(lines: &mut impl Iterator<Item = (usize, &'a str)>) {
    let mut margin = None;
    for (_, line) in lines {
        let indent = line.len() - line.trim_start().len();
        if margin.is_none() && line.trim_start().starts_with("#[") {
            continue;
        }
        let opened = *margin.get_or_insert(indent);
        let ends_here = line.trim_end().ends_with(';') || line.trim_end().ends_with('}');
        if indent == opened && ends_here {
            return;
        }
    }
}

/// Every line of the sources with one of these words, outside tests.
fn lines_with(words: &[&str]) -> Vec<String> {
    let mut faults = Vec::new();
    for path in source_files() {
        for (number, line) in working_lines(&text(&path)) {
            if words.iter().any(|word| line.contains(word)) {
                faults.push(format!("{}:{number}: {}", said(&path), line.trim()));
            }
        }
    }
    faults
}

#[test]
fn the_scanner_passes_over_tests_and_comments_only() {
    let source = "fn a() { b.unwrap() }\n// c.unwrap()\n#[cfg(test)]\n#[allow(x)]\nmod tests {\n    fn d() {\n        e.unwrap();\n    }\n}\nfn f() {}\n#[cfg(test)]\nmod other;\nfn g() {}\n";
    let numbers: Vec<usize> = working_lines(source).into_iter().map(|(number, _)| number).collect();
    assert_eq!(numbers, [1, 10, 13]);
}

#[test]
fn every_module_opens_with_what_it_is() {
    let opens = |path: &PathBuf| text(path).lines().next().is_some_and(|line| line.starts_with("//! "));
    let faults: Vec<String> = rust_files().iter().filter(|path| !opens(path)).map(|path| said(path)).collect();
    assert_none("modules without a first sentence", &faults);
}

#[test]
fn no_file_is_too_long() {
    let long = |path: &PathBuf| {
        let lines = text(path).lines().count();
        (lines > MOST_LINES).then(|| format!("{} has {lines} lines", said(path)))
    };
    assert_none("split these by concept", &rust_files().iter().filter_map(long).collect::<Vec<_>>());
}

#[test]
fn nothing_in_the_sources_panics_on_what_it_is_given() {
    assert_none("handle these", &lines_with(&[".unwrap()", ".expect(", "panic!(", "unreachable!("]));
}

#[test]
fn nothing_is_left_to_do() {
    assert_none("finish these", &lines_with(&["todo!", "unimplemented!", "dbg!", "TODO", "FIXME", "XXX"]));
}

#[test]
fn no_test_is_ignored() {
    let ignore = ["#[", "ignore"].concat();
    let faults: Vec<String> =
        rust_files().iter().filter(|path| text(path).contains(&ignore)).map(|path| said(path)).collect();
    assert_none("ignored tests", &faults);
}

#[test]
fn the_metal_and_the_paper_know_no_disk_clock_or_environment() {
    let words = [
        "std::fs",
        "std::env",
        "std::net",
        "std::process",
        "std::time",
        "SystemTime",
        "Instant::now",
        "Local::now",
        "Utc::now",
        "rand::",
        "new_v4",
    ];
    let pure = ["crates/measure/", "crates/heat/", "crates/core/", "crates/piece/", "crates/work/", "crates/print/"];
    let faults: Vec<String> =
        lines_with(&words).into_iter().filter(|fault| pure.iter().any(|folder| fault.starts_with(folder))).collect();
    assert_none("let these come in from outside", &faults);
}

#[test]
fn colors_are_named_in_the_theme_only() {
    let words = ["from_rgb(", "from_rgba", "Color32::from_", "Color32::RED", "Color32::WHITE", "Color32::BLACK"];
    let outside = |fault: &String| fault.starts_with("crates/app/") && !fault.starts_with("crates/app/src/theme/");
    assert_none("name these in the theme", &lines_with(&words).into_iter().filter(outside).collect::<Vec<_>>());
}

#[test]
fn no_text_has_hard_tabs() {
    let endings = [".rs", ".md", ".toml", ".json", ".sh"];
    let faults: Vec<String> =
        files("", &endings).iter().filter(|path| text(path).contains('\t')).map(|path| said(path)).collect();
    assert_none("tabs", &faults);
}
