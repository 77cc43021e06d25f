//! Work and costs of a job that are in none of its plans: design, bench work, packing, delivery, what others do.

use super::fields::{button, price, said, title};
use super::job::change;
use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use crate::widgets::chooser;
use crate::widgets::entry::Entry;
use egui::{RichText, Ui};
use fh_rack::kept::job::{Job, JobLine, LineKind};
use fh_rack::said::time::WrittenTime;
use fh_rack::said::written::Written;

/// Shows them.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let (theme, job) = (desk.theme, desk.steel.job.job());
    ui.label(RichText::new("Beside the fire").text_style(Text::Heading.style()).color(theme.ink));
    for (at, line) in job.lines.iter().enumerate() {
        ui.push_id(("line of the job", at), |ui| {
            let mut take = |line: JobLine| {
                let mut next = job.clone();
                next.lines[at] = line;
                change(out, next);
            };
            fields(ui, desk, line, &mut take);
            if button(ui, "Remove", &format!("Remove {}", line.kind.name()), "") {
                let mut next = job.clone();
                next.lines.remove(at);
                change(out, next);
            }
        });
        ui.add_space(space::GAP);
    }
    let hint = "Design, bench work, packing, delivery, fixing, what others do for it.";
    if button(ui, "Add work or a cost", "Add work or a cost", hint)
        && let Ok(time) = Written::<WrittenTime>::parse("1 h")
    {
        let mut lines = job.lines.clone();
        lines.push(JobLine { kind: LineKind::Bench, what: String::new(), time: Some(time), price: None, each: false });
        change(out, Job { lines, ..job.clone() });
    }
}

fn fields(ui: &mut Ui, desk: &Desk<'_>, line: &JobLine, take: &mut dyn FnMut(JobLine)) {
    let choices = LineKind::ALL.map(|kind| (kind, kind.name().to_owned()));
    if let Some(kind) = chooser::show(ui, desk.theme, "Kind", "Kind of work or cost", line.kind, &choices) {
        take(JobLine { kind, ..line.clone() });
    }
    if let Some(what) = title(ui, desk, &Entry::named("What", "What it is"), &line.what) {
        take(JobLine { what, ..line.clone() });
    }
    let entry = Entry::named("Time", "Time it takes").hint("1 h 30 min");
    if let Some(time) = said(ui, desk, &entry, line.time.as_ref()) {
        take(JobLine { time, ..line.clone() });
    }
    let entry = Entry::named("Costs", "What it costs").hint("35.00");
    if let Some(price) = price(ui, desk, &entry, line.price.as_ref(), "each") {
        take(JobLine { price, ..line.clone() });
    }
    let mut each = line.each;
    let tip = "Else it comes once, however many of the job are made.";
    if ui.checkbox(&mut each, "with every one of the job").on_hover_text(tip).changed() {
        take(JobLine { each, ..line.clone() });
    }
}
