//! The costs of a job, line by line, each with what it follows from.

use crate::kept::job::{Job, JobLine, LineKind};
use crate::kept::shop::Shop;
use crate::list::make::{CutList, Stock};
use crate::list::wanted::{Ordered, title};
use crate::quote::error::QuoteError;
use crate::quote::hours::{PlanWork, Range, minutes_for};
use crate::said::money::{Currency, times_over};
use crate::said::price::{Per, Price};
use crate::said::time::time_words;
use crate::said::written::Said;
use fh_measure::counted;

/// What a line belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// Steel.
    Material,
    /// Hours.
    Labour,
    /// What is paid for the job beside steel and hours.
    Expense,
}

impl Part {
    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Material => "material",
            Self::Labour => "work",
            Self::Expense => "expenses",
        }
    }
}

/// A cost.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What it belongs to.
    pub part: Part,
    /// What it is.
    pub what: String,
    /// How much, in the smallest unit; below 0 where it is credited.
    pub amount: i64,
    /// What it follows from.
    pub source: String,
}

/// The costs of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct Costs {
    /// Line by line.
    pub lines: Vec<Line>,
    /// Minutes at the fire.
    pub at_the_fire: Range,
    /// Minutes of all work that is charged.
    pub minutes: f64,
}

/// What a line is made with.
struct Book<'a> {
    shop: &'a Shop,
    money: &'a Currency,
    count: u32,
    lines: Vec<Line>,
    minutes: f64,
}

/// The costs of so many of a job beside its steel.
pub(crate) fn costs(
    job: &Job,
    order: &[Ordered],
    works: &[PlanWork],
    list: &CutList,
    stock: Stock<'_>,
    money: &Currency,
    count: u32,
) -> Result<Costs, QuoteError> {
    let mut book = Book { shop: stock.shop, money, count, lines: Vec::new(), minutes: 0.0 };
    book.cutting(list)?;
    let at_the_fire = book.fire(order, works)?;
    for line in &job.lines {
        book.of_job(line)?;
    }
    book.finish(job, order, works)?;
    book.by_the_hour(
        "fuel",
        stock.shop.fuel.as_deref(),
        at_the_fire.taken(stock.shop.hours.unwrap_or_default()),
        "at the fire",
    )?;
    book.by_the_hour("consumables", stock.shop.consumables.as_deref(), book.minutes, "of work")?;
    book.lines.sort_by_key(|line| line.part);
    Ok(Costs { lines: book.lines, at_the_fire, minutes: book.minutes })
}

fn per_hour(price: i64, minutes: f64) -> i64 {
    // Minutes to the hundredth, so that a line can be worked by hand.
    times_over(price, (minutes * 100.0).round() as i64, 6_000)
}

