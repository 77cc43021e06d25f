//! The finished piece as it is seen from one side: an outline for each of its parts.

use super::anchor::{anchor, directions};
use crate::sheets::templates::faces::samples;
use crate::sheets::templates::space::Plane;
use fh_core::balance::Balance;
use fh_core::forms::{Rivet, Tenon};
use fh_core::metal::Shape;
use fh_core::plan::{Form, JointKind, Member, Plan};
use fh_piece::vector::{Vector, dot};
use fh_piece::{Frame, Line, Piece, Seen};

/// What reaches farther than this, in mm, is not drawn.
const FARTHEST_MM: f64 = 1e6;

/// From where a piece is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum From {
    /// From where the smith stands.
    Side,
    /// From above.
    Above,
}

impl From {
    /// The words for it.
    pub(super) fn name(self) -> &'static str {
        match self {
            Self::Side => "from the side",
            Self::Above => "from above",
        }
    }

    fn plane(self, anchor: &Frame) -> Plane {
        let [side, above] = directions(anchor);
        let [right, up] = if self == Self::Side { side } else { above };
        Plane { origin: [0.0; 3], right, up }
    }

    /// The direction to whoever looks.
    fn nearer(self, anchor: &Frame) -> Vector {
        match self {
            Self::Side => anchor.toward,
            Self::Above => anchor.up,
        }
    }
}

/// A part as it is seen, to the right and up in mm.
pub(super) struct PartSeen {
    /// Its bar, counted from 0.
    pub(super) bar: usize,
    /// Which of the bar's copies it belongs to.
    pub(super) copy: u32,
    /// The segment, counted through the bar.
    pub(super) part: usize,
    /// Its outline, in one line round all its metal.
    pub(super) outline: Vec<[f64; 2]>,
    /// Its edges and its arrises.
    pub(super) seen: Seen,
    /// Its middle line, from the datum side.
    pub(super) spine: Vec<[f64; 2]>,
    /// How near it is to whoever looks, in mm.
    near: f64,
    /// Whether its shape is seen that lies across the bar: a leaf or a disc on its face, a ball.
    shows_shape: bool,
}

/// A piece from one side: what is farther away before what is nearer.
pub(super) struct PieceView {
    /// From where.
    pub(super) from: From,
    /// Whether it is turned by a quarter, because it stands taller than a page is wide.
    pub(super) laid: bool,
    /// Its parts.
    pub(super) parts: Vec<PartSeen>,
    /// Its lowest and its highest place.
    pub(super) bounds: [[f64; 2]; 2],
    /// The same of the finished piece: of what stands out to be headed only as far as it goes through.
    pub(super) finished: [[f64; 2]; 2],
}

impl PieceView {
    /// The view; none where nothing can be drawn.
    pub(super) fn new(plan: &Plan, piece: &Piece, balance: &Balance, from: From, laid: bool) -> Option<Self> {
        let anchor = anchor(piece);
        let plane = if laid { from.plane(&anchor).quarter_turned() } else { from.plane(&anchor) };
        let nearer = from.nearer(&anchor);
        let seen = |line: &Line| part_seen(piece, line, balance, nearer, &plane);
        let mut parts: Vec<PartSeen> = piece.lines.iter().filter_map(seen).collect();
        parts.sort_by(|one, other| one.near.total_cmp(&other.near));
        let bounds = bounds(parts.iter().flat_map(|part| &part.outline))?;
        let finished = parts.iter().flat_map(|part| without_heads(plan, part)).collect::<Vec<_>>();
        let finished = self::bounds(finished.iter()).unwrap_or(bounds);
        Some(Self { from, laid, parts, bounds, finished })
    }

    /// How wide and how high it is.
    pub(super) fn size(&self) -> [f64; 2] {
        let [low, high] = self.bounds;
        [high[0] - low[0], high[1] - low[1]]
    }

    /// How wide and how high the finished piece is.
    pub(super) fn finished_size(&self) -> [f64; 2] {
        let [low, high] = self.finished;
        [high[0] - low[0], high[1] - low[1]]
    }

    /// Whether something stands out in it that is to be headed, and counts for no size.
    pub(super) fn has_pins(&self) -> bool {
        let [all, finished] = [self.size(), self.finished_size()];
        (0..2).any(|way| all[way] > finished[way] + 0.05)
    }

    /// Whether thickness may be drawn larger in it: from the side only, and only where that changes no shape that it shows.
    pub(super) fn may_be_thicker(&self) -> bool {
        self.from == From::Side && !self.laid && !self.parts.iter().any(|part| part.shows_shape)
    }

    /// How much of a page it fills, in mm².
    pub(super) fn area(&self) -> f64 {
        let [width, height] = self.size();
        width * height
    }

    /// Whether this view shows a part, or its hole, clearly larger than another one does.
    pub(super) fn tells_more_than(&self, other: &Self) -> bool {
        self.parts.iter().any(|part| {
            let there = other.parts.iter().find(|one| one.is_same_as(part));
            there.is_none_or(|there| {
                // What is looked at along its length tells nothing.
                let along = part.seen_length() > 0.7 * there.seen_length();
                let larger = part.area() > 1.25 * there.area() || part.is_seen_through() && !there.is_seen_through();
                along && (larger || other.hides(there))
            })
        })
    }

    /// Whether a part lies behind others, or is looked at along its length.
    pub(super) fn hides(&self, part: &PartSeen) -> bool {
        let before = self.parts.iter().filter(|other| other.near > part.near + 0.1 && !other.is_same_as(part));
        let before: Vec<&PartSeen> = before.collect();
        let hidden = part.spine.iter().filter(|place| before.iter().any(|other| is_inside(&other.outline, **place)));
        10 * hidden.count() > 7 * part.spine.len()
    }
}

