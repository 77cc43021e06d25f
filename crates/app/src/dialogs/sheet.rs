//! The dialog that makes the printed sheets: which, on which paper, to which file, and what they look like.

use super::frame::{Frame, main_button, other_button};
use super::path_entry::PathEntry;
use super::preview::{self, Preview};
use crate::state::{Desk, PaperSize, Request, SheetKind};
use crate::theme::{Text, space};
use egui::{Context, RichText, Ui};
use fh_print::sheets::Sheet;
use std::path::{Path, PathBuf};

/// What is printed, on which paper.
pub(crate) type SheetChoices = (Vec<Sheet>, PaperSize);

/// What is printed, on which paper, and to which file.
pub(crate) struct SheetFile {
    /// The plan's file without its ending.
    plan: PathBuf,
    pub(crate) entry: PathEntry,
    paper: PaperSize,
    kind: SheetKind,
    /// Every kind of sheet, and whether it is printed.
    wanted: [(Sheet, bool); 7],
    pub(crate) preview: Preview<SheetChoices>,
}

impl SheetFile {
    /// Begins with the plan's file without its ending, and with these sheets wanted.
    pub(crate) fn new(plan: PathBuf, kind: SheetKind, paper: PaperSize, sheets: &[Sheet]) -> Self {
        let wanted = Sheet::ALL.map(|sheet| (sheet, sheets.contains(&sheet)));
        let entry = PathEntry::new(&usual_file(&plan, &wanted, kind));
        Self { plan, entry, paper, kind, wanted, preview: Preview::default() }
    }

    /// The sheets that are printed, in order.
    pub(crate) fn sheets(&self) -> Vec<Sheet> {
        self.wanted.iter().filter(|(_, wanted)| *wanted).map(|(sheet, _)| *sheet).collect()
    }

    /// What the pages follow from.
    pub(crate) fn choices(&self) -> SheetChoices {
        (self.sheets(), self.paper)
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
        let frame = Frame { title: "Print the sheets", width: preview::WIDTH };
        let Self { plan, entry, paper, kind, wanted, preview } = self;
        frame.show(
            ctx,
            desk,
            out,
            |ui, out| {
                let usual = usual_file(plan, wanted, *kind);
                preview.beside(ui, desk, |ui| {
                    what(ui, desk, wanted);
                    // A name that the smith typed stays.
                    if entry.path().is_some_and(|path| path == usual) {
                        entry.set(&usual_file(plan, wanted, *kind));
                    }
                    choices(ui, entry, paper, kind);
                    ui.add_space(space::GAP);
                    entry.show(ui, desk, out);
                    hints(ui, desk, *kind);
                });
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

fn small(ui: &mut Ui, desk: &Desk<'_>, words: &str) {
    ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
}

/// What has to be known of the file.
fn hints(ui: &mut Ui, desk: &Desk<'_>, kind: SheetKind) {
    ui.add_space(space::TIGHT);
    if kind == SheetKind::Svg {
        small(ui, desk, "Each page is a file of its own: where there are more, -1, -2 and so on follow the name.");
    }
    small(ui, desk, "Print at 100 %, not “fit to page”, and lay a rule on the 100 mm line before you mark the bar.");
    if desk.document.plan().bars.iter().all(|bar| bar.segments.is_empty()) {
        ui.add_space(space::TIGHT);
        let words = "▲ Nothing is on the bar yet: the sheet will be empty.";
        ui.label(RichText::new(words).color(desk.theme.warning));
    }
}

/// The kinds of the piece, then those of its order of work, each with what it is for.
fn what(ui: &mut Ui, desk: &Desk<'_>, wanted: &mut [(Sheet, bool); 7]) {
    let (piece, order) = wanted.split_at_mut(3);
    for (of, wanted) in [("For the piece", piece), ("For the work", order)] {
        ui.label(RichText::new(of).text_style(Text::Strong.style()));
        ui.scope(|ui| {
            ui.spacing_mut().item_spacing.y = 0.0;
            for (sheet, wanted) in wanted {
                ui.checkbox(wanted, sheet.name());
                ui.scope(|ui| {
                    // A line of words is no target: it is as high as its words.
                    ui.spacing_mut().interact_size.y = 0.0;
                    ui.horizontal(|ui| {
                        ui.add_space(ui.spacing().icon_width + ui.spacing().icon_spacing);
                        small(ui, desk, sheet.purpose());
                    });
                });
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
        ui.add_space(space::GROUP);
        ui.label("File");
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
