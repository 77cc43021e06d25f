//! What a part is bent, rolled or twisted with. Common practice, no source, unless one is named.

use crate::job::leaving::stays_off;
use crate::job::site::{Part, Site, extents, in_mm};
use crate::says::shop::ToolKind;
use crate::says::usual::{self, Fit};
use crate::says::wanted::{HOT, Wanted};
use crate::says::words::length_words;
use fh_core::forms;
use fh_core::metal::{Bent, SectionSize, Shape};
use fh_core::plan::{Form, SocketAxis};

/// The thickest that a horn is, at its root, in mm: common practice, no source.
pub(crate) const HORN: f64 = 110.0;

/// What a bend is laid over: a bar as thick as its inside is wide, or the horn as far as there is one so thick.
fn round_tool(site: &Site<'_>, diameter: f64) -> Wanted {
    let kind = ToolKind::Mandrel;
    let whole = usual::whole_mm(site.plan, diameter, Fit::Near);
    let size = usual::words(site.plan, whole);
    if diameter <= HORN {
        let words = format!("{} {size}, or the horn", kind.name());
        return Wanted { words, ..Wanted::usual(site, kind, [whole, diameter], "", "Twice the inside radius.") };
    }
    let words = format!("former or ring of {size}");
    let reason = "No horn is that thick: bend it a little at a time, and try it on the former or the template.";
    Wanted { words, ..Wanted::usual(site, kind, [whole, diameter], "", reason) }
}

/// The tools of a bend, the main one first.
pub(crate) fn bend(site: &Site<'_>, part: Part<'_>) -> Vec<Wanted> {
    use ToolKind as K;
    let [width, thickness] = extents(&site.raw_section(part.at));
    if site.split_of(part.at).is_some_and(|(split, _)| stays_off(site, split)) {
        return vec![Wanted::plain(K::Hammer, "Light blows bring it back to its template.")];
    }
    if site.split_of(part.at).is_some() {
        return vec![of_a_branch(site, part)];
    }
    if let Form::Collar(forms::Collar { width, height, .. }) = &part.segment.form {
        let reason = "A bar of the bundle's size: the collar is bent to a U round it.";
        let mandrel = Wanted::sized(site, K::Mandrel, width.mm().max(height.mm()), "", reason);
        let size = [width, height].map(|side| length_words(site.plan, side.mm()));
        return vec![Wanted { words: format!("mandrel, {} × {}", size[0], size[1]), ..mandrel }];
    }
    match part.balance.bent {
        Some(Bent::Ring { inside_diameter, .. }) => {
            vec![Wanted::whole(
                site,
                K::Mandrel,
                (in_mm(inside_diameter), Fit::Near),
                "",
                "The ring is closed and trued on a bar as thick as its inside.",
            )]
        }
        Some(Bent::Curve { inside_radius, .. }) => {
            vec![round_tool(site, 2.0 * in_mm(inside_radius))]
        }
        Some(Bent::Corner { .. }) => {
            vec![Wanted::plain(
                K::VBlock,
                "Closed in the block with blows on both legs, the corner fills on its outside.",
            )]
        }
        Some(Bent::Scroll { .. }) => {
            let gap = thickness * 1.15;
            let reason = "A little more than the bar is thick.";
            vec![Wanted::whole(site, K::BendingFork, (gap, Fit::Up), "pins apart ", reason)]
        }
        Some(Bent::Socket { mandrel, axis: SocketAxis::Across, .. }) => {
            let reason = "The knuckle is closed and trued round it.";
            vec![Wanted::whole(site, K::Mandrel, (in_mm(mandrel), Fit::Near), "", reason)]
        }
        Some(Bent::Socket { mandrel, .. }) => socket(site, part, in_mm(mandrel)),
        Some(Bent::Twist { .. }) => {
            vec![Wanted::whole(
                site,
                K::TwistWrench,
                (width.max(thickness) * HOT, Fit::Up),
                "jaws ",
                "It grips the bar at the end of the twist, squarely.",
            )]
        }
        None => vec![Wanted::plain(K::TwistWrench, "Turned back a little, the rods bow apart.")],
    }
}

/// What one branch is bent with while the others are left alone.
fn of_a_branch(site: &Site<'_>, part: Part<'_>) -> Wanted {
    let reason = "It bends one branch, and leaves the others alone.";
    let least = |section: &SectionSize| extents(section).into_iter().fold(f64::INFINITY, f64::min);
    let branch = match &part.balance.shape {
        Some(Shape::Prism { section, .. }) => least(section),
        _ => least(&site.raw_section(part.at)),
    };
    Wanted::whole(site, ToolKind::BendingFork, (branch * 1.15, Fit::Up), "pins apart ", reason)
}

/// What a socket is closed with, so many mm inside.
fn socket(site: &Site<'_>, part: Part<'_>, inside: f64) -> Vec<Wanted> {
    use ToolKind as K;
    let metal = match &part.balance.shape {
        Some(Shape::Flag { root, tip, .. }) => in_mm(root.max(*tip)),
        _ => 0.0,
    };
    let swage = inside + 2.0 * metal;
    let outside = "The mandrel and twice the metal: it closes the socket from outside.";
    vec![
        Wanted::whole(site, K::Mandrel, (inside, Fit::Near), "", "The socket is closed round it."),
        Wanted::whole(site, K::Swage, (swage, Fit::Up), "groove for ", outside),
        Wanted::plain(K::VBlock, "The flag is sunk into it to start the curl."),
    ]
}
