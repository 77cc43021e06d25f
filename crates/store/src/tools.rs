//! The tools that the smith owns, in the user's own profile. What is in the list is the editor's affair.

use crate::{Home, StoreError, settings};
use serde::Serialize;
use serde::de::DeserializeOwned;

/// Reads the tools; none where none were kept yet.
///
/// # Errors
/// When the file is there and cannot be read or is no list of tools of this program.
pub fn load<T: DeserializeOwned>(home: &Home) -> Result<Option<T>, StoreError> {
    settings::read_own(&home.tools_file(), "no tools of First Heat")
}

/// Keeps the tools.
///
/// # Errors
/// When they cannot be written.
pub fn save<T: Serialize>(home: &Home, tools: &T) -> Result<(), StoreError> {
    settings::write_own(&home.tools_file(), tools)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use std::fs;

    #[test]
    fn tools_come_back_and_leave_the_settings_alone() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        assert_eq!(load::<Vec<String>>(&home).unwrap(), None);
        let tools = vec!["drift".to_owned(), "fuller".to_owned()];
        save(&home, &tools).unwrap();
        assert_eq!(load(&home).unwrap(), Some(tools));
        assert!(!home.settings_file().exists());
    }

    #[test]
    fn a_broken_list_is_told() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        fs::write(home.tools_file(), "[ drift").unwrap();
        let words = load::<Vec<String>>(&home).unwrap_err().to_string();
        assert!(words.contains("no tools of First Heat"), "{words}");
    }
}
