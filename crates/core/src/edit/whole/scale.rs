//! A whole piece so many times as large, its sizes rounded as a shop does.

use crate::edit::Refusal;
use crate::plan::{Bar, Plan, SectionSpec, Segment, SizeName};
use fh_measure::{LengthRange, LengthUnit, MeasureError, WrittenLength};
use std::ops::RangeInclusive;

/// So many times as large a piece may become.
pub const SCALE_RANGE: RangeInclusive<f64> = 0.01..=100.0;

/// The steps of a rule in a unit, in mm, the coarsest first: common practice, no source.
const METRIC: [f64; 3] = [1.0, 0.5, 0.1];
const INCH: [f64; 3] = [25.4 / 16.0, 25.4 / 32.0, 25.4 / 64.0];
/// A size may be put off by this share of it to stand on a coarser step: common practice, no source.
const ROUNDED_BY: f64 = 0.02;

/// The whole plan so many times as large. Angles, turns, counts and shares stay, and so does the order of work; what was logged
/// was logged of the other size, and goes.
pub(super) fn scaled(plan: &Plan, factor: f64) -> Result<Plan, Refusal> {
    if !SCALE_RANGE.contains(&factor) {
        let [least, most] = [SCALE_RANGE.start(), SCALE_RANGE.end()];
        return Err(Refusal::CannotBe(format!("a piece is scaled by a number from {least} to {most}")));
    }
    if factor == 1.0 {
        return Ok(plan.clone());
    }
    let mut next = plan.clone();
    everything(&mut next, factor).map_err(|error| Refusal::CannotBe(error.to_string()))?;
    next.work.log.clear();
    Ok(next)
}

fn everything(plan: &mut Plan, factor: f64) -> Result<(), MeasureError> {
    plan.bars.iter_mut().try_for_each(|bar| bar_scaled(bar, factor))?;
    for joint in &mut plan.joints {
        let members = std::iter::once(&mut joint.fixed).chain(&mut joint.moved);
        members.filter_map(|member| member.at.as_mut()).try_for_each(|at| scale(at, factor))?;
    }
    plan.sizes.iter_mut().try_for_each(|size| scale(&mut size.size, factor))?;
    for step in plan.work.steps.iter_mut().flatten() {
        for target in step.reach.iter_mut().flatten() {
            scale(&mut target.size, factor)?;
        }
    }
    let Some(picture) = &mut plan.underlay else { return Ok(()) };
    let place = picture.at.iter_mut().flat_map(|place| [&mut place.right, &mut place.up]);
    place.chain([&mut picture.distance]).try_for_each(|length| exactly(length, factor))
}

fn bar_scaled(bar: &mut Bar, factor: f64) -> Result<(), MeasureError> {
    stock(&mut bar.stock, factor)?;
    bar.length.iter_mut().try_for_each(|length| scale(length, factor))?;
    bar.segments.iter_mut().try_for_each(|segment| segment_scaled(segment, factor))
}

fn segment_scaled(segment: &mut Segment, factor: f64) -> Result<(), MeasureError> {
    let mut done = Ok(());
    segment.sizes_mut(&mut |name, length| {
        let scaled = match name {
            // Corners lie where they lie to each other, and rows add up: off by a little each, they would not fit any more.
            SizeName::Corner | SizeName::BlankCorner | SizeName::RowStep | SizeName::HoleAcross => {
                exactly(length, factor)
            }
            _ => scale(length, factor),
        };
        if done.is_ok() {
            done = scaled;
        }
    });
    done?;
    segment.ends_at.iter_mut().try_for_each(|mark| scale(mark, factor))
}

/// A bar is bought in whole millimetres or in 1/16 in.
fn stock(section: &mut SectionSpec, factor: f64) -> Result<(), MeasureError> {
    let mut done = Ok(());
    section.lengths_mut(&mut |length| {
        let [step, ..] = steps(length.unit());
        let on_step = ((length.mm() * factor / step).round() * step).max(step);
        match WrittenLength::from_mm(on_step, length.unit(), LengthRange::AboveZero) {
            Ok(rounded) => *length = rounded,
            Err(error) => done = Err(error),
        }
    });
    done
}

fn exactly(length: &mut WrittenLength, factor: f64) -> Result<(), MeasureError> {
    *length = length.scaled(factor)?;
    Ok(())
}

/// A range is scaled as it is: its ends are no sizes to forge to.
fn scale(length: &mut WrittenLength, factor: f64) -> Result<(), MeasureError> {
    let exact = length.scaled(factor)?;
    *length = if exact.is_range() { exact } else { shop_size(&exact)? };
    Ok(())
}

