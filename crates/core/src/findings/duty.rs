//! Duty and coating: uses that need a rated and tested part, and coatings that give off poisonous fume.

use super::scene::Rule;
use super::{Finding, Place, Severity};
use crate::balance::{BarBalance, SegmentBalance};
use crate::cautions::{BARE_STOCK, STRIPPED};
use crate::plan::{Bend, Coating, Duty, Plan, Segment, SizeName};
use std::f64::consts::PI;

/// The ids of these findings.
pub(super) const IDS: [&str; 4] = ["rated-part", "coated-stock", "poisonous-coating", "unrated-hook"];

const RATED: Rule = Rule {
    id: "rated-part",
    severity: Severity::Warning,
    reason: "A hand-forged part has no rating, and people are hurt when it fails.",
};

/// Nobody's weight hangs on a guess: a stop until somebody has rated the part.
const RATED_FOR_PEOPLE: Rule = Rule { severity: Severity::Stop, ..RATED };

const UNRATED: Rule =
    Rule { id: "unrated-hook", severity: Severity::Note, reason: "A hand-forged hook or ring has no rating." };

const ZINC: Rule = Rule {
    id: "poisonous-coating",
    severity: Severity::Stop,
    reason: "Zinc gives off poisonous fumes in the fire; you feel them only hours later.",
};

const PLATING: Rule = Rule {
    reason: "Cadmium fumes can kill before you feel them; chromium and zinc are poisonous too, and you cannot tell platings apart by eye.",
    ..ZINC
};

const PAINT: Rule = Rule {
    id: "coated-stock",
    severity: Severity::Warning,
    reason: "Paint and powder burn off with harmful smoke, and old paint may hold lead.",
};

const EVERYWHERE: Place = Place { bar: None, segment: None };

pub(super) fn check(plan: &Plan, bars: &[BarBalance], found: &mut Vec<Finding>) {
    match plan.coating {
        Some(coating @ (Coating::Galvanised | Coating::Plated)) => {
            let rule = if coating == Coating::Plated { PLATING } else { ZINC };
            found.push(rule.at(EVERYWHERE, format!("The stock is {}.", coating.name()), BARE_STOCK.to_owned()));
        }
        Some(Coating::Painted) => {
            found.push(PAINT.at(EVERYWHERE, "The stock is painted.".to_owned(), STRIPPED.to_owned()));
        }
        Some(Coating::None) | None => {}
    }
    match plan.duty {
        Some(duty @ (Duty::Lifts | Duty::HoldsPeople | Duty::Tows)) => {
            let remedy = "Use a rated and tested part, or have this one designed, rated and proof-tested by a \
                          competent person. Local codes and licensed practice decide.";
            let rule = if duty == Duty::HoldsPeople { RATED_FOR_PEOPLE } else { RATED };
            found.push(rule.at(EVERYWHERE, format!("The piece {}.", duty.name()), remedy.to_owned()));
        }
        Some(Duty::Light) => {}
        None => unrated(plan, bars, found),
    }
}

/// A note where the plan has a hook or a ring and does not say what it is for.
fn unrated(plan: &Plan, bars: &[BarBalance], found: &mut Vec<Finding>) {
    for (index, (bar, balance)) in plan.bars.iter().zip(bars).enumerate() {
        let flat = bar.flat();
        let mut segments = flat.iter().zip(&balance.segments);
        if let Some(at) = segments.position(|(flat, balance)| is_hook_or_ring(flat.segment, balance)) {
            let place = Place { bar: Some(index), segment: Some(at) };
            let message = "The piece has a hook or a ring; the plan does not say what it carries.".to_owned();
            let remedy = "Say what it is for. It must not lift loads, hold people or tow vehicles without a rating.";
            found.push(UNRATED.at(place, message, remedy.to_owned()));
        }
    }
}

fn is_hook_or_ring(segment: &Segment, balance: &SegmentBalance) -> bool {
    let turn = match &segment.bend {
        Some(Bend::Ring { .. }) => return true,
        Some(Bend::Curve { angle: Some(angle), .. }) => angle.radians(),
        Some(Bend::Curve { angle: None, .. }) => {
            balance.derived(SizeName::Angle).and_then(|size| size.radians).unwrap_or(0.0)
        }
        _ => 0.0,
    };
    // A hook turns back by about a half turn; 150° and more is taken as one.
    turn >= PI * 150.0 / 180.0
}
