//! Making the printed sheets.

use super::Editor;
use crate::dialogs::{Dialog, SheetFile};
use crate::state::{PaperSize, SheetKind};
use fh_print::sheets::{Sheet, document_for, usual_orientation};
use std::path::{Path, PathBuf};

impl Editor {
    /// Asks for paper and file.
    pub(crate) fn ask_sheet(&mut self) {
        let plan = self.folder().join(self.document.file_stem());
        let paper = self.settings.paper.unwrap_or(self.usual_paper());
        self.dialog = Some(Dialog::Sheet(SheetFile::new(plan, self.settings.sheet, paper)));
    }

    fn usual_paper(&self) -> PaperSize {
        PaperSize::usual(self.document.plan().units.length)
    }

    /// Writes the sheets that the dialog asks for to a file.
    pub(super) fn write_sheet(&mut self, path: &Path, kind: SheetKind, paper: PaperSize) {
        self.settings.sheet = kind;
        // Only what differs from the usual is a choice: a plan in the other unit has its own usual paper.
        if self.settings.paper.is_some() || paper != self.usual_paper() {
            self.settings.paper = Some(paper);
        }
        self.keep_settings();
        let sheets = match &self.dialog {
            Some(Dialog::Sheet(dialog)) => dialog.sheets(),
            _ => vec![Sheet::Marks],
        };
        match self.sheet_files(&sheets, kind, paper, path) {
            Ok(files) => {
                self.dialog = None;
                let names: Vec<&str> = sheets.iter().map(|sheet| sheet.name()).collect();
                let are = if matches!(sheets.as_slice(), [Sheet::Marks | Sheet::Bench | Sheet::Ladder | Sheet::Gauges])
                {
                    "is"
                } else {
                    "are"
                };
                let place = match files.as_slice() {
                    [first, .., last] => format!("{} to {}", first.display(), last.display()),
                    _ => path.display().to_string(),
                };
                self.say(format!("The {} {are} in {place}. Print at 100 %.", names.join(", the ")));
            }
            Err(why) => {
                if let Some(Dialog::Sheet(dialog)) = &mut self.dialog {
                    dialog.entry.say(why);
                }
            }
        }
    }

    /// Makes the sheets and writes them: to one file, or as SVG to a file for each page. Gives the files.
    fn sheet_files(
        &self,
        sheets: &[Sheet],
        kind: SheetKind,
        paper: PaperSize,
        path: &Path,
    ) -> Result<Vec<PathBuf>, String> {
        let (plan, balance) = (self.document.plan(), self.document.balance());
        let shop = self.order.shop();
        let drawing = document_for(plan, balance, shop, sheets, paper.paper(), usual_orientation(sheets));
        match kind {
            SheetKind::Pdf => {
                let bytes = fh_print::pdf(&drawing).map_err(|error| error.to_string())?;
                fh_store::replace_same_kind(path, &bytes).map_err(|error| error.to_string())?;
                Ok(vec![path.to_owned()])
            }
            SheetKind::Svg => {
                fh_store::replace_pages(path, &fh_print::svg(&drawing), false).map_err(|error| error.to_string())
            }
        }
    }
}
