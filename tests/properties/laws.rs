//! The laws that every balance keeps.

use crate::properties::cases;
use crate::properties::plans::plan;
use crate::properties::sizes::Sizes;
use fh_core::balance::{BarBalance, SegmentBalance, balance};
use fh_core::findings::Finding;
use fh_core::metal::{Shape, View};
use fh_core::plan::{Chain, Plan};
use proptest::prelude::*;
use tests::{mm, mm2, mm3};
use uom::si::f64::Length;

/// Metal in is metal out, to this share.
const KEPT: f64 = 1e-9;
/// A mark beyond this many millimetres (a thousand kilometres) is rounded no more.
const MOST_MARK: f64 = 1e9;

/// Checks a plan's balance against every law.
pub(crate) fn check(plan: &Plan) -> Result<(), TestCaseError> {
    let balance = balance(plan);
    prop_assert_eq!(balance.bars.len(), plan.bars.len());
    for (bar, balanced) in plan.bars.iter().zip(&balance.bars) {
        prop_assert_eq!(balanced.segments.len(), bar.count_segments());
        metal_is_kept(balanced)?;
        marks_run_forward(balanced)?;
        branches_share_their_split(balanced)?;
        marks_are_rounded_to_half_a_step(balanced, plan.units.marks.step_mm())?;
        if bar.length.is_none() {
            nothing_is_cut_short(balanced, plan.units.marks.step_mm())?;
        }
        numbers_are_numbers(balanced)?;
    }
    for finding in &balance.findings {
        words_are_words(finding)?;
    }
    Ok(())
}

/// Σ (finished + trimmed - missing of a blank) / (1 - scale) = the stock's area × the last mark; of a split, what its branches take and its root loses.
fn metal_is_kept(bar: &BarBalance) -> Result<(), TestCaseError> {
    let taken = |segment: &SegmentBalance| match &segment.shape {
        Some(Shape::Split(split)) => mm3(split.lost),
        _ => {
            let held = segment.finished_volume + segment.trimmed_volume - segment.missing_volume;
            mm3(held) / (1.0 - segment.scale_share)
        }
    };
    let used: f64 = bar.segments.iter().map(taken).sum();
    let given = mm2(bar.stock_area) * mm(bar.last_mark());
    // What is missing of a blank is no metal of the bar; where it is far more than that, it takes the last figures with it.
    let missing: f64 = bar.segments.iter().map(|segment| mm3(segment.missing_volume)).sum();
    prop_assert!((used - given).abs() <= KEPT * used.max(given).max(missing), "{} of {}", used, given);
    Ok(())
}

/// The same but for the last figures.
fn close(got: f64, want: f64) -> bool {
    (got - want).abs() <= 1e-12 * want
}

/// In each chain one segment ends where the next begins; the bar begins at its datum end.
fn marks_run_forward(bar: &BarBalance) -> Result<(), TestCaseError> {
    let mut ends = vec![(Chain::Bar, 0.0, 0.0)];
    for segment in &bar.segments {
        prop_assert!(segment.mark_end >= segment.mark_start);
        let now = (segment.chain, mm(segment.mark_end), mm(segment.forged_start + segment.forged_length));
        match ends.iter_mut().find(|(chain, ..)| *chain == segment.chain) {
            Some(end) => {
                prop_assert!(close(mm(segment.mark_start), end.1));
                prop_assert!(close(mm(segment.forged_start), end.2));
                *end = now;
            }
            None => ends.push(now),
        }
    }
    Ok(())
}

/// The branches share the section that is cut, each has its metal's length of slit, and a split holds what they hold.
fn branches_share_their_split(bar: &BarBalance) -> Result<(), TestCaseError> {
    for (split, of_split) in bar.segments.iter().enumerate() {
        let Some(Shape::Split(size)) = &of_split.shape else { continue };
        let shares: f64 = size.branches.iter().map(|branch| branch.share).sum();
        prop_assert!((shares - 1.0).abs() < 1e-12, "{}", shares);
        let across = mm(size.stock.section().extent(std::f64::consts::FRAC_PI_2 - size.side));
        let stands_in_it = |cut: f64| (0.0..=across * (1.0 + KEPT)).contains(&cut);
        prop_assert!(size.cuts.iter().all(|cut| stands_in_it(mm(*cut))), "{:?} of {}", size.cuts, across);
        let of = |branch: usize| {
            let chain = Chain::Branch { split, branch };
            bar.segments.iter().filter(move |segment| segment.chain == chain)
        };
        let branches = 0..size.branches.len();
        let holds_metal = |branch: &usize| size.branches[*branch].stock_length > Length::default();
        for branch in branches.clone().filter(holds_metal) {
            let along: f64 = of(branch).map(|segment| mm(segment.stock_length)).sum();
            let whole = mm(of_split.stock_length) * mm(size.slit) / mm(size.stock_length);
            prop_assert!((along - whole).abs() <= KEPT * whole, "{} of {}", along, whole);
        }
        let held: f64 = branches.flat_map(of).map(|segment| mm3(segment.finished_volume)).sum();
        let whole = mm3(of_split.finished_volume);
        prop_assert!((held - whole).abs() <= KEPT * whole, "{} of {}", held, whole);
    }
    Ok(())
}

