//! The dialog that prints the cut list or the quote.

use super::frame::{Frame, main_button, other_button};
use super::path_entry::PathEntry;
use super::preview::{self, Preview};
use crate::state::{Desk, PaperSize, Request, SteelAsk, SteelPaper};
use crate::theme::{Text, space};
use egui::{Context, RichText, Ui};
use std::path::{Path, PathBuf};

/// What is printed, on which paper, and to which file.
pub(crate) struct PaperFile {
    pub(crate) entry: PathEntry,
    what: SteelPaper,
    paper: PaperSize,
    pub(crate) preview: Preview<PaperSize>,
}

impl PaperFile {
    /// Begins with the plan's file without its ending.
    pub(crate) fn new(plan: &Path, what: SteelPaper, paper: PaperSize) -> Self {
        let name = plan.file_name().unwrap_or_default().to_string_lossy();
        let path = plan.with_file_name(format!("{name}-{}.pdf", what.file_word()));
        Self { entry: PathEntry::new(&path), what, paper, preview: Preview::default() }
    }

    /// What is printed.
    pub(crate) fn what(&self) -> SteelPaper {
        self.what
    }

    /// What its pages follow from beside that.
    pub(crate) fn paper(&self) -> PaperSize {
        self.paper
    }

    /// The system's dialog gave a file: what is to be written.
    pub(crate) fn write(&self, path: PathBuf) -> Request {
        Request::Steel(SteelAsk::WritePaper(path, self.what, self.paper))
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let title = match self.what {
            SteelPaper::Cut => "Print the cut list",
            SteelPaper::Customer => "Print the quote",
            SteelPaper::Figures => "Print the figures behind the quote",
        };
        let hint = self.what.hint();
        let Self { entry, what, paper, preview } = self;
        Frame { title, width: preview::WIDTH }.show(
            ctx,
            desk,
            out,
            |ui, out| {
                preview.beside(ui, desk, |ui| {
                    choose_paper(ui, paper);
                    ui.add_space(space::GAP);
                    entry.show(ui, desk, out);
                    ui.add_space(space::GAP);
                    ui.label(RichText::new(hint).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
                });
                (entry.path().filter(|path| !path.is_dir()), *what, *paper)
            },
            |ui, out, (chosen, what, paper)| {
                if main_button(ui, desk.theme, "Make the file", chosen.is_some())
                    && let Some(path) = chosen
                {
                    out.push(Request::Steel(SteelAsk::WritePaper(path, what, paper)));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}

fn choose_paper(ui: &mut Ui, paper: &mut PaperSize) {
    ui.horizontal_wrapped(|ui| {
        ui.label("Paper");
        for choice in PaperSize::ALL {
            ui.radio_value(paper, choice, choice.paper().name());
        }
    });
}
