//! The fields of a step's entry: what came out, each beside what was planned.

use super::figure::tenths;
use crate::state::{Desk, OrderAsk, OrderDesk, Request, log_entries, step_words};
use crate::theme::Text;
use crate::widgets::entry::{self, Entry, Reading};
use crate::widgets::prose::{self, Prose};
use crate::widgets::{Sizing, chooser, fields};
use egui::{Id, RichText, Ui};
use fh_core::plan::{Logged, Operation, Target};
use fh_measure::LengthRange;
use fh_work::WorkedStep;

/// Shows the fields for the chosen step.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, order: &OrderDesk<'_>, out: &mut Vec<Request>) {
    let theme = desk.theme;
    let Some((at, step)) = order.at.zip(order.chosen()) else {
        ui.label(RichText::new("Choose a step in the list to write down how it came out.").color(theme.ink));
        return;
    };
    let title = step_words(at, step);
    ui.label(RichText::new(title).text_style(Text::Strong.style()).color(theme.ink));
    let Some(blank) = chosen(ui, desk, step) else {
        ui.label(RichText::new("Work on joints is not logged.").color(theme.ink_quiet));
        return;
    };
    let plan = desk.document.plan();
    let before = log_entries::written(&plan.work.log, &blank);
    let mut next = before.clone();
    let planned = order.ledger.planned_step(order.worked, &blank).unwrap_or(step);
    let bar = desk.document.balance().bars.get(blank.bar_index());
    let sizing = Sizing::new(theme, plan.units, bar);
    ui.push_id((blank.operation.name(), &blank.parts), |ui| {
        took(ui, &sizing, planned, &mut next);
        sizes(ui, &sizing, planned, &mut next.sizes);
        if blank.operation == Operation::Check || next.kg.is_some() {
            let kg = Entry::named("Weight, kg", "Weight in kg").hint("of the finished bar");
            if let Some(typed) = fields::optional_number(ui, &sizing, &kg, next.kg) {
                next.kg = typed;
            }
        }
        let day = Entry::named("Day", "Day of the work").hint("as you write it");
        if let Some(typed) = fields::optional_words(ui, &sizing, &day, next.day.as_deref()) {
            next.day = typed;
        }
        ui.label(RichText::new("Note").color(theme.ink_quiet));
        let note = Prose { name: "Note on what came out", hint: "", lines: 1 };
        if let Some(typed) = prose::show(ui, &note, next.note.as_deref()) {
            next.note = typed;
        }
    });
    if next != before {
        out.push(Request::Order(OrderAsk::Log(log_entries::with(&plan.work.log, next))));
    }
}

/// The work of the step that the fields are about; the smith chooses where it does more than one thing.
fn chosen(ui: &mut Ui, desk: &Desk<'_>, step: &WorkedStep) -> Option<Logged> {
    let blanks = log_entries::blanks(step);
    if blanks.len() < 2 {
        return blanks.into_iter().next();
    }
    let id = Id::unique("the logged work of a step");
    let now = ui.data(|data| data.get_temp::<usize>(id)).filter(|now| *now < blanks.len()).unwrap_or(0);
    let words = |blank: &Logged| format!("{} {}", blank.operation.name(), blank.parts.join(", ")).trim().to_owned();
    let choices: Vec<(usize, String)> = blanks.iter().map(words).enumerate().collect();
    let now = chooser::show(ui, desk.theme, "Work", "Which work is logged", now, &choices).unwrap_or(now);
    ui.data_mut(|data| data.insert_temp(id, now));
    blanks.into_iter().nth(now)
}

/// Heats, minutes and blows.
fn took(ui: &mut Ui, sizing: &Sizing<'_>, planned: &WorkedStep, next: &mut Logged) {
    if planned.is_hot() || next.heats.is_some() {
        let hint = format!("{} planned", planned.needs);
        let heats = Entry::named("Heats", "Heats it took").hint(&hint);
        if let Some(typed) = optional_count(ui, sizing, &heats, next.heats) {
            next.heats = typed;
        }
    }
    let hint = format!("{} planned", tenths(planned.minutes));
    let minutes = Entry::named("Minutes", "Minutes it took").hint(&hint);
    if let Some(typed) = fields::optional_number(ui, sizing, &minutes, next.minutes) {
        next.minutes = typed;
    }
    if planned.is_hot() || next.blows.is_some() {
        let blows = Entry::named("Blows", "Blows it took").hint("if you counted");
        if let Some(typed) = optional_count(ui, sizing, &blows, next.blows) {
            next.blows = typed;
        }
    }
}

/// Each size of the step that is a length, as it was measured.
fn sizes(ui: &mut Ui, sizing: &Sizing<'_>, planned: &WorkedStep, written: &mut Vec<Target>) {
    let names = log_entries::size_names(planned);
    for (size, what) in planned.sizes.iter().zip(names).filter(|(size, _)| size.mm.is_some()) {
        let at = written.iter().position(|target| target.what == what);
        let now = at.and_then(|at| written.get(at)).map(|target| target.size.clone());
        let (name, hint) = (format!("Came out: {what}"), format!("{} planned", size.cold));
        let field = Entry::named(&what, &name).hint(&hint);
        let range = LengthRange::AboveZero;
        let Some(typed) = fields::optional_length(ui, sizing, &field, now.as_ref(), range, size.mm) else { continue };
        written.retain(|target| target.what != what);
        if let Some(size) = typed {
            let target = Target { what, size, tolerance: None };
            written.insert(at.unwrap_or(written.len()).min(written.len()), target);
        }
    }
}

/// A whole number above 0 that may be left out.
fn optional_count(ui: &mut Ui, sizing: &Sizing<'_>, field: &Entry<'_>, now: Option<u32>) -> Option<Option<u32>> {
    let text = now.map_or_else(String::new, |count| count.to_string());
    let step = |steps: i32| now.unwrap_or(0).checked_add_signed(steps).filter(|count| *count > 0).map(Some);
    entry::show(ui, sizing.theme, field, &text, &Reading { read: &read_count, step: Some(&step), doubt: None })
}

fn read_count(text: &str) -> Result<Option<u32>, String> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    let count = text.parse::<u32>().ok().filter(|count| *count > 0);
    count.map(Some).ok_or_else(|| format!("“{text}” isn't a whole number above 0; write, for example, 2"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heats_are_counted_whole() {
        assert_eq!(read_count(" 2 "), Ok(Some(2)));
        assert_eq!(read_count(""), Ok(None));
        assert!(read_count("1.5").is_err() && read_count("0").is_err() && read_count("-1").is_err());
    }
}
