//! What a smith reads is British English, and says things as one smith says them to another.

use crate::house::sources::working_lines;
use crate::house::{assert_none, files, said, text};
use std::path::{Path, PathBuf};
use tests::project;

/// Crates whose words are held to it.
const AREAS: [&str; 10] = ["core", "measure", "store", "piece", "heat", "work", "rack", "print", "firstheat", "app"];
/// Papers for those who change the program, and the page that puts both spellings side by side.
const LEFT_OUT: [&str; 3] = ["DEVELOPERS.md", "docs/architecture.md", "docs/handbook/words.md"];
/// Words that begin so are not ours, and what is said instead.
const NOT_OURS: [(&str, &str); 20] = [
    ("color", "colour"),
    ("center", "centre"),
    ("neighbor", "neighbour"),
    ("toward ", "towards"),
    ("toward.", "towards"),
    ("gray", "grey"),
    ("aluminum", "aluminium"),
    ("galvanized", "galvanised"),
    ("vise", "vice"),
    ("reckon", "work out"),
    ("anew", "again"),
    ("behind step", "after step"),
    ("behind the step", "after the step"),
    ("beware", "caution"),
    ("speaks of", "is about, refers to"),
    ("speaks against", "is found wrong with"),
    ("part off", "cut off"),
    ("parted off", "cut off"),
    ("parting off", "cutting off"),
    ("foresaw", "contingency"),
];
/// What has to be written so all the same: an id that other programs know, and the title of a book.
const ALLOWED: [&str; 2] = ["scroll-from-center", "Aluminum and Aluminum Alloys"];

/// The words of a text that are not ours.
fn strangers(text: &str) -> Vec<String> {
    // What stands in braces is filled in: a name in code.
    let mut text: String = text.split('{').map(|part| part.split_once('}').map_or(part, |(_, rest)| rest)).collect();
    text.make_ascii_lowercase();
    for allowed in ALLOWED {
        text = text.replace(&allowed.to_lowercase(), "");
    }
    let begins = |at: usize| !text[..at].chars().next_back().is_some_and(char::is_alphanumeric);
    let found = |word: &str| text.match_indices(word).any(|(at, _)| begins(at));
    let strange = NOT_OURS.iter().filter(|(word, _)| found(word));
    strange.map(|(word, ours)| format!("“{}”, say “{ours}”", word.trim())).collect()
}

/// A paper without what stands in backticks: names in code are American.
fn prose(paper: &str) -> String {
    let mut in_block = false;
    let mut all = String::new();
    for line in paper.lines() {
        if line.trim_start().starts_with("```") {
            in_block = !in_block;
        } else if !in_block {
            // Targets of links are paths.
            let words: String = line.split('`').step_by(2).collect();
            all.extend(words.split("](").enumerate().map(|(at, part)| match at {
                0 => part,
                _ => part.split_once(')').map_or("", |(_, rest)| rest),
            }));
            all.push('\n');
        }
    }
    all
}

/// The string literals of a source, without its tests, each with its line; attributes are left out.
fn literals(source: &str) -> Vec<(usize, String)> {
    // Every line stays where it is; what is passed over is empty.
    let mut lines = vec![""; source.lines().count()];
    working_lines(source).into_iter().for_each(|(number, line)| lines[number - 1] = line);
    let source = lines.join("\n");
    let source = source.as_str();
    let mut found = Vec::new();
    let mut rest = source;
    while let Some(at) = rest.find(['"', '\'', '/', '#']) {
        let here = &rest[at..];
        let before = &source[..source.len() - here.len()];
        let skipped = match here.as_bytes()[0] {
            b'/' if here.starts_with("//") => here.find('\n').unwrap_or(here.len()),
            b'#' if here.starts_with("#[") || here.starts_with("#![") => attribute(here),
            b'\'' => character(here),
            b'"' => {
                let bare = before.trim_end_matches('#');
                let length = if bare.ends_with('r') { raw(here, before.len() - bare.len()) } else { plain(here) };
                found.push((before.lines().count(), here[1..length].to_owned()));
                length + 1
            }
            _ => 1,
        };
        rest = &here[skipped.min(here.len())..];
    }
    found
}

