//! The dimensions of a bend that a smith holds a rule to: over all, between tines, the opening of a hook, inside a ring.

use super::drawn::Drawn;
use super::faces::{Sample, turning};
use super::figure::{bounds, level_dimension, union, upright_dimension, upward_dimension};
use super::numbers::Numbers;
use super::on_paper::{left_face, line_points, on_paper, right_face};
use crate::drawing::{Item, Point, Text, at};
use crate::pen::Pen;
use crate::sheets::sizes_in_words::mm_words;
use crate::sheets::type_sizes::FACT;
use fh_core::plan::PlanUnit;
use std::f64::consts::PI;

/// From everything else to a dimension over all, in mm.
const OUTSIDE_MM: f64 = 6.0;
/// Half the length of the tick at each end of a dimension.
const TICK_MM: f64 = 1.6;
/// A dimension shorter than this is not drawn, in mm.
const LEAST_MM: f64 = 3.0;
/// A bar that turns so far, in radians, is a hook with an opening.
const HOOK: f64 = 0.75 * PI;
/// One that turns so far is a ring with an inside.
const RING: f64 = 1.6 * PI;
/// The least cosine between tines that run side by side: 30° apart.
const SIDE_BY_SIDE: f64 = 0.866;
/// The shares of a tine's length at which it is measured.
const SHARES: [f64; 7] = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

