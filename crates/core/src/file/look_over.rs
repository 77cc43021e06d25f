//! A first look at a plan file: that it is a plan, of which version, and that nothing in it would be read twice or passed over.

use super::key_path::{KeyPath, Step};
use super::places::{Kind, Place};
use super::wording::shortened;
use std::collections::HashSet;

/// Something wrong at an offset of the text.
#[derive(Debug)]
pub(super) struct Fault {
    /// Where.
    pub(super) path: KeyPath,
    /// Its offset in the text.
    pub(super) offset: usize,
    /// What was read, and what would be right.
    pub(super) message: String,
    /// Whether a wrong key before it is the better thing to tell: a list may be wrong only because its key is.
    pub(super) key_first: bool,
}

/// A sort of file.
#[derive(Clone, Copy, Debug)]
pub struct Sort {
    /// The key that it begins with.
    pub key: &'static str,
    /// The newest version that can be read.
    pub newest: u32,
    /// What it holds, in a word.
    pub what: &'static str,
    /// The keys whose values are lists. A list elsewhere is refused: serde would fill a group's keys from it in their order.
    pub lists: &'static [&'static str],
}

/// The keys of plans and motifs whose values are lists.
pub(super) const LISTS: &[&str] = &[
    "accepted", "bars", "segments", "branches", "repeats", "sides", "polygon", "joints", "moved", "steps", "parts",
    "reach", "log", "sizes", "via", "dressed", "holes",
];

/// Looks the whole file over: no null, no key twice, no list where none belongs.
pub(super) fn look_over(top: &Place, sort: &Sort) -> Result<(), Fault> {
    check_value(top, &KeyPath::default(), sort)
}

/// That it is a file of a sort, of a version that can be read.
pub(super) fn check_version(text: &str, top: &Place, sort: &Sort) -> Result<(), Fault> {
    let Sort { key, newest, what, .. } = sort;
    let fault = |path, offset, message| Err(Fault { path, offset, message, key_first: false });
    let Kind::Group(_) = top.kind else {
        let message = format!(
            "this isn't a {what} of First Heat: a {what} is a group in {{ }}, but {} was found",
            top.kind.words()
        );
        return fault(KeyPath::default(), top.start, message);
    };
    let Some(member) = top.get(key) else {
        let message = format!(
            "this isn't a {what} of First Heat: the key \"{key}\" is missing; a {what} begins with \"{key}\": {newest}"
        );
        return fault(KeyPath::default(), top.start, message);
    };
    let (path, offset) = (KeyPath::default().key(key), member.value.start);
    match version(text, offset) {
        Some(version) if version == *newest => Ok(()),
        Some(newer) if newer > *newest => {
            let message = format!(
                "this {what} was written by a newer First Heat, in version {newer} of the {what} file; \
                 this program reads up to version {newest}"
            );
            fault(path, offset, message)
        }
        // Older versions will be brought up to date before the plan is read. There is none yet.
        _ => fault(path, offset, format!("this isn't a version of the {what} file; versions run from 1 to {newest}")),
    }
}

/// The whole number at an offset.
fn version(text: &str, offset: usize) -> Option<u32> {
    let rest = text.get(offset..)?;
    let end = rest.find(|c: char| c == ',' || c == '}' || c.is_whitespace()).unwrap_or(rest.len());
    rest[..end].parse().ok()
}

fn check_value(place: &Place, path: &KeyPath, sort: &Sort) -> Result<(), Fault> {
    let fault = |message: &str| {
        let key_first = matches!(place.kind, Kind::List(_));
        Err(Fault { path: path.clone(), offset: place.start, message: message.to_owned(), key_first })
    };
    match &place.kind {
        Kind::Null => fault("null means nothing here; leave the key out"),
        Kind::List(_) if !may_be_list(path, sort) => fault("a list in [ ] was found, but none belongs here"),
        Kind::List(items) => {
            items.iter().enumerate().try_for_each(|(index, item)| check_value(item, &path.index(index), sort))
        }
        Kind::Group(members) => {
            let mut seen = HashSet::new();
            members.iter().try_for_each(|member| {
                let path = path.key(&member.key);
                if !seen.insert(&member.key) {
                    let message = format!("the key \"{}\" is here twice", shortened(&member.key));
                    return Err(Fault { path, offset: member.start, message, key_first: false });
                }
                check_value(&member.value, &path, sort)
            })
        }
        Kind::Text | Kind::Number | Kind::TrueOrFalse => Ok(()),
    }
}

fn may_be_list(path: &KeyPath, sort: &Sort) -> bool {
    match path.steps() {
        [.., Step::Key(key), Step::Index(_)] => key == "polygon",
        [.., Step::Key(group), Step::Key(key)] if ["sketch", "underlay"].contains(&group.as_str()) => {
            matches!(key.as_str(), "from" | "to")
        }
        // Of a step: what is done. At the top, a group.
        [.., Step::Index(_), Step::Key(key)] if key == "work" => true,
        [.., Step::Key(key)] => sort.lists.contains(&key.as_str()),
        _ => false,
    }
}
