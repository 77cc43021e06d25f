//! The merchant's list: what can be bought, in which lengths, and at what price.

use super::fields::{by_mass, currency, joined, length, price, several, shop_currency, whole, words};
use super::{in_the_middle, side};
use crate::state::steel::Stocked;
use crate::state::{Desk, Request, SteelAsk};
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::table::{self, Column, Line, keep_keyboard, take_keyboard};
use egui::{Panel, RichText, ScrollArea, Ui};
use fh_core::material;
use fh_measure::{LengthRange, WrittenLength};
use fh_rack::kept::merchant::{Merchant, MerchantLine};
use fh_rack::said::section::SaidSection;
use fh_rack::said::written::{Said, Written};

/// The width of the panel beside it, in points at normal text size, and its share of the window at most.
const BESIDE: f32 = 340.0;
const MOST_OF_WIDTH: f32 = 0.36;
/// The most bars of one line.
const MOST_BARS: u32 = 1_000_000;

const COLUMNS: [Column; 5] = [
    Column::words("Sections", 3.0),
    Column::words("Material", 1.2),
    Column::words("Lengths", 1.2),
    Column::figures("Price", 1.3),
    Column::words("Delivery", 1.0),
];

/// Shows it.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let Some(stock) = &desk.steel.stock else { return };
    let (theme, merchant) = (desk.theme, &stock.merchant.now);
    if let Some(why) = &stock.merchant.broken {
        in_the_middle(ui, theme, |ui| {
            let words = format!(
                "■ The merchant's list cannot be read, and is left as it is: {why} Correct the file; it is then read again."
            );
            ui.label(RichText::new(words).color(theme.stop));
        });
        return;
    }
    let width = theme.scaled(BESIDE).min((ui.available_width() * MOST_OF_WIDTH).round());
    let panel = Panel::right("merchant line").resizable(false).exact_size(width).frame(side(theme));
    panel.show(ui, |ui| {
        ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
            whole_list(ui, desk, merchant, out);
            chosen(ui, desk, stock, out);
        });
    });
    in_the_middle(ui, theme, |ui| {
        ui.horizontal_wrapped(|ui| {
            if ui
                .button("Add a line")
                .on_hover_text("Sections that are sold in the same lengths at the same price.")
                .clicked()
            {
                add(merchant, out);
            }
            let unpriced = merchant.bars.iter().filter(|line| line.price.is_none()).count();
            if unpriced > 0 {
                let words =
                    format!("{unpriced} of {} lines have no price: that steel is not in a quote.", merchant.bars.len());
                ui.label(RichText::new(words).color(theme.ink_quiet));
            }
        });
        ui.add_space(space::TIGHT);
        lines(ui, desk, merchant, out);
    });
}

fn change(out: &mut Vec<Request>, next: Merchant) {
    out.push(Request::Steel(SteelAsk::Merchant(Box::new(next))));
}

fn add(merchant: &Merchant, out: &mut Vec<Request>) {
    let (section, length) =
        (Written::<SaidSection>::parse("12 mm square"), WrittenLength::parse("6 m", None, LengthRange::AboveZero));
    if let (Ok(section), Ok(length)) = (section, length) {
        let line = MerchantLine {
            sections: vec![section],
            material: None,
            lengths: vec![length],
            price: None,
            at_most: None,
            end: None,
            lead: None,
            note: None,
        };
        let mut next = merchant.clone();
        next.bars.push(line);
        out.push(Request::Steel(SteelAsk::Ware(next.bars.len() - 1)));
        change(out, next);
    }
}

fn lines(ui: &mut Ui, desk: &Desk<'_>, merchant: &Merchant, out: &mut Vec<Request>) {
    let theme = desk.theme;
    table::head(ui, theme, &COLUMNS);
    ui.spacing_mut().item_spacing.y = 0.0;
    ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
        for (index, line) in merchant.bars.iter().enumerate() {
            let is_chosen = desk.steel.ware == index;
            let cells = cells(line);
            let line = Line { cells: &cells, name: &cells.join(", "), is_chosen, ink: theme.ink, is_strong: false };
            let response = table::show(ui, theme, &COLUMNS, &line);
            if is_chosen && take_keyboard(ui) {
                response.request_focus();
                response.scroll_to_me(None);
            }
            if response.clicked() {
                response.request_focus();
                out.push(Request::Steel(SteelAsk::Ware(index)));
            }
            if let Some(to) = table::step(ui, &response, index, merchant.bars.len()) {
                keep_keyboard(ui);
                out.push(Request::Steel(SteelAsk::Ware(to)));
            }
        }
    });
}

fn cells(line: &MerchantLine) -> [String; 5] {
    let sections = match line.sections.as_slice() {
        [first, .., last] => format!("{} to {}, {} sizes", first.text(), last.text(), line.sections.len()),
        [one] => one.text().to_owned(),
        [] => "no section".to_owned(),
    };
    [
        sections,
        line.material.clone().unwrap_or_else(|| material::DEFAULT.name.to_owned()),
        line.lengths.iter().map(WrittenLength::text).collect::<Vec<_>>().join(", "),
        line.price.as_ref().map_or_else(String::new, |price| price.text().to_owned()),
        line.lead.clone().unwrap_or_default(),
    ]
}

