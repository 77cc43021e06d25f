//! Plans on disk: atomic saving, the journal of unsaved work, recent plans, motifs, settings, the demo plans.
//!
//! A plan is never lost: a save is written beside the file and renamed over it, a file that someone else changed is noticed
//! before it is overwritten, and unsaved work is kept in a journal that outlives a killed program.

mod aside;
pub mod demos;
pub mod document;
mod error;
mod home;
mod journal;
pub mod motifs;
mod own;
mod pages;
mod plan_file;
mod reading;
mod recent;
mod replace;
pub mod settings;
mod stamp;
pub mod tools;

pub use error::StoreError;
pub use home::Home;
pub use journal::{Journal, Leftover, Leftovers};
pub use own::{Own, Read};
pub use pages::{page_files, replace_pages};
pub use plan_file::{Loaded, load, save};
pub use reading::read_at_most;
pub use recent::Recent;
pub use replace::{replace, replace_same_kind, write_new};
pub use stamp::Stamp;
