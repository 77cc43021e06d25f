//! Sizes that agree: every length range that a step tells is what its metal makes of the ends of its section's range, and
//! lies within what the ladder says.

use crate::properties::cases;
use crate::properties::plans::plan;
use crate::properties::sizes::Sizes;
use fh_core::balance::{Balance, balance, ladder};
use fh_core::findings::Severity;
use fh_core::metal::{Runout, SectionSize, Shape};
use fh_core::plan::{Bend, Operation, Plan};
use fh_store::demos::DEMOS;
use fh_work::{Shop, Size, Worked, WorkedStep, work_out};
use proptest::prelude::*;
use std::f64::consts::PI;
use tests::mm;

/// Metal is kept to this share.
const KEPT: f64 = 1e-6;

/// Which end of its range a size stands at.
#[derive(Clone, Copy)]
enum End {
    Low,
    Planned,
    High,
}

fn at(size: &Size, end: End) -> f64 {
    let [low, high] = size.between_mm.unwrap_or([size.mm.unwrap(); 2]);
    match end {
        End::Low => low,
        End::Planned => size.mm.unwrap(),
        End::High => high,
    }
}

fn named<'s>(step: &'s WorkedStep, what: &str) -> Option<&'s Size> {
    step.sizes.iter().find(|size| size.what == what)
}

/// What the sizes of a section make of its area, at one end of their ranges; none of sections that no product tells.
fn area(step: &WorkedStep, section: &SectionSize, place: &str, end: End) -> Option<f64> {
    let size = |what: &str| {
        let what = if place.is_empty() { what.to_owned() } else { format!("{what} {place}") };
        Some(at(named(step, &what)?, end))
    };
    match section {
        SectionSize::Square { edge_radius, .. } if mm(*edge_radius) == 0.0 => Some(size("square")?.powi(2)),
        SectionSize::Round { .. } => Some(PI / 4.0 * size("diameter")?.powi(2)),
        SectionSize::Flat { edge_radius, .. } if mm(*edge_radius) == 0.0 => Some(size("width")? * size("thickness")?),
        _ => None,
    }
}

/// What stays the same times the length, at one end of the ranges: the mean area, or of a plate width and thickness.
fn mean(step: &WorkedStep, shape: &Shape, reversed: bool, end: End) -> Option<f64> {
    match shape {
        Shape::Prism { section, .. } => area(step, section, "", end),
        Shape::Taper { from, to, runout: Runout::Straight, .. } => {
            let [start, last] = if reversed { [to, from] } else { [from, to] };
            let alike = matches!(
                (start, last),
                (SectionSize::Square { .. }, SectionSize::Square { .. })
                    | (SectionSize::Round { .. }, SectionSize::Round { .. })
            );
            let one = area(step, start, "at its start", end).filter(|_| alike)?;
            let other = area(step, last, "at its end", end)?;
            // A frustum: sides in proportion.
            Some((one + (one * other).sqrt() + other) / 3.0)
        }
        Shape::Flag { root, tip, .. } if root == tip => {
            let thickness = at(named(step, "thickness")?, end);
            // What goes thin is wide and long.
            let width = named(step, "width")?;
            let across = match end {
                End::Low => End::High,
                End::Planned => End::Planned,
                End::High => End::Low,
            };
            Some(thickness * at(width, across))
        }
        _ => None,
    }
}

/// Checks every step that forges one part; how many lengths were held against their metal.
fn check(plan: &Plan, balance: &Balance, worked: &Worked) -> Result<usize, TestCaseError> {
    let mut held = 0;
    for step in &worked.steps {
        let forges = |operation| {
            matches!(
                operation,
                Operation::Draw | Operation::Taper | Operation::Spread | Operation::Flatten | Operation::Upset
            )
        };
        if !step.tasks.iter().all(|task| forges(task.operation)) {
            continue;
        }
        let lengths = step.sizes.iter().filter(|size| size.what.starts_with("length") && size.between_mm.is_some());
        for length in lengths {
            let section_follows = step.sizes.iter().any(|size| size.follows.as_deref() == Some("the length"));
            prop_assert!(length.follows.is_some() || section_follows, "{:?} of {}", length, step.title);
        }
        let parts = step.parts();
        let (Some(bar), [part]) = (step.bar, parts.as_slice()) else { continue };
        held += one_part(plan, balance, step, (bar, *part))?;
    }
    Ok(held)
}

