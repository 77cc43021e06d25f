//! A document whose pages are files of their own.

use crate::error::StoreError;
use crate::replace::{replace, replace_same_kind};
use std::path::{Path, PathBuf};

/// The files of a document of so many pages: `hook.svg` where there is one, else `hook-1.svg`, `hook-2.svg` and so on.
pub fn page_files(path: &Path, count: usize) -> Vec<PathBuf> {
    if count == 1 {
        return vec![path.to_owned()];
    }
    let stem = path.file_stem().unwrap_or_default();
    let file = |number: usize| {
        let mut name = stem.to_owned();
        name.push(format!("-{number}"));
        if let Some(ending) = path.extension() {
            name.push(".");
            name.push(ending);
        }
        path.with_file_name(name)
    };
    (1..=count).map(file).collect()
}

/// Writes each page whole to its file, as [`replace_same_kind`] does, and gives the files; see [`page_files`] for their names.
/// Where it is forced, whatever is there is replaced.
///
/// # Errors
/// When one cannot be written; those before it are there then.
pub fn replace_pages(path: &Path, pages: &[String], force: bool) -> Result<Vec<PathBuf>, StoreError> {
    let files = page_files(path, pages.len());
    for (file, page) in files.iter().zip(pages) {
        let write = if force { replace } else { replace_same_kind };
        write(file, page.as_bytes())?;
    }
    Ok(files)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn one_page_keeps_its_name_and_more_are_numbered() {
        let path = Path::new("shop/gate.hook.svg");
        assert_eq!(page_files(path, 1), [path]);
        assert_eq!(page_files(path, 2), [Path::new("shop/gate.hook-1.svg"), Path::new("shop/gate.hook-2.svg")]);
        assert_eq!(page_files(Path::new("plain"), 2), [Path::new("plain-1"), Path::new("plain-2")]);
    }

    #[test]
    fn every_page_is_written() {
        let folder = tempfile::tempdir().unwrap();
        let pages = ["a".to_owned(), "b".to_owned()];
        let files = replace_pages(&folder.path().join("hook.svg"), &pages, false).unwrap();
        let read: Vec<String> = files.iter().map(|file| std::fs::read_to_string(file).unwrap()).collect();
        assert_eq!(read, pages);
        assert!(!folder.path().join("hook.svg").exists());
    }
}
