//! Shapes on the way: sizes that contradict the metal, and bends that leave a gall where they are opened again.

use super::scene::{Rule, Scene, Seen};
use super::{Check, Finding, Severity, is_under};
use crate::balance::{ViaBalance, as_by_then, opens_again};
use crate::describe::{angle_words, form_words};
use crate::metal::{Bent, Shape, in_mm, mm3};

pub(super) const CHECK: Check = Check {
    ids: &["way-unsettled", "way-metal", "way-bend-galls"],
    summary: "Shapes on the way: whether their metal adds up, and whether a bend opens again without a gall.",
    run,
};

const UNSETTLED: Rule = Rule {
    id: "way-unsettled",
    severity: Severity::Warning,
    reason: "A shape on the way that cannot be worked out has no card and no picture.",
};

const METAL: Rule = Rule {
    id: "way-metal",
    severity: Severity::Warning,
    reason: "A shape on the way holds the metal of the finished part with all that is trimmed and scaled later.",
};

const GALLS: Rule = Rule {
    id: "way-bend-galls",
    severity: Severity::Warning,
    reason: "Metal that is bent sharply folds inside, and the fold stays as a gall when the bend is opened again.",
};

/// By more than this share too much or too little metal is told; the trade does not weigh so finely: common practice, no source.
const OFF: f64 = 0.03;

/// A bend that is opened again has an inside radius of at least so many thicknesses: common practice, no source.
const OPENS: f64 = 2.0;

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        for (to, via) in seen.balance.via.iter().enumerate() {
            found.extend(unsettled(scene, &seen, to, via));
            found.extend(metal(scene, &seen, to, via));
            found.extend(galls(scene, &seen, to, via));
        }
    }
}

/// What a shape on the way is called: `“leaf”, shape 2 on the way`.
fn named(scene: &Scene<'_>, seen: &Seen<'_>, to: usize) -> String {
    format!("“{}”, shape {} on the way", scene.name(seen.at), to + 1)
}

fn unsettled(scene: &Scene<'_>, seen: &Seen<'_>, to: usize, via: &ViaBalance) -> Option<Finding> {
    via.trouble?;
    let message = format!("{}: its sizes do not settle it.", named(scene, seen, to));
    let remedy =
        "Leave one of its sizes out, which follows from the metal, and of a bend give the angle or the radius.";
    Some(UNSETTLED.at(scene.place(Some(seen.at)), message, remedy.to_owned()))
}

fn metal(scene: &Scene<'_>, seen: &Seen<'_>, to: usize, via: &ViaBalance) -> Option<Finding> {
    let (metal, held) = ((via.metal / mm3(1.0)).value, (via.held / mm3(1.0)).value);
    let left = metal * (1.0 - seen.balance.scale_share);
    // A shape with no form of its own before it is the finished one.
    let written = seen.segment.via.iter().take(to + 1).any(|via| via.form.is_some());
    let repeats = seen.segment.via.get(to).is_some_and(|via| via.form.is_none());
    let is_off = held < left * (1.0 - OFF) || held > metal * (1.0 + OFF);
    let shape = via.shape.as_ref().filter(|_| via.trouble.is_none() && written && !repeats && is_off)?;
    let length = in_mm(shape.length());
    let fitting = length * metal / held.max(1e-9);
    let (own, _) = as_by_then(seen.segment, seen.balance, to, scene.plan.units.length)?;
    let [now, fits] = scene.apart([length, fitting]);
    let (less, more) = if held > metal { ("too little", "short") } else { ("too much", "over") };
    let share = (held / metal - 1.0).abs() * 100.0;
    let message =
        format!("{}, {}: there is {less} metal for it, {share:.0} % {more}.", named(scene, seen, to), form_words(&own));
    let even = matches!(shape, Shape::Prism { .. } | Shape::Taper { .. });
    let remedy = if even {
        format!("Leave its length out: it comes to {fits}, not {now}.")
    } else {
        "Say with “gives” which of its sizes follows from the metal.".to_owned()
    };
    Some(METAL.at(scene.place(Some(seen.at)), message, remedy))
}

fn galls(scene: &Scene<'_>, seen: &Seen<'_>, to: usize, via: &ViaBalance) -> Option<Finding> {
    let (radius, angle, side) = match via.bent? {
        Bent::Curve { angle, inside_radius, side } => (in_mm(inside_radius), angle, side),
        Bent::Ring { inside_diameter, sweep, side } => (in_mm(inside_diameter) / 2.0, sweep, side),
        _ => return None,
    };
    let shape = via.shape.as_ref().filter(|_| opens_again(seen.balance, to))?;
    let (start, end) = shape.inside_to_centroid(side);
    let thick = start + end;
    let least = OPENS * thick;
    if !is_under(radius, least) {
        return None;
    }
    let [now, needed] = scene.apart([radius, least]);
    let message = format!(
        "{}: bent to an inside radius of {now} and opened again; metal {} thick asks for {needed} or more.",
        named(scene, seen, to),
        scene.millimeters(thick)
    );
    let gentle = in_mm(shape.length()) / (least + thick / 2.0);
    let remedy = if gentle < angle {
        let most = angle_words((gentle.to_degrees() * 2.0).floor().to_radians() / 2.0);
        format!("Bend it over {needed} or more: on its length by {most} at most.")
    } else {
        format!("Bend it over a radius of {needed} or more.")
    };
    Some(GALLS.at(scene.place(Some(seen.at)), message, remedy))
}
