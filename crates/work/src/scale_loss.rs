//! What the fire takes over the whole job: the scale allowance that a plan should carry, with its reason.

use crate::fire::{Fire, bar_section};
use crate::heat::estimate::Estimate;
use crate::heat::scale::{heat_exposures, heat_loss_um, lost_share, over_heats};
use crate::heating::Lengths;
use crate::hot_profile::girth_in_the_middle;
use crate::site::{Part, Site, in_mm2, in_mm3};
use crate::worked::WorkedStep;
use fh_core::plan::Plan;

/// How long the metal is at its heat in the fire before it comes out, in seconds: common practice, no source.
const SOAK: f64 = 30.0;
/// How much oxygen reaches it there, as a share of free air: a clean fire, 0.2 to 0.5 (from memory).
const FIRE_AIR: f64 = 0.35;
/// So much of the bar beside what is worked comes hot out of the fire too, in mm: common practice, no source.
const BESIDE: f64 = 30.0;

/// A smith who is quick takes so many of the heats that are counted: they are known to half or twice as many
/// (docs/handbook/heat-model.md), and the count goes by a slow one.
const FEWER_HEATS: f64 = 0.5;
/// A larger share is no figure to plan with: so thin a part burns, or is kept out of the fire.
pub(crate) const BELIEVED: f64 = 0.25;

/// What the fire takes of one bar.
#[derive(Clone, Debug, PartialEq)]
pub struct ScaleLoss {
    /// The bar, counted from 0.
    pub bar: usize,
    /// The share of the metal that is worked: of the parts that are not left as stock, where any of them is heated.
    pub share: Estimate,
    /// The share of each part that is heated: the part, its heats, and what they take of it. The low end is that of
    /// half as many heats.
    pub parts: Vec<(usize, usize, Estimate)>,
    /// Why, in a sentence.
    pub reason: String,
}

