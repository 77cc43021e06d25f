//! What the fire takes over the whole job: the scale allowance that a plan should carry, with its reason.

use crate::bar::lengths::Lengths;
use crate::bar::profile::girth_in_the_middle;
use crate::bar::progress::Progress;
use crate::fire::hearth::{Fire, bar_section};
use crate::fire::smith::Smith;
use crate::job::heat_rules::zone_mm;
use crate::job::site::{Part, Site, in_mm, in_mm2, in_mm3};
use crate::says::words::hot_length;
use crate::step::WorkedStep;
use fh_core::plan::Plan;
use fh_heat::estimate::Estimate;
use fh_heat::scale::{heat_exposures, heat_loss_um, lost_share};
use std::collections::BTreeMap;

/// How long the metal is at its heat in the fire before it comes out, in seconds: common practice, no source.
const SOAK: f64 = 30.0;

/// How much oxygen reaches it there, as a share of free air: a clean fire, 0.2 to 0.5 (from memory).
const FIRE_AIR: f64 = 0.35;

/// So much of the bar beside what is worked comes hot out of the fire too, in mm: common practice, no source.
const BESIDE: f64 = 30.0;

/// Heats are known to half or twice as many (docs/handbook/heat-model.md): at least and at most so many times those that are
/// counted.
const HEATS: [f64; 2] = [0.5, 2.0];

/// A larger share is no figure to plan with: a part this thin burns, or is kept out of the fire.
pub(crate) const BELIEVED: f64 = 0.25;

/// What the fire takes of one bar.
#[derive(Clone, Debug, PartialEq)]
pub struct ScaleLoss {
    /// The bar, counted from 0.
    pub bar: usize,
    /// The share of the metal that is worked: of the parts that are not left as stock, where any of them is heated.
    pub share: Estimate,
    /// The share of each part that is heated: the part, its heats as they are counted, and what they take of it: at least by half
    /// and at most by twice as many.
    pub parts: Vec<(usize, usize, Estimate)>,
    /// What the fire takes, in a sentence.
    pub taken: String,
    /// What to do about it, in a sentence; none where the marks allow for it.
    pub deed: Option<String>,
    /// How much more bar that is at most, in words; none where the marks allow for it.
    pub more: Option<String>,
}

impl ScaleLoss {
    /// What the fire takes, and what to do about it.
    pub fn reason(&self) -> String {
        std::iter::once(&self.taken).chain(&self.deed).cloned().collect::<Vec<_>>().join(" ")
    }
}

