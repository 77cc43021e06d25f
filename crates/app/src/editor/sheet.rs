//! Making the printed sheets.

use super::Editor;
use crate::dialogs::{Dialog, Printed, SheetFile};
use crate::state::{PaperSize, SheetKind};
use egui::Context;
use fh_measure::counted;
use fh_print::drawing::Drawing;
use fh_print::sheets::{Sheet, document_for, usual_orientation};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// What a smith has to do with sheets at full scale.
const AT_FULL_SCALE: &str = "Print at 100 %, not “fit to page”, and lay a rule on the 100 mm line.";

impl Editor {
    /// Asks for paper and file.
    pub(crate) fn ask_sheet(&mut self) {
        let plan = self.folder().join(self.document.file_stem());
        let paper = self.settings.paper.unwrap_or(self.usual_paper());
        let last = |sheet: &Sheet| self.settings.sheets.iter().any(|word| word == sheet.file_word());
        let mut sheets: Vec<Sheet> = Sheet::ALL.into_iter().filter(last).collect();
        if sheets.is_empty() {
            sheets = Sheet::USUAL.to_vec();
        }
        self.dialog = Some(Dialog::Sheet(SheetFile::new(plan, self.settings.sheet, paper, &sheets)));
    }

    fn usual_paper(&self) -> PaperSize {
        PaperSize::usual(self.document.plan().units.length)
    }

    /// Draws the pages of the dialog in front beside the window, where its choices are others now.
    pub(super) fn refresh_preview(&mut self, ctx: &Context) {
        match self.dialog.take() {
            Some(Dialog::Sheet(mut dialog)) => {
                let choices = dialog.choices();
                if dialog.preview.hear(&choices) {
                    let (plan, shop) = (self.document.plan().clone(), self.order.shop().clone());
                    let (sheets, paper) = choices.clone();
                    dialog.preview.begin(ctx, choices, move || {
                        let balance = fh_core::balance::balance(&plan);
                        document_for(&plan, &balance, &shop, &sheets, paper.paper(), usual_orientation(&sheets))
                    });
                }
                self.dialog = Some(Dialog::Sheet(dialog));
            }
            Some(Dialog::Paper(mut dialog)) => {
                let paper = dialog.paper();
                if dialog.preview.hear(&paper)
                    && let Some(draw) = self.paper(dialog.what(), paper)
                {
                    dialog.preview.begin(ctx, paper, draw);
                }
                self.dialog = Some(Dialog::Paper(dialog));
            }
            other => self.dialog = other,
        }
    }

    /// Opens a file or a folder in the program that the system has for it.
    pub(super) fn show_outside(&mut self, path: &Path) {
        let shown = self.services.dialogs.show(path);
        match (shown, &mut self.dialog) {
            (Ok(()), Some(Dialog::Printed(_))) => self.dialog = None,
            (Err(why), Some(Dialog::Printed(dialog))) => dialog.say(why),
            (Ok(()), _) => {}
            (Err(why), _) => self.say(format!("■ Not opened: {why}")),
        }
    }

    /// Writes the sheets that the dialog asks for to a file.
    pub(super) fn write_sheet(&mut self, path: &Path, kind: SheetKind, paper: PaperSize) {
        let (sheets, drawn) = match &self.dialog {
            Some(Dialog::Sheet(dialog)) => (dialog.sheets(), dialog.preview.drawing(&dialog.choices()).cloned()),
            _ => (vec![Sheet::Marks], None),
        };
        self.keep_paper(paper);
        self.settings.sheet = kind;
        self.settings.sheets = sheets.iter().map(|sheet| sheet.file_word().to_owned()).collect();
        self.keep_settings();
        let drawing = drawn.unwrap_or_else(|| Arc::new(self.sheet_drawing(&sheets, paper)));
        match sheet_files(&drawing, kind, path) {
            Ok(files) => self.say_printed(&sheets, &files, path, drawing.pages.len()),
            Err(why) => {
                if let Some(Dialog::Sheet(dialog)) = &mut self.dialog {
                    dialog.entry.say(why);
                }
            }
        }
    }

    /// Only what differs from the usual is a choice: a plan in the other unit has its own usual paper.
    pub(super) fn keep_paper(&mut self, paper: PaperSize) {
        if self.settings.paper.is_some() || paper != self.usual_paper() {
            self.settings.paper = Some(paper);
        }
    }

    fn say_printed(&mut self, sheets: &[Sheet], files: &[PathBuf], path: &Path, pages: usize) {
        let names: Vec<&str> = sheets.iter().map(|sheet| sheet.name()).collect();
        let is_one = matches!(sheets, [Sheet::Marks | Sheet::Bench | Sheet::Ladder | Sheet::Gauges]);
        let are = if is_one { "is" } else { "are" };
        let place = match files {
            [first, .., last] => format!("{} to {}", first.display(), last.display()),
            _ => path.display().to_string(),
        };
        let words = format!("The {} {are} in {place}, {}.", names.join(", the "), counted(pages, "page"));
        self.say(format!("{words} Print at 100 %."));
        let first = files.first().map_or(path, PathBuf::as_path);
        self.dialog = Some(Dialog::Printed(Printed::new(words, AT_FULL_SCALE, first)));
    }

    fn sheet_drawing(&self, sheets: &[Sheet], paper: PaperSize) -> Drawing {
        let (plan, balance) = (self.document.plan(), self.document.balance());
        document_for(plan, balance, self.order.shop(), sheets, paper.paper(), usual_orientation(sheets))
    }
}

/// Writes the pages: to one file, or as SVG to a file for each page. Gives the files.
fn sheet_files(drawing: &Drawing, kind: SheetKind, path: &Path) -> Result<Vec<PathBuf>, String> {
    match kind {
        SheetKind::Pdf => {
            let bytes = fh_print::pdf(drawing).map_err(|error| error.to_string())?;
            fh_store::replace_same_kind(path, &bytes).map_err(|error| error.to_string())?;
            Ok(vec![path.to_owned()])
        }
        SheetKind::Svg => {
            fh_store::replace_pages(path, &fh_print::svg(drawing), false).map_err(|error| error.to_string())
        }
    }
}
