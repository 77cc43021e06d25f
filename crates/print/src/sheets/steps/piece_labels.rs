//! The numbers of the parts beside the metal, each with a leader to its part, so that nothing lies on anything.

use super::label_tries::{Start, Tries, Try};
use super::metal_grid::MetalGrid;
use crate::drawing::{Item, Point, Text, at};
use crate::fonts::{CAP_HEIGHT, Weight};
use crate::paper::Area;
use crate::pen::{Gray, Pen};
use crate::sheets::type_sizes::{BODY, CAPTION};
use crate::typeset;

/// The em of a number in its box.
const NUMBER: f64 = BODY * 1.1;
/// Free between words and anything else.
const CLEAR_MM: f64 = 0.8;
/// The share of a part's length that its leader starts at.
const SHARES: [f64; 7] = [0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92];
/// The radius of the dot that a leader starts with.
const DOT_MM: f64 = 0.45;

/// How words are set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Style {
    /// White in a black box: a part of the bar, as on the mark sheet.
    Black,
    /// In a frame: a part of a branch, as on the mark sheet.
    Framed,
    /// Small figures without a box, where they are crowded.
    Plain,
    /// A name.
    Name,
}

/// Words that want a place.
pub(super) struct Label {
    pub(super) words: String,
    pub(super) style: Style,
    /// The middle line of what they belong to, on paper.
    pub(super) spine: Vec<Point>,
    /// The outline that they belong to, counted from 1 in the order they were given; 0 for none.
    pub(super) own: u32,
    /// Whether its leader starts just where its line is, whatever lies there.
    pub(super) pinned: bool,
}

/// The room of a picture.
#[derive(Clone)]
pub(super) struct Room {
    grid: MetalGrid,
    area: Area,
    taken: Vec<Area>,
    leaders: Vec<[Point; 2]>,
}

impl Room {
    /// An area with nothing but metal in it.
    pub(super) fn new(area: Area, outlines: &[Vec<Point>]) -> Self {
        Self { grid: MetalGrid::new(area, outlines), area, taken: Vec::new(), leaders: Vec::new() }
    }

    /// The words with their leader where they lie on nothing, and how far from the best that is; none where there is no
    /// room at all.
    pub(super) fn place(&mut self, label: &Label) -> Option<(Vec<Item>, f64)> {
        let mut best: Option<Try> = None;
        for mut one in Tries::new(size(label), label.style == Style::Name, &self.starts(label)).flatten() {
            if best.as_ref().is_some_and(|best| best.cost <= one.cost) {
                break;
            }
            let leader = leader(&one);
            if !self.is_free(one.space, leader) {
                continue;
            }
            one.cost += 12.0 * self.grid.over_others(leader, label.own);
            if best.as_ref().is_none_or(|best| one.cost < best.cost) {
                best = Some(one);
            }
        }
        let best = best?;
        let leader = leader(&best);
        self.taken.push(best.space);
        self.leaders.push(leader);
        let mut items = vec![Item::line(leader[0], leader[1], Pen::Leader), dot(leader[0])];
        items.extend(drawn(label, best.space));
        Some((items, best.cost))
    }

    /// Where the leader of a label may start: on its part, and where nothing lies over that.
    fn starts(&self, label: &Label) -> Vec<Start> {
        let on_line = |share: f64| {
            let (from, ahead) = place_on(&label.spine, share)?;
            Some(Start { from, ahead, cost: (share - 0.5).abs() * 5.0 })
        };
        let on_line = || SHARES.into_iter().filter_map(on_line);
        if label.pinned || label.own == 0 {
            return on_line().collect();
        }
        let seen: Vec<Start> = on_line().filter(|start| self.grid.part_at(start.from) == label.own).collect();
        if !seen.is_empty() {
            return seen;
        }
        match self.grid.seen_place(label.own) {
            Some(from) => vec![Start { from, ahead: [1.0, 0.0], cost: 0.0 }],
            None => on_line().collect(),
        }
    }

    fn is_free(&self, space: Area, leader: [Point; 2]) -> bool {
        let wide = grown(space, CLEAR_MM);
        let inside = space.left >= self.area.left
            && space.right <= self.area.right
            && space.top >= self.area.top
            && space.bottom <= self.area.bottom;
        inside
            && !self.taken.iter().any(|other| overlap(*other, wide) || crosses(leader, grown(*other, 0.4)))
            && !self.leaders.iter().any(|other| crosses(*other, grown(space, 0.4)) || meet(*other, leader))
            && self.grid.is_free(wide)
    }
}