impl Book<'_> {
    fn put(&mut self, part: Part, what: impl Into<String>, amount: i64, source: impl Into<String>) {
        self.lines.push(Line { part, what: what.into(), amount, source: source.into() });
    }

    fn amount(&self, price: &Price) -> Result<i64, QuoteError> {
        price.amount(self.money).map_err(QuoteError::Money)
    }

    /// A time at the shop's rate; nothing where there is no rate.
    fn work(
        &mut self,
        what: impl Into<String>,
        minutes: f64,
        rate: Option<&Price>,
        source: String,
    ) -> Result<(), QuoteError> {
        self.minutes += minutes;
        let Some(rate) = rate else { return Ok(()) };
        let amount = self.amount(rate)?;
        let source = format!("{source}; {}, {} per hour", time_words(minutes), self.money.figures(amount));
        self.put(Part::Labour, what, per_hour(amount, minutes), source);
        Ok(())
    }

    fn cutting(&mut self, list: &CutList) -> Result<(), QuoteError> {
        for group in &list.groups {
            let way = self.shop.cutting.iter().find(|way| way.name == group.way);
            let Some(time) = way.and_then(|way| way.time.as_ref()) else { continue };
            let cuts: u64 = group.bars.iter().map(|bar| bar.times * bar.cuts.len() as u64).sum();
            let section = group.sections.first().cloned().unwrap_or_default();
            let source = format!("{} of {} by {}", counted(cuts, "cut"), time.text(), group.way);
            self.work(format!("cutting {section}"), time.minutes * cuts as f64, self.shop.rate.as_deref(), source)?;
        }
        Ok(())
    }

    fn fire(&mut self, order: &[Ordered], works: &[PlanWork]) -> Result<Range, QuoteError> {
        let rate = self.shop.rate.as_deref();
        if let Some(setup) = &self.shop.setup {
            self.work("setting up", setup.minutes, rate, "once for the job".to_owned())?;
        }
        let mut all = Range::default();
        for (ordered, work) in order.iter().zip(works) {
            let count = u64::from(ordered.count) * u64::from(self.count);
            let range = minutes_for(work, count, self.shop);
            all = all.and(range);
            let minutes = range.taken(self.shop.hours.unwrap_or_default());
            let first = crate::quote::hours::first_piece(work, self.shop);
            let log = if work.is_learned { "by your log" } else { "not logged yet" };
            let source = format!(
                "{} and {} of work each, {log}: the first takes {}, {count} take {} to {}",
                counted(work.heats, "heat"),
                time_words(work.minutes),
                time_words(first),
                time_words(range.low),
                time_words(range.high)
            );
            self.work(format!("{count} × {}, at the fire", title(&ordered.plan)), minutes, rate, source)?;
        }
        Ok(all)
    }

    fn of_job(&mut self, line: &JobLine) -> Result<(), QuoteError> {
        let times = if line.each { self.count } else { 1 };
        let what = if line.what.is_empty() {
            line.kind.name().to_owned()
        } else {
            format!("{}: {}", line.kind.name(), line.what)
        };
        let often = if line.each { format!("{times} times, from the job") } else { "from the job".to_owned() };
        if let Some(time) = &line.time {
            let rate =
                if line.kind == LineKind::Striker { self.shop.striker.as_deref() } else { self.shop.rate.as_deref() };
            self.work(what.clone(), time.minutes * f64::from(times), rate, often.clone())?;
        }
        if let Some(price) = &line.price {
            let amount = self.amount(price)?.saturating_mul(i64::from(times));
            self.put(Part::Expense, what, amount, often);
        }
        Ok(())
    }

    fn finish(&mut self, job: &Job, order: &[Ordered], works: &[PlanWork]) -> Result<(), QuoteError> {
        let Some(name) = &job.finish else { return Ok(()) };
        let finish = self.shop.finishes.iter().find(|finish| finish.name == *name);
        let finish = finish.ok_or_else(|| QuoteError::NoFinish(name.clone()))?;
        let price = self.amount(&finish.price)?;
        let sum = |of: fn(&PlanWork) -> f64| -> f64 {
            works.iter().zip(order).map(|(work, ordered)| of(work) * f64::from(ordered.count)).sum::<f64>()
                * f64::from(self.count)
        };
        let (kg, m2) = (sum(|work| work.mass_kg), sum(|work| work.surface_m2));
        // In thousandths, so that a line can be worked by hand.
        let of = |amount: f64| times_over(price, (amount * 1000.0).round() as i64, 1000);
        let (amount, quantity) = match finish.price.per {
            Per::Kilogram => (of(kg), format!("{kg:.3} kg")),
            Per::Pound => (of(kg / 0.453_592_37), format!("{:.3} lb", kg / 0.453_592_37)),
            Per::SquareMeter => (of(m2), format!("{m2:.3} m² of surface")),
            Per::SquareFoot => (of(m2 / 0.092_903_04), format!("{:.3} ft² of surface", m2 / 0.092_903_04)),
            _ => (price.saturating_mul(i64::from(self.count)), format!("{} times", self.count)),
        };
        let source = format!("{quantity}, {}", finish.price.text());
        self.put(Part::Expense, format!("finish: {name}"), amount, source);
        Ok(())
    }

    fn by_the_hour(&mut self, what: &str, price: Option<&Price>, minutes: f64, of: &str) -> Result<(), QuoteError> {
        let Some(price) = price else { return Ok(()) };
        let amount = self.amount(price)?;
        let source = format!("{} {of}, {} per hour", time_words(minutes), self.money.figures(amount));
        self.put(Part::Expense, what, per_hour(amount, minutes), source);
        Ok(())
    }
}

/// What the lines of a part come to.
pub fn sum(lines: &[Line], part: Part) -> i64 {
    lines.iter().filter(|line| line.part == part).map(|line| line.amount).fold(0, i64::saturating_add)
}
