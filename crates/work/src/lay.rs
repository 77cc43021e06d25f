//! How the bar is laid, turned and struck in a step: common practice, no source.

use crate::brief::{is_slit, over_the_edge_mm, swelling_side};
use crate::legs::{Held, WayToBend};
use crate::neck;
use crate::site::{Part, Site, extents, in_mm};
use crate::task::Task;
use crate::words::length_words;
use fh_core::metal::{Bent, SectionSize, Shape};
use fh_core::plan::{AnvilPlace, Form, Operation};

const ON_THE_EDGE: &str =
    "Lay the mark on the edge of the anvil, what goes thin on the face, and strike half on and half off the edge.";
const ALL_ROUND: &str = "Turn it a quarter after every blow, so that the step stays on one line all round.";
const BOTH: &str = "Turn it over after every few blows, so that the sides go down alike.";
const NO_TWIST: &str = "Turn it a quarter back and forth, never all the way round, or it twists.";

/// How the bar is laid and turned, in words; none where it does not matter.
pub(crate) fn lay(site: &Site<'_>, task: &Task, ways: &[WayToBend]) -> Option<String> {
    match task.part {
        Some(at) => of_part(site, task, site.part(at)?, ways),
        None => of_bar(task.operation).map(str::to_owned),
    }
}

fn of_bar(operation: Operation) -> Option<&'static str> {
    Some(match operation {
        Operation::Mark => {
            "Square each mark across the side toward you and punch it there, lightly. With the datum end at your left, that side tells which one is the top."
        }
        Operation::Straighten => "Heat only where it is out of line; light blows on the face, and sight along it.",
        Operation::Wax => "Just warm enough that the wax melts on it, and no warmer.",
        _ => return None,
    })
}

fn of_part(site: &Site<'_>, task: &Task, part: Part<'_>, ways: &[WayToBend]) -> Option<String> {
    use Operation as O;
    let words = match (task.operation, &part.segment.form) {
        (O::SetDown, form) => return Some(set_down(form)),
        (O::Isolate, _) => return neck::words(&neck::grooves(site, part)),
        (O::Draw | O::Taper, _) => return Some(drawn(part)),
        (O::Upset, Form::Rivet { .. }) => return None,
        (O::Upset, _) => return Some(upset(site, part)),
        (O::Spread | O::Flatten, _) => "Turn it over after every few blows, so that it stays in the middle of the bar.",
        (O::Split, _) => "Along the line, half through; then turn it over, and meet the cut from the other side.",
        (O::BendAside, _) => "Only so far that each of them can be laid on the anvil by itself.",
        (O::Straighten, _) => "Bring them in line again, with light blows.",
        (O::Punch, Form::Hole { .. }) if is_slit(site, task) => {
            "Set the chisel along the bar, on its middle line, and drive it until it rings on the anvil; then turn it over, and cut through along the dark line."
        }
        (O::Punch, _) => {
            "From one side until it rings on the anvil; then over, and out on the dark spot, above the hole in the anvil."
        }
        (O::Drift, _) => "Drive it through over the hole in the anvil, from both sides in turn.",
        (O::Twist, _) => {
            let name = site.name(part.at);
            return Some(format!(
                "Clamp it with the start of “{name}” at the jaws of the vice, set the wrench where “{name}” ends, and turn it in one go."
            ));
        }
        (O::Brush, _) => "All round, and again in each heat until it is closed.",
        _ => return bend(site, task, part, ways),
    };
    Some(words.to_owned())
}

fn set_down(form: &Form) -> String {
    let sides = match form {
        Form::Shoulder { sides, .. } => [0, 90, 180, 270].into_iter().filter(|side| sides.contains(*side)).count(),
        _ => 4,
    };
    let turned = match sides {
        4 => ALL_ROUND,
        2 | 3 => BOTH,
        _ => return ON_THE_EDGE.to_owned(),
    };
    format!("{ON_THE_EDGE} {turned}")
}

