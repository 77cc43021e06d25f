//! A rendered page, and what is dark on it.

use crate::paper::{Printed, run};
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
        runs(dots)
    }

    /// The stretches of ink down the page at a place from the left, between two heights; all in mm.
    pub(crate) fn runs_down(&self, x: f64, [from, to]: [f64; 2]) -> Vec<Run> {
        let column = (x / 25.4 * RESOLUTION) as usize;
        let row = |y: f64| ((y / 25.4 * RESOLUTION) as usize).min(self.dots.len() / self.width);
        let dots: Vec<u8> = (row(from)..row(to)).map(|row| self.dots[row * self.width + column]).collect();
        let first = in_mm(row(from) as f64);
        runs(&dots).into_iter().map(|run| Run { left: run.left + first, right: run.right + first }).collect()
    }

    /// The height of one row of dots in mm.
    pub(crate) fn dot_mm() -> f64 {
        in_mm(1.0)
    }
}

/// The stretches of ink along a line of dots.
fn runs(dots: &[u8]) -> Vec<Run> {
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
