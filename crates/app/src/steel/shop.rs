//! The shop's figures: what an hour costs, what the fire takes, ways of cutting, finishes, and what is put on.

use super::fields::{currency, length, lines, price, said, share, title, whole, words};
use super::shop_lists::{finishes, ways};
use super::{in_the_middle, rate};
use crate::state::{Desk, Request, SteelAsk};
use crate::theme::Text;
use crate::widgets::entry::Entry;
use crate::widgets::{chooser, heading};
use egui::{RichText, ScrollArea, Ui};
use fh_measure::LengthRange;
use fh_rack::kept::shop::{Hours, Overhead, Shop, Tax};
use fh_rack::said::money::WrittenMoney;

/// The least width of a column, in points at normal text size.
const COLUMN: f32 = 300.0;
/// The hours billed in a year, where none were given yet: common practice, no source.
const BILLED: u32 = 1_200;
/// The most hours that are billed in a year, and irons that lie in a fire.
const MOST_BILLED: u32 = 10_000;
const MOST_IRONS: u32 = 20;

/// Shows them, in as many columns as there is room for.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(stock) = &desk.steel.stock else { return };
    in_the_middle(ui, desk.theme, |ui| {
        if let Some(why) = &stock.shop.broken {
            let words = format!(
                "■ The file of the shop's figures cannot be read, and is left as it is: {why} Correct the file; it is then read again."
            );
            ui.label(RichText::new(words).color(desk.theme.stop));
            return;
        }
        let shop = &stock.shop.now;
        let count = ((ui.available_width() / desk.theme.scaled(COLUMN)) as usize).clamp(1, 3);
        ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
            ui.columns(count, |columns| {
                let mut take = |next: Shop| out.push(Request::Steel(SteelAsk::Shop(Box::new(next), true)));
                hours(&mut columns[0], desk, shop, &mut take);
                on_top(&mut columns[1.min(count - 1)], desk, shop, &mut take);
                papers(&mut columns[1.min(count - 1)], desk, shop, &mut take);
                ways(&mut columns[count - 1], desk, shop, &mut take);
                finishes(&mut columns[count - 1], desk, shop, &mut take);
            });
        });
    });
}

fn head(ui: &mut Ui, desk: &Desk<'_>, words: &str) {
    ui.label(RichText::new(words).text_style(Text::Heading.style()).color(desk.theme.ink));
}

/// What an hour costs, and what the fire takes.
fn hours(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, take: &mut dyn FnMut(Shop)) {
    head(ui, desk, "An hour");
    if let Some(rate) = rate::field(ui, desk, shop) {
        take(Shop { rate, ..shop.clone() });
    }
    let of = |ui: &mut Ui, label: &str, name: &str, hint: &str, now| {
        price(ui, desk, &Entry::named(label, name).hint(hint), now, "per hour")
    };
    if let Some(striker) = of(ui, "Striker", "What an hour of a striker costs", "18.00 per hour", shop.striker.as_ref())
    {
        take(Shop { striker, ..shop.clone() });
    }
    if let Some(fuel) = of(ui, "Fuel", "Fuel for an hour of fire", "4.00 per hour", shop.fuel.as_ref()) {
        take(Shop { fuel, ..shop.clone() });
    }
    if let Some(consumables) =
        of(ui, "Consumables", "Discs, flux and oil for an hour", "1.50 per hour", shop.consumables.as_ref())
    {
        take(Shop { consumables, ..shop.clone() });
    }
    overheads(ui, desk, shop, take);
    heading::show(ui, desk.theme, "The fire");
    if let Some(heat_up) =
        said(ui, desk, &Entry::named("A heat takes", "How long a heat takes").hint("4 min"), shop.heat_up.as_ref())
    {
        take(Shop { heat_up, ..shop.clone() });
    }
    if let Some(irons) =
        whole(ui, desk, &Entry::named("Irons", "Irons in the fire at once").hint("1"), shop.irons, 1..=MOST_IRONS)
    {
        take(Shop { irons, ..shop.clone() });
    }
    if let Some(setup) =
        said(ui, desk, &Entry::named("Setting up", "Setting up, once for a job").hint("none"), shop.setup.as_ref())
    {
        take(Shop { setup, ..shop.clone() });
    }
    let entry = Entry::named("Learning", "Learning: time left per piece each time the count doubles").hint("100 %");
    if let Some(learning) = share(ui, desk, &entry, shop.learning.as_ref()) {
        take(Shop { learning, ..shop.clone() });
    }
    let choices = [(Hours::Low, "the least"), (Hours::Likely, "the likely ones"), (Hours::High, "the most")]
        .map(|(hours, words)| (hours, words.to_owned()));
    let now = shop.hours.unwrap_or_default();
    if let Some(hours) = chooser::show(ui, desk.theme, "Hours taken", "Which hours are taken", now, &choices) {
        take(Shop { hours: Some(hours), ..shop.clone() });
    }
}

