//! Joints that close a loop of joints.

use super::held::place;
use crate::findings::scene::Rule;
use crate::findings::{Finding, Severity};
use crate::joints::{Joined, links};
use crate::plan::Plan;

const RULE: Rule = Rule {
    id: "joint-loop",
    severity: Severity::Note,
    reason: "Each part is placed by one joint; a joint that closes a loop places nothing, and its ends may miss each other.",
};

pub(super) fn check(plan: &Plan, joints: &[Joined], found: &mut Vec<Finding>) {
    for link in links(joints).into_iter().filter(|link| link.closes) {
        let Some(joined) = joints.get(link.joined) else { continue };
        let (Some(member), Some(joint)) = (joined.members.get(link.to), plan.joints.get(joined.joint)) else {
            continue;
        };
        let title = joint.title(joined.joint);
        let message = format!("“{title}” joins parts that other joints hold together already.");
        let remedy = "Check in the piece view whether it meets, or remove the joint you do not want.".to_owned();
        let finding = RULE.at(place(member.bar, member.segment), message, remedy);
        if !found.contains(&finding) {
            found.push(finding);
        }
    }
}
