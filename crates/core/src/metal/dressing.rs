//! A length dressed in a die: what the die leaves of each section, and how much of its metal goes along the bar.
//!
//! A die is a line across the bar, its height over the side that it dresses: a fuller's nose `r - √(r² - x²)`, a swage's hollow
//! `√(r² - x²) - r` with lips beyond it, a V-block's faces `-|x| / tan(α/2)`. It goes in by its depth from where it first touches,
//! and what stands above it is moved. The share of that which goes sideways makes the section as much wider; the rest goes along
//! the bar. On a flat face the moved area has closed forms (plane geometry), which the tests hold it against.

use super::gauss::GAUSS_8;
use super::{MatchedPoint, SectionSize, Shape, in_mm, matched_outline};
use fh_heat::spread::{DOUBT, spread_share};
use uom::si::f64::Length;

/// A die with its sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Die {
    /// A round nose, its groove along the bar.
    Fuller {
        /// The radius of its nose.
        radius: Length,
    },
    /// A round nose, its groove across the bar.
    FullerAcross {
        /// The radius of its nose.
        radius: Length,
    },
    /// A hollow.
    Swage {
        /// The radius of its hollow.
        radius: Length,
    },
    /// A V.
    VBlock {
        /// Between its faces, in radians.
        angle: f64,
    },
}

/// A dressed length with every size settled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dressing {
    /// The die.
    pub die: Die,
    /// Where it begins, from the part's start.
    pub start: Length,
    /// Where it ends.
    pub end: Length,
    /// The side that is dressed, from up by way of toward-you, in radians.
    pub side: f64,
    /// How far the die goes in.
    pub depth: Length,
    /// How far off its likely value the share is reckoned that goes sideways: -1, 0 or 1 doubts.
    pub lean: f64,
}

/// What dressing comes to on a part.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Moved {
    /// The metal that the dies move, in mm³.
    pub moved_mm3: f64,
    /// What of that goes along the bar, in mm³: so much less the part holds than without dressing.
    pub along_mm3: f64,
}

/// A die goes no further through a part than this share of its thickness, whatever is written: a finding tells it.
const THROUGH: f64 = 0.9;
/// A section of which less than this share is left has nothing left that could grow wider: dies that meet from two sides, whatever
/// is written.
const NOTHING: f64 = 1e-3;
/// Into so many steps the line of a die is cut to be reckoned.
const FINE: usize = 512;
/// Two places of a ring next to a die's edge lie so far apart, in mm.
const HAIR_MM: f64 = 1e-7;

impl Dressing {
    /// How far the die has gone in at a place along the part, in mm from its start; none beyond it.
    fn depth_at(&self, at: f64) -> Option<f64> {
        let (start, end, depth) = (in_mm(self.start), in_mm(self.end), in_mm(self.depth));
        if at <= start || at >= end {
            return None;
        }
        let Die::FullerAcross { radius } = self.die else { return Some(depth) };
        let (radius, from_middle) = (in_mm(radius), at - f64::midpoint(start, end));
        let nose = radius - (radius * radius - from_middle * from_middle).max(0.0).sqrt();
        (depth > nose).then_some(depth - nose)
    }

    /// It on a part that is so many times longer.
    #[must_use]
    pub fn longer(self, times: f64) -> Self {
        Self { start: self.start * times, end: self.end * times, ..self }
    }

    /// Half of how wide the die's line is that matters; none where it has no end.
    fn half_width(&self) -> Option<f64> {
        match self.die {
            Die::Fuller { radius } => Some(half_chord_mm(in_mm(radius), in_mm(self.depth))),
            Die::Swage { radius } => Some(in_mm(radius)),
            Die::FullerAcross { .. } | Die::VBlock { .. } => None,
        }
    }

    /// The height of the die's line at a distance from its middle, in mm.
    fn height(&self, across: f64) -> f64 {
        match self.die {
            Die::Fuller { radius } => {
                let radius = in_mm(radius);
                if across.abs() <= radius { radius - (radius * radius - across * across).sqrt() } else { f64::INFINITY }
            }
            Die::FullerAcross { .. } => 0.0,
            Die::Swage { radius } => {
                let radius = in_mm(radius);
                (radius * radius - across * across).max(0.0).sqrt() - radius
            }
            Die::VBlock { angle } => -across.abs() / (angle / 2.0).tan(),
        }
    }

