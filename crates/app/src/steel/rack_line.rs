//! The chosen line of the rack with its fields, and the bookings that can be undone.

use crate::state::steel::Stocked;
use crate::state::{Desk, RackAsk, Request, SteelAsk};
use crate::theme::{Text, space};
use crate::widgets::entry::{self, Entry, Reading};
use crate::widgets::heading;
use egui::{RichText, ScrollArea, Ui};
use fh_core::material;
use fh_measure::{LengthRange, WrittenLength};
use fh_rack::kept::rack::RackBar;
use fh_rack::said::bar::SaidBar;
use fh_rack::said::price::Price;
use fh_rack::said::written::{Said, Written};

/// The most bookings that are listed.
const MOST_BOOKINGS: usize = 5;

/// Shows the chosen line.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, stock: &Stocked, out: &mut Vec<Request>) {
    ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
        if let Some(bar) = stock.rack.bars.get(desk.steel.line.unwrap_or(0)) {
            let line = desk.steel.line.unwrap_or(0);
            ui.push_id(("rack line", line), |ui| {
                ui.label(RichText::new("The chosen bars").text_style(Text::Heading.style()).color(desk.theme.ink));
                ui.add_space(space::TIGHT);
                fields(ui, desk, bar, out);
                ui.add_space(space::GAP);
                buttons(ui, bar, out);
            });
        }
        undo(ui, desk, stock, out);
    });
}

fn fields(ui: &mut Ui, desk: &Desk<'_>, bar: &RackBar, out: &mut Vec<Request>) {
    let mut changed = |new: RackBar| {
        out.push(Request::Steel(SteelAsk::Rack(RackAsk::Change(Box::new(bar.clone()), Box::new(new)))));
    };
    let read = |text: &str| SaidBar::parse(text).map(Written);
    let step = |steps| Some(Written(bar.bar.with_count(bar.bar.count.checked_add_signed(steps)?.max(1))));
    let reading = Reading { read: &read, step: Some(&step as &dyn Fn(i32) -> Option<Written<SaidBar>>), doubt: None };
    if let Some(said) = entry::show(ui, desk.theme, &Entry::new("Bars"), bar.bar.text(), &reading) {
        changed(RackBar { bar: said, ..bar.clone() });
    }
    if let Some(measured) =
        length(ui, desk, "Measured", "as it is called", bar.measured.as_ref(), LengthRange::AboveZero)
    {
        changed(RackBar { measured, ..bar.clone() });
    }
    if let Some(end) = length(ui, desk, "Bad end", "none", bar.end.as_ref(), LengthRange::ZeroOrMore) {
        changed(RackBar { end, ..bar.clone() });
    }
    let known = |text: &str| material::find(text).map(|known| Some(known.name.to_owned()));
    let read = |text: &str| match text.trim() {
        "" => Ok(None),
        text => known(text).ok_or_else(|| format!("“{text}” isn't a material that the program knows")),
    };
    let hint = Entry::new("Material").hint(material::DEFAULT.name);
    let reading = Reading { read: &read, step: None, doubt: None };
    if let Some(material) = entry::show(ui, desk.theme, &hint, bar.material.as_deref().unwrap_or(""), &reading) {
        changed(RackBar { material, ..bar.clone() });
    }
    if let Some(lies) = words(ui, desk, "Lies", bar.lies.as_deref()) {
        changed(RackBar { lies, ..bar.clone() });
    }
    let read = |text: &str| match text.trim() {
        "" => Ok(None),
        text => Written::<Price>::parse(text).map(Some),
    };
    let reading = Reading { read: &read, step: None, doubt: None };
    let price = bar.price.as_ref().map_or("", |price| price.text());
    if let Some(price) = entry::show(ui, desk.theme, &Entry::new("Price").hint("1.85 per kg"), price, &reading) {
        changed(RackBar { price, ..bar.clone() });
    }
    if let Some(note) = words(ui, desk, "Note", bar.note.as_deref()) {
        changed(RackBar { note, ..bar.clone() });
    }
}

/// A length that may be left out.
fn length(
    ui: &mut Ui,
    desk: &Desk<'_>,
    label: &str,
    hint: &str,
    now: Option<&WrittenLength>,
    range: LengthRange,
) -> Option<Option<WrittenLength>> {
    let unit = desk.document.plan().units.length.length_unit();
    let read = |text: &str| match text.trim() {
        "" => Ok(None),
        text => WrittenLength::parse(text, Some(unit), range).map(Some).map_err(|error| error.to_string()),
    };
    let now = now.map_or("", WrittenLength::text);
    entry::show(ui, desk.theme, &Entry::new(label).hint(hint), now, &Reading { read: &read, step: None, doubt: None })
}

/// Words that may be left out.
fn words(ui: &mut Ui, desk: &Desk<'_>, label: &str, now: Option<&str>) -> Option<Option<String>> {
    let read = |text: &str| Ok(Some(text.trim().to_owned()).filter(|text| !text.is_empty()));
    entry::show(
        ui,
        desk.theme,
        &Entry::new(label),
        now.unwrap_or(""),
        &Reading { read: &read, step: None, doubt: None },
    )
}

fn buttons(ui: &mut Ui, bar: &RackBar, out: &mut Vec<Request>) {
    let mut ask = |ask: RackAsk| out.push(Request::Steel(SteelAsk::Rack(ask)));
    ui.horizontal_wrapped(|ui| {
        if ui.button("Take one").on_hover_text("One of them is used.").clicked() {
            ask(RackAsk::Take(Box::new(bar.with_count(1))));
        }
        if ui.button("One more").on_hover_text("One more of them is on hand.").clicked() {
            ask(RackAsk::Put(Box::new(bar.with_count(1))));
        }
        if ui.button("Remove").on_hover_text("Take all of this line off the rack (Delete).").clicked() {
            ask(RackAsk::Take(Box::new(bar.clone())));
        }
    });
}

/// The last change, and the bookings that stand.
fn undo(ui: &mut Ui, desk: &Desk<'_>, stock: &Stocked, out: &mut Vec<Request>) {
    let theme = desk.theme;
    let booked: Vec<_> = stock.rack.booked.iter().rev().filter(|booking| !booking.undone).take(MOST_BOOKINGS).collect();
    if booked.is_empty() {
        return;
    }
    ui.add_space(space::GAP);
    heading::show(ui, theme, "Booked cut lists");
    for booking in booked {
        let count = |bars: &[RackBar]| bars.iter().map(|bar| u64::from(bar.bar.count)).sum::<u64>();
        let words = format!(
            "{}: {}; {} off the rack, {} put on it",
            booking.number,
            fh_core::describe::short_name(&booking.what),
            count(&booking.took),
            count(&booking.back)
        );
        ui.label(words);
        if ui.button(format!("Undo booking {}", booking.number)).clicked() {
            out.push(Request::Steel(SteelAsk::Rack(RackAsk::Unbook(booking.number))));
        }
    }
}
