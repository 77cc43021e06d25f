//! The chosen step: what is done, with what and where, to which sizes, and all words about it. What is not written is the
//! program's own, and stands in the empty field.

use super::words::words;
use super::{deeds, how, said, targets};
use crate::state::{Desk, OrderAsk, OrderDesk, Request, heat_words};
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::prose::{self, Prose};
use crate::widgets::{Sizing, fields, heading, row};
use egui::{RichText, Ui};
use fh_core::edit::StepChange;
use fh_core::plan::Step;
use fh_work::WorkedStep;

/// Shows the step.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, out: &mut Vec<Request>) {
    let Some((at, worked)) = order.at.zip(order.chosen()) else { return };
    let plan = desk.document.plan();
    let bar = desk.document.balance().bars.get(worked.bar.unwrap_or(0));
    let sizing = Sizing::new(desk.theme, plan.units, bar);
    let mut next = worked.step.clone();
    head(ui, desk, worked, at);
    said::findings(ui, desk, order, at, out);
    words(ui, &sizing, "Title", &worked.title, &mut next.title);
    deeds::show(ui, desk, &sizing, worked, &mut next);
    heading::show(ui, desk.theme, "To reach");
    said::lines(ui, desk, &worked.becomes);
    targets::show(ui, &sizing, worked, &mut next);
    let laid = worked.laid.iter().map(fh_work::LaidLine::words);
    said::lines(ui, desk, &worked.marks.iter().map(fh_work::MarkLine::words).chain(laid).collect::<Vec<_>>());
    said::lines(ui, desk, &worked.measure);
    said::lines(ui, desk, &worked.part_notes);
    heading::show(ui, desk.theme, "How");
    said::lines(ui, desk, worked.held_words(plan).as_slice());
    how::show(ui, &sizing, worked, &mut next);
    heading::show(ui, desk.theme, "Words");
    all_prose(ui, desk, worked, &mut next);
    heading::show(ui, desk.theme, "Heat and time");
    how::time(ui, &sizing, worked, &mut next);
    said::why_here(ui, desk, worked);
    if next != worked.step {
        out.push(Request::Order(OrderAsk::Change(StepChange::Replace { at, step: Box::new(next) })));
    }
}

fn head(ui: &mut Ui, desk: &Desk<'_>, worked: &WorkedStep, at: usize) {
    let words = format!("Step {}", at + 1);
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(words).text_style(Text::Figure.style()).color(desk.theme.ink));
        ui.add_space(space::GAP);
        ui.label(RichText::new(heat_words(worked)).text_style(Text::Strong.style()).color(desk.theme.ink));
    });
    if let Some(hot) = desk.order.and_then(|order| order.shown).and_then(|shown| shown.hot.as_ref()) {
        row::fact(ui, desk.theme, "Length to heat", &hot.words);
    }
    said::lines(ui, desk, worked.heat_with.as_slice());
}

fn all_prose(ui: &mut Ui, desk: &Desk<'_>, worked: &WorkedStep, next: &mut Step) {
    let sizing = Sizing::new(desk.theme, desk.document.plan().units, None);
    let own = |written: &Option<String>, worked: &Option<String>| {
        if written.is_none() { worked.clone().unwrap_or_default() } else { String::new() }
    };
    let fields: [(&str, &str, String, &mut Option<String>); 5] = [
        ("How it is laid and struck", "How the bar is laid and struck", own(&next.lay, &worked.lay), &mut next.lay),
        ("Check", "Check of the step", own(&next.check, &worked.check), &mut next.check),
        ("Leave for later", "What to leave for later", own(&next.leave, &worked.leave), &mut next.leave),
        ("Caution", "Caution of the step", own(&next.caution, &worked.caution), &mut next.caution),
        ("Note", "Note on the step", String::new(), &mut next.note),
    ];
    for (label, name, hint, now) in fields {
        ui.label(RichText::new(label).color(desk.theme.ink_quiet));
        let lines = if hint.is_empty() && now.is_none() { 1 } else { 2 };
        if let Some(typed) = prose::show(ui, &Prose { name, hint: &hint, lines }, now.as_deref()) {
            *now = typed;
        }
    }
    let picture = Entry::named("Picture", "Picture of the step").hint("a file beside the plan");
    if let Some(typed) = fields::optional_words(ui, &sizing, &picture, next.picture.as_deref()) {
        next.picture = typed;
    }
}