    /// The share of the moved metal that goes sideways, from 0 to 1; `chord_mm` is how wide the groove is, `width_mm` how wide the
    /// bar is there.
    ///
    /// A fuller's ridge is a narrow bite: across the bar the share is that of its width over the bar's, along the bar by symmetry
    /// what is left of that of its width over its length ([`spread_share`]). Between the flanks of a swage or a V nothing goes
    /// sideways (common practice, no source).
    fn sideways(&self, chord_mm: f64, width_mm: f64) -> f64 {
        let share = match self.die {
            Die::Swage { .. } | Die::VBlock { .. } => return 0.0,
            Die::Fuller { .. } => 1.0 - spread_share(chord_mm / in_mm(self.end - self.start).max(1e-9)),
            Die::FullerAcross { .. } => spread_share(chord_mm / width_mm.max(1e-9)),
        };
        (share + self.lean * DOUBT).clamp(0.0, 1.0)
    }

    /// How wide a fuller's groove is on a flat face, or how long across the bar, in mm; 0 of the other dies.
    pub fn chord_mm(&self) -> f64 {
        match self.die {
            Die::Fuller { radius } | Die::FullerAcross { radius } => {
                2.0 * half_chord_mm(in_mm(radius), in_mm(self.depth))
            }
            Die::Swage { .. } | Die::VBlock { .. } => 0.0,
        }
    }

    /// Where a ring has to be cut so that the die's line lies in it: edges, and the share of each.
    pub fn cuts(&self, ring: &[[f64; 2]], steps: usize) -> Vec<(usize, f64)> {
        let turned: Vec<[f64; 2]> = ring.iter().map(|point| to_side(*point, self.side)).collect();
        let next = |index: usize| turned[(index + 1) % turned.len()];
        let wanted = self.wanted_places(&turned, steps);
        let on = |from: [f64; 2], to: [f64; 2]| -> Vec<f64> {
            let run = to[0] - from[0];
            let shares = wanted.iter().map(|place| (place - from[0]) / run);
            let mut own: Vec<f64> = shares.filter(|share| *share > 1e-9 && *share < 1.0 - 1e-9).collect();
            own.sort_by(f64::total_cmp);
            own
        };
        let all: Vec<Vec<f64>> = turned.iter().enumerate().map(|(index, from)| on(*from, next(index))).collect();
        // It touches somewhere on its line, so that is cut first.
        let listed: Vec<(usize, f64)> =
            all.iter().enumerate().flat_map(|(index, own)| own.iter().map(move |share| (index, *share))).collect();
        let level = self.level(&cut_ring(&turned, &listed, mix), in_mm(self.depth));
        let mut cuts = Vec::with_capacity(listed.len());
        for (index, mut own) in all.into_iter().enumerate() {
            own.extend(self.crossings([turned[index], next(index)], &own, level));
            own.sort_by(f64::total_cmp);
            cuts.extend(own.into_iter().map(|share| (index, share)));
        }
        cuts
    }

    /// The places across the bar at which a ring is cut: round a nose or a hollow at even turns, and on both sides of its edges.
    fn wanted_places(&self, turned: &[[f64; 2]], steps: usize) -> Vec<f64> {
        let reach = turned.iter().map(|point| point[0].abs()).fold(0.0, f64::max);
        let Some(half) = self.half_width() else { return vec![0.0] };
        let turn = std::f64::consts::PI / steps.max(1) as f64;
        let mut places: Vec<f64> = (0..=steps).map(|step| -half * (turn * step as f64).cos()).collect();
        places.extend([-half - HAIR_MM, 0.0, half + HAIR_MM]);
        places.retain(|place| place.abs() < reach);
        places
    }

    /// Where an edge crosses the die's line, between the places where it is cut already: by halving.
    fn crossings(&self, [from, to]: [[f64; 2]; 2], cut: &[f64], level: f64) -> Vec<f64> {
        const HALVINGS: usize = 40;
        let above = |share: f64| {
            let place = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
            place[1] - self.height(place[0]) - level > 0.0
        };
        let ends: Vec<f64> = std::iter::once(0.0).chain(cut.iter().copied()).chain([1.0]).collect();
        let mut crossed = Vec::new();
        for pair in ends.windows(2) {
            let (mut low, mut high) = (pair[0], pair[1]);
            let at_low = above(low);
            if at_low == above(high) || high - low < 1e-9 {
                continue;
            }
            for _ in 0..HALVINGS {
                let middle = f64::midpoint(low, high);
                if above(middle) == at_low { low = middle } else { high = middle }
            }
            crossed.push(f64::midpoint(low, high));
        }
        crossed
    }

    /// How high the die's line lies once it has gone in so far from where it first touched.
    fn level(&self, turned: &[[f64; 2]], depth: f64) -> f64 {
        let touched = turned.iter().map(|point| point[1] - self.height(point[0])).fold(f64::NEG_INFINITY, f64::max);
        let heights = turned.iter().map(|point| point[1]);
        let (low, high) = (heights.clone().fold(f64::INFINITY, f64::min), heights.fold(f64::NEG_INFINITY, f64::max));
        touched - depth.min(THROUGH * (high - low))
    }

