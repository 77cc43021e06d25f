//! Collars: the inside of the collar against the bundle that it holds.

use super::held::{Held, Part};
use crate::findings::scene::Rule;
use crate::findings::{Finding, Severity, is_over, is_under};
use crate::forms;
use crate::joints::Role;
use crate::plan::{Form, JointKind};
use std::f64::consts::{FRAC_1_SQRT_2, FRAC_PI_2, PI};

const SMALL: Rule = Rule {
    id: "collar-bundle",
    severity: Severity::Stop,
    reason: "A collar that is too small does not close round its bundle.",
};

const LOOSE: Rule = Rule {
    id: "collar-loose",
    severity: Severity::Warning,
    reason: "A collar holds because it shrinks on the bundle; it will not shrink that far.",
};

pub(super) fn check(held: &Held<'_>, found: &mut Vec<Finding>) {
    if held.joined.kind != JointKind::Collar {
        return;
    }
    let Some(collar) = held.first(Role::Collar) else { return };
    let Form::Collar(forms::Collar { width, height, .. }) = &collar.segment.form else { return };
    let Some([wide, high]) = size(held) else { return };
    // A collar that is turned on its side has its width where its height was.
    let is_turned = collar.member.turn.sin().abs() > FRAC_1_SQRT_2;
    let (wide, high) = if is_turned { (high, wide) } else { (wide, high) };
    let (inside_wide, inside_high) = (width.mm(), height.mm());
    let play = [inside_wide - wide, inside_high - high];
    let message = |what: &str| {
        let [inside_wide, wide] = held.apart([inside_wide, wide]);
        let [inside_high, high] = held.apart([inside_high, high]);
        format!(
            "“{}”: “{}” is {inside_wide} × {inside_high} inside, and its bundle is {wide} × {high}; {what}",
            held.title(),
            collar.name()
        )
    };
    let remedy = || format!("Make it {} × {} inside.", held.millimeters(wide), held.millimeters(high));
    if play.iter().any(|play| is_under(*play, 0.0)) {
        found.push(SMALL.at(collar.place(), message("it does not go round."), remedy()));
    } else if play.iter().any(|play| is_over(*play, held.play())) {
        let most = format!("{} of play is the most.", held.millimeters(held.play()));
        found.push(LOOSE.at(collar.place(), message(&most), remedy()));
    }
}

/// The size of the bundle over all, in mm: from side to side and from top to bottom of the member that stays.
///
/// None where bars lie across each other.
fn size(held: &Held<'_>) -> Option<[f64; 2]> {
    let bars: Vec<&Part<'_>> = held.parts.iter().filter(|part| part.member.role != Role::Collar).collect();
    let out = bars.first()?.side()?;
    let mut offset = 0.0;
    let mut extents = [[0.0_f64; 2]; 2];
    for (index, bar) in bars.iter().enumerate() {
        let side = bar.side()?;
        let (own, mirrored) = if index == 0 { (out, false) } else { (side, is_turned_round(bar)?) };
        // The direction of a moved bar's side is opposite to the side that it lies on.
        let facing = if index == 0 { out } else { out + PI };
        let reach = |world: f64| {
            let by = if mirrored { facing - world } else { world - facing };
            bar.reach_mm(own + by)
        };
        if index > 0 {
            offset += reach(out + PI);
        }
        for (axis, direction) in [FRAC_PI_2, 0.0].into_iter().enumerate() {
            let middle = offset * (out - direction).cos();
            extents[axis][0] = extents[axis][0].max(middle + reach(direction));
            extents[axis][1] = extents[axis][1].max(reach(direction + PI) - middle);
        }
        offset += reach(out);
    }
    Some(extents.map(|[high, low]| high + low))
}

/// Whether a bar runs the other way; none where it lies across.
fn is_turned_round(bar: &Part<'_>) -> Option<bool> {
    let turn = bar.member.turn.rem_euclid(2.0 * PI);
    let near = |angle: f64| (turn - angle).abs() < 1e-6;
    if near(0.0) || near(2.0 * PI) { Some(false) } else { near(PI).then_some(true) }
}
