//! How a part is drawn, by what it becomes.

use crate::bar::lengths::Lengths;
use crate::bar::progress::{Progress, still_along};
use crate::bar::state::shape_now;
use crate::job::beside::{is_between_one_sided, is_between_thicker, is_thicker_than_bar};
use crate::job::neck::grooves;
use crate::job::site::{Part, Site, extents, in_mm, in_mm2, least};
use crate::job::task::operations;
use crate::says::lay::flat::flush_side;
use crate::says::necks::{OpenGroove, open_grooves};
use fh_core::metal::{FreeEnd, SectionSize, Shape};
use fh_core::plan::{Chain, Form, Operation};

const NO_TWIST: &str = "Quarter turns to and fro, never all the way round, or it twists.";

/// How a part is drawn, in words.
pub(crate) fn words(site: &Site<'_>, part: Part<'_>, progress: &Progress) -> String {
    let mut all: Vec<String> = Vec::new();
    if is_between_one_sided(site, part) {
        all.push("Lay its flush side on the face, and work the stepped side with the set hammer, which goes in between the steps.".to_owned());
    } else if is_between_thicker(site, part) {
        all.push("It is shorter than the hammer is wide: begin with the spring fuller, bite beside bite, until the face goes in.".to_owned());
    }
    if site.split_of(part.at).is_some_and(|(split, _)| site.is_closed_slit(split)) {
        all.push("Draw the branches in turn, a few blows each, so that they grow evenly.".to_owned());
    }
    match &part.balance.shape {
        Some(Shape::Taper { from, to, .. }) => all.extend(tapered(site, part, from, to)),
        Some(Shape::Prism { .. }) if part.balance.grown.is_some() => all.push(left_to_grow(part).to_owned()),
        Some(Shape::Prism { section: SectionSize::Flat { .. }, .. }) if is_thicker_than_bar(site, part) => {
            all.push(
                "From its narrow sides, bite beside bite; true what grows before it is more than wanted.".to_owned(),
            );
        }
        Some(Shape::Prism { .. }) if is_thicker_than_bar(site, part) => {
            all.push("From its narrow sides, until it is as thick as it is wide; then its corners.".to_owned());
        }
        Some(Shape::Prism { .. }) if is_between_one_sided(site, part) => {}
        Some(Shape::Prism { section, .. }) => all.push(to_section(site, part, section).to_owned()),
        Some(Shape::Ball { .. }) => {
            all.push(
                "Knock its corners down all round, then round it with light blows, turning the bar all the time, on its end too."
                    .to_owned(),
            );
        }
        Some(Shape::Cube { .. }) => {
            all.push("Square its four sides and its end, a quarter turn every few blows.".to_owned())
        }
        _ => all.push(NO_TWIST.to_owned()),
    }
    if let (Some(_), Some(side)) = (part.balance.grown, flush_side(site, part)) {
        let side = side.name();
        all.push(format!(
            "True it last with its {side} on the face, struck on the other side only: it lies flush with the bar there."
        ));
    }
    if let Form::Tenon(_) = part.segment.form {
        all.push(
            "At the edge of the face, its shoulder clear of it; last, at a bright heat, drive the monkey tool over it."
                .to_owned(),
        );
    }
    all.extend(rounded_root(site, part, progress));
    all.extend(from_the_groove(site, part, progress));
    all.extend(drawn_along(site, part, progress));
    all.extend(to_the_other(site, part, progress));
    if is_stub(site, part) && !progress.stages[part.at].along {
        all.push(
            "A stub this short dishes at its end: knock the end back lightly as it grows, and file it square last."
                .to_owned(),
        );
    }
    all.join(" ")
}

