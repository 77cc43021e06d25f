//! What the fire gives and how long it lasts: the quick answer that every step of an order asks for.
//!
//! One section, cooled as one, on the anvil for half of the time: the edges of the hot length, which cool first, and the
//! heat that flows along the bar are left to [`crate::one_heat`].

use crate::bar::state::begun_section;
use crate::fire::learnt::Learnt;
use crate::fire::smith::Smith;
use crate::job::site::{Site, extents};
use crate::job::task::Task;
use fh_core::material::{BRITTLE_MARGIN_CELSIUS, Forging, Material};
use fh_core::metal::{SectionSize, Shape};
use fh_core::plan::{HeatRules, Operation, Plan};
use fh_heat::flow_stress::hammered_mpa;
use fh_heat::hammer::Hammer;
use fh_heat::loss::Loss;
use fh_heat::lumped::section_seconds;
use fh_heat::section::BarSection;
use fh_heat::substance::Substance;

/// From the fire to the first blow, in seconds: common practice, no source.
pub(crate) const HANDLING: f64 = 3.0;

/// The shortest heat that is reckoned with, in seconds: one blow or two can always be struck.
const SHORTEST: f64 = 3.0;

/// The metal in the fire, and what strikes it.
pub(crate) struct Fire {
    /// What the smith's own jobs have taught.
    pub(crate) learnt: Learnt,
    pub(crate) metal: &'static Material,
    forging: Forging,
    pub(crate) start_celsius: f64,
    pub(crate) hammer: Hammer,
    /// Whether nobody strikes or holds for the smith.
    pub(crate) alone: bool,
}

impl Fire {
    /// Of a plan that a smith forges; none where its material is not forged hot.
    pub(crate) fn of(plan: &Plan, smith: Smith) -> Option<Self> {
        let metal = plan.material();
        let forging = metal.forging?;
        let own = plan.work.heats.fire_celsius.unwrap_or_else(|| metal.no_hotter(smith.fire_celsius(&forging)));
        let light_celsius = (forging.light_celsius + smith.stops_celsius()).min(forging.finish_celsius);
        let forging = Forging { light_celsius, ..forging };
        let start_celsius = own.max(forging.finish_celsius + 1.0);
        Some(Self {
            metal,
            forging,
            start_celsius,
            hammer: smith.hammer(plan.work.heats.hammer),
            learnt: Learnt::default(),
            alone: smith.is_alone(plan.work.heats.hammer),
        })
    }

    /// The same, with what was learnt.
    pub(crate) fn taught(self, learnt: Learnt) -> Self {
        Self { learnt, ..self }
    }

    /// How cold it may get while it is forged, in °C.
    pub(crate) fn finish_celsius(&self) -> f64 {
        self.forging.finish_celsius
    }

    /// The heat out of the fire for some tasks, in °C: a welding heat for a weld.
    pub(crate) fn start_for(&self, tasks: &[Task]) -> f64 {
        let weld = self.metal.weld.filter(|weld| welds(tasks) && self.start_celsius < weld.from_celsius);
        weld.map_or(self.start_celsius, |weld| f64::midpoint(weld.from_celsius, weld.to_celsius))
    }

    /// Where the metal is spoilt while some tasks are done, in °C: a weld takes it to its welding heat for a moment.
    pub(crate) fn spoilt_for(&self, tasks: &[Task]) -> f64 {
        let weld = self.metal.weld.filter(|_| welds(tasks));
        weld.map_or(self.forging.spoilt_celsius, |weld| weld.to_celsius.max(self.forging.spoilt_celsius))
    }

    /// How cold it may get while some tasks are done, in °C: light work goes on a little longer, but never near a brittle range.
    pub(crate) fn stop_celsius(&self, tasks: &[Task]) -> f64 {
        let is_heavy = |task: &Task| {
            task.operation.is_shaping()
                || matches!(
                    task.operation,
                    Operation::Isolate | Operation::SetDown | Operation::Split | Operation::Weld
                )
        };
        let Forging { finish_celsius, light_celsius, .. } = self.forging;
        let stop = if tasks.iter().any(is_heavy) { finish_celsius } else { light_celsius };
        let brittle = self.metal.brittle.iter().map(|range| range.to_celsius).filter(|to| *to < finish_celsius);
        brittle.map(|to| to + BRITTLE_MARGIN_CELSIUS).fold(stop, f64::max)
    }

