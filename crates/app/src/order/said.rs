//! What the program says of a step: what was found, and why it stands where it does.

use crate::state::{Desk, OrderAsk, OrderDesk, Request};
use crate::theme::{Text, space};
use crate::widgets::heading;
use crate::widgets::severity_sign::{color, sign};
use egui::{Frame, RichText, Stroke, Ui};
use fh_work::{OrderFinding, WorkedStep};

/// Shows every finding that speaks of a step; a click leads to the other steps that it names.
pub(super) fn findings(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, at: usize, out: &mut Vec<Request>) {
    for found in order.worked.findings.iter().filter(|found| found.steps.contains(&at)) {
        finding(ui, desk, found, at, out);
    }
}

fn finding(ui: &mut Ui, desk: &Desk<'_>, found: &OrderFinding, at: usize, out: &mut Vec<Request>) {
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
