//! Requests are done here, after the frame, one after the other.

use super::Editor;
use super::job::is_job_file;
use crate::dialogs::{Dialog, Handbook};
use crate::state::{Focus, Gesture, OrderAsk, Request, Then, Views, told};
use crate::theme::{Look, Theme};
use crate::widgets::entry;
use egui::Context;
use fh_core::edit::{BendDrag, Edit, Gave, StepChange, ties};
use fh_core::plan::{Bend, PlanUnit, SizeName};

impl Editor {
    /// Does what was asked for. What must not overtake a field that is still being typed in waits for the next frame, when
    /// the field has given what was typed.
    pub(super) fn apply_all(&mut self, requests: Vec<Request>, ctx: &Context) {
        let unsettled = entry::unsettled(ctx);
        // What was last said belongs to what was last done.
        if requests.iter().any(is_deed) {
            self.said.clear();
        }
        if requests.iter().any(|request| is_deed(request) && !matches!(request, Request::Edit(_))) {
            entry::forget_doubt(ctx);
        }
        for request in requests {
            if let Some(field) = unsettled.filter(|_| waits(&request)) {
                ctx.memory_mut(|memory| memory.surrender_focus(field));
                ctx.request_repaint();
                self.waiting.push(request);
            } else {
                self.apply(request, ctx);
            }
        }
        self.selection.settle(&self.document);
        self.settle_also();
    }

    fn apply(&mut self, request: Request, ctx: &Context) {
        match request {
            Request::Run(command) => self.run(command, ctx),
            Request::Edit(edit) => {
                self.edit(&edit);
            }
            Request::Gesture(gesture) => self.on_gesture(gesture, ctx),
            Request::Say(words) => self.said = words,
            Request::Pick(segment) => self.pick(segment),
            Request::TypeSize(segment) => self.type_size(segment, ctx),
            Request::TypeField(name) => entry::ask_for_field(ctx, name),
            Request::SelectPlan => self.selection.focus = Focus::Plan,
            Request::AskSize(size) => self.ask_size(*size, ctx),
            Request::Select(bar, segment) => self.select(bar, segment),
            Request::SelectBranch { bar, split, branch } => self.select_branch(bar, split, branch),
            Request::Extend { to, run } if self.desk().shown().is_none() => self.extend(to, run),
            Request::Extend { .. } => {}
            Request::ScaleParts(factor) => self.scale_parts(factor),
            Request::Whole(ask) => self.whole_ask(ask, ctx),
            Request::MoveTo(to) => self.move_selected(to),
            Request::Cursor(cursor) => self.selection.cursor_mm = cursor,
            Request::AddSegment(kind, side) => self.then_type(ctx, |editor| editor.add_segment(kind, side)),
            Request::AddWhole(whole, side) => self.then_type(ctx, |editor| editor.add_whole(whole, side)),
            Request::SaveMotif(motif, overwrite) => self.save_motif(&motif, overwrite),
            Request::InsertMotif(segments, side) => {
                self.then_type(ctx, |editor| editor.insert_motif(segments, side));
            }
            Request::RemoveMotif(path) => self.remove_motif(&path),
            Request::Begin(plan) => self.begin(*plan),
            Request::Open(path) if is_job_file(&path) => self.leave_then(Then::OpenJob(path), ctx),
            Request::Open(path) => self.leave_then(Then::Open(path), ctx),
            Request::OpenDemo(index) => self.leave_then(Then::OpenDemo(index), ctx),
            Request::Recovered(index, open) => self.on_recovered(index, open, ctx),
            Request::CopyRecovered(index) => self.copy_recovered(index),
            Request::SaveTo(path, overwrite) => self.save_to(&path, overwrite, ctx),
            Request::WriteSheet(path, kind, paper) => self.write_sheet(&path, kind, paper),
            Request::ShowOutside(path) => self.show_outside(&path),
            Request::WriteExport(path, kind) => self.write_export(&path, kind),
            Request::LayPicture(path, view) => self.lay_picture(&path, view),
            Request::Browse => self.browse(ctx),
            Request::Reload => self.go(Then::Reload, ctx),
            Request::Unsaved(choice, then) => self.on_unsaved(choice, then, ctx),
            Request::CloseDialog => self.close_dialog(),
            Request::Look(look) => self.set_look(look, ctx),
            Request::TextSize(size) => self.set_text_size(size, ctx),
            Request::ShowFindings(open) => {
                self.settings.findings_open = Some(open);
                self.keep_settings();
            }
            Request::ShowPlot(open) => {
                self.settings.plot_open = Some(open);
                self.keep_settings();
            }
            Request::ShowPiece(open) => self.show_piece(open),
            Request::Order(ask) => self.order_ask(ask),
            Request::Steel(ask) => self.steel_ask(ask, ctx),
            Request::ShowStep(at) => self.show_step(at),
            Request::ShowPage(page) => self.dialog = Some(Dialog::Handbook(Handbook::at(page))),
            Request::ReopenLast(reopens) => self.reopen_last(reopens),
            Request::EndTour => self.end_tour(),
        }
    }

