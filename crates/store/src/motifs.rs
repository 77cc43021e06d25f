//! The smith's own motifs, the kept parts: each in a file of its own in one folder.
//!
//! Such files had another name once, in another folder: these are still read, and nothing in them is lost.

use crate::reading::read_file;
use crate::replace::{Existing, make_folder_of, write_whole};
use crate::{Home, StoreError};
use fh_core::file;
use fh_core::motif::Motif;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// What the names of the files end with.
pub const ENDING: &str = ".part.json";
/// What they ended with before.
pub const OLD_ENDING: &str = ".motif.json";

/// The most letters that a file takes from its motif's name.
const MOST_LETTERS: usize = 60;

/// A motif and where it is kept.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptMotif {
    /// Its file.
    pub path: PathBuf,
    /// The motif.
    pub motif: Motif,
}

/// The motifs that are kept, by name, and why others could not be read.
pub fn list(home: &Home) -> (Vec<KeptMotif>, Vec<StoreError>) {
    let (mut kept, mut failed) = (Vec::new(), Vec::new());
    for folder in [home.parts_folder(), home.old_parts_folder()] {
        match files_in(&folder) {
            Ok(paths) => {
                for path in paths {
                    match load(&path) {
                        Ok(motif) => kept.push(KeptMotif { path, motif }),
                        Err(error) => failed.push(error),
                    }
                }
            }
            Err(error) => failed.push(error),
        }
    }
    kept.sort_by_key(|kept| (kept.motif.name.to_lowercase(), kept.path.clone()));
    failed.sort_by_key(ToString::to_string);
    (kept, failed)
}

/// The files of kept parts in a folder, under their old names too; none where there is no such folder.
fn files_in(folder: &Path) -> Result<Vec<PathBuf>, StoreError> {
    let files = match fs::read_dir(folder) {
        Ok(files) => files,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
        Err(error) => return Err(StoreError::read(folder, error)),
    };
    let is_kept = |path: &PathBuf| {
        let name = path.to_string_lossy();
        name.ends_with(ENDING) || name.ends_with(OLD_ENDING)
    };
    Ok(files.flatten().map(|file| file.path()).filter(is_kept).collect())
}

/// Reads one motif.
///
/// # Errors
/// When the file cannot be read, or is no motif.
pub fn load(path: &Path) -> Result<Motif, StoreError> {
    let bytes = read_file(path)?;
    file::read_motif(&bytes).map_err(|error| StoreError::NotAPlan { path: path.to_owned(), error })
}

/// Keeps a motif in the file of its name, whole or not at all; the file. With `overwrite` it takes the place of another of
/// that name, also of one in its old file, which goes once the new one is there.
///
/// # Errors
/// When there is another of that name, when it could not be read back, and when it cannot be written.
pub fn save(home: &Home, motif: &Motif, overwrite: bool) -> Result<PathBuf, StoreError> {
    let path = file_of(home, &motif.name);
    file::check_motif(motif).map_err(|error| StoreError::NotAPlan { path: path.clone(), error })?;
    let old = old_file_of(home, &motif.name);
    if !overwrite && old.exists() {
        return Err(StoreError::AlreadyThere { path: old });
    }
    make_folder_of(&path)?;
    let existing = if overwrite { Existing::Replace } else { Existing::Keep };
    write_whole(&path, file::write_motif(motif).as_bytes(), existing)?;
    if overwrite && old.exists() {
        remove(&old)?;
    }
    Ok(path)
}

/// Takes a motif's file away.
///
/// # Errors
/// When it cannot be removed.
pub fn remove(path: &Path) -> Result<(), StoreError> {
    fs::remove_file(path).map_err(|error| StoreError::write(path, error))
}

/// The file of a motif of this name: letters and figures stay, what is between them becomes a hyphen.
pub fn file_of(home: &Home, name: &str) -> PathBuf {
    home.parts_folder().join(format!("{}{ENDING}", stem(name, "part")))
}

/// The file that a motif of this name had before.
fn old_file_of(home: &Home, name: &str) -> PathBuf {
    home.old_parts_folder().join(format!("{}{OLD_ENDING}", stem(name, "motif")))
}

