//! Working out the order of a plan.

use crate::answers::at_the_anvil::anvil_notes;
use crate::answers::into_itself::into_itself;
use crate::answers::scale_loss::scale_loss;
use crate::answers::scale_short::scale_short;
use crate::findings::Scene;
use crate::fire::experience;
use crate::fire::hearth::Fire;
use crate::fire::learnt::{Experience, Learnt};
use crate::fire::propose::propose;
use crate::job::order::{Job, resolve};
use crate::job::site::Site;
use crate::job::task::Task;
use crate::job::why::Why;
use crate::says::because::{self, because};
use crate::says::gauges::gauges;
use crate::says::heat_with::{heat_with, normalised};
use crate::says::notes::part_notes;
use crate::says::shop::{Shop, ToolKind};
use crate::says::size::Size;
use crate::says::wanted::{Wanted, gather, named};
use crate::says::words;
use crate::setup::Setup;
use crate::step::WorkedStep;
use crate::walk::Walk;
use crate::warmth::brushed_in;
use crate::worked::Worked;
use crate::{findings, walk};
use fh_core::balance::Balance;
use fh_core::plan::{Plan, Step};

/// How many heats all pieces take: those of each bar as often as it is made, and those of the whole piece once.
fn heats_of_all(plan: &Plan, steps: &[WorkedStep]) -> usize {
    let mut last = 0;
    let of = |step: &WorkedStep| {
        let end = step.heat + step.needs.saturating_sub(1);
        let new = if step.is_hot() { (end + 1).saturating_sub(step.heat.max(last + 1)) } else { 0 };
        last = last.max(if step.is_hot() { end } else { 0 });
        new * step.bar.and_then(|bar| plan.bars.get(bar)).map_or(1, |bar| bar.pieces() as usize)
    };
    steps.iter().map(of).sum()
}

/// How many heats are taken at least and at most, by what each step opens: for one of each bar, and for all pieces.
fn heats_between(plan: &Plan, steps: &[WorkedStep], new: &[[usize; 2]]) -> [[usize; 2]; 2] {
    let pieces = |step: &WorkedStep| step.bar.and_then(|bar| plan.bars.get(bar)).map_or(1, |bar| bar.pieces() as usize);
    let sum = |end: usize, times: &dyn Fn(&WorkedStep) -> usize| {
        steps.iter().zip(new).map(|(step, new)| new[end].saturating_mul(times(step))).sum::<usize>()
    };
    [[sum(0, &|_| 1), sum(1, &|_| 1)], [sum(0, &pieces), sum(1, &pieces)]]
}

/// Works out the order of a plan: the smith's own, or the proposal where there is none.
pub fn work_out(plan: &Plan, balance: &Balance, shop: &Shop) -> Worked {
    let sites = Site::all(plan, balance);
    let job = Job::new(plan, &sites);
    let (fire, experience) = fire_and_experience(plan, &sites, shop);
    let fire = fire.as_ref();
    let ruled = job.ruled();
    let own = plan.work.steps.clone();
    let proposed = own.is_none();
    let ordered = resolve(plan, &sites, own.unwrap_or_else(|| propose(&sites, fire, &job, &ruled)));
    let dropped = &ruled.dropped;
    let setup = Setup { plan, sites: &sites, job: &job, ordered: &ordered, dropped, shop, proposed, fire };
    let mut worked = setup.work_out(experience);
    let notes = anvil_notes(&sites, &worked, &balance.findings);
    worked.steps.iter_mut().zip(notes).for_each(|(step, notes)| step.part_notes.extend(notes));
    worked
}

