//! Every section that a bar of a plan can be forged from: what it takes of each, what is drawn or upset, and what speaks
//! against it.

use crate::list::source::{From, Source};
use crate::list::wanted::length;
use crate::said::money::times_over;
use crate::said::section::{Alike, alike};
use fh_core::balance::{Balance, BarBalance, balance};
use fh_core::edit::made_of;
use fh_core::findings::{Finding, Severity};
use fh_core::plan::{Plan, SectionSpec};
use fh_work::{Shop, work_out};
use std::cmp::Ordering;
use uom::si::mass::kilogram;
use uom::si::volume::cubic_millimeter;

/// Places along a part at which its section is held against the bar.
const PLACES: usize = 8;
/// Two sections that no hammer is lifted for: common practice, no source.
const ALIKE: f64 = 1.02;

/// Metal that is moved: how much, and how far in the mean.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Moved {
    /// How much metal, in kg.
    pub kg: f64,
    /// How many times its section changes, in the geometric mean; 1 where none is moved.
    pub times: f64,
}

/// What an option takes at the fire.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fire {
    /// How many heats.
    pub heats: usize,
    /// How many minutes of work.
    pub minutes: f64,
    /// How many minutes of waiting for its heats.
    pub waiting: f64,
}

impl Fire {
    /// All minutes at the fire: work and waiting, as the quote counts them.
    pub fn all_minutes(self) -> f64 {
        self.minutes + self.waiting
    }
}

/// What speaks against an option.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Against {
    /// The finding's id.
    pub id: &'static str,
    /// How much it matters.
    pub severity: Severity,
    /// What was found, with its numbers.
    pub message: String,
}

/// A section that a bar may be made from.
#[derive(Clone, Debug, PartialEq)]
pub struct BarOption {
    /// The section.
    pub section: SectionSpec,
    /// What it has alike with other bars.
    pub alike: Alike,
    /// Whether it is the plan's own.
    pub is_own: bool,
    /// Whether some lies on the rack.
    pub is_on_rack: bool,
    /// The length to cut, in nm.
    pub length_nm: i64,
    /// The same in the shop's words.
    pub words: String,
    /// Whether a single bar that can be had is long enough.
    pub is_long_enough: bool,
    /// The mass of that length, in kg.
    pub mass_kg: f64,
    /// What of it is lost to scale and trimming, in kg.
    pub loss_kg: f64,
    /// What that length costs, in the smallest unit; none where no price is known.
    pub cost: Option<i64>,
    /// What is drawn out.
    pub drawn: Moved,
    /// What is upset.
    pub upset: Moved,
    /// How much is moved how far, in cm³: volume times the logarithm of the change of section. It tells options apart.
    pub effort_cm3: f64,
    /// Heats and minutes, once they are worked out.
    pub fire: Option<Fire>,
    /// What speaks against it, the worst first.
    pub against: Vec<Against>,
}

impl BarOption {
    /// Whether it can be forged at all.
    pub fn can_be_forged(&self) -> bool {
        self.against.iter().all(|against| against.severity != Severity::Stop)
    }
}

/// How options are sorted; what speaks against one always comes before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// What it costs.
    Cost,
    /// What is moved, or the minutes where they are known.
    Effort,
}

/// Every option for a bar of a plan, from what can be had, without heats and minutes; sorted by effort. The plan's own section
/// is always among them.
pub fn options(plan: &Plan, bar: usize, sources: &[Source]) -> Vec<BarOption> {
    let Some(of) = plan.bars.get(bar) else { return Vec::new() };
    let material = plan.material.as_deref();
    let own = alike(material, &of.stock);
    let was = balance(plan);
    let mut sections: Vec<(SectionSpec, Alike)> = vec![(of.stock.clone(), own.clone())];
    for source in sources.iter().filter(|source| source.alike.material == own.material) {
        if sections.iter().all(|(_, known)| *known != source.alike) {
            sections.push((source.section.clone(), source.alike.clone()));
        }
    }
    let option = |(section, alike): &(SectionSpec, Alike)| option(plan, bar, section, alike, &was, sources);
    let mut all: Vec<BarOption> = sections.iter().filter_map(option).collect();
    sort(&mut all, By::Effort);
    all
}

fn option(
    plan: &Plan,
    bar: usize,
    section: &SectionSpec,
    alike: &Alike,
    was: &Balance,
    sources: &[Source],
) -> Option<BarOption> {
    let other = made_of(plan, bar, section)?;
    let is_own = other == *plan;
    let balanced = balance(&other);
    let worked = balanced.bars.get(bar)?;
    let (length_nm, words) = length(&other, &balanced, bar)?;
    let kg_of = worked.stock_mass / (worked.stock_area * worked.stock_length);
    let [drawn, upset, effort] = moved(worked);
    let kg = |cubic_mm: f64| (uom::si::f64::Volume::new::<cubic_millimeter>(cubic_mm) * kg_of).get::<kilogram>();
    let of_these: Vec<&Source> = sources.iter().filter(|source| source.alike == *alike).collect();
    let mass_kg = worked.stock_mass.get::<kilogram>();
    Some(BarOption {
        section: section.clone(),
        alike: alike.clone(),
        is_own,
        is_on_rack: of_these.iter().any(|source| matches!(source.from, From::Rack(_))),
        is_long_enough: of_these.is_empty()
            || of_these.iter().any(|source| source.length_nm - source.end_nm >= length_nm),
        length_nm,
        words,
        mass_kg,
        loss_kg: (mass_kg - worked.finished_mass.get::<kilogram>()).max(0.0),
        cost: cost(&of_these, length_nm),
        drawn: Moved { kg: kg(drawn.volume), times: drawn.times() },
        upset: Moved { kg: kg(upset.volume), times: upset.times() },
        effort_cm3: effort.work / 1000.0,
        fire: None,
        against: against(bar, &balanced, if is_own { None } else { Some(was) }),
    })
}

