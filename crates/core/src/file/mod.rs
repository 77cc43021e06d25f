//! The plan file and the motif file: read with clear errors, written in one readable layout. Their keys are those of
//! `docs/plan-format.md`.

mod error;
mod extent;
mod fault;
mod in_form;
mod key_path;
mod layout;
mod look_over;
mod places;
mod polygon;
mod schema;
mod validate;
mod wording;

pub use error::FileError;
pub use fault::Fault;
pub use key_path::KeyPath;
pub use look_over::Sort;
pub use schema::{schema, schema_of};

use crate::motif::{MOTIF_VERSION, Motif};
use crate::plan::{FORMAT_VERSION, Plan};
use extent::Extent;
pub(crate) use fault::{Checked, refuse};
pub(crate) use in_form::{SectionPlace, check_outline, check_section};
use places::{Kind, Place, Stopped};
use serde::Serialize;
use serde::de::{DeserializeOwned, IgnoredAny};

/// The most bytes a plan file may have: 16 MB. The largest plan we know of takes a thousandth of it.
pub const MOST_BYTES: u64 = 16 * MEGABYTE;

const MEGABYTE: u64 = 1024 * 1024;

const PLAN: Sort = Sort { key: "firstheat", newest: FORMAT_VERSION, what: "plan", lists: look_over::LISTS };
const MOTIF: Sort = Sort { key: "firstheat_motif", newest: MOTIF_VERSION, what: "kept part", lists: look_over::LISTS };

/// Reads a plan.
///
/// # Errors
/// When the bytes are not a plan that this program can read; the error names the place and what would be right.
pub fn read(bytes: &[u8]) -> Result<Plan, FileError> {
    read_sort(bytes, &PLAN, validate::validate)
}

/// Reads a motif.
///
/// # Errors
/// When the bytes are not a motif that this program can read; the error names the place and what would be right.
pub fn read_motif(bytes: &[u8]) -> Result<Motif, FileError> {
    read_sort(bytes, &MOTIF, validate::validate_motif)
}

/// Reads a file of a sort; `validate` checks what its types cannot say.
///
/// # Errors
/// When the bytes are no such file; the error names the place and what would be right.
pub fn read_sort<T: DeserializeOwned>(
    bytes: &[u8],
    sort: &Sort,
    validate: fn(&T) -> Result<(), fault::Fault>,
) -> Result<T, FileError> {
    let text = as_text(bytes)?;
    check_json(text)?;
    let top = places::places(text).map_err(|stopped| cannot_scan(text, &stopped))?;
    let at = |fault: look_over::Fault| FileError::at(text, fault.offset, fault.path.to_string(), fault.message);
    look_over::check_version(text, &top, sort).map_err(at)?;
    let looked = look_over::look_over(&top, sort);
    let key_first = looked.as_ref().is_err_and(|fault| fault.key_first);
    let value = match (looked.map_err(at), read_keys(text, &top)) {
        (Ok(()), read) => read?,
        (Err(fault), Err(error)) if key_first && error.is_before(&fault) => return Err(error),
        (Err(fault), _) => return Err(fault),
    };
    validate(&value).map_err(|fault| {
        let offset = top.follow(&fault.path).place.start;
        FileError::at(text, offset, fault.path.to_string(), fault.message)
    })?;
    Ok(value)
}

/// Whether a plan could be read back from its file; whoever changes a plan keeps it so.
///
/// # Errors
/// When a value in it would be refused, splits lie too deep in one another, or its file would be too large; the error names
/// the key, where there is one, and what would be right.
pub fn check(plan: &Plan) -> Result<(), FileError> {
    validate::validate(plan).map_err(without_place)?;
    check_extent(plan, &PLAN)
}

/// Whether a motif could be read back from its file.
///
/// # Errors
/// As for a plan, see [`check`].
pub fn check_motif(motif: &Motif) -> Result<(), FileError> {
    validate::validate_motif(motif).map_err(without_place)?;
    check_extent(motif, &MOTIF)
}

/// Whether a file would be read again, by its depth and its size.
fn check_extent(value: &impl Serialize, sort: &Sort) -> Result<(), FileError> {
    let extent = Extent::of(value);
    if extent.deepest > places::DEEPEST {
        // Each split takes six levels; nothing else in a plan lies in itself.
        let message = format!("splits are nested too deeply; a {} takes nine at most", sort.what);
        return Err(FileError::whole(message));
    }
    // Only what could be too large is laid out to be measured.
    if extent.most_bytes as u64 <= MOST_BYTES {
        return Ok(());
    }
    let bytes = laid_out(value).len() as u64;
    if bytes <= MOST_BYTES {
        return Ok(());
    }
    let (size, most) = (bytes.div_ceil(MEGABYTE), MOST_BYTES / MEGABYTE);
    Err(FileError::whole(format!("its file would have {size} MB, and a {} has {most} MB at most", sort.what)))
}

