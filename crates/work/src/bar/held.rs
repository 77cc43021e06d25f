//! What the tongs hold while a step is done.

use crate::bar::grip::{Bar, Cold, Grip};
use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::bar::spots::{Spot, hot, reach};
use crate::job::legs::{Held, WayToBend};
use crate::job::site::{Site, extents};
use crate::job::task::Task;
use fh_core::metal::Shape;
use fh_core::plan::{Form, Limits, Operation};
use fh_measure::WrittenLength;
use std::borrow::Cow;

/// Beyond the part that is worked, so much is too hot to hold, in mm: common practice, no source.
pub(crate) const HOT_MARGIN: f64 = 25.0;

/// The end of a bar that is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// How long the part is that stays cold enough to hold, in mm.
    pub length_mm: f64,
    /// Its size from side to side and from top to bottom where the tongs grip, in mm.
    pub jaw_mm: [f64; 2],
    /// The part that is gripped, counted through the bar.
    pub part: usize,
    /// Where the middle of the jaws lies, in mm along the bar as it is before the step.
    pub at_mm: f64,
    /// From where to where it stays cold, in mm along the bar as it is before the step.
    pub cold_mm: [f64; 2],
    /// Whether so much of it is cold that it is held in the hand.
    pub by_hand: bool,
    /// Whether so much bar lies beyond the jaws that the tongs are set from the side.
    pub from_the_side: bool,
    /// Whether it lies so near to what was hot before that it is cooled and tested before a hand takes it, or was itself hot in the heat
    /// before where tongs grip it.
    pub cool_first: bool,
    /// Whether it is fine, thin or bent, and gripped only because nothing better stays cold.
    pub is_poor: bool,
}

impl Hold {
    /// What is wider than so many mm is held by its thickness: common practice, no source.
    pub(crate) const WIDE: f64 = 40.0;
    /// What stays cold for so many mm is held in the hand: common practice, no source.
    pub(crate) const BARE_HAND: f64 = 450.0;
    /// A hand takes so many mm of cold bar: common practice, no source.
    pub(crate) const HAND: f64 = 90.0;
    /// What hangs out farther than so many mm is heavy and whips, so that it is propped: common practice, no source.
    const PROPPED: f64 = 900.0;

    /// Whether it is so long that one hand does not carry it.
    pub(crate) fn is_propped(&self) -> bool {
        self.length_mm > Self::PROPPED
    }

    pub(crate) fn new(length_mm: f64, cold: Cold, grip: Grip) -> Self {
        let Grip { part, at_mm, jaw_mm, from_the_side, is_poor, .. } = grip;
        let cold_mm = [cold.end_mm.min(cold.hot_mm), cold.end_mm.max(cold.hot_mm)];
        let by_hand = cold.by_hand;
        Self { length_mm, jaw_mm, part, at_mm, cold_mm, by_hand, from_the_side, cool_first: false, is_poor }
    }
}

/// What is held for: what is hot, and what is done.
pub(crate) struct Need<'t> {
    /// Everything that is hot in this heat: from the steps before, of this step, and for those that follow; the whole bar where
    /// it is empty.
    pub(crate) hot: Vec<Spot>,
    /// What is done.
    pub(crate) tasks: &'t [Task],
    /// The side that has to be held; none where either will do.
    pub(crate) side: Option<Held>,
    /// Whether a hand may take it: not beside a welding heat, from which it is too near wherever a ring is held.
    pub(crate) by_hand: bool,
}

/// What is cold enough to hold on either side of what is hot; none where no bar is there.
fn cold_ends(site: &Site<'_>, lengths: &Lengths, spots: &[Spot]) -> Option<[Cold; 2]> {
    let there = site.chains[0].1.iter().filter(|at| lengths.lengths[**at] > 0.0);
    let [start, end] = there.clone().next().map(|_| lengths.extent(there))?;
    // Where the whole bar is meant, one end or the other is hot by turns.
    let [from, to] = match reach(spots, lengths) {
        Some([from, to]) => {
            let [soaked_from, soaked_to] = hot(site, spots, lengths).unwrap_or([from, to]);
            [soaked_from.min(from - HOT_MARGIN), soaked_to.max(to + HOT_MARGIN)]
        }
        None => [end - HOT_MARGIN, start + HOT_MARGIN],
    };
    let cold = |end_mm: f64, hot_mm: f64, length_mm: f64| Cold { end_mm, hot_mm, by_hand: length_mm > Hold::BARE_HAND };
    Some([cold(start, from, from - start), cold(end, to, end - to)])
}

/// Of the ways to make a bend at the best place, puts that first in which there is more to hold.
pub(crate) fn first_to_hold(site: &Site<'_>, lengths: &Lengths, spots: &[Spot], ways: &mut [WayToBend]) {
    let Some([before, after]) = cold_ends(site, lengths, spots) else { return };
    let Some(place) = ways.first().map(|way| way.place) else { return };
    let worst = |way: &WayToBend| match way.held {
        Held::Datum => -before.length_mm(true),
        Held::Far => -after.length_mm(false),
    };
    let alike = ways.iter().take_while(|way| way.place == place).count();
    ways[..alike].sort_by(|one, other| worst(one).total_cmp(&worst(other)));
    // Where the side that would lie there is hot or gone, it is rolled up from that end, held by the other.
    if let Some(first) = ways.first_mut().filter(|first| worst(first) >= 0.0) {
        first.held = if first.held == Held::Datum { Held::Far } else { Held::Datum };
    }
}

