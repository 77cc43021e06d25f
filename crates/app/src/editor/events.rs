//! What comes from outside between two frames: keys, the clipboard, dropped files, answers of the system's dialogs.

use super::Editor;
use crate::commands::{Typing, take_pressed};
use crate::dialogs::{Answer, Dialog};
use crate::state::{Against, Clipboard, Command, Request, Side, SteelAsk, Then, WholeAsk};
use crate::widgets::entry;
use egui::{Context, Event, ViewportCommand};

impl Editor {
    /// Reads all of it.
    pub(super) fn read_events(&mut self, ctx: &Context, out: &mut Vec<Request>) {
        self.read_close(ctx, out);
        self.read_answer(out);
        // At the anvil every key turns pages.
        if self.dialog.is_some() || self.anvil.is_some() {
            return;
        }
        self.read_dropped(ctx, out);
        let typing = if entry::unsettled(ctx).is_some() {
            Typing::Unsettled
        } else if ctx.text_edit_focused() {
            Typing::Settled
        } else {
            Typing::No
        };
        // Escape that leaves a field leads nowhere else.
        if !was_typing(ctx, typing) && typing == Typing::No {
            self.read_back(ctx);
        }
        if !self.canvas.is_holding() && !self.piece_view.is_holding() {
            out.extend(take_pressed(ctx, typing).into_iter().map(Request::Run));
        }
        self.read_clipboard(ctx, typing, out);
    }

    /// Escape leads from the bar after a step back to the plan, unless something else is in hand.
    fn read_back(&mut self, ctx: &Context) {
        let is_busy = self.canvas.is_holding()
            || self.piece_view.is_holding()
            || self.piece_view.state().measuring
            || egui::Popup::is_any_open(ctx)
            || egui::DragAndDrop::has_any_payload(ctx);
        if self.steel.is_open() && !is_busy && escape(ctx) {
            self.show_steel(false);
            return;
        }
        let shows = self.settings.order_open && self.order.at().is_some();
        if shows && !is_busy && escape(ctx) {
            self.order.choose(None);
        }
    }

    /// The window is asked to close: not before unsaved changes were asked about.
    pub(super) fn read_close(&mut self, ctx: &Context, out: &mut Vec<Request>) {
        if self.may_close || !ctx.input(|input| input.viewport().close_requested()) {
            return;
        }
        if self.document.is_changed() || self.steel.job.is_changed() {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            out.push(Request::Run(Command::Quit));
        } else {
            self.may_close = true;
        }
    }

    fn read_answer(&mut self, out: &mut Vec<Request>) {
        let Some(answer) = self.services.dialogs.answer() else { return };
        match (answer, &mut self.dialog) {
            (Answer::File(path), Some(Dialog::Open(dialog))) => out.push(dialog.open(path)),
            // The system's dialog has asked already whether a file may be replaced.
            (Answer::File(path), Some(Dialog::SaveAs(dialog))) => out.push(dialog.save(path, true)),
            (Answer::File(path), Some(Dialog::Sheet(dialog))) => out.push(dialog.write(path)),
            (Answer::File(path), Some(Dialog::Export(dialog))) => out.push(dialog.write(path)),
            (Answer::File(path), Some(Dialog::LayPicture(dialog))) => out.push(dialog.lay(path)),
            (Answer::File(path), Some(Dialog::Compare(_))) => {
                out.push(Request::Whole(WholeAsk::Compare(Against::File(path))))
            }
            (Answer::File(path), Some(Dialog::AddPlan(_))) => out.push(Request::Steel(SteelAsk::AddPlan(path))),
            (Answer::File(path), Some(Dialog::Paper(dialog))) => out.push(dialog.write(path)),
            (Answer::NoDialog, Some(dialog)) => {
                if let Some(entry) = dialog.path_entry() {
                    entry.say("No file dialog is available here. Type the file's path.");
                }
            }
            _ => {}
        }
    }

    fn read_dropped(&mut self, ctx: &Context, out: &mut Vec<Request>) {
        let dropped = ctx.input(|input| input.raw.dropped_files.first().map(|file| file.path().to_owned()));
        out.extend(dropped.map(Request::Open));
    }

    fn read_clipboard(&mut self, ctx: &Context, typing: Typing, out: &mut Vec<Request>) {
        if let Some(text) = self.clipboard.tick() {
            self.paste(&text);
        } else if self.clipboard.is_waiting() {
            ctx.request_repaint();
        }
        if typing != Typing::No && !self.clipboard.is_waiting() {
            return;
        }
        for event in ctx.input(|input| input.events.clone()) {
            match event {
                Event::Copy => out.push(Request::Run(Command::Copy)),
                Event::Cut => out.push(Request::Run(Command::Cut)),
                Event::Paste(text) => {
                    self.clipboard.answered();
                    self.paste(&text);
                }
                _ => {}
            }
        }
    }

    /// Puts the segment in a text after the selected one. Text of something else gives way to our own copy.
    fn paste(&mut self, text: &str) {
        if self.desk().shown().is_some() {
            self.say("Nothing was pasted: go back to the plan first (Esc).");
            return;
        }
        match Clipboard::segments(text) {
            Ok(segments) if segments.len() > 1 => self.insert_motif(segments, Side::After),
            Ok(segments) => segments.into_iter().for_each(|segment| self.insert_segment(segment, Side::After)),
            Err(why) => self.say(format!("Nothing was pasted: {why}.")),
        }
    }

    /// Does what was wanted, or first asks about unsaved changes.
    pub(crate) fn leave_then(&mut self, then: Then, ctx: &Context) {
        if then.leaves_plan() && self.document.is_changed() {
            self.dialog = Some(Dialog::Unsaved(then));
        } else {
            self.leave_job_then(then, ctx);
        }
    }

    /// The same, where the open plan may be left.
    pub(crate) fn leave_job_then(&mut self, then: Then, ctx: &Context) {
        if then.leaves_job() && self.steel.job.is_changed() {
            self.dialog = Some(Dialog::UnsavedJob(then));
        } else {
            self.go(then, ctx);
        }
    }
}

/// Whether a field had the keyboard in the frame before.
fn was_typing(ctx: &Context, now: Typing) -> bool {
    let id = egui::Id::unique("a field had the keyboard");
    ctx.data_mut(|data| {
        let was = data.get_temp::<bool>(id).unwrap_or(false);
        data.insert_temp(id, now != Typing::No);
        was
    })
}

/// Whether Escape was pressed; nobody else hears of it then.
fn escape(ctx: &Context) -> bool {
    ctx.input_mut(|input| input.consume_key(egui::Modifiers::NONE, egui::Key::Escape))
}
