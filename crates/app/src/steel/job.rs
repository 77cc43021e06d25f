//! The job beside a cut list or a quote: its plans, each with its count, how they are cut, and its file.

use super::fields::button;
use super::job_file;
use crate::state::steel::MOST;
use crate::state::{Command, Desk, JobAsk, Request, SteelAsk};
use crate::theme::{Text, space};
use crate::widgets::entry::{self, Entry, Reading};
use crate::widgets::{chooser, heading};
use egui::{RichText, Ui};
use fh_core::describe::short_name;
use fh_rack::kept::job::Job;

/// Shows it.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let theme = desk.theme;
    let job = &desk.steel.job;
    ui.label(RichText::new("The job").text_style(Text::Heading.style()).color(theme.ink));
    job_file::show(ui, desk, out);
    ui.add_space(space::TIGHT);
    for (at, name) in job.titles(desk.document).iter().enumerate() {
        plan(ui, desk, at, name, out);
    }
    ui.horizontal_wrapped(|ui| {
        if ui.button("Add a plan…").on_hover_text("Cut another plan, or all of a job, from the same bars.").clicked()
        {
            out.push(Request::Steel(SteelAsk::AskPlan));
        }
        if ui
            .button("More of the job…")
            .on_hover_text("Whom it is for, what is agreed, work beside the fire.")
            .clicked()
        {
            out.push(Request::Run(Command::Job));
        }
    });
    heading::show(ui, theme, "How it is cut");
    ways(ui, desk, out);
}

/// Asks for another job in the place of this one.
pub(super) fn change(out: &mut Vec<Request>, next: Job) {
    out.push(Request::Steel(SteelAsk::Job(JobAsk::Change(Box::new(next)))));
}

/// A plan with its count.
pub(super) fn plan(ui: &mut Ui, desk: &Desk<'_>, at: usize, name: &str, out: &mut Vec<Request>) {
    let job = desk.steel.job.job();
    let Some(line) = job.plans.get(at) else { return };
    let (name, count) = (short_name(name), line.pieces());
    let spoken = format!("How many of {name}");
    let read = |text: &str| {
        let count = text.trim().parse::<u32>().ok().filter(|count| (1..=MOST).contains(count));
        count.ok_or_else(|| format!("“{}” isn't a count. Write a whole number from 1 to {MOST}.", text.trim()))
    };
    let step = |steps| count.checked_add_signed(steps).filter(|count| (1..=MOST).contains(count));
    ui.push_id(("plan of the job", at), |ui| {
        let entry = Entry::named(&name, &spoken);
        let reading = Reading { read: &read, step: Some(&step as &dyn Fn(i32) -> Option<u32>), doubt: None };
        if let Some(count) = entry::show(ui, desk.theme, &entry, &count.to_string(), &reading) {
            let mut next = job.clone();
            next.plans[at].count = Some(count);
            change(out, next);
        }
        if let Some(why) = desk.steel.job.trouble(at, desk.document) {
            ui.label(RichText::new(format!("■ {why}")).text_style(Text::Small.style()).color(desk.theme.stop));
        }
        if job.plans.len() > 1 && button(ui, "Leave out", &format!("Leave out {name}"), "") {
            let mut next = job.clone();
            next.plans.remove(at);
            change(out, next);
        }
    });
}

/// The way of cutting, for all plans.
fn ways(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(stock) = &desk.steel.stock else { return };
    let (shop, job) = (&stock.shop.now, desk.steel.job.job());
    let ways = &shop.cutting;
    let own = job.plans.first().and_then(|line| line.cut.as_ref());
    let now = ways.iter().position(|way| Some(&way.name) == own);
    let now = now.or_else(|| ways.iter().position(|way| way.hold.is_none())).unwrap_or(0);
    let words = |(at, way): (usize, &fh_rack::kept::shop::Cutting)| (at, format!("{}, {}", way.name, way.kerf.text()));
    let choices: Vec<(usize, String)> = ways.iter().enumerate().map(words).collect();
    if let Some(way) = chooser::show(ui, desk.theme, "With", "Way of cutting", now, &choices) {
        let mut next = job.clone();
        let name = ways.get(way).map(|way| way.name.clone());
        next.plans.iter_mut().for_each(|line| line.cut.clone_from(&name));
        change(out, next);
    }
    let mut told = Vec::new();
    if job.plans.iter().any(|line| line.cut.as_ref() != own) {
        told.push("Some plans are cut another way: see the job.".to_owned());
    }
    if let Some(way) = ways.get(now) {
        told.push(format!("Each cut takes {}.", way.kerf.text()));
        let hold = way.hold.as_ref();
        told.extend(
            hold.map(|hold| format!("Each piece is cut off hot; {} of the bar is held to the last.", hold.text())),
        );
    }
    told.extend(shop.keep_from.as_ref().map(|keep| format!("Offcuts from {} are kept.", keep.text())));
    ui.label(RichText::new(told.join(" ")).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
}
