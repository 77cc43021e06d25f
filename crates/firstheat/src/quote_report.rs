//! A quote in words and as JSON.

use crate::table::{Side, lined_up};
use fh_rack::kept::shop::Hours;
use fh_rack::quote::lines::{Part, sum};
use fh_rack::quote::quoted::{Quote, QuoteFor};
use fh_rack::said::time::time_words;
use serde::Serialize;

/// A quote for other programs. Money in whole units of the currency, times in minutes.
#[derive(Serialize)]
pub(crate) struct QuoteReport {
    title: String,
    currency: String,
    hours_taken: &'static str,
    counts: Vec<Count>,
    not_counted: Vec<String>,
}

#[derive(Serialize)]
struct Count {
    count: u32,
    lines: Vec<Line>,
    fire_minutes: [f64; 3],
    work_minutes: f64,
    mass_kg: f64,
    direct_cost: f64,
    overheads: f64,
    contingency: f64,
    cost: f64,
    profit: f64,
    markup_percent: f64,
    margin_percent: f64,
    discount: f64,
    rounding: f64,
    price: f64,
    tax: f64,
    total: f64,
    deposit: f64,
    each: f64,
}

#[derive(Serialize)]
struct Line {
    part: &'static str,
    what: String,
    amount: f64,
    from: String,
}

fn taken(hours: Hours) -> &'static str {
    match hours {
        Hours::Low => "low",
        Hours::Likely => "likely",
        Hours::High => "high",
    }
}

impl QuoteReport {
    /// The report of a quote.
    pub(crate) fn new(title: &str, quote: &Quote) -> Self {
        Self {
            title: title.to_owned(),
            currency: quote.money.name.clone(),
            hours_taken: taken(quote.hours),
            counts: quote.counts.iter().map(|one| count(quote, one)).collect(),
            not_counted: quote.not_counted.clone(),
        }
    }
}

fn count(quote: &Quote, one: &QuoteFor) -> Count {
    let (money, asked, hours) = (|amount: i64| quote.money.number(amount), &one.asked, one.at_the_fire);
    let line = |line: &fh_rack::quote::lines::Line| Line {
        part: line.part.name(),
        what: line.what.clone(),
        amount: money(line.amount),
        from: line.source.clone(),
    };
    Count {
        count: one.count,
        lines: one.lines.iter().map(line).collect(),
        fire_minutes: [hours.low, hours.likely, hours.high],
        work_minutes: one.minutes,
        mass_kg: one.mass_kg,
        direct_cost: money(asked.prime),
        overheads: money(asked.overheads),
        contingency: money(asked.contingency),
        cost: money(asked.cost),
        profit: money(asked.profit),
        markup_percent: asked.markup as f64 / 100.0,
        margin_percent: asked.margin as f64 / 100.0,
        discount: money(asked.discount),
        rounding: money(asked.rounding),
        price: money(asked.price),
        tax: money(asked.tax),
        total: money(asked.total),
        deposit: money(asked.deposit),
        each: money(asked.each),
    }
}

/// The quote as a smith reads it: every line with what it follows from.
pub(crate) fn words(title: &str, quote: &Quote) -> String {
    let mut text = format!("Quote: {title}\n");
    for one in &quote.counts {
        text.push_str(&format!("\n{} of the job\n", one.count));
        text.push_str(&lined_up(&[Side::Left, Side::Right, Side::Left], &rows(quote, one)));
        let hours = one.at_the_fire;
        text.push_str(&format!(
            "At the fire {} to {}; the {} figure is taken.\n",
            time_words(hours.low),
            time_words(hours.high),
            taken(quote.hours)
        ));
    }
    if !quote.not_counted.is_empty() {
        text.push_str(&format!("\nNot counted: {}\n", quote.not_counted.join(" ")));
    }
    text.push_str(
        "A quote from a plan is a guide, not a set of accounts; tax and the rights of customers are local law.\n",
    );
    text
}

fn rows(quote: &Quote, one: &QuoteFor) -> Vec<Vec<String>> {
    let (money, asked) = (&quote.money, &one.asked);
    let row = |what: &str, amount: i64, from: &str| vec![what.to_owned(), money.figures(amount), from.to_owned()];
    let mut rows: Vec<Vec<String>> = Vec::new();
    for part in [Part::Material, Part::Labour, Part::Expense] {
        let own = one.lines.iter().filter(|line| line.part == part);
        let own: Vec<Vec<String>> =
            own.map(|line| row(&format!("  {}", line.what), line.amount, &line.source)).collect();
        if !own.is_empty() {
            rows.extend(own);
            rows.push(row(part.name(), sum(&one.lines, part), ""));
        }
    }
    rows.push(row("direct cost", asked.prime, ""));
    let steps = [
        ("  overheads", asked.overheads, asked.overheads_from.as_str()),
        ("  contingency", asked.contingency, ""),
        ("cost", asked.cost, ""),
        ("  profit", asked.profit, ""),
        ("  discount", -asked.discount, ""),
        ("  rounding", asked.rounding, ""),
    ];
    rows.extend(
        steps.iter().filter(|(_, amount, _)| *amount != 0).map(|(what, amount, from)| row(what, *amount, from)),
    );
    rows.push(row("price without tax", asked.price, &asked.profit_words()));
    if asked.tax != 0 {
        rows.push(row("  tax", asked.tax, ""));
    }
    rows.push(vec!["to pay".to_owned(), money.words(asked.total), String::new()]);
    if asked.deposit > 0 {
        rows.push(row("  deposit", asked.deposit, "with the order"));
    }
    if one.count > 1 {
        rows.push(row("  for one", asked.each, ""));
    }
    rows
}
