//! What the tongs hold while a step is done.

use crate::heating::Lengths;
use crate::legs::{Held, WayToBend};
use crate::progress::Progress;
use crate::site::{Site, extents, in_mm, in_mm2};
use crate::state::shape_now;
use fh_core::metal::Shape;
use fh_core::plan::{Chain, Form, Limits};
use fh_measure::WrittenLength;

/// Beyond the part that is worked, so much is too hot to hold, in mm: common practice, no source.
const HOT_MARGIN: f64 = 25.0;

/// The end of a bar that is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// How long the part is that stays cold enough to hold, in mm.
    pub length_mm: f64,
    /// Its size from side to side and from top to bottom where the tongs grip, in mm.
    pub jaw_mm: [f64; 2],
    /// The part that is gripped, counted through the bar.
    pub part: usize,
    /// Whether so much of it is cold that it is held in the hand.
    pub by_hand: bool,
}

impl Hold {
    /// What is wider than so many mm is held by its thickness: common practice, no source.
    pub(crate) const WIDE: f64 = 40.0;
    /// What stays cold for so many mm is held in the hand: common practice, no source.
    const BARE_HAND: f64 = 450.0;
    /// What hangs out farther than so many mm is heavy and whips, so that it is propped: common practice, no source.
    const PROPPED: f64 = 900.0;

    /// Whether it is so long that one hand does not carry it.
    pub(crate) fn is_propped(&self) -> bool {
        self.length_mm > Self::PROPPED
    }
}

/// A bar runs between the reins of tongs for no more than so many mm: common practice, no source.
const REINS: f64 = 120.0;
/// Jaws are about so long, in mm: common practice, no source.
const JAWS: f64 = 30.0;

/// What is cold enough to hold on either side of what is hot: how long it is in mm, and the part at its end.
fn cold_ends(site: &Site<'_>, lengths: &Lengths, hot: &[usize]) -> Option<[(f64, usize); 2]> {
    let there = site.chains[0].1.iter().copied().filter(|at| lengths.lengths[*at] > 0.0);
    let (first, last) = (there.clone().next()?, there.clone().next_back()?);
    let [start, end] = lengths.extent([first, last].iter());
    let [hot_start, hot_end] = lengths.extent(hot.iter());
    Some([(hot_start - HOT_MARGIN - start, first), (end - hot_end - HOT_MARGIN, last)])
}

/// Of the ways to make a bend at the best place, puts that first in which there is more to hold.
pub(crate) fn first_to_hold(site: &Site<'_>, lengths: &Lengths, hot: &[usize], ways: &mut [WayToBend]) {
    let Some([(before, _), (after, _)]) = cold_ends(site, lengths, hot) else { return };
    let Some(place) = ways.first().map(|way| way.place) else { return };
    let worst = |way: &WayToBend| if way.held == Held::Datum { -before } else { -after };
    let alike = ways.iter().take_while(|way| way.place == place).count();
    ways[..alike].sort_by(|one, other| worst(one).total_cmp(&worst(other)));
    // Where the side that would lie there is hot or gone, it is rolled up from that end, held by the other.
    if let Some(first) = ways.first_mut().filter(|first| worst(first) >= 0.0) {
        first.held = if first.held == Held::Datum { Held::Far } else { Held::Datum };
    }
}

/// The longer end of the bar beside what is hot, or the end on the side that has to be held.
pub(crate) fn hold(
    site: &Site<'_>,
    progress: &Progress,
    lengths: &Lengths,
    hot: &[usize],
    side: Option<Held>,
) -> Option<Hold> {
    let there: Vec<usize> = site.chains[0].1.iter().copied().filter(|at| lengths.lengths[*at] > 0.0).collect();
    let [before, after] = cold_ends(site, lengths, hot)?;
    // What is split is held no better than half as much bar.
    let worth = |(cold, part): (f64, usize)| if progress.stages[part].cut { cold / 2.0 } else { cold };
    let is_before = side.map_or(worth(before) > worth(after), |side| side == Held::Datum);
    let (length, part) = if is_before { before } else { after };
    let length_mm = length.max(0.0);
    let by_hand = length_mm > Hold::BARE_HAND;
    let at_start = site.place[part].1 == 0;
    let part = gripped(site, progress, lengths, &there, part, length_mm);
    let jaw_mm = jaw(site, progress, lengths, part, at_start).unwrap_or_else(|| extents(&site.balance.stock));
    Some(Hold { length_mm, jaw_mm, part, by_hand })
}

