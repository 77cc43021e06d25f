//! The plans that were open lately.

use crate::reading::read_file;
use crate::replace::make_folder_of;
use crate::{Home, StoreError, replace};
use std::path::{Path, PathBuf};

/// How many are remembered.
const MOST: usize = 12;

/// The plans that were open lately, the latest first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Recent {
    paths: Vec<PathBuf>,
}

impl Recent {
    /// Reads the list; one that cannot be read is an empty one.
    pub fn load(home: &Home) -> Self {
        let bytes = read_file(&home.recent_file()).unwrap_or_default();
        let paths: Vec<PathBuf> = serde_json::from_slice(&bytes).unwrap_or_default();
        Self { paths: paths.into_iter().take(MOST).collect() }
    }

    /// The plans, the latest first. Some may be gone from the disk.
    pub fn paths(&self) -> &[PathBuf] {
        &self.paths
    }

    /// Puts a plan at the head of the list.
    pub fn add(&mut self, path: &Path) {
        let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
        self.remove(&path);
        self.paths.insert(0, path);
        self.paths.truncate(MOST);
    }

    /// Takes a plan off the list.
    pub fn remove(&mut self, path: &Path) {
        self.paths.retain(|known| known != path);
    }

    /// Writes the list.
    ///
    /// # Errors
    /// When it cannot be written.
    pub fn save(&self, home: &Home) -> Result<(), StoreError> {
        // A name that is not UTF-8 cannot stand in JSON.
        let paths: Vec<_> = self.paths.iter().filter_map(|path| path.to_str()).collect();
        let path = home.recent_file();
        make_folder_of(&path)?;
        replace(&path, serde_json::json!(paths).to_string().as_bytes())
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn the_latest_stands_first_and_each_stands_once() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(&folder.path().join("not yet there"));
        let mut recent = Recent::load(&home);
        for number in 0..20 {
            recent.add(Path::new(&format!("/plans/{number}")));
        }
        recent.add(Path::new("/plans/15"));
        recent.save(&home).unwrap();
        let loaded = Recent::load(&home);
        assert_eq!(loaded, recent);
        assert_eq!(loaded.paths().len(), MOST);
        assert_eq!(loaded.paths()[..2], [PathBuf::from("/plans/15"), PathBuf::from("/plans/19")]);
    }

    #[test]
    fn a_broken_list_is_an_empty_one() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        std::fs::write(home.recent_file(), "[3").unwrap();
        assert!(Recent::load(&home).paths().is_empty());
    }
}
