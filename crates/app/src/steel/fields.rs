//! Fields of the smith's own files: each may be left empty, and is then left out.

use crate::state::Desk;
use crate::widgets::entry::{self, Entry, Reading};
use egui::Ui;
use fh_core::material;
use fh_core::plan::PlanUnit;
use fh_measure::{LengthRange, WrittenLength};
use fh_rack::said::money::MOST_DECIMALS;
use fh_rack::said::percent::Percent;
use fh_rack::said::price::Price;
use fh_rack::said::written::{Said, Written};
use std::ops::RangeInclusive;

/// What parts several things in one field.
const PARTS: char = ';';

/// A field that reads its text so; empty, it reads none.
fn read_or_none<T>(
    ui: &mut Ui,
    desk: &Desk<'_>,
    entry: &Entry<'_>,
    now: &str,
    read: &dyn Fn(&str) -> Result<T, String>,
) -> Option<Option<T>> {
    let read = |text: &str| match text.trim() {
        "" => Ok(None),
        text => read(text).map(Some),
    };
    entry::show(ui, desk.theme, entry, now, &Reading { read: &read, step: None, doubt: None })
}

/// A button no wider than its words, also in a column; whether it was pressed.
pub(super) fn button(ui: &mut Ui, words: &str, name: &str, tip: &str) -> bool {
    ui.horizontal(|ui| {
        let button = ui.button(words).accessible_name(name);
        if tip.is_empty() { button } else { button.on_hover_text(tip) }.clicked()
    })
    .inner
}

/// Words.
pub(super) fn words(ui: &mut Ui, desk: &Desk<'_>, entry: &Entry<'_>, now: Option<&str>) -> Option<Option<String>> {
    read_or_none(ui, desk, entry, now.unwrap_or(""), &|text| Ok(text.to_owned()))
}

/// Words that stand in every case; empty they are empty.
pub(super) fn title(ui: &mut Ui, desk: &Desk<'_>, entry: &Entry<'_>, now: &str) -> Option<String> {
    words(ui, desk, entry, Some(now)).map(Option::unwrap_or_default)
}

/// A quantity as it is said.
pub(super) fn said<T: Said>(
    ui: &mut Ui,
    desk: &Desk<'_>,
    entry: &Entry<'_>,
    now: Option<&Written<T>>,
) -> Option<Option<Written<T>>> {
    read_or_none(ui, desk, entry, now.map_or("", |now| now.text()), &Written::parse)
}

/// A share; its sign may be left out.
pub(super) fn share(
    ui: &mut Ui,
    desk: &Desk<'_>,
    entry: &Entry<'_>,
    now: Option<&Written<Percent>>,
) -> Option<Option<Written<Percent>>> {
    let read = |text: &str| Written::parse(&if text.ends_with('%') { text.to_owned() } else { format!("{text} %") });
    read_or_none(ui, desk, entry, now.map_or("", |now| now.text()), &read)
}

/// What steel is sold by in the plan's units, and a price of it as an example.
pub(super) fn by_mass(desk: &Desk<'_>) -> (&'static str, &'static str) {
    match desk.document.plan().units.length {
        PlanUnit::Inch => ("per lb", "0.85 per lb"),
        PlanUnit::Millimeter => ("per kg", "1.85 per kg"),
    }
}

/// A price for one of a few things; `usual` is what it is for where that is left out.
pub(super) fn price(
    ui: &mut Ui,
    desk: &Desk<'_>,
    entry: &Entry<'_>,
    now: Option<&Written<Price>>,
    usual: &str,
) -> Option<Option<Written<Price>>> {
    let read = |text: &str| {
        let is_bare = !text.contains("per ") && !text.ends_with("each");
        Written::parse(&if is_bare { format!("{text} {usual}") } else { text.to_owned() })
    };
    read_or_none(ui, desk, entry, now.map_or("", |now| now.text()), &read)
}

