//! Can a step be done in one heat? How the bar, as it is at the step, cools along its length, against the work that is in it.

use crate::bar::lengths::Lengths;
use crate::bar::profile::profile;
use crate::bar::progress::Progress;
use crate::bar::state::state;
use crate::fire::effort::{moved, redundant};
use crate::fire::hearth::{Fire, HANDLING, work_joules};
use crate::job::heat_rules;
use crate::job::site::Site;
use crate::job::task::Task;
use crate::says::words::length_words;
use crate::step::WorkedStep;
use crate::worked::Worked;
use fh_core::balance::Balance;
use fh_core::plan::Plan;
use fh_heat::blows;
use fh_heat::cooled::{Cooled, InRange, Workable, doubted};
use fh_heat::cooling::{Span, cool};
use fh_heat::estimate::Estimate;
use fh_heat::hot_zone::{HotZone, Start};

/// For so many seconds the cooling is worked out.
const SPAN: f64 = 120.0;

/// How soft the edges of the hot length are, in mm: common practice, no source.
const EDGE: f64 = 15.0;

/// Beyond what is worked so much is heated at each side, in mm: its soft edge has to lie outside.
const BEYOND: f64 = 2.0 * EDGE;

/// How many times longer or shorter work may take that is not reckoned from the hammer.
const USUAL_DOUBT: f64 = 1.5;

/// What one heat does for a step.
#[derive(Clone, Debug)]
pub struct OneHeat {
    /// What is worked, in mm along the bar as it is before the step.
    pub worked_mm: [f64; 2],
    /// What comes hot out of the fire.
    pub heated_mm: [f64; 2],
    /// The heat out of the fire, in °C.
    pub start_celsius: f64,
    /// How cold it may get, in °C.
    pub stop_celsius: f64,
    /// For how long all that is worked is hot enough, on the anvil.
    pub on_anvil: Workable,
    /// The same in still air.
    pub in_air: Workable,
    /// How long the work takes, in seconds.
    pub work_seconds: Estimate,
    /// The blows for it; none where it is not reckoned from the hammer.
    pub blows: Option<Estimate>,
    /// How many heats it takes.
    pub heats: Estimate,
    /// Whether one heat is enough.
    pub verdict: Verdict,
    /// Why, in sentences.
    pub reasons: Vec<String>,
    /// How far it can be trusted, in sentences.
    pub doubts: Vec<String>,
    /// How much of the bar is in range at each second, on the anvil.
    pub in_range: Vec<InRange>,
    /// The cooling on the anvil, to be drawn.
    pub cooled: Cooled,
}

/// Whether one heat is enough.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Surely: the work is done before the least of the time is over.
    Yes,
    /// Likely.
    Likely,
    /// Hardly.
    Hardly,
    /// No: the least of the work takes longer than the most of the time.
    No,
}

impl Verdict {
    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Yes => "yes",
            Self::Likely => "likely",
            Self::Hardly => "hardly",
            Self::No => "no",
        }
    }

    fn of(work: Estimate, time: Estimate) -> Self {
        if work.high <= time.low {
            Self::Yes
        } else if work.likely <= time.likely {
            Self::Likely
        } else if work.low <= time.high {
            Self::Hardly
        } else {
            Self::No
        }
    }
}

/// Works out what one heat does for a step, counted from 0; none for a cold step, one on the whole bar, or a metal that is not forged hot.
pub fn one_heat(plan: &Plan, balance: &Balance, worked: &Worked, step: usize) -> Option<OneHeat> {
    let this = worked.steps.get(step).filter(|step| step.is_hot())?;
    let bar = this.bar.filter(|_| this.zone_mm.is_some())?;
    let fire = Fire::of(plan, worked.smith)?.taught(worked.learnt.clone());
    let sites = Site::all(plan, balance);
    let site = sites.get(bar)?;
    let mut progress = Progress::start(site);
    let before = worked.steps.iter().take(step).flat_map(|step| &step.tasks);
    before.filter(|task| task.bar == bar && task.joint.is_none()).for_each(|task| progress.apply(site, task));
    let worked_mm = Lengths::new(site, &progress).extent(this.parts().iter());
    let profile = profile(site, &state(site, &progress))?;
    let heated_mm = heated(plan, worked_mm);
    let stop_celsius = fire.stop_celsius(&this.tasks);
    let substance = fire.substance();
    let start_celsius = fire.start_for(&this.tasks);
    let start = Start::Zone(HotZone::between(start_celsius, heated_mm[0], heated_mm[1], EDGE));
    let cooled = cool(&profile, substance, &fire.loss(Some(worked_mm)), &start, Span::of(SPAN));
    let in_air = cool(&profile, substance, &fire.loss(None), &start, Span::of(SPAN));
    let [from, to] = worked_mm;
    let workable = |cooled: &Cooled, hammered| cooled.workable(from, to, stop_celsius, hammered);
    let (on_anvil, in_air) = (workable(&cooled, true), workable(&in_air, false));
    let (work_seconds, blows) = work(site, &fire, this);
    let time = time(on_anvil);
    let heats = Estimate {
        low: (work_seconds.low / time.high.max(1.0)).ceil().max(1.0),
        likely: (work_seconds.likely / time.likely.max(1.0)).ceil().max(1.0),
        high: (work_seconds.high / time.low.max(1.0)).ceil().max(1.0),
    };
    Some(OneHeat {
        worked_mm,
        heated_mm,
        start_celsius,
        stop_celsius,
        on_anvil,
        in_air,
        work_seconds,
        blows,
        heats,
        verdict: Verdict::of(work_seconds, time),
        reasons: reasons(
            plan,
            &fire,
            (on_anvil, in_air),
            (work_seconds, blows),
            worked_mm,
            [start_celsius, stop_celsius],
        ),
        doubts: doubts(plan, &fire, start_celsius, blows.is_some()),
        in_range: cooled.in_range(stop_celsius, fire.spoilt_for(&this.tasks)),
        cooled,
    })
}

