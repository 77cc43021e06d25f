//! The files of a crate as modules, and the arrows between them: what each names of the others, by `use` or in place.
//!
//! It reads paths that begin with `crate`, `super`, `self` or one of a module's own children. What a module hands on with
//! `pub use` counts as used where it stands.

use super::sources::working_lines;
use super::{files, said, text};
use std::collections::{BTreeMap, BTreeSet};

/// The path of a module within its crate: empty for the root.
type Module = Vec<String>;

/// One file that uses another.
pub(crate) struct Arrow<'a> {
    pub(crate) from: &'a str,
    pub(crate) to: &'a str,
    /// What it uses of it.
    pub(crate) names: String,
}

/// The files of a crate and the arrows between them. The root, which only lists the others, is left out.
pub(crate) struct Crate {
    pub(crate) name: String,
    uses: BTreeMap<String, BTreeMap<String, BTreeSet<String>>>,
}

/// Every crate of the project.
pub(crate) fn crates() -> Vec<Crate> {
    let mut sources: BTreeMap<String, Vec<(String, String)>> = BTreeMap::new();
    for path in files("crates", &[".rs"]) {
        let place = said(&path);
        let Some((name, file)) = place.strip_prefix("crates/").and_then(|rest| rest.split_once("/src/")) else {
            continue;
        };
        if !path.ends_with("tests.rs") {
            sources.entry(name.to_owned()).or_default().push((module_name(file), text(&path)));
        }
    }
    let borrowed = |(name, files): (String, Vec<(String, String)>)| {
        let files: Vec<(&str, &str)> = files.iter().map(|(file, text)| (file.as_str(), text.as_str())).collect();
        Crate::of(&name, &files)
    };
    sources.into_iter().map(borrowed).collect()
}

/// The module of a file below `src`: `canvas/layout`; empty for the root.
fn module_name(file: &str) -> String {
    let stem = file.trim_end_matches(".rs");
    let stem = stem.strip_suffix("/mod").unwrap_or(stem);
    if ["lib", "main"].contains(&stem) { String::new() } else { stem.to_owned() }
}

impl Crate {
    /// A crate of these files: the module of each, and its text.
    pub(crate) fn of(name: &str, files: &[(&str, &str)]) -> Self {
        let split = |module: &str| module.split('/').filter(|part| !part.is_empty()).map(str::to_owned).collect();
        let texts: BTreeMap<Module, String> =
            files.iter().map(|(module, source)| (split(module), without_tests(source))).collect();
        let paths: BTreeMap<&Module, Paths> =
            texts.iter().map(|(module, text)| (module, Paths::in_text(text))).collect();
        let mut scope = Scope { modules: texts.keys().cloned().collect(), handed_on: BTreeMap::new() };
        // What is handed on may be handed on again.
        for _ in 0..4 {
            for (module, paths) in &paths {
                for path in &paths.handed_on {
                    if let Some((to, name)) = scope.resolve(module, path).zip(path.last()) {
                        scope.handed_on.insert(((*module).clone(), name.clone()), to);
                    }
                }
            }
        }
        let mut uses: BTreeMap<String, BTreeMap<String, BTreeSet<String>>> = BTreeMap::new();
        for (module, paths) in paths.iter().filter(|(module, _)| !module.is_empty()) {
            let of_file = uses.entry(module.join("/")).or_default();
            for path in &paths.used {
                let to = scope.resolve(module, path).filter(|to| to != *module && !to.is_empty());
                if let Some((to, name)) = to.zip(path.last()) {
                    of_file.entry(to.join("/")).or_default().insert(name.clone());
                }
            }
        }
        Self { name: name.to_owned(), uses }
    }

    /// Its files.
    pub(crate) fn files(&self) -> impl Iterator<Item = &str> {
        self.uses.keys().map(String::as_str)
    }

    /// Its arrows.
    pub(crate) fn arrows(&self) -> impl Iterator<Item = Arrow<'_>> {
        let names = |names: &BTreeSet<String>| names.iter().cloned().collect::<Vec<_>>().join(", ");
        self.uses
            .iter()
            .flat_map(move |(from, all)| all.iter().map(move |(to, used)| Arrow { from, to, names: names(used) }))
    }

    /// Every file that one leads to, over however many others.
    pub(crate) fn reached_from<'a>(&'a self, file: &'a str) -> BTreeSet<&'a str> {
        let mut reached = BTreeSet::new();
        let mut open = vec![file];
        while let Some(next) = open.pop() {
            let below = self.uses.get(next).into_iter().flat_map(|all| all.keys().map(String::as_str));
            open.extend(below.filter(|to| reached.insert(*to)));
        }
        reached
    }
}

