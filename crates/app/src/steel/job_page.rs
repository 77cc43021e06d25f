//! The whole job: what it is, its plans, the work and the costs that are in no plan, and what was made of it.

use super::fields::{button, currency, joined, lines, several, share, shop_currency, title, words};
use super::job::{change, plan};
use super::{job_file, job_lines, today};
use crate::state::{Desk, JobAsk, Request, SteelAsk};
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::{chooser, heading};
use egui::{RichText, ScrollArea, Ui};
use fh_rack::kept::job::{Job, JobPlan, Made, SteelBy};
use fh_rack::said::percent::Percent;
use fh_rack::said::section::SaidSection;
use fh_rack::said::written::{Said, Written};

/// The least width of a column, in points at normal text size.
const COLUMN: f32 = 300.0;

/// Shows it, in as many columns as there is room for.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    super::in_the_middle(ui, desk.theme, |ui| {
        let count = ((ui.available_width() / desk.theme.scaled(COLUMN)) as usize).clamp(1, 3);
        ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
            ui.columns(count, |columns| {
                about(&mut columns[0], desk, out);
                plans(&mut columns[1.min(count - 1)], desk, out);
                job_lines::show(&mut columns[count - 1], desk, out);
                made(&mut columns[count - 1], desk, out);
            });
        });
    });
}

fn about(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let job = desk.steel.job.job();
    ui.label(RichText::new("The job").text_style(Text::Heading.style()).color(desk.theme.ink));
    job_file::show(ui, desk, out);
    ui.add_space(space::TIGHT);
    if let Some(title) = title(ui, desk, &Entry::named("Title", "Title of the job"), &job.title) {
        change(out, Job { title, ..job.clone() });
    }
    if let Some(customer) = words(ui, desk, &Entry::named("For", "Whom the job is for"), job.customer.as_deref()) {
        change(out, Job { customer, ..job.clone() });
    }
    let entry = Entry::named("Date", "Date on its papers").hint("2026-05-04");
    if let Some(date) = words(ui, desk, &entry, job.date.as_deref()) {
        change(out, Job { date, ..job.clone() });
    }
    let tip = "By this computer's clock, in universal time.";
    if job.date.is_none() && button(ui, "Today", "Date the papers today", tip) {
        change(out, Job { date: today::today(), ..job.clone() });
    }
    finish(ui, desk, job, out);
    let entry = Entry::named("Discount", "Discount").hint("none");
    if let Some(discount) = share(ui, desk, &entry, job.discount.as_ref()) {
        change(out, Job { discount: discount.filter(is_some_share), ..job.clone() });
    }
    steel(ui, desk, job, out);
    let now = (job.currency.as_deref(), job.decimals);
    if let Some((currency, decimals)) = currency(ui, desk, ("Currency", " of the job"), &shop_currency(desk), now) {
        change(out, Job { currency, decimals, ..job.clone() });
    }
    if let Some(agreed) = words(ui, desk, &Entry::named("Agreed", "What is agreed"), job.agreed.as_deref()) {
        change(out, Job { agreed, ..job.clone() });
    }
    let entry = Entry::named("Not included", "What the price does not include").hint("posts; screws");
    if let Some(not_included) = lines(ui, desk, &entry, &job.not_included) {
        change(out, Job { not_included, ..job.clone() });
    }
    note(ui, desk, "Several things in one field: a semicolon between them.");
}

/// What of the bars the customer pays for.
fn steel(ui: &mut Ui, desk: &Desk<'_>, job: &Job, out: &mut Vec<Request>) {
    let now = (job.steel.unwrap_or_default(), job.offcuts_paid);
    let choices = [
        ((SteelBy::Bars, false), "bars less the offcuts kept".to_owned()),
        ((SteelBy::Bars, true), "whole bars".to_owned()),
        ((SteelBy::Used, false), "only what is used".to_owned()),
    ];
    if let Some((by, offcuts_paid)) = chooser::show(ui, desk.theme, "Steel", "What is paid of the steel", now, &choices)
    {
        let steel = (by != SteelBy::default()).then_some(by);
        change(out, Job { steel, offcuts_paid, ..job.clone() });
    }
}

fn is_some_share(share: &Written<Percent>) -> bool {
    share.hundredths > 0
}

/// Small words below fields.
fn note(ui: &mut Ui, desk: &Desk<'_>, words: &str) {
    ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
}