    /// A click in a drawing selects a segment; where the bar is shown after a step, the next step that works on it.
    fn pick(&mut self, segment: Option<usize>) {
        if self.desk().shown().is_none() {
            self.select(self.selection.bar, segment);
        } else if let Some(segment) = segment {
            self.order_ask(OrderAsk::ChooseOn(self.selection.bar, segment));
        }
    }

    fn type_size(&mut self, segment: usize, ctx: &Context) {
        if self.desk().shown().is_none() {
            self.select(self.selection.bar, Some(segment));
            entry::ask_for_size(ctx);
        }
    }

    fn on_gesture(&mut self, gesture: Gesture, ctx: &Context) {
        match gesture {
            Gesture::Begin => self.document.begin(),
            Gesture::Drag(edit) => self.drag(&edit),
            Gesture::Commit => {
                self.document.commit();
                // What waited for the end of the gesture is done in the next frame.
                ctx.request_repaint();
            }
            Gesture::Cancel => self.document.cancel(),
        }
    }

    /// Applies an edit within a gesture. What became of a boundary is told beside it, of anything else over the strips.
    fn drag(&mut self, edit: &Edit) {
        let done = self.document.drag(edit);
        let is_beside = matches!(edit, Edit::MoveBoundary(_) | Edit::MoveToRound(_) | Edit::Mark(_));
        match (done, edit) {
            (Err(refusal), Edit::ChangePart { .. }) => {
                self.said = format!("■ Not done: {refusal}");
                self.canvas.refused(refusal.to_string());
            }
            (Ok(gave), _) if is_beside => self.canvas.gave(self.words_of(&gave)),
            (Err(refusal), _) if is_beside => self.canvas.refused(refusal.to_string()),
            (Ok(gave), Edit::DragBend(drag)) => self.said = self.words_of_bend(drag, &gave),
            (Ok(_), _) => {}
            (Err(refusal), _) => self.said = format!("■ Not done: {refusal}"),
        }
    }

    /// What gave way, in words: `shank: length 4 1/2 in`.
    fn words_of(&self, gave: &[Gave]) -> String {
        let bar = self.document.plan().bars.get(self.selection.bar);
        let name = |at: usize| bar.map(|bar| fh_core::describe::segment_name(bar, at));
        let words =
            |gave: &Gave| format!("{}: {} {}", name(gave.segment).unwrap_or_default(), gave.size.words(), gave.text);
        gave.iter().map(words).collect::<Vec<_>>().join(", ")
    }

    /// What a dragged bend has written: `hook: inside radius 23 mm`, and which size follows where another one is in hand.
    fn words_of_bend(&self, drag: &BendDrag, gave: &[Gave]) -> String {
        let segment = self.document.plan().segment(drag.bar, drag.at);
        let in_hand = segment.and_then(|segment| segment.bend.as_ref()).map(|bend| drag.knob.size(bend));
        let Some((gave, in_hand)) = gave.first().zip(in_hand) else { return String::new() };
        let words = match gave.size {
            SizeName::Turns => format!("{} turns", gave.text),
            size => format!("{} {}", size.words(), gave.text),
        };
        let bar = self.document.plan().bars.get(drag.bar);
        let name = bar.map(|bar| fh_core::describe::segment_name(bar, drag.at)).unwrap_or_default();
        match in_hand {
            in_hand if in_hand == gave.size => format!("{name}: {words}"),
            SizeName::Turns => format!("{name}: {words}; the turns follow"),
            in_hand => format!("{name}: {words}; the {} follows", in_hand.words()),
        }
    }

    /// Which size follows now, where typing over the one that did made it another.
    fn words_of_typed(&self, edit: &Edit, gave: &[Gave]) -> String {
        let Edit::ChangePart { bar, at, .. } = edit else { return String::new() };
        let Some((segment, gave)) = self.document.plan().segment(*bar, *at).zip(gave.first()) else {
            return String::new();
        };
        let size = ties::words(segment, gave.size);
        format!("Now {size} follows from what you typed. Undo takes it back.")
    }

    /// Applies an edit and says what it made follow, or says why it is refused. Whether it was done.
    pub(crate) fn edit(&mut self, edit: &Edit) -> bool {
        let done = self.document.edit(edit);
        let is_done = done.is_ok();
        self.said = match done {
            Ok(gave) => self.words_of_typed(edit, &gave),
            Err(refusal) => format!("■ Not done: {refusal}"),
        };
        self.after_change();
        is_done
    }

