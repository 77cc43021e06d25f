//! The lines of the drawing: outlines where one thing ends before another, and the edges of the metal.

use super::drawn::{Crease, Drawn};
use super::fill::Corner;
use super::picture::{NONE, Picture};

/// From how great a step in depth, in pixels, one part of a solid is said to lie before another.
const STEP: f32 = 3.0;
/// How far behind the surface, in pixels, an edge may lie and still be drawn.
const BIAS: f32 = 1.5;

impl Picture {
    /// Draws outlines on the nearer side of each step.
    pub(super) fn draw_outlines(&mut self, pixel_mm: f32, line: usize) {
        let (width, height) = (self.width, self.height);
        for row in 0..height {
            // From the pixel before the first that shows something: the outline lies between the two.
            let [first, end] = self.spans[row];
            for column in first.saturating_sub(1)..end {
                let at = row * width + column;
                if column + 1 < width {
                    self.outline_between(at, 1, [column, width - column - 1], pixel_mm, line);
                }
            }
            let below = self.spans.get(row + 1).copied().unwrap_or([width, 0]);
            if row + 1 < height {
                for column in first.min(below[0])..end.max(below[1]) {
                    self.outline_between(row * width + column, width, [row, height - row - 1], pixel_mm, line);
                }
            }
        }
    }

    /// Two neighbors, `step` apart, with so many pixels of room before and after the first.
    #[inline]
    fn outline_between(&mut self, at: usize, step: usize, room: [usize; 2], pixel_mm: f32, line: usize) {
        let next = at + step;
        let (one, other) = (self.solid[at], self.solid[next]);
        if one == other && (one == NONE || !self.steps_down(at, step, room, pixel_mm)) {
            return;
        }
        if self.depth[at] >= self.depth[next] {
            let reach = line.min(room[0] + 1);
            (0..reach).map(|back| at - back * step).take_while(|near| self.solid[*near] == one).for_each(|near| {
                self.line[near] = true;
            });
        } else {
            let reach = line.min(room[1]);
            (0..reach).map(|on| next + on * step).take_while(|near| self.solid[*near] == other).for_each(|near| {
                self.line[near] = true;
            });
        }
    }

    /// Whether the depth jumps between two neighbors of one solid: by more than it changes beside them.
    fn steps_down(&self, at: usize, step: usize, room: [usize; 2], pixel_mm: f32) -> bool {
        let jump = (self.depth[at + step] - self.depth[at]).abs();
        if jump < STEP * pixel_mm {
            return false;
        }
        let beside = |from: usize| (self.depth[from + step] - self.depth[from]).abs();
        let before = if room[0] > 0 { beside(at - step) } else { 0.0 };
        let after = if room[1] > 1 { beside(at + step) } else { 0.0 };
        let slope = [before, after].into_iter().filter(|slope| slope.is_finite()).fold(0.0, f32::max);
        jump > 2.0 * slope + STEP * pixel_mm
    }

    /// Draws the edges that are not hidden.
    pub(super) fn draw_creases(&mut self, drawn: &Drawn, seen: &[Corner], faces: &[bool], pixel_mm: f32, line: usize) {
        for Crease { ends, faces: [one, other] } in &drawn.creases {
            if faces[*one as usize] || faces[*other as usize] {
                let [from, to] = ends.map(|end| seen[end as usize]);
                self.draw_edge(from, to, pixel_mm, line);
            }
        }
    }

    fn draw_edge(&mut self, from: Corner, to: Corner, pixel_mm: f32, line: usize) {
        let Some([from, to]) = clipped(from, to, [self.width as f32, self.height as f32]) else { return };
        let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
        let flat = dx.abs() >= dy.abs();
        let steps = dx.abs().max(dy.abs()).ceil().max(1.0);
        for step in 0..=steps as usize {
            let share = step as f32 / steps;
            let [x, y, z]: [f32; 3] = std::array::from_fn(|part| from[part] + share * (to[part] - from[part]));
            for wide in 0..line {
                let off = wide as f32 - line.saturating_sub(1) as f32 / 2.0;
                let (column, row) = if flat { (x, y + off) } else { (x + off, y) };
                self.ink(column, row, z + BIAS * pixel_mm);
            }
        }
    }

