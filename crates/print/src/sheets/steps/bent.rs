//! What the bar, or the whole piece, looks like once something of it is bent.

use super::anchor::{anchor, directions};
use super::bar_scale::BarScale;
use super::bend_notes::BendNote;
use super::detail::{Stretch, stretches};
use super::faces::{Faces, outlines};
use crate::drawing::{Item, Point, Text, at};
use crate::pen::Gray;
use crate::sheets::flow::Block;
use crate::sheets::templates::faces::samples;
use crate::sheets::templates::space::Plane;
use crate::sheets::type_sizes::CAPTION;
use fh_core::balance::Balance;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::Plan;
use fh_piece::vector::{Vector, length, minus};
use fh_piece::{Line, Piece, Quality, piece};
use std::collections::BTreeSet;

/// The tallest picture of the whole.
const TALLEST_MM: f64 = 25.0;
/// The tallest detail.
const TALLEST_DETAIL_MM: f64 = 34.0;
/// The largest scale of a detail.
const DETAIL_SCALE: f64 = 0.5;
/// A whole picture that is at least so large needs no detail.
const LARGE_ENOUGH: f64 = 0.4;
/// A whole picture smaller than this gives way to its detail.
const TOO_SMALL: f64 = 0.155;
/// A detail is larger than the whole picture by this factor at least.
const WORTH: f64 = 1.7;
/// The widest that a detail is beside the whole picture, as a share of what both have.
const DETAIL_SHARE: f64 = 0.5;
/// Between the whole picture and the names of the detail.
const BETWEEN_MM: f64 = 5.0;
/// Free above and below it.
const GAP_MM: f64 = 1.5;
/// Room beside a picture for what is written into it.
const WRITTEN_MM: f64 = 16.0;
/// Room over and under a picture for the same, where it has none inside.
const OVER_MM: f64 = 12.0;
/// Of a bar of more parts than this a picture too small to tell anything is left out.
const MOST_PARTS: usize = 60;
/// What lies nearer to what is worked than this is looked at for its detail, in mm.
const NEAR_MM: f64 = 120.0;
/// A bend that takes no more of a view than this is seen from its edge, in mm².
const FLAT_MM2: f64 = 20.0;
/// What reaches farther than this, in mm, is not drawn.
const FARTHEST_MM: f64 = 1e6;

/// A bar or a piece as it is now.
pub(super) struct Now<'a> {
    plan: &'a Plan,
    balance: &'a Balance,
    piece: Piece,
    /// Whether it is shown for what is put together.
    put_together: bool,
}

/// A view on paper, of the whole or of a detail.
struct Seen {
    view: &'static str,
    names: Vec<String>,
    plane: Plane,
    scale: f64,
    bounds: [[f64; 2]; 2],
    stretches: Vec<Stretch>,
}

impl<'a> Now<'a> {
    /// What the balance says of it, in space.
    pub(super) fn new(plan: &'a Plan, balance: &'a Balance) -> Self {
        Self { plan, balance, piece: piece(plan, balance, Quality::Print), put_together: false }
    }

    /// Only some of its bars' copies, as they are put together so far.
    pub(super) fn only(mut self, copies: &BTreeSet<(usize, u32)>) -> Self {
        self.piece.lines.retain(|line| copies.contains(&(line.bar, line.copy)));
        self.piece.solids.retain(|solid| copies.contains(&(solid.bar, solid.copy)));
        self.put_together = true;
        self
    }

    /// Whether something is bent that a picture tells.
    pub(super) fn is_bent(&self) -> bool {
        let segments = self.balance.bars.iter().flat_map(|bar| &bar.segments);
        let mut bends = segments.filter(|segment| segment.shape.is_some()).filter_map(|segment| segment.bent);
        bends.any(is_told)
    }

    /// The picture from where it shows most, named at the left; beside it, or in its place where it is too small, what is
    /// bent in the step. Nothing where it cannot be drawn.
    pub(super) fn block(&self, worked: &dyn Fn(&Line) -> bool, names_mm: f64, width: f64) -> Block {
        let room = [width - names_mm, TALLEST_MM];
        if self.is_crowd(room) {
            return self.near(worked).detail_alone(worked, names_mm, width);
        }
        let Some(whole) = self.whole(worked, room) else { return Block::default() };
        let bends = |line: &Line| worked(line) && self.is_bent_part(line);
        let is_large = whole.scale >= LARGE_ENOUGH;
        let detail = if is_large || self.put_together { None } else { self.detail(&bends, &whole, width - names_mm) };
        match detail.filter(|detail| detail.scale > WORTH * whole.scale) {
            Some(detail) => both(whole, detail, names_mm, width),
            None => whole.block(names_mm, width, true),
        }
    }

