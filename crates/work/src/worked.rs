//! The whole order of work of a plan, worked out.

use crate::Shop;
use crate::because::because;
use crate::experience::{self, Experience, Learnt};
use crate::findings::{self, OrderFinding, Scene};
use crate::fire::Fire;
use crate::gauges::{Gauge, gauges};
use crate::heat_with::{heat_with, normalised};
use crate::heating::Lengths;
use crate::held::Hold;
use crate::into_itself::into_itself;
use crate::marks::{LaidLine, MarkLine};
use crate::notes::part_notes;
use crate::order::{Job, Ordered, propose, resolve};
use crate::progress::{Progress, Stage};
use crate::rules::Rule;
use crate::scale_loss::{ScaleLoss, scale_loss};
use crate::scale_short::scale_short;
use crate::site::Site;
use crate::size::Size;
use crate::state::state;
use crate::task::Task;
use crate::tools::{Tool, gather};
use crate::walk::{self, Walk};
use crate::warmth::brushed_in;
use crate::words;
use fh_core::balance::{Balance, BarBalance};
use fh_core::describe::segment_name;
use fh_core::findings::Finding;
use fh_core::metal::View;
use fh_core::plan::{AnvilPlace, Form, Operation, Plan, Step};

/// The order of work of a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Worked {
    /// Whether it is the program's proposal; the smith's own order where not.
    pub proposed: bool,
    /// The steps, one after the other.
    pub steps: Vec<WorkedStep>,
    /// How many heats all steps take, for one of each bar.
    pub heats: usize,
    /// How many heats all bars take that are to be made of each.
    pub heats_of_all: usize,
    /// The tools that they ask for.
    pub tools: Vec<Tool>,
    /// The gauges to make.
    pub gauges: Vec<Gauge>,
    /// What the order is held against, the weightiest first.
    pub findings: Vec<OrderFinding>,
    /// What the fire takes of each bar over all heats; bars that are not heated are left out.
    pub scale: Vec<ScaleLoss>,
    /// The parts whose marks allow for less scale than that.
    pub scale_short: Vec<Finding>,
    /// Where a bar runs into itself in the finished piece.
    pub into_itself: Vec<Finding>,
    /// What the plan's log says against what was reckoned, entry by entry; entries on parts that are gone are left out.
    pub experience: Vec<Experience>,
    /// What was learnt from it and from the smith's other pieces.
    pub learnt: Learnt,
}

/// One step with everything that follows for it.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkedStep {
    /// The step as it stands in the plan, or as it is proposed.
    pub step: Step,
    /// The bar it works on, counted from 0; none where the whole piece is meant.
    pub bar: Option<usize>,
    /// What it does.
    pub tasks: Vec<Task>,
    /// What it is called.
    pub title: String,
    /// What its parts become, in the plan's words.
    pub becomes: Vec<String>,
    /// Why it stands where it does.
    pub because: Vec<String>,
    /// What it is done with; empty where nothing is said.
    pub tool: String,
    /// Where it is done.
    pub place: AnvilPlace,
    /// How the bar is laid there; none where it does not matter.
    pub lay: Option<String>,
    /// The radius of the edge it is worked over, in words.
    pub edge: Option<String>,
    /// The side of the bar that is up, in words.
    pub up: Option<String>,
    /// The sizes to reach.
    pub sizes: Vec<Size>,
    /// From where its places are measured, in words.
    pub measure: Vec<String>,
    /// The marks that it lays off.
    pub marks: Vec<MarkLine>,
    /// The holes and slits that it lays off with them.
    pub laid: Vec<LaidLine>,
    /// How the bar is seen, the side that is marked in sight; none where it lays nothing off.
    pub marked_view: Option<View>,
    /// From where to where slits stand open after it, in mm along the bar as it is then.
    pub slits_mm: Vec<[f64; 2]>,
    /// Where the bar is necked and not forged yet, in mm along the bar as it is after the step.
    pub necks_mm: Vec<f64>,
    /// What has to be heated along with it, because the next step follows in the same heat; after the last heat of a steel that
    /// hardens, how it is normalised.
    pub heat_with: Option<String>,
    /// What the plan notes on the parts that it is the last to work.
    pub part_notes: Vec<String>,
    /// What must not be corrected yet.
    pub leave: Option<String>,
    /// What to check, and with which gauge.
    pub check: Option<String>,
    /// What to beware of.
    pub caution: Option<String>,
    /// Its first heat, counted from 1; 0 before the first.
    pub heat: usize,
    /// How many heats it needs; 0 where it is done cold.
    pub needs: usize,
    /// The heat of the next step, where that closes in what is brushed here; none of other steps.
    pub brushed_in: Option<usize>,
    /// How many minutes it takes.
    pub minutes: f64,
    /// How many minutes of work one heat gives it; none where it is done cold.
    pub heat_minutes: Option<f64>,
    /// What has to be hot, in mm along the bar as it is before the step, for it and, where it is done in one heat, for the steps
    /// that follow in that heat; none where it is done cold.
    pub zone_mm: Option<[f64; 2]>,
    /// Where that lies on the bar as it is after the step, in mm; beyond its end where it is cut off.
    pub hot_mm: Option<[f64; 2]>,
    /// How long that is with what the steps need that follow in the same heat, in mm; of more heats than one it is so in the last.
    /// None where none follows.
    pub(crate) with_next_mm: Option<f64>,
    /// What is held; none where it is done cold, or where nothing is there.
    pub hold: Option<Hold>,
    /// How far each part of its bar has come when it is done.
    pub stages: Vec<Stage>,
}

