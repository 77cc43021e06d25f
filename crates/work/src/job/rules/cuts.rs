//! What is cut off: before what it frees, after what it holds.

use super::Ruling;
use crate::job::ends::{needs_the_cut, runs_out, tang_shoulder};
use crate::job::heat_rules::hold_mm;
use crate::job::site::{Part, Site, extents, in_mm, in_mm2, least};
use crate::job::why::Why;
use fh_core::metal::Shape;
use fh_core::plan::{Form, Operation};

/// Jaws of tongs are about so long, in mm: common practice, no source.
const JAWS: f64 = 30.0;

/// What keeps so much of the bar's section holds the bar as it came: common practice, no source.
const STOUT: f64 = 0.5;

impl Ruling<'_, '_> {
    /// What is trimmed or parted off at an end.
    pub(super) fn ends(&mut self) {
        let mut holds = Vec::new();
        for (at, flat) in self.site.flat.iter().enumerate() {
            let operation = match flat.segment.form {
                Form::Trim(_) => Operation::Trim,
                Form::Hold(_) => Operation::PartOff,
                _ => continue,
            };
            let Some(cut) = self.those(at, |other| other == operation).first().copied() else { continue };
            for (side, beside) in self.site.beside(at).into_iter().enumerate() {
                let Some(beside) = beside else { continue };
                let forging = self.shaping(beside);
                // Seen from what is cut off: the part before it ends there, the part behind it starts there.
                let is_freed = match operation {
                    Operation::PartOff => needs_the_cut(self.site, beside, side == 0),
                    _ => runs_out(self.site, beside, side == 0),
                };
                if is_freed {
                    self.each(&[cut], &forging, Why::PartForEnd);
                    // What hangs on the thin side of a step bends it.
                    let step = self
                        .site
                        .beside(beside)
                        .into_iter()
                        .flatten()
                        .find(|it| tang_shoulder(self.site, *it).is_some());
                    let down = step.map_or_else(Vec::new, |step| self.necks(step));
                    self.each(&[cut], &down, Why::PartForStep);
                } else if operation == Operation::Trim {
                    self.each(&forging, &[cut], Why::ForgeBeforeTrim);
                }
                let bends = self.bending(beside);
                let why = if operation == Operation::Trim { Why::TrimBeforeBend } else { Why::PartForBend };
                self.each(&[cut], &bends, why);
            }
            if operation == Operation::PartOff {
                holds.push((at, cut));
            }
        }
        // What each cut frees is known only now.
        for (at, cut) in holds {
            self.part_late(at, cut);
        }
    }

    /// All other forging before the rest of the bar is parted off.
    fn part_late(&mut self, hold: usize, cut: usize) {
        // A saw cut beside the rest of the bar falls with it, and frees what it frees.
        let mut cuts = vec![cut];
        for beside in self.site.beside(hold).into_iter().flatten() {
            cuts.extend(self.those(beside, |operation| operation == Operation::Trim));
        }
        let freed: Vec<usize> =
            self.rules.iter().filter(|rule| cuts.contains(&rule.before)).map(|rule| rule.after).collect();
        let fine = self.poor_handles(hold, &freed);
        for at in (0..self.site.flat.len()).filter(|at| *at != hold) {
            if fine.contains(&at) {
                self.handle_last(at, &freed);
                continue;
            }
            let mut forging = self.shaping(at);
            forging.extend(self.necks(at));
            forging.retain(|task| !freed.contains(task));
            if self.shaping(at).iter().any(|task| freed.contains(task)) {
                // What frees a part's forging leaves its neck free too.
                continue;
            }
            self.each(&forging, &[cut], Why::PartLate);
        }
    }

    /// The parts that are no handle once they are finished, and are a full block before: what the cut frees is forged while they are,
    /// where nothing stouter lies between. A split comes with its branches.
    fn poor_handles(&self, hold: usize, freed: &[usize]) -> Vec<usize> {
        let forged: Vec<usize> = freed.iter().filter_map(|task| self.tasks[*task].part).collect();
        let members = &self.site.chains[0].1;
        let at_far_end = members.first() == Some(&hold);
        let end = if at_far_end { members.last() } else { members.first() };
        let Some(part) = end.and_then(|at| self.site.part(*at)).filter(|part| !forged.contains(&part.at)) else {
            return Vec::new();
        };
        let is_held_by = !forged.is_empty() && is_fine(part) && !self.site.passes_through(part.at);
        if !is_held_by || !is_block(self.site, part) || has_stout(self.site, &[&forged[..], &[part.at]].concat()) {
            return Vec::new();
        }
        (part.at..part.at + part.segment.count()).collect()
    }

    /// What a cut frees, before what is a full block to hold it by.
    fn handle_last(&mut self, at: usize, freed: &[usize]) {
        let is_later = |operation: Operation| {
            (operation.is_shaping() && operation != Operation::Upset)
                || matches!(operation, Operation::Split | Operation::BendAside)
        };
        let later = self.those(at, is_later);
        let forging: Vec<usize> = freed
            .iter()
            .copied()
            .filter(|task| {
                self.tasks[*task].operation.is_shaping() || self.tasks[*task].operation == Operation::SetDown
            })
            .collect();
        self.each(&forging, &later, Why::HandleLast);
    }
}

/// Whether a part is no handle once it is finished.
fn is_fine(part: Part<'_>) -> bool {
    matches!(part.segment.form, Form::Flag(_) | Form::Split(_))
}

/// Whether a part at an end is block enough for tongs to hold while it is as it came, with the bar beside it that stays so: the jaws, and
/// as much as it is thick.
fn is_block(site: &Site<'_>, part: Part<'_>) -> bool {
    let members = site.chains[0].1.iter();
    let from_here: Vec<usize> = if members.clone().next() == Some(&part.at) {
        members.copied().collect()
    } else {
        members.rev().copied().collect()
    };
    let beside = from_here.into_iter().skip(1).filter_map(|at| site.part(at));
    let as_stock = beside.take_while(|part| part.segment.form.is_as_stock());
    let block: f64 = std::iter::once(part).chain(as_stock).map(|part| site.raw_mm(part)).sum();
    block >= JAWS + least(extents(&site.raw_section(part.at)))
}

/// Whether so much of the bar keeps half of its section that it is a handle, without some parts.
fn has_stout(site: &Site<'_>, without: &[usize]) -> bool {
    let stout = |part: &Part<'_>| {
        let half = in_mm2(site.raw_section(part.at).area()) * STOUT;
        let areas = |shape: &Shape| [0.0, 0.5, 1.0].map(|share| in_mm2(shape.area_at(share)));
        let is_over = |shape: &Shape| areas(shape).into_iter().all(|area| area >= half);
        part.segment.form.is_finished() && !is_fine(*part) && part.balance.shape.as_ref().is_some_and(is_over)
    };
    let others = site.chains[0].1.iter().filter(|at| !without.contains(at)).filter_map(|at| site.part(*at));
    others.filter(stout).map(|part| in_mm(part.balance.forged_length)).sum::<f64>() >= hold_mm(site.plan)
}
