//! Writing the piece and its flat outlines for other programs.

use super::Editor;
use crate::dialogs::{Dialog, ExportFile};
use fh_piece::files::{FileKind, export};
use std::path::Path;

impl Editor {
    /// Asks for kind and file.
    pub(crate) fn ask_export(&mut self) {
        let path = self.folder().join(self.document.file_stem());
        self.dialog = Some(Dialog::Export(ExportFile::new(&path)));
    }

    /// Writes the piece or its outlines to a file.
    pub(super) fn write_export(&mut self, path: &Path, kind: FileKind) {
        let bytes = export(self.document.plan(), self.document.balance(), kind).map_err(|error| error.to_string());
        match bytes.and_then(|bytes| fh_store::replace_same_kind(path, &bytes).map_err(|error| error.to_string())) {
            Ok(()) => {
                self.dialog = None;
                self.say(format!("Written in mm: {} in {}.", kind.name(), path.display()));
            }
            Err(why) => {
                if let Some(Dialog::Export(dialog)) = &mut self.dialog {
                    dialog.entry.say(why);
                }
            }
        }
    }
}
