//! Laying a picture under the piece.

use super::Editor;
use crate::dialogs::{Dialog, LayPicture};
use crate::piece_view::{check_picture, lay_edit, view_of};
use crate::widgets::Sizing;
use fh_core::plan::{Underlay, UnderlayView};
use std::path::{Path, PathBuf};

/// Where the two points of a new picture lie: shares of its width and height.
const FIRST_POINTS: [[f64; 2]; 2] = [[0.25, 0.5], [0.75, 0.5]];
/// The distance of those points where there is no piece yet, in mm.
const USUAL_DISTANCE_MM: f64 = 100.0;

impl Editor {
    /// Asks which picture is laid under the piece.
    pub(crate) fn ask_picture(&mut self) {
        let now = self.document.plan().underlay.as_ref();
        let view = now.map_or_else(|| view_of(self.piece_view.state().standard), |underlay| underlay.view);
        // Without a file the folder is offered: with a stroke at its end the name is typed after it.
        let path = match now {
            Some(underlay) => self.folder().join(&underlay.file),
            None => self.folder().join(""),
        };
        self.dialog = Some(Dialog::LayPicture(LayPicture::new(&path, view)));
    }

    /// Lays a picture under the piece, and begins to adjust it; or says in the dialog why it cannot be read.
    pub(super) fn lay_picture(&mut self, path: &Path, view: UnderlayView) {
        if let Err(why) = check_picture(path) {
            if let Some(Dialog::LayPicture(dialog)) = &mut self.dialog {
                dialog.entry.say(format!("The picture cannot be used: {why}."));
            }
            return;
        }
        let Some(underlay) = self.underlay(path, view) else { return };
        self.dialog = None;
        let edit = lay_edit(self.document.plan(), Some(underlay));
        self.edit(&edit);
        if !self.desk().piece_open {
            self.show_piece(true);
        }
        self.adjust_picture(true);
    }

    /// Begins or ends adjusting the picture.
    pub(crate) fn adjust_picture(&mut self, on: bool) {
        let view = self.document.plan().underlay.as_ref().map(|underlay| underlay.view);
        let words = self.piece_view.adjust_picture(view.filter(|_| on));
        self.say(words);
    }

    /// A picture laid for the first time, or in the place of the one that is there: then its points stay.
    fn underlay(&self, path: &Path, view: UnderlayView) -> Option<Underlay> {
        let file = self.file_words(path);
        if let Some(now) = self.document.plan().underlay.clone() {
            return Some(Underlay { file, view, ..now });
        }
        let sizing = Sizing::without_stock(&self.theme, self.document.plan().units);
        // Larger than the piece at first: the points are easier to put on it.
        let wide = self.piece_view.width_mm(view).unwrap_or(USUAL_DISTANCE_MM);
        let [from, to] = FIRST_POINTS;
        Some(Underlay { file, view, from, to, distance: sizing.first.size(wide)?, at: None, strength: None })
    }

    /// A file as the plan names it: from the plan's folder where it lies in there, else from the root.
    fn file_words(&self, path: &Path) -> String {
        let whole = |path: &Path| std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
        let path = whole(path);
        let folder: Option<PathBuf> =
            self.document.file().and_then(|file| whole(&file.path).parent().map(Path::to_owned));
        let within = folder.and_then(|folder| path.strip_prefix(folder).ok().map(Path::to_owned));
        within.unwrap_or(path).to_string_lossy().into_owned()
    }
}