/// The least that a length costs of what can be had, by the metre.
fn cost(sources: &[&Source], length_nm: i64) -> Option<i64> {
    let prices = sources.iter().filter_map(|source| Some(times_over(source.price?, length_nm, source.length_nm)));
    prices.min()
}

#[derive(Clone, Copy, Default)]
struct Sum {
    volume: f64,
    work: f64,
}

impl Sum {
    fn times(self) -> f64 {
        if self.volume > 0.0 { (self.work / self.volume).exp() } else { 1.0 }
    }
}

/// Metal in mm³ that is drawn out, that is upset, and both.
fn moved(bar: &BarBalance) -> [Sum; 3] {
    let [mut drawn, mut upset, mut all] = [Sum::default(); 3];
    let raw = bar.stock_area.value * 1e6;
    // A split's branches have what the cut leaves; what is moved in them is told by their own length.
    for (_, segment) in bar.whole() {
        let volume = segment.finished_volume.get::<cubic_millimeter>() / PLACES as f64;
        for place in 0..PLACES {
            let area = segment.area_at((place as f64 + 0.5) / PLACES as f64).value * 1e6;
            let ratio = if area > 0.0 { raw / area } else { 1.0 };
            let work = volume * ratio.ln().abs();
            if ratio > ALIKE {
                drawn = Sum { volume: drawn.volume + volume, work: drawn.work + work };
            } else if ratio < 1.0 / ALIKE {
                upset = Sum { volume: upset.volume + volume, work: upset.work + work };
            } else {
                continue;
            }
            all = Sum { volume: all.volume + volume, work: all.work + work };
        }
    }
    [drawn, upset, all]
}

/// What is found on a bar that was not found of the plan as it is.
fn against(bar: usize, balanced: &Balance, was: Option<&Balance>) -> Vec<Against> {
    let here = |finding: &&Finding| finding.place.bar == Some(bar) && finding.severity > Severity::Note;
    let known = |finding: &&Finding| {
        was.is_some_and(|was| was.findings.iter().any(|old| (old.id, old.place) == (finding.id, finding.place)))
    };
    let new = balanced.findings.iter().filter(here).filter(|finding| !known(finding));
    let told =
        new.map(|finding| Against { id: finding.id, severity: finding.severity, message: finding.message.clone() });
    let mut all: Vec<Against> = told.collect();
    all.sort_by_key(|against| std::cmp::Reverse(against.severity));
    all
}

/// Works out heats and minutes, one option after the other, while `goes_on` says so; each that is done goes to `done`. The
/// orders are the program's proposals, so that all are measured alike. `wait` is how long the work waits for a heat, in
/// minutes.
pub fn work_options(
    plan: &Plan,
    bar: usize,
    options: &mut [BarOption],
    (shop, wait): (&Shop, f64),
    goes_on: &dyn Fn() -> bool,
    done: &mut dyn FnMut(usize),
) {
    for (at, option) in options.iter_mut().enumerate() {
        if !goes_on() {
            return;
        }
        option.fire = fire(plan, bar, &option.section, shop);
        if let Some(fire) = &mut option.fire {
            fire.waiting = fire.heats as f64 * wait;
        }
        done(at);
    }
}

fn fire(plan: &Plan, bar: usize, section: &SectionSpec, shop: &Shop) -> Option<Fire> {
    let mut other = made_of(plan, bar, section)?;
    other.work.steps = None;
    let worked = work_out(&other, &balance(&other), shop);
    let own = worked.steps.iter().filter(|step| step.bar == Some(bar));
    let heats: std::collections::BTreeSet<usize> =
        own.clone().filter(|step| step.is_hot()).flat_map(|step| step.heat..step.heat + step.needs).collect();
    Some(Fire { heats: heats.len(), minutes: own.map(|step| step.minutes).sum(), waiting: 0.0 })
}

/// Sorts options: those that nothing speaks against first, then by cost or by effort; what is not known comes last.
pub fn sort(options: &mut [BarOption], by: By) {
    let worst = |option: &BarOption| option.against.first().map(|against| against.severity);
    let effort = |option: &BarOption| option.fire.map_or(option.effort_cm3, Fire::all_minutes);
    options.sort_by(|a, b| {
        let cost = || match (a.cost, b.cost) {
            (Some(a), Some(b)) => a.cmp(&b),
            (a, b) => b.is_some().cmp(&a.is_some()),
        };
        let firm = (!a.is_long_enough, worst(a)).cmp(&(!b.is_long_enough, worst(b)));
        let then = if by == By::Cost { cost() } else { Ordering::Equal };
        firm.then(then).then(effort(a).total_cmp(&effort(b))).then_with(|| a.mass_kg.total_cmp(&b.mass_kg))
    });
}
