//! The chosen line of the rack with its fields, and the bookings that can be undone.

use super::fields::{by_mass, length, material, price, words};
use crate::state::steel::Stocked;
use crate::state::{Desk, RackAsk, Request, SteelAsk};
use crate::theme::{Text, space};
use crate::widgets::entry::{self, Entry, Reading};
use crate::widgets::heading;
use egui::{RichText, ScrollArea, Ui};
use fh_measure::LengthRange;
use fh_rack::kept::rack::RackBar;
use fh_rack::said::bar::SaidBar;
use fh_rack::said::written::{Said, Written};

/// The most bookings that are listed.
const MOST_BOOKINGS: usize = 5;

/// Shows the chosen line.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, stock: &Stocked, out: &mut Vec<Request>) {
    ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
        if let Some(bar) = stock.rack.now.bars.get(desk.steel.line.unwrap_or(0)) {
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
    let entry = Entry::new("Measured").hint("as it is called");
    if let Some(measured) = length(ui, desk, &entry, bar.measured.as_ref(), LengthRange::AboveZero) {
        changed(RackBar { measured, ..bar.clone() });
    }
    if let Some(end) = length(ui, desk, &Entry::new("Bad end").hint("none"), bar.end.as_ref(), LengthRange::ZeroOrMore)
    {
        changed(RackBar { end, ..bar.clone() });
    }
    if let Some(material) = material(ui, desk, bar.material.as_deref()) {
        changed(RackBar { material, ..bar.clone() });
    }
    if let Some(lies) = words(ui, desk, &Entry::new("Where"), bar.lies.as_deref()) {
        changed(RackBar { lies, ..bar.clone() });
    }
    let (usual, example) = by_mass(desk);
    if let Some(price) = price(ui, desk, &Entry::new("Price").hint(example), bar.price.as_ref(), usual) {
        changed(RackBar { price, ..bar.clone() });
    }
    if let Some(note) = words(ui, desk, &Entry::new("Note"), bar.note.as_deref()) {
        changed(RackBar { note, ..bar.clone() });
    }
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
    let booked: Vec<_> =
        stock.rack.now.booked.iter().rev().filter(|booking| !booking.undone).take(MOST_BOOKINGS).collect();
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
