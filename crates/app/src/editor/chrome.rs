//! What goes on around the panels: the window's title, the journal of unsaved work, the end of the program.

use super::Editor;
use egui::{Context, ViewportCommand};
use std::time::Duration;

impl Editor {
    /// Tells the window its title: the plan, marked where it has changes that are not saved.
    pub(super) fn tell_title(&mut self, ctx: &Context) {
        let title = self.title();
        if title != self.told_title {
            ctx.send_viewport_cmd(ViewportCommand::Title(title.clone()));
            self.told_title = title;
        }
    }

    /// The window's title: marked too where the job has changes that are not saved.
    pub fn title(&self) -> String {
        let mark = if self.document.is_changed() || self.steel.job.is_changed() { "*" } else { "" };
        format!("{mark}{} • First Heat", self.document.name())
    }

    /// Keeps unsaved work in the journal.
    pub(super) fn keep_work(&mut self, ctx: &Context) {
        let (now, home) = (ctx.input(|input| input.time), self.services.home.as_ref());
        let (document, job) = (&self.document, &self.steel.job);
        let plan = self.keeper.watch(home, &document.unsaved(&|| fh_core::file::write(document.plan())), now);
        let job = self.job_keeper.watch(home, &job.unsaved(&|| job.text(document)), now);
        for watched in [plan, job] {
            match watched {
                Ok(Some(seconds)) => ctx.request_repaint_after(Duration::from_secs_f64(seconds.max(0.01))),
                Ok(None) => {}
                Err(error) => {
                    let words = format!("■ Unsaved work cannot be kept safe: {error}");
                    // The frame is painted already, and the next may be long in coming.
                    if self.said != words {
                        self.said = words;
                        ctx.request_repaint();
                    }
                }
            }
        }
    }

    /// The window is closed: unsaved changes were asked about before.
    pub(crate) fn close(&mut self) {
        // Nobody is left to be told.
        let _ = self.keeper.close();
        let _ = self.job_keeper.close();
    }
}
