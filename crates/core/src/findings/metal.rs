//! What the metal of a plan does not stand: a fire weld, a blow in the wrong heat, the fire at all.

use super::scene::Rule;
use super::{Finding, Place, Severity};
use crate::describe::upper_first;
use crate::material::Material;
use crate::plan::{Deed, Form, Joint, JointKind, Operation, Plan, Segment};

/// The ids of these findings.
pub(super) const IDS: [&str; 5] = ["weld-metal", "metal-not-hot", "metal-brittle", "metal-no-glow", "metal-unclear"];

const NO_WELD: Rule = Rule {
    id: "weld-metal",
    severity: Severity::Stop,
    reason: "It burns, crumbles or melts before it would weld, and its skin keeps it from joining.",
};

const HARD_WELD: Rule = Rule {
    id: "weld-metal",
    severity: Severity::Warning,
    reason: "A weld that looks sound may hold in a few spots only.",
};

const NOT_HOT: Rule =
    Rule { id: "metal-not-hot", severity: Severity::Stop, reason: "It breaks where it is struck or bent hot." };

const BREAKS: Rule = Rule {
    id: "metal-brittle",
    severity: Severity::Warning,
    reason: "Pieces fly if it breaks under the hammer, and the eye can be 50 °C out.",
};

const BRITTLE: Rule = Rule { severity: Severity::Note, reason: "The cracks may not show until later.", ..BREAKS };

const NO_GLOW: Rule = Rule {
    id: "metal-no-glow",
    severity: Severity::Warning,
    reason: "You cannot see how hot it is: it melts in the fire, or burns a hand.",
};

const UNCLEAR: Rule =
    Rule { id: "metal-unclear", severity: Severity::Warning, reason: "A heat that suits one ruins the other." };

const EVERYWHERE: Place = Place { bar: None, segment: None };

pub(super) fn check(plan: &Plan, found: &mut Vec<Finding>) {
    let metal = plan.material();
    welds(plan, metal, found);
    if !is_worked(plan) {
        return;
    }
    if metal.forging.is_none() {
        let remedy = "Work it cold and soften it between times, or choose silicon bronze or another metal.";
        let message = format!("{} is not forged hot.", upper_first(metal.name));
        found.push(NOT_HOT.at(EVERYWHERE, message, remedy.to_owned()));
    }
    brittle(metal, found);
    if !metal.glows {
        let remedy = "Go by the char of a pine stick, a crayon or a thermometer; mark the hot piece.";
        let message = format!("{} shows no colour before it melts.", upper_first(metal.name));
        found.push(NO_GLOW.at(EVERYWHERE, message, remedy.to_owned()));
    }
    if plan.material_name() != metal.name {
        let message = format!("“{}” does not say which metal; {} is assumed.", plan.material_name(), metal.name);
        let remedy = "Ask what the bar is, and choose it by its full name.";
        found.push(UNCLEAR.at(EVERYWHERE, message, remedy.to_owned()));
    }
}

/// Whether anything of the plan is forged or bent.
fn is_worked(plan: &Plan) -> bool {
    let is_worked = |segment: &Segment| {
        segment.bend.is_some()
            || !matches!(segment.form, Form::Plain(_) | Form::Trim(_) | Form::Hold(_) | Form::Open(_))
    };
    plan.bars.iter().flat_map(|bar| bar.flat()).any(|flat| is_worked(flat.segment))
}

/// The ranges below its forging heat in which the metal must not be struck.
fn brittle(metal: &Material, found: &mut Vec<Finding>) {
    let Some(heat) = metal.forging else { return };
    for range in metal.own_brittle().filter(|range| range.to_celsius < heat.finish_celsius) {
        let rule = if range.breaks { BREAKS } else { BRITTLE };
        let message = format!(
            "{} must not be struck or bent between {:.0} and {:.0} °C: {}.",
            upper_first(metal.name),
            range.from_celsius,
            range.to_celsius,
            range.why
        );
        let remedy = format!("Stop at {:.0} °C, and heat it again.", heat.light_celsius);
        found.push(rule.at(EVERYWHERE, message, remedy));
    }
}

/// Whatever asks for a fire weld: parts, joints, and the smith's own steps.
fn welds(plan: &Plan, metal: &Material, found: &mut Vec<Finding>) {
    let (rule, said, remedy) = match metal.weld.map(|weld| weld.hard) {
        Some(None) => return,
        None => (NO_WELD, format!("{} cannot be welded in the fire", metal.name), metal.instead_of_weld.to_owned()),
        Some(Some(hard)) => {
            let remedy = "Rivet it or bind it with a collar, or weld a trial piece and break it.";
            (HARD_WELD, format!("{} is hard to weld in the fire", metal.name), format!("{hard} {remedy}"))
        }
    };
    let mut tell = |place: Place, what: String| found.push(rule.at(place, format!("{what}: {said}."), remedy.clone()));
    for (bar, own) in plan.bars.iter().enumerate() {
        let flat = own.flat();
        let parts = flat.iter().enumerate().filter(|(_, flat)| matches!(flat.segment.form, Form::Weld(_)));
        for (at, _) in parts {
            tell(Place { bar: Some(bar), segment: Some(at) }, "A fire weld is planned".to_owned());
        }
    }
    for (number, joint) in plan.joints.iter().enumerate().filter(|(_, joint)| joint.kind == JointKind::Weld) {
        tell(place_of(plan, joint), format!("Joint {} is a fire weld", number + 1));
    }
    for (number, step) in plan.work.steps.iter().flatten().enumerate() {
        if step.work.iter().any(|deed| is_new_weld(plan, step.bar_index(), deed)) {
            let bar = Some(step.bar_index()).filter(|bar| *bar < plan.bars.len());
            tell(Place { bar, segment: None }, format!("Step {} is a fire weld", number + 1));
        }
    }
}

/// Where a joint is: at the part that stays.
fn place_of(plan: &Plan, joint: &Joint) -> Place {
    let bar = plan.bars.iter().position(|bar| bar.name == joint.fixed.bar);
    let segment =
        bar.and_then(|bar| plan.bars[bar].flat().iter().position(|flat| flat.segment.name == joint.fixed.segment));
    Place { bar, segment }
}

/// Whether a step welds what neither a part nor a joint of the plan tells of.
fn is_new_weld(plan: &Plan, bar: usize, deed: &Deed) -> bool {
    if !matches!(deed.operation, Operation::Weld | Operation::Scarf) {
        return false;
    }
    let index = |joint: u32| joint.saturating_sub(1) as usize;
    let joint = deed.joint.and_then(|joint| plan.joints.get(index(joint)));
    let part = |path: &String| {
        let bar = plan.bars.get(bar)?;
        bar.segment(bar.find_path(path)?)
    };
    let is_weld = |path: &String| part(path).is_some_and(|segment| matches!(segment.form, Form::Weld(_)));
    let is_told = joint.is_some_and(|joint| joint.kind == JointKind::Weld)
        || (!deed.parts.is_empty() && deed.parts.iter().all(is_weld));
    !is_told
}