/// A size as a shop writes it: on the coarsest step of a rule that it stands on within 2 %, else on the finest; one that is
/// finer than that stays.
///
/// # Errors
/// Where it cannot be written.
pub fn shop_size(size: &WrittenLength) -> Result<WrittenLength, MeasureError> {
    let mm = size.mm();
    let on = |step: f64| (mm / step).round() * step;
    let steps = steps(size.unit());
    let close = steps.into_iter().map(on).find(|near| (near - mm).abs() <= ROUNDED_BY * mm.abs());
    let [.., finest] = steps;
    match close.unwrap_or_else(|| on(finest)) {
        0.0 => Ok(size.clone()),
        near => WrittenLength::from_mm(near, size.unit(), LengthRange::Any),
    }
}

fn steps(unit: LengthUnit) -> [f64; 3] {
    match unit {
        LengthUnit::Inch | LengthUnit::Foot => INCH,
        _ => METRIC,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::balance::balance;
    use crate::edit::{Edit, History, WholeChange};
    use crate::file;

    const PLAN: &str = r#"{ "firstheat": 1, "units": { "length": "mm", "marks": "1 mm" }, "bars": [{ "name": "hook",
        "stock": { "square": "12 mm" }, "length": "400 mm", "takes_up": "shank", "segments": [
        { "name": "tip", "form": { "taper": { "length": "75 mm", "to": { "round": "4 mm" } } },
          "bend": { "curve": { "angle": "90 deg" } } },
        { "name": "shank", "form": { "drawn": { "length": "1' 2 in", "section": { "round": "9.5 mm" } } } },
        { "name": "end", "form": { "plain": { "length": "30 to 32 mm" } } } ] }],
        "sizes": [{ "overall": { "direction": "along" }, "size": "300 mm" }],
        "work": { "log": [{ "operation": "taper", "parts": ["1"], "heats": 2 }] } }"#;

    fn sizes(plan: &Plan) -> Vec<String> {
        let mut all = Vec::new();
        plan.bars[0].lengths(&mut |length| all.push(length.text().to_owned()));
        all
    }

    #[test]
    fn sizes_stand_on_a_rule_and_the_bar_is_one_that_is_bought() {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        let (next, _) = Edit::Whole(WholeChange::Scaled(1.3)).applied(&plan).unwrap();
        // 15.6 mm of bar is bought as 16; 97.5 and 12.35 mm stand on 98 and 12.5; 14 in are 18.2, on 18 3/16 in.
        let want = ["16 mm", "520 mm", "98 mm", "5.2 mm", "18 3/16 in", "12.5 mm", "39 mm to 41.6 mm"];
        assert_eq!(sizes(&next), want);
        assert_eq!(next.sizes[0].size.text(), "390 mm");
        assert!(next.work.log.is_empty(), "what was logged was logged of the other size");
    }

    #[test]
    fn it_is_one_step_of_undo_and_never_beyond_all_measure() {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        let mut history = History::new(plan.clone());
        history.apply(&Edit::Whole(WholeChange::Scaled(2.0))).unwrap();
        assert!(history.undo() && *history.plan() == plan && !history.can_undo());
        for wrong in [0.0, -1.0, f64::NAN, f64::INFINITY, 101.0] {
            assert!(history.apply(&Edit::Whole(WholeChange::Scaled(wrong))).is_err(), "{wrong}");
        }
        assert_eq!(*history.plan(), plan);
    }

    /// Twice as large in every direction is eight times the metal; nothing has to be rounded.
    #[test]
    fn twice_as_large_is_eight_times_the_metal() {
        let text = PLAN.replace(r#""length": "400 mm", "takes_up": "shank", "#, "");
        let plan = file::read(text.as_bytes()).unwrap();
        let next = WholeChange::Scaled(2.0).changed(&plan).unwrap();
        let [was, now] = [&plan, &next].map(|plan| balance(plan).bars[0].finished_volume);
        assert!(((now / was).value - 8.0).abs() < 1e-9);
    }

    #[test]
    fn a_size_stands_on_the_coarsest_step_that_is_near_enough() {
        let rounded = |text: &str| {
            let size = WrittenLength::parse(text, None, LengthRange::Any).unwrap();
            shop_size(&size).unwrap().text().to_owned()
        };
        for (size, want) in [
            ("97.5 mm", "98 mm"),
            ("12.35 mm", "12.5 mm"),
            ("5.23 mm", "5.2 mm"),
            ("0.04 mm", "0.04 mm"),
            ("3.27 in", "3 1/4 in"),
            ("0.36 in", "23/64 in"),
            ("-97.5 mm", "-98 mm"),
        ] {
            assert_eq!(rounded(size), want, "{size}");
        }
    }
}
