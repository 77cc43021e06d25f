//! How bends are laid and struck.

use crate::bar::progress::Progress;
use crate::job::hung::closed_at;
use crate::job::kind::over_the_edge_mm;
use crate::job::leaving::stays_off;
use crate::job::legs::{Held, WayToBend};
use crate::job::part::{is_filed_to_its_neck, is_on_edge, meets_its_neck};
use crate::job::site::{Part, Site, in_mm};
use crate::job::task::Task;
use crate::says::bend_tools::HORN;
use crate::says::words::length_words;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::{AnvilPlace, SocketAxis};

/// What is bent farther than this is rolled up from its end, in radians: common practice, no source.
const FAR_ROUND: f64 = 2.0;

/// What is said of a ring that closes on the bar it is bent from: the template has it without a set-back.
const TANGENT: &str = "It is to one side of the bar, as on the template. Check it so; then set its root back over the middle if you want, which takes no more metal.";

/// What is looked at before a ring is closed.
const FILED: &str = "See that its filed end lies on the neck.";

/// How metal is driven up into a corner: common practice, no source.
const DRIVEN_UP: &str = "Leave its outside round. Then take a full heat on the corner alone, and strike both legs towards it by turns: on their ends where they are short and stout, else on their outsides close to it; true them after each turn. Keep the radius inside: a sharp one folds, and cracks.";

/// How the end of a ring is filed, while it is straight and the bar is cold.
pub(crate) fn filed_to_its_neck(site: &Site<'_>, part: Part<'_>) -> String {
    format!(
        "File the free end of “{}” a little hollow and aslant, as it meets the neck on the template; take no more than that off its length.",
        site.name(part.at)
    )
}

/// Whether a ring meets the bar that it is bent from, and not a neck that is set back.
fn is_closed_on_the_bar(site: &Site<'_>, part: Part<'_>) -> bool {
    let set_back = |side: f64| is_set_back(site, part, side);
    meets_its_neck(site, part) && matches!(part.balance.bent, Some(Bent::Ring { side, .. }) if !set_back(side))
}

/// Whether what a ring grows from is bent to the other side: it stands in line with the bar already.
fn is_set_back(site: &Site<'_>, ring: Part<'_>, side: f64) -> bool {
    let beside = site.beside(ring.at).into_iter().flatten().filter_map(|at| site.part(at)?.balance.bent);
    beside.into_iter().any(|bent| matches!(bent, Bent::Curve { side: other, .. } if (other - side).cos() < 0.0))
}

/// The inside radius of a curve, in mm.
fn inside_mm(bent: Option<Bent>) -> Option<f64> {
    match bent {
        Some(Bent::Curve { inside_radius, .. }) => Some(in_mm(inside_radius)),
        _ => None,
    }
}

/// How a bend is laid and struck, in words.
pub(crate) fn words(site: &Site<'_>, task: &Task, part: Part<'_>, ways: &[WayToBend]) -> Option<String> {
    let bent = part.balance.bent;
    if let Some(Bent::Socket { axis: SocketAxis::Across, .. }) = bent {
        return Some(across(site, part));
    }
    if let Some(Bent::Socket { .. }) = bent {
        return Some("Sink it along its middle into the swage block, curl both long edges in evenly, and close it over the mandrel, put in from the mouth, the seam in the middle.".to_owned());
    }
    let name = site.name(part.at);
    let mut all = vec![match (bent, ways.first()) {
        _ if site.split_of(part.at).is_some_and(|(split, _)| stays_off(site, split)) => {
            let crook = inside_mm(bent).map_or_else(String::new, |mm| {
                format!(" over a bar of {} laid in its crook", length_words(site.plan, 2.0 * mm))
            });
            format!(
                "“{name}” stands off as it was forged, further than it is to stay: clamp the bar beside the root of the slit in the vice, and bring it back{crook}, until it lies on the template."
            )
        }
        _ if site.split_of(part.at).is_some() => {
            format!(
                "Clamp the root of the slit in the vice, and bend “{name}” with the fork; open the slit there with a wedge first, where its pin finds no room."
            )
        }
        (Some(Bent::Scroll { eye_at_start, .. }), _) => {
            let end = if eye_at_start { "start" } else { "end" };
            format!(
                "Begin with the eye, at the {end} of “{name}”: curl it over the far edge and close it with light blows. Then roll it on over the horn, and open it with the fork where it is too tight."
            )
        }
        (Some(Bent::Ring { .. }), Some(way)) => {
            let side = if is_closed_on_the_bar(site, part) { format!(" {TANGENT}") } else { String::new() };
            let filed = if is_filed_to_its_neck(site, part) { format!(" {FILED}") } else { String::new() };
            let close = closed_at(site, part).map_or_else(
                || format!("{filed} Close it on the mandrel."),
                |joint| format!(" Leave it open: it is closed at “{joint}”, once it is on."),
            );
            format!("{}{close}{side}", rolled(&name, way.held))
        }
        (Some(Bent::Curve { angle, .. }), Some(way)) if angle > FAR_ROUND => rolled(&name, way.held),
        (_, way) => laid(site, task, part, *way?),
    }];
    if let Some(Bent::Corner { .. }) = bent {
        let squared = match part.segment.form.is_driven_up() {
            true => DRIVEN_UP,
            false => "Square the outside with blows on both legs while it is still open, and close it in the V-block.",
        };
        all.push(squared.to_owned());
    }
    if is_on_edge(site, part) {
        all.push("It is bent on its edge: one long even heat, a little at a time.".to_owned());
    }
    Some(all.join(" "))
}

