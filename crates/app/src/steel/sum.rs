//! What the quote comes to, line by line, a column for each count.

use crate::figures;
use crate::state::{Desk, Request, SteelAsk};
use crate::theme::{Text, space};
use crate::widgets::heading;
use crate::widgets::table::{self, Column, Line};
use egui::{Button, Frame, Margin, RichText, Ui};
use fh_rack::kept::shop::{Profit, Shop};
use fh_rack::quote::lines::{Part, sum};
use fh_rack::quote::quoted::{Quote, QuoteFor};
use fh_rack::said::percent::percent_words;
use fh_rack::said::time::time_words;
use fh_rack::said::written::Said;
use uom::si::f64::Mass;
use uom::si::mass::kilogram;

const COLUMNS: [Column; 4] =
    [Column::words("", 1.6), Column::figures("", 1.0), Column::figures("", 1.0), Column::figures("", 1.0)];

/// A line and its amount; what it follows from stands below, no wider than this, in points at normal text size.
const SOURCES: [Column; 2] = [Column::words("", 3.0), Column::figures("", 1.0)];
const SOURCE: f32 = 560.0;

/// Shows it.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, quote: &Quote, out: &mut Vec<Request>) {
    let money = |amount: i64| quote.money.figures(amount);
    // First of all what the figures below leave out.
    if !quote.not_counted.is_empty() {
        ui.label(RichText::new(format!("● {}", quote.not_counted.join(" "))).color(desk.theme.note));
        ui.add_space(space::GAP);
    }
    let all = |what: &dyn Fn(&QuoteFor) -> String| -> Vec<String> { quote.counts.iter().map(what).collect() };
    ui.spacing_mut().item_spacing.y = 0.0;
    let head = all(&|one| format!("{} of the job", one.count));
    line(ui, desk, &quote.money.name, head, true);
    ui.add_space(space::TIGHT);
    for part in [Part::Material, Part::Labour, Part::Expense] {
        line(ui, desk, part.name(), all(&|one| money(sum(&one.lines, part))), false);
    }
    line(ui, desk, "overheads", all(&|one| money(one.asked.overheads)), false);
    line(ui, desk, "contingency", all(&|one| money(one.asked.contingency)), false);
    rule(ui, desk);
    line(ui, desk, "cost", all(&|one| money(one.asked.cost)), true);
    line(ui, desk, "profit", all(&|one| money(one.asked.profit)), false);
    if quote.counts.iter().any(|one| one.asked.discount != 0) {
        line(ui, desk, "discount", all(&|one| money(-one.asked.discount)), false);
    }
    line(ui, desk, "rounding up", all(&|one| money(one.asked.rounding)), false);
    rule(ui, desk);
    line(ui, desk, "price", all(&|one| money(one.asked.price)), true);
    line(ui, desk, "tax", all(&|one| money(one.asked.tax)), false);
    line(ui, desk, "to pay", all(&|one| money(one.asked.total)), true);
    if quote.counts.iter().any(|one| one.asked.deposit != 0) {
        line(ui, desk, "of that when it is ordered", all(&|one| money(one.asked.deposit)), false);
    }
    line(ui, desk, "each", all(&|one| money(one.asked.each)), true);
    rule(ui, desk);
    line(ui, desk, "markup, on the cost", all(&|one| percent_words(one.asked.markup.max(0))), false);
    line(ui, desk, "margin, of the price", all(&|one| percent_words(one.asked.margin.max(0))), false);
    line(ui, desk, "hours that are charged", all(&|one| time_words(one.minutes)), false);
    let range = |one: &QuoteFor| format!("{} to {}", time_words(one.at_the_fire.low), time_words(one.at_the_fire.high));
    line(ui, desk, "of them at the fire", all(&range), false);
    let unit = desk.document.plan().units.length;
    line(ui, desk, "weighs, forged", all(&|one| figures::mass(Mass::new::<kilogram>(one.mass_kg), unit)), false);
    sources(ui, desk, quote, out);
    ui.add_space(space::GROUP);
}

