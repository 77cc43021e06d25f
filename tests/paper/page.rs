//! A rendered page, and what is dark on it.

use crate::{Printed, run};
use std::fs;

/// Dots to the inch.
const RESOLUTION: f64 = 600.0;
/// Darker than this is ink; lines that only guide the eye are lighter.
const INK: u8 = 100;

/// A page in gray.
pub(crate) struct Rendered {
    width: usize,
    dots: Vec<u8>,
}

/// A stretch of ink across the page, in mm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Run {
    pub(crate) left: f64,
    pub(crate) right: f64,
}

impl Run {
    pub(crate) fn middle(self) -> f64 {
        (self.left + self.right) / 2.0
    }

    pub(crate) fn length(self) -> f64 {
        self.right - self.left
    }
}

fn in_mm(dots: f64) -> f64 {
    dots / RESOLUTION * 25.4
}

impl Rendered {
    /// Renders one page of a printed sheet, counted from 0.
    pub(crate) fn new(printed: &Printed, page: usize) -> Self {
        let number = (page + 1).to_string();
        let target = printed.folder.path().join(format!("page{number}"));
        let (pdf, target) = (printed.pdf(), target.to_string_lossy().into_owned());
        let resolution = RESOLUTION.to_string();
        let pdf = pdf.to_string_lossy().into_owned();
        run("pdftoppm", &["-r", &resolution, "-gray", "-singlefile", "-f", &number, "-l", &number, &pdf, &target]);
        Self::read(&fs::read(format!("{target}.pgm")).unwrap())
    }

    /// Reads a picture in the form P5: three numbers in text, then a byte for each dot.
    fn read(bytes: &[u8]) -> Self {
        let mut at = 2;
        let mut number = || {
            let start = at + bytes[at..].iter().position(u8::is_ascii_digit).unwrap();
            let end = start + bytes[start..].iter().position(|byte| !byte.is_ascii_digit()).unwrap();
            at = end;
            std::str::from_utf8(&bytes[start..end]).unwrap().parse::<usize>().unwrap()
        };
        let (width, height, lightest) = (number(), number(), number());
        assert_eq!((&bytes[..2], lightest), (&b"P5"[..], 255));
        let dots = bytes[at + 1..].to_vec();
        assert_eq!(dots.len(), width * height);
        Self { width, dots }
    }

    /// Width and height of the page in mm.
    pub(crate) fn size_mm(&self) -> (f64, f64) {
        (in_mm(self.width as f64), in_mm((self.dots.len() / self.width) as f64))
    }

    /// The stretches of ink at a height, in mm from the top, from left to right.
    pub(crate) fn runs_at(&self, y: f64) -> Vec<Run> {
        let row = (y / 25.4 * RESOLUTION) as usize;
        let dots = &self.dots[row * self.width..(row + 1) * self.width];
        let mut runs = Vec::new();
        let mut start = None;
        for (x, dot) in dots.iter().chain([&255]).enumerate() {
            match (*dot < INK, start) {
                (true, None) => start = Some(x),
                (false, Some(left)) => {
                    runs.push(Run { left: in_mm(left as f64), right: in_mm(x as f64) });
                    start = None;
                }
                _ => {}
            }
        }
        runs
    }

    /// The height of one row of dots in mm.
    pub(crate) fn dot_mm() -> f64 {
        in_mm(1.0)
    }
}