    /// The metal as heat sees it.
    pub(crate) fn substance(&self) -> Substance {
        let density = self.metal.density_kg_m3();
        self.metal.thermal.map_or(Substance::Steel, |thermal| {
            Substance::constant(density, thermal.specific_heat_j_kgk, thermal.conductivity_w_mk)
        })
    }

    /// What a bar loses, on the anvil or off it.
    pub(crate) fn loss(&self, on_anvil: Option<[f64; 2]>) -> Loss {
        let loss = on_anvil.map_or_else(Loss::in_still_air, |[from, to]| Loss::on_the_anvil(from, to));
        Loss { emissivity: self.metal.emissivity, ..loss }
    }

    /// For how many minutes some tasks can be worked in one heat, and of their parts the one that cools first: what is drawn, by
    /// the mean of the bar before and after; what is necked or cut, as it was by then; what is bent, as it is forged.
    pub(crate) fn minutes(&self, site: &Site<'_>, tasks: &[Task]) -> Option<f64> {
        let loss = self.loss(Some([f64::NEG_INFINITY, f64::INFINITY]));
        let seconds = |section: BarSection| {
            section_seconds(section, self.substance(), &loss, self.start_for(tasks), self.stop_celsius(tasks))
        };
        let of = |task: &Task| {
            let at = task.part?;
            let part = site.part(at)?;
            let raw = bar_section(&begun_section(site, part, task.operation));
            let shape = part.balance.shape.as_ref();
            let forged = shape.and_then(Shape::middle).map_or(raw, |section| bar_section(&section));
            Some(match task.operation {
                operation if operation.is_shaping() => f64::midpoint(seconds(raw), seconds(forged)),
                Operation::Isolate | Operation::SetDown | Operation::Split | Operation::Punch => seconds(raw),
                _ => seconds(forged),
            })
        };
        let least = tasks.iter().filter_map(of).fold(f64::INFINITY, f64::min);
        let longer = self.learnt.heat.unwrap_or(1.0);
        least.is_finite().then(|| (least - HANDLING).max(SHORTEST) * longer / 60.0)
    }

    /// How many minutes of hammering move so much metal through so much strain, where so many times its work is asked for; none where
    /// the metal's strength is not known.
    pub(crate) fn hammering_minutes(&self, volume_mm3: f64, strain: f64, redundant: f64) -> Option<f64> {
        let blows = work_joules(self, volume_mm3, strain, redundant)? / self.hammer.delivered_joules();
        Some(blows / self.hammer.blows_per_second / 60.0)
    }
}

fn welds(tasks: &[Task]) -> bool {
    tasks.iter().any(|task| task.operation == Operation::Weld)
}

/// A section as cooling sees it.
pub(crate) fn bar_section(section: &SectionSize) -> BarSection {
    let [width_mm, thickness_mm] = extents(section);
    match section {
        SectionSize::Round { .. } => BarSection::Round { diameter_mm: width_mm },
        _ => BarSection::Flat { width_mm: width_mm.max(1e-3), thickness_mm: thickness_mm.max(1e-3) },
    }
}

/// The minutes of work that a heat gives some tasks: the smith's own figure, or from how the bar cools.
pub(crate) fn heat_minutes(site: &Site<'_>, fire: Option<&Fire>, tasks: &[Task]) -> f64 {
    let own = site.plan.work.heats.minutes;
    own.or_else(|| fire?.minutes(site, tasks)).unwrap_or(HeatRules::MINUTES)
}

/// How many times the work of its change of section a drawing asks for: `Q / (1 - s)` with 1.15 for the resistance of the tool and a
/// spread of 0.41 (bites of about the bar's width): what spreads has to be struck back. Twenty passes from 20 to 10 mm square come
/// to 1.9 too.
pub(crate) const REDUNDANT: f64 = 1.95;

/// The plastic work of so much metal through so much strain, in J, where so many times that is asked for: at the mean of the heat;
/// none where the metal's strength is not known.
pub(crate) fn work_joules(fire: &Fire, volume_mm3: f64, strain: f64, redundant: f64) -> Option<f64> {
    let mean = f64::midpoint(fire.start_celsius, fire.finish_celsius());
    let stress = hammered_mpa(fire.metal.carbon_percent?, mean).likely;
    Some(volume_mm3 * 1e-9 * stress * 1e6 * strain * redundant)
}
