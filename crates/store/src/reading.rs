//! Reading a file that may be anything: a pipe would be waited for, a device never ends.

use crate::StoreError;
use fh_core::file::{self, FileError};
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::Path;

/// Reads a file whole. What is no file is refused before it is opened, and what is far too large before it is read.
///
/// # Errors
/// When it cannot be read, is no file, or is too large.
pub(crate) fn read_file(path: &Path) -> Result<Vec<u8>, StoreError> {
    let cannot = |error| StoreError::read(path, error);
    let metadata = fs::metadata(path).map_err(cannot)?;
    if !metadata.is_file() {
        return Err(StoreError::NotAFile { path: path.to_owned() });
    }
    let too_large = |error: FileError| StoreError::NotAPlan { path: path.to_owned(), error };
    file::check_size(metadata.len()).map_err(too_large)?;
    let bytes = File::open(path).and_then(|mut file| read_at_most(&mut file)).map_err(cannot)?;
    file::check_size(bytes.len() as u64).map_err(too_large)?;
    Ok(bytes)
}

/// Reads no more than one byte over what a plan may have, so that a stream without end is refused too.
///
/// # Errors
/// When reading fails.
pub fn read_at_most(stream: &mut impl Read) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    stream.take(file::MOST_BYTES + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn a_stream_without_end_is_read_no_further_than_is_needed() {
        let bytes = read_at_most(&mut io::repeat(b'x')).unwrap();
        assert_eq!(bytes.len() as u64, file::MOST_BYTES + 1);
    }

    #[cfg(unix)]
    #[test]
    fn a_pipe_is_refused_and_not_waited_for() {
        let folder = tempfile::tempdir().unwrap();
        let pipe = folder.path().join("pipe.plan.json");
        assert!(std::process::Command::new("mkfifo").arg(&pipe).status().unwrap().success());
        assert!(matches!(read_file(&pipe), Err(StoreError::NotAFile { .. })));
        assert!(matches!(read_file(Path::new("/dev/zero")), Err(StoreError::NotAFile { .. })));
    }
}