/// The dimensions within a template that found room.
pub(super) fn within(unit: PlanUnit, drawn: &[Drawn<'_>], split: bool, numbers: &mut Numbers) -> Vec<Item> {
    let mut items = Vec::new();
    if split {
        items.extend(between_tines(unit, drawn, numbers));
    } else {
        items.extend(opening(unit, drawn, numbers).unwrap_or_default());
    }
    items
}

/// The length and the height of the metal, below and at the right of everything on a page so wide; not along a bar that is broken
/// off.
pub(super) fn over_all(unit: PlanUnit, drawn: &[Drawn<'_>], items: &[Item], page_mm: f64) -> Vec<Item> {
    let metal = drawn.iter().flat_map(|member| member.outline()).map(|item| bounds(&item)).reduce(union);
    let (Some(metal), Some(all)) = (metal, items.iter().map(bounds).reduce(union)) else { return Vec::new() };
    let broken = |axis: usize| {
        let cut = drawn.iter().filter(|member| member.member.shown.is_some());
        cut.filter_map(|member| member.samples.first()).any(|sample| sample.ahead[axis].abs() > 0.1)
    };
    let words = |mm: f64| format!("{} over all", mm_words(unit, mm));
    let mut found = Vec::new();
    let (y, x) = (all.bottom + OUTSIDE_MM + FACT, all.right + OUTSIDE_MM);
    if !broken(0) && metal.width() > LEAST_MM {
        found.extend(level_dimension([metal.left, metal.right], y, &words(metal.width())));
    }
    if !broken(1) && metal.height() > LEAST_MM {
        let ends = [metal.top, metal.bottom];
        let beside = upright_dimension(ends, x, &words(metal.height()));
        let right = beside.iter().map(|item| bounds(item).right).fold(x, f64::max);
        let fits = right - all.left <= page_mm;
        found.extend(if fits { beside } else { upward_dimension(ends, x + FACT, &words(metal.height())) });
    }
    found
}

/// How far neighboring tines that run side by side lie apart.
fn between_tines(unit: PlanUnit, drawn: &[Drawn<'_>], numbers: &mut Numbers) -> Vec<Item> {
    let of_branch = drawn.iter().filter(|member| !member.bends && member.path.contains('.'));
    let mut straight: Vec<&Drawn<'_>> = of_branch.collect();
    // A tine is measured where it is even, and at its point only where it is nothing else.
    straight.sort_by_key(|member| !is_even(member));
    let mut items = Vec::new();
    for (index, one) in straight.iter().enumerate() {
        let beside = |other: &&&Drawn<'_>| branch(other) != branch(one) && run_side_by_side(one, other);
        for other in straight.iter().skip(index + 1).filter(beside) {
            let across = SHARES.into_iter().find_map(|share| {
                let sample = one.samples.get((share * one.samples.len().saturating_sub(1) as f64).round() as usize)?;
                let faces = [sample.left, -sample.right].map(|mm| sample.aside(mm));
                let met = faces.map(|face| Some((face, foot(face, other)?)));
                let gap = met.into_iter().flatten().min_by(|a, b| apart(a.0, a.1).total_cmp(&apart(b.0, b.1)))?;
                dimension(unit, gap, "", numbers)
            });
            if let Some(across) = across {
                items.extend(across);
                // Two tines have one distance between them.
                return items;
            }
        }
    }
    items
}

/// Whether two straight segments point nearly the same way, or back along it.
fn run_side_by_side(one: &Drawn<'_>, other: &Drawn<'_>) -> bool {
    let ahead = |member: &Drawn<'_>| member.samples.first().map(|sample| sample.ahead);
    let (Some(one), Some(other)) = (ahead(one), ahead(other)) else { return false };
    (one[0] * other[0] + one[1] * other[1]).abs() >= SIDE_BY_SIDE
}

/// Whether a segment is as wide at its end as at its start.
fn is_even(member: &Drawn<'_>) -> bool {
    let ends = [member.samples.first(), member.samples.last()].map(|sample| sample.map_or(0.0, |sample| sample.left));
    (ends[0] - ends[1]).abs() < 0.05
}

/// The branch that a segment belongs to, by its path.
fn branch<'a>(member: &'a Drawn<'_>) -> Option<&'a str> {
    member.path.rsplit_once('.').map(|(branch, _)| branch)
}

/// How far a bar turns in all its bends, in radians, but for eyes that are rings by themselves.
fn turned(drawn: &[Drawn<'_>]) -> f64 {
    drawn.iter().map(|member| turning(&member.samples)).filter(|turn| turn.abs() < RING).sum()
}

/// The opening of a hook: from its tip to the leg that it stands over.
fn opening(unit: PlanUnit, drawn: &[Drawn<'_>], numbers: &mut Numbers) -> Option<Vec<Item>> {
    let turned = turned(drawn);
    let turns = drawn.iter().map(|member| turning(&member.samples).abs()).filter(|turn| *turn > 1e-6 && *turn < RING);
    // Of several bends the tip stands over nothing in particular.
    if !(HOOK..RING).contains(&turned.abs()) || turns.count() != 1 {
        return None;
    }
    let (first, last) = (drawn.first()?, drawn.last()?);
    let tips = [(first, first.samples.first()), (last, last.samples.last())];
    let free = tips.into_iter().filter(|(member, _)| member.member.shown.is_none());
    let legs = || drawn.iter().filter(|member| !member.bends);
    let gap = free.filter_map(|(member, tip)| {
        let tip = tip?;
        let others = legs().filter(|leg| leg.member.segment.abs_diff(member.member.segment) > 1);
        let met = others.filter_map(|leg| {
            let faces = [left_face(tip), right_face(tip)].map(|face| Some((face, foot(face, leg)?)));
            faces.into_iter().flatten().min_by(|a, b| apart(a.0, a.1).total_cmp(&apart(b.0, b.1)))
        });
        met.min_by(|a, b| apart(a.0, a.1).total_cmp(&apart(b.0, b.1)))
    });
    let gap = gap.min_by(|a, b| apart(a.0, a.1).total_cmp(&apart(b.0, b.1)))?;
    dimension(unit, gap, " open", numbers)
}

/// How wide a ring of several bends is inside, level through its middle.
pub(super) fn inside(unit: PlanUnit, drawn: &[Drawn<'_>], numbers: &mut Numbers) -> Option<Vec<Item>> {
    let turned = turned(drawn);
    let bends = drawn.iter().filter(|member| member.bends).count();
    if turned.abs() < RING || bends < 2 {
        return None;
    }
    let middles: Vec<[f64; 2]> = drawn.iter().flat_map(|member| &member.samples).map(|sample| sample.middle).collect();
    let reach = |axis: usize| {
        let (low, high) =
            middles.iter().fold((f64::MAX, f64::MIN), |(l, h), place| (l.min(place[axis]), h.max(place[axis])));
        (low + high) / 2.0
    };
    let (x, y) = (reach(0), -reach(1));
    let lines = drawn.iter().flat_map(|member| member.outline());
    let crossed: Vec<f64> = lines.flat_map(|item| crossings(&line_points(&item), y)).collect();
    let left = crossed.iter().copied().filter(|place| *place < x).fold(f64::NEG_INFINITY, f64::max);
    let right = crossed.iter().copied().filter(|place| *place > x).fold(f64::INFINITY, f64::min);
    if !(left.is_finite() && right.is_finite()) {
        return None;
    }
    dimension(unit, ([left, -y], [right, -y]), " inside", numbers)
}

/// Where a line through some places crosses a height.
fn crossings(points: &[Point], y: f64) -> Vec<f64> {
    let cross = |pair: &[Point]| {
        let (a, b) = (pair[0], pair[1]);
        ((a.y > y) != (b.y > y)).then(|| a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y))
    };
    points.windows(2).filter_map(cross).collect()
}

/// The place on the nearer face of a straight segment that lies square across from a place; none beyond its ends.
fn foot(from: [f64; 2], leg: &Drawn<'_>) -> Option<[f64; 2]> {
    let faces: [fn(&Sample) -> [f64; 2]; 2] = [left_face, right_face];
    let on_face = |face: fn(&Sample) -> [f64; 2]| {
        leg.samples.windows(2).find_map(|pair| {
            let (a, b, ahead) = (face(&pair[0]), face(&pair[1]), pair[0].ahead);
            let along = |place: [f64; 2]| (place[0] - from[0]) * ahead[0] + (place[1] - from[1]) * ahead[1];
            let (start, end) = (along(a), along(b));
            let share = if end - start > 1e-9 { -start / (end - start) } else { -1.0 };
            (0.0..=1.0).contains(&share).then(|| [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share])
        })
    };
    faces.into_iter().filter_map(on_face).min_by(|a, b| apart(from, *a).total_cmp(&apart(from, *b)))
}

fn apart(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

/// A dimension from place to place, right and up, where its words find room beside it.
fn dimension(unit: PlanUnit, (from, to): ([f64; 2], [f64; 2]), what: &str, numbers: &mut Numbers) -> Option<Vec<Item>> {
    let long = apart(from, to);
    if long < LEAST_MM {
        return None;
    }
    let (start, end) = (on_paper(from), on_paper(to));
    let along = [(end.x - start.x) / long, (end.y - start.y) / long];
    let text = Text::new(at(0.0, 0.0), FACT, &format!("{}{what}", mm_words(unit, long))).centered().bold();
    let half = text.width_mm() / 2.0;
    let between = |share: f64| at(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share);
    // Beside an upright one, over and under a level one.
    let aside = [half * along[1].abs() + 2.5, FACT * 0.75 * along[0].abs()];
    let places = [0.5, 0.35, 0.65, 0.2, 0.8].into_iter().flat_map(|share| {
        let middle = between(share);
        [-1.0, 1.0].map(|sign| {
            let off = if along[1].abs() > 0.7 {
                [sign * aside[0], FACT * 0.33]
            } else {
                [0.0, if sign < 0.0 { -1.4 } else { aside[1] + 1.4 }]
            };
            at(middle.x + off[0], middle.y + off[1])
        })
    });
    let line = Item::line(start, end, Pen::Dimension);
    if !numbers.is_free_of_words(&line) {
        return None;
    }
    let words = numbers.words(&text, places)?;
    let tick = |place: Point| {
        let (x, y) = (-along[1] * TICK_MM, along[0] * TICK_MM);
        Item::line(at(place.x - x, place.y - y), at(place.x + x, place.y + y), Pen::Dimension)
    };
    numbers.keep_clear(&line);
    Some(vec![line, tick(start), tick(end), words])
}
