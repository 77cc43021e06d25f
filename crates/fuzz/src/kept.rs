//! What was found, kept as inputs that a test goes through.

use crate::{Kind, Round};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// One that is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kept {
    /// The bytes of a plan's file.
    Plan(PathBuf, Vec<u8>),
    /// The bytes of a file of the rack, the merchant, the shop or a job.
    Steel(PathBuf, Vec<u8>),
    /// A round by its number.
    Round(Kind, u64),
}

/// Keeps a round's input in a folder: a plan as its file, and what was found beside it. Rounds of edits and hands are known
/// by their numbers. Where it is kept.
///
/// # Errors
/// When it cannot be written.
pub fn keep(folder: &Path, kind: Kind, number: u64, round: &Round) -> io::Result<PathBuf> {
    fs::create_dir_all(folder)?;
    let stem = format!("{}-{number}", kind.name());
    if !round.input.is_empty() {
        fs::write(folder.join(format!("{stem}.json")), &round.input)?;
    }
    let words: Vec<String> = round.faults.iter().map(|fault| format!("{}\n{}\n", fault.what, fault.words)).collect();
    let path = folder.join(format!("{stem}.txt"));
    fs::write(&path, words.join("\n"))?;
    Ok(path)
}

/// All that is kept in a folder: every `.json` as a plan, or as steel where its name begins so, and every line of `rounds.txt` as a round, `edits 17`.
///
/// # Errors
/// When it cannot be read.
pub fn kept(folder: &Path) -> io::Result<Vec<Kept>> {
    let mut paths: Vec<PathBuf> = fs::read_dir(folder)?.filter_map(|file| file.ok().map(|file| file.path())).collect();
    paths.sort();
    let mut all = Vec::new();
    for path in paths.into_iter().filter(|path| path.extension().is_some_and(|ending| ending == "json")) {
        let bytes = fs::read(&path)?;
        let is_steel = path.file_name().is_some_and(|name| name.to_string_lossy().starts_with("steel-"));
        all.push(if is_steel { Kept::Steel(path, bytes) } else { Kept::Plan(path, bytes) });
    }
    let rounds = fs::read_to_string(folder.join("rounds.txt"))?;
    let round = |line: &str| {
        let (name, number) = line.split_once(' ')?;
        let kind = Kind::ALL.into_iter().find(|kind| kind.name() == name)?;
        Some(Kept::Round(kind, number.trim().parse().ok()?))
    };
    all.extend(rounds.lines().filter(|line| !line.starts_with('#')).filter_map(round));
    Ok(all)
}