    /// Presses a ring at a place along the part, in mm from its start: what stands above the die goes down to it, and the section
    /// grows wider by what goes sideways. The area that was moved and the area that is left, in mm².
    pub fn press(&self, ring: &mut [[f64; 2]], at: f64) -> Option<[f64; 2]> {
        let depth = self.depth_at(at)?;
        let before = area(ring);
        let mut turned: Vec<[f64; 2]> = ring.iter().map(|point| to_side(*point, self.side)).collect();
        let level = self.level(&turned, depth);
        let width = 2.0 * turned.iter().map(|point| point[0].abs()).fold(0.0, f64::max);
        // What the die would press out below the bar the anvil holds back.
        let lowest = turned.iter().map(|point| point[1]).fold(f64::INFINITY, f64::min);
        for point in &mut turned {
            point[1] = point[1].min((level + self.height(point[0])).max(lowest));
        }
        let left = area(&turned).max(0.0);
        let moved = before - left;
        let kept = moved * self.sideways(self.chord_mm(), width);
        let wider = if left > NOTHING * before { 1.0 + kept / left } else { 1.0 };
        for (point, turned) in ring.iter_mut().zip(turned) {
            *point = from_side([turned[0] * wider, turned[1]], self.side);
        }
        Some([moved, left * wider])
    }
}

/// Half of how wide a round nose is where it has gone in so far.
pub fn half_chord_mm(radius: f64, depth: f64) -> f64 {
    if depth < radius { (depth * (2.0 * radius - depth)).max(0.0).sqrt() } else { radius }
}

/// A ring cut at some shares of its edges, in their order.
fn cut_ring<P: Copy>(ring: &[P], cuts: &[(usize, f64)], between: impl Fn(P, P, f64) -> P) -> Vec<P> {
    let mut all = Vec::with_capacity(ring.len() + cuts.len());
    let mut next = cuts.iter().peekable();
    for (index, point) in ring.iter().enumerate() {
        all.push(*point);
        while let Some((_, share)) = next.next_if(|cut| cut.0 == index) {
            all.push(between(*point, ring[(index + 1) % ring.len()], *share));
        }
    }
    all
}

/// The outline of a part's sections, cut so that the lines of its dies lie in it; none of a form that no die dresses.
pub fn dressed_outline(
    shape: &Shape,
    reversed: bool,
    dressings: &[Dressing],
    steps: [usize; 2],
) -> Option<Vec<MatchedPoint>> {
    let [from, to] = ends(shape)?;
    let mut outline = matched_outline(&from.section(), &to.section(), steps[0]);
    // Along a taper the die's line lies elsewhere on each section: it is cut for some of them.
    let is_even = matches!(shape, Shape::Prism { .. });
    let (places, each) = if is_even { (vec![0.5], steps[1]) } else { (vec![0.0, 0.25, 0.5, 0.75, 1.0], steps[1] / 4) };
    for dressing in dressings {
        for place in &places {
            let at = in_mm(dressing.start + (dressing.end - dressing.start) * *place);
            let ring = ring_at(&outline, shape, reversed, at);
            let cuts = dressing.cuts(&ring, each.max(2));
            let between = |one: MatchedPoint, other: MatchedPoint, share: f64| MatchedPoint {
                first: mix(one.first, other.first, share),
                second: mix(one.second, other.second, share),
            };
            outline = cut_ring(&outline, &cuts, between);
        }
    }
    Some(outline)
}

/// The section of a part at a place, in mm from its start, about its middle.
pub fn ring_at(outline: &[MatchedPoint], shape: &Shape, reversed: bool, at: f64) -> Vec<[f64; 2]> {
    let share = (at / in_mm(shape.length()).max(1e-12)).clamp(0.0, 1.0);
    let share = shape.runout().share_at(if reversed { 1.0 - share } else { share });
    let mut ring: Vec<[f64; 2]> = outline.iter().map(|point| point.at(share)).collect();
    let rise = centroid_rise(&ring);
    ring.iter_mut().for_each(|point| point[1] -= rise);
    ring
}

