//! Filling triangles into the picture: the nearest one is seen.

use super::drawn::{Drawn, Face};
use super::picture::Picture;

/// Where the light comes from: from the left, above and a little in front; a unit vector as seen.
const LIGHT: [f32; 3] = [-0.43, 0.60, 0.675];

/// A corner as it is seen: pixels to the right and down from the left top, mm toward who looks.
pub(super) type Corner = [f32; 3];

impl Picture {
    /// Fills the faces that look toward the viewer; which they are.
    pub(super) fn fill_faces(&mut self, drawn: &Drawn, seen: &[Corner], axes: [[f32; 3]; 3]) -> Vec<bool> {
        let light: [f32; 3] =
            std::array::from_fn(|part| (0..3).map(|axis| LIGHT[axis] * axes[axis][part]).sum::<f32>());
        drawn.faces.iter().map(|face| self.fill_face(face, seen, light)).collect()
    }

    fn fill_face(&mut self, face: &Face, seen: &[Corner], light: [f32; 3]) -> bool {
        let [a, b, c] = face.corners.map(|corner| seen[corner as usize]);
        // Down in the picture turns the other way round than up in space.
        let area = (c[0] - a[0]) * (b[1] - a[1]) - (b[0] - a[0]) * (c[1] - a[1]);
        if !area.is_finite() || area <= 0.0 {
            return false;
        }
        let lit = face.lit.map(|normal| {
            let share = normal[0] * light[0] + normal[1] * light[1] + normal[2] * light[2];
            127.5 + 127.5 * share
        });
        let plane = |at: [f32; 3]| Plane::new([a, b, c], at, area);
        let depth = plane([a[2], b[2], c[2]]);
        let brightness = plane(lit);
        self.fill_rows([a, b, c], &depth, &brightness, face.solid);
        true
    }

    fn fill_rows(&mut self, corners: [Corner; 3], depth: &Plane, brightness: &Plane, solid: u32) {
        let [a, b, c] = corners;
        let rows = pixels(a[1].min(b[1]).min(c[1]), a[1].max(b[1]).max(c[1]), self.height);
        let across = [a[0].min(b[0]).min(c[0]), a[0].max(b[0]).max(c[0])];
        for row in rows {
            let y = row as f32 + 0.5;
            let [mut from, mut to] = across;
            for (start, end) in [(a, b), (b, c), (c, a)] {
                let (dx, dy) = (end[0] - start[0], end[1] - start[1]);
                let x = start[0] + dx * (y - start[1]) / dy;
                match dy {
                    dy if dy > 0.0 => from = from.max(x),
                    dy if dy < 0.0 => to = to.min(x),
                    _ => {}
                }
            }
            let columns = pixels(from, to, self.width);
            if columns.is_empty() {
                continue;
            }
            let span = &mut self.spans[row];
            *span = [span[0].min(columns.start), span[1].max(columns.end)];
            let first = row * self.width;
            let (mut z, mut lit) = (depth.at(columns.start, row), brightness.at(columns.start, row));
            for at in first + columns.start..first + columns.end {
                if z > self.depth[at] {
                    self.depth[at] = z;
                    self.solid[at] = solid;
                    self.light[at] = lit as u8;
                }
                z += depth.right;
                lit += brightness.right;
            }
        }
    }
}

/// The pixels whose middles lie between two places.
fn pixels(from: f32, to: f32, count: usize) -> std::ops::Range<usize> {
    let first = (from - 0.5).ceil().max(0.0) as usize;
    let end = ((to - 0.5).floor() + 1.0).max(0.0) as usize;
    first.min(count)..end.min(count).max(first.min(count))
}

/// A value that changes evenly over a triangle.
struct Plane {
    start: f32,
    right: f32,
    down: f32,
}

impl Plane {
    fn new([a, b, c]: [Corner; 3], values: [f32; 3], area: f32) -> Self {
        let (to_b, to_c) = (values[1] - values[0], values[2] - values[0]);
        let right = (to_c * (b[1] - a[1]) - to_b * (c[1] - a[1])) / area;
        let down = (to_b * (c[0] - a[0]) - to_c * (b[0] - a[0])) / area;
        Self { start: values[0] - right * a[0] - down * a[1], right, down }
    }

    fn at(&self, column: usize, row: usize) -> f32 {
        self.start + self.right * (column as f32 + 0.5) + self.down * (row as f32 + 0.5)
    }
}
