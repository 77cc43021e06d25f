//! Bars that run into themselves in the finished piece: a ring through its own shank, turns that lie in each other.

use crate::job::legs::{Posed, are_looked_at};
use crate::job::site::Site;
use fh_core::findings::{Finding, Place, Severity};
use fh_core::metal::Bent;
use fh_core::plan::{Plan, PlanUnit};
use fh_measure::format_decimal;
use std::collections::BTreeMap;

/// The id of these findings.
pub const INTO_ITSELF: &str = "into-itself";

const REASON: &str =
    "Two parts cannot be in one place: the bend stops where they meet, and the piece comes out another.";

/// Where the bars of a plan run into themselves: of each part that runs in, where it does so deepest. Places that touch are
/// none.
pub(crate) fn into_itself(plan: &Plan, sites: &[Site<'_>]) -> Vec<Finding> {
    let of_bar = |site: &Site<'_>| -> Vec<Finding> {
        let mut deepest: BTreeMap<usize, (usize, f64)> = BTreeMap::new();
        for (first, second, depth_mm) in Posed::new(site, site.balance).overlaps_along() {
            // The later bend is the one that runs into what is there.
            let (bends, other) = if bent(site, second).is_some() { (second, first) } else { (first, second) };
            let known = deepest.entry(bends).or_insert((other, depth_mm));
            if depth_mm > known.1 {
                *known = (other, depth_mm);
            }
        }
        deepest.into_iter().map(|(bends, (other, depth_mm))| finding(plan, site, [bends, other], depth_mm)).collect()
    };
    sites.iter().filter(|site| are_looked_at(site)).flat_map(of_bar).collect()
}

fn bent(site: &Site<'_>, at: usize) -> Option<Bent> {
    site.part(at).and_then(|part| part.balance.bent)
}

fn finding(plan: &Plan, site: &Site<'_>, [bends, other]: [usize; 2], depth_mm: f64) -> Finding {
    let depth = format_decimal(
        depth_mm,
        plan.units.length.length_unit(),
        if plan.units.length == PlanUnit::Inch { 2 } else { 1 },
    );
    let name = site.name(bends);
    let message = if bends == other {
        format!("“{name}” runs {depth} deep into itself.")
    } else {
        format!("“{name}” runs {depth} deep into “{}” of the same bar.", site.name(other))
    };
    let place = Place { bar: Some(site.index), segment: Some(bends) };
    Finding {
        id: INTO_ITSELF,
        severity: Severity::Warning,
        place,
        message,
        reason: REASON,
        remedy: remedy(bent(site, bends)),
    }
}

/// What to do, by the bend that runs in.
fn remedy(bent: Option<Bent>) -> String {
    let words = match bent {
        Some(Bent::Ring { .. }) => {
            "Set the neck back the other way before the ring, so that its middle is in line with the bar, and stop it where it \
             meets the neck; or bend it less far round."
        }
        Some(Bent::Scroll { .. }) => "Give the turns more room, take fewer of them, or let it run thinner.",
        _ => "Bend it less, or on a larger radius, or lead it past on one side.",
    };
    words.to_owned()
}
