//! How far a bar has come: what was done to each of its parts, and how long each is now.

use crate::bar::rough::rough_outline;
use crate::job::along::{along_mm, followers};
use crate::job::leaving::stays_off;
use crate::job::site::{Part, Site, in_mm, in_mm2, in_mm3};
use crate::job::staged::Staged;
use crate::job::task::{Task, on_the_way, operations};
use crate::job::upsets::upset_length_mm;
use fh_core::forms;
use fh_core::metal::{FreeEnd, Shape};
use fh_core::plan::{Bend, Chain, Form, Made, Operation, SizeName};

/// How far one part has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Stage {
    /// Necked at its ends.
    pub isolated: bool,
    /// Drawn out along with what lies beside it, to that one's section; its own shape is still to come.
    pub along: bool,
    /// Upset to a block; its own shape is still to come, or is that block.
    pub upset: bool,
    /// How many of its shapes on the way are made.
    pub via: usize,
    /// The next of them forged, its bend still to come.
    pub via_forged: bool,
    /// Straightened again after it was bent on the way.
    pub straightened: bool,
    /// Forged to its shape.
    pub forged: bool,
    /// Trimmed to its outline.
    pub trimmed: bool,
    /// Slit for its hole.
    pub slit: bool,
    /// Its hole made.
    pub pierced: bool,
    /// Cut along into its branches.
    pub cut: bool,
    /// Its branches bent apart.
    pub aside: bool,
    /// Its slit opened.
    pub opened: bool,
    /// Dressed in its dies.
    pub dressed: bool,
    /// Bent or twisted.
    pub bent: bool,
    /// Welded.
    pub welded: bool,
    /// Cut off.
    pub off: bool,
}

impl Stage {
    /// The shape on the way that it has, counted from 0, and whether it is straight for all its bend; none where it has none, or is
    /// forged to the finished one.
    pub(crate) fn on_the_way(&self) -> Option<(usize, bool)> {
        match () {
            () if self.forged => None,
            () if self.via_forged => Some((self.via, true)),
            () => self.via.checked_sub(1).map(|made| (made, self.straightened)),
        }
    }
}

/// How far the parts of a bar have come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Progress {
    pub(crate) stages: Vec<Stage>,
    /// Whether the marks were laid off.
    pub(crate) marked: bool,
}

/// The last of a part's operations that are of a sort.
fn last_of(site: &Site<'_>, at: usize, wanted: fn(Operation) -> bool) -> Option<Operation> {
    let part = site.part(at)?;
    operations(site, part).iter().copied().rfind(|operation| wanted(*operation))
}

fn is_piercing(operation: Operation) -> bool {
    matches!(operation, Operation::Punch | Operation::Drift | Operation::Drill)
}

impl Progress {
    /// The bar as it is cut from the rack. What needs no hammer has its shape already.
    pub(crate) fn start(site: &Site<'_>) -> Self {
        let stage = |at: usize| Stage { forged: Self::start_of(site, at), ..Stage::default() };
        Self { stages: (0..site.flat.len()).map(stage).collect(), marked: false }
    }

    /// Whether a part has its shape from the rack.
    pub(crate) fn start_of(site: &Site<'_>, at: usize) -> bool {
        let form = &site.flat[at].segment.form;
        let is_left = site.part(at).is_some_and(|part| part.balance.standing.is_some());
        let is_made = !form.branches().is_empty() || matches!(form, Form::Shoulder(_)) || is_left;
        !is_made && !site.passes_through(at) && last_of(site, at, Operation::is_shaping).is_none()
    }

    /// It as it is seen by what makes shapes on the way: there they stand for the finished ones.
    pub(crate) fn seen_by(&self, staged: Option<&Staged>, site: &Site<'_>) -> Self {
        let mut seen = self.clone();
        for (at, to) in staged.iter().flat_map(|staged| &staged.of) {
            let (Some(stage), Some(to)) = (seen.stages.get_mut(*at), *to) else { continue };
            let is_bent = site.part(*at).is_some_and(|part| part.balance.bent.is_some());
            let is_made = stage.forged || stage.via > to;
            if is_made || (stage.via == to && stage.via_forged) {
                *stage = Stage { forged: true, bent: is_made && is_bent, via: to, via_forged: false, ..*stage };
            }
            stage.via = stage.via.min(to);
        }
        seen
    }

