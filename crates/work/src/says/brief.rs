//! What a step says besides its sizes: where, which edge, which side up, what to leave.
//!
//! All of it is common practice, no source, unless one is named; all of it can be changed in the step.

use crate::bar::held::Hold;
use crate::job::beside::{is_flat_on_a_block, is_fullered_alone, is_long};
use crate::job::kind::{has_form, is_flag, is_rivet, is_slit, over_the_edge_mm};
use crate::job::legs;
use crate::job::legs::WayToBend;
use crate::job::neck::thicker_beside;
use crate::job::part::{is_filed, is_rolled_across, is_sawn, left_to_trim_mm};
use crate::job::site::{Part, Site, extents, in_mm};
use crate::job::task::{Task, is_hot};
use crate::job::upsets::is_clamped;
use crate::says::dies;
use crate::says::lay::upset::swelling_side;
use crate::says::words::length_words;
use fh_core::forms;
use fh_core::metal::{SectionSize, Shape, View};
use fh_core::plan::{AnvilPlace, Form, Operation};

/// Where a task is done; `ways` are the ways of a bend without a leg in the way, `hold` is what the tongs grip.
pub(crate) fn place(site: &Site<'_>, task: &Task, ways: &[WayToBend], hold: Option<&Hold>) -> AnvilPlace {
    use AnvilPlace as P;
    use Operation as O;
    let part = task.part.and_then(|at| site.part(at));
    match task.operation {
        // Its neighbors are in the way of every block.
        O::Bend | O::Corner if task.part.is_some_and(|at| site.split_of(at).is_some()) => P::Vice,
        O::Upset if !is_rivet(site, task) && part.is_some_and(|part| is_clamped(site, part)) => P::Vice,
        O::Punch if !is_hot(site, task) => P::Bench,
        O::Draw if has_form(site, task, |form| matches!(form, Form::Tenon(_))) => P::NearEdge,
        O::Spread | O::Flatten | O::Punch | O::Drift if part.is_some_and(|part| is_flat_on_a_block(site, part)) => {
            P::HardyHole
        }
        O::Spread if part.is_some_and(|part| thicker_beside(site, part) != [false, false]) => P::NearEdge,
        O::Bend | O::Corner if ways.is_empty() && !legs::are_looked_at(site) => P::FarEdge,
        O::Bend | O::Corner => ways.first().map_or(P::Vice, |way| way.place),
        // Where no face goes in, it is set down under the spring fuller alone.
        O::SetDown if part.is_some_and(|part| is_fullered_alone(site, part)) => P::HardyHole,
        O::SetDown if part.is_some_and(|part| is_held_by_its_thin_side(part, hold)) => P::FarEdge,
        O::SetDown => P::NearEdge,
        O::Isolate => P::HardyHole,
        O::Split => P::Step,
        O::Trim if part.is_some_and(|part| is_filed(part) || is_sawn(site, part)) => P::Vice,
        O::Trim if is_flag(site, task) => P::Step,
        O::Trim | O::PartOff => P::HardyHole,
        O::Draw | O::Taper if part.is_some_and(|part| is_long(site, part)) => P::Horn,
        O::Draw if is_round(site, task) => P::SwageBlock,
        O::Roll if part.is_some_and(is_rolled_across) => P::FarEdge,
        O::Roll => P::SwageBlock,
        O::Dress => part.map_or(P::Face, dies::place),
        O::Twist | O::Open => P::Vice,
        O::Normalise => P::Bench,
        operation if operation.is_hot() => P::Face,
        _ => P::Bench,
    }
}

/// Whether a shoulder is held by its thinner side: what stays thick then hangs over the far edge.
fn is_held_by_its_thin_side(part: Part<'_>, hold: Option<&Hold>) -> bool {
    let Some(Shape::Shoulder { from, to, .. }) = &part.balance.shape else { return false };
    let thin_at_start = from.area() < to.area();
    hold.is_some_and(|hold| (hold.part < part.at) == thin_at_start)
}

fn is_round(site: &Site<'_>, task: &Task) -> bool {
    let part = task.part.and_then(|at| site.part(at));
    matches!(
        part.and_then(|part| part.balance.shape.as_ref()),
        Some(Shape::Prism { section: fh_core::metal::SectionSize::Round { .. }, .. })
    )
}

/// The radius of the edge that a task is worked over, in mm: that of the inside corner it leaves.
pub(crate) fn edge_mm(site: &Site<'_>, task: &Task) -> Option<f64> {
    let part = task.part.and_then(|at| site.part(at))?;
    let shape = part.balance.shape.as_ref()?;
    match (task.operation, shape) {
        (Operation::SetDown, _) if is_fullered_alone(site, part) => None,
        (Operation::SetDown, Shape::Shoulder { radius, .. }) => Some(in_mm(*radius)),
        (Operation::SetDown, Shape::Peak { .. }) => part.balance.standing.map(|left| in_mm(left.edges[0])),
        (Operation::Corner, Shape::Peak { corner, .. }) => Some(in_mm(corner.inside_radius)),
        (Operation::Bend, _) => over_the_edge_mm(site, task),
        // Googerty's and others' advice is 2 to 5 mm; a dead sharp edge nicks. Half of a tenon's shoulder is left to bear.
        (Operation::SetDown, Shape::Prism { section, .. }) => Some(half_a_ledge_mm(site, part, section).min(2.0)),
        (Operation::SetDown, _) => Some(2.0),
        _ => None,
    }
}

