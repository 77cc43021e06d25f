//! Making the cut list: pieces grouped by what they can be cut from, each group searched for its best, the rack first.

use super::source::{From, Source, sources_in};
use super::wanted::{ListError, Ordered, Piece, Wanted, WantedWay, wanted};
use crate::cut::{Answer, Demand, Goal, Problem, Supply, Way, Worth, cut};
use crate::kept::merchant::Merchant;
use crate::kept::rack::Rack;
use crate::kept::shop::Shop;
use crate::said::money::Currency;
use crate::said::section::Alike;
use std::collections::BTreeMap;

/// What a list is made from.
#[derive(Clone, Copy, Debug)]
pub struct Stock<'a> {
    /// The bars on hand.
    pub rack: &'a Rack,
    /// What can be bought.
    pub merchant: &'a Merchant,
    /// Ways of cutting, and from which length an offcut is kept.
    pub shop: &'a Shop,
    /// The kerf in nm in place of that of the ways of cutting.
    pub kerf_nm: Option<i64>,
    /// From which length an offcut is kept, in nm, in place of the shop's.
    pub keep_from_nm: Option<i64>,
}

/// How far a search has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// The group that is searched, counted from 0.
    pub group: usize,
    /// How many there are.
    pub groups: usize,
    /// The bars of the best list of the group so far.
    pub bars: i64,
}

/// One cut of a bar.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// The piece, counted from 0.
    pub piece: usize,
    /// Its length in nm.
    pub length_nm: i64,
    /// Where its end lies from the end of the bar that is measured from, in nm; of hot-parted pieces its length, for each is
    /// measured from the end that the bar has then.
    pub at_nm: i64,
}

/// Bars that are cut alike.
#[derive(Clone, Debug, PartialEq)]
pub struct BarCuts {
    /// From what, counted through the list's sources.
    pub source: usize,
    /// How many bars.
    pub times: u64,
    /// The cuts, from the end that is measured from.
    pub cuts: Vec<Cut>,
    /// What is left, in nm, with what gives no piece.
    pub offcut_nm: i64,
    /// Whether that is kept.
    pub is_kept: bool,
}

/// Bars of one source that are bought.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bought<'a> {
    /// From what.
    pub source: &'a Source,
    /// How many bars.
    pub count: u64,
    /// What pieces and cuts take of them, in nm.
    pub used_nm: i64,
}

impl Bought<'_> {
    /// What all of them cost, in the smallest unit; none where the price is not known.
    pub fn cost(&self) -> Option<i64> {
        Some(self.source.price?.saturating_mul(i64::try_from(self.count).unwrap_or(i64::MAX)))
    }

    /// How long all of them are, in nm.
    pub fn length_nm(&self) -> i64 {
        self.source.length_nm.saturating_mul(i64::try_from(self.count).unwrap_or(i64::MAX))
    }
}

/// Pieces that are not cut, for want of a bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotCut {
    /// The piece, counted from 0.
    pub piece: usize,
    /// How many.
    pub count: u64,
    /// By how much it is too long for every bar, in nm; none where there are no more bars.
    pub too_long_nm: Option<i64>,
}

/// What the first aim of a group is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aim {
    /// As little money as can be for what is bought.
    Cost,
    /// As few bars bought as can be: not every price is known.
    NewBars,
}

/// Pieces that can be cut from the same bars.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Their material.
    pub material: String,
    /// Their sections in words, the first piece's first.
    pub sections: Vec<String>,
    /// The way of cutting; empty where the shop has none.
    pub way: String,
    /// The width of a cut in nm.
    pub kerf_nm: i64,
    /// How much of a bar is held to the last, of hot-parted pieces, in nm.
    pub hold_nm: Option<i64>,
    /// The bars, those of the rack first.
    pub bars: Vec<BarCuts>,
    /// What is not cut.
    pub left: Vec<NotCut>,
    /// What it comes to; its cost is that of what is bought.
    pub worth: Worth,
    /// How many bars are bought.
    pub new_bars: u64,
    /// What was aimed at first.
    pub aim: Aim,
    /// No list has less of it.
    pub bound: i64,
    /// Whether no list is better by the first aim.
    pub is_first_proven: bool,
    /// Whether no list is better in anything.
    pub is_proven: bool,
}