/// What the shop costs in a year, over the hours that are billed.
fn overheads(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, take: &mut dyn FnMut(Shop)) {
    let entry = Entry::named("Overheads", "Overheads in a year").hint("12000");
    let yearly = shop.overhead.as_ref().map(|all| &all.yearly);
    if let Some(yearly) = said::<WrittenMoney>(ui, desk, &entry, yearly) {
        let hours = shop.overhead.as_ref().map_or(BILLED, |all| all.hours);
        take(Shop { overhead: yearly.map(|yearly| Overhead { yearly, hours }), ..shop.clone() });
    }
    if let Some(overhead) = &shop.overhead {
        let entry = Entry::named("Over", "Hours billed in a year");
        if let Some(Some(hours)) = whole(ui, desk, &entry, Some(overhead.hours), 1..=MOST_BILLED) {
            take(Shop { overhead: Some(Overhead { hours, ..overhead.clone() }), ..shop.clone() });
        }
    }
}

/// What is put on the cost.
fn on_top(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, take: &mut dyn FnMut(Shop)) {
    head(ui, desk, "On the cost");
    let entry = Entry::named("Contingency", "What is added for contingency").hint("none");
    if let Some(contingency) = share(ui, desk, &entry, shop.contingency.as_ref()) {
        take(Shop { contingency, ..shop.clone() });
    }
    rate::profit(ui, desk, shop, take);
    let entry = Entry::named("Round up to", "What a price is rounded up to").hint("1.00");
    if let Some(round_up_to) = said(ui, desk, &entry, shop.round_up_to.as_ref()) {
        take(Shop { round_up_to, ..shop.clone() });
    }
    tax(ui, desk, shop, take);
    if let Some(deposit) = share(
        ui,
        desk,
        &Entry::named("Deposit", "Deposit when the work is ordered").hint("none"),
        shop.deposit.as_ref(),
    ) {
        take(Shop { deposit, ..shop.clone() });
    }
}

fn tax(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, take: &mut dyn FnMut(Shop)) {
    let entry = Entry::named("Tax", "Rate of the tax").hint("none");
    let now = shop.tax.as_ref();
    if let Some(rate) = share(ui, desk, &entry, now.map(|tax| &tax.rate)) {
        let (name, inclusive) = now.map_or_else(|| ("tax".to_owned(), false), |tax| (tax.name.clone(), tax.inclusive));
        take(Shop { tax: rate.map(|rate| Tax { name, rate, inclusive }), ..shop.clone() });
    }
    let Some(tax) = now else { return };
    if let Some(name) = title(ui, desk, &Entry::named("Called", "Name of the tax"), &tax.name) {
        take(Shop { tax: Some(Tax { name, ..tax.clone() }), ..shop.clone() });
    }
    let mut inclusive = tax.inclusive;
    if ui.checkbox(&mut inclusive, "the rounded price has the tax in it").changed() {
        take(Shop { tax: Some(Tax { inclusive, ..tax.clone() }), ..shop.clone() });
    }
}

/// What stands on the papers.
fn papers(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, take: &mut dyn FnMut(Shop)) {
    heading::show(ui, desk.theme, "On the quote");
    if let Some(name) = words(ui, desk, &Entry::named("Name", "Name at the head of a quote"), shop.name.as_deref()) {
        take(Shop { name, ..shop.clone() });
    }
    let now = (shop.currency.as_deref(), shop.decimals);
    if let Some((currency, decimals)) = currency(ui, desk, ("Currency", ""), "EUR", now) {
        take(Shop { currency, decimals, ..shop.clone() });
    }
    if let Some(valid) = words(
        ui,
        desk,
        &Entry::named("Valid for", "How long the quote is valid").hint("30 days"),
        shop.valid.as_deref(),
    ) {
        take(Shop { valid, ..shop.clone() });
    }
    let entry = Entry::named("Not included", "What no price includes").hint("fixing at the place");
    if let Some(not_included) = lines(ui, desk, &entry, &shop.not_included) {
        take(Shop { not_included, ..shop.clone() });
    }
    if let Some(closing) =
        words(ui, desk, &Entry::named("At the foot", "Words at the foot of a quote"), shop.closing.as_deref())
    {
        take(Shop { closing, ..shop.clone() });
    }
    let entry = Entry::named("Keep from", "Offcuts are kept from this length").hint("none");
    if let Some(keep_from) = length(ui, desk, &entry, shop.keep_from.as_ref(), LengthRange::ZeroOrMore) {
        take(Shop { keep_from, ..shop.clone() });
    }
}
