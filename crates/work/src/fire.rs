//! What the fire gives and how long it lasts: the quick answer that every step of an order asks for.
//!
//! One section, cooled as one, on the anvil for half of the time: the edges of the hot length, which cool first, and the
//! heat that flows along the bar are left to [`crate::one_heat`].

use crate::effort;
use crate::experience::Learnt;
use crate::heat::hammer::Hammer;
use crate::heat::loss::Loss;
use crate::heat::lumped::section_seconds;
use crate::heat::materials::{self, Forging};
use crate::heat::section::BarSection;
use crate::site::{Site, extents};
use crate::task::Task;
use fh_core::metal::{SectionSize, Shape};
use fh_core::plan::{HeatRules, Operation, Plan, SwungBy};

/// From the fire to the first blow, in seconds: common practice, no source.
pub(crate) const HANDLING: f64 = 3.0;
/// Bending, twisting, cutting and straightening may go on to so many °C below the end of forging: common practice, no source.
const LIGHT_WORK: f64 = 100.0;
/// Below the most that a metal stands, in °C: a smith's heats are slow (common practice, no source).
const MARGIN: f64 = 50.0;
/// The shortest heat that is reckoned with, in seconds: one blow or two can always be struck.
const SHORTEST: f64 = 3.0;

/// The metal in the fire, and what strikes it.
pub(crate) struct Fire {
    /// What the smith's own jobs have taught.
    pub(crate) learnt: Learnt,
    pub(crate) forging: &'static Forging,
    pub(crate) start_celsius: f64,
    pub(crate) hammer: Hammer,
}

impl Fire {
    /// Of a plan; none where its material has no row.
    pub(crate) fn of(plan: &Plan) -> Option<Self> {
        let forging = materials::find(plan.material_name())?;
        let usual = forging.start_celsius - MARGIN;
        let start_celsius = plan.work.heats.fire_celsius.unwrap_or(usual).max(forging.finish_celsius + 1.0);
        Some(Self { forging, start_celsius, hammer: hammer(plan), learnt: Learnt::default() })
    }

    /// The same, with what was learnt.
    pub(crate) fn taught(self, learnt: Learnt) -> Self {
        Self { learnt, ..self }
    }

    /// How cold it may get while it is forged, in °C.
    pub(crate) fn finish_celsius(&self) -> f64 {
        self.forging.finish_celsius
    }

    /// How cold it may get while some tasks are done, in °C: light work goes on a little longer, but never into a brittle range.
    pub(crate) fn stop_celsius(&self, tasks: &[Task]) -> f64 {
        let is_heavy = |task: &Task| {
            task.operation.is_shaping()
                || matches!(
                    task.operation,
                    Operation::Isolate | Operation::SetDown | Operation::Split | Operation::Weld
                )
        };
        let finish = self.forging.finish_celsius;
        if tasks.iter().any(is_heavy) {
            return finish;
        }
        let brittle = self.forging.brittle.iter().map(|range| range.to_celsius).filter(|to| *to < finish);
        brittle.fold(finish - LIGHT_WORK, f64::max)
    }

    /// What a bar loses, on the anvil or off it.
    pub(crate) fn loss(&self, on_anvil: Option<[f64; 2]>) -> Loss {
        let loss = on_anvil.map_or_else(Loss::in_still_air, |[from, to]| Loss::on_the_anvil(from, to));
        Loss { emissivity: self.forging.emissivity, ..loss }
    }

    /// For how many minutes some tasks can be worked in one heat, and of their parts the one that cools first: what is drawn, by
    /// the mean of the bar before and after; what is necked or cut, as it was; what is bent, as it is forged.
    pub(crate) fn minutes(&self, site: &Site<'_>, tasks: &[Task]) -> Option<f64> {
        let loss = self.loss(Some([f64::NEG_INFINITY, f64::INFINITY]));
        let seconds = |section: BarSection| {
            section_seconds(section, self.forging.substance(), &loss, self.start_celsius, self.stop_celsius(tasks))
        };
        let of = |task: &Task| {
            let at = task.part?;
            let raw = bar_section(&site.raw_section(at));
            let shape = site.part(at).and_then(|part| part.balance.shape.as_ref());
            let forged = shape.and_then(forged_section).unwrap_or(raw);
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

    /// How many minutes of hammering move so much metal through so much strain; none where the metal's strength is not known.
    pub(crate) fn hammering_minutes(&self, volume_mm3: f64, strain: f64) -> Option<f64> {
        let blows = effort::work_joules(self, volume_mm3, strain)? / self.hammer.delivered_joules();
        Some(blows / self.hammer.blows_per_second / 60.0)
    }
}

/// What strikes, of a plan.
fn hammer(plan: &Plan) -> Hammer {
    let spec = plan.work.heats.hammer.unwrap_or_default();
    match spec.by {
        SwungBy::Hand => Hammer::hand(spec.kg),
        SwungBy::Striker => Hammer::striker(spec.kg),
        SwungBy::Power => Hammer::power(spec.kg),
    }
}

/// A section as cooling sees it.
pub(crate) fn bar_section(section: &SectionSize) -> BarSection {
    let [width_mm, thickness_mm] = extents(section);
    match section {
        SectionSize::Round { .. } => BarSection::Round { diameter_mm: width_mm },
        _ => BarSection::Flat { width_mm: width_mm.max(1e-3), thickness_mm: thickness_mm.max(1e-3) },
    }
}

/// The section of a shape in its middle.
fn forged_section(shape: &Shape) -> Option<BarSection> {
    use crate::site::{in_mm, in_mm2};
    match shape {
        Shape::Prism { section, .. } | Shape::Peak { section, .. } | Shape::Shoulder { to: section, .. } => {
            Some(bar_section(section))
        }
        Shape::Taper { .. } => {
            let side_mm = in_mm2(shape.area_at(0.5)).max(1e-3).sqrt();
            Some(BarSection::Square { side_mm })
        }
        Shape::Flag { outline, root, tip } => {
            let thickness_mm = (in_mm(*root) + in_mm(*tip)) / 2.0;
            Some(BarSection::Flat { width_mm: in_mm(outline.width()), thickness_mm: thickness_mm.max(0.1) })
        }
        Shape::Hole { outline, thickness, .. } => {
            Some(BarSection::Flat { width_mm: in_mm(outline.width()), thickness_mm: in_mm(*thickness).max(0.1) })
        }
        Shape::Ball { diameter } => Some(BarSection::Round { diameter_mm: in_mm(*diameter) }),
        Shape::Cube { side } => Some(BarSection::Square { side_mm: in_mm(*side) }),
        Shape::Split(_) => None,
    }
}

/// The minutes of work that a heat gives some tasks: the smith's own figure, or from how the bar cools.
pub(crate) fn heat_minutes(site: &Site<'_>, fire: Option<&Fire>, tasks: &[Task]) -> f64 {
    let own = site.plan.work.heats.minutes;
    own.or_else(|| fire?.minutes(site, tasks)).unwrap_or(HeatRules::MINUTES)
}
