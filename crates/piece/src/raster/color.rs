//! From what is seen to colors.

use super::picture::{NONE, Picture};

/// The colors of a solid: red, green and blue.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tone {
    /// Its metal in the brightest light.
    pub bright: [u8; 3],
    /// Its metal in the shade.
    pub dark: [u8; 3],
    /// Its edges.
    pub edge: [u8; 3],
}

/// The colors of a solid at every brightness.
type Ramp = [[u8; 3]; 256];

impl Picture {
    /// The picture in colors: red, green, blue and cover for each pixel, colors multiplied by cover. Each solid has one of
    /// the tones; where there is none, nothing is covered. So many pixels by so many become one, which smooths the edges.
    pub fn colored(&self, tones: &[Tone], tone_of: impl Fn(usize) -> usize, together: usize, out: &mut Vec<[u8; 4]>) {
        let together = together.max(1);
        let ramps: Vec<(Ramp, [u8; 3])> = tones.iter().map(|tone| (ramp(tone), tone.edge)).collect();
        let seen = (0..self.height).flat_map(|row| &self.solid[self.span(row)]);
        let last = seen.filter(|solid| **solid != NONE).max().map_or(0, |solid| *solid as usize + 1);
        let tone_of: Vec<usize> = (0..last).map(|solid| tone_of(solid).min(tones.len().saturating_sub(1))).collect();
        let size = [self.width / together, self.height / together];
        out.clear();
        out.resize(size[0] * size[1], [0; 4]);
        if tones.is_empty() {
            return;
        }
        let color = |at: usize| -> Option<[u8; 3]> {
            let solid = self.solid[at];
            if solid == NONE {
                return None;
            }
            let (ramp, edge) = &ramps[tone_of[solid as usize]];
            Some(if self.line[at] { *edge } else { ramp[usize::from(self.light[at])] })
        };
        for row in 0..size[1] {
            let spans = (0..together).map(|down| self.spans[row * together + down]);
            let [first, end] = spans.fold([self.width, 0], |all, span| [all[0].min(span[0]), all[1].max(span[1])]);
            for column in first / together..end.div_ceil(together).min(size[0]) {
                out[row * size[0] + column] = self.together(together, [column, row], color);
            }
        }
    }

    /// The mean of so many pixels by so many.
    fn together(
        &self,
        together: usize,
        [column, row]: [usize; 2],
        color: impl Fn(usize) -> Option<[u8; 3]>,
    ) -> [u8; 4] {
        let (mut sum, mut covered) = ([0_u32; 3], 0_u32);
        for down in 0..together {
            let first = (row * together + down) * self.width + column * together;
            for rgb in (first..first + together).filter_map(&color) {
                (0..3).for_each(|part| sum[part] += u32::from(rgb[part]));
                covered += 1;
            }
        }
        let count = (together * together) as u32;
        let [r, g, b] = sum.map(|part| (part / count) as u8);
        [r, g, b, (255 * covered / count) as u8]
    }
}

fn ramp(tone: &Tone) -> Ramp {
    std::array::from_fn(|light| {
        std::array::from_fn(|part| {
            let (dark, bright) = (usize::from(tone.dark[part]), usize::from(tone.bright[part]));
            ((dark * (255 - light) + bright * light) / 255) as u8
        })
    })
}

#[cfg(test)]
mod tests {
    use super::super::picture::tests::{FRONT, cube, drawn};
    use super::*;

    const RED: Tone = Tone { bright: [250, 0, 0], dark: [100, 0, 0], edge: [0, 0, 0] };
    const BLUE: Tone = Tone { bright: [0, 0, 250], dark: [0, 0, 100], edge: [255, 255, 255] };

    #[test]
    fn each_solid_has_its_tone_and_the_ground_is_clear() {
        let picture = drawn(&[cube([-10.0, 0.0, 0.0], 10.0), cube([10.0, 0.0, 0.0], 10.0)], &FRONT);
        let mut colors = Vec::new();
        picture.colored(&[RED, BLUE], |solid| solid, 1, &mut colors);
        let at = |column: usize, row: usize| colors[row * 160 + column];
        assert_eq!(colors.len(), 160 * 120);
        assert_eq!(at(80, 60), [0, 0, 0, 0]);
        assert!(at(40, 60)[0] > 100 && at(40, 60)[2] == 0);
        assert!(at(120, 60)[2] > 100 && at(120, 60)[0] == 0);
        assert_eq!(at(20, 60), [0, 0, 0, 255], "the edge of the first");
    }

    #[test]
    fn pixels_taken_together_smooth_the_edge() {
        let picture = drawn(&[cube([0.125, 0.0, 0.0], 10.0)], &FRONT);
        let mut colors = Vec::new();
        picture.colored(&[BLUE], |_| 0, 2, &mut colors);
        assert_eq!(colors.len(), 80 * 60);
        assert!(colors.iter().any(|color| (1..255).contains(&color[3])), "a pixel that is half covered");
    }
}