/// The finish, of those that the shop has; one that it does not have stays as it is.
fn finish(ui: &mut Ui, desk: &Desk<'_>, job: &Job, out: &mut Vec<Request>) {
    let shop = desk.steel.stock.as_ref().map(|stock| &stock.shop.now);
    let mut names: Vec<Option<String>> = vec![None];
    names.extend(shop.into_iter().flat_map(|shop| &shop.finishes).map(|finish| Some(finish.name.clone())));
    if !names.contains(&job.finish) {
        names.push(job.finish.clone());
    }
    let now = names.iter().position(|name| *name == job.finish).unwrap_or(0);
    let words = |name: &Option<String>| name.clone().unwrap_or_else(|| "none".to_owned());
    let choices: Vec<(usize, String)> = names.iter().map(words).enumerate().collect();
    if let Some(at) = chooser::show(ui, desk.theme, "Finish", "Finish of the job", now, &choices) {
        change(out, Job { finish: names.get(at).cloned().flatten(), ..job.clone() });
    }
    if names.len() == 1 {
        note(ui, desk, "The shop has no finish yet: add one under Shop.");
    }
}

fn plans(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    ui.label(RichText::new("Plans").text_style(Text::Heading.style()).color(desk.theme.ink));
    let job = desk.steel.job.job();
    for (at, name) in desk.steel.job.titles(desk.document).iter().enumerate() {
        let Some(line) = job.plans.get(at) else { continue };
        plan(ui, desk, at, name, out);
        ui.push_id(("ways of the plan", at), |ui| ways(ui, desk, job, at, line, out));
        if line.plan != crate::state::steel::OPEN && button(ui, "Open", &format!("Open {name}"), &line.plan) {
            out.push(Request::Steel(SteelAsk::Job(JobAsk::OpenPlan(at))));
        }
        ui.add_space(space::GAP);
    }
    if button(ui, "Add a plan…", "Add a plan…", "Cut another plan, or all of a job, from the same bars.") {
        out.push(Request::Steel(SteelAsk::AskPlan));
    }
}

/// How a plan is cut, and from what it may be made beside its own bar.
fn ways(ui: &mut Ui, desk: &Desk<'_>, job: &Job, at: usize, line: &JobPlan, out: &mut Vec<Request>) {
    let mut take = |line: JobPlan| {
        let mut next = job.clone();
        next.plans[at] = line;
        change(out, next);
    };
    let shop = desk.steel.stock.as_ref().map(|stock| &stock.shop.now);
    let mut names: Vec<Option<String>> = vec![None];
    names.extend(shop.into_iter().flat_map(|shop| &shop.cutting).map(|way| Some(way.name.clone())));
    if !names.contains(&line.cut) {
        names.push(line.cut.clone());
    }
    let now = names.iter().position(|name| *name == line.cut).unwrap_or(0);
    let words = |name: &Option<String>| name.clone().unwrap_or_else(|| "the shop's first way".to_owned());
    let choices: Vec<(usize, String)> = names.iter().map(words).enumerate().collect();
    if let Some(way) = chooser::show(ui, desk.theme, "Cut with", "Way of cutting this plan", now, &choices) {
        take(JobPlan { cut: names.get(way).cloned().flatten(), ..line.clone() });
    }
    let also = joined(line.also_from.iter().map(|said| said.text()));
    let read = |text: &str| Written::<SaidSection>::parse(text);
    let entry = Entry::named("Also from", "Larger bars that it may also be made from").hint("14 mm square");
    if let Some(also_from) = several(ui, desk, &entry, &also, &read) {
        take(JobPlan { also_from, ..line.clone() });
    }
}

/// What was made of the job.
fn made(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let job = desk.steel.job.job();
    heading::show(ui, desk.theme, "Made of it so far");
    if job.made.is_empty() {
        note(ui, desk, "Nothing yet. Cut lists and quotes that are printed, and bookings, are noted here.");
    }
    for (at, made) in job.made.iter().enumerate() {
        ui.push_id(("made", at), |ui| {
            ui.horizontal_wrapped(|ui| {
                let label = ui.label(RichText::new(made_words(made)).color(desk.theme.ink));
                if let Some(file) = &made.file {
                    label.on_hover_text(file);
                }
                let name = format!("Remove the note: {}", made.what);
                if ui.button("Remove").accessible_name(name).on_hover_text("Only the note is removed.").clicked() {
                    out.push(Request::Steel(SteelAsk::Job(JobAsk::Forget(made.what.clone()))));
                }
            });
        });
    }
}

fn made_words(made: &Made) -> String {
    let on = made.on.as_ref().map(|on| format!(" on {on}"));
    let figure = made.figure.as_ref().map(|figure| format!(": {figure}"));
    [Some(made.what.clone()), on, figure].into_iter().flatten().collect()
}
