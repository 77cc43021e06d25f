//! What an order of work is held against: broken rules, and what follows from the state of the bar at each step.

use crate::answers::passes;
use crate::bar::held;
use crate::decisions::{Decision, Pair, decisions};
use crate::job::order::{Job, Ordered};
use crate::job::rules::Rule;
use crate::job::site::Site;
use crate::job::task::Task;
use crate::job::why::Why;
use crate::job::{heat_rules, part};
use crate::says::words::{apart, joined, length_words};
use crate::seen::{OrderFinding, Seen};
use crate::step::WorkedStep;
use fh_core::describe::lower_first;
use fh_core::findings::{Finding, Place, Severity, is_over, is_under};
use fh_core::plan::{Form, Operation, Plan};
use std::cmp::Reverse;
use std::collections::BTreeMap;

/// The id of every finding about the order of work.
pub const IDS: [&str; 17] = [
    "mark-gone",
    "out-of-reach",
    "parted-too-soon",
    "thin-too-soon",
    "leg-in-the-way",
    "wrong-order",
    "rules-contradict",
    "not-in-the-order",
    "part-unknown",
    "no-hold-left",
    "cold-step",
    "heat-overrun",
    "leg-into-anvil",
    "leg-into-leg",
    "too-many-heats",
    "spread-unknown",
    "groove-too-wide",
];

/// Less than this of a step, in mm, is as hot as what lies beside it: common practice, no source.
const LEAST_COLD_MM: f64 = 0.5;

/// A heat that ends so many minutes early is not told: no hearth is known so well.
const LEAST_LATE_MINUTES: f64 = 0.05;

/// An order and what was seen on the way.
pub(crate) struct Scene<'s, 'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) sites: &'s [Site<'a>],
    pub(crate) job: &'s Job,
    pub(crate) ordered: &'s [Ordered],
    pub(crate) steps: &'s [WorkedStep],
    pub(crate) seen: &'s [Seen],
    pub(crate) dropped: &'s [Rule],
}

/// Every finding of an order, the weightiest first, each group in the order of its steps.
pub(crate) fn findings(scene: &Scene<'_, '_>) -> Vec<OrderFinding> {
    let mut found = scene.broken_rules();
    found.extend(scene.contradictions());
    found.extend(scene.missing());
    found.extend(scene.strangers());
    for number in 0..scene.steps.len() {
        found.extend(scene.at_step(number));
        found.extend(scene.tight_grooves(number));
    }
    found.extend(scene.thin_heats());
    found
        .sort_by_key(|found| (found.accepted.is_some(), Reverse(found.finding.severity), found.steps.first().copied()));
    found
}

/// The steps at the other side of some broken rules, each once.
fn others(pairs: &[Pair], of: fn(Pair) -> usize) -> Vec<usize> {
    let mut steps: Vec<usize> = pairs.iter().map(|pair| of(*pair)).collect();
    steps.sort_unstable();
    steps.dedup();
    steps
}

/// The numbers of steps as they are shown: `3, 5 and 6`.
fn numbers(steps: &[usize]) -> String {
    joined(&steps.iter().map(|step| (step + 1).to_string()).collect::<Vec<_>>())
}

/// The step of a task: the first one that does it, and the last.
type Span = (usize, usize);

impl Scene<'_, '_> {
    /// The places of each task in the order: its first and its last, counted through all tasks of all steps.
    fn places(&self) -> Vec<Option<[Span; 2]>> {
        let numbers = self.job.numbers();
        let mut places: Vec<Option<[Span; 2]>> = vec![None; self.job.tasks.len()];
        for (step, ordered) in self.ordered.iter().enumerate() {
            for (within, task) in ordered.tasks.iter().enumerate() {
                let Some(number) = numbers.get(task) else { continue };
                let here = (step, within);
                places[*number] = Some(places[*number].map_or([here, here], |[first, _]| [first, here]));
            }
        }
        places
    }