impl WorkedStep {
    /// Whether it is done hot.
    pub fn is_hot(&self) -> bool {
        self.needs > 0
    }

    /// What holds the bar, in words: that nothing stays cold where that is so; none where it is done cold or in the vice.
    pub fn held_words(&self, plan: &Plan) -> Option<String> {
        let hold = self.hold.filter(|_| self.place != AnvilPlace::Vice)?;
        let bar = plan.bars.get(self.bar?)?;
        if hold.length_mm <= 0.0 {
            // A rivet stands in its header.
            let in_header = |at: &usize| matches!(bar.segment(*at).map(|part| &part.form), Some(Form::Rivet(_)));
            return (!self.parts().iter().any(in_header)).then(|| "nothing stays cold to hold".to_owned());
        }
        let [wide, thick] = hold.jaw_mm.map(|mm| words::length_words(plan, mm));
        let jaw = match hold.jaw_mm {
            [width, _] if width > Hold::WIDE => format!("flat tongs, jaw {thick}"),
            _ if wide == thick => format!("tongs, jaw {thick}"),
            _ => format!("tongs, jaw {wide} × {thick}"),
        };
        let side = if hold.from_the_side { " from the side" } else { "" };
        let poor = if hold.is_poor { "; with care, nothing better stays cold" } else { "" };
        let cool = match hold.cool_first {
            true if plan.material().quench.may => ", cooled and tested",
            true => ", cooled in air and tested",
            false => "",
        };
        let grip = |name: String| match (hold.by_hand, hold.is_propped()) {
            (true, true) => format!("hold “{name}” by hand, the bar on a stand or with a helper{cool}"),
            (true, false) => format!("hold “{name}” by hand{cool}"),
            _ => format!("hold “{name}”{side}: {jaw}{poor}"),
        };
        Some(grip(segment_name(bar, hold.part)))
    }

    /// Where a part of its bar lies after it, in mm.
    pub(crate) fn extent_after(&self, site: &Site<'_>, at: usize) -> [f64; 2] {
        self.lengths_after(site).extent([at].iter())
    }

    /// Where all parts of its bar lie after it.
    pub(crate) fn lengths_after(&self, site: &Site<'_>) -> Lengths {
        let progress = Progress { stages: self.stages.clone(), marked: true };
        Lengths::new(site, &progress)
    }

    /// The parts that it works on, counted through the bar.
    pub fn parts(&self) -> Vec<usize> {
        let mut parts: Vec<usize> = self.tasks.iter().filter_map(|task| task.part).collect();
        parts.dedup();
        parts
    }
}

impl Worked {
    /// The findings of the smith's own steps. What is found of a proposal is told at its steps, and of the plan only once the
    /// steps are its own.
    pub fn own_findings(&self) -> &[OrderFinding] {
        if self.proposed { &[] } else { &self.findings }
    }

    /// How many heats it takes, in words: `30 heats`; `30 heats, 48 for all pieces` where a bar is made more than once.
    pub fn heats_words(&self) -> String {
        let one = words::heats_words(self.heats);
        match words::heats_words(self.heats_of_all) {
            all if self.heats_of_all > self.heats && all != one => {
                format!("{one}, {} for all pieces", all.trim_end_matches(" heats"))
            }
            _ => one,
        }
    }
}

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