/// A cut list.
#[derive(Clone, Debug, PartialEq)]
pub struct CutList {
    /// What is cut, what is cut already, and what has to be known.
    pub wanted: Wanted,
    /// Everything that could be had.
    pub sources: Vec<Source>,
    /// The groups.
    pub groups: Vec<Group>,
    /// What money is counted in.
    pub money: Currency,
}

impl CutList {
    /// Whether every piece is cut.
    pub fn is_whole(&self) -> bool {
        self.groups.iter().all(|group| group.left.is_empty())
    }

    /// What the bars weigh that are bought, in kg.
    pub fn new_mass_kg(&self) -> f64 {
        let bars = self.groups.iter().flat_map(|group| &group.bars);
        let new = bars.filter_map(|bar| Some((self.sources.get(bar.source)?, bar.times)));
        new.filter(|(source, _)| matches!(source.from, From::New(_)))
            .map(|(source, times)| source.mass_kg * times as f64)
            .sum()
    }

    /// What is bought: each source with how many of it.
    pub fn bought(&self) -> Vec<Bought<'_>> {
        let mut sums: BTreeMap<usize, (u64, i64)> = BTreeMap::new();
        for bar in self.groups.iter().flat_map(|group| &group.bars) {
            let (count, used_nm) = sums.entry(bar.source).or_default();
            *count += bar.times;
            *used_nm = used_nm.saturating_add(self.used_nm(bar));
        }
        let named = sums
            .into_iter()
            .filter_map(|(at, (count, used_nm))| Some(Bought { source: self.sources.get(at)?, count, used_nm }));
        named.filter(|bought| matches!(bought.source.from, From::New(_))).collect()
    }

    /// What pieces and cuts take of bars that are cut alike, all of them, in nm: the bars less what is left.
    pub fn used_nm(&self, bar: &BarCuts) -> i64 {
        let length_nm = self.sources.get(bar.source).map_or(0, |source| source.length_nm);
        (length_nm - bar.offcut_nm).saturating_mul(i64::try_from(bar.times).unwrap_or(i64::MAX))
    }

    /// How long the bars of a group are and what pieces and cuts take of them, in nm.
    pub fn taken_nm(&self, group: &Group) -> (i64, i64) {
        let times = |bar: &BarCuts| i64::try_from(bar.times).unwrap_or(i64::MAX);
        let whole = |bar: &BarCuts| {
            self.sources.get(bar.source).map_or(0, |source| source.length_nm.saturating_mul(times(bar)))
        };
        group
            .bars
            .iter()
            .fold((0, 0), |(all, used), bar| (all.saturating_add(whole(bar)), used.saturating_add(self.used_nm(bar))))
    }
}

/// Makes the cut list of an order while `goes_on` says so: stopped early, it is the best so far.
///
/// # Errors
/// Where there are too many pieces, a way of cutting is not known, or prices are of two currencies.
pub fn make(
    order: &[Ordered],
    stock: Stock<'_>,
    goes_on: &dyn Fn() -> bool,
    progress: &mut dyn FnMut(Progress),
) -> Result<CutList, ListError> {
    let wanted = wanted(order)?;
    let money = money(stock);
    let sources = sources_in(stock.rack, stock.merchant, &money)?;
    let lots = lots(&wanted.pieces, stock)?;
    // What the rack still has, group after group.
    let mut left: Vec<Option<u64>> = sources.iter().map(|source| source.count).collect();
    let mut groups = Vec::new();
    for (at, lot) in lots.iter().enumerate() {
        let asked = Asked::new(lot, &wanted.pieces, &sources, &left, stock);
        let mut told = |answer: &Answer| progress(Progress { group: at, groups: lots.len(), bars: answer.worth.bars });
        let answer = cut(&asked.problem, goes_on, &mut told);
        let group = asked.group(&answer, &wanted.pieces, &sources, stock);
        for bar in &group.bars {
            if let Some(Some(count)) = left.get_mut(bar.source) {
                *count = count.saturating_sub(bar.times);
            }
        }
        groups.push(group);
    }
    Ok(CutList { wanted, sources, groups, money })
}

