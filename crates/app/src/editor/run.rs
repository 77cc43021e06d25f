//! What each command does.

use super::Editor;
use crate::commands;
use crate::dialogs::{Dialog, Find, Handbook};
use crate::state::{Command, Side, Standard, SteelAsk, SteelTab, Then, Views};
use crate::widgets::entry::ask_for_size;
use egui::{Context, OutputCommand, ViewportCommand};
use fh_core::plan::PlanUnit;

/// How much one step of zooming does.
const ZOOM_STEP: f32 = 1.25;
/// How much one step of the text's size does.
const TEXT_STEP: f32 = 0.25;

impl Editor {
    /// Does a command, where it may be used now.
    pub(super) fn run(&mut self, command: Command, ctx: &Context) {
        use Command as C;
        if !command.may_be_used(&self.desk()) {
            return;
        }
        match command {
            C::New | C::Open | C::Save | C::SaveAs | C::PrintMarkSheet | C::Export | C::Quit => {
                self.run_file(command, ctx);
            }
            C::Undo | C::Redo | C::Cut | C::Copy | C::Paste => self.run_edit(command, ctx),
            C::Duplicate | C::Remove | C::AddBefore | C::AddAfter | C::InsertMotif | C::SaveMotif | C::ScaleParts => {
                self.run_segment(command);
            }
            C::MoveUp | C::MoveDown | C::NextSegment | C::PreviousSegment => self.run_place(command),
            C::TypeSize => ask_for_size(ctx),
            C::FixMark => self.fix_mark(),
            C::LoosenMark => self.loosen_mark(),
            C::AddBar => self.add_bar(),
            C::RemoveBar => self.remove_bar(),
            C::OtherHand | C::OtherBar | C::ScalePiece | C::Compare => self.run_whole(command),
            C::ZoomIn | C::ZoomOut | C::ZoomFit | C::ViewSide | C::ViewTop | C::ViewBoth => self.run_view(command),
            C::TrueThickness => self.canvas.set_exaggeration(1.0),
            C::DoubleThickness => self.canvas.set_exaggeration(2.0),
            C::FourfoldThickness => self.canvas.set_exaggeration(4.0),
            C::Inches => self.set_unit(PlanUnit::Inch),
            C::Millimeters => self.set_unit(PlanUnit::Millimeter),
            C::LargerText => self.set_text_size(self.settings.text_size + TEXT_STEP, ctx),
            C::SmallerText => self.set_text_size(self.settings.text_size - TEXT_STEP, ctx),
            C::NextFinding => self.next_finding(),
            C::ShowPiece => self.show_piece(!self.desk().piece_open),
            C::PieceFront | C::PieceSide | C::PieceTop | C::PieceTurned => self.look_from(command),
            C::PieceFit => self.piece_view.fit(),
            C::QuarterTurn | C::HangAsSeen | C::HangAsPlanned => self.run_hang(command),
            C::PieceLarger => self.piece_view.zoom_by(ZOOM_STEP),
            C::PieceSmaller => self.piece_view.zoom_by(1.0 / ZOOM_STEP),
            C::Measure => {
                let words = self.piece_view.toggle_measure();
                self.say(words);
            }
            C::LayPicture => self.ask_picture(),
            C::AdjustPicture => self.adjust_picture(!self.desk().piece.adjusting),
            C::ShowOrder | C::NextStep | C::PreviousStep | C::PlaySteps | C::AtTheAnvil => {
                self.run_order(command, ctx);
            }
            C::AddStep | C::DuplicateStep | C::RemoveStep | C::MergeSteps | C::SplitStep => self.run_step(command),
            C::ShowSteel => self.show_steel(!self.steel.is_open()),
            C::WhichBar | C::Rack | C::CutList | C::Quote | C::Job | C::Merchant | C::ShopFigures => {
                self.run_steel(command)
            }
            C::StepUp => self.carry_step(-1),
            C::StepDown => self.carry_step(1),
            C::ProposeAgain => self.ask_proposal(),
            C::Find => self.dialog = Some(Dialog::Find(Find::default())),
            C::Handbook => self.dialog = Some(Dialog::Handbook(Handbook::at(0))),
            C::Tour => self.start_tour(),
            C::KeyboardList => self.dialog = Some(Dialog::Keys),
            C::About => self.dialog = Some(Dialog::About),
        }
    }