/// A name as a file bears it; one without letters and figures has another word.
fn stem(name: &str, nameless: &str) -> String {
    let mut stem = String::new();
    for letter in name.trim().to_lowercase().chars() {
        if letter.is_alphanumeric() {
            stem.push(letter);
        } else if !stem.is_empty() && !stem.ends_with('-') {
            stem.push('-');
        }
    }
    let stem: String = stem.chars().take(MOST_LETTERS).collect();
    let stem = stem.trim_end_matches('-');
    if stem.is_empty() { nameless.to_owned() } else { stem.to_owned() }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::demos::DEMOS;
    use fh_core::plan::Chain;

    fn motif(name: &str) -> Motif {
        let plan = file::read(DEMOS[0].text.as_bytes()).unwrap();
        Motif::taken(&plan, 0, Chain::Bar, 0..=1, name).unwrap()
    }

    fn home() -> (tempfile::TempDir, Home) {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(&folder.path().join("not yet there"));
        (folder, home)
    }

    #[test]
    fn motifs_are_kept_by_name_and_taken_away() {
        let (_folder, home) = home();
        assert_eq!(list(&home).0, []);
        save(&home, &motif("Leaf end"), false).unwrap();
        let path = save(&home, &motif("eye & neck"), false).unwrap();
        assert_eq!(path.file_name().unwrap(), "eye-neck.part.json");
        let (kept, failed) = list(&home);
        assert!(failed.is_empty());
        assert_eq!(kept.iter().map(|kept| kept.motif.name.as_str()).collect::<Vec<_>>(), ["eye & neck", "Leaf end"]);
        assert_eq!(kept[0].motif, motif("eye & neck"));
        remove(&path).unwrap();
        assert_eq!(list(&home).0.len(), 1);
        assert!(remove(&path).is_err());
    }

    #[test]
    fn a_motif_does_not_take_the_place_of_another_unasked() {
        let (_folder, home) = home();
        save(&home, &motif("leaf"), false).unwrap();
        assert!(matches!(save(&home, &motif("Leaf"), false), Err(StoreError::AlreadyThere { .. })));
        assert_eq!(list(&home).0[0].motif.name, "leaf");
        save(&home, &motif("Leaf"), true).unwrap();
        assert_eq!(list(&home).0[0].motif.name, "Leaf");
    }

    /// Keeps a motif as it was kept before.
    fn keep_as_before(home: &Home, name: &str) -> PathBuf {
        let path = old_file_of(home, name);
        make_folder_of(&path).unwrap();
        fs::write(&path, file::write_motif(&motif(name))).unwrap();
        path
    }

    #[test]
    fn what_was_kept_under_the_old_name_is_still_there() {
        let (_folder, home) = home();
        let old = keep_as_before(&home, "Leaf end");
        assert_eq!(old.file_name().unwrap(), "leaf-end.motif.json");
        save(&home, &motif("eye"), false).unwrap();
        let (kept, failed) = list(&home);
        assert!(failed.is_empty());
        assert_eq!(kept.iter().map(|kept| kept.motif.name.as_str()).collect::<Vec<_>>(), ["eye", "Leaf end"]);
        remove(&kept[1].path).unwrap();
        assert!(!old.exists());
    }

    #[test]
    fn an_old_file_gives_way_only_where_that_is_asked_for() {
        let (_folder, home) = home();
        let old = keep_as_before(&home, "leaf");
        assert!(matches!(save(&home, &motif("Leaf"), false), Err(StoreError::AlreadyThere { .. })));
        assert!(old.exists() && !file_of(&home, "leaf").exists());
        save(&home, &motif("Leaf"), true).unwrap();
        assert!(!old.exists());
        assert_eq!(list(&home).0.iter().map(|kept| kept.motif.name.as_str()).collect::<Vec<_>>(), ["Leaf"]);
    }

    #[test]
    fn a_broken_motif_is_told_and_the_others_are_there() {
        let (_folder, home) = home();
        save(&home, &motif("leaf"), false).unwrap();
        fs::write(home.parts_folder().join("torn.part.json"), "{ \"firstheat_motif\": 1, ").unwrap();
        fs::write(home.parts_folder().join("notes.txt"), "nothing").unwrap();
        let (kept, failed) = list(&home);
        assert_eq!((kept.len(), failed.len()), (1, 1));
        let words = failed[0].to_string();
        assert!(words.starts_with("line 1") && words.ends_with("torn.part.json)"), "{words}");
    }

    #[test]
    fn a_name_cannot_lead_out_of_the_folder() {
        let (_folder, home) = home();
        for (name, file) in
            [("../../leaf", "leaf"), ("/", "part"), ("", "part"), ("Blatt ¼″", "blatt"), ("a\0b", "a-b")]
        {
            let path = file_of(&home, name);
            assert_eq!(path.parent().unwrap(), home.parts_folder());
            let wanted = path.file_name().unwrap().to_string_lossy().into_owned();
            assert!(wanted.starts_with(file) && wanted.ends_with(ENDING), "{wanted}");
        }
        assert!(save(&home, &motif("  "), false).is_err(), "a motif has a name");
        assert!(file_of(&home, &"x".repeat(400)).file_name().unwrap().len() < 100);
    }
}
