//! Collars that no joint names: nothing says what they bind.

use super::held::place;
use crate::findings::scene::Rule;
use crate::findings::{Finding, Severity};
use crate::joints::Joined;
use crate::plan::{Form, JointKind, Plan};

const RULE: Rule = Rule {
    id: "collar-unbound",
    severity: Severity::Note,
    reason: "A collar is cut to the bars that it binds: as long as no joint names them, nothing holds it, and its length cannot be checked.",
};

pub(super) fn check(plan: &Plan, joints: &[Joined], found: &mut Vec<Finding>) {
    let is_collar = |joined: &&Joined| plan.joints.get(joined.joint).is_some_and(|it| it.kind == JointKind::Collar);
    let bound: Vec<(usize, usize)> = joints
        .iter()
        .filter(is_collar)
        .flat_map(|joined| joined.members.iter().map(|member| (member.bar, member.segment)))
        .collect();
    for (index, bar) in plan.bars.iter().enumerate() {
        for (at, flat) in bar.flat().iter().enumerate() {
            if !matches!(flat.segment.form, Form::Collar(_)) || bound.contains(&(index, at)) {
                continue;
            }
            let name = flat.segment.name.trim();
            let what = if name.is_empty() { "A collar".to_owned() } else { format!("“{name}” is a collar that") };
            let message = format!("{what} binds nothing.");
            let remedy = "Add a collar joint that names it and the bars that it binds.".to_owned();
            found.push(RULE.at(place(index, at), message, remedy));
        }
    }
}
