//! Legs in the way: whether a bar, bent as far as it is, can be laid over the anvil for its next bend.
//!
//! The bar is built in space with the bends that it has so far. A block stands where the anvil's face, its horn or the
//! vice would be, under the side that is held; a leg that lies in it is in the way.

use crate::job::heat_rules;
use crate::job::site::{Site, in_mm, thickness_toward};
use fh_core::balance::{Balance, BarBalance};
use fh_core::metal::Bent;
use fh_core::plan::{AnvilPlace, Plan};
use fh_piece::vector::{Vector, dot, minus, plus, times};
use fh_piece::{Frame, Piece, Quality};

/// The anvil below its face, in mm: common practice, no source.
const ANVIL_DEPTH: f64 = 150.0;

/// From the middle of the face along the anvil, in mm: common practice, no source.
const ANVIL_HALF_LENGTH: f64 = 150.0;

/// The vice: along the bar that it holds, beside it, and half its jaws' width, in mm; common practice, no source.
const VICE: [f64; 3] = [100.0, 40.0, 60.0];

/// What is bent to less than this inside radius is bent over an edge, in mm: common practice, no source.
pub(crate) const OVER_AN_EDGE: f64 = 10.0;

/// Legs are looked at in steps of so many mm.
const STEP: f64 = 8.0;

/// What comes so near is bent a little out of the way, in mm; common practice, no source.
const GIVES_WAY: f64 = 3.0;

/// Bends farther apart than so many others are not held against each other.
const NEAR: usize = 8;

/// On a bar with more bends than this, legs are not looked at: the order would no longer follow a drag.
const MOST_BENDS: usize = 60;

/// Whether the legs of a bar are looked at.
pub(crate) fn are_looked_at(site: &Site<'_>) -> bool {
    site.balance.segments.iter().filter(|segment| segment.bent.is_some()).count() <= MOST_BENDS
}

/// From which side a bar is held for a bend.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// What lies toward the datum end is held.
    Datum,
    /// What lies away from the datum end is held.
    Far,
}

/// One way to make a bend.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WayToBend {
    /// Where.
    pub place: AnvilPlace,
    /// What is held.
    pub held: Held,
}

/// A bar in space with some of its bends.
pub(crate) struct Posed {
    plan: Plan,
    balance: Balance,
    piece: Piece,
}

impl Posed {
    /// The bar of a site in some state.
    pub(crate) fn new(site: &Site<'_>, state: &BarBalance) -> Self {
        let mut bar = site.bar.clone();
        bar.count = None;
        let plan = Plan { bars: vec![bar], joints: Vec::new(), underlay: None, ..site.plan.clone() };
        let balance = Balance::of_bars(vec![state.clone()]);
        let piece = fh_piece::piece(&plan, &balance, Quality::Lines);
        Self { plan, balance, piece }
    }

    /// The parts that run into each other, counted through the bar.
    pub(crate) fn overlaps(&self) -> Vec<(usize, usize)> {
        let all = fh_piece::overlaps(&self.plan, &self.balance, &self.piece);
        all.into_iter().map(|overlap| (overlap.first.segment, overlap.second.segment)).collect()
    }

    /// Where the bar runs into itself: two parts, counted through the bar, and how deep in mm.
    pub(crate) fn overlaps_along(&self) -> Vec<(usize, usize, f64)> {
        let all = fh_piece::overlaps_along(&self.plan, &self.balance, &self.piece);
        all.into_iter().map(|overlap| (overlap.first.segment, overlap.second.segment, overlap.depth_mm)).collect()
    }

    /// The ways in which a bend can be made, the best first; none where every one has a leg in the way.
    pub(crate) fn ways(&self, site: &Site<'_>, at: usize) -> Vec<WayToBend> {
        let Some(line) = self.piece.lines.iter().find(|line| line.segment == at) else { return Vec::new() };
        let Some((side, radius)) = site.part(at).and_then(|part| part.balance.bent).and_then(side_and_radius) else {
            return Vec::new();
        };
        let (Some(start), Some(end)) = (line.frames.first(), line.frames.last()) else { return Vec::new() };
        let half = thickness_toward(&site.raw_section(at), side) / 2.0;
        let ends = [(Held::Datum, start, -1.0), (Held::Far, end, 1.0)];
        let mut ways = Vec::new();
        let bent = site.part(at).and_then(|part| part.balance.bent);
        let is_round = !matches!(bent, Some(Bent::Curve { .. } | Bent::Corner { .. }));
        for (place, block) in blocks(site.plan, radius, is_round) {
            for (held, frame, sign) in ends {
                let lain = Lain { frame, side, sign, half };
                if !self.is_in_the_way(at, &lain, block) {
                    ways.push(WayToBend { place, held });
                }
            }
        }
        ways
    }

