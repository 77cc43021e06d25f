//! A plate: loops of points given a thickness, holes and all.
//!
//! Lines across cut it in cells; here each cell gets its faces.

use super::lines::{Cell, Lines};
use super::outline_loop::{hole_loop, outline_loop};
use crate::Mesh;
use crate::fineness::Fineness;
use fh_core::metal::{HoleInPlate, HoleSize, Outline};
use fh_core::space::Way;
use fh_measure::in_mm;

/// What a hole is made smaller by.
const A_HAIR_LESS: f64 = 1.0 - 1e-7;

/// A boss with a hole.
pub(super) fn boss(
    outline: &Outline,
    thickness: f64,
    (hole, at): (&HoleSize, f64),
    reversed: bool,
    way: &Way,
    fineness: &Fineness,
) -> Mesh {
    let mut loops = [outline_loop(outline, fineness.round), hole_loop(hole, at, fineness.round)];
    // A hair smaller, so that a hole that only touches the edge of its boss leaves a web there instead of a seam.
    for point in &mut loops[1] {
        *point = [at + (point[0] - at) * A_HAIR_LESS, point[1] * A_HAIR_LESS];
    }
    if reversed {
        let length = in_mm(outline.length());
        loops.iter_mut().flatten().for_each(|point| point[0] = length - point[0]);
    }
    plate(&loops, &fineness.stations_mm(way), |_| thickness / 2.0)
}

/// A flag by its thickness at its root and its tip, and the holes through it.
pub(super) fn flag(
    outline: &Outline,
    thickness: [f64; 2],
    holes: &[HoleInPlate],
    reversed: bool,
    way: &Way,
    fineness: &Fineness,
) -> Mesh {
    let flag = Flag::new(outline, thickness, holes, reversed, fineness);
    plate(&flag.loops, &fineness.stations_mm(way), |[along, _]| flag.half(along))
}

/// A flag as loops of points with its thickness: its edge first, then its holes.
pub(super) struct Flag {
    pub(super) loops: Vec<Vec<[f64; 2]>>,
    length: f64,
    /// At its datum side and at its far side.
    thickness: [f64; 2],
}

impl Flag {
    pub(super) fn new(
        outline: &Outline,
        [root, tip]: [f64; 2],
        holes: &[HoleInPlate],
        reversed: bool,
        fineness: &Fineness,
    ) -> Self {
        let length = in_mm(outline.length());
        let hole = |hole: &HoleInPlate| {
            let [at, away] = hole.middle_mm();
            let mut points = hole_loop(&hole.hole, 0.0, fineness.round);
            for point in &mut points {
                *point = [at + point[0] * A_HAIR_LESS, point[1] * A_HAIR_LESS - away];
            }
            points
        };
        let edge = outline_loop(outline, fineness.round);
        let mut loops: Vec<_> = std::iter::once(edge).chain(holes.iter().map(hole)).collect();
        if reversed {
            loops.iter_mut().flatten().for_each(|point| point[0] = length - point[0]);
        }
        Self { loops, length, thickness: if reversed { [tip, root] } else { [root, tip] } }
    }

    /// Half its thickness at a place along it. A leaf wider than long reaches beyond its own ends; there it stays as thick.
    pub(super) fn half(&self, along: f64) -> f64 {
        let [start, end] = self.thickness;
        (start + (end - start) * (along / self.length).clamp(0.0, 1.0)) / 2.0
    }
}

/// The plate inside the first loop and outside the others, cut at these places along; half as thick as `half` says both ways.
pub(super) fn plate(loops: &[Vec<[f64; 2]>], cuts: &[f64], half: impl Fn([f64; 2]) -> f64) -> Mesh {
    let lines = Lines::new(loops, cuts);
    let mut mesh = Mesh::default();
    let faces = Faces::new(&lines, &mut mesh, half);
    for index in 0..lines.cells.len() {
        for cell in &lines.cells[index] {
            faces.cell(&mut mesh, &lines, index, cell);
        }
    }
    for index in 0..lines.at.len() {
        faces.ends(&mut mesh, &lines, index);
    }
    mesh
}