    /// Whether it has so many parts that the whole would be too small to tell anything.
    fn is_crowd(&self, room: [f64; 2]) -> bool {
        if self.put_together || self.piece.lines.len() <= MOST_PARTS {
            return false;
        }
        let is_small = |(_, plane): (&'static str, Plane)| {
            let places = self.piece.lines.iter().flat_map(|line| &line.frames).map(|frame| plane.place(frame.at));
            let [low, high] = places.fold([[f64::INFINITY; 2], [f64::NEG_INFINITY; 2]], |[low, high], [x, y]| {
                [[low[0].min(x), low[1].min(y)], [high[0].max(x), high[1].max(y)]]
            });
            scale_of([low, high], room, 1.0) < TOO_SMALL
        };
        self.views().into_iter().all(is_small)
    }

    /// Only its parts near what is worked.
    fn near(&self, worked: &dyn Fn(&Line) -> bool) -> Self {
        let own = self.piece.lines.iter().filter(|line| worked(line));
        let places: Vec<Vector> = own.flat_map(|line| &line.frames).map(|frame| frame.at).collect();
        let is_near = |line: &&Line| {
            let mut ends = line.frames.iter().map(|frame| frame.at);
            ends.any(|end| places.iter().any(|place| length(minus(end, *place)) <= NEAR_MM))
        };
        let lines: Vec<Line> = self.piece.lines.iter().filter(is_near).cloned().collect();
        let is_kept = |segment: usize| lines.iter().any(|line| line.segment == segment);
        let solids = self.piece.solids.iter().filter(|solid| is_kept(solid.segment)).cloned().collect();
        Self { piece: Piece { solids, lines, loops: Vec::new(), ..Piece::default() }, ..*self }
    }

    /// What is bent in the step by itself, with a little beside it; nothing where nothing is.
    fn detail_alone(&self, worked: &dyn Fn(&Line) -> bool, names_mm: f64, width: f64) -> Block {
        let bends = |line: &Line| worked(line) && self.is_bent_part(line);
        let whole = self.whole(&bends, [width - names_mm, TALLEST_MM]);
        let detail = whole.and_then(|whole| self.detail(&bends, &whole, width - names_mm));
        detail.map_or_else(Block::default, |detail| detail.block(names_mm, width, true))
    }

    /// Whether a part is bent now so that a detail tells more of it; a socket looks the same.
    fn is_bent_part(&self, line: &Line) -> bool {
        let part = self.balance.bars.get(line.bar).and_then(|bar| bar.segments.get(line.segment));
        part.and_then(|part| part.bent).is_some_and(|bent| is_told(bent) && !matches!(bent, Bent::Socket { .. }))
    }

    fn whole(&self, worked: &dyn Fn(&Line) -> bool, room: [f64; 2]) -> Option<Seen> {
        let mut best: Option<Seen> = None;
        for (view, plane) in self.views() {
            let Some(seen) = self.seen(view, worked, plane, room) else { continue };
            // From the side, as it was on the strip, unless it shows clearly more from above, or what is bent in the step does.
            let tells_more = |best: &Seen| {
                let [own, others] = [&seen, best].map(|seen| seen.worked_area() + FLAT_MM2);
                seen.area() > 1.2 * best.area() && own * 2.0 >= others || own > 2.0 * others
            };
            if best.as_ref().is_none_or(tells_more) {
                best = Some(seen);
            }
        }
        best
    }

    /// One view of it, laid along the page where it stands upright.
    fn seen(&self, view: &'static str, worked: &dyn Fn(&Line) -> bool, plane: Plane, room: [f64; 2]) -> Option<Seen> {
        let of = |plane: Plane, name: String| {
            let stretches = self.faces(worked, plane).into_iter().map(Stretch::whole).collect();
            Seen::new(view, vec![name], plane, stretches, room, 1.0)
        };
        let seen = of(plane, view.to_owned())?;
        let [wide, high] = seen.extent();
        if high > 1.3 * wide { of(plane.quarter_turned(), format!("{view}, laid")) } else { Some(seen) }
    }

    /// What is bent in the step with a little beside it, from where it shows most; none where nothing is.
    fn detail(&self, bends: &dyn Fn(&Line) -> bool, whole: &Seen, width: f64) -> Option<Seen> {
        let room = [width * DETAIL_SHARE, TALLEST_DETAIL_MM];
        let other = self.views().into_iter().find(|(view, _)| *view != whole.view)?;
        let of = |(view, plane): (&'static str, Plane)| {
            let names = if view == whole.view {
                vec!["detail".to_owned()]
            } else {
                vec!["detail,".to_owned(), view.to_owned()]
            };
            Seen::new(view, names, plane, stretches(&self.faces(bends, plane)), room, DETAIL_SCALE)
        };
        let [same, other] = [(whole.view, whole.plane), other].map(of);
        match (same, other) {
            (Some(same), Some(other)) => Some(if other.area() > 1.2 * same.area() { other } else { same }),
            (same, other) => same.or(other),
        }
    }

