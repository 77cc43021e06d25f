//! A run of segments joined end to end: where the center line of each starts, and how it runs.

use super::formed::Formed;
use super::frame::Frame;
use super::turn::{sense, way_of};
use super::way::{Bow, Course, Curve, Rod, Way};
use crate::metal::{Bent, FreeEnd, OpeningSize, SectionSize, Shape, SplitSize, in_mm};
use crate::plan::{Form, Segment};
use std::f64::consts::{PI, TAU};

/// The center line of one segment in space.
#[derive(Clone, Debug)]
pub struct Run {
    /// Where it starts, toward the datum.
    pub start: Frame,
    /// How it runs, seen from there.
    pub way: Way,
}

impl Run {
    /// The frame so many mm from its start.
    pub fn frame_at(&self, along_mm: f64) -> Frame {
        self.start.carry(&self.way.frame_at(along_mm))
    }
}

/// The center lines of a bar's segments, both counted through the bar. None of a split, whose branches have their own, of what has
/// no settled shape, and of what is no part of the finished piece: what comes after it starts where it would have started.
pub fn runs(segments: &[Segment], formed: &[Formed<'_>]) -> Vec<Option<Run>> {
    let mut runs = vec![None; formed.len()];
    let mut chain = Chain { formed, at: Frame::START, branch: None, lean: None };
    chain.add_all(0, segments, &mut runs);
    runs
}

/// Segments being joined end to end, and where the next one starts.
#[derive(Clone)]
struct Chain<'a> {
    formed: &'a [Formed<'a>],
    /// Where the middle of the next section lies.
    at: Frame,
    /// The opened branch that it runs along.
    branch: Option<Opened>,
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
struct Opened {
    root: Frame,
    rod: Rod,
    /// The length of the branch while it was straight, in mm.
    forged: f64,
    behind: f64,
}

impl Chain<'_> {
    /// Adds segments, the first of them counted through the bar as `first`.
    fn add_all(&mut self, first: usize, segments: &[Segment], runs: &mut [Option<Run>]) {
        let mut index = first;
        for segment in segments {
            self.add(index, segment, runs);
            index += segment.count();
        }
    }

    fn add(&mut self, index: usize, segment: &Segment, runs: &mut [Option<Run>]) {
        let Some(formed) = self.formed.get(index).copied() else { return };
        let (Some(shape), true) = (formed.shape, segment.form.is_finished()) else { return };
        let run = match (shape, &segment.form) {
            (Shape::Split(split), _) => return self.add_split(index, segment, split, runs),
            // It closes about its bundle; what comes after it does not start at its end.
            (_, Form::Collar(_)) => Run { start: self.at, way: Way::straight(in_mm(shape.length())) },
            _ => self.onward(&formed, shape),
        };
        if let Some(place) = runs.get_mut(index) {
            *place = Some(run);
        }
    }

    /// The line of the next segment; the one after it starts where it ends.
    fn onward(&mut self, formed: &Formed<'_>, shape: &Shape) -> Run {
        let [before, after] = rises(shape, formed.reversed);
        let shift = shift(shape);
        let (start, way) = match &mut self.branch {
            Some(opened) => opened.onward(formed, in_mm(shape.length())),
            None => (self.at.moved([0.0, shift.before[0], shift.before[1] + before]), way_of(formed, shape)),
        };
        let way = match &mut self.lean {
            Some(lean) => lean.onward(way, shape),
            None => way,
        };
        self.at = start.carry(&way.end()).moved([0.0, shift.after[0], shift.after[1] - after]);
        Run { start, way }
    }

    /// Adds the branches of a split side by side; the bar goes on where they end, if they are held together there.
    fn add_split(&mut self, index: usize, segment: &Segment, split: &SplitSize, runs: &mut [Option<Run>]) {
        let length = in_mm(split.length);
        let start = self.at;
        let root_of = |free: FreeEnd| match free {
            FreeEnd::Datum => start.moved([length, 0.0, 0.0]),
            FreeEnd::Far | FreeEnd::Neither => start,
        };
        let mut first = index + 1;
        for (number, branch) in segment.form.branches().iter().enumerate() {
            let Some(size) = split.branches.get(number) else { return };
            let root = root_of(size.free);
            let beside = beside(&root, split.side, in_mm(size.offset));
            let lean = lean(split, number);
            let mut chain = Self { at: beside, branch: None, lean, ..self.clone() };
            if let Some(opening) = split.opening {
                let offset = in_mm(size.offset);
                let rod = Rod::new(bow(split, &opening, number, offset));
                chain.branch = Some(Opened { root, rod, forged: in_mm(size.forged_length), behind: 0.0 });
            }
            chain.add_all(first, &branch.segments, runs);
            let next = first + branch.segments.iter().map(Segment::count).sum::<usize>();
            if size.free == FreeEnd::Datum {
                // It was laid from its tip; it hangs on the bar by its other end.
                let to_root = beside.carry(&chain.at.inverse());
                let own = runs.get_mut(first..next).unwrap_or_default();
                own.iter_mut().flatten().for_each(|run| run.start = to_root.carry(&run.start));
            }
            first = next;
        }
        let turn = split.opening.map_or(0.0, |opening| sense(opening.turns * TAU));
        let root = root_of(split.free);
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
    fn onward(&mut self, formed: &Formed<'_>, length: f64) -> (Frame, Way) {
        let part = [self.behind / self.forged, (self.behind + length) / self.forged];
        self.behind += length;
        let course = Course::Rod { rod: self.rod.clone(), part };
        let twist = if let Some(Bent::Twist { angle }) = formed.bent { sense(angle) } else { 0.0 };
        (
            self.root,
            Way {
                length_mm: length,
                course,
                twist_radians: twist,
                swell: formed.swell * self.forged / self.rod.length(),
            },
        )
    }
}

impl Lean {
    /// The way of the next segment of the branch: bent where the bend at the root lies on it, but for one with a bend of its own.
    fn onward(&mut self, way: Way, shape: &Shape) -> Way {
        let [from, to] = self.zone.map(|at| (at - self.behind).clamp(0.0, way.length_mm));
        self.behind += way.length_mm;
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
    if split.apart == 0.0 || size.free == FreeEnd::Neither || farthest <= 0.0 {
        return None;
    }
    let length = in_mm(size.forged_length);
    let long = (in_mm(size.raw_width) * LONG).min(length / 2.0);
    let zone = if size.free == FreeEnd::Datum { [length - long, length] } else { [0.0, long] };
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
        Shape::Shoulder { from, to, .. } if to.area() < from.area() => {
            Shift { before: shape.middle_shift(), after: none }
        }
        Shape::Shoulder { .. } => Shift { before: none, after: shape.middle_shift() },
        _ => Shift { before: none, after: none },
    }
}
