//! The smith's own files: the rack. A named file has to be there; the program's own
//! need not.

use crate::failure::Failure;
use fh_core::file::FileError;
use fh_rack::kept::rack::{self, Rack};
use fh_store::Home;
use fh_store::document::{self, Sort};
use std::path::{Path, PathBuf};

/// How a rack is read and written.
pub(crate) const RACK: Sort<Rack> = Sort { read: rack::read, write: rack::write, instead: Rack::default };

/// The file of the rack.
pub(crate) fn rack_path(named: Option<&Path>) -> Result<PathBuf, Failure> {
    named.map_or_else(|| Ok(Home::find()?.rack_file()), |path| Ok(path.to_owned()))
}

/// The rack.
pub(crate) fn rack(named: Option<&Path>) -> Result<Rack, Failure> {
    read(named, Home::rack_file, rack::read, Rack::default)
}

fn read<T>(
    named: Option<&Path>,
    own: fn(&Home) -> PathBuf,
    read: fn(&[u8]) -> Result<T, FileError>,
    instead: fn() -> T,
) -> Result<T, Failure> {
    match named {
        Some(path) => Ok(document::load(path, read)?.value),
        None => Ok(document::load_or(&own(&Home::find()?), read, instead)?.value),
    }
}
