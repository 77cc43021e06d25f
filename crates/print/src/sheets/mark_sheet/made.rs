//! What the table tells of a block beside its form and its bend: where the tool is set, and by which rule.

use super::slits::hole_middle_mm;
use fh_core::balance::SegmentBalance;
use fh_core::describe::side_name;
use fh_core::metal::{Bent, BranchSize, Shape, SplitSize};
use fh_core::plan::{Form, Plan, Segment};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// Lines for holes, twists, collars and slits; none for other blocks.
pub(super) fn made_lines(plan: &Plan, segment: &Segment, balance: &SegmentBalance) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(middle) = hole_middle_mm(balance) {
        lines.push(format!("middle of the hole {} from the datum, before forging", mark_words(plan, middle)));
    }
    if let Some(Bent::Twist { .. }) = balance.bent {
        let [from, to] = [balance.mark_start_shop, balance.mark_end_shop].map(|mark| mark.text());
        lines.push(format!("mark both ends of the twist, {from} and {to}, so that they show hot"));
    }
    if let Form::Collar { rule, .. } = &segment.form {
        let rule = rule.or(plan.practice.collar).unwrap_or(fh_core::plan::CollarRule::Butted);
        lines.push(format!("length by the rule {}", rule.name()));
    }
    if let Some(Shape::Split(split)) = &balance.shape {
        lines.extend(slit_line(plan, split));
    }
    lines
}

/// From which edge the cuts are measured.
fn slit_line(plan: &Plan, split: &SplitSize) -> Option<String> {
    let edge = match side_name(split.side.to_degrees().rem_euclid(360.0)).as_str() {
        "up" => "upper edge".to_owned(),
        "down" => "lower edge".to_owned(),
        "away" => "edge away from you".to_owned(),
        "toward you" => "edge toward you".to_owned(),
        other => format!("edge {other}"),
    };
    let cuts: Vec<String> = split.cuts.iter().map(|cut| size_words(plan, *cut)).collect();
    (!cuts.is_empty()).then(|| format!("cut {} from the {edge}", cuts.join(" and ")))
}

/// What a branch is as cut, and as forged: `10 mm wide as cut, 126 mm forged`.
pub(super) fn branch_words(plan: &Plan, branch: &BranchSize) -> String {
    format!("{} as cut, {} forged", size_words(plan, branch.raw_width), size_words(plan, branch.forged_length))
}

/// A size that a tool is set to, to the fineness that sizes are told in.
pub(super) fn size_words(plan: &Plan, size: Length) -> String {
    use fh_measure::{Rounding, format_length};
    let unit = plan.units.length;
    let rounding = match unit {
        fh_core::plan::PlanUnit::Inch => Rounding::SIXTY_FOURTH_INCH,
        fh_core::plan::PlanUnit::Millimeter => Rounding::TENTH_MILLIMETER,
    };
    format_length(size.get::<millimeter>(), unit.length_unit(), rounding)
}

fn mark_words(plan: &Plan, mm: f64) -> String {
    plan.units.marks.round(mm).text()
}
