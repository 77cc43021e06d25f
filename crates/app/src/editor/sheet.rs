//! Making the mark sheet.

use super::Editor;
use crate::dialogs::{Dialog, SheetFile};
use crate::state::{PaperSize, SheetKind};
use fh_print::paper::Orientation;
use fh_print::sheets::mark_sheet;
use std::path::Path;

impl Editor {
    /// Asks for paper and file.
    pub(crate) fn ask_sheet(&mut self) {
        let path = self.folder().join(format!("{}-marks", self.document.file_stem()));
        self.dialog = Some(Dialog::Sheet(SheetFile::new(&path, self.settings.sheet, self.settings.paper)));
    }

    /// Writes the mark sheet to a file.
    pub(super) fn write_sheet(&mut self, path: &Path, kind: SheetKind, paper: PaperSize) {
        (self.settings.sheet, self.settings.paper) = (kind, paper);
        self.keep_settings();
        match self.sheet_bytes(kind, paper).and_then(|bytes| fh_store::replace(path, &bytes).map_err(|e| e.to_string()))
        {
            Ok(()) => {
                self.dialog = None;
                self.say(format!("Print it at 100 %: the mark sheet is in {}.", path.display()));
            }
            Err(why) => {
                if let Some(Dialog::Sheet(dialog)) = &mut self.dialog {
                    dialog.entry.say(why);
                }
            }
        }
    }

    fn sheet_bytes(&self, kind: SheetKind, paper: PaperSize) -> Result<Vec<u8>, String> {
        let drawing = mark_sheet(self.document.plan(), self.document.balance(), paper.paper(), Orientation::Landscape);
        match kind {
            SheetKind::Pdf => fh_print::pdf(&drawing).map_err(|error| error.to_string()),
            SheetKind::Svg => Ok(fh_print::svg(&drawing).into_bytes()),
        }
    }
}
