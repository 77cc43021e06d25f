//! The system's file dialogs, and a stand-in that answers from a list.

use std::collections::VecDeque;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

/// A person cannot cancel a dialog faster than this: an answer that is faster means there is no dialog.
const TOO_FAST_FOR_A_PERSON: Duration = Duration::from_millis(300);

/// The system's command that opens a file in the program that is meant for it.
const OPENER: &str = if cfg!(target_os = "macos") {
    "open"
} else if cfg!(windows) {
    "explorer"
} else {
    "xdg-open"
};

/// What a file is asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ask {
    /// The words over the dialog.
    pub title: String,
    /// The folder to begin in.
    pub folder: Option<PathBuf>,
    /// The name of a new file; none where an existing one is asked for.
    pub new_name: Option<String>,
    /// The kind of file in words, and its ending; several stand with commas between them.
    pub kind: (String, String),
}

/// What came of a dialog.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// This file.
    File(PathBuf),
    /// The user closed the dialog.
    Cancelled,
    /// No dialog came up: the path must be typed.
    NoDialog,
}

/// Asks for files outside of the window. The window goes on while it waits.
pub trait Dialogs {
    /// Begins to ask. The context is to be woken when the answer is there.
    fn ask(&mut self, ask: Ask, ctx: &egui::Context);
    /// The answer, once it is there.
    fn answer(&mut self) -> Option<Answer>;
    /// Opens a file or a folder in the program that the system has for it.
    ///
    /// # Errors
    /// Where there is none; in words.
    fn show(&mut self, path: &Path) -> Result<(), String>;
}

/// The system's own dialogs, through the desktop portal.
pub struct Native {
    answers: (Sender<Answer>, Receiver<Answer>),
}

impl Default for Native {
    fn default() -> Self {
        Self { answers: channel() }
    }
}

impl Dialogs for Native {
    fn ask(&mut self, ask: Ask, ctx: &egui::Context) {
        let (sender, ctx) = (self.answers.0.clone(), ctx.clone());
        std::thread::spawn(move || {
            let answer = show(ask);
            // Nobody waits any more once the window is closed.
            let _ = sender.send(answer);
            ctx.request_repaint();
        });
    }

    fn answer(&mut self) -> Option<Answer> {
        self.answers.1.try_recv().ok()
    }

    fn show(&mut self, path: &Path) -> Result<(), String> {
        let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
        let mut command = Command::new(OPENER);
        let command = command.arg(&path).stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
        let mut child =
            command.spawn().map_err(|_| format!("{OPENER} is missing here; open {} yourself", path.display()))?;
        // It is waited for, or it would stay in the system's list of programs.
        std::thread::spawn(move || child.wait());
        Ok(())
    }
}

fn show(ask: Ask) -> Answer {
    let (words, ending) = &ask.kind;
    let mut dialog =
        rfd::FileDialog::new().set_title(&ask.title).add_filter(words, &ending.split(',').collect::<Vec<_>>());
    if let Some(folder) = &ask.folder {
        dialog = dialog.set_directory(folder);
    }
    let begun = Instant::now();
    let file = match &ask.new_name {
        Some(name) => dialog.set_file_name(name).save_file(),
        None => dialog.pick_file(),
    };
    match file {
        Some(path) => Answer::File(path),
        None if begun.elapsed() < TOO_FAST_FOR_A_PERSON => Answer::NoDialog,
        None => Answer::Cancelled,
    }
}

/// Answers from a list, for tests; where the list is empty there is no dialog.
#[derive(Default)]
pub struct Scripted {
    answers: VecDeque<Answer>,
    waiting: usize,
    shown: Arc<Mutex<Vec<PathBuf>>>,
}

impl Scripted {
    /// Gives these answers, one after the other.
    pub fn new(answers: impl IntoIterator<Item = Answer>) -> Self {
        Self { answers: answers.into_iter().collect(), ..Self::default() }
    }

    /// What was opened in other programs, as it comes.
    pub fn shown(&self) -> Arc<Mutex<Vec<PathBuf>>> {
        Arc::clone(&self.shown)
    }
}

impl Dialogs for Scripted {
    fn ask(&mut self, _: Ask, ctx: &egui::Context) {
        self.waiting += 1;
        ctx.request_repaint();
    }

    fn answer(&mut self) -> Option<Answer> {
        self.waiting = self.waiting.checked_sub(1)?;
        Some(self.answers.pop_front().unwrap_or(Answer::NoDialog))
    }

    fn show(&mut self, path: &Path) -> Result<(), String> {
        if let Ok(mut shown) = self.shown.lock() {
            shown.push(path.to_owned());
        }
        Ok(())
    }
}
