//! The selected branch of a split: its name, its share of the bar, and the way to its segments.

use crate::figures;
use crate::state::{Command, Desk, Request};
use crate::theme::Text;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, heading, row};
use egui::{RichText, Ui};
use fh_core::describe::segment_name;
use fh_core::edit::Edit;
use fh_core::forms;
use fh_core::metal::{BranchSize, Shape};
use fh_core::plan::{BranchFree, Chain, Form};
use fh_measure::counted;
use uom::si::f64::Length;

/// Shows the branch.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, split: usize, index: usize, out: &mut Vec<Request>) {
    let bar = desk.selection.bar;
    let plan = desk.document.plan();
    let Some((written, segment)) = plan.bars.get(bar).zip(plan.segment(bar, split)) else { return };
    let Some(branch) = segment.form.branches().get(index) else { return };
    let sizing = Sizing::new(desk.theme, plan.units, desk.document.balance().bars.get(bar));
    let title = format!("Branch {} of {}", index + 1, segment_name(written, split));
    ui.label(RichText::new(title).text_style(Text::Heading.style()).color(desk.theme.ink));
    let hint = branch.title(index);
    let entry = Entry::named("Name", "Name of the branch").hint(if branch.name.is_empty() { &hint } else { "" });
    if let Some(name) = fields::words(ui, &sizing, &entry, &branch.name) {
        let mut next = segment.clone();
        if let Form::Split(forms::Split { branches, .. }) = &mut next.form
            && let Some(branch) = branches.get_mut(index)
        {
            branch.name = name;
        }
        out.push(Request::Edit(Edit::ReplaceSegment { bar, at: split, segment: Box::new(next) }));
    }
    if let Some(free) = free(ui, desk, branch.free) {
        let mut next = segment.clone();
        if let Form::Split(forms::Split { branches, .. }) = &mut next.form
            && let Some(branch) = branches.get_mut(index)
        {
            branch.free = free;
        }
        out.push(Request::Edit(Edit::ReplaceSegment { bar, at: split, segment: Box::new(next) }));
    }
    heading::show(ui, desk.theme, "Parts");
    segments(ui, desk, split, index, out);
    let balance = desk.document.balance().bars.get(bar).and_then(|bar| bar.segments.get(split));
    if let Some(Shape::Split(size)) = balance.and_then(|balance| balance.shape.as_ref())
        && let Some(size) = size.branches.get(index).filter(|_| !branch.segments.is_empty())
    {
        heading::show(ui, desk.theme, "Figures");
        figures_of(ui, desk, &sizing, size);
    }
}

/// Whether the branch leaves the bar while another runs on, and at which end its tip comes free; the choice, where another was made.
fn free(ui: &mut Ui, desk: &Desk<'_>, now: Option<BranchFree>) -> Option<Option<BranchFree>> {
    let choices = [
        (None, "ends with the slit".to_owned()),
        (Some(BranchFree::Datum), "leaves the bar towards the datum".to_owned()),
        (Some(BranchFree::Far), "leaves the bar away from the datum".to_owned()),
    ];
    chooser::show(ui, desk.theme, "Its tip", "Free end of the branch", now, &choices)
}

/// The segments as buttons that lead to them, and one that adds another.
fn segments(ui: &mut Ui, desk: &Desk<'_>, split: usize, branch: usize, out: &mut Vec<Request>) {
    let bar = desk.selection.bar;
    let Some(plan) = desk.document.plan().bars.get(bar) else { return };
    let chain = Chain::Branch { split, branch };
    let count = plan.chain(chain).map_or(0, Vec::len);
    if count == 0 {
        ui.label(RichText::new("No part yet: a branch needs metal.").color(desk.theme.ink_quiet));
    }
    for number in (0..count).filter_map(|place| plan.number_of(chain, place)) {
        let name = segment_name(plan, number);
        let button = ui.button(&name);
        button.clone().accessible_name(format!("Go to {name}"));
        if button.clicked() {
            out.push(Request::Select(bar, Some(number)));
        }
    }
    if ui.button("Add a part to it…").on_hover_text("At the end of this branch.").clicked() {
        out.push(Request::Run(Command::AddAfter));
    }
    if ui.button("Back to the split").clicked() {
        out.push(Request::Select(bar, Some(split)));
    }
}

fn figures_of(ui: &mut Ui, desk: &Desk<'_>, sizing: &Sizing<'_>, size: &BranchSize) {
    let marks = desk.document.plan().units.marks;
    let shop = |length: Length| marks.round(figures::mm(length)).text();
    let fine = |length: Length| sizing.words(length);
    row::fact(ui, desk.theme, "Share of the cut bar", &figures::percent(size.share));
    row::fact(ui, desk.theme, "Width as cut", &fine(size.raw_width));
    row::fact(ui, desk.theme, "Its metal, as a length of whole bar", &shop(size.stock_length));
    row::fact(ui, desk.theme, "Forged length", &fine(size.forged_length));
}

/// How many segments there are, in words.
pub(super) fn segments_words(count: usize) -> String {
    match count {
        0 => "empty".to_owned(),
        count => counted(count, "part"),
    }
}
