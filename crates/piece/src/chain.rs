//! A run of segments joined end to end.

use crate::fineness::Fineness;
use crate::solid::{collar, falls, socket, solid};
use crate::turn::{sense, way_of};
use crate::vector::{length, minus};
use crate::way::{Bow, Course, Curve, Rod, Way};
use crate::{Frame, Line, Mesh, Piece, Solid};
use fh_core::balance::SegmentBalance;
use fh_core::forms;
use fh_core::metal::{Bent, FreeEnd, OpeningSize, SectionSize, Shape, SplitSize};
use fh_core::plan::{Form, Segment, SocketAxis};
use fh_measure::in_mm;
use std::f64::consts::{PI, TAU};

/// Segments being joined end to end, and where the next one starts.
#[derive(Clone)]
pub(crate) struct Chain<'a> {
    pub(crate) bar: usize,
    pub(crate) balances: &'a [SegmentBalance],
    pub(crate) fineness: Fineness,
    /// Where the middle of the next section lies.
    pub(crate) at: Frame,
    /// The opened branch that it runs along.
    pub(crate) branch: Option<Opened>,
    /// The bend at its root, while it is bent out of line.
    lean: Option<Lean>,
}

/// The bend at the root of a branch that is bent out of line.
#[derive(Clone, Copy)]
struct Lean {
    angle: f64,
    side: f64,
    /// From where to where along the branch, in mm.
    zone: [f64; 2],
    /// How much of the branch lies behind, in mm.
    behind: f64,
}

/// An opened branch: its line seen from the root, and how much of it lies behind.
#[derive(Clone)]
pub(crate) struct Opened {
    root: Frame,
    rod: Rod,
    /// The length of the branch while it was straight, in mm.
    forged: f64,
    behind: f64,
}

impl<'a> Chain<'a> {
    /// A bar from its datum end.
    pub(crate) fn new(bar: usize, balances: &'a [SegmentBalance], fineness: Fineness) -> Self {
        Self { bar, balances, fineness, at: Frame::START, branch: None, lean: None }
    }

    /// Adds segments, the first of them counted through the bar as `first`.
    pub(crate) fn add_all(&mut self, first: usize, segments: &[Segment], piece: &mut Piece) {
        let mut index = first;
        for segment in segments {
            self.add(index, segment, piece);
            index += segment.count();
        }
    }

    /// Adds a segment to a piece; one that is no part of it, or has no settled shape, leaves the next where it would be.
    fn add(&mut self, index: usize, segment: &Segment, piece: &mut Piece) {
        let Some(balance) = self.balances.get(index) else { return };
        let (Some(shape), true) = (&balance.shape, segment.form.is_finished()) else { return };
        match (shape, &segment.form) {
            (Shape::Split(split), _) => self.add_split(index, segment, split, piece),
            (Shape::Prism { section, length }, Form::Collar(forms::Collar { width, height, .. })) => {
                let inside = [width.mm(), height.mm()];
                let (mesh, frames) = collar(section, inside, in_mm(*length) * balance.swell, &self.fineness);
                let start = self.at;
                let shares = even_shares(&frames);
                self.put(index, mesh, &start, (frames, shares), piece);
            }
            _ => self.add_one(index, balance, shape, piece),
        }
    }

    fn add_one(&mut self, index: usize, balance: &SegmentBalance, shape: &Shape, piece: &mut Piece) {
        let [before, after] = rises(shape, balance.reversed);
        let shift = shift(shape);
        let (start, way) = match &mut self.branch {
            Some(opened) => opened.onward(balance, in_mm(shape.length())),
            None => (self.at.moved([0.0, shift.before[0], shift.before[1] + before]), way_of(balance, shape)),
        };
        let way = match &mut self.lean {
            Some(lean) => lean.onward(way, shape),
            None => way,
        };
        let mesh = match (shape, balance.bent) {
            _ if !self.fineness.surfaces => Mesh::default(),
            (Shape::Flag { outline, root, tip }, Some(Bent::Socket { mandrel, axis: SocketAxis::Along, side, .. })) => {
                let thickness = [in_mm(*root), in_mm(*tip)];
                socket(outline, thickness, balance.reversed, (in_mm(mandrel), side), &self.fineness)
            }
            _ => solid(shape, balance.reversed, &way, &self.fineness),
        };
        let stations = way.stations(&self.fineness);
        let shares = stations.iter().map(|at| at / way.length.max(1e-12)).collect();
        let frames = stations.into_iter().map(|at| way.frame_at(at)).collect();
        self.put(index, mesh, &start, (frames, shares), piece);
        self.at = start.carry(&way.end()).moved([0.0, shift.after[0], shift.after[1] - after]);
    }

