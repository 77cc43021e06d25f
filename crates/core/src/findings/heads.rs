//! Heads: the length that stands out of the hole for a riveted head.

use super::scene::{Rule, Scene, times};
use super::{Check, Finding, Severity, apart, is_over, is_under};
use crate::forms;
use crate::metal::{Shape, View};
use crate::plan::Form;

pub(super) const CHECK: Check = Check {
    ids: &["tenon-head", "rivet-head"],
    summary: "Tenons and rivets with too little or too much metal for their heads.",
    run,
};

const TENON: Rule = Rule {
    id: "tenon-head",
    severity: Severity::Warning,
    reason: "Too little metal makes no head that holds; too much bends over before it spreads.",
};

const RIVET: Rule = Rule { id: "rivet-head", ..TENON };

/// What stands out for a head, in thicknesses: the least that is seen in use (W. L. Ilgen, *Forge Work*, 1912, sec. 82: a swivel
/// pin of 3/8 in with 3/8 in beyond its hole), the usual for a round head, and the most that is in use (1 1/2 to 2 diameters).
const LEAST: f64 = 1.0;
const USUAL: f64 = 1.5;
const MOST: f64 = 2.0;

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        let (rule, allowance) = match &seen.segment.form {
            // A tenon without a head is wedged or pinned.
            Form::Tenon(forms::Tenon { allowance, .. }) if allowance.mm() > 0.0 => (TENON, allowance.mm()),
            Form::Rivet(forms::Rivet { allowance, .. }) => (RIVET, allowance.mm()),
            _ => continue,
        };
        let Shape::Prism { section, .. } = seen.shape else { continue };
        let thickness = section.seen_mm(View::Side).min(section.seen_mm(View::Top));
        let share = allowance / thickness;
        if !is_under(share, LEAST) && !is_over(share, MOST) {
            continue;
        }
        let [share, _] = apart([share, if is_over(share, MOST) { MOST } else { LEAST }], 1, times);
        let message = format!(
            "“{}” has {} for a head, {share} times its thickness; a head takes from {LEAST} to {MOST} times.",
            scene.name(seen.at),
            scene.millimeters(allowance)
        );
        let remedy = format!("Let {} stand out, 1½ thicknesses.", scene.millimeters(USUAL * thickness));
        found.push(rule.at(scene.place(Some(seen.at)), message, remedy));
    }
}
