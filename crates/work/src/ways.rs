//! The ways to make the bends of a step: over which edge, held by which side.

use crate::bar::progress::Progress;
use crate::bar::state::state;
use crate::job::legs;
use crate::job::legs::{Posed, WayToBend};
use crate::job::order::Ordered;
use crate::job::site::Site;
use crate::job::task::Task;
use fh_core::plan::{AnvilPlace, Operation};

/// The side of the bar that is gripped for a way to bend; none where a vice holds it.
pub(crate) fn side_gripped(way: &WayToBend) -> Option<legs::Held> {
    (way.place != AnvilPlace::Vice).then_some(way.held)
}

/// The ways of the first bend of a step, and its bends that have none.
pub(crate) fn ways(ordered: &Ordered, site: &Site<'_>, progress: &Progress) -> (Vec<WayToBend>, Vec<usize>) {
    let bent = |task: &&Task| matches!(task.operation, Operation::Bend | Operation::Corner);
    let bends: Vec<usize> = ordered.tasks.iter().filter(bent).filter_map(|task| task.part).collect();
    // On a branch the others are in the way of every block: it is bent in the vice.
    let over_an_edge = |at: &usize| legs::is_bent_over_an_edge(site, *at) && site.split_of(*at).is_none();
    let on_bar: Vec<usize> = bends.into_iter().filter(over_an_edge).collect();
    let Some(first) = on_bar.first().filter(|_| legs::are_looked_at(site)) else { return (Vec::new(), Vec::new()) };
    let posed = Posed::new(site, &state(site, progress));
    let ways = posed.ways(site, *first);
    let stuck = |at: &usize| posed.ways(site, *at).is_empty();
    (ways, on_bar.into_iter().filter(stuck).collect())
}
