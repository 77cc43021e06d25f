//! What the editor needs from outside: a folder of its own, and the system's file dialogs.

use crate::dialogs::{Dialogs, Native};
use fh_store::Home;

/// What the editor needs from outside.
pub struct Services {
    /// The folder for settings, recent plans and the journal of unsaved work; where there is none, nothing is remembered.
    pub home: Option<Home>,
    /// The system's file dialogs.
    pub dialogs: Box<dyn Dialogs>,
}

impl Services {
    /// The user's own folder and the system's own dialogs.
    pub fn native() -> Self {
        Self { home: Home::find().ok(), dialogs: Box::new(Native::default()) }
    }
}
