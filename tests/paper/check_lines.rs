//! The check lines at the foot of every page, and the size of the paper.

use crate::paper::page::{Rendered, Run};
use crate::paper::{CLOSE_MM, Printed, run};
use fh_print::paper::{Orientation, Paper};

/// The foot of a page, in mm from its bottom, where the check lines are looked for.
const FOOT_MM: f64 = 45.0;

/// The lines of about 100 mm in the foot of a page, each with its height: found by their ink alone.
fn long_lines(page: &Rendered) -> Vec<(f64, Run)> {
    let (_, height) = page.size_mm();
    let mut found: Vec<(f64, Run)> = Vec::new();
    let mut y = height - FOOT_MM;
    while y < height - 1.0 {
        for run in page.runs_at(y).into_iter().filter(|run| (95.0..107.0).contains(&run.length())) {
            let known = found.iter().any(|(at, line)| (y - at).abs() < 1.0 && (run.left - line.left).abs() < 1.0);
            if !known {
                found.push((y, run));
            }
        }
        y += Rendered::dot_mm();
    }
    found
}

/// From tick to tick of a line: both are looked for a little under it.
fn between_ticks(page: &Rendered, (y, line): (f64, Run)) -> f64 {
    let under = page.runs_at(y + 1.2);
    let tick = |x: f64| {
        let near = under.iter().filter(|run| run.length() < 1.0 && (run.middle() - x).abs() < 1.5);
        near.min_by(|a, b| (a.middle() - x).abs().total_cmp(&(b.middle() - x).abs())).unwrap().middle()
    };
    tick(line.right) - tick(line.left)
}

/// The lengths of the check lines of a page, in mm, the shorter first.
pub(crate) fn check_lines_mm(page: &Rendered) -> Vec<f64> {
    let mut lengths: Vec<f64> = long_lines(page).into_iter().map(|line| between_ticks(page, line)).collect();
    lengths.sort_by(f64::total_cmp);
    lengths
}

fn check(file_name: &str, paper: Paper, orientation: Orientation) {
    let printed = Printed::new(file_name, paper, orientation);
    for number in 0..printed.drawing.pages.len() {
        let page = Rendered::new(&printed, number);
        let lengths = check_lines_mm(&page);
        assert_eq!(lengths.len(), 2, "{file_name}, page {}: {lengths:?}", number + 1);
        for (length, wanted) in lengths.into_iter().zip([100.0, 101.6]) {
            assert!((length - wanted).abs() <= CLOSE_MM, "{file_name}, page {}: {length} for {wanted}", number + 1);
        }
    }
}

#[test]
fn a_hundred_millimeters_and_four_inches_measure_so_on_a4() {
    check("gate-hook.plan.json", Paper::A4, Orientation::Landscape);
    check("trellis-bracket.plan.json", Paper::A4, Orientation::Portrait);
}

#[test]
fn a_hundred_millimeters_and_four_inches_measure_so_on_letter() {
    check("row-marker.plan.json", Paper::Letter, Orientation::Landscape);
    check("gate-hook.plan.json", Paper::Letter, Orientation::Portrait);
}

#[test]
fn pages_have_the_size_of_their_paper() {
    for (paper, [short, long]) in [(Paper::A4, [210.0, 297.0]), (Paper::Letter, [215.9, 279.4])] {
        for (orientation, [width, height]) in
            [(Orientation::Portrait, [short, long]), (Orientation::Landscape, [long, short])]
        {
            let printed = Printed::new("boot-scraper.plan.json", paper, orientation);
            let pdf = printed.pdf().to_string_lossy().into_owned();
            let told = run("pdfinfo", &["-f", "1", "-l", "99", &pdf]);
            let sizes: Vec<&str> =
                told.lines().filter(|line| line.starts_with("Page ") && line.contains("size:")).collect();
            assert_eq!(sizes.len(), printed.drawing.pages.len(), "{told}");
            for line in sizes {
                let points: Vec<f64> = line.split_whitespace().filter_map(|word| word.parse().ok()).collect();
                let [_, across, down] = points[..] else { panic!("{line}") };
                for (points, mm) in [(across, width), (down, height)] {
                    assert!((points / 72.0 * 25.4 - mm).abs() < 0.05, "{paper:?}, {orientation:?}: {line}");
                }
            }
        }
    }
}