    /// The width and the height of each view of the whole, in mm.
    #[cfg(test)]
    pub(super) fn sizes(&self) -> Vec<[f64; 2]> {
        let size = |(_, plane): (&'static str, Plane)| {
            let all: Vec<Stretch> = self.faces(&|_| false, plane).into_iter().map(Stretch::whole).collect();
            bounds(&all).map(|[low, high]| [high[0] - low[0], high[1] - low[1]])
        };
        self.views().into_iter().filter_map(size).collect()
    }

    /// The outline of a part of its first bar in each view.
    #[cfg(test)]
    pub(super) fn outlines_of(&self, segment: usize) -> Vec<(Plane, Vec<[f64; 2]>)> {
        let piece = Piece {
            lines: self.piece.lines.iter().filter(|line| (line.bar, line.segment) == (0, segment)).cloned().collect(),
            ..self.piece.clone()
        };
        let only = Self { piece, ..*self };
        let outline = |(_, plane): (&'static str, Plane)| {
            let faces = only.faces(&|_| false, plane);
            faces.first().map(|faces| (plane, faces.outline()))
        };
        self.views().into_iter().filter_map(outline).collect()
    }

    /// From the side, as the smith sees it, and from above; its longest straight part lies as on the strips.
    fn views(&self) -> [(&'static str, Plane); 2] {
        let [side, above] = directions(&anchor(&self.piece));
        let plane = |[right, up]: [Vector; 2]| Plane { origin: [0.0; 3], right, up };
        [("side", plane(side)), ("above", plane(above))]
    }

    fn faces(&self, worked: &dyn Fn(&Line) -> bool, plane: Plane) -> Vec<Faces> {
        let of_line = |line: &Line| {
            let balance = self.balance.bars.get(line.bar)?.segments.get(line.segment)?;
            let shape = balance.shape.as_ref().filter(|shape| !matches!(shape, Shape::Split(_)))?;
            let samples = samples(line, balance, shape, &plane);
            let sound = samples.iter().all(|sample| sample.middle.iter().all(|mm| mm.abs() < FARTHEST_MM));
            let worked = worked(line);
            let note = if worked && !self.put_together { BendNote::of(balance, self.plan.units.length) } else { None };
            let seen = (sound && samples.len() > 1).then(|| plane.seen(&self.piece.surface(line)))?;
            let bent = self.is_bent_part(line);
            (!seen.outline.is_empty()).then_some(Faces { seen: Some(seen), samples, worked, bent, note })
        };
        self.piece.lines.iter().filter_map(of_line).collect()
    }
}

/// Whether a picture tells a bend: it does not tell a twist.
fn is_told(bent: Bent) -> bool {
    !matches!(bent, Bent::Twist { .. })
}

/// The whole picture with its detail at its right; the detail alone where the whole would be too small.
fn both(whole: Seen, detail: Seen, names_mm: f64, width: f64) -> Block {
    let left = width - names_mm - detail.extent()[0] * detail.scale;
    let room = left - names_mm - BETWEEN_MM;
    let whole = Seen { scale: scale_of(whole.bounds, [room.max(1.0), TALLEST_MM], 1.0), ..whole };
    if whole.scale < TOO_SMALL || room < 1.0 {
        return detail.block(names_mm, width, true);
    }
    let mut block = whole.block(names_mm, width, false);
    let left = names_mm + whole.extent()[0] * whole.scale + BETWEEN_MM;
    let detail = detail.block(names_mm, width - left, true).indented(left);
    block.height = block.height.max(detail.height);
    block.items.extend(detail.items);
    block
}

impl Seen {
    fn new(
        view: &'static str,
        names: Vec<String>,
        plane: Plane,
        stretches: Vec<Stretch>,
        room: [f64; 2],
        largest: f64,
    ) -> Option<Self> {
        let bounds = bounds(&stretches)?;
        Some(Self { view, names, plane, scale: scale_of(bounds, room, largest), bounds, stretches })
    }

    /// How wide and how high it is, in mm.
    fn extent(&self) -> [f64; 2] {
        let [low, high] = self.bounds;
        [high[0] - low[0], high[1] - low[1]]
    }