    /// One task more.
    pub(crate) fn apply(&mut self, site: &Site<'_>, task: &Task) {
        use Operation as O;
        let Some(at) = task.part else {
            self.marked |= task.operation == O::Mark;
            return;
        };
        let Some(form) = site.flat.get(at).map(|flat| &flat.segment.form) else { return };
        if let Some(to) = task.to {
            return self.apply_on_the_way(site, (at, to), task.operation);
        }
        let is_split = !form.branches().is_empty();
        let is_left = site.part(at).is_some_and(|part| part.balance.standing.is_some());
        let has_form = task.operation != O::Isolate
            && site.passes_through(at)
            && last_of(site, at, Operation::is_shaping).is_none();
        let is_last = |wanted| last_of(site, at, wanted) == Some(task.operation);
        let Some(stage) = self.stages.get_mut(at) else { return };
        // Where nothing is left to forge, the last shape on the way has the form already.
        stage.forged |= has_form;
        match task.operation {
            O::SetDown if matches!(form, Form::Shoulder(_)) => stage.forged = true,
            O::Isolate | O::SetDown => {
                stage.isolated = true;
                // What is left standing has its shape once both of its sides are set down.
                stage.forged |= is_left && task.operation == O::SetDown;
            }
            operation if operation.is_shaping() => {
                stage.upset |= operation == O::Upset;
                stage.forged |= is_last(Operation::is_shaping);
            }
            O::Trim if matches!(form, Form::Trim(_)) => stage.off = true,
            O::Trim => stage.trimmed = true,
            O::PartOff => stage.off |= matches!(form, Form::Hold(_)),
            O::Weld => stage.welded = true,
            O::Dress => stage.dressed = true,
            O::Split => stage.cut |= is_split,
            O::BendAside => stage.aside = is_split,
            O::Straighten => {
                stage.aside = false;
                stage.straightened = true;
            }
            O::Open => {
                stage.opened |= is_split;
                stage.aside = false;
            }
            operation if is_piercing(operation) => {
                stage.slit = true;
                stage.pierced |= is_last(is_piercing);
            }
            operation if operation.is_bending() || operation == O::Twist => {
                stage.bent = true;
                // What stood off from its forging stands by its own bend now.
                if let Some((split, _)) = site.split_of(at).filter(|(split, _)| stays_off(site, *split)) {
                    self.stages[split].aside = false;
                }
            }
            _ => {}
        }
        if matches!(task.operation, O::Draw | O::Taper) && self.stages[at].forged {
            for along in followers(site, at) {
                self.stages[along].along |= !self.stages[along].forged;
            }
        }
    }

    /// One task more of those that make a shape on the way.
    fn apply_on_the_way(&mut self, site: &Site<'_>, (at, to): (usize, usize), operation: Operation) {
        let Some(part) = site.part(at) else { return };
        let all = on_the_way(site, part).get(to).map_or(&[][..], Vec::as_slice);
        let is_last = |wanted: fn(Operation) -> bool| all.iter().copied().rfind(|it| wanted(*it)) == Some(operation);
        let is_finished = operations(site, part).is_empty();
        let Some(stage) = self.stages.get_mut(at) else { return };
        stage.isolated |= operation == Operation::Isolate;
        // What the smith does in a way of one's own makes the shape that it names.
        if operation == Operation::Own || is_last(|_| true) {
            stage.via = stage.via.max(to + 1);
            (stage.via_forged, stage.straightened) = (false, false);
        } else if is_last(Operation::is_shaping) {
            (stage.via, stage.via_forged) = (stage.via.max(to), stage.via <= to);
        } else if operation == Operation::Straighten {
            stage.straightened = true;
        }
        if is_finished && stage.via == part.segment.via.len() {
            (stage.forged, stage.bent) = (true, part.balance.bent.is_some());
        }
    }

    /// A joint welded: the welds that it names are made.
    pub(crate) fn weld(&mut self, site: &Site<'_>, joint: usize) {
        let joints = fh_core::joints::joined(site.plan).into_iter().filter(|joined| joined.joint == joint);
        for member in joints.flat_map(|joined| joined.members).filter(|member| member.bar == site.index) {
            if let Some(stage) = self.stages.get_mut(member.segment) {
                stage.welded = true;
            }
        }
    }