    /// Whether a part lies in the round of a bend, where the horn is while that is made.
    fn fills(&self, site: &Site<'_>, bend: usize, part: usize) -> bool {
        let line = |at: usize| self.piece.lines.iter().find(|line| line.segment == at);
        let bent = site.part(bend).and_then(|part| part.balance.bent);
        let (Some(round), Some(line)) = (line(bend), line(part)) else { return false };
        let (Some(Bent::Curve { inside_radius, side, .. }), Some(start)) = (bent, round.frames.first()) else {
            return false;
        };
        let radius = in_mm(inside_radius);
        let (sin, cos) = side.sin_cos();
        let toward = plus(times(start.up, cos), times(start.toward, sin));
        let across = plus(times(start.toward, cos), times(start.up, -sin));
        let half = thickness_toward(&site.raw_section(bend), side) / 2.0;
        let middle = plus(start.at, times(toward, half + radius));
        line.frames.iter().any(|frame| {
            let from = minus(frame.at, middle);
            let aside = dot(from, across);
            aside.abs() < ANVIL_HALF_LENGTH && (dot(from, from) - aside * aside).max(0.0).sqrt() < radius - GIVES_WAY
        })
    }

    fn is_in_the_way(&self, bend: usize, lain: &Lain<'_>, block: [f64; 3]) -> bool {
        let others = self.piece.lines.iter().filter(|line| line.segment != bend);
        others.flat_map(|line| line.frames.windows(2)).any(|pair| {
            let (from, to) = (pair[0].at, pair[1].at);
            let step = minus(to, from);
            let count = (dot(step, step).sqrt() / STEP).ceil().max(1.0);
            // However long the bar is, only what comes near the block is walked along.
            let [first, last] = lain.near(from, step, block).map(|share| share * count);
            let places = (first.floor().max(0.0) as u64)..=(last.ceil().min(count) as u64);
            first <= last
                && places.into_iter().any(|place| lain.holds(plus(from, times(step, place as f64 / count)), block))
        })
    }
}

/// A bar laid on a block for a bend.
struct Lain<'f> {
    /// Where the bend begins, on the side that is held.
    frame: &'f Frame,
    /// The side that it is bent toward, where the block is.
    side: f64,
    /// Which way along the bar the block lies.
    sign: f64,
    /// Half the bar's thickness.
    half: f64,
}

impl Lain<'_> {
    /// From where to where the way from a point along a step lies within a block, as shares of the step; the first is beyond
    /// the last where it does not.
    fn near(&self, from: Vector, step: Vector, [length, depth, half_width]: [f64; 3]) -> [f64; 2] {
        let [start, way] = [self.beside(minus(from, self.frame.at)), self.beside(step)];
        let sides = [[0.0, length], [self.half, self.half + depth], [-half_width, half_width]];
        sides.into_iter().enumerate().fold([0.0, 1.0], |[first, last]: [f64; 2], (axis, [low, high])| {
            let (at, by) = (start[axis], way[axis]);
            if by.abs() < f64::EPSILON {
                return if (low..=high).contains(&at) { [first, last] } else { [1.0, 0.0] };
            }
            let (one, other) = ((low - at) / by, (high - at) / by);
            [first.max(one.min(other)), last.min(one.max(other))]
        })
    }

    /// A way in the block's own directions: along the bar, down into the block, across it.
    fn beside(&self, way: Vector) -> [f64; 3] {
        let (sin, cos) = self.side.sin_cos();
        let toward = plus(times(self.frame.up, cos), times(self.frame.toward, sin));
        let across = plus(times(self.frame.toward, cos), times(self.frame.up, -sin));
        [dot(way, self.frame.along) * self.sign, dot(way, toward), dot(way, across)]
    }

    /// Whether a point lies in a block of a length, a depth and a half width.
    fn holds(&self, point: Vector, [length, depth, half_width]: [f64; 3]) -> bool {
        let [along, down, across] = self.beside(minus(point, self.frame.at));
        let below = down - self.half;
        (GIVES_WAY..length - GIVES_WAY).contains(&along)
            && (GIVES_WAY..depth).contains(&below)
            && across.abs() < half_width
    }
}

