//! What a quote asks from, and what it comes to.

use crate::kept::job::Job;
use crate::kept::rack::Rack;
use crate::kept::shop::Hours;
use crate::list::make::{CutList, Progress, Stock, make};
use crate::list::source::From;
use crate::list::wanted::Ordered;
use crate::quote::error::{MOST, QuoteError};
use crate::quote::hours::{PlanWork, Range, work_of};
use crate::quote::lines::{Line, costs};
use crate::quote::price::{Asked, ask};
use crate::quote::steel::steel;
use crate::said::money::Currency;
use fh_work::Shop as Tools;

/// A quote for one count.
#[derive(Clone, Debug, PartialEq)]
pub struct QuoteFor {
    /// How many of the job.
    pub count: u32,
    /// The costs, line by line.
    pub lines: Vec<Line>,
    /// Minutes at the fire.
    pub at_the_fire: Range,
    /// Minutes of all work that is charged, with the figure of the range that was taken.
    pub minutes: f64,
    /// What is asked.
    pub asked: Asked,
    /// The cut list.
    pub list: CutList,
    /// The mass of the finished work in kg.
    pub mass_kg: f64,
}

/// A quote.
#[derive(Clone, Debug, PartialEq)]
pub struct Quote {
    /// What money is counted in.
    pub money: Currency,
    /// Which figure of the hours was taken.
    pub hours: Hours,
    /// One for each count, in the order asked.
    pub counts: Vec<QuoteFor>,
    /// What one of each plan takes.
    pub works: Vec<PlanWork>,
    /// What is not known and so not counted, each a sentence.
    pub not_counted: Vec<String>,
}

/// Makes a quote for some counts of a job.
///
/// # Errors
/// Where the cut list cannot be made, money is of two currencies, or a count or a finish makes no sense.
pub fn quote(
    job: &Job,
    order: &[Ordered],
    stock: Stock<'_>,
    tools: &Tools,
    counts: &[u32],
    goes_on: &dyn Fn() -> bool,
    progress: &mut dyn FnMut(Progress),
) -> Result<Quote, QuoteError> {
    let works: Vec<PlanWork> = order.iter().map(|ordered| work_of(&ordered.plan, tools)).collect();
    quote_of(job, order, works, stock, counts, goes_on, progress)
}

/// The same, where what one of each plan takes is known.
///
/// # Errors
/// As [`quote`].
pub fn quote_of(
    job: &Job,
    order: &[Ordered],
    works: Vec<PlanWork>,
    stock: Stock<'_>,
    counts: &[u32],
    goes_on: &dyn Fn() -> bool,
    progress: &mut dyn FnMut(Progress),
) -> Result<Quote, QuoteError> {
    let money = one_currency(job, stock)?;
    let mut all = Vec::new();
    for &count in counts {
        if !(1..=MOST).contains(&count) {
            return Err(QuoteError::Count(count));
        }
        let times = |ordered: &Ordered| Ordered { count: ordered.count.saturating_mul(count), ..ordered.clone() };
        let list = make(&order.iter().map(times).collect::<Vec<_>>(), stock, goes_on, progress)?;
        let costs = costs(job, order, &works, &list, stock, &money, count)?;
        let lines: Vec<Line> = steel(job, &list, stock.rack, &money)?.into_iter().chain(costs.lines).collect();
        let asked = ask(&lines, job, stock.shop, &money, costs.minutes, count).map_err(QuoteError::Money)?;
        let each: f64 = works.iter().zip(order).map(|(work, ordered)| work.mass_kg * f64::from(ordered.count)).sum();
        all.push(QuoteFor {
            count,
            lines,
            at_the_fire: costs.at_the_fire,
            minutes: costs.minutes,
            asked,
            list,
            mass_kg: each * f64::from(count),
        });
    }
    let not_counted = not_counted(job, stock, all.first());
    Ok(Quote { money, hours: stock.shop.hours.unwrap_or_default(), counts: all, works, not_counted })
}

/// The one currency of all files that name one.
fn one_currency(job: &Job, stock: Stock<'_>) -> Result<Currency, QuoteError> {
    let all = [
        ("the shop's figures", stock.shop.money(), stock.shop.decimals),
        ("the merchant's list", stock.merchant.money(), stock.merchant.decimals),
        ("the rack", stock.rack.money(), stock.rack.decimals),
        ("the job", job.money(), job.decimals),
    ];
    // A file that says neither counts in what the others say.
    let mut saying = all.iter().filter(|(_, money, decimals)| !money.name.is_empty() || decimals.is_some());
    let Some((first_place, first, _)) = saying.next() else { return Ok(Currency::default()) };
    match saying.find(|(_, money, _)| money != first) {
        None => Ok(first.clone()),
        Some((place, money, _)) => {
            let name =
                |money: &Currency| if money.name.is_empty() { "not named".to_owned() } else { money.name.clone() };
            let said = |money: &Currency| format!("{} with {} figures behind the point", name(money), money.decimals);
            Err(QuoteError::Money(format!(
                "the money of {first_place} is {}, and that of {place} {}; a quote has one currency",
                said(first),
                said(money)
            )))
        }
    }
}

/// Whether bars of the rack are used that have no price there.
fn uses_unpriced(rack: &Rack, list: &CutList) -> bool {
    let mut bars = list.groups.iter().flat_map(|group| &group.bars);
    bars.any(|bar| match list.sources[bar.source].from {
        From::Rack(at) => rack.bars.get(at).is_some_and(|line| line.price.is_none()),
        From::New(_) => false,
    })
}

fn not_counted(job: &Job, stock: Stock<'_>, first: Option<&QuoteFor>) -> Vec<String> {
    let shop = stock.shop;
    let mut all = Vec::new();
    let mut told = |is_missing: bool, words: &str| {
        if is_missing {
            all.push(words.to_owned());
        }
    };
    told(shop.rate.is_none(), "No rate for an hour is given: work is not counted.");
    told(shop.overhead.is_none(), "No overheads are given.");
    told(shop.fuel.is_none(), "No price of fuel is given.");
    told(shop.profit.is_none(), "No profit is given: the price is what it costs.");
    told(shop.tax.is_none(), "No tax is counted.");
    told(job.finish.is_none(), "No finish is named.");
    let lists = first.map(|quote| &quote.list);
    let is_unpriced = |list: &CutList| list.bought().iter().any(|bought| bought.source.price.is_none());
    told(lists.is_some_and(is_unpriced), "Not every bar has a price: the steel that has none is not counted.");
    let is_paid = lists.is_some_and(|list| uses_unpriced(stock.rack, list));
    told(is_paid, "Bars from the rack without a price there count as paid for.");
    told(lists.is_some_and(|list| !list.is_whole()), "Not every piece finds a bar: see the cut list.");
    all
}