/// How wide and how thick a part is where jaws grip it, near its outer end, in mm; of a split that is cut, of one branch.
fn jaw(site: &Site<'_>, progress: &Progress, lengths: &Lengths, part: usize, at_start: bool) -> Option<[f64; 2]> {
    if progress.stages[part].cut {
        let of_it = |chain: &Chain| matches!(chain, Chain::Branch { split, .. } if *split == part);
        let (_, members) = site.chains.iter().find(|(chain, _)| of_it(chain))?;
        let outer = if at_start { members.first() } else { members.last() };
        return jaw(site, progress, lengths, *outer?, at_start);
    }
    let shape = shape_now(site, progress, part, &lengths.lengths)?;
    let long = lengths.lengths[part].max(1e-6);
    let inward = (JAWS / long).min(0.5);
    let share = if at_start { inward } else { 1.0 - inward };
    let own = if site.part(part)?.balance.reversed { 1.0 - share } else { share };
    let raw = extents(&site.raw_section(part));
    let section = match &shape {
        Shape::Taper { from, to, runout, .. } => {
            let (f, from, to) = (runout.share_at(own), extents(from), extents(to));
            Some([0, 1].map(|way| (1.0 - f) * from[way] + f * to[way]))
        }
        shape => shape_section(shape),
    };
    // What has no section of its own is gripped on about so much.
    Some(section.unwrap_or([raw[0], in_mm2(shape.area_at(own)).max(0.0) / raw[0].max(1e-6)]))
}

fn shape_section(shape: &Shape) -> Option<[f64; 2]> {
    match shape {
        Shape::Prism { section, .. } | Shape::Peak { section, .. } => Some(extents(section)),
        Shape::Taper { from, to, .. } => {
            let thicker = if to.area() > from.area() { to } else { from };
            Some(extents(thicker))
        }
        Shape::Shoulder { to, .. } => Some(extents(to)),
        Shape::Flag { outline, root, .. } => Some([in_mm(outline.width()), in_mm(*root)]),
        Shape::Hole { outline, thickness, .. } => Some([in_mm(outline.width()), in_mm(*thickness)]),
        Shape::Ball { diameter: size } | Shape::Cube { side: size } => Some([in_mm(*size); 2]),
        // Cut, it is gripped by one of its branches.
        Shape::Split(_) => None,
    }
}

/// The part within the length that is held which tongs grip best: long, straight and even, and not spread much wider than the bar.
fn gripped(site: &Site<'_>, progress: &Progress, lengths: &Lengths, there: &[usize], end: usize, held: f64) -> usize {
    let [from, to] = lengths.extent([end].iter());
    let at_start = site.place[end].1 == 0;
    // The tongs keep away from the heat where there is room for it.
    let held = if held > 2.0 * HOT_MARGIN { held - HOT_MARGIN } else { held };
    let (low, high) = if at_start { (from, from + held) } else { (to - held, to) };
    let inside = |at: usize| {
        let [start, stop] = lengths.extent([at].iter());
        (stop.min(high) - start.max(low)).max(0.0)
    };
    // The rest of the bar runs between the reins, and there is not much room.
    let overhang = |at: usize| {
        let [start, stop] = lengths.extent([at].iter());
        if at_start { start - from } else { to - stop }
    };
    let is_in_reach = |at: &usize| held > Hold::BARE_HAND || overhang(*at) <= REINS;
    let stock = in_mm(site.balance.stock_section.width().max(site.balance.stock_section.thickness()));
    let width = |at: usize| {
        let shape = shape_now(site, progress, at, &lengths.lengths);
        shape.as_ref().and_then(shape_section).map_or(stock, |[width, thickness]| width.max(thickness))
    };
    // Tongs slip on what is bent or twisted: common practice, no source.
    let straight = |at: usize| if progress.stages[at].bent { 0.2 } else { 1.0 };
    let even = |at: usize| match site.flat[at].segment.form {
        Form::Plain { .. } | Form::Drawn { .. } | Form::Hold { .. } => 1.0,
        _ => 0.4,
    };
    let worth = |at: usize| even(at) * inside(at) * (stock / width(at).max(stock)).powi(2) * straight(at);
    there.iter().copied().filter(is_in_reach).max_by(|one, other| worth(*one).total_cmp(&worth(*other))).unwrap_or(end)
}

/// The least length to hold, in mm.
pub(crate) fn least_mm(site: &Site<'_>) -> f64 {
    let own = site.plan.limits.hold.as_ref();
    own.map_or_else(|| Limits::HOLD.in_unit(site.plan.units.length), WrittenLength::mm)
}
