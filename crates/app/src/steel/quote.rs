//! The quote: what an hour and the profit are put at, for how many, and what that comes to at once.

use super::{empty, in_the_middle, job, side, sum};
use crate::state::steel::Stocked;
use crate::state::{Desk, Request, SteelAsk, SteelPaper};
use crate::theme::{Text, space};
use crate::widgets::entry::{self, Entry, Reading};
use crate::widgets::heading;
use egui::{Button, Panel, RichText, ScrollArea, Slider, Ui};
use fh_rack::kept::shop::{Profit, Shop};
use fh_rack::quote::error::MOST;
use fh_rack::said::money::Currency;
use fh_rack::said::percent::{Percent, percent_words};
use fh_rack::said::price::Price;
use fh_rack::said::written::{Said, Written};

/// The width of the panel with the figures, in points at normal text size, and its share of the window at most.
const FIGURES: f32 = 330.0;
const MOST_OF_WIDTH: f32 = 0.34;
/// How far the sliders reach, in hundredths of a per cent of markup, in those of margin, and in units of money for an hour.
const MOST_MARKUP: i64 = 10_000;
const MOST_MARGIN: i64 = 8_000;
const MOST_RATE: i64 = 150;

/// Shows it.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(stock) = &desk.steel.stock else { return };
    let theme = desk.theme;
    let width = theme.scaled(FIGURES).min((ui.available_width() * MOST_OF_WIDTH).round());
    let panel = Panel::left("figures of the quote").resizable(false).exact_size(width).frame(side(theme));
    panel.show(ui, |ui| {
        ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
            job::show(ui, desk, out);
            heading::show(ui, theme, "Your figures");
            rate(ui, desk, stock, out);
            profit(ui, desk, stock, out);
            others(ui, desk, stock, out);
            heading::show(ui, theme, "For how many");
            counts(ui, desk, out);
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
            ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| sum::show(ui, desk, quote));
        }
    });
}

fn changed(out: &mut Vec<Request>, shop: Shop, keep: bool) {
    out.push(Request::Steel(SteelAsk::Shop(Box::new(shop), keep)));
}

/// What an hour costs: a field, and a slider beside it.
fn rate(ui: &mut Ui, desk: &Desk<'_>, stock: &Stocked, out: &mut Vec<Request>) {
    let (shop, money) = (&stock.shop, stock.shop.money());
    let read = |text: &str| match text.trim() {
        "" => Ok(None),
        text => read_rate(text, &money).map(Some),
    };
    let now = shop.rate.as_ref().map_or("", |rate| rate.text());
    let entry = Entry::named("An hour", "What an hour costs").hint("42.00 per hour");
    let reading = Reading { read: &read, step: None, doubt: None };
    if let Some(rate) = entry::show(ui, desk.theme, &entry, now, &reading) {
        changed(out, Shop { rate, ..shop.clone() }, true);
    }
    let unit = 10_i64.pow(u32::from(money.decimals.min(4)));
    let now = shop.rate.as_ref().and_then(|rate| rate.amount(&money).ok()).unwrap_or(0);
    if let Some((value, keep)) = slide(ui, desk, "An hour, by the slider", now / unit, MOST_RATE)
        && let Ok(rate) = read_rate(&format!("{} per hour", money.figures(value * unit)), &money)
    {
        changed(out, Shop { rate: Some(rate), ..shop.clone() }, keep);
    }
}

/// A price for an hour, whether or not that is said.
fn read_rate(text: &str, money: &Currency) -> Result<Written<Price>, String> {
    let has_unit = text.contains("per ") || text.ends_with("each");
    let price: Written<Price> =
        if has_unit { Written::parse(text)? } else { Written::parse(&format!("{text} per hour"))? };
    if price.per != fh_rack::said::price::Per::Hour {
        return Err(format!("“{text}” isn't a price for an hour. Write it as 42.00 per hour"));
    }
    price.amount(money)?;
    Ok(price)
}

/// A slider over whole numbers. Its value, where it was moved, and whether it is to be kept: not while it is dragged.
fn slide(ui: &mut Ui, desk: &Desk<'_>, name: &str, now: i64, most: i64) -> Option<(i64, bool)> {
    let mut value = now.clamp(0, most);
    ui.spacing_mut().slider_width = (ui.available_width() - space::GROUP).max(desk.theme.scaled(80.0));
    let slider = ui.add(Slider::new(&mut value, 0..=most).show_value(false).clamping(egui::SliderClamping::Never));
    let (is_changed, is_dragged, is_over) = (slider.changed(), slider.dragged(), slider.drag_stopped());
    slider.accessible_name(name);
    (is_changed || is_over).then_some((value, !is_dragged))
}

/// Markup or margin: the one is set, and both are shown beside the price.
fn profit(ui: &mut Ui, desk: &Desk<'_>, stock: &Stocked, out: &mut Vec<Request>) {
    let shop = &stock.shop;
    let is_margin = matches!(shop.profit, Some(Profit::Margin(_)));
    let share = match &shop.profit {
        Some(Profit::Markup(share) | Profit::Margin(share)) => share.hundredths,
        None => 0,
    };
    let most = if is_margin { MOST_MARGIN } else { MOST_MARKUP };
    let as_profit = |share: Written<Percent>, is_margin: bool| {
        Some(if is_margin { Profit::Margin(share) } else { Profit::Markup(share) })
    };
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Profit").color(desk.theme.ink_quiet));
        for (margin, words) in [(false, "on the cost"), (true, "of the price")] {
            if ui.add(Button::new(words).selected(is_margin == margin)).clicked() && is_margin != margin {
                let share = if margin { share.min(MOST_MARGIN) } else { share };
                if let Ok(share) = Written::parse(&percent_words(share)) {
                    changed(out, Shop { profit: as_profit(share, margin), ..shop.clone() }, true);
                }
            }
        }
    });
    let read = |text: &str| {
        let text = text.trim();
        Written::<Percent>::parse(&if text.ends_with('%') { text.to_owned() } else { format!("{text} %") })
    };
    let reading = Reading { read: &read, step: None, doubt: None };
    let entry = Entry::named("Share", "Share of profit");
    if let Some(share) = entry::show(ui, desk.theme, &entry, &percent_words(share), &reading) {
        changed(out, Shop { profit: as_profit(share, is_margin), ..shop.clone() }, true);
    }
    if let Some((value, keep)) = slide(ui, desk, "Profit, by the slider", share / 100, most / 100)
        && let Ok(share) = Written::parse(&format!("{value} %"))
    {
        changed(out, Shop { profit: as_profit(share, is_margin), ..shop.clone() }, keep);
    }
}

/// What money is called.
fn others(ui: &mut Ui, desk: &Desk<'_>, stock: &Stocked, out: &mut Vec<Request>) {
    let read = |text: &str| Ok(Some(text.trim().to_owned()).filter(|text| !text.is_empty()));
    let entry = Entry::new("Currency").hint("EUR");
    let reading = Reading { read: &read, step: None, doubt: None };
    let now = stock.shop.currency.as_deref().unwrap_or("");
    if let Some(currency) = entry::show(ui, desk.theme, &entry, now, &reading) {
        changed(out, Shop { currency, ..stock.shop.clone() }, true);
    }
    let hint = "Overheads, fuel, tax, deposit and the words of the quote are in the file of the shop's figures.";
    ui.label(RichText::new(hint).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
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
    }
}
