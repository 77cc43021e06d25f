//! Plans on disk: atomic saving, the journal of unsaved work, recent plans, motifs, settings, the demo plans.
//!
//! A plan is never lost: a save is written beside the file and renamed over it, a file that someone else changed is noticed
//! before it is overwritten, and unsaved work is kept in a journal that outlives a killed program.

pub mod demos;
mod error;
mod home;
mod journal;
pub mod motifs;
mod pages;
mod plan_file;
mod recent;
mod replace;
pub mod settings;
mod stamp;
pub mod tools;

pub use error::StoreError;
pub use home::Home;
pub use journal::{Journal, Leftover};
pub use pages::{page_files, replace_pages};
pub use plan_file::{Loaded, load, read_at_most, save};
pub use recent::Recent;
pub use replace::replace;
pub use stamp::Stamp;
