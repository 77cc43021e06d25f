//! The editor window. All editing goes through commands with undo; panels only read.

pub mod canvas;
pub mod theme;

mod anvil;
mod app;
mod commands;
mod dialogs;
mod editor;
mod figures;
mod heat;
mod log;
mod order;
mod panels;
mod piece_view;
mod services;
mod state;
mod steel;
mod widgets;

pub use app::{RunError, Start, run};
pub use dialogs::{Answer, Ask, Dialogs, Native, Scripted};
pub use editor::Editor;
pub use services::Services;
