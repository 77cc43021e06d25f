//! How long a task takes: from the metal that is moved and the hammer that moves it, or at the smith's own pace.
//!
//! No more than a first guess, good to a factor of two; the smith's own figure in a step goes before it.

use crate::bar::state::begun_section;
use crate::fire::hearth::{Fire, REDUNDANT};
use crate::fire::peened::spread;
use crate::job::along::{begun_mm2, leader, moved_along};
use crate::job::site::{Part, Site, extents, in_mm, in_mm2, in_mm3};
use crate::job::task::Task;
use fh_core::metal::Shape;
use fh_core::plan::{HeatRules, Operation};
use fh_heat::blows::strained_mm3;
use fh_heat::spread::Pass;

/// The form of the first part that is worked.
pub(crate) fn form_of(site: &Site<'_>, tasks: &[Task]) -> String {
    let part = tasks.iter().find_map(|task| task.part).and_then(|at| site.part(at));
    part.map_or_else(String::new, |part| part.segment.form.kind().name().to_owned())
}

/// What a small thing takes that is not drawn, in minutes: common practice, no source.
const LITTLE: f64 = 0.15;

/// The least that any forging takes, in minutes, two or three blows and a look: common practice, no source.
const LEAST: f64 = 0.05;

/// Places along a part at which its change of section is looked at.
const PLACES: usize = 8;

/// How many minutes a task takes.
pub(crate) fn minutes(site: &Site<'_>, fire: Option<&Fire>, task: &Task) -> f64 {
    let learnt = fire.map_or(1.0, |fire| {
        if fire.learnt.is_empty() { 1.0 } else { fire.learnt.minutes(task.operation, &form_of(site, &[*task])) }
    });
    reckoned(site, fire, task) * learnt
}

/// How many minutes a task takes, before anything is learnt.
fn reckoned(site: &Site<'_>, fire: Option<&Fire>, task: &Task) -> f64 {
    let part = task.part.and_then(|at| site.part(at));
    match part {
        Some(part) if task.operation.is_shaping() => {
            let (volume, strain) = moved(site, part, task.operation);
            let reckoned = || fire?.hammering_minutes(volume, strain, redundant(site, part, task.operation));
            let own = site.plan.work.heats.pace.or(reckoned().is_none().then_some(HeatRules::PACE));
            let paced = own.map(|pace| volume / 1000.0 * strain / pace);
            paced.or_else(reckoned).unwrap_or(LEAST).max(LEAST)
        }
        Some(part) if task.operation == Operation::Dress => dressed(part, fire),
        _ => usual(task.operation),
    }
}

/// How long dressing in dies takes, in minutes: what they move is strained once over, and each die takes a look at least (common
/// practice, no source).
fn dressed(part: Part<'_>, fire: Option<&Fire>) -> f64 {
    let struck = fire.and_then(|fire| fire.hammering_minutes(part.balance.moved.moved_mm3, 1.0, REDUNDANT));
    let least = LITTLE * part.balance.dressed.len() as f64;
    struck.filter(|minutes| minutes.is_finite()).unwrap_or(least).max(least)
}

/// What is usual where no metal is drawn: common practice, no source.
fn usual(operation: Operation) -> f64 {
    use Operation as O;
    match operation {
        O::Split | O::Corner => 0.6,
        O::Roll | O::Open | O::Weld => 0.4,
        O::Punch | O::Twist => 0.3,
        O::SetDown | O::Bend | O::Straighten | O::Trim | O::Drift | O::DressEdges => 0.2,
        _ => LITTLE,
    }
}

/// The metal that is moved, in mm³, and the natural logarithm of its change of section.
pub(crate) fn moved(site: &Site<'_>, part: Part<'_>, operation: Operation) -> (f64, f64) {
    let Some(shape) = &part.balance.shape else { return (0.0, 0.0) };
    let raw = begun_section(site, part, operation);
    let begun = || if leader(site, part.at).is_some() { begun_mm2(site, part.at) } else { in_mm2(raw.area()) };
    let strain = match (operation, shape) {
        (Operation::Scarf, _) => 0.5,
        (Operation::Upset, _) => (in_mm(part.balance.stock_length) / in_mm(part.balance.forged_length).max(1e-6)).ln(),
        (Operation::Spread | Operation::Flatten, Shape::Flag { root, tip, .. }) => {
            (extents(&raw)[1] / ((in_mm(*root) + in_mm(*tip)) / 2.0).max(0.1)).ln()
        }
        (_, Shape::Hole { thickness, .. }) => (extents(&raw)[1] / in_mm(*thickness).max(0.1)).ln(),
        _ => mean_strain(shape, begun()),
    };
    let own = (in_mm3(shape.volume()), strain.abs());
    let along =
        if matches!(operation, Operation::Draw | Operation::Taper) { moved_along(site, part.at) } else { Vec::new() };
    // Together they are so much metal through the mean of their strains.
    let (metal, work) =
        along.into_iter().fold((own.0, own.0 * own.1), |sum, next| (sum.0 + next.0, sum.1 + next.0 * next.1));
    if metal > 0.0 { (metal, work / metal) } else { own }
}

/// How many times the work of its strain an operation asks for.
///
/// A drawing is measured by its change of section, and what spreads has to be struck back. What is spread or upset is measured by
/// the height that it loses, and nothing is struck back: it asks for the resistance of the tool and the strain that goes sideways,
/// pass by pass ([`strained_mm3`]); the smoothing of the peen's marks is left out.
pub(crate) fn redundant(site: &Site<'_>, part: Part<'_>, operation: Operation) -> f64 {
    let spread = match operation {
        Operation::Spread | Operation::Flatten => spread(site, part, operation).map(|drawn| drawn.passes),
        Operation::Upset => return UPSET,
        _ => None,
    };
    let asked = spread.map(|passes| {
        let strain: f64 = passes.iter().map(Pass::strain).sum();
        passes.iter().map(|pass| strained_mm3(pass, 1.0)).sum::<f64>() / strain
    });
    asked.filter(|asked| asked.is_finite()).unwrap_or(REDUNDANT)
}

/// The friction of an upset about as long as it is thick: `1 + mu d / (3 h)` with mu 0.3 (Siebel).
const UPSET: f64 = 1.1;

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
