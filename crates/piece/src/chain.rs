//! The segments of a bar along their center lines: a solid and a line for each.

use crate::fineness::Fineness;
use crate::solid::{collar, dressed, socket, solid};
use crate::{Line, Mesh, Piece, Solid};
use fh_core::balance::SegmentBalance;
use fh_core::forms;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::{Bar, Form, Segment, SocketAxis};
use fh_core::space::vector::{length, minus};
use fh_core::space::{Formed, Frame, Run, runs};
use fh_measure::in_mm;

/// Adds a bar's segments to a piece, each on the frame where the one before it ends.
pub(crate) fn add_bar(index: usize, bar: &Bar, balances: &[SegmentBalance], fineness: &Fineness, piece: &mut Piece) {
    let formed: Vec<Formed<'_>> = balances.iter().map(SegmentBalance::formed).collect();
    let maker = Maker { bar: index, fineness };
    let runs = runs(&bar.segments, &formed);
    for ((at, flat), run) in bar.flat().into_iter().enumerate().zip(runs) {
        if let (Some(balance), Some(run)) = (balances.get(at), run) {
            maker.add(at, flat.segment, (balance, &run), piece);
        }
    }
}

struct Maker<'a> {
    bar: usize,
    fineness: &'a Fineness,
}

impl Maker<'_> {
    fn add(&self, index: usize, segment: &Segment, (balance, run): (&SegmentBalance, &Run), piece: &mut Piece) {
        let Some(shape) = &balance.shape else { return };
        if let (Shape::Prism { section, length }, Form::Collar(forms::Collar { width, height, .. })) =
            (shape, &segment.form)
        {
            let inside = [width.mm(), height.mm()];
            let (mesh, frames) = collar(section, inside, in_mm(*length) * balance.swell, self.fineness);
            let shares = even_shares(&frames);
            return self.put(index, mesh, &run.start, (frames, shares), piece);
        }
        let way = &run.way;
        let mesh = match (shape, balance.bent) {
            _ if !self.fineness.surfaces => Mesh::default(),
            (
                Shape::Flag { outline, root, tip, holes, .. },
                Some(Bent::Socket { mandrel, axis: SocketAxis::Along, side, .. }),
            ) => {
                let thickness = [in_mm(*root), in_mm(*tip)];
                socket(outline, (thickness, holes), balance.reversed, (in_mm(mandrel), side), self.fineness)
            }
            _ if !balance.dressed.is_empty() => {
                dressed(shape, balance.reversed, (way, &balance.dressed), self.fineness)
            }
            _ => solid(shape, balance.reversed, way, self.fineness),
        };
        let stations = self.fineness.stations_mm(way);
        let shares = stations.iter().map(|at| at / way.length_mm.max(1e-12)).collect();
        let frames = stations.into_iter().map(|at| way.frame_at(at)).collect();
        self.put(index, mesh, &run.start, (frames, shares), piece);
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
}

/// The share of the way before each frame, from frame to frame straight on.
fn even_shares(frames: &[Frame]) -> Vec<f64> {
    let steps = frames.windows(2).map(|pair| length(minus(pair[1].at, pair[0].at)));
    let mut before = vec![0.0];
    steps.for_each(|step| before.push(before.last().copied().unwrap_or(0.0) + step));
    let whole = before.last().copied().unwrap_or(0.0).max(1e-12);
    before.into_iter().map(|run| run / whole).collect()
}