/// The last mark, where the bar is cut, lies a step higher at most, and never lower.
fn nothing_is_cut_short(bar: &BarBalance, step: f64) -> Result<(), TestCaseError> {
    let Some((_, last)) = bar.whole().last().filter(|(_, last)| mm(last.mark_end) < MOST_MARK) else { return Ok(()) };
    let slack = 0.050_001 + mm(last.mark_end) * 1e-15;
    let up = last.mark_end_shop.mm() - mm(last.mark_end);
    prop_assert!(up >= -slack && up < step + slack, "{} of a step of {}", up, step);
    Ok(())
}

/// All but the last.
fn marks_are_rounded_to_half_a_step(bar: &BarBalance, step: f64) -> Result<(), TestCaseError> {
    let last = bar.whole().last().map(|(index, _)| index);
    for (index, segment) in bar.segments.iter().enumerate().filter(|(_, segment)| mm(segment.mark_end) < MOST_MARK) {
        if Some(index) == last {
            continue;
        }
        let error = mm(segment.rounding_error());
        prop_assert!(error <= step * 0.500_001 + mm(segment.mark_end) * 1e-15, "{} of a step of {}", error, step);
        prop_assert!(bar.largest_rounding_error >= segment.rounding_error());
    }
    Ok(())
}

/// Nothing is below 0, without end or no number.
fn numbers_are_numbers(bar: &BarBalance) -> Result<(), TestCaseError> {
    let sound = |what: &str, value: f64| {
        prop_assert!(value.is_finite() && value >= 0.0, "{}: {}", what, value);
        Ok(())
    };
    sound("stock area", mm2(bar.stock_area))?;
    sound("bar", mm(bar.stock_length))?;
    sound("forged bar", mm(bar.forged_length))?;
    sound("finished mass", bar.finished_mass.value)?;
    sound("mass of the bar", bar.stock_mass.value)?;
    for segment in &bar.segments {
        sound("finished", mm3(segment.finished_volume))?;
        sound("trimmed", mm3(segment.trimmed_volume))?;
        sound("length of bar", mm(segment.stock_length))?;
        sound("forged length", mm(segment.forged_length))?;
        sound("slice", mm2(segment.area_at(0.0)))?;
        sound("slice", mm2(segment.area_at(0.37)))?;
        sound("slice", mm2(segment.area_at(1.0)))?;
        for derived in &segment.derived {
            sound(derived.name.words(), derived.length.map_or(0.0, mm))?;
            sound(derived.name.words(), derived.radians.unwrap_or(0.0))?;
        }
        for [along, across] in segment.silhouette_mm(View::Side).into_iter().chain(segment.silhouette_mm(View::Top)) {
            prop_assert!(along.is_finite() && across.is_finite());
        }
    }
    Ok(())
}

fn words_are_words(finding: &Finding) -> Result<(), TestCaseError> {
    for text in [&finding.message, &finding.remedy] {
        prop_assert!(!text.is_empty());
        prop_assert!(!text.contains("NaN") && !text.contains("inf "), "{}", text);
    }
    prop_assert!(fh_core::findings::ids().any(|id| id == finding.id), "{} is not in the list of ids", finding.id);
    Ok(())
}

proptest! {
    #![proptest_config(cases(400))]

    #[test]
    fn every_plan_keeps_its_metal(plan in plan(Sizes::Usual)) {
        check(&tests::read(&plan.0))?;
    }

    #[test]
    fn absurd_sizes_keep_the_laws_too(plan in plan(Sizes::Absurd)) {
        check(&tests::read(&plan.0))?;
    }
}
