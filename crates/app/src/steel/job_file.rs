//! The file of the job, and whether it has changes that are not saved.

use crate::state::{Desk, JobAsk, Request, SteelAsk};
use crate::theme::Text;
use egui::{Label, RichText, Ui};

/// Shows which it is, and the buttons to save it and to open another.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let job = &desk.steel.job;
    let name = job.file().and_then(|file| file.path.file_name()).map(|name| name.to_string_lossy().into_owned());
    let words = match (name, job.is_changed()) {
        (Some(name), true) => format!("● {name}, changes not saved"),
        (Some(name), false) => name,
        (None, true) => "● in no file yet".to_owned(),
        (None, false) => "in no file".to_owned(),
    };
    let words = RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet);
    let label = ui.add(Label::new(words).truncate());
    if let Some(file) = job.file() {
        label.on_hover_text(file.path.display().to_string());
    }
    ui.horizontal_wrapped(|ui| {
        let mut button = |words: &str, name: &str, tip: &str, ask: JobAsk| {
            if ui.button(words).accessible_name(name).on_hover_text(tip).clicked() {
                out.push(Request::Steel(SteelAsk::Job(ask)));
            }
        };
        button("Save", "Save the job", "Save the job in its file (Ctrl+S).", JobAsk::Save);
        button("Save as…", "Save the job as…", "Save the job in another file.", JobAsk::AskSaveAs);
        button("Open…", "Open a job…", "Open another job (Ctrl+O).", JobAsk::AskOpen);
        button("New", "New job", "Begin a job of the open plan.", JobAsk::New);
    });
}