    fn ink(&mut self, x: f32, y: f32, z: f32) {
        if x < 0.0 || y < 0.0 || x >= self.width as f32 || y >= self.height as f32 {
            return;
        }
        let at = y as usize * self.width + x as usize;
        if self.solid.get(at).is_some_and(|solid| *solid != NONE) && z >= self.depth[at] {
            self.line[at] = true;
        }
    }
}

/// The part of a line that lies in the picture.
fn clipped(from: Corner, to: Corner, size: [f32; 2]) -> Option<[Corner; 2]> {
    let (mut first, mut last) = (0.0_f32, 1.0_f32);
    for axis in 0..2 {
        let way = to[axis] - from[axis];
        let shares = [-from[axis] / way, (size[axis] - from[axis]) / way];
        if way == 0.0 {
            if !(0.0..=size[axis]).contains(&from[axis]) {
                return None;
            }
            continue;
        }
        first = first.max(shares[0].min(shares[1]));
        last = last.min(shares[0].max(shares[1]));
    }
    let at = |share: f32| -> Corner { std::array::from_fn(|part| from[part] + share * (to[part] - from[part])) };
    let is_there = first <= last && [at(first), at(last)].iter().flatten().all(|part| part.is_finite());
    is_there.then(|| [at(first), at(last)])
}

#[cfg(test)]
mod tests {
    use super::super::picture::tests::{FRONT, cube, drawn, turned};
    use super::*;

    fn lines(picture: &Picture) -> usize {
        picture.line.iter().filter(|line| **line).count()
    }

    #[test]
    fn a_cube_from_the_front_has_its_outline_and_nothing_else() {
        let picture = drawn(&[cube([0.0; 3], 10.0)], &FRONT);
        let seen = lines(&picture);
        assert!((4 * 39..=4 * 42).contains(&seen), "{seen} pixels of line");
        assert!(!picture.line[60 * 160 + 80], "none in the middle of the face");
    }

    #[test]
    fn edges_toward_the_viewer_are_drawn_and_those_behind_are_not() {
        let picture = drawn(&[cube([0.0; 3], 10.0)], &turned());
        let see = |at| turned().seen(at).map(|part| part as f32);
        let near = |[x, y, _]: [f32; 3]| {
            let (column, row) = ((x + 80.0) as usize, (y + 60.0) as usize);
            (row - 1..=row + 1).any(|row| (column - 1..=column + 1).any(|column| picture.line[row * 160 + column]))
        };
        assert!(near(see([5.0, -5.0, 0.0])), "the edge between the two sides");
        assert!(!near(see([-5.0, 5.0, -1.0])), "the edge behind them");
    }

    #[test]
    fn one_solid_before_another_has_its_outline_on_it() {
        let picture = drawn(&[cube([0.0, -20.0, 0.0], 6.0), cube([0.0, 20.0, 0.0], 10.0)], &FRONT);
        assert!(picture.line[60 * 160 + 68], "the left edge of the one before");
        assert!(!picture.line[60 * 160 + 66], "and nothing on the one behind");
    }

    #[test]
    fn a_line_is_cut_at_the_edge_of_the_picture() {
        let cut = clipped([-10.0, 5.0, 0.0], [30.0, 5.0, 40.0], [20.0, 10.0]);
        assert_eq!(cut, Some([[0.0, 5.0, 10.0], [20.0, 5.0, 30.0]]));
        assert_eq!(clipped([-10.0, 5.0, 0.0], [-1.0, 5.0, 0.0], [20.0, 10.0]), None);
    }
}