/// The fire with what was learnt, and the plan's own log as experience.
fn fire_and_experience(plan: &Plan, sites: &[Site<'_>], shop: &Shop) -> (Option<Fire>, Vec<Experience>) {
    let fire = Fire::of(plan, shop.smith);
    let own = experience::of_log(plan, sites, fire.as_ref());
    // Its own log goes before what was kept of the same piece.
    let others = shop.experience.iter().filter(|one| own.is_empty() || one.piece != plan.title);
    let learnt = Learnt::of(others.chain(&own));
    (fire.map(|fire| fire.taught(learnt)), own)
}

/// The program's own proposal, as steps.
pub fn proposal(plan: &Plan, balance: &Balance) -> Vec<Step> {
    let sites = Site::all(plan, balance);
    let (fire, _) = fire_and_experience(plan, &sites, &Shop::default());
    let job = Job::new(plan, &sites);
    propose(&sites, fire.as_ref(), &job, &job.ruled())
}

/// Every pair of tasks of which the first has to come before the second, and why; also those that give way to firmer ones.
pub fn rules(plan: &Plan, balance: &Balance) -> Vec<(Task, Task, Why)> {
    let job = Job::new(plan, &Site::all(plan, balance));
    job.rules.iter().map(|rule| (job.tasks[rule.before], job.tasks[rule.after], rule.why)).collect()
}

/// Lays ready what the sentences of a step name besides its own tools.
fn name_tools(tools: &mut Vec<(usize, Vec<Wanted>)>, steps: &[WorkedStep]) {
    for (number, step) in steps.iter().enumerate() {
        let said = [&step.lay, &step.leave, &step.check].into_iter().flatten().chain(&step.part_notes);
        let own = tools.iter().filter(|(of, _)| *of == number).flat_map(|(_, own)| own);
        let has: Vec<ToolKind> = own.map(|tool| tool.kind).collect();
        let more = named(said.map(String::as_str), &has);
        if !more.is_empty() {
            tools.push((number, more));
        }
    }
}

impl Setup<'_, '_> {
    pub(crate) fn work_out(&self, experience: Vec<Experience>) -> Worked {
        let loads = walk::loads(self);
        let mut walk = Walk::new(self, &loads);
        let mut steps: Vec<WorkedStep> = self.ordered.iter().map(|ordered| walk.step(ordered)).collect();
        let before = because(self.job, self.ordered);
        let why: Vec<Vec<String>> = before.iter().map(|before| because::words(before, &steps)).collect();
        steps.iter_mut().zip(before).for_each(|(step, before)| step.before = before);
        let heat_with = heat_with(self.sites, &steps);
        let normalised = normalised(self.plan, &steps);
        for (((step, because), with), after) in steps.iter_mut().zip(why).zip(heat_with).zip(normalised) {
            step.because = because;
            let said: Vec<String> = with.into_iter().chain(after).collect();
            step.heat_with = (!said.is_empty()).then(|| said.join(" "));
        }
        let notes = part_notes(self.sites, &steps);
        steps.iter_mut().zip(notes).for_each(|(step, notes)| step.part_notes = notes);
        name_tools(&mut walk.tools, &steps);
        let brushed_in = brushed_in(&steps);
        steps.iter_mut().zip(brushed_in).for_each(|(step, heat)| step.brushed_in = heat);
        let scene = Scene {
            plan: self.plan,
            sites: self.sites,
            job: self.job,
            ordered: self.ordered,
            steps: &steps,
            seen: &walk.seen,
            dropped: self.dropped,
        };
        let findings = findings::findings(&scene);
        let scale = scale_loss(self.plan, self.sites, &steps);
        let (heats, heats_of_all) = (walk.heating.heats, heats_of_all(self.plan, &steps));
        let [one, all] = heats_between(self.plan, &steps, &walk.new_heats);
        Worked {
            proposed: self.proposed,
            heats,
            heats_between: [one[0].min(heats), one[1].max(heats)],
            heats_of_all,
            heats_of_all_between: [all[0].min(heats_of_all), all[1].max(heats_of_all)],
            tools: gather(walk.tools, self.shop),
            gauges: gauges(self.plan, &self.gauged(&steps)),
            findings,
            scale_short: scale_short(self.sites, &scale),
            into_itself: into_itself(self.plan, self.sites),
            scale,
            steps,
            experience,
            smith: self.shop.smith,
            learnt: self.fire.map_or_else(Learnt::default, |fire| fire.learnt.clone()),
        }
    }

    /// The sizes of every step with the names of its parts.
    fn gauged(&self, steps: &[WorkedStep]) -> Vec<(usize, String, Vec<Size>)> {
        let named = |(number, step): (usize, &WorkedStep)| {
            let site = step.bar.and_then(|bar| self.sites.get(bar));
            let name = |site: &Site<'_>| step.parts().into_iter().map(|at| site.name(at)).collect::<Vec<_>>();
            (number, words::joined(&site.map(name).unwrap_or_default()), step.sizes.clone())
        };
        steps.iter().enumerate().map(named).collect()
    }
}