/// A flag rolled up from its free end, about an axis across the bar.
fn across(site: &Site<'_>, part: Part<'_>) -> String {
    let end = if site.beside(part.at)[1].is_none() { "end" } else { "start" };
    format!(
        "Begin at the {end} of “{}”: turn its edge up over the rounded edge of the anvil, roll it back towards the bar with light blows, square across, and close it on the mandrel, put in from the side.",
        site.name(part.at)
    )
}

/// Rolled up from the end that is not held.
fn rolled(name: &str, held: Held) -> String {
    let (from, toward) = match held {
        Held::Datum => ("end", "start"),
        Held::Far => ("start", "end"),
    };
    format!(
        "Begin at the {from} of “{name}”: curl it over the horn, and feed it on towards its {toward}, trying it on the template."
    )
}

/// Whether no horn is as round as a bend.
fn is_wider_than_the_horn(part: Part<'_>) -> bool {
    matches!(part.balance.bent, Some(Bent::Curve { inside_radius, .. }) if 2.0 * in_mm(inside_radius) > HORN)
}

fn laid(site: &Site<'_>, task: &Task, part: Part<'_>, way: WayToBend) -> String {
    let name = site.name(part.at);
    let datum = site.bar.datum_name();
    let (side, end) = match way.held {
        Held::Datum => (format!("the side towards the {datum}"), "start"),
        Held::Far => (format!("the side away from the {datum}"), "end"),
    };
    match (way.place, over_the_edge_mm(site, task).or_else(|| corner_mm(part))) {
        (AnvilPlace::Vice, _) => format!(
            "Clamp {side} in the vice with the {end} of “{name}” just above the jaws; pull it round, and true it with light blows."
        ),
        (AnvilPlace::Horn, _) if is_wider_than_the_horn(part) => format!(
            "Lay {side} over the thick of the horn from the {end} of “{name}” on; strike just beyond where it touches, and move it on a little at a time, trying it on the template."
        ),
        (AnvilPlace::Horn, _) => format!(
            "Lay {side} over the horn, where it is as round as the bend; strike just beyond where it touches, and move it on from the {end} of “{name}” as it takes the curve."
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

/// How a bar is twisted, and which way the wrench goes.
pub(crate) fn twisted(site: &Site<'_>, part: Part<'_>) -> String {
    let name = site.name(part.at);
    let angle = match part.balance.bent {
        Some(Bent::Twist { angle }) => angle,
        _ => 0.0,
    };
    format!(
        "Clamp it with the start of “{name}” at the jaws of the vice, set the wrench where “{name}” ends, and turn it {}, in one go.",
        wrench_way(angle)
    )
}

/// Which way a wrench at the end of a part is turned: a right-handed twist, which is more than 0, runs as a screw thread does,
/// and its near end is turned against the clock.
fn wrench_way(turned: f64) -> &'static str {
    if turned < 0.0 {
        "clockwise, seen from the wrench (left-handed)"
    } else {
        "anticlockwise, seen from the wrench (right-handed, as a screw thread runs)"
    }
}

/// Whether a twist that is made has turned a part out of how the bar lay for marking: one toward the datum, which lies still.
pub(crate) fn turned_by_a_twist(site: &Site<'_>, progress: &Progress, at: usize) -> bool {
    let is_turned = |before: &usize| {
        let (stage, part) = (progress.stages[*before], site.part(*before));
        let by_slit = || match part.and_then(|part| part.balance.shape.as_ref()) {
            Some(Shape::Split(size)) => stage.opened && size.opening.is_some_and(|opening| opening.turns != 0.0),
            _ => false,
        };
        let by_twist = matches!(part.and_then(|part| part.balance.bent), Some(Bent::Twist { .. })) && stage.bent;
        by_twist || by_slit()
    };
    site.chains[0].1.iter().take_while(|before| **before < at).any(is_turned)
}

/// How a slit that is closed at both ends is opened to its shape.
pub(crate) fn opened(site: &Site<'_>, part: Part<'_>) -> String {
    let name = site.name(part.at);
    let turns = match &part.balance.shape {
        Some(Shape::Split(size)) => size.opening.map_or(0.0, |opening| opening.turns),
        _ => 0.0,
    };
    let clamped = format!("Clamp it with the start of “{name}” at the jaws of the vice");
    if turns != 0.0 {
        return format!(
            "One even heat along the rods, and no more. {clamped}, set the wrench where “{name}” ends, and turn it {}, a quarter of a turn more than is wanted. Turn that quarter back while you push the ends together: the rods stand apart.",
            wrench_way(turns)
        );
    }
    format!("{clamped}, and push the ends together: the rods bow apart; help with a drift between them.")
}

/// Which way a slit is opened, in a few words; none of one that is not turned.
pub(crate) fn opening_way(part: Part<'_>) -> Option<String> {
    let Some(Shape::Split(size)) = &part.balance.shape else { return None };
    let turns = size.opening.map(|opening| opening.turns).filter(|turns| *turns != 0.0)?;
    let way = if turns < 0.0 { "clockwise" } else { "anticlockwise" };
    Some(format!("Turn it {way} seen from the wrench, a quarter too far, then back while you push the ends together."))
}
