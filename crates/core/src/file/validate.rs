//! What the types of a plan cannot say of themselves: checked after reading, each fault with its key.
//!
//! Only what makes a file no plan is refused here. What cannot be forged is still a plan; the balance says so in its findings.

use super::fault::{Checked, refuse};
use super::key_path::KeyPath;
use super::wording::shortened;
use crate::material;
use crate::motif::Motif;
use crate::plan::{Bar, Bend, Limits, Plan, Segment, Underlay};
use fh_measure::WrittenAngle;

mod asked;
mod dressed;
mod joints;
mod marks;
mod repeats;
mod via;
mod work;

/// Checks a motif: its stock and its segments are those of a bar.
pub(super) fn validate_motif(motif: &Motif) -> Checked {
    let top = KeyPath::default();
    if motif.name.trim().is_empty() {
        return refuse(top.key("name"), "a kept part must have a name");
    }
    if motif.segments.is_empty() {
        return refuse(top.key("segments"), "a kept part must have at least one part in it");
    }
    for (index, segment) in motif.segments.iter().enumerate() {
        let at = top.key("segments").index(index);
        marks::refuse_mark(segment, "a kept part cannot have fixed marks: they belong to one bar", &at)?;
    }
    check_bar(&motif.bar(), &top)
}

/// Checks a whole plan.
pub(super) fn validate(plan: &Plan) -> Checked {
    let top = KeyPath::default();
    if let Some(name) = &plan.material {
        check_material(name, &top)?;
    }
    check_limits(&plan.limits, &top.key("limits"))?;
    if let Some(underlay) = &plan.underlay {
        check_underlay(underlay, &top.key("sketch"))?;
    }
    let bars = top.key("bars");
    if plan.bars.is_empty() {
        return refuse(bars, "a plan has at least one bar; this one has none");
    }
    plan.bars.iter().enumerate().try_for_each(|(index, bar)| check_bar(bar, &bars.index(index)))?;
    joints::check_joints(&plan.joints, &top.key("joints"))?;
    asked::check_sizes(&plan.sizes, &top.key("sizes"))?;
    work::check_work(&plan.work, &top.key("work"))
}

/// Its two points are places in the picture, and not one and the same.
fn check_underlay(underlay: &Underlay, at: &KeyPath) -> Checked {
    if underlay.file.trim().is_empty() {
        return refuse(at.key("file"), "the file of the picture is not named");
    }
    for (key, point) in [("from", underlay.from), ("to", underlay.to)] {
        if let Some(share) = point.into_iter().find(|share| !(0.0..=1.0).contains(share)) {
            return refuse(
                at.key(key),
                format!("{share} was found, but a place in the picture is a share from 0 to 1"),
            );
        }
    }
    if underlay.from == underlay.to {
        return refuse(at.key("to"), "the two points are one and the same; no distance lies between them");
    }
    Ok(())
}

fn check_material(name: &str, at: &KeyPath) -> Checked {
    if material::find(name).is_some() {
        return Ok(());
    }
    let known: Vec<_> = material::ALL.iter().map(|material| format!("\"{}\"", material.name)).collect();
    refuse(
        at.key("material"),
        format!("there is no material \"{}\" in the table; it has {}", shortened(name), known.join(", ")),
    )
}

fn check_limits(limits: &Limits, at: &KeyPath) -> Checked {
    let counts: [(&str, Option<f64>); 5] = [
        ("step_to_radius", limits.step_to_radius),
        ("upset_likely", limits.upset_likely),
        ("upset_sure", limits.upset_sure),
        ("upset_stage", limits.upset_stage),
        ("twist_stretch", limits.twist_stretch),
    ];
    for (key, value) in counts {
        if let Some(value) = value.filter(|value| !value.is_finite() || *value <= 0.0) {
            return refuse(at.key(key), format!("{value} was found, but a limit is above 0"));
        }
    }
    Ok(())
}

fn check_bar(bar: &Bar, at: &KeyPath) -> Checked {
    if bar.count == Some(0) {
        return refuse(at.key("count"), "0 pieces were read, but at least 1 is made");
    }
    if !bar.stock.kind().is_stock_shape() {
        let message = format!(
            "no bar has the section \"{}\"; name its own, for example {{ \"square\": \"12 mm\" }}",
            bar.stock.kind().name()
        );
        return refuse(at.key("stock"), message);
    }
    let segments = at.key("segments");
    let mut each = bar.segments.iter().enumerate();
    each.try_for_each(|(index, segment)| check_segment(segment, index == 0, &segments.index(index)))?;
    marks::check_rising(bar, &segments)?;
    marks::check_open(bar, &segments)
}

/// Checks one segment; `first` tells that none lies before it.
fn check_segment(segment: &Segment, first: bool, at: &KeyPath) -> Checked {
    let form = at.key("form").key(segment.form.kind().name());
    segment.form.one().check(first, &form)?;
    for (index, branch) in segment.form.branches().iter().enumerate() {
        let segments = form.key("branches").index(index).key("segments");
        let mut each = branch.segments.iter().enumerate();
        each.try_for_each(|(place, segment)| {
            let at = segments.index(place);
            marks::refuse_mark(segment, "a fixed mark lies on the bar itself, not in a branch", &at)?;
            check_segment(segment, place == 0, &at)
        })?;
    }
    repeats::check_repeats(&segment.repeats, &at.key("repeats"))?;
    dressed::check_dressed(segment, &at.key("dressed"))?;
    via::check_via(segment, first, &at.key("via"))?;
    segment.bend.as_ref().map_or(Ok(()), |bend| check_bend(bend, &at.key("bend").key(bend.kind().name())))
}

fn check_bend(bend: &Bend, at: &KeyPath) -> Checked {
    let (key, turned) = match bend {
        Bend::Curve { angle, .. } => ("angle", angle.as_ref()),
        Bend::Ring { sweep, .. } => ("sweep", sweep.as_ref()),
        Bend::Corner { angle, .. } => ("angle", Some(angle)),
        Bend::Socket { sweep, .. } => ("sweep", sweep.as_ref()),
        Bend::Scroll { turns, .. } => return check_turns(turns.filter(|turns| *turns <= 0.0), at),
        Bend::Twist { turns, .. } => return check_turns(Some(*turns).filter(|turns| *turns == 0.0), at),
    };
    match turned {
        Some(angle) if !is_above_zero(angle) => {
            let message =
                format!("{} was found, but a bend turns by more than 0; \"side\" says which way", angle.text());
            refuse(at.key(key), message)
        }
        _ => Ok(()),
    }
}

/// A count of turns that says nothing.
fn check_turns(wrong: Option<f64>, at: &KeyPath) -> Checked {
    match wrong {
        Some(turns) => refuse(at.key("turns"), format!("{turns} turns were read, which isn't a bend")),
        None => Ok(()),
    }
}

fn is_above_zero(angle: &WrittenAngle) -> bool {
    angle.radians() > 0.0
}
