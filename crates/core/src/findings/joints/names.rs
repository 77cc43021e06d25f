//! Names in joints that are not there, or that two bear.

use crate::findings::scene::Rule;
use crate::findings::{Finding, Place, Severity};
use crate::joints::{Lookup, Missing};
use crate::plan::{Member, Plan};

const UNKNOWN: Rule = Rule {
    id: "joint-unknown",
    severity: Severity::Stop,
    reason: "This joint cannot be worked out; the rest of the plan is.",
};

const TWICE: Rule = Rule {
    id: "joint-name-twice",
    severity: Severity::Warning,
    reason: "A joint finds its parts by their names; of two with one name it takes the first.",
};

pub(super) fn check(plan: &Plan, found: &mut Vec<Finding>) {
    let lookup = Lookup::new(plan);
    for (index, joint) in plan.joints.iter().enumerate() {
        let title = joint.title(index);
        for member in joint.members() {
            if let Err(missing) = lookup.find(member) {
                let (message, remedy) = words(plan, &lookup, member, missing);
                let bar = lookup.bar(&member.bar);
                found.push(UNKNOWN.at(
                    Place { bar, segment: None },
                    format!("“{title}”: {message}"),
                    remedy.to_owned(),
                ));
            }
        }
        for (member, place) in joint.members().filter_map(|member| Some((member, lookup.find(member).ok()?))) {
            if let Some(twice) = lookup.twice(member) {
                let message = format!("“{title}” names “{twice}”, and there are two of that name.");
                let remedy = "Give each a name of its own.".to_owned();
                found.push(TWICE.at(super::held::place(place.bar, place.segment), message, remedy));
            }
        }
    }
    // Joints that name the same part are told once.
    let mut seen = std::collections::HashSet::new();
    found.retain(|finding| finding.id != TWICE.id || seen.insert((finding.place, finding.id)));
}

fn words(plan: &Plan, lookup: &Lookup<'_>, member: &Member, missing: Missing) -> (String, &'static str) {
    match missing {
        Missing::Bar => (format!("no bar is called “{}”.", member.bar), "Name a bar of the plan, or remove the joint."),
        Missing::Segment => (
            format!("no part of “{}” is called “{}”.", member.bar, member.segment),
            "Name a part of that bar, or remove the joint.",
        ),
        Missing::Copy => {
            let pieces = lookup.bar(&member.bar).and_then(|bar| plan.bars.get(bar)).map_or(1, |bar| bar.pieces());
            let made = if pieces == 1 { "once".to_owned() } else { format!("{pieces} times") };
            let message = format!("“{}” is made {made}; there is no number {}.", member.bar, member.copy_number());
            (message, "Make more of that bar, or name a lower number.")
        }
    }
}
