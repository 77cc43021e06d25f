//! The smith's own files: the rack, the merchant's list, the shop's figures. A named file has to be there; the program's own
//! need not.

use crate::failure::Failure;
use crate::output;
use fh_core::file::FileError;
use fh_rack::kept::merchant::{self, Merchant};
use fh_rack::kept::rack::{self, Rack};
use fh_rack::kept::shop::{self, Shop};
use fh_store::Home;
use fh_store::document::{self, Sort};
use std::path::{Path, PathBuf};

/// How a rack is read and written.
const RACK: Sort<Rack> = Sort { read: rack::read, write: rack::write, instead: Rack::default };

/// The file of the rack.
fn rack_path(named: Option<&Path>) -> Result<PathBuf, Failure> {
    named.map_or_else(|| Ok(Home::find()?.rack_file()), |path| Ok(path.to_owned()))
}

/// The rack.
pub(crate) fn rack(named: Option<&Path>) -> Result<Rack, Failure> {
    read(named, Home::rack_file, rack::read, Rack::default)
}

/// The merchant's list; the one that comes with the program where the smith has none.
pub(crate) fn merchant(named: Option<&Path>) -> Result<Merchant, Failure> {
    read(named, Home::merchant_file, merchant::read, Merchant::common)
}

/// The shop's figures; those that come with the program where the smith has none.
pub(crate) fn shop(named: Option<&Path>) -> Result<Shop, Failure> {
    read(named, Home::shop_file, shop::read, Shop::common)
}

/// Changes the rack in one go, and says what was done.
pub(crate) fn change(
    file: Option<&Path>,
    done: impl FnOnce(&Rack) -> Result<(Rack, String), Failure>,
) -> Result<(), Failure> {
    let path = rack_path(file)?;
    let checked = |rack: &Rack| {
        let (next, told) = done(rack)?;
        // What is written can be read again, or it is not written.
        rack::read(rack::write(&next).as_bytes()).map_err(Failure::new)?;
        Ok::<_, Failure>((next, told))
    };
    let told = document::change(&path, RACK, checked)?;
    output::print(&told)
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
