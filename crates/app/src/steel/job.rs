//! The job: the open plan and others, each with its count, and how they are cut.

use crate::state::steel::MOST;
use crate::state::{Desk, Request, SteelAsk};
use crate::theme::{Text, space};
use crate::widgets::entry::{self, Entry, Reading};
use crate::widgets::{chooser, heading};
use egui::{RichText, Ui};
use fh_core::describe::short_name;

/// Shows it.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let theme = desk.theme;
    ui.label(RichText::new("The job").text_style(Text::Heading.style()).color(theme.ink));
    ui.add_space(space::TIGHT);
    let cut = &desk.steel.cut;
    plan(ui, desk, 0, &desk.document.name(), cut.count(), out);
    for (index, other) in cut.others.iter().enumerate() {
        plan(ui, desk, index + 1, &other.name, other.count, out);
    }
    if ui.button("Add a plan…").on_hover_text("Cut another plan, or all of a job, from the same bars.").clicked() {
        out.push(Request::Steel(SteelAsk::AskPlan));
    }
    heading::show(ui, theme, "How it is cut");
    ways(ui, desk, out);
}

/// A plan with its count.
fn plan(ui: &mut Ui, desk: &Desk<'_>, at: usize, name: &str, count: u32, out: &mut Vec<Request>) {
    let name = short_name(name);
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
            out.push(Request::Steel(SteelAsk::Count(at, count)));
        }
        if at > 0 && ui.button("Leave out").accessible_name(format!("Leave out {name}")).clicked() {
            out.push(Request::Steel(SteelAsk::DropPlan(at)));
        }
    });
}

fn ways(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(stock) = &desk.steel.stock else { return };
    let ways = &stock.shop.cutting;
    let now = ways.iter().position(|way| Some(&way.name) == desk.steel.cut.way.as_ref());
    let now = now.or_else(|| ways.iter().position(|way| way.hold.is_none())).unwrap_or(0);
    let words = |(at, way): (usize, &fh_rack::kept::shop::Cutting)| (at, format!("{}, {}", way.name, way.kerf.text()));
    let choices: Vec<(usize, String)> = ways.iter().enumerate().map(words).collect();
    if let Some(way) = chooser::show(ui, desk.theme, "With", "Way of cutting", now, &choices) {
        let name = ways.get(way).map(|way| way.name.clone());
        out.push(Request::Steel(SteelAsk::Way(name)));
    }
    if let Some(way) = ways.get(now) {
        let hold = way.hold.as_ref().map_or_else(String::new, |hold| {
            format!(" Each piece is parted off hot; {} of the bar is held to the last.", hold.text())
        });
        let keep = stock
            .shop
            .keep_from
            .as_ref()
            .map_or_else(String::new, |keep| format!(" Offcuts from {} are kept.", keep.text()));
        let words = format!("Each cut takes {}.{hold}{keep}", way.kerf.text());
        ui.label(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
    }
}