    fn run_file(&mut self, command: Command, ctx: &Context) {
        let is_of_job = self.steel.is_open() && self.steel.tab.is_of_job();
        match command {
            Command::Open if is_of_job => self.leave_then(Then::AskOpenJob, ctx),
            Command::Save if is_of_job => self.save_job(ctx),
            Command::SaveAs if is_of_job => self.ask_save_job_as(),
            Command::New => self.leave_then(Then::New, ctx),
            Command::Open => self.leave_then(Then::AskOpen, ctx),
            Command::Save => self.save(ctx),
            Command::SaveAs => self.ask_save_as(),
            Command::PrintMarkSheet => match self.paper_in_front() {
                Some(paper) => self.steel_ask(SteelAsk::AskPaper(paper), ctx),
                None => self.ask_sheet(),
            },
            Command::Export => self.ask_export(),
            _ => self.leave_then(Then::Close, ctx),
        }
    }

    fn run_edit(&mut self, command: Command, ctx: &Context) {
        // Which bar is about the plan itself.
        let is_of_steel = self.steel.is_open() && self.steel.tab != SteelTab::Which;
        match command {
            Command::Undo if is_of_steel => self.undo_steel(),
            Command::Redo if is_of_steel => self.steel.job.redo(),
            Command::Undo => {
                self.document.undo();
                self.after_change();
            }
            Command::Redo => {
                self.document.redo();
                self.after_change();
            }
            Command::Cut => {
                self.copy(ctx);
                self.run_segment(Command::Remove);
            }
            Command::Copy => self.copy(ctx),
            _ => {
                self.clipboard.wait();
                ctx.send_viewport_cmd(ViewportCommand::RequestPaste);
                ctx.request_repaint();
            }
        }
    }

    fn copy(&mut self, ctx: &Context) {
        let segments = self.chosen_segments();
        if segments.is_empty() {
            return;
        }
        let text = self.clipboard.take(&segments);
        ctx.send_cmd(OutputCommand::CopyText(text));
        match segments.len() {
            1 => self.say("Copied the part."),
            count => self.say(format!("Copied {count} parts.")),
        }
    }

    fn run_segment(&mut self, command: Command) {
        match command {
            Command::AddBefore => self.ask_form(Side::Before),
            Command::AddAfter => self.ask_form(Side::After),
            Command::InsertMotif => self.ask_insert_motif(),
            Command::SaveMotif => self.ask_save_motif(),
            Command::ScaleParts => self.ask_scale(),
            Command::Duplicate if self.has_several() => self.duplicate_several(),
            Command::Remove if self.has_several() => self.remove_several(),
            Command::Duplicate => {
                if let Some(segment) = self.selected_segment().cloned() {
                    self.insert_segment(segment, Side::After);
                }
            }
            _ => self.remove_segment(),
        }
    }

    /// Moves the selected segment, or selects the next; where the bar is shown after a step, another step.
    fn run_place(&mut self, command: Command) {
        if self.has_several() && matches!(command, Command::MoveUp | Command::MoveDown) {
            return self.move_several(command == Command::MoveUp);
        }
        let to = match command {
            Command::MoveUp => commands::above(&self.desk()),
            Command::MoveDown => commands::below(&self.desk()),
            _ => {
                let by = if command == Command::NextSegment { 1 } else { -1 };
                return if self.desk().shown().is_some() { self.step_by(by) } else { self.select_line(by) };
            }
        };
        if let Some((from, to)) = self.selection.segment().zip(to) {
            self.move_segment(from, to);
        }
    }

    fn run_view(&mut self, command: Command) {
        match command {
            Command::ZoomIn => self.canvas.zoom_by(ZOOM_STEP),
            Command::ZoomOut => self.canvas.zoom_by(1.0 / ZOOM_STEP),
            Command::ZoomFit => self.canvas.fit(),
            Command::ViewSide => self.show_views(Views::Side),
            Command::ViewTop => self.show_views(Views::Top),
            _ => self.show_views(Views::Both),
        }
    }

    fn look_from(&mut self, command: Command) {
        self.piece_view.look_from(match command {
            Command::PieceFront => Standard::Front,
            Command::PieceSide => Standard::Side,
            Command::PieceTop => Standard::Top,
            _ => Standard::Turned,
        });
    }

    fn run_order(&mut self, command: Command, ctx: &Context) {
        match command {
            Command::ShowOrder => self.show_order(!self.desk().order_open()),
            Command::NextStep => self.step_by(1),
            Command::PreviousStep => self.step_by(-1),
            Command::PlaySteps => {
                self.play_steps(ctx.input(|input| input.time));
                ctx.request_repaint();
            }
            _ => self.go_to_the_anvil(ctx),
        }
    }

    fn run_step(&mut self, command: Command) {
        match command {
            Command::AddStep => self.ask_step(),
            Command::DuplicateStep => self.duplicate_step(),
            Command::RemoveStep => self.remove_step(),
            Command::MergeSteps => self.join_steps(),
            _ => self.take_step_apart(),
        }
    }
}
