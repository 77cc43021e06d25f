//! Troubles in words: why a wish could not be met.

use super::scene::{Rule, Scene};
use super::{Finding, Severity};
use crate::balance::{BarTrouble, Met, Trouble};

/// The ids of these findings.
pub(super) const IDS: [&str; 21] = [
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
    "cut-uneven",
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
    (id(trouble), message(scene, trouble, name), remedy(scene, trouble).to_owned())
}

fn id(trouble: Trouble) -> &'static str {
    match trouble {
        Trouble::NoLength => "no-length",
        Trouble::TooMuchGiven => "over-determined",
        Trouble::TooLittleGiven => "under-determined",
        Trouble::RadiusBelowZero(_) => "bend-too-tight",
        Trouble::Pinched => "bend-round-nothing",
        Trouble::NoArea => "no-metal",
        Trouble::PeakWithoutCorner => "peak-without-corner",
        Trouble::CornerWithoutPeak => "corner-without-peak",
        Trouble::CornerTooFar => "corner-too-far",
        Trouble::NothingGives => "nothing-gives",
        Trouble::ScrollTooShort(_) | Trouble::ScrollTooMuchTurned(_) => "scroll-too-short",
        Trouble::ScrollFromCenter => "scroll-from-center",
        Trouble::NothingToRoll => "socket-too-small",
        Trouble::SocketWithoutFlag => "socket-without-flag",
        Trouble::EmptyBranch => "empty-branch",
        Trouble::BranchUneven => "cut-uneven",
        Trouble::SplitAtBothEnds => "split-whole-bar",
        Trouble::OpeningTooWide(_) => "opening-too-wide",
        Trouble::HoleTooLarge => "hole-too-large",
        Trouble::CannotFit => "cannot-fit",
    }
}

/// What is wrong, with its numbers.
fn message(scene: &Scene<'_>, trouble: Trouble, name: &str) -> String {
    let rest = match trouble {
        Trouble::NoLength => " has no length.",
        Trouble::TooMuchGiven => " has more sizes than its bend needs; they may contradict each other.",
        Trouble::TooLittleGiven => " has too few sizes for its bend.",
        Trouble::Pinched => " runs out to nothing and is bent with no inside radius.",
        Trouble::NoArea => " comes out with no metal in it.",
        Trouble::PeakWithoutCorner => return format!("The peak “{name}” has no corner to be bent to."),
        Trouble::CornerWithoutPeak => " is to be bent to a sharp corner, but isn't a peak.",
        Trouble::CornerTooFar => return format!("The corner “{name}” does not turn between 0° and 180°."),
        Trouble::NothingGives => " is to take up the difference, but none of its sizes gives.",
        Trouble::ScrollFromCenter => " opens from a radius of 0, and would wind for ever.",
        Trouble::NothingToRoll => ": another part supplies all of the socket, and nothing is left to roll.",
        Trouble::SocketWithoutFlag => " is to be rolled to a socket, but isn't a flag.",
        Trouble::EmptyBranch => " has a branch without metal: no cut can be laid off.",
        Trouble::BranchUneven => " has a branch that takes more or less metal than its cut leaves it.",
        Trouble::SplitAtBothEnds => " is the whole bar: its branches would fall apart.",
        Trouble::HoleTooLarge => return format!("A hole of “{name}” breaks out of it, or into another hole."),
        Trouble::CannotFit => return cannot_fit(scene, name),
        Trouble::RadiusBelowZero(size)
        | Trouble::ScrollTooShort(size)
        | Trouble::ScrollTooMuchTurned(size)
        | Trouble::OpeningTooWide(size) => return of_size(trouble, &scene.length(size), name),
    };
    format!("“{name}”{rest}")
}

/// What is wrong with a size, as it would be or has to be.
fn of_size(trouble: Trouble, size: &str, name: &str) -> String {
    match trouble {
        Trouble::OpeningTooWide(_) => {
            format!("“{name}” is opened wider than its branches reach: they would have to be {size} long or more.")
        }
        Trouble::ScrollTooMuchTurned(_) => {
            format!("“{name}” is too short for its scroll: its turns round its radius take {size} or more.")
        }
        Trouble::ScrollTooShort(_) => {
            format!("“{name}” is too short for its scroll: from radius to radius alone it takes {size}.")
        }
        _ => format!("“{name}” is too short for its bend: the inside radius would be {size}, below 0."),
    }
}

/// What to do about it.
fn remedy(scene: &Scene<'_>, trouble: Trouble) -> &'static str {
    match trouble {
        Trouble::NoLength => "Give its length, or bend it.",
        Trouble::TooMuchGiven => "Leave one of the bend's tied sizes out: it follows from the others.",
        Trouble::TooLittleGiven => "Give one more of the length and the bend's sizes.",
        Trouble::RadiusBelowZero(_) => "Make it longer or thinner, or bend it less.",
        Trouble::Pinched => "Give the bend an inside radius above 0: a point cannot be bent round nothing.",
        Trouble::NoArea => "Give it a section and sizes greater than 0.",
        Trouble::PeakWithoutCorner => "Add the bend “corner”: it fixes the peak's length.",
        Trouble::CornerWithoutPeak => "Make it a peak, or bend it as a curve.",
        Trouble::CornerTooFar => "A sharp corner turns by less than a half turn; beyond that bend a curve.",
        Trouble::NothingGives => "Choose another size to give, or another part to take up the difference.",
        Trouble::ScrollTooShort(_) => "Make it longer, or bring the scroll's two radii closer together.",
        Trouble::ScrollTooMuchTurned(_) => "Make it longer, give it fewer turns, or a smaller radius.",
        Trouble::ScrollFromCenter => "Give the eye of an opening scroll a radius above 0, or let it open evenly.",
        Trouble::NothingToRoll => "Take less off, or use a larger mandrel.",
        Trouble::SocketWithoutFlag => "Make it a flag, or bend it as a ring.",
        Trouble::EmptyBranch => "Give each branch at least one part with its sizes.",
        Trouble::BranchUneven => "Let a part of each branch give, or leave the cut or the slit's length to follow.",
        Trouble::SplitAtBothEnds => "Leave a part of the bar whole before or after the split, or plan two bars.",
        Trouble::OpeningTooWide(_) => "Make the branches longer, or open it less.",
        Trouble::HoleTooLarge => "Make the boss or plate larger, the hole smaller, or move the hole.",
        Trouble::CannotFit if scene.bar.length.is_some() => "Take another bar, or make other parts longer or shorter.",
        Trouble::CannotFit => "Make it longer or shorter, or leave another size of the bend out.",
    }
}

fn cannot_fit(scene: &Scene<'_>, name: &str) -> String {
    let needed = crate::metal::in_mm(scene.balance.last_mark());
    let Some(length) = scene.bar.length.as_ref().map(|length| length.mm()) else {
        return format!("“{name}”: no size of its bend fits its length.");
    };
    let [needed, length] = scene.apart([needed, length]);
    format!(
        "“{name}” cannot take up the difference: with it as written the plan needs {needed}, and the bar is {length}."
    )
}
