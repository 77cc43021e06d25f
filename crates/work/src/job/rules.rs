//! What must come before what on one bar, and why.

use crate::job::along::leader;
use crate::job::ends::{is_free_end, is_stepped_at, tang_shoulder, waits_for_the_cut};
use crate::job::neck::same_plate;
use crate::job::site::{Site, in_mm};
use crate::job::task::{Task, is_hot};
use crate::job::why::Why;
use fh_core::plan::{Limits, Operation};
use fh_measure::WrittenLength;

mod bends;
mod cuts;

/// One task before another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(crate) struct Rule {
    /// What comes first: its number in the list of tasks.
    pub before: usize,
    /// What comes later.
    pub after: usize,
    /// Why.
    pub why: Why,
}

/// The tasks of one bar by part, ready to be ruled.
struct Ruling<'s, 'a> {
    site: &'s Site<'a>,
    tasks: &'s [Task],
    /// The numbers of each part's tasks, in the order in which they have to be done.
    of: Vec<Vec<usize>>,
    /// Those of the whole bar.
    whole: Vec<usize>,
    rules: Vec<Rule>,
}

/// The rules between the tasks of a bar.
pub(crate) fn bar_rules(site: &Site<'_>, tasks: &[Task]) -> Vec<Rule> {
    let mut of = vec![Vec::new(); site.flat.len()];
    let mut whole = Vec::new();
    for (number, task) in tasks.iter().enumerate() {
        match task.part.and_then(|part| of.get_mut(part)) {
            Some(list) => list.push(number),
            None => whole.push(number),
        }
    }
    let mut ruling = Ruling { site, tasks, of, whole, rules: Vec::new() };
    ruling.mark();
    for at in 0..site.flat.len() {
        ruling.within(at);
        ruling.beside(at);
        ruling.outer(at);
        ruling.plates(at);
        ruling.taper(at);
        ruling.drilled(at);
        ruling.out_of_the_way(at);
    }
    ruling.splits();
    for chain in 0..site.chains.len() {
        ruling.upsets(chain);
        ruling.scarfs(chain);
        ruling.thin(chain);
        ruling.bends(chain);
    }
    ruling.ends();
    ruling.straighten();
    ruling.normalise();
    ruling.check();
    ruling.rules
}

impl Ruling<'_, '_> {
    fn rule(&mut self, before: usize, after: usize, why: Why) {
        if before != after {
            self.rules.push(Rule { before, after, why });
        }
    }

    /// The tasks of a part that are of a sort.
    fn those(&self, at: usize, wanted: impl Fn(Operation) -> bool) -> Vec<usize> {
        let all = self.of.get(at).map_or(&[][..], Vec::as_slice);
        all.iter().copied().filter(|task| wanted(self.tasks[*task].operation)).collect()
    }

    fn shaping(&self, at: usize) -> Vec<usize> {
        self.those(at, Operation::is_shaping)
    }

    fn necks(&self, at: usize) -> Vec<usize> {
        self.those(at, |operation| matches!(operation, Operation::Isolate | Operation::SetDown))
    }

    /// What forges a part to its finished shape.
    fn finishing(&self, at: usize) -> Vec<usize> {
        let mut all = self.shaping(at);
        all.retain(|task| self.tasks[*task].to.is_none());
        all
    }

    fn each(&mut self, before: &[usize], after: &[usize], why: Why) {
        for first in before {
            for then in after {
                self.rule(*first, *then, why);
            }
        }
    }

    fn whole_bar(&self, operation: Operation) -> Option<usize> {
        self.whole.iter().copied().find(|task| self.tasks[*task].operation == operation)
    }

    /// Marks before everything.
    fn mark(&mut self) {
        let Some(mark) = self.whole_bar(Operation::Mark) else { return };
        for task in 0..self.tasks.len() {
            self.rule(mark, task, Why::MarkFirst);
        }
    }

