//! From where a piece is seen, and how large.

use fh_core::space::vector::dot;

/// A direction to look in, without perspective: the same scale in all directions.
///
/// The three directions are unit vectors at right angles, `right × up = toward`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sight {
    /// What lies to the right in the picture.
    pub right: [f64; 3],
    /// What lies up in the picture.
    pub up: [f64; 3],
    /// What comes out of the picture, toward who looks at it.
    pub toward: [f64; 3],
    /// The place in the middle of the picture, in mm.
    pub center: [f64; 3],
    /// How many pixels a millimetre takes.
    pub pixels_per_mm: f64,
}

impl Sight {
    /// Where a place lies: pixels to the right and down from the picture's middle, and mm toward who looks.
    pub fn seen(&self, at: [f64; 3]) -> [f64; 3] {
        let from = [at[0] - self.center[0], at[1] - self.center[1], at[2] - self.center[2]];
        let [right, up, toward] = [self.right, self.up, self.toward].map(|axis| dot(axis, from));
        [right * self.pixels_per_mm, -up * self.pixels_per_mm, toward]
    }

    /// The place that lies so many pixels to the right and down from the picture's middle, and so many mm toward who looks.
    pub fn place(&self, [right, down, toward]: [f64; 3]) -> [f64; 3] {
        let (right, up) = (right / self.pixels_per_mm, -down / self.pixels_per_mm);
        let along = |axis: usize| {
            self.center[axis] + right * self.right[axis] + up * self.up[axis] + toward * self.toward[axis]
        };
        [along(0), along(1), along(2)]
    }

    /// The same, so many times as large.
    pub fn enlarged(&self, times: f64) -> Self {
        Self { pixels_per_mm: self.pixels_per_mm * times, ..*self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_is_found_again_where_it_is_seen() {
        let (sine, cosine) = (0.6, 0.8);
        let sight = Sight {
            right: [cosine, sine, 0.0],
            up: [0.0, 0.0, 1.0],
            toward: [sine, -cosine, 0.0],
            center: [10.0, -5.0, 2.0],
            pixels_per_mm: 3.0,
        };
        let place = [17.0, 4.0, -9.0];
        let back = sight.place(sight.seen(place));
        assert!((0..3).all(|axis| (back[axis] - place[axis]).abs() < 1e-9), "{back:?}");
        assert!(sight.seen([10.0, -5.0, 3.0])[1] < 0.0, "up in space is up in the picture");
    }
}