    /// The length of each part now, in mm; 0 of what is cut off, and of branches that are not there yet.
    pub(crate) fn lengths(&self, site: &Site<'_>) -> Vec<f64> {
        let mut lengths = vec![0.0; self.stages.len()];
        // A split stands before its branches: from the end on, they are known when it is asked for.
        for at in (0..self.stages.len()).rev() {
            let Some(part) = site.part(at) else { continue };
            let stage = self.stages[at];
            let raw = site.raw_mm(part);
            lengths[at] = match &part.segment.form {
                _ if stage.off || !self.is_there(site, at) => 0.0,
                Form::Split(_) if stage.cut => self.cut_length(site, at, &lengths),
                _ if stage.forged => {
                    let blank = part.balance.shape.as_ref().and_then(Shape::blank).filter(|_| !stage.trimmed);
                    let spread = blank.as_ref().map(|blank| in_mm(blank.length()));
                    let rough = spread.or(rough_outline(part, stage.trimmed).map(|outline| in_mm(outline.length())));
                    rough.unwrap_or(forged_mm(part, stage)) * self.untwisted(site, at) + self.unpierced_mm(site, part)
                }
                _ if stage.on_the_way().is_some() => via_mm(part, stage).unwrap_or(raw),
                _ if stage.along => along_mm(site, at).unwrap_or(raw),
                _ if stage.upset => upset_length_mm(site, part).min(raw),
                Form::Split(_) => raw,
                _ => raw + root_hole_mm(site, at),
            };
        }
        lengths
    }

    /// How many times longer a part is than it will be, while a twist that shortens it is still to come.
    pub(crate) fn untwisted(&self, site: &Site<'_>, at: usize) -> f64 {
        let Some(part) = site.part(at) else { return 1.0 };
        let twists = matches!(part.segment.bend, Some(Bend::Twist { .. }));
        if twists && !self.stages[at].bent { part.balance.swell } else { 1.0 }
    }

    /// By how much a boss is longer than it will be, while its hole is still to come, in mm.
    fn unpierced_mm(&self, site: &Site<'_>, part: Part<'_>) -> f64 {
        let is_boss = matches!(part.segment.form, Form::Hole(_));
        if is_boss && !self.stages[part.at].pierced && Self::start_of(site, part.at) {
            // What is no more than the bar itself is pierced as it is cut.
            return in_mm(part.balance.mark_end - part.balance.mark_start) - in_mm(part.balance.forged_length);
        }
        self.undrifted_mm(part)
    }

    /// By how much a flattened boss is longer than it will be, while the drift that shortens it is still to come, in mm.
    fn undrifted_mm(&self, part: Part<'_>) -> f64 {
        let is_open = self.stages[part.at].pierced
            || !matches!(part.segment.form, Form::Hole(forms::Hole { made: Made::Drifted, .. }));
        let change = |name| part.balance.derived_length(name).map(in_mm);
        let longer = || change(SizeName::BossShorter).or_else(|| change(SizeName::BossLonger).map(|mm| -mm));
        let longer = if is_open { None } else { longer() }.unwrap_or(0.0);
        longer.max(-0.5 * in_mm(part.balance.forged_length))
    }

    /// The length of a split that is cut: its longest branch that the bar hangs on; once it is opened, as it is planned.
    fn cut_length(&self, site: &Site<'_>, at: usize, lengths: &[f64]) -> f64 {
        let Some(Shape::Split(size)) = site.part(at).and_then(|part| part.balance.shape.as_ref()) else { return 0.0 };
        if self.is_opened(site, at) {
            return in_mm(size.length);
        }
        let branches =
            site.chains.iter().filter(|(chain, _)| matches!(chain, Chain::Branch { split, .. } if *split == at));
        // A branch that leaves the bar hangs beside it.
        let leaves = |members: &[usize]| {
            site.has_leaving_branch(at)
                && members.first().is_some_and(|first| site.branch_free(*first) != Some(FreeEnd::Neither))
        };
        let running_on = branches.filter(|(_, members)| !leaves(members));
        running_on.map(|(_, members)| members.iter().map(|at| lengths[*at]).sum()).fold(0.0, f64::max)
    }