    /// What is done to one part, one after the other.
    fn within(&mut self, at: usize) {
        let own = self.of[at].clone();
        let is_split = !self.site.flat[at].segment.form.branches().is_empty();
        for (place, task) in own.iter().enumerate() {
            for later in own.iter().skip(place + 1) {
                let (first, then) = (self.tasks[*task].operation, self.tasks[*later].operation);
                if self.tasks[*task].to != self.tasks[*later].to && first != Operation::Isolate {
                    self.rule(*task, *later, Why::ShapesInTurn);
                    continue;
                }
                // What is done to a split and to its branches is told apart by its own rules.
                if !is_split || (first == Operation::Punch && then == Operation::Split) {
                    self.rule(*task, *later, why_within(first, then));
                }
            }
        }
    }

    /// A neck on either side of a mark before the metal beside it is forged.
    fn beside(&mut self, at: usize) {
        let late = tang_shoulder(self.site, at);
        let first = leader(self.site, at).map(|leader| leader.part);
        let first = first.filter(|first| self.site.beside(at).contains(&Some(*first)));
        if let Some(first) = first {
            self.each(&self.shaping(first), &self.necks(at), Why::StubAlong);
            let tapers = self.those(at, |operation| operation == Operation::Taper);
            self.each(&self.shaping(first), &tapers, Why::StubAlong);
        }
        for next in
            self.site.beside(at).into_iter().flatten().filter(|next| Some(*next) != late && Some(*next) != first)
        {
            let necks = self.necks(at);
            // What is upset comes before every neck.
            let forging = self.those(next, |operation| operation.is_shaping() && operation != Operation::Upset);
            self.each(&necks, &forging, Why::IsolateFirst);
        }
    }

    /// The zones of one plate are spread and cut while all of it is flat, before one of them is bent or rolled.
    fn plates(&mut self, at: usize) {
        for next in same_plate(self.site, at) {
            let bends = self.bending(next);
            let spread = self.those(at, |operation| operation.is_shaping() && operation != Operation::Trim);
            self.each(&spread, &bends, Why::ForgeBeforeBend);
            let trimmed = self.those(at, |operation| operation == Operation::Trim);
            self.each(&trimmed, &bends, Why::TrimBeforeBend);
            let cut_next = self.those(next, |operation| operation == Operation::Trim);
            self.each(&spread, &cut_next, Why::ForgeBeforeTrim);
        }
    }

    /// Of two blocks side by side that are flattened, the one at the end first: the other one then lies with thick bar on one side
    /// alone.
    fn outer(&mut self, at: usize) {
        let flattened = |at: usize| self.those(at, |it| matches!(it, Operation::Flatten | Operation::Spread));
        let own = flattened(at);
        if own.is_empty() || !is_free_end(self.site, at) {
            return;
        }
        let plate = same_plate(self.site, at);
        let inner: Vec<usize> = self.site.beside(at).into_iter().flatten().filter(|at| !plate.contains(at)).collect();
        let inner =
            inner.into_iter().filter(|inner| !is_free_end(self.site, *inner)).flat_map(flattened).collect::<Vec<_>>();
        self.each(&own, &inner, Why::OuterFirst);
    }

    /// All other forging on its bar or branch before a scarf.
    fn scarfs(&mut self, chain: usize) {
        let members = self.site.chains[chain].1.clone();
        let of = |wanted: fn(Operation) -> bool| -> Vec<usize> {
            members.iter().flat_map(|at| self.those(*at, wanted)).collect()
        };
        let scarfs = of(|operation| operation == Operation::Scarf);
        let forging = if scarfs.is_empty() { Vec::new() } else { of(forges) };
        self.each(&forging, &scarfs, Why::ScarfLate);
    }

    /// The even bar that a taper runs down to is drawn before it, unless a neck or a shoulder lies between them.
    fn taper(&mut self, at: usize) {
        let tapers = self.those(at, |operation| operation == Operation::Taper);
        let Some(part) = self.site.part(at).filter(|_| !tapers.is_empty()) else { return };
        let raw = self.site.raw_section(at);
        for (side, next) in self.site.beside(at).into_iter().enumerate() {
            let Some(next) = next else { continue };
            if is_stepped_at(part, side == 1, raw) && self.necks(at).is_empty() && self.necks(next).is_empty() {
                let drawn = self.those(next, |operation| operation == Operation::Draw);
                self.each(&drawn, &tapers, Why::TaperLast);
            }
        }
    }