/// What the fire takes of each bar by these steps; bars that are not heated are left out.
pub(crate) fn scale_loss(plan: &Plan, sites: &[Site<'_>], steps: &[WorkedStep]) -> Vec<ScaleLoss> {
    let Some(fire) = Fire::of(plan, Smith::default()) else { return Vec::new() };
    sites.iter().filter_map(|site| of_bar(site, &fire, steps)).collect()
}

fn of_bar(site: &Site<'_>, fire: &Fire, steps: &[WorkedStep]) -> Option<ScaleLoss> {
    let hot = hot_steps(site, steps);
    let mut parts = Vec::new();
    let (mut own, mut stock) = (Lost::default(), Lost::default());
    for part in site.parts().filter(|part| part.segment.form.is_finished() && part.segment.form.branches().is_empty()) {
        let heats = heats_of(site, &hot, part, in_one_heat(site, fire, part));
        if heats.is_empty() {
            continue;
        }
        let share = over_all(&heats);
        let volume = in_mm3(part.balance.finished_volume + part.balance.trimmed_volume);
        if part.segment.form.is_as_stock() { &mut stock } else { &mut own }.add(share, volume);
        parts.push((part.at, heats.len(), share));
    }
    let share = own.share().or_else(|| stock.share())?;
    let (taken, more) = (taken(site, share, &parts)?, more(site, &parts));
    let deed =
        more.as_ref().map(|more| format!("For the most it takes {more} more bar: allow more scale in the plan."));
    Some(ScaleLoss { bar: site.index, share, parts, taken, deed, more })
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

/// What some heats take, each of them a share: at least in half and at most in twice as many.
fn over_all(heats: &[Estimate]) -> Estimate {
    let over = |of: fn(&Estimate) -> f64, count: f64| {
        1.0 - heats.iter().map(|share| (1.0 - of(share).clamp(0.0, 1.0)).powf(count)).product::<f64>()
    };
    Estimate {
        low: over(|share| share.low, HEATS[0]),
        likely: over(|share| share.likely, 1.0),
        high: over(|share| share.likely, HEATS[1]),
    }
}

/// What the fire takes of the worked metal, and the part that loses most.
fn taken(site: &Site<'_>, share: Estimate, parts: &[(usize, usize, Estimate)]) -> Option<String> {
    let is_own = |at: usize| site.part(at).is_some_and(|part| !part.segment.form.is_as_stock());
    let own = parts.iter().filter(|(at, ..)| is_own(*at));
    let most = own.max_by(|one, other| one.2.likely.total_cmp(&other.2.likely));
    let most = most.or_else(|| parts.iter().max_by(|one, other| one.2.likely.total_cmp(&other.2.likely)))?;
    let (name, most) = (site.name(most.0), most.2);
    let all = match (share.likely > BELIEVED, share.high > BELIEVED) {
        (true, _) => format!("{} of the worked metal", percent(share.likely)),
        (_, true) => format!("about {} of the worked metal, perhaps {}", percent(share.likely), percent(share.high)),
        _ => format!("about {} of the worked metal, at most {}", percent(share.likely), percent(share.high)),
    };
    let own = match (most.likely > BELIEVED, most.high > BELIEVED) {
        (true, _) => String::new(),
        (_, true) => format!(", {} to {}", percent(most.likely), percent(most.high)),
        _ => format!(", {} to {}", figure(most.likely), percent(most.high)),
    };
    Some(format!("Scale takes {all}; “{name}” loses most{own}."))
}

/// How much bar may go over and above what the marks allow for, in words; none where that is next to nothing.
fn more(site: &Site<'_>, parts: &[(usize, usize, Estimate)]) -> Option<String> {
    /// Less is within what a saw cuts off, in mm: common practice, no source.
    const LITTLE: f64 = 1.0;
    let of_part = |(at, _, share): &(usize, usize, Estimate)| {
        let part = site.part(*at).filter(|part| !part.segment.form.is_as_stock())?;
        let kept = (1.0 - part.balance.scale_share) / (1.0 - share.high.min(BELIEVED));
        Some(in_mm(part.balance.stock_length) * (kept - 1.0).max(0.0))
    };
    let mm = parts.iter().filter_map(of_part).sum::<f64>();
    (mm >= LITTLE).then(|| hot_length(site.plan, mm))
}

/// A share in words: `4.5 %`; what is no figure to plan with only by its size.
fn percent(share: f64) -> String {
    match share {
        _ if share > BELIEVED => "over a quarter".to_owned(),
        _ if share < 0.1 => format!("{:.1} %", share * 100.0),
        _ => format!("{:.0} %", share * 100.0),
    }
}

/// A share in words, without its sign.
fn figure(share: f64) -> String {
    percent(share).trim_end_matches(" %").to_owned()
}

/// A share with its doubt in words: `about 4.5 % (2.0 to 9.0 %)`.
pub(crate) fn loss_words(share: Estimate) -> String {
    if share.likely > BELIEVED {
        return percent(share.likely);
    }
    if share.high > BELIEVED {
        return format!("about {}, perhaps {}", percent(share.likely), percent(share.high));
    }
    format!("about {} ({} to {})", percent(share.likely), figure(share.low), percent(share.high))
}

/// A hot step with where everything lies after it.
struct HotStep {
    heat: usize,
    needs: usize,
    lengths: Lengths,
    /// From where to where each of its parts lies, in mm.
    worked: Vec<[f64; 2]>,
    /// Which parts have their own shape before it, and after it.
    forged: [Vec<bool>; 2],
}

fn hot_steps(site: &Site<'_>, steps: &[WorkedStep]) -> Vec<HotStep> {
    let mut before: Vec<bool> = Progress::start(site).stages.iter().map(|stage| stage.forged).collect();
    let mut all = Vec::new();
    for step in steps.iter().filter(|step| step.bar == Some(site.index)) {
        let after: Vec<bool> = step.stages.iter().map(|stage| stage.forged).collect();
        if step.is_hot() {
            let lengths = step.lengths_after(site);
            let worked = step.parts().iter().map(|at| lengths.extent([*at].iter())).collect();
            let forged = [before, after.clone()];
            all.push(HotStep { heat: step.heat, needs: step.needs, lengths, worked, forged });
        }
        before = after;
    }
    all
}

/// What each heat takes of a part in which any of it comes hot out of the fire, as a share of its metal: of what is hot of it,
/// and of its section by then.
fn heats_of(site: &Site<'_>, steps: &[HotStep], part: Part<'_>, in_one: [Estimate; 2]) -> Vec<Estimate> {
    let zone = zone_mm(site.plan);
    let mut heats: BTreeMap<usize, Estimate> = BTreeMap::new();
    for step in steps {
        let [start, end] = step.lengths.extent([part.at].iter());
        let long = (end - start).max(1e-6);
        let overlap = |[from, to]: &[f64; 2]| (to + BESIDE).min(end) - (from - BESIDE).max(start);
        let hot = step.worked.iter().map(overlap).fold(0.0, f64::max).min(zone + 2.0 * BESIDE) / long;
        if hot <= 0.0 {
            continue;
        }
        let [raw, forged] = in_one;
        let now = match step.forged.each_ref().map(|forged| forged.get(part.at).copied().unwrap_or(false)) {
            [true, _] => forged,
            [false, true] => raw.plus(forged).times(0.5),
            [false, false] => raw,
        };
        for heat in step.heat..step.heat + step.needs {
            let share = now.times(hot.min(1.0));
            heats
                .entry(heat)
                .and_modify(|own| {
                    if share.likely > own.likely {
                        *own = share
                    }
                })
                .or_insert(share);
        }
    }
    heats.into_values().collect()
}

/// The shares of a part that one heat takes: as the bar it is forged from, and as it is forged.
fn in_one_heat(site: &Site<'_>, fire: &Fire, part: Part<'_>) -> [Estimate; 2] {
    let seconds = (site.plan.work.heats.minutes.unwrap_or(0.5) * 60.0).clamp(5.0, 300.0);
    let cooling = [(0.0, fire.start_celsius), (seconds, fire.finish_celsius())];
    let micrometers = heat_loss_um(&heat_exposures(SOAK, fire.start_celsius, FIRE_AIR, &cooling));
    let raw = bar_section(&site.raw_section(part.at));
    let forged = in_mm2(part.balance.area_at(0.5)).max(1.0);
    let girth_forged = part.balance.shape.as_ref().map_or(0.0, |shape| girth_in_the_middle(shape, forged));
    [(raw.area_mm2(), raw.perimeter_mm()), (forged, girth_forged)]
        .map(|(area, girth)| lost_share(micrometers, area, girth))
}
