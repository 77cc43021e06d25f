//! Asks what a new step of the order does: an operation, on which parts of which bar, and in which words.

use super::frame::{Frame, main_button, other_button};
use crate::order::step_on;
use crate::state::{Desk, OrderAsk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::chooser;
use egui::{Context, RichText, TextEdit, Ui};
use fh_core::describe::segment_name;
use fh_core::plan::{Operation, Step};

/// What was chosen so far.
pub(crate) struct AddStep {
    bar: usize,
    operation: Operation,
    parts: Vec<usize>,
    words: String,
}

impl AddStep {
    /// On some segments of a bar.
    pub(crate) fn new(bar: usize, parts: Vec<usize>) -> Self {
        Self { bar, operation: Operation::Straighten, parts, words: String::new() }
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        Frame { title: "Add a step", width: dialog::QUESTION }.show(
            ctx,
            desk,
            out,
            |ui, _| self.contents(ui, desk),
            |ui, out, step: Option<Step>| {
                if main_button(ui, desk.theme, "Add the step", step.is_some())
                    && let Some(step) = step
                {
                    out.push(Request::Order(OrderAsk::Add(Box::new(step))));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }

    /// Shows what can be chosen; the step, where it says something.
    fn contents(&mut self, ui: &mut Ui, desk: &Desk<'_>) -> Option<Step> {
        let theme = desk.theme;
        let plan = desk.document.plan();
        // What is in no list of ours is wanted most often.
        let own = (Operation::Own, "in your own words".to_owned());
        let others = Operation::ALL.into_iter().filter(|operation| *operation != Operation::Own);
        let others = others.map(|operation| (operation, operation.name().to_owned()));
        let choices: Vec<_> = std::iter::once(own).chain(others).collect();
        if let Some(chosen) = chooser::show(ui, theme, "What is done", "What is done", self.operation, &choices) {
            self.operation = chosen;
        }
        if plan.bars.len() > 1 {
            let bars: Vec<_> = plan.bars.iter().enumerate().map(|(at, bar)| (at, bar.name.clone())).collect();
            if let Some(bar) = chooser::show(ui, theme, "Bar", "Bar of the step", self.bar, &bars) {
                self.bar = bar;
                self.parts.clear();
            }
        }
        ui.add_space(space::GAP);
        ui.label(RichText::new("Which parts? None ticked means the whole bar.").color(theme.ink_quiet));
        self.show_parts(ui, desk);
        ui.add_space(space::GAP);
        let label = if self.operation == Operation::Own { "Your words" } else { "Your own title (optional)" };
        ui.label(RichText::new(label).color(theme.ink_quiet));
        let field = TextEdit::singleline(&mut self.words).desired_width(f32::INFINITY);
        ui.add(field).accessible_name("Words of the step");
        if self.operation == Operation::Own && self.words.trim().is_empty() {
            let words = RichText::new("Say what is done.").text_style(Text::Small.style()).color(theme.ink_quiet);
            ui.label(words);
            return None;
        }
        self.parts.sort_unstable();
        Some(step_on(self.bar, &plan.bars, self.operation, &self.parts, &self.words))
    }

    fn show_parts(&mut self, ui: &mut Ui, desk: &Desk<'_>) {
        let Some(bar) = desk.document.plan().bars.get(self.bar) else { return };
        let paths = bar.paths();
        for (at, path) in paths.iter().enumerate() {
            let mut chosen = self.parts.contains(&at);
            if ui.checkbox(&mut chosen, format!("{path}  {}", segment_name(bar, at))).changed() {
                self.parts.retain(|part| *part != at);
                if chosen {
                    self.parts.push(at);
                }
            }
        }
    }
}
