//! Shapes on the way in the order of work: a step goes on making the shape that it made.

use crate::plan::{Deed, Segment, Step, Via};

/// Where each shape of a part has gone, counted from 0; none where it is taken out.
pub(super) fn places(before: &[Via], after: &[Via]) -> Vec<Option<usize>> {
    let mut taken = vec![false; after.len()];
    let mut found: Vec<Option<usize>> = vec![None; before.len()];
    for (old, place) in before.iter().zip(&mut found) {
        *place = after.iter().enumerate().position(|(at, new)| !taken[at] && new == old);
        place.iter().for_each(|at| taken[*at] = true);
    }
    // What was changed, and neither taken out nor put in, stays where it is.
    if before.len() == after.len() {
        for (at, place) in found.iter_mut().enumerate().filter(|(at, place)| place.is_none() && !taken[*at]) {
            *place = Some(at);
        }
    }
    found
}

/// Lets the steps of a bar follow the shapes of one of its parts, by its path.
pub(super) fn follow(steps: &mut Vec<Step>, bar: usize, path: &str, (before, after): (&Segment, &Segment)) {
    if before.via == after.via {
        return;
    }
    let places = places(&before.via, &after.via);
    steps.retain_mut(|step| {
        if step.bar_index() != bar || step.work.is_empty() {
            return true;
        }
        step.work = step.work.drain(..).flat_map(|deed| followed(deed, path, &places)).collect();
        !step.work.is_empty()
    });
}

/// A deed with its shape where that has gone; of several parts the one is told by itself whose shape has moved.
fn followed(mut deed: Deed, path: &str, places: &[Option<usize>]) -> Vec<Deed> {
    let old =
        deed.to.and_then(|to| (to as usize).checked_sub(1)).filter(|_| deed.parts.iter().any(|part| part == path));
    // A shape that never was stays as it is, and is told in the findings.
    let Some(place) = old.and_then(|old| places.get(old)) else { return vec![deed] };
    let to = place.map(|place| place as u32 + 1);
    if to == deed.to {
        return vec![deed];
    }
    deed.parts.retain(|part| part != path);
    let moved = to.map(|to| Deed { to: Some(to), ..Deed::new(deed.operation, vec![path.to_owned()]) });
    let rest = (!deed.parts.is_empty()).then_some(deed);
    rest.into_iter().chain(moved).collect()
}
