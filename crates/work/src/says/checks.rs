//! What to check at a step, and with which gauge: common practice, no source.

use crate::bar::progress::Progress;
use crate::job::kind::{has_form, is_flag, is_pierced_later, is_rivet, is_slit, is_trimmed_later};
use crate::job::part::is_on_edge;
use crate::job::scarf::farther_mm;
use crate::job::site::{Part, Site, in_mm};
use crate::job::task::Task;
use crate::says::gauges::measured_with;
use crate::says::size::{Measure, Size};
use crate::says::words::length_words;
use fh_core::plan::{Form, Operation};

/// What to check, and with which gauge.
pub(crate) fn check(
    site: &Site<'_>,
    task: &Task,
    sizes: &[Size],
    (progress, now_mm): (&Progress, f64),
) -> Option<String> {
    use Operation as O;
    match task.operation {
        O::Mark | O::Straighten | O::Check => check_of_bar(site, task, (progress, now_mm)),
        O::Scarf => task.part.and_then(|at| before_the_scarf(site, site.part(at)?, now_mm)),
        O::Bend | O::Roll | O::Corner | O::Twist | O::Open | O::Weld => check_of_bend(site, task),
        _ => check_of_part(site, task, sizes),
    }
}

/// Whether another one of a step says for a task what is checked: of several that are spread together, as the zones of a plate are,
/// one speaks, and that one which is cut to its outline later.
pub(crate) fn is_spoken_for(site: &Site<'_>, tasks: &[Task], task: &Task) -> bool {
    let spreads = || tasks.iter().filter(|one| one.operation == Operation::Spread);
    let speaks = spreads().find(|one| is_trimmed_later(site, one)).or_else(|| spreads().next());
    task.operation == Operation::Spread && speaks != Some(task)
}

/// What to check of the whole bar.
fn check_of_bar(site: &Site<'_>, task: &Task, (progress, now_mm): (&Progress, f64)) -> Option<String> {
    use Operation as O;
    Some(match task.operation {
        O::Mark if site.flat.len() < 2 => "Check the length, and that the ends are square.".to_owned(),
        O::Mark => format!("Check all marks from the {}.", site.bar.datum_name()),
        O::Straighten if task.part.is_none() && is_scarfed(site, progress) => {
            "Sight along it; its length was measured before it was scarfed.".to_owned()
        }
        O::Straighten if task.part.is_none() => {
            format!(
                "Let it cool, and measure it straight: {}. Correct it now{}.",
                length_words(site.plan, now_mm),
                last_forged(site).map_or_else(String::new, |at| format!(", at “{}”", site.name(at)))
            )
        }
        O::Check => "Check sizes and angles, cold, against picture and templates.".to_owned(),
        _ => return None,
    })
}

/// Whether an end of a bar is scarfed and not welded yet: a lip is no end to measure from.
pub(crate) fn is_scarfed(site: &Site<'_>, progress: &Progress) -> bool {
    let is_open = |at: &usize| progress.stages[*at].forged && !progress.stages[*at].welded;
    let welds = |at: &usize| matches!(site.flat[*at].segment.form, Form::Weld(_));
    site.plan.material().weld.is_some() && site.chains[0].1.iter().any(|at| welds(at) && is_open(at))
}

/// That a bar is measured before its end is scarfed; `now_mm` is its length with what counts of the scarf.
fn before_the_scarf(site: &Site<'_>, part: Part<'_>, now_mm: f64) -> Option<String> {
    site.plan.material().weld?;
    let before = now_mm + farther_mm(site, part);
    Some(format!("Measure it straight and cold before you upset and scarf it: {}.", length_words(site.plan, before)))
}

/// What to check of what is bent, twisted or welded.
fn check_of_bend(site: &Site<'_>, task: &Task) -> Option<String> {
    use Operation as O;
    let on_edge = task.part.and_then(|at| site.part(at)).is_some_and(|part| is_on_edge(site, part));
    let words = match task.operation {
        O::Bend if on_edge => "Check it against the template: flat on the plate, and not thinned at its outside.",
        O::Bend | O::Roll | O::Corner => "Check it against the template; sight along it: no twist.",
        O::Twist => "Count the turns; sight along the bar: it has to be straight.",
        O::Open => "Measure the length; look from both ends: the rods have to match.",
        O::Weld if site.plan.material().weld.is_some() => {
            "It has taken when the lap moves as one under the hammer and cools as one: a dark line along the seam at the second heat is open yet. Check the length, and that the ring is still round."
        }
        _ => return None,
    };
    Some(words.to_owned())
}

