//! The window around the editor.

use crate::editor::Editor;
use crate::services::Services;
use eframe::{CreationContext, Frame, NativeOptions};
use egui::{Event, RawInput, Ui, ViewportBuilder};
use fh_store::demos::DEMOS;
use std::fmt;
use std::path::PathBuf;

/// The first size of the window, and the least.
const SIZE: [f32; 2] = [1366.0, 768.0];
const LEAST_SIZE: [f32; 2] = [640.0, 400.0];
/// The name that the desktop knows the window by.
const APP_ID: &str = "firstheat";

/// What to open the editor with.
#[derive(Clone, Debug, Default)]
pub struct Start {
    /// The plan's file; where none is named, the plan that was open last, or a demo plan.
    pub plan: Option<PathBuf>,
}

/// Why there is no window.
#[derive(Debug)]
pub struct RunError(String);

impl fmt::Display for RunError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for RunError {}

/// Opens the window and stays until it is closed.
///
/// # Errors
/// When no window can be opened: there is no display, or it cannot draw.
pub fn run(start: Start) -> Result<(), RunError> {
    let viewport = ViewportBuilder::default()
        .with_app_id(APP_ID)
        .with_title("First Heat")
        .with_inner_size(SIZE)
        .with_min_inner_size(LEAST_SIZE);
    let options = NativeOptions { viewport, ..NativeOptions::default() };
    let window =
        |context: &CreationContext<'_>| -> Result<Box<dyn eframe::App>, Box<dyn std::error::Error + Send + Sync>> {
            crate::theme::install_fonts(&context.egui_ctx);
            Ok(Box::new(Window { editor: editor(&start) }))
        };
    eframe::run_native(APP_ID, options, Box::new(window)).map_err(|error| RunError(why(&error)))
}

/// Why there is no window, without the places in the code that the window library names.
fn why(error: &eframe::Error) -> String {
    let (what, words) = match error {
        eframe::Error::Winit(_) | eframe::Error::WinitEventLoop(_) => {
            ("the display cannot be reached", error.to_string())
        }
        _ => ("the display cannot draw with OpenGL", error.to_string()),
    };
    let cause = words.rsplit(": ").next().unwrap_or_default().trim_end_matches('.');
    format!("{what} ({cause})")
}

fn editor(start: &Start) -> Editor {
    let services = Services::native();
    if let Some(path) = &start.plan {
        return Editor::with_file(services, path);
    }
    match DEMOS.first().and_then(|demo| fh_core::file::read(demo.text.as_bytes()).ok()) {
        Some(plan) => Editor::at_start(services, plan),
        None => Editor::new(services),
    }
}

struct Window {
    editor: Editor,
}

impl eframe::App for Window {
    fn ui(&mut self, ui: &mut Ui, _: &mut Frame) {
        self.editor.show(ui);
    }

    fn raw_input_hook(&mut self, _: &egui::Context, input: &mut RawInput) {
        // What is pressed with Alt is a command: in a field it would be typed as well. On a Mac it writes letters.
        let mut is_command = false;
        input.events.retain(|event| match event {
            Event::Key { modifiers, .. } => {
                is_command = modifiers.alt && !modifiers.ctrl && !cfg!(target_os = "macos");
                true
            }
            Event::Text(_) => !is_command,
            _ => true,
        });
    }

    fn on_exit(&mut self, _: Option<&eframe::glow::Context>) {
        self.editor.close();
    }
}