    /// Rules that the order breaks: a task comes first before another has been done for the last time. All that one step's place
    /// breaks is told once.
    fn broken_rules(&self) -> Vec<OrderFinding> {
        let places = self.places();
        let mut broken: BTreeMap<Pair, Rule> = BTreeMap::new();
        for rule in &self.job.rules {
            let (Some([_, before]), Some([after, _])) = (places[rule.before], places[rule.after]) else { continue };
            let is_for_a_hold = matches!(rule.why, Why::PartLate | Why::HandleLast);
            let holds = is_for_a_hold && self.is_well_held(before.0);
            if after < before && !self.dropped.contains(rule) && !holds {
                broken.entry((rule.why, after.0, before.0)).or_insert(*rule);
            }
        }
        let decisions = decisions(broken.keys().copied().collect());
        decisions.iter().filter_map(|decision| self.broken_rule(decision, &broken)).collect()
    }

    /// Whether the bar has a handle at a step: once it has one, it may be parted off.
    fn is_well_held(&self, number: usize) -> bool {
        let site = self.steps[number].bar.and_then(|bar| self.sites.get(bar));
        let hold = self.seen[number].hold.filter(|hold| !hold.is_poor);
        site.zip(hold).is_some_and(|(site, hold)| !is_under(hold.length_mm, held::least_mm(site)))
    }

    fn broken_rule(&self, decision: &Decision, broken: &BTreeMap<Pair, Rule>) -> Option<OrderFinding> {
        let firmest = decision.pairs.iter().max_by_key(|(why, early, _)| (why.firmness(), Reverse(*early)));
        let pair @ (why, early, late) = *firmest?;
        let (message, remedy) = match (decision.pairs.as_slice(), decision.is_early) {
            ([_], _) => self.one_broken(why, early, late),
            (pairs, true) => self.too_early(early, pairs),
            (pairs, false) => self.too_late(late, pairs),
        };
        let task = broken.get(&pair).map(|rule| self.job.tasks[rule.after]);
        let severity = if why.firmness() > 1 { Severity::Warning } else { Severity::Note };
        let mut steps: Vec<usize> = decision.pairs.iter().flat_map(|(_, early, late)| [*early, *late]).collect();
        steps.sort_unstable();
        steps.dedup();
        let place = place_of(self.ordered[early].bar, task.and_then(|task| task.part));
        let found = self.found(
            Finding { id: why.id(), severity, place, message, reason: why.reason(), remedy },
            steps,
            Some(why),
        );
        Some(OrderFinding { broken: decision.pairs.clone(), ..found })
    }

    /// A step by its number and what it does.
    fn step_words(&self, step: usize) -> String {
        format!("tep {} ({})", step + 1, lower_first(&self.steps[step].title))
    }

    /// What is said of a single broken rule, and what to do.
    fn one_broken(&self, why: Why, early: usize, late: usize) -> (String, String) {
        let [first, then] = [early, late].map(|step| self.step_words(step));
        if early == late {
            let message = format!("Within s{first}, two things are in the wrong order.");
            return (message, "Change the order within the step, or split it in two.".to_owned());
        }
        let message = if why == Why::IsolateFirst {
            format!("S{first} forges away the mark that s{then} still needs.")
        } else {
            format!("S{first} comes before s{then}.")
        };
        (message, format!("Move step {} to after step {}.", early + 1, late + 1))
    }

    /// That a step comes before several that should come before it.
    fn too_early(&self, early: usize, pairs: &[Pair]) -> (String, String) {
        let late = others(pairs, |(_, _, late)| late);
        let last = late.last().copied().unwrap_or(early);
        let message = format!("S{} comes before steps {}.", self.step_words(early), numbers(&late));
        (message, format!("Move step {} to after step {}.", early + 1, last + 1))
    }

    /// That a step comes after several that it should come before.
    fn too_late(&self, late: usize, pairs: &[Pair]) -> (String, String) {
        let early = others(pairs, |(_, early, _)| early);
        let first = early.first().copied().unwrap_or(late);
        let message = format!("S{} comes after steps {}.", self.step_words(late), numbers(&early));
        (message, format!("Move step {} to before step {}.", late + 1, first + 1))
    }