    /// Puts a solid and its line, seen from their start, in the piece; with each frame the share of the length before it.
    fn put(
        &self,
        segment: usize,
        mut mesh: Mesh,
        start: &Frame,
        (frames, shares): (Vec<Frame>, Vec<f64>),
        piece: &mut Piece,
    ) {
        let frames = frames.iter().map(|frame| start.carry(frame)).collect();
        if self.fineness.surfaces {
            mesh.carry(start);
            piece.solids.push(Solid { bar: self.bar, copy: 0, segment, mesh });
        }
        piece.lines.push(Line { bar: self.bar, copy: 0, segment, frames, shares });
    }

    /// Adds the branches of a split side by side; the bar goes on where they end, if they are held together there.
    fn add_split(&mut self, index: usize, segment: &Segment, split: &SplitSize, piece: &mut Piece) {
        let length = in_mm(split.length);
        let root = match split.free {
            FreeEnd::Datum => self.at.moved([length, 0.0, 0.0]),
            FreeEnd::Far | FreeEnd::Neither => self.at,
        };
        let mut first = index + 1;
        for (number, branch) in segment.form.branches().iter().enumerate() {
            let Some(size) = split.branches.get(number) else { return };
            let beside = beside(&root, split.side, in_mm(size.offset));
            let lean = lean(split, number);
            let mut chain = Self { at: beside, branch: None, lean, ..self.clone() };
            if let Some(opening) = split.opening {
                let offset = in_mm(size.offset);
                let rod = Rod::new(bow(split, &opening, number, offset));
                chain.branch = Some(Opened { root, rod, forged: in_mm(size.forged_length), behind: 0.0 });
            }
            let (solids, lines) = (piece.solids.len(), piece.lines.len());
            chain.add_all(first, &branch.segments, piece);
            if split.free == FreeEnd::Datum {
                // It was laid from its tip; it hangs on the bar by its other end.
                let to_root = beside.carry(&chain.at.inverse());
                carry(piece, solids, lines, &to_root);
            }
            first += branch.segments.iter().map(Segment::count).sum::<usize>();
        }
        let turn = split.opening.map_or(0.0, |opening| sense(opening.turns * TAU));
        self.at = match split.free {
            FreeEnd::Neither => root.moved([length, 0.0, 0.0]).rolled(turn),
            FreeEnd::Datum | FreeEnd::Far => root,
        };
    }
}

impl Opened {
    /// The next segment of the branch: where its line is seen from, and its part of it.
    ///
    /// The line is a little longer or shorter than the branch was forged, for it starts beside the axis; the section makes up for it.
    fn onward(&mut self, balance: &SegmentBalance, length: f64) -> (Frame, Way) {
        let part = [self.behind / self.forged, (self.behind + length) / self.forged];
        self.behind += length;
        let course = Course::Rod { rod: self.rod.clone(), part };
        let twist = if let Some(Bent::Twist { angle }) = balance.bent { sense(angle) } else { 0.0 };
        (self.root, Way { length, course, twist, swell: balance.swell * self.forged / self.rod.length() })
    }
}

/// The share of the way before each frame, from frame to frame straight on.
fn even_shares(frames: &[Frame]) -> Vec<f64> {
    let steps = frames.windows(2).map(|pair| length(minus(pair[1].at, pair[0].at)));
    let mut before = vec![0.0];
    steps.for_each(|step| before.push(before.last().copied().unwrap_or(0.0) + step));
    let whole = before.last().copied().unwrap_or(0.0).max(1e-12);
    before.into_iter().map(|run| run / whole).collect()
}

