//! The dialog that makes the printed sheets.

use super::frame::{Frame, main_button, other_button};
use super::path_entry::PathEntry;
use crate::state::{Desk, PaperSize, Request, SheetKind};
use crate::theme::{Text, space};
use egui::{Context, RichText, Ui};
use fh_print::sheets::Sheet;
use std::path::{Path, PathBuf};

/// What is printed, on which paper, and to which file.
pub(crate) struct SheetFile {
    /// The plan's file without its ending.
    plan: PathBuf,
    pub(crate) entry: PathEntry,
    paper: PaperSize,
    kind: SheetKind,
    /// Every kind of sheet, and whether it is printed.
    wanted: [(Sheet, bool); 7],
}

impl SheetFile {
    /// Begins with the plan's file without its ending, and with the usual sheets wanted.
    pub(crate) fn new(plan: PathBuf, kind: SheetKind, paper: PaperSize) -> Self {
        let wanted = Sheet::ALL.map(|sheet| (sheet, Sheet::USUAL.contains(&sheet)));
        let entry = PathEntry::new(&usual_file(&plan, &wanted, kind));
        Self { plan, entry, paper, kind, wanted }
    }

    /// The sheets that are printed, in order.
    pub(crate) fn sheets(&self) -> Vec<Sheet> {
        self.wanted.iter().filter(|(_, wanted)| *wanted).map(|(sheet, _)| *sheet).collect()
    }

    /// The kind of file that is chosen.
    pub(crate) fn kind(&self) -> SheetKind {
        self.kind
    }

    /// The system's dialog gave a file: what is to be written.
    pub(crate) fn write(&self, path: PathBuf) -> Request {
        Request::WriteSheet(path, self.kind, self.paper)
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "Print the sheets", width: 560.0 };
        let Self { plan, entry, paper, kind, wanted } = self;
        frame.show(
            ctx,
            desk,
            out,
            |ui, out| {
                let usual = usual_file(plan, wanted, *kind);
                what(ui, wanted);
                // A name that the smith typed stays.
                if entry.path().is_some_and(|path| path == usual) {
                    entry.set(&usual_file(plan, wanted, *kind));
                }
                choices(ui, entry, paper, kind);
                ui.add_space(space::GAP);
                entry.show(ui, desk, out);
                ui.add_space(space::GAP);
                if *kind == SheetKind::Svg {
                    let pages =
                        "Each page is a file of its own: where there are more, -1, -2 and so on follow the name.";
                    ui.label(RichText::new(pages).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
                }
                let hint =
                    "Print it at 100 %, not “fit to page”, and lay a rule on its 100 mm line before you mark the bar.";
                ui.label(RichText::new(hint).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
                if desk.document.plan().bars.iter().all(|bar| bar.segments.is_empty()) {
                    ui.add_space(space::GAP);
                    let words = "▲ Nothing is on the bar yet: the sheet will be empty.";
                    ui.label(RichText::new(words).color(desk.theme.warning));
                }
                let any = wanted.iter().any(|(_, wanted)| *wanted);
                (entry.path().filter(|path| any && !path.is_dir()), *kind, *paper)
            },
            |ui, out, (chosen, kind, paper)| {
                if main_button(ui, desk.theme, "Make the file", chosen.is_some())
                    && let Some(path) = chosen
                {
                    out.push(Request::WriteSheet(path, kind, paper));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}

/// The kinds of the piece in one line, those of its order of work in the next.
fn what(ui: &mut Ui, wanted: &mut [(Sheet, bool); 7]) {
    let (piece, order) = wanted.split_at_mut(3);
    for (of, wanted) in [("For the piece", piece), ("For the work", order)] {
        ui.horizontal_wrapped(|ui| {
            ui.label(of);
            for (sheet, wanted) in wanted {
                ui.checkbox(wanted, sheet.name());
            }
        });
    }
}

fn choices(ui: &mut Ui, entry: &mut PathEntry, paper: &mut PaperSize, kind: &mut SheetKind) {
    ui.horizontal_wrapped(|ui| {
        ui.label("Paper");
        for choice in PaperSize::ALL {
            ui.radio_value(paper, choice, choice.paper().name());
        }
    });
    ui.horizontal_wrapped(|ui| {
        ui.label("Kind of file");
        for choice in SheetKind::ALL {
            if ui.radio_value(kind, choice, choice.name()).changed()
                && let Some(path) = entry.path()
            {
                entry.set(&path.with_extension(choice.ending()));
            }
        }
    });
}

/// The file that is proposed: the plan's name, what is printed, and the ending of its kind.
fn usual_file(plan: &Path, wanted: &[(Sheet, bool)], kind: SheetKind) -> PathBuf {
    let mut chosen = wanted.iter().filter(|(_, wanted)| *wanted).map(|(sheet, _)| sheet.file_word());
    let what = match (chosen.next(), chosen.next()) {
        (Some(only), None) => only,
        _ => "sheets",
    };
    let name = plan.file_name().unwrap_or_default().to_string_lossy();
    plan.with_file_name(format!("{name}-{what}.{}", kind.ending()))
}
