//! The user's settings. What is in them is the editor's affair; any type that serde knows will do.

use crate::{Home, StoreError, replace};
use fh_core::file::FileError;
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::fs;
use std::io;
use std::path::Path;

/// Reads the settings; none where none were saved yet.
///
/// # Errors
/// When the file is there and cannot be read or is no settings file of this program.
pub fn load<T: DeserializeOwned>(home: &Home) -> Result<Option<T>, StoreError> {
    read_own(&home.settings_file(), "no settings of First Heat")
}

/// Writes the settings.
///
/// # Errors
/// When they cannot be written.
pub fn save<T: Serialize>(home: &Home, settings: &T) -> Result<(), StoreError> {
    write_own(&home.settings_file(), settings)
}

/// Reads a file of the program's own; none where there is none yet. `wrong` says what a broken one is not.
pub(crate) fn read_own<T: DeserializeOwned>(path: &Path, wrong: &str) -> Result<Option<T>, StoreError> {
    let bytes = match fs::read(path) {
        Ok(bytes) => bytes,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(error) => return Err(StoreError::read(path, error)),
    };
    serde_json::from_slice(&bytes).map(Some).map_err(|error| {
        let (line, column) = (Some(error.line()), Some(error.column()));
        let message = format!("these are {wrong}, {error}");
        StoreError::NotAPlan { path: path.to_owned(), error: FileError { line, column, path: String::new(), message } }
    })
}

/// Writes a file of the program's own.
pub(crate) fn write_own<T: Serialize>(path: &Path, what: &T) -> Result<(), StoreError> {
    let text = serde_json::to_string_pretty(what).map_err(|error| StoreError::write(path, error.into()))?;
    make_folder_of(path)?;
    replace(path, text.as_bytes())
}

/// Makes the folder of a file, and those above it.
pub(crate) fn make_folder_of(path: &Path) -> Result<(), StoreError> {
    path.parent().map_or(Ok(()), |folder| fs::create_dir_all(folder).map_err(|error| StoreError::write(folder, error)))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use serde::Deserialize;

    #[derive(Debug, PartialEq, Serialize, Deserialize)]
    struct Look {
        dark: bool,
        scale: f32,
    }

    #[test]
    fn settings_come_back() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(&folder.path().join("not yet there"));
        assert_eq!(load::<Look>(&home).unwrap(), None);
        let look = Look { dark: true, scale: 1.5 };
        save(&home, &look).unwrap();
        assert_eq!(load(&home).unwrap(), Some(look));
    }

    #[test]
    fn broken_settings_are_told() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        fs::write(home.settings_file(), "{ dark").unwrap();
        let words = load::<Look>(&home).unwrap_err().to_string();
        assert!(words.contains("no settings of First Heat") && words.ends_with("settings.json)"), "{words}");
    }
}
