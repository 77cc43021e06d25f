//! Parts in the order of work: a segment that another one pushes along stays the one that a step works on.

use super::Edit;
use crate::plan::{Bar, Chain, Plan, Segment};

/// Where every segment of a plan has gone, bar by bar.
struct Moved {
    /// The new place of each old bar; none where it is taken out.
    bars: Vec<Option<usize>>,
    /// On the bar that the edit changes: the new place of each old segment; none where it is taken out.
    segments: Option<(usize, Vec<Option<usize>>)>,
}

/// Follows the parts of the order of work to where an edit has put them. What is taken out is taken out of the steps; a
/// step that is left with nothing to do goes with it.
pub(super) fn follow(edit: &Edit, before: &Plan, after: &mut Plan) {
    if after.work.steps.is_none() && after.work.log.is_empty() {
        return;
    }
    let Some(moved) = moved(edit, before) else { return };
    follow_log(&moved, before, after);
    let Some(steps) = after.work.steps.take() else { return };
    let mut kept = Vec::with_capacity(steps.len());
    for mut step in steps {
        let index = step.bar_index();
        // A step on a bar that never was stays as it is, and is told in the findings.
        let Some(place) = moved.bars.get(index) else {
            kept.push(step);
            continue;
        };
        let Some(new_bar) = *place else { continue };
        step.bar = (new_bar > 0).then_some(new_bar as u32 + 1);
        let changed = moved.segments.as_ref().filter(|(bar, _)| *bar == index);
        if let (Some((_, places)), Some(bar)) = (changed, before.bars.get(index)) {
            let had_work = !step.work.is_empty();
            let paths = after.bars.get(new_bar).map_or_else(Vec::new, Bar::paths);
            step.work.retain_mut(|deed| {
                let had_parts = !deed.parts.is_empty();
                deed.parts = deed.parts.iter().filter_map(|part| renamed(part, bar, places, &paths)).collect();
                !(had_parts && deed.parts.is_empty())
            });
            if had_work && step.work.is_empty() {
                continue;
            }
        }
        kept.push(step);
    }
    if let Edit::ReplaceSegment { bar, at, segment } = edit
        && let Some(old) = before.bars.get(*bar).and_then(|bar| bar.segment(*at))
    {
        let path = before.bars.get(*bar).map_or_else(String::new, |bar| bar.path(*at));
        shapes::follow(&mut kept, *bar, &path, (old, segment));
    }
    after.work.steps = Some(kept);
}

/// The same for what was written down. It stays, whatever is taken out: it was done.
fn follow_log(moved: &Moved, before: &Plan, after: &mut Plan) {
    let mut log = std::mem::take(&mut after.work.log);
    for logged in &mut log {
        let index = logged.bar_index();
        let Some(Some(new_bar)) = moved.bars.get(index) else { continue };
        logged.bar = (*new_bar > 0).then_some(*new_bar as u32 + 1);
        let changed = moved.segments.as_ref().filter(|(bar, _)| *bar == index);
        if let (Some((_, places)), Some(bar)) = (changed, before.bars.get(index)) {
            let paths = after.bars.get(*new_bar).map_or_else(Vec::new, Bar::paths);
            logged.parts = logged.parts.iter().filter_map(|part| renamed(part, bar, places, &paths)).collect();
        }
    }
    after.work.log = log;
}

/// The new path of a part; none where it is taken out. A path that named nothing stays as it is.
fn renamed(part: &str, bar: &Bar, places: &[Option<usize>], paths: &[String]) -> Option<String> {
    let Some(old) = bar.find_path(part) else { return Some(part.to_owned()) };
    paths.get((*places.get(old)?)?).cloned()
}