/// The points of the upper and the lower face, line by line.
struct Faces {
    both: Vec<[Vec<u32>; 2]>,
}

impl Faces {
    /// Puts the points of both faces in a mesh.
    fn new(lines: &Lines, mesh: &mut Mesh, half: impl Fn([f64; 2]) -> f64) -> Self {
        let mut place = |sign: f64, line: usize| -> Vec<u32> {
            let at = lines.at[line];
            lines.across[line].iter().map(|across| mesh.point([at, *across, sign * half([at, *across])])).collect()
        };
        // Line by line, so that a bend reckons each frame once.
        let both: Vec<[Vec<u32>; 2]> = (0..lines.at.len()).map(|line| [place(1.0, line), place(-1.0, line)]).collect();
        Self { both }
    }

    /// The four faces of a cell that lie along the plate.
    fn cell(&self, mesh: &mut Mesh, lines: &Lines, line: usize, [low, high]: &Cell) {
        let near = [lines.number(line, low[0]), lines.number(line, high[0])];
        let far = [lines.number(line + 1, low[1]), lines.number(line + 1, high[1])];
        if near[1] <= near[0] && far[1] <= far[0] {
            return;
        }
        let ([top, bottom], [far_top, far_bottom]) = (&self.both[line], &self.both[line + 1]);
        let share = |index: usize, [from, to]: [usize; 2]| {
            index.saturating_sub(from) as f64 / to.saturating_sub(from).max(1) as f64
        };
        let (mut i, mut j) = (near[0], far[0]);
        while i < near[1] || j < far[1] {
            let near_next = j >= far[1] || (i < near[1] && share(i + 1, near) <= share(j + 1, far));
            if near_next {
                mesh.triangle(top[i], far_top[j], top[i + 1]);
                mesh.triangle(bottom[i], bottom[i + 1], far_bottom[j]);
                i += 1;
            } else {
                mesh.triangle(top[i], far_top[j], far_top[j + 1]);
                mesh.triangle(bottom[i], far_bottom[j + 1], far_bottom[j]);
                j += 1;
            }
        }
        let rising = line.is_multiple_of(2);
        wall(mesh, [far_top[far[0]], top[near[0]]], [far_bottom[far[0]], bottom[near[0]]], rising);
        wall(mesh, [top[near[1]], far_top[far[1]]], [bottom[near[1]], far_bottom[far[1]]], rising);
    }

    /// The faces that stand on a line: where there is plate on one side of it only.
    fn ends(&self, mesh: &mut Mesh, lines: &Lines, line: usize) {
        let spans = lines.across[line].len().saturating_sub(1);
        let (mut before, mut after) = (vec![false; spans], vec![false; spans]);
        let cover = |cells: &[Cell], covered: &mut [bool], end: usize| {
            for [low, high] in cells {
                let (from, to) = (lines.number(line, low[end]), lines.number(line, high[end]));
                covered[from.min(to)..to].iter_mut().for_each(|span| *span = true);
            }
        };
        if let Some(cells) = line.checked_sub(1).and_then(|index| lines.cells.get(index)) {
            cover(cells, &mut before, 1);
        }
        if let Some(cells) = lines.cells.get(line) {
            cover(cells, &mut after, 0);
        }
        let [top, bottom] = &self.both[line];
        for span in 0..spans {
            match (before[span], after[span]) {
                (false, true) => wall(mesh, [top[span], top[span + 1]], [bottom[span], bottom[span + 1]], true),
                (true, false) => wall(mesh, [top[span + 1], top[span]], [bottom[span + 1], bottom[span]], true),
                _ => {}
            }
        }
    }
}

/// A face between the edge of the upper face and that of the lower; seen from outside the upper edge runs leftward.
///
/// Between two lines it is cut in triangles one way and the next time the other, so that a twist adds no metal.
fn wall(mesh: &mut Mesh, [a, b]: [u32; 2], [under_a, under_b]: [u32; 2], rising: bool) {
    if rising {
        mesh.triangle(a, b, under_b);
        mesh.triangle(a, under_b, under_a);
    } else {
        mesh.triangle(a, b, under_a);
        mesh.triangle(b, under_b, under_a);
    }
}
