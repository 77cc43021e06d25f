//! The shop's ways of cutting and its finishes.

use super::fields::{button, length, price, said, title};
use crate::state::Desk;
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::heading;
use egui::{RichText, Ui};
use fh_measure::{LengthRange, WrittenLength};
use fh_rack::kept::shop::{Cutting, Finish, Shop};
use fh_rack::said::written::Written;

/// The ways of cutting; the first is taken where nothing else is said.
pub(super) fn ways(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, take: &mut dyn FnMut(Shop)) {
    ui.label(RichText::new("Ways of cutting").text_style(Text::Heading.style()).color(desk.theme.ink));
    let hint = "The first is taken where nothing else is said. Measure your own.";
    ui.label(RichText::new(hint).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
    for (at, way) in shop.cutting.iter().enumerate() {
        egui::CollapsingHeader::new(format!("{}, {}", way.name, way.kerf.text())).id_salt(("way", at)).show(ui, |ui| {
            let mut put = |next: Option<Cutting>| take(with(shop, at, next));
            if let Some(way) = fields(ui, desk, way) {
                put(Some(way));
            }
            ui.horizontal_wrapped(|ui| {
                if at > 0 && ui.button("Take it first").accessible_name(format!("Take {} first", way.name)).clicked() {
                    let mut next = shop.clone();
                    let way = next.cutting.remove(at);
                    next.cutting.insert(0, way);
                    take(next);
                }
                if ui.button("Remove").accessible_name(format!("Remove {}", way.name)).clicked() {
                    take(with(shop, at, None));
                }
            });
        });
    }
    if button(ui, "Add a way", "Add a way", "")
        && let Ok(kerf) = WrittenLength::parse("2 mm", None, LengthRange::ZeroOrMore)
    {
        let mut next = shop.clone();
        next.cutting.push(Cutting { name: "another saw".to_owned(), kerf, time: None, hold: None });
        take(next);
    }
}

fn with(shop: &Shop, at: usize, way: Option<Cutting>) -> Shop {
    let mut next = shop.clone();
    match way {
        Some(way) => next.cutting[at] = way,
        None => drop(next.cutting.remove(at)),
    }
    next
}

fn fields(ui: &mut Ui, desk: &Desk<'_>, way: &Cutting) -> Option<Cutting> {
    let name = title(ui, desk, &Entry::named("Name", "Name of the way of cutting"), &way.name);
    let kerf = length(
        ui,
        desk,
        &Entry::named("A cut takes", "Metal that a cut takes"),
        Some(&way.kerf),
        LengthRange::ZeroOrMore,
    );
    let time = said(ui, desk, &Entry::named("Time", "Time of a cut").hint("1 min"), way.time.as_ref());
    let hold = length(
        ui,
        desk,
        &Entry::named("Held", "Length held to the last").hint("cut cold"),
        way.hold.as_ref(),
        LengthRange::AboveZero,
    );
    let is_changed = name.is_some() || kerf.is_some() || time.is_some() || hold.is_some();
    is_changed.then(|| Cutting {
        name: name.unwrap_or_else(|| way.name.clone()),
        kerf: kerf.flatten().unwrap_or_else(|| way.kerf.clone()),
        time: time.unwrap_or_else(|| way.time.clone()),
        hold: hold.unwrap_or_else(|| way.hold.clone()),
    })
}

/// The finishes and their prices.
pub(super) fn finishes(ui: &mut Ui, desk: &Desk<'_>, shop: &Shop, take: &mut dyn FnMut(Shop)) {
    heading::show(ui, desk.theme, "Finishes");
    for (at, finish) in shop.finishes.iter().enumerate() {
        ui.push_id(("finish", at), |ui| {
            let mut next = shop.clone();
            if let Some(name) = title(ui, desk, &Entry::named("Name", "Name of the finish"), &finish.name) {
                next.finishes[at].name = name;
                take(next.clone());
            }
            let entry = Entry::named("Price", "Price of the finish").hint("2.50 per kg");
            if let Some(Some(price)) = price(ui, desk, &entry, Some(&finish.price), "per kg") {
                next.finishes[at].price = price;
                take(next.clone());
            }
            if button(ui, "Remove", &format!("Remove {}", finish.name), "") {
                next.finishes.remove(at);
                take(next);
            }
        });
        ui.add_space(space::TIGHT);
    }
    if button(ui, "Add a finish", "Add a finish", "")
        && let Ok(price) = Written::parse("2.50 per kg")
    {
        let mut next = shop.clone();
        next.finishes.push(Finish { name: "oil".to_owned(), price });
        take(next);
    }
}
