//! What is seen: a depth, a solid, a brightness and perhaps a line at each pixel.

use super::drawn::Drawn;
use super::sight::Sight;

/// The solid of a pixel that shows none.
pub(super) const NONE: u32 = u32::MAX;

/// What is seen of a piece. It is kept from picture to picture so that nothing is allocated anew.
#[derive(Clone, Debug, Default)]
pub struct Picture {
    pub(super) width: usize,
    pub(super) height: usize,
    /// In mm toward who looks.
    pub(super) depth: Vec<f32>,
    pub(super) solid: Vec<u32>,
    pub(super) light: Vec<u8>,
    pub(super) line: Vec<bool>,
    /// Of each row the columns that show something: the first, and the one after the last.
    pub(super) spans: Vec<[usize; 2]>,
}

impl Picture {
    /// Draws a piece over so many pixels, with edges so many pixels wide.
    pub fn draw(&mut self, drawn: &Drawn, sight: &Sight, [width, height]: [usize; 2], line: usize) {
        self.clear(width, height);
        if width == 0 || height == 0 {
            return;
        }
        let axes = [sight.right, sight.up, sight.toward].map(|axis| axis.map(|part| part as f32));
        let [right, down, toward] = sight.seen(drawn.origin);
        let start = [right + width as f64 / 2.0, down + height as f64 / 2.0, toward].map(|part| part as f32);
        let scale = sight.pixels_per_mm as f32;
        let across = [axes[0].map(|part| part * scale), axes[1].map(|part| -part * scale), axes[2]];
        let see = |at: &[f32; 3]| -> [f32; 3] {
            std::array::from_fn(|i| start[i] + across[i][0] * at[0] + across[i][1] * at[1] + across[i][2] * at[2])
        };
        let seen: Vec<[f32; 3]> = drawn.points.iter().map(see).collect();
        let faces = self.fill_faces(drawn, &seen, axes);
        let pixel_mm = 1.0 / scale;
        self.draw_outlines(pixel_mm, line);
        self.draw_creases(drawn, &seen, &faces, pixel_mm, line);
    }

    fn clear(&mut self, width: usize, height: usize) {
        if (self.width, self.height) == (width, height) {
            self.clear_spans();
            return;
        }
        fn renew<T: Clone>(all: &mut Vec<T>, count: usize, value: T) {
            all.clear();
            all.resize(count, value);
        }
        (self.width, self.height) = (width, height);
        let count = width * height;
        renew(&mut self.depth, count, f32::NEG_INFINITY);
        renew(&mut self.solid, count, NONE);
        renew(&mut self.light, count, 0);
        renew(&mut self.line, count, false);
        renew(&mut self.spans, height, [width, 0]);
    }

    /// Clears what was drawn last, and nothing else: most of a picture is empty.
    fn clear_spans(&mut self) {
        for row in 0..self.height {
            let range = self.span(row);
            self.depth[range.clone()].fill(f32::NEG_INFINITY);
            self.solid[range.clone()].fill(NONE);
            self.line[range].fill(false);
            self.spans[row] = [self.width, 0];
        }
    }

    /// The pixels of a row that show something.
    pub(super) fn span(&self, row: usize) -> std::ops::Range<usize> {
        let [first, end] = self.spans[row];
        let start = row * self.width;
        start + first.min(end)..start + end
    }

    /// Its width and height in pixels.
    pub fn size(&self) -> [usize; 2] {
        [self.width, self.height]
    }

    /// The solid seen at a pixel.
    pub fn solid_at(&self, column: usize, row: usize) -> Option<usize> {
        let solid = self.pixel(column, row).map(|at| self.solid[at])?;
        (solid != NONE).then_some(solid as usize)
    }

    /// How far toward who looks the metal at a pixel lies, in mm from the middle of the picture.
    pub fn depth_at(&self, column: usize, row: usize) -> Option<f64> {
        let at = self.pixel(column, row)?;
        (self.solid[at] != NONE).then(|| f64::from(self.depth[at]))
    }