fn one_part(
    plan: &Plan,
    balance: &Balance,
    step: &WorkedStep,
    (bar, part): (usize, usize),
) -> Result<usize, TestCaseError> {
    // A bar that cannot be worked out as it stands has branches without a cut, and no section that they are forged from.
    if balance.findings.iter().any(|found| found.severity == Severity::Stop && found.place.bar == Some(bar)) {
        return Ok(0);
    }
    let segment = &balance.bars[bar].segments[part];
    // What a step makes on the way is that shape, and not the finished one.
    let on_the_way = step.tasks.iter().filter_map(|task| task.to).max();
    let shape = on_the_way.map_or(&segment.shape, |to| &segment.via[to].shape);
    let (Some(length), Some(shape)) = (named(step, "length"), shape) else { return Ok(0) };
    let Some([low, high]) = length.between_mm else { return Ok(0) };
    let now = length.mm.unwrap();
    prop_assert!(low <= now * (1.0 + KEPT) && now <= high * (1.0 + KEPT), "{:?}", length);
    let is_rough =
        on_the_way.is_none() && (mm(segment.forged_length) < 0.999 * now || segment.trimmed_volume.value > 0.0);
    let is_twisted = matches!(plan.segment(bar, part).unwrap().bend, Some(Bend::Twist { .. }));
    if !is_twisted
        && on_the_way.is_none()
        && let Some(ladder) = ladder(plan, balance, bar, part)
    {
        let wide = |section: &SectionSize| match section {
            SectionSize::Flat { width, thickness, .. } | SectionSize::Oval { width, thickness } => width >= thickness,
            SectionSize::HalfRound { width, height } => width >= height,
            _ => true,
        };
        let is_flat = match shape {
            Shape::Prism { section, .. } => wide(section),
            Shape::Taper { from, to, .. } => wide(from) && wide(to),
            _ => false,
        };
        let rungs = ladder.rungs.iter().map(|rung| mm(rung.length));
        let (shortest, longest) = rungs.fold((f64::INFINITY, 0.0_f64), |(s, l), mm| (s.min(mm), l.max(mm)));
        // Where the bar or the thickness ends it early, the ladder has no rung as far as the range may go.
        if is_flat && ladder.rungs.iter().any(|rung| rung.steps == -4) {
            prop_assert!(high <= longest * (1.0 + KEPT), "{} over {} of {}", high, longest, step.title);
        }
        if is_flat && ladder.rungs.iter().any(|rung| rung.steps == 4) {
            prop_assert!(low >= shortest * (1.0 - KEPT), "{} under {} of {}", low, shortest, step.title);
        }
    }
    let all = [End::Low, End::Planned, End::High].map(|end| mean(step, shape, segment.reversed, end));
    let [Some(thin), Some(planned), Some(fat)] = all else { return Ok(0) };
    if is_rough && !matches!(shape, Shape::Flag { .. }) {
        return Ok(0);
    }
    let metal = planned * now;
    prop_assert!((low * fat - metal).abs() <= KEPT * metal, "fat: {} and {} for {} of {}", low, fat, metal, step.title);
    prop_assert!(
        (high * thin - metal).abs() <= KEPT * metal,
        "thin: {} and {} for {} of {}",
        high,
        thin,
        metal,
        step.title
    );
    Ok(1)
}

#[test]
fn the_sizes_of_every_demo_agree() {
    let mut held = 0;
    for demo in DEMOS {
        let plan = fh_core::file::read(demo.text.as_bytes()).unwrap();
        let balance = balance(&plan);
        let worked = work_out(&plan, &balance, &Shop::default());
        held += check(&plan, &balance, &worked).unwrap_or_else(|error| panic!("{}: {error}", demo.file_name));
    }
    assert!(held > 15, "{held} lengths were held against their metal");
}

proptest! {
    #![proptest_config(cases(300))]

    #[test]
    fn the_sizes_of_any_plan_agree(plan in plan(Sizes::Usual)) {
        let plan = tests::read(&plan.0);
        let balance = balance(&plan);
        let worked = work_out(&plan, &balance, &Shop::default());
        check(&plan, &balance, &worked)?;
    }
}