/// What the list counts in: a merchant's list that says nothing of its money counts in the shop's.
fn money(stock: Stock<'_>) -> Currency {
    let merchant = stock.merchant.money();
    let says_nothing = merchant.name.is_empty() && stock.merchant.decimals.is_none();
    if says_nothing { stock.shop.money() } else { merchant }
}

/// Pieces that share bars, and how they are cut.
struct Lot<'a> {
    way: &'a str,
    kerf_nm: i64,
    hold_nm: Option<i64>,
    alike: Vec<Alike>,
    pieces: Vec<usize>,
}

/// Pieces of one way of cutting that can come from the same sections go together, over however many others. What is parted off
/// hot goes first: it needs the long bars.
fn lots<'a>(pieces: &[Piece], stock: Stock<'a>) -> Result<Vec<Lot<'a>>, ListError> {
    let mut lots: Vec<Lot<'a>> = Vec::new();
    for (at, piece) in pieces.iter().enumerate() {
        let way = stock.shop.cutting(piece.cut.as_deref());
        if let (Some(name), None) = (&piece.cut, way) {
            let known: Vec<&str> = stock.shop.cutting.iter().map(|way| way.name.as_str()).collect();
            return Err(ListError::NoWay(name.clone(), known.join(", ")));
        }
        let nm = |mm: f64| (mm * 1e6).round() as i64;
        let mut lot = Lot {
            way: way.map_or("", |way| way.name.as_str()),
            kerf_nm: stock.kerf_nm.unwrap_or_else(|| way.map_or(0, |way| nm(way.kerf.mm()))),
            hold_nm: way.and_then(|way| way.hold.as_ref()).map(|hold| nm(hold.mm())),
            alike: piece.ways.iter().map(|way| way.alike.clone()).collect(),
            pieces: vec![at],
        };
        let (joined, apart): (Vec<Lot<'a>>, Vec<Lot<'a>>) = lots.into_iter().partition(|other| other.shares_with(&lot));
        lots = apart;
        for other in joined.into_iter().rev() {
            lot.take_over(other);
        }
        lots.push(lot);
    }
    lots.iter_mut().for_each(|lot| lot.pieces.sort_unstable());
    lots.sort_by_key(|lot| (lot.hold_nm.is_none(), lot.pieces.first().copied()));
    Ok(lots)
}

impl Lot<'_> {
    fn shares_with(&self, other: &Self) -> bool {
        self.way == other.way && self.alike.iter().any(|alike| other.alike.contains(alike))
    }

    /// The word by which the search knows bars of one kind: its number in the lot.
    fn kind(&self, alike: &Alike) -> String {
        self.alike.iter().position(|own| own == alike).map_or_else(String::new, |at| at.to_string())
    }

    fn take_over(&mut self, other: Self) {
        let new: Vec<Alike> = self.alike.drain(..).filter(|alike| !other.alike.contains(alike)).collect();
        self.alike = other.alike.into_iter().chain(new).collect();
        self.pieces.extend(other.pieces);
    }
}

/// A group as it is searched.
struct Asked<'a> {
    lot: &'a Lot<'a>,
    problem: Problem,
    /// For each supply its source.
    of: Vec<usize>,
    aim: Aim,
}