    /// Rules that cannot all be kept.
    fn contradictions(&self) -> Vec<OrderFinding> {
        let places = self.places();
        let told = |rule: &Rule| {
            let (before, after) = (self.job.tasks[rule.before], self.job.tasks[rule.after]);
            let (Some([_, last]), Some([first, _])) = (places[rule.before], places[rule.after]) else { return None };
            let title = |step: usize| lower_first(&self.steps[step].title);
            let message = format!(
                "Step {} ({}) should come before step {} ({}), but other rules prevent it.",
                last.0 + 1,
                title(last.0),
                first.0 + 1,
                title(first.0)
            );
            let remedy = "Choose which of them to keep, or change the piece so that both can be kept.".to_owned();
            let mut steps = vec![first.0, last.0];
            steps.sort_unstable();
            Some(self.found(
                Finding {
                    id: "rules-contradict",
                    severity: Severity::Note,
                    place: place_of(before.bar, after.part),
                    message,
                    reason: rule.why.reason(),
                    remedy,
                },
                steps,
                Some(rule.why),
            ))
        };
        self.dropped.iter().filter(|rule| rule.why != Why::ThinLast).filter_map(told).collect()
    }

    /// What has to be done and is in no step.
    fn missing(&self) -> Vec<OrderFinding> {
        let places = self.places();
        let mut found = Vec::new();
        for (number, task) in self.job.tasks.iter().enumerate() {
            let is_finish =
                matches!(task.operation, Operation::Brush | Operation::Wax | Operation::Check | Operation::Mark);
            let is_own = |other: &Task| {
                other.operation == Operation::Own
                    && other.to.is_some()
                    && (other.part, other.to) == (task.part, task.to)
            };
            let is_made = self.ordered.iter().any(|it| it.bar == task.bar && it.tasks.iter().any(is_own));
            if places[number].is_some() || is_made || (is_finish && task.part.is_none()) {
                continue;
            }
            let site = self.sites.get(task.bar);
            let title = |site: &Site<'_>| crate::says::words::title(self.plan, Some(site), &[*task]);
            let seen = |site: &Site<'_>| crate::job::task::as_seen_by(site, &[*task], title);
            let what = site.map_or_else(|| crate::says::words::title(self.plan, None, &[*task]), seen);
            found.push(self.found(
                Finding {
                    id: "not-in-the-order",
                    severity: Severity::Warning,
                    place: place_of(task.bar, task.part),
                    message: format!("No step covers: {}.", lower_first(&what)),
                    reason: "What no step mentions gets forgotten once the bar is hot.",
                    remedy: "Add a step for it, or go back to the program's order.".to_owned(),
                },
                Vec::new(),
                None,
            ));
        }
        found
    }

    /// Steps that name what is not there.
    fn strangers(&self) -> Vec<OrderFinding> {
        let told = |(number, ordered): (usize, &Ordered)| {
            if ordered.strangers.is_empty() {
                return None;
            }
            Some(self.found(
                Finding {
                    id: "part-unknown",
                    severity: Severity::Warning,
                    place: place_of(ordered.bar, None),
                    message: format!(
                        "Step {} refers to {}, which the plan does not have.",
                        number + 1,
                        joined(&ordered.strangers)
                    ),
                    reason: "The plan was changed after the step was written.",
                    remedy: "Remove the step, or say what it works on.".to_owned(),
                },
                vec![number],
                None,
            ))
        };
        self.ordered.iter().enumerate().filter_map(told).collect()
    }

    /// What follows from the state of the bar at one step.
    fn at_step(&self, number: usize) -> Vec<OrderFinding> {
        let Some(site) = self.steps[number].bar.and_then(|bar| self.sites.get(bar)) else { return Vec::new() };
        let held = self.hold_left(site, number);
        let mut found: Vec<OrderFinding> = held.into_iter().chain(self.kept_in_a_heat(site, number)).collect();
        found.extend(self.unknown_spreads(site, number));
        found.extend(self.legs_in_the_way(site, number));
        found
    }

