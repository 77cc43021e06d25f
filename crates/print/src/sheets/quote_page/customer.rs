//! The customer's page: a picture, overall sizes, what is made, the price, and what holds of it. The words are the smith's.

use super::QuoteHead;
use crate::drawing::Drawing;
use crate::fonts::Weight;
use crate::paper::{Orientation, Paper};
use crate::sheets::cautions;
use crate::sheets::fact_boxes::{Fact, facts_block};
use crate::sheets::findings::heading;
use crate::sheets::flow::Flow;
use crate::sheets::paragraph::paragraph;
use crate::sheets::rows::{Col, Row, put_rows};
use crate::sheets::steps::piece_block;
use crate::sheets::title::title_block;
use crate::sheets::type_sizes::BODY;
use fh_core::balance::balance;
use fh_core::cautions::Cautions;
use fh_core::plan::{Bar, PlanUnit};
use fh_rack::list::wanted::{Ordered, title};
use fh_rack::quote::quoted::Quote;
use fh_rack::said::written::Said;

/// A pound (international avoirdupois pound, 1959).
const POUND_KG: f64 = 0.453_592_37;
/// How tall a piece is drawn.
const TALL_MM: f64 = 42.0;
/// More plans than this are not drawn.
const MOST_PICTURES: usize = 4;

/// The page for the customer.
pub fn customer_page(quote: &Quote, head: QuoteHead<'_>, paper: Paper) -> Drawing {
    let orientation = Orientation::Portrait;
    let mut flow = Flow::without_scale(paper, orientation);
    let width = flow.width();
    flow.start_part(format!("{}, quote", head.job.title));
    let shop = head.shop.name.as_deref().unwrap_or_default();
    flow.put(title_block(&head.job.title, shop, "QUOTE", width).then_free(2.0));
    flow.put(facts_block(&facts(quote, head), width).then_free(3.0));
    put_pieces(&mut flow, head);
    put_prices(&mut flow, quote, head);
    put_terms(&mut flow, head);
    Drawing { title: format!("{}: quote", head.job.title), paper, orientation, pages: flow.into_pages() }
}

fn facts(quote: &Quote, head: QuoteHead<'_>) -> Vec<Fact> {
    let fact = |caption: &'static str, value: &str| Fact { caption, value: value.to_owned(), also: String::new() };
    let mut facts = Vec::new();
    let mut put = |caption: &'static str, value: Option<&str>| {
        facts.extend(value.filter(|value| !value.is_empty()).map(|value| fact(caption, value)));
    };
    put("for", head.job.customer.as_deref());
    put("date", Some(head.date));
    put("good for", head.shop.valid.as_deref());
    put("finish", head.job.finish.as_deref());
    let kg = quote.counts.first().map(|one| one.mass_kg / f64::from(one.count));
    let in_inches = head.order.first().is_some_and(|first| first.plan.units.length == PlanUnit::Inch);
    let weighs = kg.map(|kg| if in_inches { format!("{:.1} lb", kg / POUND_KG) } else { format!("{kg:.1} kg") });
    put("weighs about", weighs.as_deref());
    facts
}

/// What is made: the pictures of the pieces, each with how many.
fn put_pieces(flow: &mut Flow, head: QuoteHead<'_>) {
    let width = flow.width();
    for (at, ordered) in head.order.iter().enumerate() {
        let name =
            format!("{} × {}, {}{}", ordered.count, title(&ordered.plan), ordered.plan.material_name(), parts(ordered));
        let mut block = paragraph(&name, BODY * 1.1, Weight::SemiBold, width).then_free(1.0);
        if at < MOST_PICTURES {
            let picture = piece_block(&ordered.plan, &balance(&ordered.plan), width, TALL_MM);
            block = block.over(picture.unwrap_or_default().then_free(2.0));
        }
        flow.put(block);
    }
    flow.skip(2.0);
}

/// How many pieces of each bar that are: `: 6 × hook`; nothing where it is one of one bar.
fn parts(ordered: &Ordered) -> String {
    let bars = &ordered.plan.bars;
    if bars.len() == 1 && bars[0].pieces() == 1 {
        return String::new();
    }
    let part = |(at, bar): (usize, &Bar)| {
        let name = if bar.name.trim().is_empty() { format!("bar {}", at + 1) } else { bar.name.clone() };
        format!("{} × {name}", u64::from(bar.pieces()) * u64::from(ordered.count))
    };
    format!(": {}", bars.iter().enumerate().map(part).collect::<Vec<_>>().join(", "))
}

fn put_prices(flow: &mut Flow, quote: &Quote, head: QuoteHead<'_>) {
    let money = &quote.money;
    let tax = head.shop.tax.as_ref();
    let has_tax = tax.is_some();
    let mut columns = vec![Col { head: "how many", share: 0.16, is_figures: false }];
    if has_tax {
        columns.push(Col { head: "price without tax", share: 0.2, is_figures: true });
        columns.push(Col { head: "tax", share: 0.2, is_figures: true });
    }
    columns.push(Col { head: "to pay", share: 0.22, is_figures: true });
    columns.push(Col { head: "for one", share: 0.22, is_figures: true });
    let row = |one: &fh_rack::quote::quoted::QuoteFor| {
        let asked = &one.asked;
        let mut cells = vec![one.count.to_string()];
        if has_tax {
            cells.extend([money.words(asked.price), money.words(asked.tax)]);
        }
        cells.extend([money.words(asked.total), money.words(asked.each)]);
        Row { cells, ..Row::default() }
    };
    flow.put(heading("Price"));
    put_rows(flow, &columns, &quote.counts.iter().map(row).collect::<Vec<_>>());
    flow.skip(1.5);
    let tax = tax.map(|tax| format!("The tax is {} at {}.", tax.name, tax.rate.text()));
    let first = quote.counts.first().filter(|one| one.asked.deposit > 0);
    let deposit = head.shop.deposit.as_ref().zip(first).map(|(share, one)| {
        format!(
            "Deposit with the order: {}, which is {} for {}.",
            share.text(),
            money.words(one.asked.deposit),
            one.count
        )
    });
    let words: Vec<String> = [tax, deposit].into_iter().flatten().collect();
    if !words.is_empty() {
        flow.put(paragraph(&words.join(" "), BODY, Weight::Regular, flow.width()).then_free(2.0));
    }
}

/// What is agreed, what is not included, what to beware of, and the smith's closing words.
fn put_terms(flow: &mut Flow, head: QuoteHead<'_>) {
    let width = flow.width();
    let part =
        |name: &str, words: &str| heading(name).over(paragraph(words, BODY, Weight::Regular, width)).then_free(1.5);
    if let Some(agreed) = &head.job.agreed {
        flow.put(part("Agreed", agreed));
    }
    let not: Vec<&str> = head.shop.not_included.iter().chain(&head.job.not_included).map(String::as_str).collect();
    if !not.is_empty() {
        flow.put(part("Not included", &not.join("; ")));
    }
    let plans = head.order.iter().map(|ordered| fh_core::cautions::cautions(&ordered.plan, &balance(&ordered.plan)));
    let rating = plans.map(|cautions| cautions.rating).fold(None, Option::or);
    let rated = Cautions { rating, ..Cautions::default() };
    cautions::put_own(flow, &rated);
    if rating.is_none() {
        let words = "This work is not rated. Do not use it to lift, tow or hold people.";
        flow.put(paragraph(words, BODY, Weight::Regular, width).then_free(1.5));
    }
    if let Some(closing) = &head.shop.closing {
        flow.put(paragraph(closing, BODY, Weight::Regular, width));
    }
}