    /// A hole is drilled after what is still to be flattened right beside it.
    fn drilled(&mut self, at: usize) {
        /// Flattening is felt so far beside it, in mm: common practice, no source.
        const BESIDE: f64 = 20.0;
        let drills = self.those(at, |operation| operation == Operation::Drill);
        let Some(own) = self.site.part(at).filter(|_| !drills.is_empty()) else { return };
        let chain = self.site.chains[self.site.place[at].0].1.clone();
        for other in chain.into_iter().filter(|other| *other != at) {
            let Some(beside) = self.site.part(other) else { continue };
            let (one, two) = (own.balance, beside.balance);
            let gap = in_mm(one.mark_start - two.mark_end).max(in_mm(two.mark_start - one.mark_end));
            if gap <= BESIDE {
                let flat = self.those(other, |it| matches!(it, Operation::Flatten | Operation::Spread));
                self.each(&flat, &drills, Why::BossFirst);
            }
        }
    }

    /// Splits and their branches.
    fn splits(&mut self) {
        for (at, flat) in self.site.flat.iter().enumerate() {
            if flat.segment.form.branches().is_empty() {
                continue;
            }
            let one = |operation| self.those(at, move |other| other == operation).first().copied();
            let (cut, aside) = (one(Operation::Split), one(Operation::BendAside));
            let (back, open) = (one(Operation::Straighten), one(Operation::Open));
            let below: Vec<usize> = (at + 1..at + flat.segment.count()).flat_map(|at| self.of[at].clone()).collect();
            let is = |task: &&usize, wanted: fn(Operation) -> bool| wanted(self.tasks[**task].operation);
            let forging: Vec<usize> = below.iter().filter(|task| !is(task, bends_or_twists)).copied().collect();
            let bending: Vec<usize> = below.iter().filter(|task| is(task, bends_or_twists)).copied().collect();
            if let Some(cut) = cut {
                self.each(&[cut], &below, Why::SplitFirst);
                let then: Vec<usize> = [aside, back, open].into_iter().flatten().collect();
                self.each(&[cut], &then, Why::SplitFirst);
            }
            if let Some(aside) = aside {
                self.each(&[aside], &forging, Why::AsideFirst);
            }
            if let Some(back) = back {
                self.each(&forging, &[back], Why::BackLast);
                self.each(&[back], &bending, Why::StraightFirst);
            }
            if let Some(open) = open {
                self.each(&forging, &[open], Why::ForgeBeforeBend);
                self.each(&back.into_iter().collect::<Vec<_>>(), &[open], Why::StraightFirst);
            }
        }
    }

    /// What is made thicker, before the bar round it is made thinner or cut into.
    fn upsets(&mut self, chain: usize) {
        let members = self.site.chains[chain].1.clone();
        let is_upset = |operation| matches!(operation, Operation::Upset | Operation::Scarf);
        for at in &members {
            let upsets = self.those(*at, |operation| operation == Operation::Upset);
            if upsets.is_empty() {
                continue;
            }
            for other in &members {
                let thinned: Vec<usize> = self
                    .those(*other, |operation| {
                        // A hole or a slit closes, or tears open, where the bar is rammed.
                        (operation.is_shaping() && !is_upset(operation))
                            || matches!(operation, Operation::Isolate | Operation::SetDown)
                            || matches!(operation, Operation::Punch | Operation::Drift | Operation::Split)
                    })
                    .into_iter()
                    .filter(|_| other != at)
                    .collect();
                self.each(&upsets, &thinned, Why::UpsetFirst);
            }
        }
    }