/// What to check of what is forged, cut or pierced.
fn check_of_part(site: &Site<'_>, task: &Task, sizes: &[Size]) -> Option<String> {
    use Operation as O;
    let with = |is_meant: fn(Measure) -> bool| measured_with(sizes, is_meant);
    let is_thickness = |measure| measure == Measure::Thickness;
    let is_width = |measure| matches!(measure, Measure::Width | Measure::WidthThere);
    let gauged = match task.operation {
        O::Isolate => Some(format!(
            "Check that the groove is square across, and what is left in it with the {}.",
            with(|measure| measure == Measure::Neck)
        )),
        O::Draw | O::Taper => Some(format!("Check it in three places with the {}, then the length.", with(|_| true))),
        O::Spread if is_trimmed_later(site, task) => Some(format!(
            "Check the thickness with the {}; the template has to lie inside it all round.",
            with(is_thickness)
        )),
        O::Flatten if is_pierced_later(site, task) => {
            let across = match (with(is_thickness), with(is_width)) {
                (one, other) if one == other => format!("Check thickness and width with the {one}"),
                (one, other) => format!("Check the thickness with the {one}, the width with the {other}"),
            };
            Some(format!("{across}; the outline once the hole is made."))
        }
        O::Spread | O::Flatten => {
            Some(format!("Check the thickness with the {}, the outline against the template.", with(is_thickness)))
        }
        O::Dress => task.part.and_then(|at| site.part(at)).map(|part| crate::says::dies::check(site, part)),
        _ => None,
    };
    gauged.or_else(|| looked_at(site, task).map(str::to_owned))
}

/// What is looked at in a part, without a gauge.
fn looked_at(site: &Site<'_>, task: &Task) -> Option<&'static str> {
    use Operation as O;
    Some(match task.operation {
        O::SetDown => "Check the step: square to the bar, on the mark.",
        O::Trim if is_flag(site, task) => "Check the outline against the template; leave no burr.",
        O::Upset if is_rivet(site, task) => "Check that the head is round and centred, and the shank straight.",
        O::Upset if has_form(site, task, |form| matches!(form, Form::Peak(_))) => {
            "Check the thickness over the swelling, its length, and that the bar is still straight."
        }
        O::Upset => "Check thickness and length, and that the bar is still straight.",
        O::Split if is_uneven(site, task) => "Check the cut: on its line from end to end.",
        O::Split => "Check the branches: equal at the root.",
        O::Punch if is_slit(site, task) && is_flag(site, task) => {
            "Check the slit: straight, along the bar, through from both sides."
        }
        O::Punch if is_slit(site, task) => {
            "Check the slit: straight, along the middle of the bar, through from both sides."
        }
        O::BendAside => "Check the cut faces: smooth, the root round.",
        O::Punch | O::Drift | O::Drill if is_flag(site, task) => {
            "Check the hole: square to the face, where the template has it; then flatten its rim."
        }
        O::Punch | O::Drift if is_pierced_later(site, task) => {
            "Check the hole: square to the face, in the middle; then flatten the rim, and try the template."
        }
        O::Punch | O::Drift | O::Drill => "Check the hole: square to the face, and in the middle.",
        _ => return None,
    })
}

/// Whether the branches of a split are cut of different widths.
fn is_uneven(site: &Site<'_>, task: &Task) -> bool {
    let size = task.part.and_then(|at| site.split_size(at));
    let widths = size.map(|size| size.branches.iter().map(|branch| in_mm(branch.raw_width)));
    let ends =
        widths.map(|widths| widths.fold((f64::INFINITY, 0.0_f64), |(low, high), wide| (low.min(wide), high.max(wide))));
    ends.is_some_and(|(low, high)| high - low > 0.05)
}

/// The longest part of a bar that is drawn or tapered: there a length is corrected best.
fn last_forged(site: &Site<'_>) -> Option<usize> {
    let is_drawn = |at: &usize| matches!(site.flat[*at].segment.form, Form::Drawn(_) | Form::Taper(_));
    let forged = |at: &usize| !Progress::start_of(site, *at);
    let long = |at: &usize| site.part(*at).map_or(0.0, |part| in_mm(part.balance.forged_length));
    let drawn = site.chains[0].1.iter().copied().filter(|at| is_drawn(at) && forged(at));
    drawn.max_by(|one, other| long(one).total_cmp(&long(other)))
}
