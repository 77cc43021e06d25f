//! The steel of a job: by the bars that are bought, or by what is used of them.

use super::lines::{Line, Part};
use crate::kept::job::{Job, SteelBy};
use crate::kept::rack::Rack;
use crate::list::make::{BarCuts, CutList};
use crate::list::source::{From, Source, of_one};
use crate::list::words::run;
use crate::quote::error::QuoteError;
use crate::said::money::{Currency, times_over};
use fh_measure::counted;

/// The lines of a job's steel.
pub(super) fn steel(job: &Job, list: &CutList, rack: &Rack, money: &Currency) -> Result<Vec<Line>, QuoteError> {
    let by = job.steel.unwrap_or_default();
    let mut lines: Vec<Line> = list.bought().iter().filter_map(|bought| new_bars(bought, by, money)).collect();
    let kept = Kept::of(list, rack, money)?;
    lines.extend(kept.rack_lines(by));
    if by == SteelBy::Bars {
        lines.extend(kept.offcuts(job));
    }
    Ok(lines)
}

fn line(what: impl Into<String>, amount: i64, source: impl Into<String>) -> Line {
    Line { part: Part::Material, what: what.into(), amount, source: source.into() }
}

/// Bars of one source that are bought; none where their price is not known.
fn new_bars(bought: &crate::list::make::Bought<'_>, by: SteelBy, money: &Currency) -> Option<Line> {
    let (source, price) = (bought.source, bought.source.price?);
    let (count, called) = (bought.count, source.called.text());
    let section = source.section.describe();
    let [used, whole] = [bought.used_nm, bought.length_nm()].map(|nm| run(nm, source));
    let each = money.figures(price);
    Some(match by {
        SteelBy::Bars => line(
            format!("{count} × {section}, {called}"),
            bought.cost()?,
            format!("{each} each, merchant's list; {used} of {whole} is used"),
        ),
        SteelBy::Used => line(
            format!("{used} of {section}"),
            times_over(price, bought.used_nm, source.length_nm),
            format!("used of {count} × {called} at {each} each, merchant's list"),
        ),
    })
}

/// What the rack gives, and what is kept of all bars.
#[derive(Default)]
struct Kept {
    /// What the bars cost by the prices on the rack, whole, and what is used of them.
    whole: i64,
    used: i64,
    /// How many bars have no price there.
    unpriced: u64,
    /// What the offcuts that are kept are worth, by length of their bars, and how many there are.
    offcuts: i64,
    kept: u64,
}

impl Kept {
    fn of(list: &CutList, rack: &Rack, money: &Currency) -> Result<Self, QuoteError> {
        let mut all = Self::default();
        for bar in list.groups.iter().flat_map(|group| &group.bars) {
            let source = &list.sources[bar.source];
            let price = match source.from {
                From::New(_) => source.price,
                From::Rack(at) => {
                    all.add_from_rack(bar, source, rack_price(rack, at, source, money)?, list.used_nm(bar))
                }
            };
            if bar.is_kept {
                all.kept += bar.times;
                let times = i64::try_from(bar.times).unwrap_or(i64::MAX);
                all.offcuts += times_over(price.unwrap_or(0), bar.offcut_nm, source.length_nm) * times;
            }
        }
        Ok(all)
    }

    fn add_from_rack(&mut self, bar: &BarCuts, source: &Source, price: Option<i64>, used_nm: i64) -> Option<i64> {
        match price {
            None => self.unpriced += bar.times,
            Some(price) => {
                self.whole += price * i64::try_from(bar.times).unwrap_or(i64::MAX);
                self.used += times_over(price, used_nm, source.length_nm);
            }
        }
        price
    }

    fn rack_lines(&self, by: SteelBy) -> Vec<Line> {
        let (amount, source) = match by {
            SteelBy::Bars => (self.whole, "by the prices on the rack"),
            SteelBy::Used => (self.used, "what is used of them, by the prices on the rack"),
        };
        let priced = (self.whole > 0).then(|| line("bars from the rack", amount, source));
        let unpriced = (self.unpriced > 0).then(|| {
            line(format!("{} from the rack", counted(self.unpriced, "bar")), 0, "without a price there: paid before")
        });
        priced.into_iter().chain(unpriced).collect()
    }

    /// The offcuts that are kept: credited, or paid for with their bars.
    fn offcuts(&self, job: &Job) -> Option<Line> {
        match (self.offcuts > 0, job.offcuts_paid) {
            (false, _) => None,
            (true, false) => {
                Some(line("offcuts kept", -self.offcuts, "by length of their bars: they go back on the rack"))
            }
            (true, true) => Some(line(
                format!("{} kept", counted(self.kept, "offcut")),
                0,
                "not credited: the job pays for whole bars",
            )),
        }
    }
}

/// The price of a bar on the rack, where it has one.
fn rack_price(rack: &Rack, at: usize, source: &Source, money: &Currency) -> Result<Option<i64>, QuoteError> {
    let price = rack.bars.get(at).and_then(|line| line.price.as_deref());
    Ok(price.map(|price| of_one(price, source.length_nm, source.mass_kg, money)).transpose()?)
}