    /// Adds something; where it came into the plan, its first size has the keyboard then.
    pub(crate) fn then_type(&mut self, ctx: &Context, add: impl FnOnce(&mut Self)) {
        let before = self.document.revision();
        add(self);
        if self.document.revision() == before {
            return;
        }
        // A ring is known by what it goes round; its length follows.
        match self.selected_segment().and_then(|segment| ties::follows(segment).zip(segment.bend.as_ref())) {
            Some((SizeName::Length, Bend::Ring { .. })) => entry::ask_for_field(ctx, "Inside diameter"),
            _ => entry::ask_for_size(ctx),
        }
    }

    /// Opens or closes the view of the piece.
    pub(crate) fn show_piece(&mut self, open: bool) {
        self.settings.piece_open = Some(open);
        self.keep_settings();
    }

    /// Keeps selection on what is there.
    pub(crate) fn after_change(&mut self) {
        self.selection.settle(&self.document);
    }

    pub(super) fn select(&mut self, bar: usize, segment: Option<usize>) {
        self.selection.bar = bar;
        self.selection.focus = segment.map_or(Focus::Bar, Focus::Segment);
        self.also.clear();
        self.whole_added = None;
    }

    /// Chooses the views of the bar.
    pub(crate) fn show_views(&mut self, shown: Views) {
        self.canvas.set_views(shown);
        self.settings.views = shown;
        self.keep_settings();
    }

    /// Chooses the plan's unit. Marks go back to the step that they had in it before; else to one about as fine.
    pub(crate) fn set_unit(&mut self, unit: PlanUnit) {
        let (now, serial) = (self.document.plan().units, self.document.serial());
        if now.length == unit {
            return;
        }
        let left = self.left_units.filter(|(of, units)| *of == serial && units.length == unit);
        self.left_units = Some((serial, now));
        let mut header = fh_core::edit::PlanHeader::from(self.document.plan());
        header.units = left.map_or_else(|| now.in_unit(unit), |(_, units)| units);
        let marks = header.units.marks.text();
        self.edit(&Edit::SetPlan(Box::new(header)));
        let unit = match unit {
            PlanUnit::Inch => "inches",
            PlanUnit::Millimeter => "millimetres",
        };
        self.say(format!("Lengths in {unit}; marks to {marks}."));
    }

    fn set_look(&mut self, look: Look, ctx: &Context) {
        self.settings.look = look;
        self.dress_anew(ctx);
    }

    /// Chooses the size of text: 1 is 100 %.
    pub(crate) fn set_text_size(&mut self, size: f32, ctx: &Context) {
        self.settings.text_size = size.clamp(1.0, 2.0);
        self.dress_anew(ctx);
    }

    fn dress_anew(&mut self, ctx: &Context) {
        self.theme = Theme::new(self.settings.look, self.settings.text_size);
        self.theme.apply(ctx);
        self.keep_settings();
        // Panels were sized for the text as it was.
        self.sized_for += 1;
    }

    /// Whether the last plan is opened at the start.
    fn reopen_last(&mut self, reopens: bool) {
        self.settings.reopens_last = reopens;
        self.keep_settings();
    }

    fn end_tour(&mut self) {
        self.tour = None;
        self.settings.tour_seen = true;
        self.keep_settings();
    }

    fn close_dialog(&mut self) {
        self.dialog = None;
        (self.after_save, self.after_job_save) = (None, None);
    }

    /// Selects the place of the next finding.
    pub(crate) fn next_finding(&mut self) {
        let desk = self.desk();
        let findings = told(&desk);
        if findings.is_empty() {
            self.say("No findings.");
            return;
        }
        let next = self.looked_at_finding.map_or(0, |at| at + 1) % findings.len();
        let (place, words) = (findings[next].show(), findings[next].finding().message.clone());
        self.looked_at_finding = Some(next);
        self.said = words;
        match place {
            Request::Select(bar, segment) => self.select(bar, segment),
            Request::ShowStep(at) => self.show_step(at),
            _ => self.selection.focus = Focus::Plan,
        }
    }
}

/// Whether a request does something new: what was said before it is then stale. Within a gesture, where the pointer only
/// moves, and where what was just made is opened, it still holds.
fn is_deed(request: &Request) -> bool {
    use Request as R;
    !matches!(request, R::Cursor(_) | R::Gesture(_) | R::Say(_) | R::CloseDialog | R::ShowOutside(_))
}

/// Whether a request must not overtake a field that is still being typed in.
fn waits(request: &Request) -> bool {
    !matches!(
        request,
        Request::Cursor(_)
            | Request::Edit(_)
            | Request::Say(_)
            | Request::Order(
                OrderAsk::Change(StepChange::Replace { .. }) | OrderAsk::Rules(_) | OrderAsk::Log(_) | OrderAsk::Own(_)
            )
    )
}