/// What the fire takes of each bar by these steps; bars that are not heated are left out.
pub(crate) fn scale_loss(plan: &Plan, sites: &[Site<'_>], steps: &[WorkedStep]) -> Vec<ScaleLoss> {
    let Some(fire) = Fire::of(plan) else { return Vec::new() };
    sites.iter().filter_map(|site| of_bar(site, &fire, steps)).collect()
}

fn of_bar(site: &Site<'_>, fire: &Fire, steps: &[WorkedStep]) -> Option<ScaleLoss> {
    let hot: Vec<HotStep> = steps
        .iter()
        .filter(|step| step.bar == Some(site.index) && step.is_hot())
        .map(|step| HotStep::new(site, step))
        .collect();
    let mut parts = Vec::new();
    let (mut own, mut stock) = (Lost::default(), Lost::default());
    for part in site.parts().filter(|part| part.segment.form.is_finished() && part.segment.form.branches().is_empty()) {
        let heats = heats_of(&hot, part);
        if heats == 0 {
            continue;
        }
        let share = over_so_many(in_one_heat(site, fire, part), heats);
        let volume = in_mm3(part.balance.finished_volume + part.balance.trimmed_volume);
        if part.segment.form.is_as_stock() { &mut stock } else { &mut own }.add(share, volume);
        parts.push((part.at, heats, share));
    }
    let share = own.share().or_else(|| stock.share())?;
    let reason = reason(site, share, &parts)?;
    Some(ScaleLoss { bar: site.index, share, parts, reason })
}

/// What is lost of so much metal.
#[derive(Default)]
struct Lost {
    /// In mm³.
    metal: f64,
    /// In mm³; none of no metal.
    lost: Option<Estimate>,
}

impl Lost {
    fn add(&mut self, share: Estimate, volume: f64) {
        let lost = share.times(volume);
        self.metal += volume;
        self.lost = Some(self.lost.map_or(lost, |before| before.plus(lost)));
    }

    /// The share that is lost; none where there is no metal.
    fn share(&self) -> Option<Estimate> {
        self.lost.filter(|_| self.metal > 0.0).map(|lost| lost.times(1.0 / self.metal))
    }
}

/// What so many heats take, each of them a share.
fn over_so_many(in_one: Estimate, heats: usize) -> Estimate {
    let count = |heats: f64| heats.min(f64::from(u32::MAX)) as u32;
    let all = over_heats(in_one, count(heats as f64));
    Estimate { low: over_heats(in_one, count((heats as f64 * FEWER_HEATS).ceil())).low, ..all }
}

fn reason(site: &Site<'_>, share: Estimate, parts: &[(usize, usize, Estimate)]) -> Option<String> {
    let own = parts.iter().filter(|(at, ..)| site.part(*at).is_some_and(|part| !part.segment.form.is_as_stock()));
    let most = own.max_by(|one, other| one.2.likely.total_cmp(&other.2.likely));
    let most = most.or_else(|| parts.iter().max_by(|one, other| one.2.likely.total_cmp(&other.2.likely)))?;
    Some(format!(
        "Scale takes about {} of the worked metal over all heats of this order; “{}” loses most, {}.",
        loss_words(share),
        site.name(most.0),
        loss_words(most.2)
    ))
}

/// A share with its doubt in words: `4.5 % (2 to 9 %)`; what is no figure to plan with only by its size.
pub(crate) fn loss_words(share: Estimate) -> String {
    let percent =
        |share: f64| if share < 0.1 { format!("{:.1}", share * 100.0) } else { format!("{:.0}", share * 100.0) };
    if share.likely > BELIEVED {
        return "more than a quarter".to_owned();
    }
    let high =
        if share.high > BELIEVED { "more than a quarter".to_owned() } else { format!("{} %", percent(share.high)) };
    format!("{} % ({} to {high})", percent(share.likely), percent(share.low))
}

/// A hot step with where everything lies after it.
struct HotStep {
    heat: usize,
    needs: usize,
    lengths: Lengths,
    /// From where to where each of its parts lies, in mm.
    worked: Vec<[f64; 2]>,
}

impl HotStep {
    fn new(site: &Site<'_>, step: &WorkedStep) -> Self {
        let lengths = step.lengths_after(site);
        let worked = step.parts().iter().map(|at| lengths.extent([*at].iter())).collect();
        Self { heat: step.heat, needs: step.needs, lengths, worked }
    }
}

/// In how many heats a part comes hot out of the fire: with it or beside it is worked.
fn heats_of(steps: &[HotStep], part: Part<'_>) -> usize {
    let mut heats = 0;
    let mut last = 0;
    for step in steps {
        let [start, end] = step.lengths.extent([part.at].iter());
        if !step.worked.iter().any(|[from, to]| from - BESIDE < end && to + BESIDE > start) {
            continue;
        }
        heats += if step.heat == last { step.needs.saturating_sub(1) } else { step.needs };
        last = step.heat + step.needs - 1;
    }
    heats
}

/// The share of a part that one heat takes: of its mean section, between the bar and what it becomes.
fn in_one_heat(site: &Site<'_>, fire: &Fire, part: Part<'_>) -> Estimate {
    let seconds = (site.plan.work.heats.minutes.unwrap_or(0.5) * 60.0).clamp(5.0, 300.0);
    let cooling = [(0.0, fire.start_celsius), (seconds, fire.finish_celsius())];
    let micrometers = heat_loss_um(&heat_exposures(SOAK, fire.start_celsius, FIRE_AIR, &cooling));
    let raw = bar_section(&site.raw_section(part.at));
    let (area, girth) = (raw.area_mm2(), raw.perimeter_mm());
    let forged = in_mm2(part.balance.area_at(0.5)).max(1.0);
    let girth_forged = part.balance.shape.as_ref().map_or(0.0, |shape| girth_in_the_middle(shape, forged));
    let share = |area: f64, girth: f64| lost_share(micrometers, area, girth);
    share(area, girth).plus(share(forged, girth_forged)).times(0.5)
}
