//! Findings: what the plan is held against, each with its numbers, its reason and a remedy.
//!
//! Every check is a file of its own and a row of [`CHECKS`]. All rules are common practice without a source unless one is
//! named; every limit can be changed in the plan ([`crate::plan::Limits`]).

mod asked_sizes;
mod bar_length;
mod blank;
mod blocks;
mod cold_shut;
mod compare;
mod corner_as_box;
mod corner_left;
mod dressed;
mod duty;
mod finding;
mod grown;
mod heads;
mod hold;
mod joined;
mod joints;
mod metal;
mod odd_fraction;
mod on_the_way;
mod open;
mod reach;
mod repeats;
mod rounding;
mod scene;
mod section_sizes;
mod shoulder_sides;
mod size_doubtful;
mod socket_root;
mod split;
mod spreading;
mod swelling;
mod tool_room;
mod trouble;
mod twist;
mod upsetting;
mod walls;

pub use compare::{apart, is_over, is_under};
pub use finding::{Finding, Place, Severity};

use crate::balance::{BarBalance, Met, SizeBalance};
use crate::plan::{Chain, Flat, Plan};
use scene::Scene;
use std::collections::HashMap;

/// One check that plans are held against.
pub struct Check {
    /// The ids of its findings.
    pub ids: &'static [&'static str],
    /// What it looks for, in one line.
    pub summary: &'static str,
    run: fn(&Scene<'_>, &mut Vec<Finding>),
}

/// Every check of a bar.
pub const CHECKS: [Check; 28] = [
    bar_length::CHECK,
    blank::CHECK,
    blocks::CHECK,
    cold_shut::CHECK,
    upsetting::CHECK,
    spreading::CHECK,
    grown::CHECK,
    dressed::CHECK,
    joined::CHECK,
    socket_root::CHECK,
    tool_room::CHECK,
    hold::CHECK,
    reach::CHECK,
    rounding::CHECK,
    swelling::CHECK,
    section_sizes::CHECK,
    shoulder_sides::CHECK,
    corner_as_box::CHECK,
    corner_left::CHECK,
    split::CHECK,
    twist::CHECK,
    walls::CHECK,
    heads::CHECK,
    repeats::CHECK,
    odd_fraction::CHECK,
    open::CHECK,
    on_the_way::CHECK,
    size_doubtful::CHECK,
];

/// What is said where nothing was found: that much was looked at, and this was not.
pub const NONE_FOUND: &str = "Nothing found wrong. Strength is not checked.";

/// The id of every finding there can be.
pub fn ids() -> impl Iterator<Item = &'static str> {
    let checks = CHECKS.iter().flat_map(|check| check.ids);
    let apart = duty::IDS.iter().chain(&metal::IDS).chain(&trouble::IDS).chain(&joints::IDS).chain(&asked_sizes::IDS);
    checks.chain(apart).copied()
}

/// All findings of a plan: stops first, then warnings, then notes; each group from the datum end on.
pub(crate) fn findings(plan: &Plan, (bars, sizes): (&[BarBalance], &[SizeBalance]), met: &[Met]) -> Vec<Finding> {
    let mut found = Vec::new();
    for (index, (bar, balance)) in plan.bars.iter().zip(bars).enumerate() {
        let flat = bar.flat();
        let chains = chains(&flat);
        for (chain, members) in &chains {
            let scene = Scene::new(plan, (index, bar, &flat), balance, (*chain, members));
            if scene.is_bar() {
                found.extend(met.iter().filter(|met| met.bar == index).map(|met| trouble::finding(&scene, met)));
            }
            for check in &CHECKS {
                (check.run)(&scene, &mut found);
            }
        }
    }
    duty::check(plan, bars, &mut found);
    metal::check(plan, &mut found);
    joints::check(plan, bars, &mut found);
    asked_sizes::check(plan, sizes, &mut found);
    found.sort_by_key(|finding| (std::cmp::Reverse(finding.severity), finding.place.bar, finding.place.segment));
    found
}

/// The bar itself and every branch of its splits, each with its segments counted through the bar.
fn chains(flat: &[Flat<'_>]) -> Vec<(Chain, Vec<usize>)> {
    let mut chains = vec![(Chain::Bar, Vec::with_capacity(flat.len()))];
    let mut place_of = HashMap::new();
    for (at, flat) in flat.iter().enumerate() {
        let place = match flat.chain {
            Chain::Bar => 0,
            chain => *place_of.entry(chain).or_insert_with(|| {
                chains.push((chain, Vec::new()));
                chains.len() - 1
            }),
        };
        chains[place].1.push(at);
    }
    chains
}