/// The modules of a crate, and what they hand on from others.
struct Scope {
    modules: BTreeSet<Module>,
    handed_on: BTreeMap<(Module, String), Module>,
}

impl Scope {
    /// The module that a path leads to, read in another one; none where it leads out of the crate.
    fn resolve(&self, from: &Module, path: &[String]) -> Option<Module> {
        let mut parts = path.iter().peekable();
        let mut now = from.clone();
        match parts.peek()?.as_str() {
            "crate" => {
                now.clear();
                parts.next();
            }
            "self" => drop(parts.next()),
            "super" => {
                while parts.next_if(|part| part.as_str() == "super").is_some() {
                    now.pop();
                }
            }
            first => {
                self.child(&now, first)?;
            }
        }
        for part in parts {
            match self.child(&now, part) {
                Some(child) => now = child,
                None => return Some(self.handed_on.get(&(now.clone(), part.clone())).cloned().unwrap_or(now)),
            }
        }
        Some(now)
    }

    fn child(&self, of: &Module, name: &str) -> Option<Module> {
        let child: Module = of.iter().cloned().chain([name.to_owned()]).collect();
        self.modules.contains(&child).then_some(child)
    }
}

/// The lines of a source that are neither comments nor tests.
fn without_tests(source: &str) -> String {
    working_lines(source).into_iter().map(|(_, line)| line).collect::<Vec<_>>().join("\n")
}

/// The paths that a file names.
#[derive(Default)]
struct Paths {
    used: Vec<Vec<String>>,
    handed_on: Vec<Vec<String>>,
}

impl Paths {
    fn in_text(text: &str) -> Self {
        let tokens = tokens(text);
        let (mut paths, mut at) = (Self::default(), 0);
        while let Some(token) = tokens.get(at) {
            match *token {
                "use" => {
                    let is_handed_on = at > 0 && ["pub", ")"].contains(&tokens[at - 1]);
                    let mut found = Vec::new();
                    at = tree(&tokens, at + 1, &[], &mut found);
                    if is_handed_on { &mut paths.handed_on } else { &mut paths.used }.extend(found);
                }
                // What may see an item is no use of it.
                "crate" | "super" if at > 0 && tokens[at - 1] == "in" => {}
                "crate" | "super" if tokens.get(at + 1) == Some(&"::") => {
                    let mut path = vec![(*token).to_owned()];
                    while let (Some(&"::"), Some(name)) = (tokens.get(at + 1), tokens.get(at + 2)) {
                        path.push((*name).to_owned());
                        at += 2;
                    }
                    paths.used.push(path);
                }
                _ => {}
            }
            at += 1;
        }
        paths
    }
}

/// Reads one tree of a `use` from a token on; the token that it ends at.
fn tree(tokens: &[&str], mut at: usize, before: &[String], found: &mut Vec<Vec<String>>) -> usize {
    let mut path = before.to_vec();
    while let Some(token) = tokens.get(at) {
        match *token {
            "{" => {
                at += 1;
                while tokens.get(at).is_some_and(|token| *token != "}") {
                    let end = tree(tokens, at, &path, found);
                    at = end + usize::from(end == at || tokens.get(end) == Some(&","));
                }
                return at + 1;
            }
            "," | "}" | ";" => break,
            "::" => {}
            // Its other name here.
            "as" => at += 1,
            name => path.push(name.to_owned()),
        }
        at += 1;
    }
    if path.len() > before.len() {
        found.push(path);
    }
    at
}

/// The words and signs of a source; what is within quotes is left out.
fn tokens(text: &str) -> Vec<&str> {
    let mut all = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let is_word = |c: char| c.is_alphanumeric() || c == '_';
        let length = match first {
            '"' => quoted(rest),
            '\'' if rest.starts_with("'\"'") => 3,
            'r' if rest.starts_with("r#\"") => rest.find("\"#").map_or(rest.len(), |end| end + 2),
            c if is_word(c) => rest.find(|c| !is_word(c)).unwrap_or(rest.len()),
            _ if rest.starts_with("::") => 2,
            _ if rest.starts_with("//") => rest.find('\n').unwrap_or(rest.len()),
            c => c.len_utf8(),
        };
        let (token, after) = rest.split_at(length);
        if !first.is_whitespace() && !token.contains('"') && !token.starts_with("//") {
            all.push(token);
        }
        rest = after;
    }
    all
}

/// How long a text in quotes is, with both quotes.
fn quoted(text: &str) -> usize {
    let mut is_escaped = false;
    for (at, c) in text.char_indices().skip(1) {
        match c {
            _ if is_escaped => is_escaped = false,
            '\\' => is_escaped = true,
            '"' => return at + 1,
            _ => {}
        }
    }
    text.len()
}
