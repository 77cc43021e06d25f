//! What was planned against what came out, and what the smith's next plan learns from it.

use crate::fire::effort::{form_of, minutes};
use crate::fire::hearth::{Fire, heat_minutes};
use crate::fire::learnt::Experience;
use crate::job::site::Site;
use crate::job::task::Task;
use fh_core::plan::{Logged, Plan};
use uom::si::mass::kilogram;

/// The log of a plan as experience, held against what is reckoned without any.
pub(crate) fn of_log(plan: &Plan, sites: &[Site<'_>], fire: Option<&Fire>) -> Vec<Experience> {
    let of = |(entry, logged): (usize, &Logged)| {
        let one = one(plan, sites.get(logged.bar_index())?, fire, logged)?;
        Some(Experience { entry: Some(entry), ..one })
    };
    plan.work.log.iter().enumerate().filter_map(of).collect()
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
        entry: None,
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
