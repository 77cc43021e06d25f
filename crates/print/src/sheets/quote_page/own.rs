//! The smith's own reckoning: every line with what it follows from, and step by step to the price.

use super::QuoteHead;
use crate::drawing::Drawing;
use crate::fonts::Weight;
use crate::paper::{Orientation, Paper};
use crate::sheets::findings::heading;
use crate::sheets::flow::Flow;
use crate::sheets::paragraph::paragraph;
use crate::sheets::rows::{Col, Row, put_rows};
use crate::sheets::title::title_block;
use crate::sheets::type_sizes::{BODY, CAPTION};
use fh_rack::kept::shop::{Hours, Profit};
use fh_rack::quote::lines::{Part, sum};
use fh_rack::quote::quoted::{Quote, QuoteFor};
use fh_rack::said::money::Currency;
use fh_rack::said::percent::percent_words;
use fh_rack::said::time::time_words;
use fh_rack::said::written::Said;

/// What a quote is not.
const AID: &str =
    "A quote from a plan is a guide, not a set of accounts. Tax and the rights of customers are local law: ask there.";

/// The reckoning, each count in turn.
pub fn reckoning(quote: &Quote, head: QuoteHead<'_>, paper: Paper) -> Drawing {
    let orientation = Orientation::Portrait;
    let mut flow = Flow::without_scale(paper, orientation);
    for one in &quote.counts {
        put(&mut flow, quote, one, head);
    }
    let title = format!("{}: figures behind the quote", head.job.title);
    Drawing { title, paper, orientation, pages: flow.into_pages() }
}

fn put(flow: &mut Flow, quote: &Quote, one: &QuoteFor, head: QuoteHead<'_>) {
    let width = flow.width();
    let count = format!("{} of the job", one.count);
    flow.start_part(format!("{}, figures, {count}", head.job.title));
    flow.put(
        title_block(&head.job.title, &count, "FIGURES BEHIND THE QUOTE: FOR THE SMITH ALONE", width).then_free(2.0),
    );
    let columns = [
        Col { head: "what", share: 0.27, is_figures: false },
        Col { head: "from", share: 0.59, is_figures: false },
        Col { head: "amount", share: 0.14, is_figures: true },
    ];
    put_rows(flow, &columns, &rows(quote, one, head));
    flow.skip(3.0);
    let hours = one.at_the_fire;
    let taken = match quote.hours {
        Hours::Low => "the low figure is taken",
        Hours::Likely => "the likely figure is taken",
        Hours::High => "the high figure is taken",
    };
    let words = format!(
        "Hours at the fire: {} to {}, likely {}; {taken}. All work that is charged: {}.",
        time_words(hours.low),
        time_words(hours.high),
        time_words(hours.likely),
        time_words(one.minutes)
    );
    flow.put(paragraph(&words, BODY, Weight::Regular, width).then_free(1.5));
    if !quote.not_counted.is_empty() {
        flow.put(
            heading("Not counted")
                .over(paragraph(&quote.not_counted.join(" "), BODY, Weight::Regular, width))
                .then_free(1.5),
        );
    }
    flow.put(paragraph(AID, CAPTION, Weight::Regular, width));
}

fn row(what: impl Into<String>, from: impl Into<String>, amount: String, is_sum: bool) -> Row {
    Row { cells: vec![what.into(), from.into(), amount], is_sum, ..Row::default() }
}

/// Every line, what each part comes to, and the steps to the price.
fn rows(quote: &Quote, one: &QuoteFor, head: QuoteHead<'_>) -> Vec<Row> {
    let money = &quote.money;
    let mut rows = Vec::new();
    for part in [Part::Material, Part::Labour, Part::Expense] {
        let own: Vec<_> = one.lines.iter().filter(|line| line.part == part).collect();
        rows.extend(
            own.iter().map(|line| row(line.what.clone(), line.source.clone(), money.figures(line.amount), false)),
        );
        if !own.is_empty() {
            rows.push(row(part.name(), "", money.words(sum(&one.lines, part)), true));
        }
    }
    rows.extend(steps(quote, one, head, money));
    rows
}

fn steps(quote: &Quote, one: &QuoteFor, head: QuoteHead<'_>, money: &Currency) -> Vec<Row> {
    let (asked, shop) = (&one.asked, head.shop);
    let share = |share: Option<i64>| share.map_or(String::new(), |share| format!("{} of it", percent_words(share)));
    let profit = match &shop.profit {
        Some(Profit::Markup(share)) => format!("markup {}", share.text()),
        Some(Profit::Margin(share)) => format!("margin {}", share.text()),
        None => String::new(),
    };
    let rounded = shop.round_up_to.as_ref().map_or(String::new(), |step| format!("up to the next {}", step.text()));
    let mut rows = vec![row("direct cost", "material, work and expenses", money.words(asked.prime), true)];
    let mut step = |is_there: bool, what: &str, from: String, amount: i64| {
        if is_there {
            rows.push(row(what, from, money.figures(amount), false));
        }
    };
    step(
        asked.overheads > 0,
        "overheads",
        format!("{}; {} of work", asked.overheads_from, time_words(one.minutes)),
        asked.overheads,
    );
    step(
        asked.contingency > 0,
        "contingency",
        share(shop.contingency.as_ref().map(|share| share.hundredths)),
        asked.contingency,
    );
    rows.push(row("cost", "", money.words(asked.cost), true));
    let mut step = |is_there: bool, what: &str, from: String, amount: i64| {
        if is_there {
            rows.push(row(what, from, money.figures(amount), false));
        }
    };
    step(asked.profit != 0, "profit", profit, asked.profit);
    step(
        asked.discount > 0,
        "discount",
        share(head.job.discount.as_ref().map(|share| share.hundredths)),
        -asked.discount,
    );
    step(asked.rounding != 0, "rounding", rounded, asked.rounding);
    rows.push(row("price without tax", asked.profit_words(), money.words(asked.price), true));
    if let Some(tax) = &shop.tax {
        let kind = if tax.inclusive { "in the price" } else { "on the price" };
        rows.push(row(tax.name.clone(), format!("{} {kind}", tax.rate.text()), money.figures(asked.tax), false));
    }
    rows.push(row("to pay", "", money.words(asked.total), true));
    if asked.deposit > 0 {
        let of = shop.deposit.as_ref().map_or(String::new(), |share| format!("{} of it, with the order", share.text()));
        rows.push(row("deposit", of, money.figures(asked.deposit), false));
    }
    if one.count > 1 {
        rows.push(row("for one of the job", format!("over {}", one.count), quote.money.figures(asked.each), false));
    }
    rows
}
