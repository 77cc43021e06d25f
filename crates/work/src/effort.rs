//! How long the plain rules reckon for a task. No more than a first guess: the smith's own figure in a step goes before it.

use crate::site::{Part, Site, extents, in_mm, in_mm2, in_mm3};
use crate::task::Task;
use fh_core::metal::Shape;
use fh_core::plan::{HeatRules, Operation};

/// The least that any hot task takes, in minutes: common practice, no source.
const LEAST: f64 = 0.2;
/// Places along a part at which its change of section is looked at.
const PLACES: usize = 8;

/// How many minutes a task takes.
pub(crate) fn minutes(site: &Site<'_>, task: &Task) -> f64 {
    let part = task.part.and_then(|at| site.part(at));
    match part {
        Some(part) if task.operation.is_shaping() => moved(site, part, task.operation).max(LEAST),
        _ => usual(task.operation),
    }
}

/// What is usual where no metal is drawn: common practice, no source.
fn usual(operation: Operation) -> f64 {
    use Operation as O;
    match operation {
        O::Split | O::Corner | O::Weld => 0.9,
        O::Bend | O::Roll | O::Open | O::Punch | O::Twist => 0.5,
        O::SetDown | O::Isolate | O::Drift | O::BendAside | O::Trim => 0.3,
        O::Straighten | O::PartOff | O::DressEdges => 0.3,
        _ => LEAST,
    }
}

/// From the metal that is moved: cm³ times the natural logarithm of the change of section, at the plan's pace.
fn moved(site: &Site<'_>, part: Part<'_>, operation: Operation) -> f64 {
    let Some(shape) = &part.balance.shape else { return LEAST };
    let raw = site.raw_section(part.at);
    let volume = in_mm3(shape.volume()) / 1000.0;
    let strain = match (operation, shape) {
        (Operation::Scarf, _) => 0.5,
        (Operation::Upset, _) => (in_mm(part.balance.stock_length) / in_mm(part.balance.forged_length).max(1e-6)).ln(),
        (Operation::Spread | Operation::Flatten, Shape::Flag { root, tip, .. }) => {
            (extents(&raw)[1] / ((in_mm(*root) + in_mm(*tip)) / 2.0).max(0.1)).ln()
        }
        (_, Shape::Hole { thickness, .. }) => (extents(&raw)[1] / in_mm(*thickness).max(0.1)).ln(),
        _ => mean_strain(shape, in_mm2(raw.area())),
    };
    volume * strain.abs() / site.plan.work.heats.pace.unwrap_or(HeatRules::PACE)
}

/// The logarithm of the change of area, averaged over the metal of a shape.
fn mean_strain(shape: &Shape, raw: f64) -> f64 {
    let areas = (0..PLACES).map(|place| in_mm2(shape.area_at((place as f64 + 0.5) / PLACES as f64)));
    let (mut sum, mut metal) = (0.0, 0.0);
    for area in areas.filter(|area| *area > 1e-6) {
        sum += area * (raw / area).ln().abs();
        metal += area;
    }
    if metal > 0.0 { sum / metal } else { 0.0 }
}