/// Works out the order of a plan: the smith's own, or the proposal where there is none.
pub fn work_out(plan: &Plan, balance: &Balance, shop: &Shop) -> Worked {
    let sites = Site::all(plan, balance);
    let job = Job::new(plan, &sites);
    let (fire, experience) = fire_and_experience(plan, &sites, shop);
    let fire = fire.as_ref();
    let (steps, dropped, proposed) = match &plan.work.steps {
        Some(steps) => (steps.clone(), propose(&sites, fire, &job).1, false),
        None => {
            let (steps, dropped) = propose(&sites, fire, &job);
            (steps, dropped, true)
        }
    };
    let ordered = resolve(plan, &sites, steps);
    Setup { plan, sites: &sites, job: &job, ordered: &ordered, dropped: &dropped, shop, proposed, fire }
        .work_out(experience)
}

/// The fire with what was learnt, and the plan's own log as experience.
fn fire_and_experience(plan: &Plan, sites: &[Site<'_>], shop: &Shop) -> (Option<Fire>, Vec<Experience>) {
    let fire = Fire::of(plan);
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
    propose(&sites, fire.as_ref(), &Job::new(plan, &sites)).0
}

/// A bar after so many of the steps: 0 is the bar as it is cut from the rack.
///
/// It is drawn and weighed as any other bar. None where there is no such bar.
pub fn bar_after(plan: &Plan, balance: &Balance, worked: &Worked, bar: usize, steps: usize) -> Option<BarBalance> {
    let sites = Site::all(plan, balance);
    let site = sites.get(bar)?;
    let mut progress = Progress::start(site);
    for task in worked.steps.iter().take(steps).flat_map(|step| &step.tasks) {
        match task.joint {
            Some(joint) if task.operation == Operation::Weld => progress.weld(site, joint),
            None if task.bar == bar => progress.apply(site, task),
            _ => {}
        }
    }
    Some(state(site, &progress))
}

/// A plan with those joints only that are made after so many of the steps.
///
/// A joint that no step makes is there from the beginning, as the plan shows it.
pub fn joined_after(plan: &Plan, worked: &Worked, steps: usize) -> Plan {
    let made = |steps: usize| -> Vec<usize> {
        worked.steps.iter().take(steps).flat_map(|step| &step.tasks).filter_map(|task| task.joint).collect()
    };
    let (now, ever) = (made(steps), made(usize::MAX));
    let joints = plan.joints.iter().enumerate().filter(|(joint, _)| now.contains(joint) || !ever.contains(joint));
    Plan { joints: joints.map(|(_, joint)| joint.clone()).collect(), ..plan.clone() }
}

/// All bars after so many of the steps, as a balance of their own.
pub fn after(plan: &Plan, balance: &Balance, worked: &Worked, steps: usize) -> Balance {
    let bars = (0..plan.bars.len()).filter_map(|bar| bar_after(plan, balance, worked, bar, steps)).collect();
    Balance { bars, findings: Vec::new() }
}

/// An order with everything that it is worked out from.
pub(crate) struct Setup<'b, 'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) sites: &'b [Site<'a>],
    job: &'b Job,
    pub(crate) ordered: &'b [Ordered],
    dropped: &'b [Rule],
    shop: &'b Shop,
    proposed: bool,
    pub(crate) fire: Option<&'b Fire>,
}

impl Setup<'_, '_> {
    fn work_out(&self, experience: Vec<Experience>) -> Worked {
        let loads = walk::loads(self);
        let mut walk = Walk::new(self, &loads);
        let mut steps: Vec<WorkedStep> = self.ordered.iter().map(|ordered| walk.step(ordered)).collect();
        let why = because(self.job, self.ordered, &steps);
        let heat_with = heat_with(self.sites, &steps);
        let normalised = normalised(self.plan, &steps);
        for (((step, because), with), after) in steps.iter_mut().zip(why).zip(heat_with).zip(normalised) {
            step.because = because;
            let said: Vec<String> = with.into_iter().chain(after).collect();
            step.heat_with = (!said.is_empty()).then(|| said.join(" "));
        }
        let notes = part_notes(self.sites, &steps);
        steps.iter_mut().zip(notes).for_each(|(step, notes)| step.part_notes = notes);
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
        Worked {
            proposed: self.proposed,
            heats: walk.heating.heats,
            heats_of_all: heats_of_all(self.plan, &steps),
            tools: gather(walk.tools, self.shop),
            gauges: gauges(self.plan, &self.gauged(&steps)),
            findings,
            scale_short: scale_short(self.sites, &scale),
            into_itself: into_itself(self.plan, self.sites),
            scale,
            steps,
            experience,
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