/// Where a plain string ends.
fn plain(here: &str) -> usize {
    let mut escaped = false;
    let end = here.char_indices().skip(1).find(|(_, letter)| {
        let ends = *letter == '"' && !escaped;
        escaped = *letter == '\\' && !escaped;
        ends
    });
    end.map_or(here.len(), |(at, _)| at)
}

/// Where a raw string ends.
fn raw(here: &str, hashes: usize) -> usize {
    let end = format!("\"{}", "#".repeat(hashes));
    here[1..].find(&end).map_or(here.len(), |at| at + 1)
}

/// How long a character is; 1 for a lifetime.
fn character(here: &str) -> usize {
    let mut letters = here.char_indices().skip(1);
    match letters.next() {
        Some((_, '\\')) => {
            here[2..].char_indices().skip(1).find(|(_, letter)| *letter == '\'').map_or(1, |(at, _)| at + 3)
        }
        Some(_) => letters.next().filter(|(_, letter)| *letter == '\'').map_or(1, |(at, _)| at + 1),
        None => 1,
    }
}

/// How long an attribute is.
fn attribute(here: &str) -> usize {
    let mut depth = 0;
    let end = here.char_indices().find(|(_, letter)| {
        depth += i32::from(*letter == '[') - i32::from(*letter == ']');
        *letter == ']' && depth == 0
    });
    end.map_or(here.len(), |(at, _)| at + 1)
}

fn sources() -> impl Iterator<Item = PathBuf> {
    let all = AREAS.into_iter().flat_map(|area| files(&format!("crates/{area}/src"), &[".rs"]));
    // The one that reads both spellings has to name them.
    all.filter(|path| !path.ends_with("tests.rs") && !path.ends_with("plan/spelling.rs"))
}

#[test]
fn papers_are_in_british_english() {
    let is_for_smiths = |path: &Path| !LEFT_OUT.iter().any(|left_out| path.ends_with(left_out));
    let top = ["README.md", "demo-plans/README.md"].map(|name| project().join(name));
    let papers = top.into_iter().chain(files("docs", &[".md"]).into_iter().filter(|path| is_for_smiths(path)));
    let mut faults = Vec::new();
    for path in papers {
        for (number, line) in prose(&text(&path)).lines().enumerate() {
            faults.extend(
                strangers(line).into_iter().map(|fault| format!("{}, about line {}: {fault}", said(&path), number + 1)),
            );
        }
    }
    assert_none("words that are not ours", &faults);
}

#[test]
fn what_the_program_says_is_in_british_english() {
    let mut faults = Vec::new();
    for path in sources() {
        for (line, words) in literals(&text(&path)) {
            faults.extend(strangers(&words).into_iter().map(|fault| format!("{}:{line}: {fault}", said(&path))));
        }
    }
    assert_none("words that are not ours", &faults);
}

#[test]
fn words_are_found_in_strings_and_prose_alone() {
    let source = "/// The color.\n#[allow(dead_code, reason = \"center\")]\nfn color(a: &'a str) -> char { '\"' }\n\
                  const WORDS: &str = \"No \\\"color\\\"\";\nconst RAW: &str = r#\"a \"gray\" bar\"#;\n#[cfg(test)]\nmod tests {\n    const A: &str = \"vise\";\n}\nconst B: &str = \"anew\";";
    let found: Vec<_> = literals(source).into_iter().map(|(line, words)| (line, strangers(&words).len())).collect();
    assert_eq!(found, [(4, 1), (5, 1), (10, 1)], "{:?}", literals(source));
    assert_eq!(strangers(&prose("The `color` of [it](docs/color.md).\n```\ncolor\n```\n")), Vec::<String>::new());
    assert_eq!(strangers(&prose("The Color of it, toward you, reckoned.")).len(), 3);
    assert_eq!(strangers("multicolored, a device, in {color}"), Vec::<String>::new());
}