impl PartSeen {
    /// Whether it is the same part, seen from elsewhere.
    pub(super) fn is_same_as(&self, other: &Self) -> bool {
        (self.bar, self.copy, self.part) == (other.bar, other.copy, other.part)
    }

    /// Whether there is a hole in it that is seen.
    fn is_seen_through(&self) -> bool {
        self.seen.outline.len() > 1
    }

    /// How much of the page it fills, in mm².
    fn area(&self) -> f64 {
        let next = self.outline.iter().cycle().skip(1);
        let twice: f64 = self.outline.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum();
        twice.abs() / 2.0
    }

    /// How long its middle line is as it is seen.
    pub(super) fn seen_length(&self) -> f64 {
        self.spine.windows(2).map(|pair| (pair[1][0] - pair[0][0]).hypot(pair[1][1] - pair[0][1])).sum()
    }
}

fn part_seen(piece: &Piece, line: &Line, balance: &Balance, nearer: Vector, plane: &Plane) -> Option<PartSeen> {
    let balance = balance.bars.get(line.bar)?.segments.get(line.segment)?;
    let shape = balance.shape.as_ref().filter(|shape| !matches!(shape, Shape::Split(_)))?;
    let samples = samples(line, balance, shape, plane);
    let sound = samples.iter().all(|sample| sample.middle.iter().all(|mm| mm.abs() < FARTHEST_MM));
    let seen = plane.seen(&piece.surface(line));
    if !sound || samples.len() < 2 || seen.outline.is_empty() {
        return None;
    }
    let near = line.frames.iter().map(|frame| dot(frame.at, nearer)).sum::<f64>() / line.frames.len() as f64;
    Some(PartSeen {
        bar: line.bar,
        copy: line.copy,
        part: line.segment,
        outline: seen.area(),
        seen,
        spine: samples.iter().map(|sample| sample.middle).collect(),
        near,
        shows_shape: shows_shape(line, shape, nearer),
    })
}

/// The outline of a part; of a pin that a joint heads without what stands out for its heads, which are not what they will be yet.
fn without_heads(plan: &Plan, part: &PartSeen) -> Vec<[f64; 2]> {
    let Some(keeps) = headed_share(plan, part.bar, part.part) else { return part.outline.clone() };
    let Some((from, to)) = part.spine.first().zip(part.spine.last()) else { return part.outline.clone() };
    let along = [to[0] - from[0], to[1] - from[1]];
    let square = along[0] * along[0] + along[1] * along[1];
    if square < 1e-9 {
        return part.outline.clone();
    }
    let kept = |[x, y]: &[f64; 2]| {
        let share = ((x - from[0]) * along[0] + (y - from[1]) * along[1]) / square;
        let back = share - share.clamp(keeps[0], keeps[1]);
        [x - back * along[0], y - back * along[1]]
    };
    part.outline.iter().map(kept).collect()
}

/// From where to where along a pin that a joint heads it goes through something, as shares of its length; none of other parts.
fn headed_share(plan: &Plan, bar: usize, part: usize) -> Option<[f64; 2]> {
    let bar = plan.bars.get(bar)?;
    let segment = bar.segment(part)?;
    let is_headed = plan.joints.iter().filter(|joint| matches!(joint.kind, JointKind::Rivet | JointKind::Tenon));
    let is_its_own = |member: &Member| member.bar == bar.name && member.segment == segment.name;
    if !is_headed.flat_map(|joint| joint.members()).any(is_its_own) {
        return None;
    }
    match &segment.form {
        Form::Tenon(Tenon { grip, allowance, .. }) => {
            let through = grip.mm() / (grip.mm() + allowance.mm()).max(1e-9);
            // A tenon stands out at the free end of its bar.
            Some(if part == 0 { [1.0 - through, 1.0] } else { [0.0, through] })
        }
        Form::Rivet(Rivet { grip, allowance, .. }) => {
            let head = allowance.mm() / (grip.mm() + 2.0 * allowance.mm()).max(1e-9);
            Some([head, 1.0 - head])
        }
        _ => None,
    }
}

/// Whether a part is looked at so that drawing it thicker would change its shape.
fn shows_shape(line: &Line, shape: &Shape, nearer: Vector) -> bool {
    /// The cosine from which on a face is looked at.
    const ON_ITS_FACE: f64 = 0.3;
    match shape {
        Shape::Flag { .. } | Shape::Hole { .. } => {
            line.frames.iter().any(|frame| dot(frame.up, nearer).abs() > ON_ITS_FACE)
        }
        Shape::Ball { .. } | Shape::Cube { .. } => true,
        _ => false,
    }
}

/// The lowest and the highest place of all; none where there is nothing, or nothing that can be drawn.
fn bounds<'a>(places: impl Iterator<Item = &'a [f64; 2]>) -> Option<[[f64; 2]; 2]> {
    let mut found: Option<[[f64; 2]; 2]> = None;
    for [x, y] in places {
        if !(x.abs() < FARTHEST_MM && y.abs() < FARTHEST_MM) {
            return None;
        }
        let [low, high] = found.get_or_insert([[*x, *y], [*x, *y]]);
        (*low, *high) = ([low[0].min(*x), low[1].min(*y)], [high[0].max(*x), high[1].max(*y)]);
    }
    found.filter(|[low, high]| high[0] - low[0] > 1e-3 || high[1] - low[1] > 1e-3)
}

/// Whether a place lies within an outline.
pub(super) fn is_inside(outline: &[[f64; 2]], [x, y]: [f64; 2]) -> bool {
    let next = outline.iter().cycle().skip(1);
    let crossed = outline
        .iter()
        .zip(next)
        .filter(|(a, b)| (a[1] > y) != (b[1] > y) && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]));
    crossed.count() % 2 == 1
}