    fn pixel(&self, column: usize, row: usize) -> Option<usize> {
        (column < self.width && row < self.height).then(|| row * self.width + column)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
pub(super) mod tests {
    use super::*;
    use crate::Mesh;

    /// A cube about a place.
    pub(in crate::raster) fn cube(middle: [f64; 3], side: f64) -> Mesh {
        let corner = |at: u32| {
            let part = |axis: usize| middle[axis] + side * (f64::from((at >> axis) & 1) - 0.5);
            [part(0), part(1), part(2)]
        };
        let squares = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
        let triangles = squares.iter().flat_map(|[a, b, c, d]| [[*a, *b, *c], [*a, *c, *d]]).collect();
        Mesh { points: (0..8).map(corner).collect(), triangles }
    }

    /// A round bar along x, 100 mm long and 10 mm thick, in so many steps.
    pub(in crate::raster) fn tube(steps: u32) -> Mesh {
        let mut mesh = Mesh { points: vec![[0.0; 3], [100.0, 0.0, 0.0]], triangles: Vec::new() };
        for step in 0..steps {
            let angle = std::f64::consts::TAU * f64::from(step) / f64::from(steps);
            let (sine, cosine) = angle.sin_cos();
            mesh.points.extend([0.0, 100.0].map(|x| [x, 5.0 * cosine, 5.0 * sine]));
            let (a, b) = (2 + 2 * step, 2 + 2 * ((step + 1) % steps));
            mesh.triangles.extend([[0, b, a], [1, a + 1, b + 1], [a, b, b + 1], [a, b + 1, a + 1]]);
        }
        mesh
    }

    /// Seen from where the smith stands: along to the right, up above.
    pub(in crate::raster) const FRONT: Sight = Sight {
        right: [1.0, 0.0, 0.0],
        up: [0.0, 0.0, 1.0],
        toward: [0.0, -1.0, 0.0],
        center: [0.0; 3],
        pixels_per_mm: 4.0,
    };

    /// Turned by 30° and tilted by 20°.
    pub(in crate::raster) fn turned() -> Sight {
        let (s, c) = 30.0_f64.to_radians().sin_cos();
        let (t, d) = 20.0_f64.to_radians().sin_cos();
        Sight { right: [c, s, 0.0], up: [-s * t, c * t, d], toward: [s * d, -c * d, t], ..FRONT }
    }

    pub(in crate::raster) fn drawn(meshes: &[Mesh], sight: &Sight) -> Picture {
        let mut picture = Picture::default();
        picture.draw(&Drawn::new(meshes), sight, [160, 120], 1);
        picture
    }

    fn covered(picture: &Picture) -> usize {
        picture.solid.iter().filter(|solid| **solid != NONE).count()
    }

    #[test]
    fn a_cube_covers_the_area_of_its_silhouette() {
        let cubes = [cube([0.0; 3], 10.0)];
        assert_eq!(covered(&drawn(&cubes, &FRONT)), 40 * 40);
        // A face of area A covers A times the share by which it looks toward the viewer.
        let sight = turned();
        let faces: f64 = sight.toward.iter().map(|part| part.abs() * 1600.0).sum();
        let seen = covered(&drawn(&cubes, &sight)) as f64;
        assert!((seen - faces).abs() < 0.01 * faces, "{seen} pixels where {faces} are right");
    }

    #[test]
    fn what_is_nearer_hides_what_is_behind_whatever_comes_first() {
        let (near, far) = (cube([0.0, -20.0, 0.0], 6.0), cube([0.0, 20.0, 0.0], 10.0));
        let first = drawn(&[near.clone(), far.clone()], &FRONT);
        let last = drawn(&[far, near], &FRONT);
        assert_eq!((first.solid_at(80, 60), last.solid_at(80, 60)), (Some(0), Some(1)));
        assert_eq!((first.solid_at(62, 60), last.solid_at(62, 60)), (Some(1), Some(0)));
        assert_eq!(first.solid_at(10, 10), None);
        assert!((first.depth_at(80, 60).unwrap() - 23.0).abs() < 1e-3);
    }

    #[test]
    fn surfaces_have_no_holes() {
        let picture = drawn(&[tube(24)], &Sight { center: [50.0, 0.0, 0.0], pixels_per_mm: 1.2, ..turned() });
        for row in 0..120 {
            let line: Vec<_> = (0..160).map(|column| picture.solid_at(column, row).is_some()).collect();
            let steps = line.windows(2).filter(|pair| pair[0] != pair[1]).count();
            assert!(steps <= 2, "row {row} is broken");
        }
    }

    #[test]
    fn a_picture_used_again_shows_nothing_of_the_one_before() {
        let (one, other) = ([cube([-10.0, 0.0, 0.0], 12.0)], [tube(12)]);
        let mut picture = drawn(&one, &FRONT);
        picture.draw(&Drawn::new(&other), &turned(), [160, 120], 1);
        let fresh = drawn(&other, &turned());
        assert_eq!((picture.solid, picture.line, picture.depth), (fresh.solid, fresh.line, fresh.depth));
    }

    #[test]
    fn an_empty_picture_and_an_absurd_scale_are_harmless() {
        let mut picture = Picture::default();
        let cubes = Drawn::new(&[cube([0.0; 3], 10.0)]);
        picture.draw(&cubes, &FRONT, [0, 50], 1);
        assert_eq!(picture.solid_at(0, 0), None);
        for scale in [0.0, 1e-300, 1e300, f64::NAN] {
            picture.draw(&cubes, &Sight { pixels_per_mm: scale, ..FRONT }, [40, 30], 2);
        }
    }
}
