//! The quote: what an hour and the profit are put at, for how many, and what that comes to at once.

use super::{empty, in_the_middle, job, rate, side, sum};
use crate::state::{Command, Desk, Request, SteelAsk, SteelPaper};
use crate::theme::{Text, space};
use crate::widgets::entry::{self, Entry, Reading};
use crate::widgets::heading;
use egui::{Panel, RichText, ScrollArea, Ui};
use fh_rack::quote::error::MOST;

/// The width of the panel with the figures, in points at normal text size, and its share of the window at most.
const FIGURES: f32 = 330.0;
const MOST_OF_WIDTH: f32 = 0.34;
/// How far the slider of the count reaches.
const MOST_SLID: i64 = 100;

/// Shows it.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(stock) = &desk.steel.stock else { return };
    let theme = desk.theme;
    let width = theme.scaled(FIGURES).min((ui.available_width() * MOST_OF_WIDTH).round());
    let panel = Panel::left("figures of the quote").resizable(false).exact_size(width).frame(side(theme));
    panel.show(ui, |ui| {
        ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
            ui.label(RichText::new("Your figures").text_style(Text::Heading.style()).color(theme.ink));
            let mut take = |shop, keep| out.push(Request::Steel(SteelAsk::Shop(Box::new(shop), keep)));
            rate::sliders(ui, desk, &stock.shop.now, &mut take);
            ui.horizontal_wrapped(|ui| {
                let more = ui.button("More of your figures…");
                if more.on_hover_text("Overheads, fuel, tax, deposit, ways of cutting.").clicked() {
                    out.push(Request::Run(Command::ShopFigures));
                }
                let steel = ui.button("Prices of steel…");
                if steel.on_hover_text("What the merchant asks for a bar, a metre or a kilogram.").clicked() {
                    out.push(Request::Run(Command::Merchant));
                }
            });
            heading::show(ui, theme, "For how many");
            counts(ui, desk, out);
            ui.add_space(space::GROUP);
            job::show(ui, desk, out);
        });
    });
    in_the_middle(ui, theme, |ui| match &desk.steel.quote.quote {
        None => empty(ui, theme, "Working out the quote…"),
        Some(Err(why)) => empty(ui, theme, &format!("■ {why}")),
        Some(Ok(quote)) => {
            ui.horizontal_wrapped(|ui| {
                if ui.button("Print the quote…").clicked() {
                    out.push(Request::Steel(SteelAsk::AskPaper(SteelPaper::Customer)));
                }
                if ui
                    .button("Print the figures…")
                    .on_hover_text("Every line with what it follows from, for you.")
                    .clicked()
                {
                    out.push(Request::Steel(SteelAsk::AskPaper(SteelPaper::Figures)));
                }
                if desk.steel.quote.is_working() {
                    ui.label(RichText::new("Looking for a better cut list…").color(theme.ink_quiet));
                }
            });
            ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| sum::show(ui, desk, quote, out));
        }
    });
}

fn counts(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    for (at, count) in desk.steel.quote.counts.iter().enumerate() {
        let read = |text: &str| {
            let count = text.trim().parse::<u32>().ok().filter(|count| (1..=MOST).contains(count));
            count.ok_or_else(|| format!("“{}” isn't a count. Write a whole number from 1 to {MOST}.", text.trim()))
        };
        let step = |steps| count.checked_add_signed(steps).filter(|count| (1..=MOST).contains(count));
        let name = format!("Count {} of the quote", at + 1);
        let label = format!("Count {}", at + 1);
        let reading = Reading { read: &read, step: Some(&step as &dyn Fn(i32) -> Option<u32>), doubt: None };
        if let Some(count) = entry::show(ui, desk.theme, &Entry::named(&label, &name), &count.to_string(), &reading) {
            out.push(Request::Steel(SteelAsk::QuoteCount(at, count)));
        }
        if at == 0 {
            slider(ui, desk, *count, out);
        }
    }
}

/// A slider for the first count: the first column of the quote follows it at once.
fn slider(ui: &mut Ui, desk: &Desk<'_>, count: u32, out: &mut Vec<Request>) {
    let slid = rate::slide(ui, desk, "Count 1, by the slider", i64::from(count), MOST_SLID);
    let count = slid.and_then(|(value, _)| u32::try_from(value.max(1)).ok()).filter(|slid| *slid != count);
    out.extend(count.map(|count| Request::Steel(SteelAsk::QuoteCount(0, count))));
}