/// The blocks that a bend of an inside radius can be made on, in mm: length along the bar, depth, half width.
fn blocks(plan: &Plan, radius: f64, is_round: bool) -> Vec<(AnvilPlace, [f64; 3])> {
    let face = heat_rules::anvil_mm(plan);
    let edge = (AnvilPlace::FarEdge, [face, ANVIL_DEPTH, ANVIL_HALF_LENGTH]);
    let horn = (AnvilPlace::Horn, [face.min(2.0 * radius), (2.0 * radius).min(ANVIL_DEPTH), ANVIL_HALF_LENGTH]);
    let vice = (AnvilPlace::Vice, VICE);
    if radius < OVER_AN_EDGE && !is_round { vec![edge, vice] } else { vec![horn, edge, vice] }
}

/// The side that a bend is bent toward and its inside radius in mm; none of what is not bent over an edge.
fn side_and_radius(bent: Bent) -> Option<(f64, f64)> {
    match bent {
        Bent::Curve { inside_radius, side, .. } => Some((side, in_mm(inside_radius))),
        Bent::Ring { inside_diameter, side, .. } => Some((side, in_mm(inside_diameter) / 2.0)),
        // Its inside radius stands in the peak; an edge makes it.
        Bent::Corner { side } => Some((side, 0.0)),
        Bent::Scroll { spiral, side, .. } => Some((side, spiral.outer_mm)),
        Bent::Socket { .. } | Bent::Twist { .. } => None,
    }
}

/// The pairs of bends, by their tasks, of which the first has to be made before the second: the other way round a leg would
/// be in the way on anvil and vice alike.
pub(crate) fn middle_first(site: &Site<'_>, bends: &[(usize, usize)]) -> Vec<(usize, usize)> {
    if !are_looked_at(site) {
        return Vec::new();
    }
    // The bar as it is forged, with one bend alone.
    let straight = straight(site.balance);
    let posed: Vec<Posed> = bends
        .iter()
        .map(|(at, _)| {
            let mut state = straight.clone();
            if let (Some(slot), Some(part)) = (state.segments.get_mut(*at), site.part(*at)) {
                slot.bent = part.balance.bent;
            }
            Posed::new(site, &state)
        })
        .collect();
    let mut pairs = Vec::new();
    for (first, (at, task)) in bends.iter().enumerate() {
        for (second, (other, other_task)) in bends.iter().enumerate().skip(first + 1).take(NEAR) {
            let other_can = has_way(site, &posed[first], *other);
            let own_can = has_way(site, &posed[second], *at);
            match (other_can, own_can) {
                (true, false) => pairs.push((*task, *other_task)),
                (false, true) => pairs.push((*other_task, *task)),
                _ => {}
            }
        }
    }
    pairs
}

/// The pairs of neighboring bends, by their tasks, of which the first has to be made before the second: what the second is bent
/// to lies where the horn is for the first.
pub(crate) fn round_the_horn(site: &Site<'_>, bends: &[(usize, usize)]) -> Vec<(usize, usize)> {
    if !are_looked_at(site) || bends.len() < 2 {
        return Vec::new();
    }
    let finished = Posed::new(site, site.balance);
    let mut pairs = Vec::new();
    for pair in bends.windows(2) {
        let [(one, first), (other, second)] = [pair[0], pair[1]];
        match (finished.fills(site, one, other), finished.fills(site, other, one)) {
            (true, false) => pairs.push((first, second)),
            (false, true) => pairs.push((second, first)),
            _ => {}
        }
    }
    pairs
}

/// Whether a part is bent over an edge, the horn or in the vice.
pub(crate) fn is_bent_over_an_edge(site: &Site<'_>, at: usize) -> bool {
    site.part(at).and_then(|part| part.balance.bent).and_then(side_and_radius).is_some()
}

/// Whether a bend can be made at all; what is not bent over an edge always can.
fn has_way(site: &Site<'_>, posed: &Posed, at: usize) -> bool {
    !is_bent_over_an_edge(site, at) || !posed.ways(site, at).is_empty()
}

/// A bar as it is forged, before any bend.
fn straight(balance: &BarBalance) -> BarBalance {
    let mut state = balance.clone();
    state.segments.iter_mut().for_each(|segment| segment.bent = None);
    state
}