    /// Whether a slit is opened to its shape: that is so only once all its branches are forged.
    pub(crate) fn is_opened(&self, site: &Site<'_>, at: usize) -> bool {
        let below = at + 1..at + site.flat[at].segment.count();
        self.stages[at].opened && below.into_iter().all(|below| self.is_shaped(site, below))
    }

    /// Whether a part has all of its forged shape.
    pub(crate) fn is_shaped(&self, site: &Site<'_>, at: usize) -> bool {
        let stage = self.stages[at];
        match site.flat[at].segment.form {
            Form::Split(_) => stage.cut,
            _ => stage.forged,
        }
    }

    /// Whether a part is there: the splits it lies in are cut.
    pub(crate) fn is_there(&self, site: &Site<'_>, at: usize) -> bool {
        match site.split_of(at) {
            None => true,
            Some((split, _)) => self.stages[split].cut && self.is_there(site, split),
        }
    }

    /// Where each part starts now on the straight bar, in mm from its end toward the datum.
    pub(crate) fn starts(&self, site: &Site<'_>, lengths: &[f64]) -> Vec<f64> {
        let mut starts = vec![0.0; lengths.len()];
        for (chain, members) in &site.chains {
            let mut at = match chain {
                Chain::Bar => 0.0,
                Chain::Branch { split, .. } => starts[*split] + hangs_back(site, *split, members, lengths),
            };
            for member in members {
                starts[*member] = at;
                at += lengths[*member];
            }
        }
        starts
    }
}

/// How long a forged part is, in mm: before it is dressed, shorter by what the dies will send along it; before it is driven up into its
/// corner, as long as its metal is in bar of the legs' section.
fn forged_mm(part: Part<'_>, stage: Stage) -> f64 {
    if let Some(Shape::Peak { section, .. }) = part.balance.shape
        && part.segment.form.is_driven_up()
        && !stage.bent
    {
        return in_mm3(part.balance.finished_volume) / in_mm2(section.area());
    }
    let undressed = || part.balance.shape_before_dies().map(|shape| in_mm(shape.length()));
    let before = (!stage.dressed && !part.balance.dressed.is_empty()).then(undressed).flatten();
    before.unwrap_or(in_mm(part.balance.forged_length))
}

/// How long a shape on the way is, in mm.
fn via_mm(part: Part<'_>, stage: Stage) -> Option<f64> {
    let (made, _) = stage.on_the_way()?;
    part.balance.via.get(made)?.shape.as_ref().map(|shape| in_mm(shape.length()))
}

/// How much longer a part at the root of a slit is than its metal while it is as it was cut, in mm: a root hole takes metal out of
/// the bar and no length.
fn root_hole_mm(site: &Site<'_>, at: usize) -> f64 {
    let hole = || {
        let (split, branch) = site.split_of(at)?;
        let Some(Shape::Split(size)) = &site.part(split)?.balance.shape else { return None };
        let (_, members) = site.chains.iter().find(|(chain, _)| *chain == site.flat[at].chain)?;
        let lost = in_mm(size.stock_length - size.slit);
        let [is_first, is_last] = [members.first() == Some(&at), members.last() == Some(&at)].map(f64::from);
        Some(match size.branches.get(branch)?.free {
            FreeEnd::Far => lost * is_first,
            FreeEnd::Datum => lost * is_last,
            FreeEnd::Neither => lost / 2.0 * (is_first + is_last),
        })
    };
    hole().unwrap_or(0.0)
}

/// How far behind its split's start a branch starts: one that is free toward the datum hangs on the bar by its other end.
fn hangs_back(site: &Site<'_>, split: usize, members: &[usize], lengths: &[f64]) -> f64 {
    match members.first().and_then(|first| site.branch_free(*first)) {
        Some(FreeEnd::Datum) => lengths[split] - members.iter().map(|at| lengths[*at]).sum::<f64>(),
        _ => 0.0,
    }
}

/// What has been drawn out along with a part and has not got its own shape yet.
pub(crate) fn still_along(site: &Site<'_>, at: usize, progress: &Progress) -> Vec<usize> {
    let is_along = |other: &usize| {
        let stage = progress.stages[*other];
        stage.along && !stage.forged && !stage.off
    };
    followers(site, at).into_iter().filter(is_along).collect()
}
