//! Where a tool goes, in a few words: on which side of its mark, on which face, and which way a wrench goes; and what
//! spoils the bar where it is forgotten. Common practice, no source.

use crate::bar::progress::Progress;
use crate::job::beside::is_fullered_alone;
use crate::job::neck::{Faces, Groove, grooves};
use crate::job::part::met;
use crate::job::site::{Part, Site, in_mm};
use crate::job::task::{Task, operations};
use crate::says::lay::bent::opening_way;
use crate::says::lay::joined::{beveled, can_weld, made_ready};
use crate::says::lay::{cut_free, flat, rocks};
use crate::says::words::joined;
use fh_core::metal::Shape;
use fh_core::plan::{Form, Operation, SizeName};

/// What is done to a slit before a branch of it is forged.
const SMOOTHED: &str = "Smooth the cut faces, and round the root, before a branch is forged.";

/// Where the tool of a task on a bar goes; none where its place says it all.
pub(crate) fn aim(site: &Site<'_>, task: &Task, progress: &Progress) -> Option<String> {
    let part = task.part.and_then(|at| site.part(at))?;
    match task.operation {
        Operation::Isolate => necked(site, part),
        Operation::SetDown => {
            let is_laid = !matches!(part.segment.form, Form::Peak(_)) && !is_fullered_alone(site, part);
            let under = if is_laid { rocks::set_down(site, part, progress) } else { None };
            let told: Vec<String> = set_down(site, part).into_iter().chain(under).collect();
            (!told.is_empty()).then(|| told.join(" "))
        }
        Operation::Split if operations(site, part).contains(&Operation::BendAside) => None,
        Operation::Split => Some(cut_free(site, part).unwrap_or_else(|| SMOOTHED.to_owned())),
        Operation::BendAside => Some(SMOOTHED.to_owned()),
        Operation::Scarf if can_weld(site) => Some(scarfed(site, part)),
        Operation::Open => opening_way(part),
        Operation::Spread => flat::begun(site, part),
        _ => None,
    }
}

/// On which side of its marks a block is necked, and from which faces.
fn necked(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    let faces = |groove: &Groove| match groove.faces {
        Faces::AllRound => "all round",
        Faces::TopAndBottom => "top and bottom",
        Faces::Edges => "both edges",
    };
    let within = |groove: &Groove| {
        let beside = site.beside(part.at)[usize::from(groove.at_end)];
        let at = if groove.inside { part.at } else { beside? };
        Some(format!("“{}”", site.name(at)))
    };
    let grooves = grooves(site, part);
    match grooves.as_slice() {
        [] => None,
        [one] => Some(format!("Fuller on the {} side of the mark, {}.", within(one)?, faces(one))),
        [one, other] if one.faces == other.faces => {
            let [one_in, other_in] = [within(one)?, within(other)?];
            let side = if one_in == other_in { one_in } else { joined(&[one_in, other_in]) };
            Some(format!("Fuller on the {side} side of the marks, {}.", faces(one)))
        }
        all => {
            let each = all.iter().map(|groove| Some(format!("on the {} side {}", within(groove)?, faces(groove))));
            Some(format!("Fuller {}.", each.collect::<Option<Vec<_>>>()?.join(", ")))
        }
    }
}

/// On which side of its mark a step goes down.
fn set_down(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    let [before, after] = site.beside(part.at);
    let thin = match (&part.balance.shape, &part.segment.form) {
        (Some(Shape::Shoulder { from, to, .. }), _) => {
            let thin_at_end = to.area() < from.area();
            if thin_at_end { after } else { before }
        }
        (_, Form::Tenon(_)) => Some(part.at),
        _ => None,
    };
    Some(format!("“{}” goes thin: tool on its side.", site.name(thin?)))
}

/// Which face of a scarf is beveled, and which of the end that it meets.
fn scarfed(site: &Site<'_>, part: Part<'_>) -> String {
    let met = met(site, part);
    let long = part.balance.derived_length(SizeName::Scarf).map_or(0.0, in_mm);
    let upset = made_ready(site, part, long, met.is_some());
    let [own, opposite] = beveled(site, part, met.is_some());
    let own = own.trim_end_matches(',');
    match met {
        Some(other) => format!("{upset} Bevel {own}; “{other}” on {}.", opposite.trim_end_matches(',')),
        None => format!("{upset} Bevel {own}."),
    }
}
