//! One more size asked of the finished piece.

use super::Editor;
use crate::state::{Focus, asked_to_open};
use egui::Context;
use fh_core::edit::Edit;
use fh_core::plan::AskedSize;

impl Editor {
    /// Asks for one more size, and opens it on the plan's page.
    pub(super) fn ask_size(&mut self, size: AskedSize, ctx: &Context) {
        let mut sizes = self.document.plan().sizes.clone();
        let index = sizes.len();
        sizes.push(size);
        self.edit(&Edit::SetSizes(sizes));
        self.selection.focus = Focus::Plan;
        ctx.data_mut(|data| data.insert_temp(asked_to_open(), index));
    }
}
