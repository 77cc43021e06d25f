//! From costs to what is asked: overheads, contingency, profit, discount, rounding, tax, deposit.
//!
//! Direct material, direct labour and direct expenses are the prime cost; with overheads it is the total cost; with profit the
//! price: common practice of cost books.

use super::lines::Line;
use crate::kept::job::Job;
use crate::kept::shop::{Profit, Shop};
use crate::said::money::{Currency, share_of, times_over, up_to_step};
use crate::said::percent::percent_words;

/// What is asked, step by step; money in the smallest unit.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Asked {
    /// Steel, work and expenses.
    pub prime: i64,
    /// Overheads.
    pub overheads: i64,
    /// From what they follow.
    pub overheads_from: String,
    /// What is added for contingency.
    pub contingency: i64,
    /// The whole cost: all of these.
    pub cost: i64,
    /// Profit.
    pub profit: i64,
    /// What is taken off.
    pub discount: i64,
    /// What rounding up adds.
    pub rounding: i64,
    /// The price without tax.
    pub price: i64,
    /// The tax.
    pub tax: i64,
    /// What is paid: price and tax.
    pub total: i64,
    /// Of that, when the work is ordered.
    pub deposit: i64,
    /// What is paid for one of the job.
    pub each: i64,
    /// What the price has over the cost, of the cost, in hundredths of a per cent.
    pub markup: i64,
    /// The same, of the price.
    pub margin: i64,
}

/// Works out what is asked for lines that took so many minutes.
pub(crate) fn ask(
    lines: &[Line],
    job: &Job,
    shop: &Shop,
    money: &Currency,
    minutes: f64,
    count: u32,
) -> Result<Asked, String> {
    let mut asked =
        Asked { prime: lines.iter().map(|line| line.amount).fold(0, i64::saturating_add), ..Asked::default() };
    if let Some(overhead) = &shop.overhead {
        let hour = times_over(overhead.yearly.amount(money)?, 1, i64::from(overhead.hours));
        asked.overheads = times_over(hour, (minutes * 100.0).round() as i64, 6_000);
        asked.overheads_from = format!(
            "{} a year over {} hours is {} per hour",
            money.figures(overhead.yearly.amount(money)?),
            overhead.hours,
            money.figures(hour)
        );
    }
    let before = asked.prime.saturating_add(asked.overheads);
    asked.contingency = shop.contingency.as_ref().map_or(0, |share| share_of(before, share.hundredths));
    asked.cost = before.saturating_add(asked.contingency);
    asked.profit = match &shop.profit {
        None => 0,
        Some(Profit::Markup(share)) => share_of(asked.cost, share.hundredths),
        // A margin m of the price is m / (1 - m) of the cost.
        Some(Profit::Margin(share)) => times_over(asked.cost, share.hundredths, 10_000 - share.hundredths),
    };
    let full = asked.cost.saturating_add(asked.profit);
    asked.discount = job.discount.as_ref().map_or(0, |share| share_of(full, share.hundredths));
    let net = full - asked.discount;
    let step = shop.round_up_to.as_ref().map_or(Ok(1), |step| step.amount(money))?;
    let tax = shop.tax.as_ref();
    let rate = tax.map_or(0, |tax| tax.rate.hundredths);
    if tax.is_some_and(|tax| tax.inclusive) {
        // What is paid is rounded, and the tax is the part of it that makes it so.
        let gross = net.saturating_add(share_of(net, rate));
        asked.total = up_to_step(gross, step);
        asked.price = times_over(asked.total, 10_000, 10_000 + rate);
        asked.tax = asked.total - asked.price;
    } else {
        asked.price = up_to_step(net, step);
        asked.tax = share_of(asked.price, rate);
        asked.total = asked.price.saturating_add(asked.tax);
    }
    asked.rounding = asked.price - net;
    asked.deposit = shop.deposit.as_ref().map_or(0, |share| share_of(asked.total, share.hundredths));
    asked.each = times_over(asked.total, 1, i64::from(count));
    let over = asked.price - asked.cost;
    asked.markup = times_over(over, 10_000, asked.cost.max(1));
    asked.margin = times_over(over, 10_000, asked.price.max(1));
    Ok(asked)
}

impl Asked {
    /// Markup and margin in words: `25 % on the cost, 20 % of the price`.
    pub fn profit_words(&self) -> String {
        format!("{} on the cost, {} of the price", percent_words(self.markup.max(0)), percent_words(self.margin.max(0)))
    }
}