fn without_place(fault: fault::Fault) -> FileError {
    FileError { path: fault.path.to_string(), ..FileError::whole(fault.message) }
}

/// Writes a plan. What was read from a file in this layout gives the same text again.
pub fn write(plan: &Plan) -> String {
    laid_out(plan)
}

/// Writes a motif, in the layout of plans.
pub fn write_motif(motif: &Motif) -> String {
    laid_out(motif)
}

/// Writes a file of any sort in the layout of plans.
pub fn write_sort(value: &impl Serialize) -> String {
    laid_out(value)
}

fn laid_out(value: &impl Serialize) -> String {
    // Only a map with keys that are no text can fail, and no file of ours has any.
    let value = serde_json::to_value(value).unwrap_or_default();
    layout::lay_out(&value)
}

/// Why a file of this many bytes is not read at all.
///
/// # Errors
/// When it is larger than [`MOST_BYTES`].
pub fn check_size(bytes: u64) -> Result<(), FileError> {
    if bytes <= MOST_BYTES {
        return Ok(());
    }
    let (size, most) = (bytes / MEGABYTE, MOST_BYTES / MEGABYTE);
    // A stream is read no further than one byte too many.
    let size = if size == most { format!("more than {most} MB") } else { format!("{size} MB") };
    Err(FileError::whole(format!("the file has {size}, and a plan has {most} MB at most")))
}

fn as_text(bytes: &[u8]) -> Result<&str, FileError> {
    check_size(bytes.len() as u64)?;
    if bytes.starts_with(&[0xFF, 0xFE]) || bytes.starts_with(&[0xFE, 0xFF]) {
        return Err(FileError::whole("the file is written in UTF-16; save it as UTF-8"));
    }
    let text = std::str::from_utf8(bytes).map_err(|error| {
        let at = error.valid_up_to();
        let sound = String::from_utf8_lossy(bytes.get(..at).unwrap_or_default());
        let byte = bytes.get(at).copied().unwrap_or_default();
        let message = format!("the file is not UTF-8 text: the byte {byte:#04x} is not a character; save it as UTF-8");
        FileError::at(&sound, at, String::new(), message)
    })?;
    Ok(text.strip_prefix('\u{feff}').unwrap_or(text))
}

/// Makes sure that the text is JSON, before its keys are looked at.
fn check_json(text: &str) -> Result<(), FileError> {
    if text.trim().is_empty() {
        return Err(FileError::whole("the file is empty"));
    }
    serde_json::from_str::<IgnoredAny>(text).map(|_| ()).map_err(|error| {
        let line_start = text.split_inclusive('\n').take(error.line().saturating_sub(1)).map(str::len).sum::<usize>();
        let offset = line_start + error.column().saturating_sub(1);
        FileError::at(text, offset, String::new(), wording::not_json_at(&error.to_string(), text, offset))
    })
}

fn cannot_scan(text: &str, stopped: &Stopped) -> FileError {
    match stopped {
        Stopped::TooDeep(offset) => {
            FileError::at(text, *offset, String::new(), wording::plain("recursion limit exceeded"))
        }
        Stopped::NotJson => FileError::whole("the file is not JSON"),
    }
}

fn read_keys<T: DeserializeOwned>(text: &str, top: &Place) -> Result<T, FileError> {
    let mut json = serde_json::Deserializer::from_str(text);
    serde_path_to_error::deserialize(&mut json).map_err(|error| {
        let said = error.inner().to_string();
        let mut path = KeyPath::from(error.path());
        let mut found = top.follow(&path);
        path = path.first(found.steps);
        let mut at_key = wording::is_about_a_key(&said);
        // The name of a choice is the only key of its group.
        if let (true, Kind::Group(members)) = (wording::is_about_a_name(&said), &found.place.kind) {
            path = members.first().map_or(path.clone(), |member| path.key(&member.key));
            (found, at_key) = (top.follow(&path), true);
        }
        let message = wrong_group(&said, found.place).unwrap_or_else(|| wording::plain(&said));
        let offset = if at_key { found.key_start } else { found.place.start };
        FileError::at(text, offset, path.to_string(), message)
    })
}

/// The words for a value that is to be a name, or one name with its sizes. There `serde_json` sees no further than a missing bracket.
fn wrong_group(said: &str, place: &Place) -> Option<String> {
    if !wording::is_about_brackets(said) {
        return None;
    }
    Some(match &place.kind {
        Kind::Group(members) if members.len() > 1 => {
            let names: Vec<_> = members.iter().map(|member| format!("\"{}\"", member.key)).collect();
            format!("one name belongs in these {{ }}, but {} were read", names.join(" and "))
        }
        Kind::Group(members) if members.is_empty() => {
            "nothing was found in these { }, but a name belongs here".to_owned()
        }
        kind => format!("{} was found, but a name in quotes or a group in {{ }} belongs here", kind.words()),
    })
}
