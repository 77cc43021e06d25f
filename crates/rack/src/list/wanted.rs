//! The pieces that plans ask for: the lengths that their mark sheets print, rounded up to a tenth of a millimetre.

use crate::said::section::{Alike, alike};
use fh_core::balance::{Balance, balance};
use fh_core::edit::made_of;
use fh_core::findings::Severity;
use fh_core::plan::{Plan, SectionSpec};
use thiserror::Error;

/// The most pieces in one list.
pub const MOST_PIECES: u64 = 1_000_000;

/// A tenth of a millimetre in nm.
const TENTH_NM: i64 = 100_000;

/// A plan of a job, read.
#[derive(Clone, Debug, PartialEq)]
pub struct Ordered {
    /// The plan.
    pub plan: Plan,
    /// How many of it.
    pub count: u32,
    /// The way of cutting, by its name; the shop's first where it is left out.
    pub cut: Option<String>,
    /// Larger sections that its bars may be made from.
    pub also_from: Vec<SectionSpec>,
}

impl Ordered {
    /// So many of a plan.
    pub fn new(plan: Plan, count: u32) -> Self {
        Self { plan, count, cut: None, also_from: Vec::new() }
    }
}

/// Why no list can be made.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum ListError {
    /// Too many pieces.
    #[error("{0} pieces are wanted; a list has {MOST_PIECES} at most: cut them in several lists")]
    TooMany(u64),
    /// A way of cutting that the shop does not have.
    #[error("there is no way of cutting called \"{0}\" in the shop's figures; there is {1}")]
    NoWay(String, String),
    /// Money of two currencies, or a price that cannot be read in the one.
    #[error("{0}")]
    Money(String),
}

/// A section that a piece may be made from, and what it takes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct WantedWay {
    /// The section.
    pub section: SectionSpec,
    /// What it has alike with bars on hand.
    pub alike: Alike,
    /// The length that it takes, in nm.
    pub length_nm: i64,
}

/// Pieces of one kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// What it is called.
    pub name: String,
    /// Its plan in the order, counted from 0.
    pub plan: usize,
    /// Its bar in the plan, counted from 0.
    pub bar: usize,
    /// How many.
    pub count: u64,
    /// The length in the shop's words, as the mark sheet prints it.
    pub words: String,
    /// Its material.
    pub material: String,
    /// The way of cutting, by its name; the shop's first where it is left out.
    pub cut: Option<String>,
    /// From what it may be made; the plan's own section first.
    pub ways: Vec<WantedWay>,
}

/// What plans ask for.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wanted {
    /// The pieces to cut.
    pub pieces: Vec<Piece>,
    /// The bars that are cut already, with how many: nothing is cut for them.
    pub cut_already: Vec<(String, u64)>,
    /// What has to be known, each a sentence.
    pub told: Vec<String>,
}

/// Gathers the pieces of all plans.
///
/// # Errors
/// Where there are too many.
pub fn wanted(order: &[Ordered]) -> Result<Wanted, ListError> {
    let mut all = Wanted::default();
    let several = order.len() > 1;
    for (at, ordered) in order.iter().enumerate() {
        gather(at, ordered, several, &mut all);
    }
    let count = all.pieces.iter().map(|piece| piece.count).fold(0, u64::saturating_add);
    if count > MOST_PIECES { Err(ListError::TooMany(count)) } else { Ok(all) }
}

fn gather(at: usize, ordered: &Ordered, several: bool, all: &mut Wanted) {
    let plan = &ordered.plan;
    let balanced = balance(plan);
    if balanced.findings.iter().any(|finding| finding.severity == Severity::Stop) {
        all.told.push(format!("{} cannot be forged as it stands: see firstheat check.", title(plan)));
    }
    for (index, bar) in plan.bars.iter().enumerate() {
        let count = u64::from(bar.pieces()) * u64::from(ordered.count);
        let name = name(plan, index, several);
        let Some((length_nm, words)) = length(plan, &balanced, index) else {
            all.told.push(format!("Nothing is marked on {name} yet: it is left out."));
            continue;
        };
        if bar.length.is_some() {
            all.cut_already.push((name, count));
            continue;
        }
        let material = plan.material.as_deref();
        let own = WantedWay { section: bar.stock.clone(), alike: alike(material, &bar.stock), length_nm };
        let others =
            ordered.also_from.iter().filter_map(|section| other_way(plan, index, section, &name, &mut all.told));
        let mut ways = vec![own];
        ways.extend(others.filter(|way| way.alike != alike(material, &bar.stock)).collect::<Vec<_>>());
        let material = ways[0].alike.material.clone();
        let cut = ordered.cut.clone();
        all.pieces.push(Piece { name, plan: at, bar: index, count, words, material, cut, ways });
    }
}

/// What a bar takes of another section; none where it cannot be forged from that.
fn other_way(plan: &Plan, bar: usize, section: &SectionSpec, name: &str, told: &mut Vec<String>) -> Option<WantedWay> {
    let other = made_of(plan, bar, section)?;
    let balanced = balance(&other);
    let stopped =
        |finding: &&fh_core::findings::Finding| finding.severity == Severity::Stop && finding.place.bar == Some(bar);
    if let Some(stop) = balanced.findings.iter().find(stopped) {
        told.push(format!("{name} is not taken from {}: {}", section.describe(), stop.message));
        return None;
    }
    let (length_nm, _) = length(&other, &balanced, bar)?;
    Some(WantedWay { section: section.clone(), alike: alike(plan.material.as_deref(), section), length_nm })
}

/// The length to cut of a bar, in nm and in words; none where nothing is marked on it.
pub(crate) fn length(plan: &Plan, balanced: &Balance, bar: usize) -> Option<(i64, String)> {
    let worked = balanced.bars.get(bar)?;
    let shop = worked.cut_length_shop(plan.units.marks);
    let nm = (shop.mm() * 1e6).round() as i64;
    let up = nm.div_euclid(TENTH_NM) + i64::from(nm.rem_euclid(TENTH_NM) > 0);
    (nm > 0).then(|| (up * TENTH_NM, shop.text()))
}

/// The title of a plan, or a word for one that has none.
pub fn title(plan: &Plan) -> String {
    let title = plan.title.trim();
    if title.is_empty() { "untitled plan".to_owned() } else { title.to_owned() }
}

/// What a piece is called: its bar, and with several plans the plan before it.
fn name(plan: &Plan, bar: usize, several: bool) -> String {
    let own = plan.bars.get(bar).map(|bar| bar.name.trim()).filter(|name| !name.is_empty());
    let own = own.map_or_else(|| format!("bar {}", bar + 1), str::to_owned);
    match (several, plan.bars.len()) {
        (false, 1) if own == "bar" => title(plan),
        (true, 1) => title(plan),
        (true, _) => format!("{}: {own}", title(plan)),
        _ => own,
    }
}