/// Line by line, for one of the counts, what each figure follows from.
fn sources(ui: &mut Ui, desk: &Desk<'_>, quote: &Quote, out: &mut Vec<Request>) {
    let theme = desk.theme;
    heading::show(ui, theme, "Line by line");
    ui.spacing_mut().item_spacing.y = space::TIGHT;
    let at = desk.steel.quote.lines_of.min(quote.counts.len().saturating_sub(1));
    ui.horizontal_wrapped(|ui| {
        for (index, one) in quote.counts.iter().enumerate() {
            let button = Button::new(format!("for {}", one.count)).selected(index == at);
            if ui.add(button).accessible_name(format!("Lines for {} of the job", one.count)).clicked() {
                out.push(Request::Steel(SteelAsk::QuoteLines(index)));
            }
        }
    });
    let Some(one) = quote.counts.get(at) else { return };
    ui.spacing_mut().item_spacing.y = 0.0;
    for cost in &one.lines {
        source(ui, desk, &cost.what, &quote.money.figures(cost.amount), &cost.source);
    }
    let asked = &one.asked;
    let shop = desk.steel.stock.as_ref().map(|stock| &stock.shop.now);
    if asked.overheads != 0 {
        let from = format!("{}, {} of work", asked.overheads_from, time_words(one.minutes));
        source(ui, desk, "overheads", &quote.money.figures(asked.overheads), &from);
    }
    if let Some(share) = shop.and_then(|shop| shop.contingency.as_ref()) {
        let from = format!("{} of all above, from the shop's figures", share.text());
        source(ui, desk, "contingency", &quote.money.figures(asked.contingency), &from);
    }
    source(ui, desk, "profit", &quote.money.figures(asked.profit), &profit_from(shop));
    if let Some(share) = &desk.steel.job.job().discount {
        let from = format!("{} of cost and profit, from the job", share.text());
        source(ui, desk, "discount", &quote.money.figures(-asked.discount), &from);
    }
    if let Some(step) = shop.and_then(|shop| shop.round_up_to.as_ref()) {
        let from = format!("up to the next {}", step.text());
        source(ui, desk, "rounding up", &quote.money.figures(asked.rounding), &from);
    }
    if let Some(tax) = shop.and_then(|shop| shop.tax.as_ref()) {
        let from = format!("{}, {} of the price", tax.name, tax.rate.text());
        source(ui, desk, "tax", &quote.money.figures(asked.tax), &from);
    }
}

fn profit_from(shop: Option<&Shop>) -> String {
    match shop.and_then(|shop| shop.profit.as_ref()) {
        Some(Profit::Markup(share)) => format!("{} on the cost", share.text()),
        Some(Profit::Margin(share)) => format!("{} of the price", share.text()),
        None => "none is given".to_owned(),
    }
}

/// A figure, and from where it is.
fn source(ui: &mut Ui, desk: &Desk<'_>, what: &str, amount: &str, from: &str) {
    let cells = [what.to_owned(), amount.to_owned()];
    let name = format!("{what}: {amount}, {from}");
    let line = Line { cells: &cells, name: &name, is_chosen: false, ink: desk.theme.ink, is_strong: false };
    ui.scope(|ui| {
        ui.set_max_width(desk.theme.scaled(SOURCE).min(ui.available_width()));
        table::read_only(ui, desk.theme, &SOURCES, &line);
        let words = RichText::new(from).text_style(Text::Small.style()).color(desk.theme.ink_quiet);
        let inset = Margin { left: space::GAP as i8, ..Margin::ZERO };
        Frame::new().inner_margin(inset).show(ui, |ui| ui.label(words));
    });
    ui.add_space(space::TIGHT);
}

fn line(ui: &mut Ui, desk: &Desk<'_>, words: &str, values: Vec<String>, is_strong: bool) {
    let name = format!("{words}: {}", values.join(", "));
    let cells: Vec<String> = std::iter::once(words.to_owned()).chain(values).collect();
    let ink = if is_strong { desk.theme.ink } else { desk.theme.ink_quiet };
    table::read_only(ui, desk.theme, &COLUMNS, &Line { cells: &cells, name: &name, is_chosen: false, ink, is_strong });
}

fn rule(ui: &mut Ui, desk: &Desk<'_>) {
    let (line, _) = ui.allocate_exact_size(egui::vec2(ui.available_width(), space::TIGHT), egui::Sense::hover());
    ui.painter().hline(line.x_range(), line.center().y, (desk.theme.hairline(), desk.theme.rule));
}