/// A place at a share of a line's length, and its direction there.
fn place_on(spine: &[Point], share: f64) -> Option<(Point, [f64; 2])> {
    let long = |pair: &[Point]| (pair[1].x - pair[0].x).hypot(pair[1].y - pair[0].y);
    let whole: f64 = spine.windows(2).map(long).sum();
    let mut left = whole * share;
    for pair in spine.windows(2) {
        let length = long(pair);
        if length > 1e-9 && left <= length + 1e-9 {
            let ahead = [(pair[1].x - pair[0].x) / length, (pair[1].y - pair[0].y) / length];
            return Some((at(pair[0].x + ahead[0] * left, pair[0].y + ahead[1] * left), ahead));
        }
        left -= length;
    }
    // Looked at along its length, it is a point.
    spine.first().map(|place| (*place, [1.0, 0.0]))
}

/// From the part to the nearest place of the words.
fn leader(one: &Try) -> [Point; 2] {
    let Area { left, top, right, bottom } = one.space;
    [one.from, at(one.from.x.max(left).min(right), one.from.y.max(top).min(bottom))]
}

fn dot(middle: Point) -> Item {
    let corner = |step: u32| {
        let (sin, cos) = (f64::from(step) * std::f64::consts::FRAC_PI_4).sin_cos();
        at(middle.x + DOT_MM * cos, middle.y + DOT_MM * sin)
    };
    Item::Polygon { points: (0..8).map(corner).collect(), fill: Some(Gray::BLACK), pen: None }
}

/// The width and the height of words with their box.
fn size(label: &Label) -> [f64; 2] {
    let wide = |size: f64| typeset::width_mm(&typeset::printable(&label.words), size, Weight::SemiBold);
    match label.style {
        Style::Black | Style::Framed => [wide(NUMBER) + 2.2, NUMBER * CAP_HEIGHT + 1.8],
        Style::Plain => [wide(CAPTION) + 0.6, CAPTION * CAP_HEIGHT + 0.6],
        Style::Name => [wide(BODY) + 1.0, BODY * 1.05],
    }
}

fn drawn(label: &Label, space: Area) -> Vec<Item> {
    let middle = at((space.left + space.right) / 2.0, (space.top + space.bottom) / 2.0);
    let text =
        |size: f64| Text::new(at(middle.x, middle.y + size * CAP_HEIGHT / 2.0), size, &label.words).centered().bold();
    let (corner, opposite) = (at(space.left, space.top), at(space.right, space.bottom));
    match label.style {
        Style::Black => {
            vec![Item::rectangle(corner, opposite, Some(Gray::BLACK), None), text(NUMBER).gray(Gray::WHITE).into()]
        }
        Style::Framed => {
            vec![Item::rectangle(corner, opposite, Some(Gray::WHITE), Some(Pen::MarkLine)), text(NUMBER).into()]
        }
        Style::Plain => vec![text(CAPTION).into()],
        Style::Name => vec![text(BODY).into()],
    }
}

fn grown(space: Area, mm: f64) -> Area {
    Area { left: space.left - mm, top: space.top - mm, right: space.right + mm, bottom: space.bottom + mm }
}

fn overlap(a: Area, b: Area) -> bool {
    a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

/// Whether a line runs through a space.
fn crosses([from, to]: [Point; 2], space: Area) -> bool {
    let (mut start, mut end) = (0.0_f64, 1.0_f64);
    for (from, to, low, high) in [(from.x, to.x, space.left, space.right), (from.y, to.y, space.top, space.bottom)] {
        let run = to - from;
        if run.abs() < 1e-9 {
            if from < low || from > high {
                return false;
            }
            continue;
        }
        let (one, other) = ((low - from) / run, (high - from) / run);
        (start, end) = (start.max(one.min(other)), end.min(one.max(other)));
    }
    start < end
}

/// Whether two lines meet.
fn meet([a, b]: [Point; 2], [c, d]: [Point; 2]) -> bool {
    let side = |from: Point, to: Point, place: Point| {
        (to.x - from.x) * (place.y - from.y) - (to.y - from.y) * (place.x - from.x)
    };
    (side(a, b, c) > 0.0) != (side(a, b, d) > 0.0) && (side(c, d, a) > 0.0) != (side(c, d, b) > 0.0)
}
