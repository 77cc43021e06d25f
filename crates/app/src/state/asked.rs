//! What is to be opened on the plan's page, which the page takes from here once.

use egui::Id;

/// Where the number of an asked size is kept.
pub(crate) fn asked_to_open() -> Id {
    Id::unique("asked size to be opened")
}

/// Where the number of a joint is kept.
pub(crate) fn joint_to_open() -> Id {
    Id::unique("joint to be opened")
}