/// What some dies move of a part.
///
/// Where nothing changes along the bar one section tells it all; along a taper, and across the bar, it is summed by Gauss's rule.
pub(crate) fn moved(shape: &Shape, reversed: bool, dressings: &[Dressing]) -> Moved {
    const ROUND: usize = 256;
    let mut sum = Moved::default();
    let Some(outline) = dressed_outline(shape, reversed, dressings, [ROUND, FINE]) else { return sum };
    let even = matches!(shape, Shape::Prism { .. });
    for pair in stretches(shape, dressings).windows(2) {
        let [start, end] = [pair[0], pair[1]];
        let middle = f64::midpoint(start, end);
        let here: Vec<&Dressing> = dressings.iter().filter(|one| one.covers(middle)).collect();
        if here.is_empty() {
            continue;
        }
        let is_even = even && here.iter().all(|one| !matches!(one.die, Die::FullerAcross { .. }));
        let places = if is_even { vec![(middle, 1.0)] } else { places_between(start, end) };
        for (at, weight) in places {
            let mut ring = ring_at(&outline, shape, reversed, at);
            let before = area(&ring);
            let mut left = before;
            for one in &here {
                let Some([moved, rest]) = one.press(&mut ring, at) else { continue };
                sum.moved_mm3 += moved * weight * (end - start);
                left = rest;
            }
            sum.along_mm3 += (before - left) * weight * (end - start);
        }
    }
    // Thinner than numbers can tell the sides of a section apart, no die moves anything.
    if sum.moved_mm3.is_finite() && sum.along_mm3.is_finite() { sum } else { Moved::default() }
}

/// The area in mm² that dressing takes along the bar at a place along a part, in mm from its start: as fine as it is drawn.
pub(crate) fn gone_at(shape: &Shape, reversed: bool, dressings: &[Dressing], at: f64) -> f64 {
    const COARSE: usize = 128;
    let here: Vec<Dressing> = dressings.iter().filter(|one| one.covers(at)).copied().collect();
    let outline = (!here.is_empty()).then(|| dressed_outline(shape, reversed, &here, [COARSE, COARSE])).flatten();
    let Some(outline) = outline else { return 0.0 };
    let mut ring = ring_at(&outline, shape, reversed, at);
    let before = area(&ring);
    let left = here.iter().fold(before, |left, one| one.press(&mut ring, at).map_or(left, |[_, rest]| rest));
    let gone = before - left;
    if gone.is_finite() { gone } else { 0.0 }
}

impl Dressing {
    /// Whether a place along the part, in mm from its start, lies on it.
    pub fn covers(&self, at: f64) -> bool {
        in_mm(self.start) < at && at < in_mm(self.end)
    }
}

/// The places along a part at which some dressed length begins or ends, in order, in mm.
fn stretches(shape: &Shape, dressings: &[Dressing]) -> Vec<f64> {
    let length = in_mm(shape.length());
    let mut all: Vec<f64> = dressings.iter().flat_map(|one| [in_mm(one.start), in_mm(one.end)]).collect();
    all.retain(|at| *at > 0.0 && *at < length);
    all.extend([0.0, length]);
    all.sort_by(f64::total_cmp);
    all
}

/// Places between two, with the share of the sum that each has: Gauss's rule of 8 points over the turn of a half circle, so that
/// what ends steeply is met.
fn places_between(start: f64, end: f64) -> Vec<(f64, f64)> {
    let (middle, half) = (f64::midpoint(start, end), (end - start) / 2.0);
    let quarter = std::f64::consts::FRAC_PI_2;
    let one = |node: f64, weight: f64| {
        let (sin, cos) = (node * quarter).sin_cos();
        (middle + half * sin, weight * quarter * cos / 2.0)
    };
    GAUSS_8.iter().flat_map(|(node, weight)| [one(-node, *weight), one(*node, *weight)]).collect()
}

fn ends(shape: &Shape) -> Option<[SectionSize; 2]> {
    match shape {
        Shape::Prism { section, .. } => Some([*section, *section]),
        Shape::Taper { from, to, .. } => Some([*from, *to]),
        _ => None,
    }
}

fn mix(a: [f64; 2], b: [f64; 2], share: f64) -> [f64; 2] {
    [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]
}

/// Across the die and toward it, of a place toward you and up.
fn to_side([toward, up]: [f64; 2], side: f64) -> [f64; 2] {
    let (sin, cos) = side.sin_cos();
    [toward * cos - up * sin, toward * sin + up * cos]
}

/// The way back.
fn from_side([across, high]: [f64; 2], side: f64) -> [f64; 2] {
    let (sin, cos) = side.sin_cos();
    [across * cos + high * sin, high * cos - across * sin]
}

fn area(ring: &[[f64; 2]]) -> f64 {
    let next = |index: usize| ring[(index + 1) % ring.len()];
    ring.iter().enumerate().map(|(index, a)| a[0] * next(index)[1] - next(index)[0] * a[1]).sum::<f64>() / 2.0
}

/// How far a ring's centroid lies above its origin; 0 where it has no area.
fn centroid_rise(ring: &[[f64; 2]]) -> f64 {
    let next = |index: usize| ring[(index + 1) % ring.len()];
    let cross = |index: usize, a: &[f64; 2]| a[0] * next(index)[1] - next(index)[0] * a[1];
    let moment: f64 = ring.iter().enumerate().map(|(index, a)| (a[1] + next(index)[1]) * cross(index, a)).sum();
    let area = area(ring);
    if area > 1e-12 { moment / 6.0 / area } else { 0.0 }
}
