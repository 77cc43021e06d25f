//! Findings: what the plan is held against, each with its numbers, its reason and a remedy.
//!
//! Every check is a file of its own and a row of [`CHECKS`]. All rules are common practice without a source unless one is
//! named; every limit can be changed in the plan ([`crate::plan::Limits`]).

mod bar_length;
mod cold_shut;
mod corner_as_box;
mod duty;
mod finding;
mod heads;
mod hold;
mod joints;
mod reach;
mod repeats;
mod rounding;
mod scene;
mod section_sizes;
mod shoulder_sides;
mod split;
mod spreading;
mod swelling;
mod tool_room;
mod trouble;
mod twist;
mod upsetting;
mod walls;

pub use finding::{Finding, Place, Severity};

use crate::balance::{BarBalance, Met};
use crate::plan::{Chain, Flat, Plan};
use scene::Scene;

/// One check that plans are held against.
pub struct Check {
    /// The ids of its findings.
    pub ids: &'static [&'static str],
    /// What it looks for, in one line.
    pub summary: &'static str,
    run: fn(&Scene<'_>, &mut Vec<Finding>),
}

/// Every check of a bar.
pub const CHECKS: [Check; 17] = [
    bar_length::CHECK,
    cold_shut::CHECK,
    upsetting::CHECK,
    spreading::CHECK,
    tool_room::CHECK,
    hold::CHECK,
    reach::CHECK,
    rounding::CHECK,
    swelling::CHECK,
    section_sizes::CHECK,
    shoulder_sides::CHECK,
    corner_as_box::CHECK,
    split::CHECK,
    twist::CHECK,
    walls::CHECK,
    heads::CHECK,
    repeats::CHECK,
];

/// The id of every finding there can be.
pub fn ids() -> impl Iterator<Item = &'static str> {
    let checks = CHECKS.iter().flat_map(|check| check.ids);
    checks.chain(&duty::IDS).chain(&trouble::IDS).chain(&joints::IDS).copied()
}

/// All findings of a plan: stops first, then warnings, then notes; each group from the datum end on.
pub(crate) fn findings(plan: &Plan, bars: &[BarBalance], met: &[Met]) -> Vec<Finding> {
    let mut found = Vec::new();
    for (index, (bar, balance)) in plan.bars.iter().zip(bars).enumerate() {
        let flat = bar.flat();
        let scene = |chain| Scene::new(plan, (index, bar, &flat), balance, chain);
        for met in met.iter().filter(|met| met.bar == index) {
            found.push(trouble::finding(&scene(Chain::Bar), met));
        }
        for chain in chains(&flat) {
            let scene = scene(chain);
            for check in &CHECKS {
                (check.run)(&scene, &mut found);
            }
        }
    }
    duty::check(plan, bars, &mut found);
    joints::check(plan, bars, &mut found);
    found.sort_by_key(|finding| (std::cmp::Reverse(finding.severity), finding.place.bar, finding.place.segment));
    found
}

/// The bar itself and every branch of its splits.
fn chains(flat: &[Flat<'_>]) -> Vec<Chain> {
    let branches = flat.iter().enumerate().flat_map(|(split, flat)| {
        (0..flat.segment.form.branches().len()).map(move |branch| Chain::Branch { split, branch })
    });
    std::iter::once(Chain::Bar).chain(branches).collect()
}