/// Where an edit puts bars and segments; none where they all stay.
fn moved(edit: &Edit, plan: &Plan) -> Option<Moved> {
    let count = plan.bars.len();
    let stay = || (0..count).map(Some).collect();
    let on = |bar: usize, places: Vec<Option<usize>>| Some(Moved { bars: stay(), segments: Some((bar, places)) });
    match edit {
        Edit::AddBar { at, .. } => {
            let at = (*at).min(count);
            Some(Moved { bars: (0..count).map(|bar| Some(bar + usize::from(bar >= at))).collect(), segments: None })
        }
        Edit::RemoveBar { bar } => {
            let place = |old: usize| (old != *bar).then(|| old - usize::from(old > *bar));
            Some(Moved { bars: (0..count).map(place).collect(), segments: None })
        }
        Edit::InsertSegment { bar, at, segment } => {
            let of = plan.bars.get(*bar)?;
            let (chain, place) = of.place_of(*at).unwrap_or((Chain::Bar, of.segments.len()));
            on(*bar, pushed(of, chain, place, segment.count())?)
        }
        Edit::InsertInto { bar, chain, place, segment } => {
            on(*bar, pushed(plan.bars.get(*bar)?, *chain, *place, segment.count())?)
        }
        Edit::InsertSegments { bar, chain, place, segments } => {
            let count = segments.iter().map(Segment::count).sum();
            on(*bar, pushed(plan.bars.get(*bar)?, *chain, *place, count)?)
        }
        Edit::ReplaceSegment { bar, at, segment } => {
            let of = plan.bars.get(*bar)?;
            on(*bar, replaced(of, *at, of.segment(*at)?, segment))
        }
        Edit::RemoveSegment { bar, at } => {
            let of = plan.bars.get(*bar)?;
            on(*bar, taken_out(of.count_segments(), *at, of.segment(*at)?.count()))
        }
        Edit::MoveSegment { bar, from, to } => on(*bar, carried(plan.bars.get(*bar)?, *from, *to)?),
        Edit::ReplacePlan(_)
        | Edit::Whole(_)
        | Edit::SetPlan(_)
        | Edit::SetJoints(_)
        | Edit::SetSizes(_)
        | Edit::SetWork(_)
        | Edit::SetBar { .. }
        | Edit::MoveBoundary(_)
        | Edit::MoveToRound(_)
        | Edit::Several(_)
        | Edit::Mark(_)
        | Edit::DragBend(_)
        | Edit::ChangePart { .. }
        | Edit::ChangeSteps { .. } => None,
    }
}

/// So many segments come in before a place of a chain.
fn pushed(bar: &Bar, chain: Chain, place: usize, count: usize) -> Option<Vec<Option<usize>>> {
    let place = place.min(bar.chain(chain)?.len());
    let at = bar.number_of(chain, place)?;
    Some((0..bar.count_segments()).map(|old| Some(if old < at { old } else { old + count })).collect())
}

fn taken_out(all: usize, at: usize, count: usize) -> Vec<Option<usize>> {
    let place = |old: usize| match old {
        old if old < at => Some(old),
        old if old < at + count => None,
        old => Some(old - count),
    };
    (0..all).map(place).collect()
}

/// Another segment stands where one stood. Its branches keep the segments at their places, as far as both have them.
fn replaced(bar: &Bar, at: usize, old: &Segment, new: &Segment) -> Vec<Option<usize>> {
    let mut places: Vec<Option<usize>> = (0..at).map(Some).collect();
    pair(old, new, at, &mut places);
    let (count, before) = (new.count(), old.count());
    places.extend((at + before..bar.count_segments()).map(|old| Some(old + count - before)));
    places
}

/// The new place of a segment, which is given, and of those below it.
fn pair(old: &Segment, new: &Segment, at: usize, places: &mut Vec<Option<usize>>) {
    places.push(Some(at));
    let mut next = at + 1;
    for (number, branch) in old.form.branches().iter().enumerate() {
        let other = new.form.branches().get(number);
        for (place, segment) in branch.segments.iter().enumerate() {
            match other.and_then(|other| other.segments.get(place)) {
                Some(twin) => {
                    pair(segment, twin, next, places);
                    next += twin.count();
                }
                None => places.extend(std::iter::repeat_n(None, segment.count())),
            }
        }
        let known = branch.segments.len();
        next +=
            other.into_iter().flat_map(|other| other.segments.iter().skip(known)).map(Segment::count).sum::<usize>();
    }
}

/// A segment is taken out of its chain and put in at another place of it.
fn carried(bar: &Bar, from: usize, to: usize) -> Option<Vec<Option<usize>>> {
    let (chain, place) = bar.place_of(from)?;
    let segments = bar.chain(chain)?;
    let wanted = match bar.place_of(to) {
        Some((other, wanted)) if other == chain => wanted,
        Some(_) => return None,
        None => segments.len(),
    };
    let mut order: Vec<usize> = (0..segments.len()).collect();
    let moved = order.remove(place);
    order.insert(wanted.min(order.len()), moved);
    let mut places: Vec<Option<usize>> = (0..bar.count_segments()).map(Some).collect();
    let mut next = bar.number_of(chain, 0)?;
    for old in order {
        let (start, count) = (bar.number_of(chain, old)?, segments.get(old)?.count());
        for below in 0..count {
            *places.get_mut(start + below)? = Some(next + below);
        }
        next += count;
    }
    Some(places)
}

mod shapes;
#[cfg(test)]
mod tests;
