//! What the program says of a step: what was found, and why it stands where it does.

use crate::state::{Desk, OrderAsk, OrderDesk, Request};
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::severity_sign::{color, sign};
use crate::widgets::{Sizing, fields, heading};
use egui::{CollapsingHeader, Frame, RichText, Stroke, Ui};
use fh_core::edit::StepChange;
use fh_work::{OrderFinding, WorkedStep};

/// Shows every finding that speaks of a step; a click leads to the other steps that it names.
pub(super) fn findings(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, at: usize, out: &mut Vec<Request>) {
    for found in order.worked.findings.iter().filter(|found| found.steps.contains(&at)) {
        finding(ui, desk, found, at, out);
    }
}

/// A finding; one that the smith knows of is folded away under its first words.
fn finding(ui: &mut Ui, desk: &Desk<'_>, found: &OrderFinding, at: usize, out: &mut Vec<Request>) {
    match &found.accepted {
        None => open(ui, desk, found, at, out),
        Some(because) => {
            let head = RichText::new(format!("I know: {because}")).color(desk.theme.ink_quiet);
            let id = (found.finding.id, &found.steps);
            CollapsingHeader::new(head).id_salt(id).show(ui, |ui| open(ui, desk, found, at, out));
        }
    }
}

/// A field for why it may be so: a finding with a reason is accepted, and one whose reason is taken out is told again.
fn i_know(ui: &mut Ui, desk: &Desk<'_>, found: &OrderFinding, at: usize, out: &mut Vec<Request>) {
    let Some(step) = desk.worked.and_then(|worked| worked.steps.get(at)) else { return };
    let id = found.finding.id;
    let name = format!("I know, because: {}", found.finding.message);
    let sizing = Sizing::new(desk.theme, desk.document.plan().units, None);
    let entry = Entry::named("I know, because", &name).hint("your reason, kept in the plan");
    if let Some(typed) = fields::optional_words(ui, &sizing, &entry, step.step.accepts(id)) {
        let step = Box::new(step.step.clone().accepting(id, typed.as_deref()));
        out.push(Request::Order(OrderAsk::Change(StepChange::Replace { at, step })));
    }
}

fn open(ui: &mut Ui, desk: &Desk<'_>, found: &OrderFinding, at: usize, out: &mut Vec<Request>) {
    let (theme, severity) = (desk.theme, found.finding.severity);
    let tint = color(theme, severity);
    let frame =
        Frame::new().stroke(Stroke::new(theme.hairline(), tint)).inner_margin(space::GAP).corner_radius(space::CORNER);
    frame.show(ui, |ui| {
        ui.set_min_width(ui.available_width());
        let head = format!("{} {}", sign(severity), found.finding.message);
        ui.label(RichText::new(head).text_style(Text::Strong.style()).color(tint));
        let rest = format!("{} {}", found.finding.reason, found.finding.remedy);
        ui.label(RichText::new(rest).color(theme.ink));
        ui.horizontal_wrapped(|ui| {
            for step in found.steps.iter().filter(|step| **step != at) {
                if ui.button(format!("Step {}", step + 1)).on_hover_text("Show this step.").clicked() {
                    out.push(Request::Order(OrderAsk::Choose(Some(*step))));
                }
            }
        });
        i_know(ui, desk, found, at, out);
    });
}

/// Shows lines that are only read.
pub(super) fn lines(ui: &mut Ui, desk: &Desk<'_>, lines: &[String]) {
    for line in lines {
        ui.label(RichText::new(line).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
    }
}

/// Shows why a step stands where it does; nothing where nothing holds it there.
pub(super) fn why_here(ui: &mut Ui, desk: &Desk<'_>, worked: &WorkedStep) {
    if !worked.because.is_empty() {
        heading::show(ui, desk.theme, "Why here");
        for because in &worked.because {
            ui.label(RichText::new(because).color(desk.theme.ink));
        }
    }
}