    /// A finding about one step.
    fn of_step(
        &self,
        site: &Site<'_>,
        number: usize,
        (id, severity): (&'static str, Severity),
        (message, reason, remedy): (String, &'static str, String),
    ) -> OrderFinding {
        let place = place_of(site.index, self.steps[number].parts().first().copied());
        self.found(Finding { id, severity, place, message, reason, remedy }, vec![number], None)
    }

    /// A step as a finding names it: `step 3 (draw out “shank”)`.
    fn named(&self, number: usize) -> String {
        format!("step {} ({})", number + 1, lower_first(&self.steps[number].title))
    }

    /// That too little is left to hold, once something was parted off.
    fn hold_left(&self, site: &Site<'_>, number: usize) -> Option<OrderFinding> {
        let (seen, least) = (&self.seen[number], held::least_mm(site));
        let hold = seen.hold.filter(|hold| seen.was_off && is_under(hold.length_mm, least))?;
        // Small pieces are held by less, and with more care.
        let severity = if is_under(hold.length_mm, least / 4.0) { Severity::Warning } else { Severity::Note };
        let [left, enough] = apart(self.plan, [hold.length_mm, least]);
        let message = format!("At {} {left} is left to hold; {enough} is the least.", self.named(number));
        let reason = "Tongs slip on a short end, and the hand comes too near the heat.";
        let remedy = "Cut off later, or leave more of the bar on.".to_owned();
        Some(self.of_step(site, number, ("no-hold-left", severity), (message, reason, remedy)))
    }

    /// What is wrong with a step that the smith keeps in the heat before it.
    fn kept_in_a_heat(&self, site: &Site<'_>, number: usize) -> Vec<OrderFinding> {
        let Some(heated) = self.seen[number].heated else { return Vec::new() };
        let named = format!("S{} is kept in the heat before it", &self.named(number)[1..]);
        let mut found = Vec::new();
        if is_over(heated.cold_mm, LEAST_COLD_MM) {
            let cold = length_words(self.plan, heated.cold_mm);
            let message = format!("{named}, but {cold} of it is outside the hot zone.");
            let reason = "Metal that is not hot cracks, or does not move.";
            let remedy = "Start a new heat for it.".to_owned();
            found.push(self.of_step(site, number, ("cold-step", Severity::Warning), (message, reason, remedy)));
        }
        if is_over(heated.late, LEAST_LATE_MINUTES) {
            let message = format!("{named}. That heat is over {:.1} minutes before the step ends.", heated.late);
            let reason = "Below its forging heat the metal cracks or marks the tools.";
            let remedy = "Let it begin a heat of its own, or give it fewer minutes.".to_owned();
            found.push(self.of_step(site, number, ("heat-overrun", Severity::Note), (message, reason, remedy)));
        }
        found
    }

    /// Passes whose spread nobody has measured.
    fn unknown_spreads(&self, site: &Site<'_>, number: usize) -> Vec<OrderFinding> {
        let told = |task: &Task| {
            let doubts = passes::of_task(site, task).map(|passes| passes.doubts).unwrap_or_default();
            let doubts = doubts.join(" ");
            let message = format!("S{}: {doubts}", &self.named(number)[1..]);
            let reason = "How far a bar spreads under the hammer was measured on stout bars and usual bites; beyond that, the number of passes is a guess.";
            let remedy = "Measure after the first pass, and correct the edge between passes.".to_owned();
            let words = (message, reason, remedy);
            let found = || self.of_step(site, number, ("spread-unknown", Severity::Note), words);
            (!doubts.is_empty()).then(|| OrderFinding { at_its_step: Some(doubts.clone()), ..found() })
        };
        self.steps[number].tasks.iter().filter_map(told).collect()
    }

    /// Legs that are bent already, and in the way of a bend.
    fn legs_in_the_way(&self, site: &Site<'_>, number: usize) -> Vec<OrderFinding> {
        let seen = &self.seen[number];
        let stuck = |at: &usize| {
            let name = site.name(*at);
            let message = format!(
                "At step {} “{name}” can be laid neither over the anvil nor in the vice: a leg that is bent already is in the way.",
                number + 1
            );
            let reason = "A leg that strikes the anvil is bent where it should not be.";
            let remedy = format!("Bend “{name}” before the bends beside it, or on a stake.");
            self.of_step(site, number, ("leg-into-anvil", Severity::Warning), (message, reason, remedy))
        };
        let struck = |(one, other): &(usize, usize)| {
            let (one, other) = (site.name(*one), site.name(*other));
            let message = format!(
                "After step {} “{one}” runs into “{other}”, which it does not in the finished piece.",
                number + 1
            );
            let reason = "One leg stops the other, and both are bent where they should not be.";
            let remedy = "Bend the one that moves it out of the way first.".to_owned();
            self.of_step(site, number, ("leg-into-leg", Severity::Warning), (message, reason, remedy))
        };
        seen.stuck.iter().map(stuck).chain(seen.struck.iter().map(struck)).collect()
    }

    /// Steps that are set down in a gap too narrow for their groove.
    fn tight_grooves(&self, number: usize) -> Vec<OrderFinding> {
        let step = &self.steps[number];
        let Some(site) = step.bar.and_then(|bar| self.sites.get(bar)) else { return Vec::new() };
        let length = |mm: f64| length_words(self.plan, mm);
        let told = |(at, fuller, gap): &(usize, f64, f64)| {
            let message = format!(
                "Step {} ({}) sets “{}” down with a fuller of {} in a gap of {}.",
                number + 1,
                lower_first(&step.title),
                site.name(*at),
                length(*fuller),
                length(*gap)
            );
            let remedy = "Give the part between more bar or the step a smaller inside radius; or draw both sides down first, and set the step on that bar.";
            self.found(
                Finding {
                    id: "groove-too-wide",
                    severity: Severity::Warning,
                    place: place_of(site.index, Some(*at)),
                    message,
                    reason: "A groove wider than half of its gap leaves a stub that folds over it.",
                    remedy: remedy.to_owned(),
                },
                vec![number],
                None,
            )
        };
        self.seen[number].tight.iter().map(told).collect()
    }

    /// Thin parts that go through more heats than they stand.
    fn thin_heats(&self) -> Vec<OrderFinding> {
        /// Common practice, no source: a thin part scales and burns away in more.
        const MOST: usize = 4;
        let mut found = Vec::new();
        for site in self.sites {
            for part in site.parts().filter(|part| part.segment.form.is_finished() && part::is_thin(site, part.at)) {
                let heats = self.heats_through(site, part.at);
                let count: usize = heats.iter().map(|(_, needs)| needs).sum();
                if count <= MOST || matches!(part.segment.form, Form::Split(_)) {
                    continue;
                }
                let reason = "Thin metal loses more to scale in each heat, and burns while its neighbour is heated.";
                let remedy =
                    "Forge it later, heat only what is worked, or leave it a little thick until the end.".to_owned();
                let finding = Finding {
                    id: "too-many-heats",
                    severity: Severity::Note,
                    place: place_of(site.index, Some(part.at)),
                    message: format!("“{}” goes through about {count} more heats once it is thin.", site.name(part.at)),
                    reason,
                    remedy,
                };
                found.push(self.found(finding, heats.iter().map(|(step, _)| *step).collect(), None));
            }
        }
        found
    }

    /// The heats that reach a part once it is forged: their steps, and how many each.
    fn heats_through(&self, site: &Site<'_>, at: usize) -> Vec<(usize, usize)> {
        let zone = heat_rules::zone_mm(self.plan);
        let mut heats: Vec<(usize, usize)> = Vec::new();
        let mut last_heat = 0;
        let mut was_forged = false;
        for (number, step) in self.steps.iter().enumerate().filter(|(_, step)| step.bar == Some(site.index)) {
            if was_forged
                && step.is_hot()
                && let Some([from, to]) = step.zone_mm
                && to - from < zone
            {
                let reach = (zone - (to - from)) / 4.0;
                let [start, end] = step.extent_after(site, at);
                if end > from - reach && start < to + reach {
                    let new = if step.heat == last_heat { step.needs.saturating_sub(1) } else { step.needs };
                    if new > 0 {
                        heats.push((number, new));
                    }
                    last_heat = step.heat + step.needs - 1;
                }
            }
            was_forged |= step.stages.get(at).is_some_and(|stage| stage.forged);
        }
        heats
    }

    /// A finding about some steps, and why the smith knows better where one of them says so.
    fn found(&self, finding: Finding, steps: Vec<usize>, why: Option<Why>) -> OrderFinding {
        let known = |step: &usize| self.ordered.get(*step)?.step.accepts(finding.id).map(str::to_owned);
        let accepted = steps.iter().find_map(known);
        OrderFinding { finding, at_its_step: None, steps, why, broken: Vec::new(), accepted }
    }
}

/// A part of a bar, or the bar where none is meant.
fn place_of(bar: usize, segment: Option<usize>) -> Place {
    Place { bar: Some(bar), segment }
}