/// What is heated for what is worked: its soft edges lie outside of it, and it is no longer than the fire makes hot at once.
fn heated(plan: &Plan, [from, to]: [f64; 2]) -> [f64; 2] {
    let zone = heat_rules::zone_mm(plan).max(to - from);
    let beyond = BEYOND.min((zone - (to - from)) / 2.0).max(EDGE);
    [from - beyond, to + beyond]
}

/// The time that is left for work, in seconds, once the bar lies on the anvil.
fn time(workable: Workable) -> Estimate {
    let less = |seconds: f64| (seconds - HANDLING).max(0.0);
    match workable {
        Workable::NotHot => Estimate { low: 0.0, likely: 0.0, high: 0.0 },
        Workable::Until(time) => Estimate { low: less(time.low), likely: less(time.likely), high: less(time.high) },
        Workable::Beyond(seconds) => doubted(less(seconds), true),
    }
}

/// How long the work of a step takes, in seconds, and its blows.
fn work(site: &Site<'_>, fire: &Fire, step: &WorkedStep) -> (Estimate, Option<Estimate>) {
    let shaping: Vec<&Task> = step.tasks.iter().filter(|task| task.operation.is_shaping()).collect();
    let is_reckoned = step.step.minutes.is_none() && site.plan.work.heats.pace.is_none();
    let joules = |task: &&Task| {
        let part = site.part(task.part?)?;
        let (volume, strain) = moved(site, part, task.operation);
        work_joules(fire, volume, strain, redundant(site, part, task.operation))
    };
    let all: Option<f64> = shaping.iter().map(joules).sum();
    match all.filter(|joules| is_reckoned && !shaping.is_empty() && *joules > 0.0) {
        Some(joules) => {
            let blows = blows::blows(joules, &fire.hammer, fire.learnt.blows);
            (blows.times(1.0 / fire.hammer.blows_per_second), Some(blows.one_figure()))
        }
        None => (Estimate::times_or_over(step.minutes * 60.0, USUAL_DOUBT), None),
    }
}

fn reasons(
    plan: &Plan,
    fire: &Fire,
    (on_anvil, in_air): (Workable, Workable),
    (work, blows): (Estimate, Option<Estimate>),
    [from, to]: [f64; 2],
    [start, stop]: [f64; 2],
) -> Vec<String> {
    let mut all = Vec::new();
    let length = length_words(plan, to - from);
    match on_anvil {
        Workable::NotHot => all.push(format!(
            "Part of the {length} that is worked does not come out of the fire above {stop:.0} °C: it is longer than one heat makes hot."
        )),
        _ => all.push(format!(
            "Out of the fire at {:.0} °C, all of the {length} that is worked stays above {stop:.0} °C for {} on the anvil, and for {} in still air.",
            start,
            seconds_words(on_anvil),
            seconds_words(in_air)
        )),
    }
    all.push(match blows {
        Some(blows) => format!(
            "The work takes about {:.0} blows ({:.0} to {:.0}), which is {} with a hammer of {} kg.",
            blows.likely,
            blows.low,
            blows.high,
            estimate_words(work),
            fire.hammer.mass_kg
        ),
        None => format!("The work takes about {}.", estimate_words(work)),
    });
    all
}

fn doubts(plan: &Plan, fire: &Fire, start: f64, by_hammer: bool) -> Vec<String> {
    let mut all = vec![
        "How well the anvil takes the heat is known to a factor of 1.5; a cold anvil takes more, a bar held off it less.".to_owned(),
    ];
    if by_hammer {
        all.push("Blows are known to a factor of two, until they are counted.".to_owned());
    }
    if !fire.metal.glows {
        all.push("This metal shows no colour before it melts: measure its heat.".to_owned());
    }
    if plan.work.heats.fire_celsius.is_none() {
        all.push(format!("The fire is taken to give {start:.0} °C; an eye in daylight misses by 50."));
    }
    all
}

/// A time in words: `30 s (20 to 45)`.
pub fn seconds_words(workable: Workable) -> String {
    match workable {
        Workable::NotHot => "no time".to_owned(),
        Workable::Until(time) => estimate_words(time),
        Workable::Beyond(seconds) => format!("over {seconds:.0} s"),
    }
}

/// An estimate of seconds in words: `30 s (20 to 45)`; of long ones in minutes.
pub fn estimate_words(time: Estimate) -> String {
    // Common practice, no source: nobody counts more seconds than this.
    const MOST_SECONDS: f64 = 120.0;
    if time.likely > MOST_SECONDS {
        let minutes = |seconds: f64| format!("{:.0}", (seconds / 60.0).max(1.0));
        return format!("{} min ({} to {})", minutes(time.likely), minutes(time.low), minutes(time.high));
    }
    format!("{:.0} s ({:.0} to {:.0})", time.likely, time.low, time.high)
}