/// Where the bar is gripped best beside what is hot, on the side that has to be held or on either.
pub(crate) fn hold(site: &Site<'_>, progress: &Progress, lengths: &Lengths, need: &Need<'_>) -> Option<Hold> {
    let ends = cold_ends(site, lengths, &need.hot)?;
    let [before, after] = ends.map(|cold| Cold { by_hand: cold.by_hand && need.by_hand, ..cold });
    let bar = Bar::new(site, progress, lengths, need.tasks);
    let on = |side: Held| {
        let (cold, at_start) = if side == Held::Datum { (before, true) } else { (after, false) };
        let length_mm = cold.length_mm(at_start);
        let grip = bar.best(cold).filter(|_| length_mm > 0.0)?;
        Some((grip.worth * handle(site, length_mm), Hold::new(length_mm, cold, grip)))
    };
    let of = |side: Option<Held>| {
        let sides = [Held::Datum, Held::Far].into_iter().filter(|it| side.is_none_or(|wanted| wanted == *it));
        sides.filter_map(on).max_by(|one, other| one.0.total_cmp(&other.0)).map(|(_, hold)| hold)
    };
    // What is cut off is held only where nothing of the piece stays cold.
    let piece = need.side.or_else(|| side_of_the_piece(site, need.tasks));
    of(piece).or_else(|| of(need.side)).or_else(|| nothing_cold(site, lengths, need.side))
}

/// The side of a cut on which the piece lies; none of tasks that cut nothing off, and where the piece lies on both.
pub(crate) fn side_of_the_piece(site: &Site<'_>, tasks: &[Task]) -> Option<Held> {
    let falls = |task: &Task| {
        let form = task.part.and_then(|at| site.flat.get(at)).map(|flat| &flat.segment.form);
        match (task.operation, form) {
            (Operation::PartOff, Some(Form::Hold(_))) | (Operation::Trim, Some(Form::Trim(_))) => task.part,
            _ => None,
        }
    };
    let members = &site.chains[0].1;
    let place = |at: usize| members.iter().position(|member| *member == at);
    let all = tasks.iter().filter_map(falls).map(|at| match place(at) {
        Some(0) => Some(Held::Far),
        Some(last) if last + 1 == members.len() => Some(Held::Datum),
        // Waste beside the rest of the bar falls with it.
        Some(between) if between == 1 && is_hold(site, members[0]) => Some(Held::Far),
        Some(between) if between + 2 == members.len() && is_hold(site, members[between + 1]) => Some(Held::Datum),
        _ => None,
    });
    all.reduce(|one, other| one.filter(|_| one == other)).flatten()
}

fn is_hold(site: &Site<'_>, at: usize) -> bool {
    matches!(site.flat[at].segment.form, Form::Hold(_))
}

/// How poorly the bar is held at best while some tasks are done with these spots hot: 0 where it is held well, 1 where there is
/// nothing to hold; `shapes` are those of the parts by then.
pub(crate) fn clumsy(
    site: &Site<'_>,
    progress: &Progress,
    lengths: &Lengths,
    (shapes, hot, tasks): (&[Option<Shape>], &[Spot], &[Task]),
) -> f64 {
    /// A hold worth so much is as good as any: common practice, no source.
    const WELL: f64 = 0.25;
    let Some(ends) = cold_ends(site, lengths, hot) else { return 0.0 };
    let bar = Bar::shaped(site, progress, lengths, (Cow::Borrowed(shapes), tasks));
    let worth = |(cold, at_start): (Cold, bool)| {
        let length_mm = cold.length_mm(at_start);
        let handle = handle(site, length_mm);
        let grip = if length_mm > 0.0 { bar.best_up_to(cold, WELL / handle.max(1e-6)) } else { None };
        grip.map_or(0.0, |grip| grip.worth * handle)
    };
    let piece = side_of_the_piece(site, tasks);
    let sides = [Held::Datum, Held::Far].into_iter().zip(ends);
    let sides = sides.filter(|(side, _)| piece.is_none_or(|piece| piece == *side));
    let mut best = 0.0;
    for (side, cold) in sides {
        // What is held well on one side needs no other.
        if best < WELL {
            best = worth((cold, side == Held::Datum)).max(best);
        }
    }
    (1.0 - best / WELL).clamp(0.0, 1.0)
}

/// How well a cold length serves as a handle: the least to hold and more is good, and a longer one a little better.
pub(crate) fn handle(site: &Site<'_>, length_mm: f64) -> f64 {
    (length_mm / least_mm(site).max(1e-6)).min(1.0) * (1.0 + 0.2 * (length_mm / Hold::BARE_HAND).min(1.0))
}

/// The end that would be held if it were cold.
fn nothing_cold(site: &Site<'_>, lengths: &Lengths, side: Option<Held>) -> Option<Hold> {
    let there = site.chains[0].1.iter().copied().filter(|at| lengths.lengths[*at] > 0.0);
    let at_start = side == Some(Held::Datum);
    let part = if at_start { there.clone().next()? } else { there.clone().next_back()? };
    let [start, end] = lengths.extent([part].iter());
    let at_mm = if at_start { start } else { end };
    let jaw_mm = extents(&site.balance.stock);
    Some(Hold {
        length_mm: 0.0,
        jaw_mm,
        part,
        at_mm,
        cold_mm: [at_mm; 2],
        by_hand: false,
        from_the_side: false,
        cool_first: false,
        is_poor: true,
    })
}

/// The least length to hold, in mm.
pub(crate) fn least_mm(site: &Site<'_>) -> f64 {
    let own = site.plan.limits.hold.as_ref();
    own.map_or_else(|| Limits::HOLD.in_unit(site.plan.units.length), WrittenLength::mm)
}
