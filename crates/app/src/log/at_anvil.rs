//! What the clock at the anvil saw: offered to the log, never written by itself.

use super::figure::tenths;
use crate::state::{Desk, OrderAsk, OrderDesk, Request, log_entries};
use crate::theme::space;
use egui::{RichText, Ui};
use fh_core::plan::Logged;
use fh_measure::counted;

/// Offers what the clock saw, where the log does not have it yet.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, out: &mut Vec<Request>) {
    let log = &desk.document.plan().work.log;
    let open: Vec<(usize, Logged)> = order.timed.iter().filter_map(|seen| open(log, order, seen)).collect();
    let mut taken = log.clone();
    for (at, entry) in &open {
        let heats = counted(entry.heats.unwrap_or(0) as usize, "heat");
        let minutes = tenths(entry.minutes.unwrap_or(0.0));
        ui.horizontal_wrapped(|ui| {
            let words = format!("Step {}, written at the anvil: {heats}, {minutes} min", at + 1);
            ui.label(RichText::new(words).color(desk.theme.ink));
            let button = ui
                .button("Add to the log")
                .on_hover_text("Adds it to the log. It includes the time in the fire between heats.");
            if button.accessible_name(format!("Add step {} from the anvil to the log", at + 1)).clicked() {
                taken = log_entries::with(&taken, entry.clone());
            }
        });
    }
    if open.len() > 1 && ui.button("Add all from the anvil").clicked() {
        taken = open.iter().fold(taken, |log, (_, entry)| log_entries::with(&log, entry.clone()));
    }
    if !open.is_empty() {
        ui.add_space(space::GAP);
    }
    if taken != *log {
        out.push(Request::Order(OrderAsk::Log(taken)));
    }
}

/// The log's entry with what the clock saw in it, and the place of its step; none where the log has it.
fn open(log: &[Logged], order: &OrderDesk<'_>, seen: &Logged) -> Option<(usize, Logged)> {
    let (at, _) = log_entries::step_of(&order.worked.steps, seen)?;
    let minutes = seen.minutes.map(|minutes| ((minutes * 10.0).round() / 10.0).max(0.1));
    let now = Logged { heats: seen.heats, minutes, ..log_entries::written(log, seen) };
    (!log.contains(&now)).then_some((at, now))
}