/// How a part is drawn: what ends thin from its thin end, what becomes round by way of square and eight sides.
fn drawn(part: Part<'_>) -> String {
    let is_round = |section: &SectionSize| matches!(section, SectionSize::Round { .. });
    let (tapers, round) = match &part.balance.shape {
        Some(Shape::Taper { from, to, .. }) => (true, is_round(from) || is_round(to)),
        Some(Shape::Prism { section, .. }) => (false, is_round(section)),
        _ => (false, false),
    };
    let first = if tapers { "The thin end first, then back toward the thick one. " } else { "" };
    let rounded = if round { " Square first, then eight-sided, then round." } else { "" };
    format!("{first}{NO_TWIST}{rounded}")
}

/// How a part is struck endwise.
fn upset(site: &Site<'_>, part: Part<'_>) -> String {
    let stand = "Stand it on end on the face, and strike the upper end in line with the bar; when it bends, straighten it at once.";
    match swelling_side(part) {
        Some(side) => {
            let [_, thick] = extents(&site.raw_section(part.at));
            let thick = length_words(site.plan, thick);
            format!(
                "{stand} Then lay it down, and flatten the other sides to {thick}, so that all of the swelling stands on the {side}."
            )
        }
        None => stand.to_owned(),
    }
}

/// What is bent farther than this is rolled up from its tip, in radians: common practice, no source.
const FAR_ROUND: f64 = 2.0;

/// How a bend is laid and struck.
fn bend(site: &Site<'_>, task: &Task, part: Part<'_>, ways: &[WayToBend]) -> Option<String> {
    let way = *ways.first()?;
    let laid = laid(site, task, part, way);
    let is_at_the_end = site.beside(part.at).contains(&None);
    Some(match part.balance.bent {
        Some(Bent::Corner { .. }) => {
            format!(
                "{laid} Square the outside with blows on both legs while it is still open, and close it in the V-block."
            )
        }
        Some(Bent::Scroll { eye_at_start, .. }) => {
            let end = if eye_at_start { "start" } else { "end" };
            format!(
                "Begin with the eye, at the {end} of “{}”: curl it over the far edge and close it with light blows. Then roll it on over the horn, and open it with the fork where it is too tight.",
                site.name(part.at)
            )
        }
        Some(Bent::Ring { .. }) if is_at_the_end => format!(
            "From its tip: curl it over the horn, roll it on to the other end of “{}”, and close it on the mandrel.",
            site.name(part.at)
        ),
        Some(Bent::Curve { angle, .. }) if is_at_the_end && angle > FAR_ROUND => {
            format!(
                "From its tip: curl that over the horn, and roll it on along “{}”, truing it against the template.",
                site.name(part.at)
            )
        }
        _ => laid,
    })
}

fn laid(site: &Site<'_>, task: &Task, part: Part<'_>, way: WayToBend) -> String {
    let name = site.name(part.at);
    let datum = site.bar.datum_name();
    let (side, end) = match way.held {
        Held::Datum => (format!("the side toward the {datum}"), "start"),
        Held::Far => (format!("the side away from the {datum}"), "end"),
    };
    match (way.place, over_the_edge_mm(site, task).or_else(|| corner_mm(part))) {
        (AnvilPlace::Vice, _) => format!(
            "Clamp {side} in the vice with the {end} of “{name}” just above the jaws; pull it round, and true it with light blows."
        ),
        (AnvilPlace::Horn, _) => format!(
            "Lay {side} over the horn, where it is as round as the bend; strike just beyond where it lies, and move it on from the {end} of “{name}” as it takes the curve."
        ),
        (_, Some(radius)) => format!(
            "Lay {side} on the face, the {end} of “{name}” {} back from the edge, where its rounding begins; hold it down, and strike what hangs over.",
            length_words(site.plan, radius)
        ),
        (_, None) => format!(
            "Lay {side} on the face, and bend it over the edge from the {end} of “{name}” on, moving it by less than its thickness after each blow."
        ),
    }
}

fn corner_mm(part: Part<'_>) -> Option<f64> {
    match &part.balance.shape {
        Some(Shape::Peak { corner, .. }) => Some(in_mm(corner.inside_radius)),
        _ => None,
    }
}
