//! What the fire takes over the whole job: the scale allowance that a plan should carry, with its reason.

use crate::fire::{Fire, bar_section};
use crate::heat::estimate::Estimate;
use crate::heat::scale::{heat_exposures, heat_loss_um, lost_share, over_heats};
use crate::heating::Lengths;
use crate::hot_profile::girth_in_the_middle;
use crate::site::{Part, Site, in_mm2, in_mm3};
use crate::worked::{Worked, WorkedStep};
use fh_core::balance::Balance;
use fh_core::plan::Plan;

/// How long the metal is at its heat in the fire before it comes out, in seconds: common practice, no source.
const SOAK: f64 = 30.0;
/// How much oxygen reaches it there, as a share of free air: a clean fire, 0.2 to 0.5 (from memory).
const FIRE_AIR: f64 = 0.35;
/// So much of the bar beside what is worked comes hot out of the fire too, in mm: common practice, no source.
const BESIDE: f64 = 30.0;

/// What the fire takes of one bar.
#[derive(Clone, Debug, PartialEq)]
pub struct ScaleLoss {
    /// The bar, counted from 0.
    pub bar: usize,
    /// The share of the metal that is worked.
    pub share: Estimate,
    /// The share of each part that is heated: the part, its heats, and what they take of it.
    pub parts: Vec<(usize, usize, Estimate)>,
    /// Why, in a sentence.
    pub reason: String,
}

/// What the fire takes of each bar in an order of work; bars that are not heated are left out.
pub fn scale_loss(plan: &Plan, balance: &Balance, worked: &Worked) -> Vec<ScaleLoss> {
    let Some(fire) = Fire::of(plan) else { return Vec::new() };
    let sites = Site::all(plan, balance);
    sites.iter().filter_map(|site| of_bar(site, &fire, worked)).collect()
}

fn of_bar(site: &Site<'_>, fire: &Fire, worked: &Worked) -> Option<ScaleLoss> {
    let hot = worked.steps.iter().filter(|step| step.bar == Some(site.index) && step.is_hot());
    let steps: Vec<Heated<'_>> = hot.map(|step| Heated::new(site, step)).collect();
    let mut parts = Vec::new();
    let (mut metal, mut lost) = (0.0, Estimate { low: 0.0, likely: 0.0, high: 0.0 });
    for part in site.parts().filter(|part| part.segment.form.is_finished() && part.segment.form.branches().is_empty()) {
        let heats = heats_of(&steps, part);
        if heats == 0 {
            continue;
        }
        let share = over_heats(in_one_heat(site, fire, part), u32::try_from(heats).unwrap_or(u32::MAX));
        let volume = in_mm3(part.balance.finished_volume + part.balance.trimmed_volume);
        metal += volume;
        lost = lost.plus(share.times(volume));
        parts.push((part.at, heats, share));
    }
    if metal <= 0.0 {
        return None;
    }
    let share = lost.times(1.0 / metal);
    let most = parts.iter().max_by(|one, other| one.2.likely.total_cmp(&other.2.likely))?;
    let percent = |share: f64| format!("{:.1}", share * 100.0);
    let reason = format!(
        "Scale takes about {} % of the worked metal over all heats of this order ({} to {}); “{}” loses most, {} %, for it is hot in {} of them.",
        percent(share.likely),
        percent(share.low),
        percent(share.high),
        site.name(most.0),
        percent(most.2.likely),
        most.1
    );
    Some(ScaleLoss { bar: site.index, share, parts, reason })
}

/// A hot step, where all parts of its bar lie after it, and from where to where it was worked, in mm.
struct Heated<'w> {
    step: &'w WorkedStep,
    lengths: Lengths,
    worked: Vec<[f64; 2]>,
}

impl<'w> Heated<'w> {
    fn new(site: &Site<'_>, step: &'w WorkedStep) -> Self {
        let lengths = step.lengths_after(site);
        let worked = step.parts().into_iter().map(|at| lengths.extent([at].iter())).collect();
        Self { step, lengths, worked }
    }
}

/// In how many heats a part comes hot out of the fire: with it or beside it is worked.
fn heats_of(steps: &[Heated<'_>], part: Part<'_>) -> usize {
    let mut heats = 0;
    let mut last = 0;
    for Heated { step, lengths, worked } in steps {
        let [start, end] = lengths.extent([part.at].iter());
        let near = |[from, to]: &[f64; 2]| from - BESIDE < end && to + BESIDE > start;
        if !worked.iter().any(near) {
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