/// Half of what a tenon's shoulder stands out on the side where that is least, in mm.
fn half_a_ledge_mm(site: &Site<'_>, part: Part<'_>, section: &SectionSize) -> f64 {
    let (raw, own) = (extents(&site.raw_section(part.at)), extents(section));
    let ledges = [0, 1].map(|way| (raw[way] - own[way]) / 2.0);
    ledges.into_iter().filter(|ledge| *ledge > 0.1).fold(f64::INFINITY, f64::min) / 2.0
}

/// The side of the bar that is up, in degrees around it from up by way of toward-you; none where it does not matter.
pub(crate) fn up_degrees(site: &Site<'_>, task: &Task) -> Option<f64> {
    if task.operation == Operation::Mark && task.part.is_none() && site.flat.len() > 1 {
        return Some(if site.balance.marked_view() == View::Top { 0.0 } else { 90.0 });
    }
    let part = task.part.and_then(|at| site.part(at))?;
    match (task.operation, &part.segment.form) {
        (Operation::SetDown, Form::Peak(_)) => part.balance.standing.map(|left| left.corner.side.to_degrees()),
        // The edge of the anvil, below, makes the step.
        (Operation::SetDown, Form::Shoulder(forms::Shoulder { sides, .. })) => {
            let one: Vec<u16> = [0, 90, 180, 270].into_iter().filter(|side| sides.contains(*side)).collect();
            match one.as_slice() {
                [side] => Some(f64::from((*side + 180) % 360)),
                _ => None,
            }
        }
        (Operation::Split, Form::Split(_)) => match &part.balance.shape {
            Some(Shape::Split(size)) if size.side.sin().abs() > size.side.cos().abs() => Some(0.0),
            _ => Some(90.0),
        },
        (Operation::Punch | Operation::Drift | Operation::Drill | Operation::Flatten | Operation::Spread, _) => {
            Some(0.0)
        }
        (Operation::Dress, _) => dies::up_degrees(part),
        // It is struck down over the edge: the side that it is bent toward lies below.
        (Operation::Bend | Operation::Corner, _) => {
            let side = part.segment.bend.as_ref()?.side_radians().to_degrees();
            Some((side + 180.0).rem_euclid(360.0))
        }
        _ => None,
    }
}

/// A rim thinner than this is not forged but filed, in mm (common practice, no source).
const THIN_RIM_MM: f64 = 0.5;

/// What must not be corrected yet; `more_bends` is whether something of the bar is still to be bent.
pub(crate) fn leave(site: &Site<'_>, task: &Task, more_bends: bool) -> Option<String> {
    use Operation as O;
    let part = task.part.and_then(|at| site.part(at))?;
    match task.operation {
        O::SetDown => growth(site, part),
        O::Spread if matches!(&part.segment.form, Form::Flag(flag) if flag.blank.is_some()) => {
            Some("Leave it as the whole blank: it is cut to its outline afterwards.".to_owned())
        }
        O::Spread if matches!(part.segment.form, Form::Flag(forms::Flag { trim: Some(_), .. })) => {
            let left = left_to_trim_mm(part);
            if left < THIN_RIM_MM {
                return Some("Leave it a little full, to be filed to the outline.".to_owned());
            }
            let left = length_words(site.plan, left);
            Some(format!("Leave about {left} at the sides and more at the tip: it is trimmed afterwards."))
        }
        O::Flatten if is_slit(site, task) => {
            Some("Leave the rim where it bulges: the hole will open it further.".to_owned())
        }
        O::Upset => swelling_side(part).map(|side| {
            format!("Leave the swelling on the {side}, the outside of the bend; the other sides stay flat.")
        }),
        O::Bend if task.to.is_some() && site.opens_again(part.at) => {
            Some("It is opened again: keep its inside round, and strike no mark into it.".to_owned())
        }
        O::Bend if more_bends && part.balance.bent.is_some_and(crate::job::part::is_closing) => {
            Some("Leave the last part open until everything else is bent.".to_owned())
        }
        _ => None,
    }
}

/// How wide a side grows while the one across it is set down on fewer than all sides:
/// `w₁ = w₀ (h₀/h₁)^s`, s from 0.31 to 0.56 for bites of half to one and a half widths
/// (A. Tomlinson and J. D. Stringer, *Spread and elongation in flat tool forging*, 1959; from memory).
fn growth(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    let Some(Shape::Shoulder { from, to, sides, .. }) = &part.balance.shape else { return None };
    let (from, to) = if to.area() < from.area() { (from, to) } else { (to, from) };
    let ([width, thickness], [to_width, to_thickness]) = (extents(from), extents(to));
    let vertical = sides.contains(0) || sides.contains(180);
    let level = sides.contains(90) || sides.contains(270);
    let (before, after, grows, target) = match (vertical, level) {
        (true, false) => (thickness, to_thickness, width, to_width),
        (false, true) => (width, to_width, thickness, to_thickness),
        _ => return None,
    };
    let reduction = before / after.max(1e-6);
    if reduction < 1.02 {
        return None;
    }
    let grown = [0.31, 0.56].map(|spread| length_words(site.plan, grows * reduction.powf(spread)));
    Some(format!(
        "It spreads sideways to about {} to {}. Let it, and bring it back to {} on edge after each pass.",
        grown[0],
        grown[1],
        length_words(site.plan, target)
    ))
}