/// How a section is struck that is left as it grows.
fn left_to_grow(part: Part<'_>) -> &'static str {
    if part.balance.grown.is_some_and(|grown| grown.is_width) {
        "On its top and bottom alone, bite beside bite, turning it over; its edges are not struck: leave it as wide as it grows."
    } else {
        "Strike its two edges only, bite beside bite, turning it over; leave it as thick as it grows."
    }
}

/// That a part is begun over a rounded edge where the bar beside it stands much fuller, with neither neck nor step between them; none
/// where there is no such end.
fn rounded_root(site: &Site<'_>, part: Part<'_>, progress: &Progress) -> Option<String> {
    /// What has less than this share of the section beside it is a step: common practice, no source.
    const STEP: f64 = 0.6;
    if !matches!(part.segment.form, Form::Drawn(_) | Form::Taper(_)) || is_between_thicker(site, part) {
        return None;
    }
    let shape = part.balance.shape.as_ref()?;
    let lengths = progress.lengths(site);
    let is_full = |side: usize| {
        let own = shape.area_at(if (side == 1) == part.balance.reversed { 0.0 } else { 1.0 });
        let beside = match site.beside(part.at)[side] {
            Some(beside) if has_line(site, part, beside) => return false,
            Some(beside) => shape_now(site, progress, beside, &lengths)
                .map(|now| now.area_at(if side == 1 { 0.0 } else { 1.0 }).max(now.area_at(0.5))),
            // A branch is as full at its root as it was cut.
            None if is_root(site, part.at, side == 1) => Some(site.raw_section(part.at).area()),
            None => None,
        };
        beside.is_some_and(|beside| own < beside * STEP)
    };
    let ends = match [is_full(0), is_full(1)] {
        [true, true] => "At both ends",
        [true, false] => "At its start",
        [false, true] => "At its end",
        [false, false] => return None,
    };
    Some(format!(
        "{ends}, where the bar beside it is full, begin over a well-rounded edge of the anvil, and leave a radius there: a sharp corner cracks."
    ))
}

/// Whether a neck or a step lies between two parts.
fn has_line(site: &Site<'_>, part: Part<'_>, beside: usize) -> bool {
    let at_end = beside > part.at;
    let necked = |part: Part<'_>, at_end: bool| {
        let is_necked = operations(site, part).contains(&Operation::Isolate);
        is_necked && grooves(site, part).iter().any(|groove| groove.at_end == at_end)
    };
    let Some(other) = site.part(beside) else { return true };
    let is_line = matches!(other.segment.form, Form::Shoulder(_) | Form::Tenon(_) | Form::Trim(_) | Form::Peak(_));
    is_line || necked(part, at_end) || necked(other, !at_end)
}

/// Whether an end of a part is the root of its branch.
fn is_root(site: &Site<'_>, at: usize, at_end: bool) -> bool {
    match site.branch_free(at) {
        Some(FreeEnd::Datum) => at_end,
        Some(FreeEnd::Far) => !at_end,
        Some(FreeEnd::Neither) => true,
        None => false,
    }
}

/// That a branch that is done comes to the length of one of its split that was forged before; none where they are forged in turn.
fn to_the_other(site: &Site<'_>, part: Part<'_>, progress: &Progress) -> Option<String> {
    /// Branches that are planned so much apart are not alike, in mm.
    const ALIKE: f64 = 0.5;
    let (split, branch) = site.split_of(part.at).filter(|(split, _)| !site.is_closed_slit(*split))?;
    let own = &site.chains.get(site.place[part.at].0)?.1;
    let is_done = |members: &[usize]| members.iter().all(|at| progress.is_shaped(site, *at));
    let is_forged = |members: &[usize]| members.iter().any(|at| !Progress::start_of(site, *at));
    let long = |members: &[usize]| {
        members.iter().filter_map(|at| site.part(*at)).map(|part| in_mm(part.balance.forged_length)).sum::<f64>()
    };
    let done = site.chains.iter().filter(|(_, members)| is_done(own) && is_done(members) && is_forged(members));
    let alike = done.filter(|(_, members)| (long(members) - long(own)).abs() < ALIKE);
    let others = alike.filter_map(|(chain, _)| match *chain {
        Chain::Branch { split: of, branch: other } if of == split && other != branch => Some(other),
        _ => None,
    });
    let other = others.min()?;
    let name = site.flat.get(split)?.segment.form.branches().get(other)?.title(other);
    Some(format!("Bring it to the length of “{name}”, held beside it."))
}

/// That a part is drawn from the groove beside it on, where too little is left between its mark and the groove; none where there
/// is no such rib.
fn from_the_groove(site: &Site<'_>, part: Part<'_>, progress: &Progress) -> Option<String> {
    /// What is shorter than such a share of the bar's thickness stands up as a rib: common practice, no source.
    const RIB: f64 = 0.5;
    let lengths = Lengths::new(site, progress);
    let beside = site.beside(part.at);
    let thick = least(extents(&site.raw_section(part.at)));
    let rib = |groove: &OpenGroove| {
        let left = lengths.lengths[groove.within] - groove.wide_mm;
        groove.of != part.at && beside.contains(&Some(groove.within)) && left < RIB * thick
    };
    let groove = open_grooves(site, progress, &lengths).into_iter().find(rib)?;
    let name = site.name(groove.within);
    Some(format!(
        "Draw it from the groove on, and take what is left of “{name}” there down with it, or it leaves a rib."
    ))
}