impl<'a> Asked<'a> {
    fn new(lot: &'a Lot<'a>, pieces: &[Piece], sources: &[Source], left: &[Option<u64>], stock: Stock<'_>) -> Self {
        let usable = |(at, source): &(usize, &Source)| lot.alike.contains(&source.alike) && left[*at] != Some(0);
        let usable: Vec<(usize, &Source)> = sources.iter().enumerate().filter(usable).collect();
        let is_priced = |source: &Source| matches!(source.from, From::Rack(_)) || source.price.is_some();
        let aim = if usable.iter().all(|(_, source)| is_priced(source)) { Aim::Cost } else { Aim::NewBars };
        let supply = |(at, source): &(usize, &Source)| Supply {
            section: lot.kind(&source.alike),
            length_nm: source.length_nm,
            end_nm: source.end_nm.max(lot.hold_nm.unwrap_or(0)),
            count: left[*at],
            price: match (source.from, aim) {
                (From::Rack(_), _) => 0,
                (From::New(_), Aim::Cost) => source.price.unwrap_or(0),
                (From::New(_), Aim::NewBars) => 1,
            },
        };
        let way = |way: &WantedWay| Way { section: lot.kind(&way.alike), length_nm: way.length_nm, extra: 0 };
        let ways = |piece: &Piece| piece.ways.iter().map(way).collect();
        let demand = |at: &usize| Demand { count: pieces[*at].count, ways: ways(&pieces[*at]) };
        let kept_nm = stock.shop.keep_from.as_ref().map(|length| (length.mm() * 1e6).round() as i64);
        Self {
            problem: Problem {
                kerf_nm: lot.kerf_nm,
                keep_from_nm: stock.keep_from_nm.or(kept_nm),
                supplies: usable.iter().map(supply).collect(),
                demands: lot.pieces.iter().map(demand).collect(),
                // Nobody cuts into three bars where one does as well.
                goals: vec![Goal::Cost, Goal::Scrap, Goal::Bars, Goal::Longest],
            },
            of: usable.iter().map(|(at, _)| *at).collect(),
            lot,
            aim,
        }
    }

    fn group(&self, answer: &Answer, pieces: &[Piece], sources: &[Source], stock: Stock<'_>) -> Group {
        let bars: Vec<BarCuts> = answer.bars.iter().map(|bar| self.bar(bar, pieces, sources)).collect();
        let is_new = |bar: &&BarCuts| matches!(sources[bar.source].from, From::New(_));
        let left = answer.left.iter().map(|over| NotCut {
            piece: self.lot.pieces[over.demand],
            count: over.count,
            too_long_nm: over.too_long_nm,
        });
        let mut sections: Vec<String> = Vec::new();
        for way in self.lot.pieces.iter().flat_map(|at| &pieces[*at].ways) {
            let words = way.section.describe();
            if !sections.contains(&words) {
                sections.push(words);
            }
        }
        let whole = answer.left.is_empty();
        Group {
            material: self.lot.alike.first().map(|alike| alike.material.clone()).unwrap_or_default(),
            sections,
            way: if stock.kerf_nm.is_some() { String::new() } else { self.lot.way.to_owned() },
            kerf_nm: self.lot.kerf_nm,
            hold_nm: self.lot.hold_nm,
            new_bars: bars.iter().filter(is_new).map(|bar| bar.times).sum(),
            left: left.collect(),
            worth: answer.worth,
            aim: self.aim,
            bound: answer.bound.first,
            is_first_proven: whole && answer.bound.proven > 0,
            is_proven: whole && answer.bound.proven == self.problem.goals.len(),
            bars,
        }
    }

    fn bar(&self, bar: &crate::cut::BarCut, pieces: &[Piece], sources: &[Source]) -> BarCuts {
        let source = self.of[bar.supply];
        let mut at_nm = 0;
        let mut cuts = Vec::new();
        for &(demand, count) in &bar.cuts {
            let piece = self.lot.pieces[demand];
            let own = pieces[piece].ways.iter().filter(|way| way.alike == sources[source].alike);
            let length_nm = own.map(|way| way.length_nm).min().unwrap_or(0);
            for _ in 0..count {
                let end = at_nm + length_nm;
                cuts.push(Cut { piece, length_nm, at_nm: if self.lot.hold_nm.is_some() { length_nm } else { end } });
                at_nm = end + self.lot.kerf_nm;
            }
        }
        let is_kept = self.problem.keep_from_nm.is_some_and(|from| bar.offcut_nm >= from);
        BarCuts { source, times: bar.times, cuts, offcut_nm: bar.offcut_nm, is_kept }
    }
}