    /// How much of it is seen, in mm².
    fn area(&self) -> f64 {
        let [wide, high] = self.extent();
        wide * high
    }

    /// How much is seen of the line of what is bent in the step, in mm²: nothing where its bend is seen from its edge.
    fn worked_area(&self) -> f64 {
        let worked = self.stretches.iter().filter(|stretch| stretch.faces.worked && stretch.faces.bent);
        let area = |stretch: &Stretch| {
            let ends = stretch.faces.samples.iter().map(|sample| sample.middle);
            let [low, high] = ends.fold([[f64::INFINITY; 2], [f64::NEG_INFINITY; 2]], |[low, high], [x, y]| {
                [[low[0].min(x), low[1].min(y)], [high[0].max(x), high[1].max(y)]]
            });
            ((high[0] - low[0]) * (high[1] - low[1])).max(0.0)
        };
        worked.map(area).sum()
    }

    /// The picture with its names at its left, and its angles in it where they are wanted.
    fn block(&self, names_mm: f64, width: f64, written: bool) -> Block {
        let ([low, high], scale) = (self.bounds, self.scale);
        let place = |[x, y]: [f64; 2]| at(names_mm + (x - low[0]) * scale, GAP_MM + (high[1] - y) * scale);
        let mut items = Vec::new();
        for worked in [false, true] {
            let own = self.stretches.iter().filter(|stretch| stretch.faces.worked == worked);
            own.for_each(|stretch| items.extend(stretch.drawn(&place)));
        }
        let lines = self.names.len() + 1;
        let least = CAPTION * (1.0 + 1.2 * lines as f64);
        let [wide, high] = self.extent().map(|mm| mm * scale);
        let height = (high + 2.0 * GAP_MM).max(least);
        items.extend(self.named());
        let block = Block { height, items };
        if !written {
            return block;
        }
        let right = (names_mm + wide + WRITTEN_MM).min(width);
        let within = |over: f64| self.written(&place, [at(names_mm, -over), at(right, height + over)]);
        let notes = within(0.0);
        with_notes(block, if notes.is_empty() { within(OVER_MM) } else { notes })
    }

    fn named(&self) -> Vec<Item> {
        let words = BarScale { along: self.scale, across: self.scale }.words();
        let line = |(line, words): (usize, &String)| {
            let y = GAP_MM + CAPTION * (0.8 + 1.2 * line as f64);
            Text::new(at(0.0, y), CAPTION, words).gray(Gray::DARK).into()
        };
        self.names.iter().chain([&words]).enumerate().map(line).collect()
    }

    /// The angles of what is bent in the step.
    fn written(&self, place: &impl Fn([f64; 2]) -> Point, room: [Point; 2]) -> Vec<Item> {
        let metal = outlines(self.stretches.iter().map(|stretch| &stretch.faces), place);
        let notes = self.stretches.iter().filter_map(|stretch| Some((&stretch.faces, stretch.faces.note.as_ref()?)));
        // One is read at a glance; several would run into each other.
        let mut notes = notes.take(1);
        notes.next().map_or_else(Vec::new, |(faces, note)| note.items(&faces.samples, &metal, place, room))
    }
}

/// A picture with words in it, or over or under it: then it is made taller.
fn with_notes(block: Block, notes: Vec<Item>) -> Block {
    let lines = notes.iter().filter_map(|item| if let Item::Text(text) = item { Some(text) } else { None });
    let (low, high) = lines.fold((0.0_f64, block.height), |(low, high), text| {
        (low.min(text.at.y - text.size_mm), high.max(text.at.y + text.size_mm * 0.4))
    });
    let items = block.items.into_iter().chain(notes).map(|item| item.shifted(0.0, -low)).collect();
    Block { height: high - low, items }
}

/// The scale at which it fits, no larger than so much.
fn scale_of([low, high]: [[f64; 2]; 2], [width, height]: [f64; 2], largest: f64) -> f64 {
    (width / (high[0] - low[0]).max(1e-6)).min(height / (high[1] - low[1]).max(1e-6)).min(largest)
}

/// The lowest and the highest place of all; none where there is nothing.
fn bounds(all: &[Stretch]) -> Option<[[f64; 2]; 2]> {
    let mut found: Option<[[f64; 2]; 2]> = None;
    for [x, y] in all.iter().flat_map(|stretch| stretch.faces.outline()) {
        if !(x.is_finite() && y.is_finite()) {
            return None;
        }
        let [low, high] = found.get_or_insert([[x, y], [x, y]]);
        (*low, *high) = ([low[0].min(x), low[1].min(y)], [high[0].max(x), high[1].max(y)]);
    }
    found
}