/// What is drawn out along with a part, and why.
fn drawn_along(site: &Site<'_>, part: Part<'_>, progress: &Progress) -> Option<String> {
    let along = still_along(site, part.at, progress);
    let is_step = |at: &usize| matches!(site.flat[*at].segment.form, Form::Shoulder(_));
    let name = site.name(along.iter().copied().find(|at| !is_step(at))?);
    if along.iter().any(is_step) {
        return Some(format!(
            "Draw the bar for “{name}” down along with it, to the same section, then set the step on that: a stub this short folds over if it is left thick."
        ));
    }
    Some(format!("Draw “{name}” out along with it, through the end: a lump left on the end folds in."))
}

/// Whether a part at the end of the bar is shorter than the bar is thick.
pub(crate) fn is_stub(site: &Site<'_>, part: Part<'_>) -> bool {
    let thick = extents(&site.raw_section(part.at)).into_iter().fold(0.0, f64::max);
    site.split_of(part.at).is_none() && site.beside(part.at).contains(&None) && in_mm(part.balance.stock_length) < thick
}

/// How an even section is reached.
fn to_section(site: &Site<'_>, part: Part<'_>, section: &SectionSize) -> &'static str {
    match section {
        SectionSize::Round { .. } => {
            "Quarter turns to and fro, never all the way round, or it twists. Square first, then eight sides, then round."
        }
        SectionSize::Flat { .. } | SectionSize::Edge { .. } => {
            "Work its two wide sides; true the edges lightly every few blows."
        }
        SectionSize::Oval { .. } => "Work the two wide sides, then round the edges; true them lightly every few blows.",
        SectionSize::HalfRound { .. } => {
            "Forge it flat first; then turn it bottom up into the half-round swage, its flat side up."
        }
        SectionSize::Octagon { .. } => {
            "Draw it square first, then knock its corners down, an eighth of a turn each time."
        }
        SectionSize::Hexagon { .. } => "Work its three pairs of sides in turn, a sixth of a turn each time.",
        SectionSize::Diamond { .. } if !has_four_corners(&site.raw_section(part.at)) => {
            "Turn it an eighth, so that its sides lie on the face, and draw it square: with the marked side up again its corners point up and down. Quarter turns to and fro, never all the way round, or it twists."
        }
        SectionSize::Diamond { .. } => {
            "Knock the bar's four corners down first, then draw it on those new sides: its corners then point up and down."
        }
        SectionSize::Square { .. } | SectionSize::Point => NO_TWIST,
    }
}

fn has_four_corners(section: &SectionSize) -> bool {
    matches!(section, SectionSize::Square { .. } | SectionSize::Flat { .. })
}

/// The ends of a taper, the thin one first.
fn thin_first<'a>(from: &'a SectionSize, to: &'a SectionSize) -> [&'a SectionSize; 2] {
    let area = |section: &SectionSize| in_mm2(section.area());
    if area(to) < area(from) { [to, from] } else { [from, to] }
}

/// The section that a taper is worked to all along: that of its thin end, or of its thick end where it runs to a point.
pub(crate) fn taper_section<'a>(from: &'a SectionSize, to: &'a SectionSize) -> &'a SectionSize {
    let [thin, thick] = thin_first(from, to);
    if matches!(thin, SectionSize::Point) { thick } else { thin }
}

/// How a taper is drawn: its thin end first, and there to its section.
fn tapered(site: &Site<'_>, part: Part<'_>, from: &SectionSize, to: &SectionSize) -> Vec<String> {
    let [thin, thick] = thin_first(from, to);
    let mut all = vec!["Draw the thin end first, then back towards the thick one.".to_owned()];
    match (thin, thick) {
        (SectionSize::Point, thick) => all.push(to_section(site, part, thick).to_owned()),
        (SectionSize::Round { .. }, thick) if !matches!(thick, SectionSize::Round { .. }) => {
            all.push(format!("{NO_TWIST} Its round end square first, then eight-sided, then round."));
        }
        (thin, _) => all.push(to_section(site, part, thin).to_owned()),
    }
    let [raw, _] = extents(&site.raw_section(part.at));
    if extents(thick)[0] > raw * 1.02 {
        all.push("Its wide end with the peen, the ridge along the bar.".to_owned());
    }
    all
}
