//! The sizes of what is selected: a segment, a bar, or the whole plan.

mod asked;
mod bar;
mod bend;
mod blank;
mod branch;
mod contents;
mod dressed;
mod facts;
mod flag;
mod form;
mod hangs;
mod hole;
mod joints;
mod ladder;
mod limits;
mod mark;
mod notes;
mod outline;
mod peak;
mod pins;
mod plan;
mod plate_holes;
mod polygon;
mod repeats;
mod segment;
mod sides;
mod sizes;
mod socket;
mod split;
mod taper;
mod trade;
mod via;

use crate::state::{Desk, Focus, Request};
use crate::widgets::follow_focus;
use egui::{ScrollArea, Ui};

/// Shows the sizes of what is selected.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let selection = desk.selection;
    // What is typed and not yet taken belongs to one place of one plan.
    let place = (desk.document.serial(), selection.bar, selection.focus);
    ScrollArea::vertical().id_salt(place).auto_shrink([false, false]).show(ui, |ui| {
        ui.push_id(place, |ui| match selection.focus {
            Focus::Plan => plan::show(ui, desk, out),
            Focus::Bar => bar::show(ui, desk, out),
            Focus::Segment(segment) => segment::show(ui, desk, segment, out),
            Focus::Branch { split, branch } => branch::show(ui, desk, split, branch, out),
        });
        follow_focus::follow(ui);
    });
}
