//! Troubles in words: why a wish could not be met.

use super::scene::{Rule, Scene};
use super::{Finding, Severity};
use crate::balance::{BarTrouble, Met, Trouble};
use uom::si::f64::Length;

/// The ids of these findings.
pub(super) const IDS: [&str; 20] = [
    "no-length",
    "over-determined",
    "under-determined",
    "bend-too-tight",
    "bend-round-nothing",
    "no-metal",
    "peak-without-corner",
    "corner-without-peak",
    "corner-too-far",
    "nothing-gives",
    "cannot-fit",
    "takes-up",
    "scroll-too-short",
    "scroll-from-center",
    "socket-too-small",
    "socket-without-flag",
    "empty-branch",
    "split-whole-bar",
    "opening-too-wide",
    "hole-too-large",
];

const REASON: &str = "This part of the plan cannot be worked out; the rest is.";

/// The finding of a trouble.
pub(super) fn finding(scene: &Scene<'_>, met: &Met) -> Finding {
    let name = met.segment.map_or_else(String::new, |segment| scene.name(segment));
    let (id, message, remedy) = match met.trouble {
        BarTrouble::Segment(trouble) => segment_words(scene, trouble, &name),
        BarTrouble::TakesUpUnknown => (
            "takes-up",
            format!("No part is called “{}”.", scene.bar.takes_up.as_deref().unwrap_or("")),
            "Name the part that takes up the difference, or leave it out.".to_owned(),
        ),
        BarTrouble::TakesUpWithoutLength => (
            "takes-up",
            "A part takes up the difference, but the bar has no length of its own.".to_owned(),
            "Say how long the bar is, or choose nothing to take up the difference.".to_owned(),
        ),
    };
    Rule { id, severity: Severity::Stop, reason: REASON }.at(scene.place(met.segment), message, remedy)
}

fn segment_words(scene: &Scene<'_>, trouble: Trouble, name: &str) -> (&'static str, String, String) {
    let (id, message, remedy) = match trouble {
        Trouble::NoLength => ("no-length", format!("“{name}” has no length."), "Give its length, or bend it."),
        Trouble::TooMuchGiven => (
            "over-determined",
            format!("“{name}” has more sizes than its bend needs; they may contradict each other."),
            "Leave one of the bend's tied sizes out: it follows from the others.",
        ),
        Trouble::TooLittleGiven => (
            "under-determined",
            format!("“{name}” has too few sizes for its bend."),
            "Give one more of the length and the bend's sizes.",
        ),
        Trouble::RadiusBelowZero(radius) => return too_tight(scene, radius, name),
        Trouble::ScrollTooShort(least) | Trouble::ScrollTooMuchTurned(least) | Trouble::OpeningTooWide(least) => {
            return too_short(scene, trouble, least, name);
        }
        Trouble::Pinched => (
            "bend-round-nothing",
            format!("“{name}” runs out to nothing and is bent with no inside radius."),
            "Give the bend an inside radius above 0: a point cannot be bent round nothing.",
        ),
        Trouble::NoArea => (
            "no-metal",
            format!("“{name}” comes out with no metal in it."),
            "Give it a section and sizes greater than 0.",
        ),
        Trouble::PeakWithoutCorner => (
            "peak-without-corner",
            format!("The peak “{name}” has no corner to be bent to."),
            "Add the bend “corner”: it fixes the peak's length.",
        ),
        Trouble::CornerWithoutPeak => (
            "corner-without-peak",
            format!("“{name}” is to be bent to a sharp corner, but is no peak."),
            "Make it a peak, or bend it as a curve.",
        ),
        Trouble::CornerTooFar => (
            "corner-too-far",
            format!("The corner “{name}” does not turn between 0° and 180°."),
            "A sharp corner turns by less than a half turn; beyond that bend a curve.",
        ),
        Trouble::NothingGives => (
            "nothing-gives",
            format!("“{name}” is to take up the difference, but none of its sizes gives."),
            "Choose another size to give, or another part to take up the difference.",
        ),
        Trouble::CannotFit => return cannot_fit(scene, name),
        Trouble::ScrollFromCenter => (
            "scroll-from-center",
            format!("“{name}” opens from a radius of 0, and would wind for ever."),
            "Give the eye of an opening scroll a radius above 0, or let it open evenly.",
        ),
        Trouble::NothingToRoll => (
            "socket-too-small",
            format!("“{name}”: another part supplies all of the socket, and nothing is left to roll."),
            "Take less off, or use a larger mandrel.",
        ),
        Trouble::SocketWithoutFlag => (
            "socket-without-flag",
            format!("“{name}” is to be rolled to a socket, but is no flag."),
            "Make it a flag, or bend it as a ring.",
        ),
        Trouble::EmptyBranch => (
            "empty-branch",
            format!("“{name}” has a branch without metal: no cut can be laid off."),
            "Give each branch at least one part with its sizes.",
        ),
        Trouble::SplitAtBothEnds => (
            "split-whole-bar",
            format!("“{name}” is the whole bar: its branches would fall apart."),
            "Leave a part of the bar whole before or after the split, or plan two bars.",
        ),
        Trouble::HoleTooLarge => (
            "hole-too-large",
            format!("The hole of “{name}” breaks out of its boss."),
            "Make the boss larger, the hole smaller, or move the hole towards its middle.",
        ),
    };
    (id, message, remedy.to_owned())
}

/// What has to be at least so long.
fn too_short(scene: &Scene<'_>, trouble: Trouble, least: Length, name: &str) -> (&'static str, String, String) {
    let least = scene.length(least);
    let (id, message, remedy) = match trouble {
        Trouble::OpeningTooWide(_) => (
            "opening-too-wide",
            format!("“{name}” is opened wider than its branches reach: they would have to be {least} long or more."),
            "Make the branches longer, or open it less.",
        ),
        Trouble::ScrollTooMuchTurned(_) => (
            "scroll-too-short",
            format!("“{name}” is too short for its scroll: its turns round its radius take {least} or more."),
            "Make it longer, give it fewer turns, or a smaller radius.",
        ),
        _ => (
            "scroll-too-short",
            format!("“{name}” is too short for its scroll: from radius to radius alone it takes {least}."),
            "Make it longer, or bring the scroll's two radii closer together.",
        ),
    };
    (id, message, remedy.to_owned())
}

fn too_tight(scene: &Scene<'_>, radius: Length, name: &str) -> (&'static str, String, String) {
    (
        "bend-too-tight",
        format!("“{name}” is too short for its bend: the inside radius would be {}, below 0.", scene.length(radius)),
        "Make it longer or thinner, or bend it less.".to_owned(),
    )
}

fn cannot_fit(scene: &Scene<'_>, name: &str) -> (&'static str, String, String) {
    let needed = crate::metal::in_mm(scene.balance.last_mark());
    let Some(length) = scene.bar.length.as_ref().map(|length| length.mm()) else {
        let message = format!("“{name}”: no size of its bend fits its length.");
        return ("cannot-fit", message, "Make it longer or shorter, or leave another size of the bend out.".to_owned());
    };
    let [needed, length] = scene.apart([needed, length]);
    let message = format!(
        "“{name}” cannot take up the difference: with it as written the plan needs {needed}, and the bar is {length}."
    );
    ("cannot-fit", message, "Take another bar, or make other parts longer or shorter.".to_owned())
}
