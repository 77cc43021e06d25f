//! What has to be hot for a step, and from where to where that reaches along the bar: one answer for heats, cards and screen.

use crate::bar::lengths::Lengths;
use crate::job::along::followers;
use crate::job::site::{Site, extents, in_mm};
use crate::job::task::Task;
use fh_core::metal::FreeEnd;
use fh_core::plan::{Form, Operation, Step};

/// What a cut heats of the bar, half of it on either side, in mm: 20 to 30, common practice, no source.
const CUT: f64 = 25.0;

/// A length of bar that has to be hot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Spot {
    /// A part, and as much bar beside it as the bar is thick.
    Part(usize),
    /// What is dressed of a part, as shares of its length, and as much bar beside it as the bar is thick.
    Stretch { part: usize, from: f64, to: f64 },
    /// A part and no more: what is hot beside it would thicken too.
    Alone(usize),
    /// The bar on both sides of a cut at an end of a part.
    Cut { part: usize, at_end: bool },
    /// The bar on both sides of the root of a slit, at an end of its part, and twice as much bar beside it as it is thick.
    Root { part: usize, at_end: bool },
}

/// The same spots, where the bar beside them is kept cool.
pub(crate) fn alone(spots: &[Spot]) -> Vec<Spot> {
    let kept = |spot: &Spot| match *spot {
        Spot::Part(at) => Spot::Alone(at),
        other => other,
    };
    spots.iter().map(kept).collect()
}

/// What some tasks need hot; empty where the whole bar is meant.
pub(crate) fn spots(site: &Site<'_>, tasks: &[Task]) -> Vec<Spot> {
    tasks.iter().filter_map(|task| Some((task, task.part?))).flat_map(|(task, at)| of_part(site, task, at)).collect()
}

fn of_part(site: &Site<'_>, task: &Task, at: usize) -> Vec<Spot> {
    let form = site.flat.get(at).map(|flat| &flat.segment.form);
    match (task.operation, form) {
        (Operation::Upset, Some(Form::Rivet(_))) => vec![Spot::Part(at)],
        (Operation::Upset, _) => vec![Spot::Alone(at)],
        // What is hot beside a twist twists with it.
        (Operation::Twist, _) => vec![Spot::Alone(at)],
        (Operation::Open, _) if is_twisted_open(site, at) => vec![Spot::Alone(at)],
        (Operation::Dress, _) => vec![dressed(site, at)],
        (Operation::PartOff, Some(Form::Hold(_))) | (Operation::Trim, Some(Form::Trim(_))) => cuts(site, at),
        // Branches are bent apart and back at their root: their tips stay out of the fire.
        (Operation::BendAside | Operation::Straighten, Some(Form::Split(_))) if !site.is_closed_slit(at) => {
            vec![root(site, at)]
        }
        // What is drawn out along with it is hot too.
        (Operation::Draw | Operation::Taper, _) => {
            followers(site, at).into_iter().chain([at]).map(Spot::Part).collect()
        }
        _ => vec![Spot::Part(at)],
    }
}

/// From where to where a part is dressed in its dies.
fn dressed(site: &Site<'_>, at: usize) -> Spot {
    let Some(part) = site.part(at).filter(|part| !part.balance.dressed.is_empty()) else { return Spot::Part(at) };
    let long = in_mm(part.balance.forged_length).max(1e-9);
    let share = |mm: f64| (mm / long).clamp(0.0, 1.0);
    let ends = part.balance.dressed.iter().map(|one| [share(in_mm(one.start)), share(in_mm(one.end))]);
    let [from, to] = ends.fold([1.0_f64, 0.0_f64], |all, one| [all[0].min(one[0]), all[1].max(one[1])]);
    Spot::Stretch { part: at, from, to }
}

/// Whether the rods of a slit are twisted as it is opened.
pub(crate) fn is_twisted_open(site: &Site<'_>, at: usize) -> bool {
    site.split_size(at).and_then(|size| size.opening).is_some_and(|opening| opening.turns != 0.0)
}

/// The root of a slit that is open at one end.
fn root(site: &Site<'_>, at: usize) -> Spot {
    let at_end = site.split_size(at).is_some_and(|size| size.opens() == FreeEnd::Datum);
    Spot::Root { part: at, at_end }
}

/// The ends at which a part is cut off: those toward the piece.
fn cuts(site: &Site<'_>, at: usize) -> Vec<Spot> {
    let beside = site.beside(at);
    let toward = |wanted: &dyn Fn(usize) -> bool| -> Vec<Spot> {
        let sides = beside.iter().enumerate().filter(|(_, beside)| beside.is_some_and(wanted));
        sides.map(|(side, _)| Spot::Cut { part: at, at_end: side == 1 }).collect()
    };
    let piece = toward(&|beside| site.flat[beside].segment.form.is_finished());
    let any = if piece.is_empty() { toward(&|_| true) } else { piece };
    if any.is_empty() { vec![Spot::Part(at)] } else { any }
}

/// From where to where some spots reach on a bar, in mm; none where there are none.
pub(crate) fn reach(spots: &[Spot], lengths: &Lengths) -> Option<[f64; 2]> {
    let ends = spots.iter().map(|spot| one(*spot, lengths));
    ends.reduce(|all, next| [all[0].min(next[0]), all[1].max(next[1])])
}

fn one(spot: Spot, lengths: &Lengths) -> [f64; 2] {
    match spot {
        Spot::Part(at) | Spot::Alone(at) => lengths.extent([at].iter()),
        Spot::Stretch { part, from, to } => {
            let [start, end] = lengths.extent([part].iter());
            [start + (end - start) * from, start + (end - start) * to]
        }
        Spot::Cut { part, at_end } | Spot::Root { part, at_end } => {
            let middle = lengths.extent([part].iter())[usize::from(at_end)];
            [middle - CUT / 2.0, middle + CUT / 2.0]
        }
    }
}

/// What has to be hot, in mm along the bar: the spots and what goes with them, as far as there is bar.
pub(crate) fn hot(site: &Site<'_>, spots: &[Spot], lengths: &Lengths) -> Option<[f64; 2]> {
    let [start, end] = lengths.extent(site.chains[0].1.iter());
    let thick = extents(&site.balance.stock).into_iter().fold(0.0, f64::max);
    let of = |spot: &Spot| {
        let [from, to] = one(*spot, lengths);
        match spot {
            Spot::Part(_) | Spot::Stretch { .. } | Spot::Root { .. } => {
                [(from - thick).max(start.min(from)), (to + thick).min(end.max(to))]
            }
            Spot::Alone(_) | Spot::Cut { .. } => [from, to],
        }
    };
    spots.iter().map(of).reduce(|all, next| [all[0].min(next[0]), all[1].max(next[1])])
}

/// Whether a step is done hot: as the smith says, or because its tasks or its heat ask for it.
pub(crate) fn is_done_hot(step: &Step, tasks_are_hot: bool) -> bool {
    step.hot.unwrap_or(tasks_are_hot || step.heat.is_some())
}