impl Lean {
    /// The way of the next segment of the branch: bent where the bend at the root lies on it, but for one with a bend of its own.
    fn onward(&mut self, way: Way, shape: &Shape) -> Way {
        let [from, to] = self.zone.map(|at| (at - self.behind).clamp(0.0, way.length));
        self.behind += way.length;
        let is_straight = matches!(way.course, Course::Plane { curve: Curve::Line, .. });
        if to <= from || !is_straight || matches!(shape, Shape::Peak { .. }) {
            return way;
        }
        let angle = self.angle * (to - from) / (self.zone[1] - self.zone[0]);
        Way {
            course: Course::Plane { curve: Curve::Crook { angle, from, to }, side: self.side, backward: false },
            ..way
        }
    }
}

/// The bend at the root of a branch: outward, and the more the farther out it lies; none where the branches lie together.
fn lean(split: &SplitSize, number: usize) -> Option<Lean> {
    /// How long the bend is, in widths of the branch as cut.
    const LONG: f64 = 1.5;
    let size = split.branches.get(number)?;
    let offset = in_mm(size.offset);
    let farthest = split.branches.iter().map(|branch| in_mm(branch.offset).abs()).fold(0.0, f64::max);
    if split.apart == 0.0 || farthest <= 0.0 {
        return None;
    }
    let length = in_mm(size.forged_length);
    let long = (in_mm(size.raw_width) * LONG).min(length / 2.0);
    let zone = if split.free == FreeEnd::Datum { [length - long, length] } else { [0.0, long] };
    let side = if offset < 0.0 { split.side + PI } else { split.side };
    Some(Lean { angle: split.apart * offset.abs() / farthest, side, zone, behind: 0.0 })
}

/// The frame beside another, so far toward a side.
fn beside(frame: &Frame, side: f64, offset: f64) -> Frame {
    frame.moved([0.0, offset * side.sin(), offset * side.cos()])
}

/// How a branch of an opened slit runs: two bow apart, more stand evenly round the axis.
fn bow(split: &SplitSize, opening: &OpeningSize, number: usize, offset: f64) -> Bow {
    let count = split.branches.len().max(1);
    let two = count == 2;
    let side = split.side + if two { PI } else { TAU / count as f64 } * number as f64;
    let root = if two { offset.abs() } else { 0.0 };
    Bow { height: in_mm(split.length), root, widest: in_mm(opening.radius), side, turn: sense(opening.turns * TAU) }
}

/// Moves the solids and lines from some numbers on.
fn carry(piece: &mut Piece, solids: usize, lines: usize, by: &Frame) {
    for solid in piece.solids.iter_mut().skip(solids) {
        solid.mesh.carry(by);
    }
    for frame in piece.lines.iter_mut().skip(lines).flat_map(|line| &mut line.frames) {
        *frame = by.carry(frame);
    }
}

/// How far a half-round's centroid lies above the middle at the start and at the end: the line runs through the centroid.
fn rises(shape: &Shape, reversed: bool) -> [f64; 2] {
    let rise = |section: &SectionSize| in_mm(section.centroid_rise());
    match shape {
        Shape::Prism { section, .. } => [rise(section); 2],
        Shape::Taper { from, to, .. } if reversed => [rise(to), rise(from)],
        Shape::Taper { from, to, .. } => [rise(from), rise(to)],
        // The solid of a shoulder lies about the middle of its smaller section.
        _ => [0.0; 2],
    }
}

/// How far the middle moves at a shoulder, toward and up: to the smaller section's middle before it, or from it after it.
struct Shift {
    before: [f64; 2],
    after: [f64; 2],
}

fn shift(shape: &Shape) -> Shift {
    let none = [0.0, 0.0];
    match shape {
        Shape::Shoulder { from, to, .. } if falls([from, to]) => Shift { before: shape.middle_shift(), after: none },
        Shape::Shoulder { .. } => Shift { before: none, after: shape.middle_shift() },
        _ => Shift { before: none, after: none },
    }
}
