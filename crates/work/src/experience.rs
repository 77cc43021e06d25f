//! What was planned against what came out, and what the smith's next plan learns from it.

use crate::effort::minutes;
use crate::fire::{Fire, heat_minutes};
use crate::site::Site;
use crate::task::Task;
use fh_core::plan::{Logged, Operation, Plan};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use uom::si::mass::kilogram;

/// One job as it was reckoned, before anything was learnt, and as it came out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Experience {
    /// The title of the piece.
    pub piece: String,
    /// What was done.
    pub operation: Operation,
    /// The forms of the parts it was done to, as `taper` or `flag`.
    pub form: String,
    /// Minutes of work: reckoned, and as they came out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<[f64; 2]>,
    /// Minutes that one heat gave: reckoned, and as they came out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heat_minutes: Option<[f64; 2]>,
    /// Blows: reckoned, and counted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blows: Option<[f64; 2]>,
    /// The share of metal lost to scale: planned, and weighed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<[f64; 2]>,
}

/// What is learnt from experience: how many times the reckoned figure is the likely one.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Learnt {
    /// Of the minutes of each operation and form.
    minutes: BTreeMap<(Operation, String), f64>,
    /// Of the minutes of each operation on any form.
    operations: BTreeMap<Operation, f64>,
    /// Of the minutes that a heat gives.
    pub heat: Option<f64>,
    /// Of blows.
    pub blows: Option<f64>,
    /// The share of metal lost to scale, weighed.
    pub scale: Option<f64>,
}

/// No single job moves a factor farther than this, up or down.
const FARTHEST: f64 = 5.0;

impl Learnt {
    /// From what the smith has logged.
    ///
    /// The mean of logarithms, with one job more that came out just as reckoned: a single odd day moves it half way.
    pub fn of<'e>(experience: impl Iterator<Item = &'e Experience> + Clone) -> Self {
        let factor = |pairs: Vec<[f64; 2]>| {
            let logs: Vec<f64> = pairs.iter().filter_map(|pair| ratio(*pair)).map(f64::ln).collect();
            (!logs.is_empty()).then(|| (logs.iter().sum::<f64>() / (logs.len() as f64 + 1.0)).exp())
        };
        let mut by_form: BTreeMap<(Operation, String), Vec<[f64; 2]>> = BTreeMap::new();
        let mut by_operation: BTreeMap<Operation, Vec<[f64; 2]>> = BTreeMap::new();
        for one in experience.clone() {
            let Some(pair) = one.minutes else { continue };
            by_form.entry((one.operation, one.form.clone())).or_default().push(pair);
            by_operation.entry(one.operation).or_default().push(pair);
        }
        let weighed: Vec<f64> = experience.clone().filter_map(|one| one.scale).map(|[_, out]| out).collect();
        Self {
            minutes: by_form.into_iter().filter_map(|(key, pairs)| Some((key, factor(pairs)?))).collect(),
            operations: by_operation.into_iter().filter_map(|(key, pairs)| Some((key, factor(pairs)?))).collect(),
            heat: factor(experience.clone().filter_map(|one| one.heat_minutes).collect()),
            blows: factor(experience.clone().filter_map(|one| one.blows).collect()),
            scale: (!weighed.is_empty()).then(|| weighed.iter().sum::<f64>() / weighed.len() as f64),
        }
    }

    /// How many times the reckoned minutes of an operation on a form it is likely to take.
    pub fn minutes(&self, operation: Operation, form: &str) -> f64 {
        let own = self.minutes.get(&(operation, form.to_owned()));
        own.or_else(|| self.operations.get(&operation)).copied().unwrap_or(1.0)
    }

    /// Whether nothing was learnt yet.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// How many times the reckoned figure came out; none where one of them says nothing.
fn ratio([reckoned, out]: [f64; 2]) -> Option<f64> {
    let sound = reckoned.is_finite() && out.is_finite() && reckoned > 0.0 && out > 0.0;
    sound.then(|| (out / reckoned).clamp(1.0 / FARTHEST, FARTHEST))
}

/// The log of a plan as experience, held against what is reckoned without any.
pub(crate) fn of_log(plan: &Plan, sites: &[Site<'_>], fire: Option<&Fire>) -> Vec<Experience> {
    plan.work.log.iter().filter_map(|logged| one(plan, sites.get(logged.bar_index())?, fire, logged)).collect()
}

fn one(plan: &Plan, site: &Site<'_>, fire: Option<&Fire>, logged: &Logged) -> Option<Experience> {
    let parts = logged.parts.iter().filter_map(|part| site.bar.find_path(part));
    let mut tasks: Vec<Task> = parts.map(|at| Task::on(site.index, logged.operation, at)).collect();
    if tasks.is_empty() && logged.parts.is_empty() {
        tasks.push(Task::whole(site.index, logged.operation));
    }
    if tasks.is_empty() {
        return None;
    }
    let reckoned: f64 = tasks.iter().map(|task| minutes(site, fire, task)).sum();
    let heat = heat_minutes(site, fire, &tasks);
    let a_heat = logged.minutes.zip(logged.heats).filter(|(_, heats)| *heats > 1);
    let blows = || {
        let fire = fire?;
        Some(reckoned * 60.0 * fire.hammer.blows_per_second)
    };
    Some(Experience {
        piece: plan.title.clone(),
        operation: logged.operation,
        form: form_of(site, &tasks),
        minutes: logged.minutes.map(|out| [reckoned, out]),
        // With one heat alone nobody knows how much of it was left.
        heat_minutes: a_heat.map(|(minutes, heats)| [heat, minutes / f64::from(heats)]),
        blows: logged.blows.and_then(|out| Some([blows()?, f64::from(out)])),
        scale: logged.kg.and_then(|kg| scale(site, kg)),
    })
}

/// The form of the first part that is worked.
pub(crate) fn form_of(site: &Site<'_>, tasks: &[Task]) -> String {
    let part = tasks.iter().find_map(|task| task.part).and_then(|at| site.part(at));
    part.map_or_else(String::new, |part| part.segment.form.kind().name().to_owned())
}

/// The share of the worked metal that the fire took, from the weight of the finished bar: as planned, and as it came out.
fn scale(site: &Site<'_>, kg: f64) -> Option<[f64; 2]> {
    let per_volume = site.balance.finished_mass / site.balance.finished_volume;
    let (mut finished, mut trimmed, mut before) = (0.0, 0.0, 0.0);
    for part in site.chains.first()?.1.iter().filter_map(|at| site.part(*at)) {
        if !part.segment.form.is_finished() {
            continue;
        }
        let mass = |volume: uom::si::f64::Volume| (volume * per_volume).get::<kilogram>();
        let (own, cut) = (mass(part.balance.finished_volume), mass(part.balance.trimmed_volume));
        finished += own;
        trimmed += cut;
        before += (own + cut) / (1.0 - part.balance.scale_share).max(1e-6);
    }
    let planned = 1.0 - (finished + trimmed) / before;
    let out = 1.0 - (kg + trimmed) / before;
    // More than a third is a mistake at the scales, less than nothing too.
    ((0.0..0.34).contains(&out) && planned.is_finite()).then_some([planned, out])
}
