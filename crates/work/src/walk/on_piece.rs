//! A step on the whole piece: at a joint, or what finishes it.

use super::{Walk, minutes_of};
use crate::bar::lengths::Lengths;
use crate::bar::spots;
use crate::fire::heating::Load;
use crate::job::hung::closes_a_ring;
use crate::job::order::Ordered;
use crate::job::task::{is_hot, least_heats};
use crate::says::held_at_joint::held_at_joint;
use crate::says::lay::joined::at_joint;
use crate::says::lay::lay;
use crate::says::wanted::tongs;
use crate::says::words::distinct;
use crate::says::{careful, checks, words};
use crate::seen::Seen;
use crate::step::WorkedStep;
use fh_core::plan::{AnvilPlace, HeatRules, JointKind, Operation};

impl Walk<'_, '_> {
    /// A step on the whole piece: at a joint, or what finishes it.
    pub(super) fn on_piece(&mut self, ordered: &Ordered) -> WorkedStep {
        let site = self.setup.sites.first();
        let hot = site.is_some_and(|site| ordered.tasks.iter().any(|task| is_hot(site, task)));
        let hot = spots::is_done_hot(&ordered.step, hot);
        let least = site.map_or(1, |site| ordered.tasks.iter().map(|task| least_heats(site, task)).max().unwrap_or(1));
        if hot || self.last_bar.take().is_some() {
            self.next_bar();
        }
        let minutes = minutes_of(self.setup, ordered, site);
        let heat_minutes = HeatRules::MINUTES;
        let load = Load { least, minutes, heat_minutes, hot, cools: true, beside: true, ..Load::default() };
        let nowhere = Lengths { starts: Vec::new(), lengths: Vec::new() };
        let heated = self.take(&load, &nowhere, ordered.step.heat);
        let tools = self.want(ordered, site);
        let task = ordered.tasks.first();
        let held = task.and_then(|task| held_at_joint(self.setup.sites, &self.progress, task));
        let tongs = held.and_then(|(bar, hold)| tongs(self.setup.sites.get(bar)?, &hold));
        self.tools.push((self.seen.len(), tongs.into_iter().collect()));
        self.seen.push(Seen { heated: Some(heated), ..Seen::default() });
        let caution = task.zip(site).and_then(|(task, site)| careful::caution(site, task, &[], None));
        let joint = task.and_then(|task| self.setup.plan.joints.get(task.joint?));
        let place = match joint.map(|joint| joint.kind) {
            Some(JointKind::Tenon) => AnvilPlace::Vice,
            _ if hot && joint.is_some_and(closes_a_ring) => AnvilPlace::Horn,
            _ if hot => AnvilPlace::Face,
            _ => AnvilPlace::Bench,
        };
        WorkedStep {
            title: self.title(ordered, site),
            becomes: self.joint_words(ordered),
            minutes,
            lay: ordered.step.lay.clone().or_else(|| {
                task.filter(|task| task.joint.is_some()).and_then(|task| at_joint(self.setup.sites, task)).or_else(
                    || task.zip(site).and_then(|(task, site)| lay(site, task, &[], self.progress.get(site.index)?)),
                )
            }),
            caution: ordered.step.caution.clone().or(caution),
            check: ordered.step.check.clone().or_else(|| {
                task.filter(|task| task.operation == Operation::Weld)
                    .zip(site)
                    .and_then(|(task, site)| checks::check(site, task, &[], (self.progress.get(site.index)?, 0.0)))
            }),
            hold: held.map(|(_, hold)| hold),
            held_bar: held.map(|(bar, _)| bar),
            ..self.bare(ordered, None, heated, place, tools)
        }
    }

    /// What its joints put together, each thing once.
    fn joint_words(&self, ordered: &Ordered) -> Vec<String> {
        let joints = ordered.tasks.iter().filter_map(|task| self.setup.plan.joints.get(task.joint?));
        distinct(joints.map(|joint| {
            let members: Vec<String> = joint.members().map(|member| words::member(self.setup.plan, member)).collect();
            format!("{}: {}", joint.kind.name(), words::joined(&members))
        }))
    }
}
