//! Asked sizes: whether the finished piece has them, and why not.

use super::scene::{Rule, in_unit, in_unit_apart};
use super::{Finding, Place, Severity};
use crate::balance::{SizeBalance, SizeMissed};
use crate::describe::segment_name;
use crate::metal::in_mm;
use crate::plan::{AskedSize, Bar, Plan};

/// The ids of these findings.
pub(super) const IDS: [&str; 5] =
    ["size-unknown", "size-missed", "size-not-kept", "size-out-of-reach", "size-not-changed"];

const UNKNOWN: Rule = Rule {
    id: "size-unknown",
    severity: Severity::Stop,
    reason: "This size cannot be taken; the rest of the plan is worked out.",
};

const MISSED: Rule = Rule {
    id: "size-missed",
    severity: Severity::Warning,
    reason: "The finished piece would not have the size that was asked.",
};

const NOT_KEPT: Rule = Rule {
    id: "size-not-kept",
    severity: Severity::Stop,
    reason: "A part can take up one thing only: an asked size, or the rest of its block.",
};

const OUT_OF_REACH: Rule = Rule {
    id: "size-out-of-reach",
    severity: Severity::Stop,
    reason: "Other sizes hold the piece too large or too small, so nothing was moved.",
};

const NOT_CHANGED: Rule = Rule {
    id: "size-not-changed",
    severity: Severity::Stop,
    reason: "The size comes out the same whatever this part has.",
};

pub(super) fn check(plan: &Plan, sizes: &[SizeBalance], found: &mut Vec<Finding>) {
    for (index, (size, balance)) in plan.sizes.iter().zip(sizes).enumerate() {
        let title = size.title(index);
        let place = Place { bar: balance.bar, segment: balance.kept_by };
        if let Some(missed) = &balance.missed {
            let (rule, message, remedy) = words(plan, (size, balance), missed);
            found.push(rule.at(place, format!("“{title}”: {message}"), remedy));
        }
    }
}

/// The rule, what was seen, and what to do.
fn words(
    plan: &Plan,
    (size, balance): (&AskedSize, &SizeBalance),
    missed: &SizeMissed,
) -> (&'static Rule, String, String) {
    let unit = plan.units.length;
    let bar = balance.bar.and_then(|bar| plan.bars.get(bar));
    let keeper = bar.zip(balance.kept_by).map_or_else(String::new, |(bar, part)| segment_name(bar, part));
    let asked = size.size.mm();
    match missed {
        SizeMissed::NoBar => {
            let name = size.bar.as_deref().unwrap_or_default();
            (&UNKNOWN, format!("no bar is called “{name}”."), "Name a bar of the plan.".to_owned())
        }
        SizeMissed::NoPart(name) => no_part(plan, bar_of(plan, size), name),
        SizeMissed::NoPlace { part, at } => {
            let message = format!("“{part}” has no {}.", at.name());
            (&UNKNOWN, message, "Take the size from another place of the part.".to_owned())
        }
        SizeMissed::NotSettled => {
            let message = "it is taken from a part whose sizes are not settled.".to_owned();
            (&UNKNOWN, message, "Settle that part's sizes, or take the size from another.".to_owned())
        }
        SizeMissed::Off => {
            let value = balance.value.map_or(0.0, in_mm);
            let [value, asked] = in_unit_apart([value, asked], unit);
            let remedy = "Change a part's length, or name a part that gives to keep it.".to_owned();
            (&MISSED, format!("it is {value}, and {asked} is asked."), remedy)
        }
        SizeMissed::KeepsAnother => {
            let message = format!("“{keeper}” keeps another size already.");
            (&NOT_KEPT, message, "Let another part give to keep this one.".to_owned())
        }
        SizeMissed::FillsBlock => {
            let message = format!("“{keeper}” gives to fill the bar or its block, so it cannot keep a size as well.");
            (&NOT_KEPT, message, "Let another part give, to the one or to the other.".to_owned())
        }
        SizeMissed::Holds => {
            let message = format!("“{keeper}” has no size that gives.");
            (&NOT_KEPT, message, "Say which of its sizes gives, or name another part.".to_owned())
        }
        SizeMissed::NoEffect => {
            let value =
                balance.value.map_or_else(String::new, |value| format!(" It is {}.", in_unit(in_mm(value), unit)));
            let message = format!("Changing “{keeper}” makes no difference to it.{value}");
            (&NOT_CHANGED, message, "Name a part that lies between the two places.".to_owned())
        }
        SizeMissed::OutOfReach { nearest } => {
            let [nearest, asked] = in_unit_apart([in_mm(*nearest), asked], unit);
            let message = format!("no size of “{keeper}” makes it {asked}; the nearest is {nearest}.");
            (&OUT_OF_REACH, message, "Ask for that, or change other parts first.".to_owned())
        }
    }
}

/// The bar that a size is taken on, whether or not all of its parts are there.
fn bar_of<'a>(plan: &'a Plan, size: &AskedSize) -> Option<&'a Bar> {
    match &size.bar {
        Some(name) => plan.bars.iter().find(|bar| bar.name == *name),
        None => plan.bars.first(),
    }
}

/// A part that is not on the size's bar: on another one, or nowhere.
fn no_part(plan: &Plan, own: Option<&Bar>, name: &str) -> (&'static Rule, String, String) {
    let has = |bar: &&Bar| bar.flat().iter().any(|flat| flat.segment.name == name);
    let Some(other) = plan.bars.iter().filter(|_| !name.is_empty()).find(has) else {
        let message = format!("no part of its bar is called “{name}”.");
        return (&UNKNOWN, message, "Name a part of that bar, or remove the size.".to_owned());
    };
    let own = own.map_or_else(String::new, |bar| format!(", not on “{}”", bar.name));
    let message = format!("“{name}” is on the bar “{}”{own}, and a size is taken on one bar.", other.name);
    let remedy = "Take it between parts of one bar, or hold the two bars together by a joint and measure the piece.";
    (&UNKNOWN, message, remedy.to_owned())
}