/// A length; without a unit it is in the plan's.
pub(super) fn length(
    ui: &mut Ui,
    desk: &Desk<'_>,
    entry: &Entry<'_>,
    now: Option<&WrittenLength>,
    range: LengthRange,
) -> Option<Option<WrittenLength>> {
    let unit = desk.document.plan().units.length.length_unit();
    let read = |text: &str| WrittenLength::parse(text, Some(unit), range).map_err(|error| error.to_string());
    read_or_none(ui, desk, entry, now.map_or("", WrittenLength::text), &read)
}

/// A whole number.
pub(super) fn whole(
    ui: &mut Ui,
    desk: &Desk<'_>,
    entry: &Entry<'_>,
    now: Option<u32>,
    range: RangeInclusive<u32>,
) -> Option<Option<u32>> {
    let read = |text: &str| {
        let number = text.parse::<u32>().ok().filter(|number| range.contains(number));
        let (from, to) = (range.start(), range.end());
        number.ok_or_else(|| format!("“{text}” isn't a number for this. Write a whole number from {from} to {to}."))
    };
    read_or_none(ui, desk, entry, &now.map_or_else(String::new, |now| now.to_string()), &read)
}

/// The name of a currency and, beside it, how many figures stand behind its point. `whose` is what they hold for.
pub(super) fn currency(
    ui: &mut Ui,
    desk: &Desk<'_>,
    (label, whose): (&str, &str),
    hint: &str,
    (name, decimals): (Option<&str>, Option<u8>),
) -> Option<(Option<String>, Option<u8>)> {
    let mut chosen = None;
    let spoken = format!("Currency{whose}");
    if let Some(name) = words(ui, desk, &Entry::named(label, &spoken).hint(hint), name) {
        chosen = Some((name, decimals));
    }
    // Of money that nobody named there is nothing to say.
    if name.is_none() && decimals.is_none() {
        return chosen;
    }
    let spoken = format!("Figures behind the point{whose}");
    let entry = Entry::named("Decimals", &spoken).hint("2");
    let range = 0..=u32::from(MOST_DECIMALS);
    if let Some(figures) = whole(ui, desk, &entry, decimals.map(u32::from), range) {
        chosen = Some((name.map(str::to_owned), figures.and_then(|figures| u8::try_from(figures).ok())));
    }
    chosen
}

/// What the shop counts in: files that name no currency count in it too.
pub(super) fn shop_currency(desk: &Desk<'_>) -> String {
    let named = desk.steel.stock.as_ref().and_then(|stock| stock.shop.now.currency.clone());
    named.unwrap_or_else(|| "EUR".to_owned())
}

/// Several things, a semicolon between them.
pub(super) fn several<T>(
    ui: &mut Ui,
    desk: &Desk<'_>,
    entry: &Entry<'_>,
    now: &str,
    read_one: &dyn Fn(&str) -> Result<T, String>,
) -> Option<Vec<T>> {
    let read = |text: &str| {
        let parts = text.split(PARTS).map(str::trim).filter(|part| !part.is_empty());
        parts.map(read_one).collect::<Result<Vec<T>, String>>()
    };
    entry::show(ui, desk.theme, entry, now, &Reading { read: &read, step: None, doubt: None })
}

/// Several things as they stand in their field.
pub(super) fn joined<'a>(all: impl IntoIterator<Item = &'a str>) -> String {
    all.into_iter().collect::<Vec<_>>().join("; ")
}

/// Several lines of words.
pub(super) fn lines(ui: &mut Ui, desk: &Desk<'_>, entry: &Entry<'_>, now: &[String]) -> Option<Vec<String>> {
    several(ui, desk, entry, &joined(now.iter().map(String::as_str)), &|text| Ok(text.to_owned()))
}

/// A material of the table.
pub(super) fn material(ui: &mut Ui, desk: &Desk<'_>, now: Option<&str>) -> Option<Option<String>> {
    let read = |text: &str| {
        let known = material::find(text).map(|known| known.name.to_owned());
        known.ok_or_else(|| format!("“{text}” isn't a material that the program knows"))
    };
    read_or_none(ui, desk, &Entry::new("Material").hint(material::DEFAULT.name), now.unwrap_or(""), &read)
}