/// What holds for the whole list, and one price for all of it.
fn whole_list(ui: &mut Ui, desk: &Desk<'_>, merchant: &Merchant, out: &mut Vec<Request>) {
    ui.label(RichText::new("The list").text_style(Text::Heading.style()).color(desk.theme.ink));
    if let Some(name) = words(ui, desk, &Entry::named("Whose", "Whose list it is"), merchant.name.as_deref()) {
        change(out, Merchant { name, ..merchant.clone() });
    }
    let now = (merchant.currency.as_deref(), merchant.decimals);
    let hint = shop_currency(desk);
    if let Some((currency, decimals)) = currency(ui, desk, ("Currency", " of the list"), &hint, now) {
        change(out, Merchant { currency, decimals, ..merchant.clone() });
    }
    let first = merchant.bars.first().and_then(|line| line.price.as_ref());
    let one = first.filter(|first| merchant.bars.iter().all(|line| line.price.as_ref() == Some(first)));
    let (usual, example) = by_mass(desk);
    let hint = if first.is_some() { "not all the same" } else { example };
    let entry = Entry::named("Price of all", "One price for the whole list").hint(hint);
    if let Some(Some(price)) = price(ui, desk, &entry, one, usual) {
        let mut next = merchant.clone();
        next.bars.iter_mut().for_each(|line| line.price = Some(price.clone()));
        change(out, next);
    }
}

/// The fields of the chosen line.
fn chosen(ui: &mut Ui, desk: &Desk<'_>, stock: &Stocked, out: &mut Vec<Request>) {
    let (merchant, at) = (&stock.merchant.now, desk.steel.ware);
    let Some(line) = merchant.bars.get(at) else { return };
    ui.add_space(space::GAP);
    ui.label(RichText::new("The chosen line").text_style(Text::Heading.style()).color(desk.theme.ink));
    ui.push_id(("merchant line", at), |ui| {
        let mut take = |line: MerchantLine| {
            let mut next = merchant.clone();
            next.bars[at] = line;
            change(out, next);
        };
        sold(ui, desk, line, &mut take);
        known(ui, desk, line, &mut take);
        if ui.button("Remove").accessible_name("Remove the chosen line").clicked() {
            let mut next = merchant.clone();
            next.bars.remove(at);
            change(out, next);
        }
    });
    let hint = "Several sections or lengths in one field: a semicolon between them.";
    ui.label(RichText::new(hint).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
}

/// What is sold, and at what price.
fn sold(ui: &mut Ui, desk: &Desk<'_>, line: &MerchantLine, take: &mut dyn FnMut(MerchantLine)) {
    let sections = joined(line.sections.iter().map(|said| said.text()));
    let at_least_one = |text: &str| Written::<SaidSection>::parse(text);
    if let Some(sections) = several(ui, desk, &Entry::new("Sections"), &sections, &at_least_one) {
        take(MerchantLine { sections, ..line.clone() });
    }
    let unit = desk.document.plan().units.length.length_unit();
    let read =
        |text: &str| WrittenLength::parse(text, Some(unit), LengthRange::AboveZero).map_err(|error| error.to_string());
    let lengths = joined(line.lengths.iter().map(WrittenLength::text));
    if let Some(lengths) = several(ui, desk, &Entry::new("Lengths").hint("6 m; 3 m"), &lengths, &read) {
        take(MerchantLine { lengths, ..line.clone() });
    }
    let (usual, example) = by_mass(desk);
    if let Some(price) = price(ui, desk, &Entry::new("Price").hint(example), line.price.as_ref(), usual) {
        take(MerchantLine { price, ..line.clone() });
    }
}

/// What else is known of it.
fn known(ui: &mut Ui, desk: &Desk<'_>, line: &MerchantLine, take: &mut dyn FnMut(MerchantLine)) {
    if let Some(material) = super::fields::material(ui, desk, line.material.as_deref()) {
        take(MerchantLine { material, ..line.clone() });
    }
    if let Some(lead) = words(ui, desk, &Entry::new("Delivery").hint("2 days"), line.lead.as_deref()) {
        take(MerchantLine { lead, ..line.clone() });
    }
    if let Some(end) = length(ui, desk, &Entry::new("Bad end").hint("none"), line.end.as_ref(), LengthRange::ZeroOrMore)
    {
        take(MerchantLine { end, ..line.clone() });
    }
    if let Some(at_most) =
        whole(ui, desk, &Entry::new("At most").hint("as many as wanted"), line.at_most, 0..=MOST_BARS)
    {
        take(MerchantLine { at_most, ..line.clone() });
    }
    if let Some(note) = words(ui, desk, &Entry::new("Note"), line.note.as_deref()) {
        take(MerchantLine { note, ..line.clone() });
    }
}
