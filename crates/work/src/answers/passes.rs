//! How a bar is drawn or spread pass by pass: sizes after each, the bite that lengthens best, and where the formula ends.

use crate::bar::state::begun_section;
use crate::fire::peened::spread;
use crate::job::site::{Part, Site, extents};
use crate::job::task::Task;
use crate::says::words::length_words;
use crate::worked::Worked;
use fh_core::balance::Balance;
use fh_core::metal::Shape;
use fh_core::plan::{Operation, Plan};
use fh_heat::drawing::{Drawn, Sides, USUAL_REDUCTION, best_bite_mm, draw};
use fh_heat::spread::SpreadDoubt;

/// The passes of a step.
#[derive(Clone, Debug, PartialEq)]
pub struct Passes {
    /// The part, counted through the bar.
    pub part: usize,
    /// The bite along the bar, in mm: that which lengthens best; of a spread part, the peen's.
    pub bite_mm: f64,
    /// Whether the bar is made wider, not longer.
    pub spreads: bool,
    /// After each pass: height and width in mm, and how many times longer it is by then.
    pub after: Vec<[f64; 3]>,
    /// What is left out of what the formula was measured on, in sentences.
    pub doubts: Vec<String>,
}

/// The passes of a step of an order, counted from 0; none where nothing is drawn or spread between flat faces.
pub fn passes(plan: &Plan, balance: &Balance, worked: &Worked, step: usize) -> Option<Passes> {
    let this = worked.steps.get(step)?;
    let sites = Site::all(plan, balance);
    let site = sites.get(this.bar?)?;
    this.tasks.iter().find_map(|task| of_task(site, task))
}

/// The passes of a task.
pub(crate) fn of_task(site: &Site<'_>, task: &Task) -> Option<Passes> {
    let part = site.part(task.part?)?;
    let drawn = match task.operation {
        Operation::Draw => drawn(site, part)?,
        Operation::Spread | Operation::Flatten => spread(site, part, task.operation)?,
        _ => return None,
    };
    let spreads = task.operation != Operation::Draw;
    let first = drawn.passes.first()?;
    let [begun_width, _] = extents(&begun_section(site, part, task.operation));
    let mut grown = 1.0;
    let after = drawn.passes.iter().map(|pass| {
        grown *= pass.longer;
        if spreads {
            // The ridge lies along the bar, so what the formula calls longer is wider, and its width is the block's length.
            [pass.height_after_mm, begun_width * grown, pass.width_after_mm / first.width_before_mm]
        } else {
            [pass.height_after_mm, pass.width_after_mm, grown]
        }
    });
    let after = after.collect();
    Some(Passes { part: part.at, bite_mm: first.bite_mm, spreads, after, doubts: doubts(site, &drawn, spreads) })
}

/// A bar drawn to an even section with a quarter turn after each pass.
fn drawn(site: &Site<'_>, part: Part<'_>) -> Option<Drawn> {
    let Some(Shape::Prism { section, .. }) = &part.balance.shape else { return None };
    let sides = |[width_mm, height_mm]: [f64; 2]| Sides { height_mm, width_mm };
    let (from, to) = (sides(extents(&site.raw_section(part.at))), sides(extents(section)));
    Some(draw(from, to, best_bite_mm(from)?, USUAL_REDUCTION))
}

fn doubts(site: &Site<'_>, drawn: &Drawn, spreads: bool) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    if !drawn.reached {
        all.push("Passes of this bite never reach the size: the bar spreads as much as it is drawn.".to_owned());
    }
    let first = drawn.passes.first();
    for doubt in first.map(|pass| pass.doubts()).unwrap_or_default() {
        let pass = &drawn.passes[0];
        let sizes = || {
            format!(
                "{} high and {} wide",
                length_words(site.plan, pass.height_before_mm),
                length_words(site.plan, pass.width_before_mm)
            )
        };
        all.push(match doubt {
            // A peen is narrow on purpose.
            SpreadDoubt::BiteNarrow if spreads => continue,
            SpreadDoubt::BiteNarrow => "The bite is under 0.3 of the width: it indents more than it draws.".to_owned(),
            SpreadDoubt::BiteWide => "The bite is over 3 times the width: it mostly spreads.".to_owned(),
            SpreadDoubt::TakenDeep => "More than a quarter is taken in one pass: expect folds and laps.".to_owned(),
            SpreadDoubt::TallSection => format!("The bar is {}: on its edge it may lean or buckle.", sizes()),
            SpreadDoubt::WideSection if spreads => continue,
            SpreadDoubt::WideSection => {
                format!("The bar is {}: beyond two to one the spread is not known.", sizes())
            }
        });
    }
    all
}