    /// What is thin, after what one heat warms along with it; at an end only after what lies right beside it, for from there on the fire is
    /// kept away from the end.
    fn thin(&mut self, chain: usize) {
        let limits = &self.site.plan.limits;
        let unit = self.site.plan.units.length;
        let thin = limits.thin.as_ref().map_or_else(|| Limits::THIN.in_unit(unit), WrittenLength::mm);
        let zone = crate::job::heat_rules::zone_mm(self.site.plan);
        let members = self.site.chains[chain].1.clone();
        let least = |at: usize| self.site.part(at).and_then(|part| part.balance.shape.as_ref()?.least_thickness_mm());
        let sizes: Vec<Option<f64>> = members.iter().map(|at| least(*at)).collect();
        for (place, at) in members.iter().enumerate() {
            let Some(own) = sizes[place].filter(|own| *own <= thin) else { continue };
            let forging = self.finishing(*at);
            let is_end = is_free_end(self.site, *at);
            let near = |other: usize| {
                if is_end {
                    return self.site.beside(*at).contains(&Some(other));
                }
                let (Some(one), Some(other)) = (self.site.part(*at), self.site.part(other)) else { return false };
                let (one, other) = (one.balance, other.balance);
                let gap = in_mm(one.mark_start - other.mark_end).max(in_mm(other.mark_start - one.mark_end));
                gap < zone
            };
            let thicker: Vec<usize> = (0..members.len())
                .filter(|other| *other != place && near(members[*other]))
                .filter(|other| !waits_for_the_cut(self.site, members[*other]))
                .filter(|other| sizes[*other].is_some_and(|size| size > own * 1.5))
                .flat_map(|other| self.those(members[other], forges))
                .collect();
            self.each(&thicker, &forging, Why::ThinLast);
        }
    }

    /// Forging and holes, then straightening, then bends.
    fn straighten(&mut self) {
        let Some(straighten) = self.whole_bar(Operation::Straighten) else { return };
        for (number, task) in self.tasks.iter().enumerate() {
            if task.part.is_none() {
                continue;
            }
            if self.helps(number) {
                continue;
            }
            if self.opens(number) {
                self.rules.push(Rule { before: number, after: straighten, why: Why::OutOfTheWay });
            } else if bends_or_twists(task.operation) {
                self.rules.push(Rule { before: straighten, after: number, why: Why::StraightFirst });
            } else if task.operation.is_hot()
                && !matches!(task.operation, Operation::PartOff | Operation::Trim | Operation::Weld)
            {
                self.rules.push(Rule { before: number, after: straighten, why: Why::ForgeBeforeBend });
            }
        }
    }

    /// Everything hot, then what makes the grain fine again.
    fn normalise(&mut self) {
        let Some(normalise) = self.whole_bar(Operation::Normalise) else { return };
        for task in 0..self.tasks.len() {
            if is_hot(self.site, &self.tasks[task]) {
                self.rule(task, normalise, Why::NormaliseLast);
            }
        }
    }

    /// The check at the end.
    fn check(&mut self) {
        let Some(check) = self.whole_bar(Operation::Check) else { return };
        for task in 0..self.tasks.len() {
            self.rule(task, check, Why::FinishLast);
        }
    }
}

fn why_within(first: Operation, then: Operation) -> Why {
    use Operation as O;
    match (first, then) {
        (_, O::Brush | O::Stamp) => Why::FinishLast,
        (O::Brush, _) => Why::CleanFirst,
        (first, O::Dress) if first.is_shaping() => Why::DieLate,
        (O::Stamp, _) => Why::StampBeforeBend,
        (O::Punch, O::Split) => Why::RootFirst,
        (O::Punch, O::Drift) => Why::SlitFirst,
        (O::Punch | O::Drift | O::Drill, _) => Why::HoleBeforeBend,
        (O::Scarf, _) => Why::ScarfFirst,
        (O::Trim, then) if bends_or_twists(then) => Why::TrimBeforeBend,
        (_, then) if bends_or_twists(then) => Why::ForgeBeforeBend,
        (O::Upset, O::Isolate) => Why::UpsetFirst,
        (O::Isolate | O::SetDown, then) if then.is_shaping() => Why::IsolateFirst,
        (_, O::Trim) => Why::ForgeBeforeTrim,
        (_, O::Punch | O::Drift | O::Drill) => Why::BossFirst,
        _ => Why::ForgeBeforeBend,
    }
}

fn bends_or_twists(operation: Operation) -> bool {
    operation.is_bending() || operation == Operation::Twist
}

/// Whether an operation forges a part to its shape; a scarf is only made ready.
fn forges(operation: Operation) -> bool {
    operation.is_shaping() && operation != Operation::Scarf
}
