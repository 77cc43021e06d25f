//! The asked size that is to be opened on the plan's page, which the page takes from here once.

use egui::Id;

/// Where its number is kept.
pub(crate) fn asked_to_open() -> Id {
    Id::unique("asked size to be opened")
}
