//! Templates measured on paper: a ring, a leaf, the check lines, and a drawing that runs over two pages.

use crate::paper::check_lines::check_lines_mm;
use crate::paper::page::{Rendered, Run};
use crate::paper::{CLOSE_MM, Printed, run};
use fh_print::drawing::{Item, Point};
use fh_print::paper::{Orientation, Paper};
use fh_print::pen::Pen;
use serde_json::{Value, json};
use tests::{one_bar, read};

fn printed(segments: &[Value], paper: Paper) -> Printed {
    Printed::of(read(&one_bar(&json!({ "square": "12 mm" }), segments)), |plan, balance| {
        fh_print::sheets::template_sheet(plan, balance, paper, Orientation::Landscape)
    })
}

fn ring(inside: &str) -> Vec<Value> {
    let eye = json!({ "name": "eye", "form": { "drawn": { "section": { "round": "10 mm" } } },
        "bend": { "ring": { "inside_diameter": inside, "side": "180 deg" } } });
    vec![eye, json!({ "name": "shank", "form": { "plain": { "length": "30 mm" } } })]
}

fn leaf() -> Vec<Value> {
    let outline = json!({ "leaf": { "length": "80 mm", "width": "30 mm" } });
    let flag =
        json!({ "name": "leaf", "form": { "flag": { "outline": outline, "thickness": "3 mm", "trim": "30 %" } } });
    vec![flag, json!({ "name": "stem", "form": { "plain": { "length": "30 mm" } } })]
}

/// The middles of the crosses on a page, in order of drawing.
fn crosses(printed: &Printed, page: usize) -> Vec<Point> {
    let level = printed.drawing.pages[page].items.iter().filter_map(|item| match item {
        Item::Line { from, to, pen: Pen::JoinCross } if from.y == to.y => Some((from, to)),
        _ => None,
    });
    level.map(|(from, to)| Point { x: (from.x + to.x) / 2.0, y: from.y }).collect()
}

/// How far two edges of ink stand apart, from middle to middle of their lines.
fn apart(first: Run, last: Run) -> f64 {
    last.middle() - first.middle()
}

#[test]
fn a_ring_measures_its_diameters() {
    let printed = printed(&ring("60 mm"), Paper::A4);
    let center = crosses(&printed, 0)[0];
    let page = Rendered::new(&printed, 0);
    // At 10 mm above the center the ring's faces are chords of circles of 60 and 80 mm; words stand below it.
    let thin = page.runs_at(center.y - 10.0).into_iter().filter(|run| run.length() < 1.0);
    let thin: Vec<Run> = thin.filter(|run| (run.middle() - center.x).abs() < 42.0).collect();
    for radius in [30.0_f64, 40.0] {
        let half = (radius * radius - 100.0).sqrt();
        let off = |run: &Run, x: f64| (run.middle() - x).abs();
        let near = |x: f64| thin.iter().copied().min_by(|a, b| off(a, x).total_cmp(&off(b, x))).unwrap();
        let chord = apart(near(center.x - half), near(center.x + half));
        assert!((chord - 2.0 * half).abs() <= CLOSE_MM, "{chord} where {} is right: {thin:?}", 2.0 * half);
    }
}

#[test]
fn a_boss_along_a_ring_measures_its_circle_and_its_hole() {
    let boss = json!({ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "30 mm" } },
        "thickness": "6 mm", "hole": { "round": "8.5 mm" }, "made": "punched" } } });
    let arc = json!({ "name": "arc", "form": { "plain": {} },
        "bend": { "curve": { "angle": "90 deg", "inside_radius": "40 mm", "side": "90 deg" } } });
    let printed = printed(&[boss, arc], Paper::A4);
    // The boss by itself has its cross first, the boss along the arc after it.
    let number = printed.drawing.pages.len() - 1;
    let last = crosses(&printed, number);
    let boss = last[last.len() - 2];
    let page = Rendered::new(&printed, number);
    // Chords of both circles: beyond the cross in the hole, and away from the words beside it.
    for (off, radius) in [(10.0_f64, 15.0_f64), (-10.0, 15.0), (3.5, 4.25), (-3.5, 4.25)] {
        let half = (radius * radius - off * off).sqrt();
        let runs = page.runs_at(boss.y + off);
        let near = |x: f64| runs.iter().copied().find(|run| (run.middle() - x).abs() < 1.0);
        let ends = [-half, half].map(|x| near(boss.x + x));
        let [Some(left), Some(right)] = ends else { panic!("{off}: {runs:?} about {boss:?}") };
        let chord = apart(left, right);
        assert!((chord - 2.0 * half).abs() <= CLOSE_MM, "{chord} where {} is right", 2.0 * half);
    }
}

#[test]
fn a_leaf_measures_its_length_and_its_width() {
    let printed = printed(&leaf(), Paper::Letter);
    let outline = printed.drawing.pages[0].items.iter().find_map(|item| match item {
        Item::Polygon { points, pen: Some(Pen::Outline), .. } => Some(points.clone()),
        _ => None,
    });
    let outline = outline.unwrap();
    let (left, right) = outline.iter().fold((f64::MAX, f64::MIN), |(low, high), p| (low.min(p.x), high.max(p.x)));
    let (top, bottom) = outline.iter().fold((f64::MAX, f64::MIN), |(low, high), p| (low.min(p.y), high.max(p.y)));
    let page = Rendered::new(&printed, 0);
    // Down its middle: dashed edges may be missed, the solid ones are 30 mm apart.
    let down = page.runs_down((left + right) / 2.0, [top - 3.0, bottom + 3.0]);
    let at = |y: f64| down.iter().copied().find(|run| (run.middle() - y).abs() < 0.5).unwrap();
    let width = apart(at(top), at(bottom));
    assert!((width - 30.0).abs() <= CLOSE_MM, "{width}");
    // Its tips: the ink of its length dimension stands exactly under them.
    let tick = |x: f64| page.runs_down(x, [bottom + 3.0, bottom + 16.0]).iter().any(|run| run.length() > 2.0);
    let ticks: Vec<f64> = [left, right].into_iter().filter(|x| tick(*x)).collect();
    assert!(ticks.len() == 2 && (right - left - 80.0).abs() < 1e-9, "{left} {right} {ticks:?}");
}

#[test]
fn every_page_of_templates_carries_true_check_lines() {
    for paper in Paper::ALL {
        let printed = printed(&ring("160 mm"), paper);
        for number in 0..printed.drawing.pages.len() {
            let lengths = check_lines_mm(&Rendered::new(&printed, number));
            assert_eq!(lengths.len(), 2, "page {}: {lengths:?}", number + 1);
            for (length, wanted) in lengths.into_iter().zip([100.0, 101.6]) {
                assert!((length - wanted).abs() <= CLOSE_MM, "page {}: {length} for {wanted}", number + 1);
            }
        }
    }
}

#[test]
fn parts_laid_cross_on_cross_make_the_whole() {
    // 180 mm over all: higher than the page, no wider.
    let printed = printed(&ring("160 mm"), Paper::A4);
    assert_eq!(printed.drawing.pages.len(), 3, "the title, and two parts");
    let [upper, lower] = [1, 2].map(|page| (crosses(&printed, page), Rendered::new(&printed, page)));
    // The last two crosses of the upper part are the joins; on the lower one the join comes first after the center.
    let joins = |crosses: &[Point]| -> Vec<Point> {
        let pairs = crosses.iter().filter(|a| crosses.iter().any(|b| a.y == b.y && (a.x - b.x).abs() > 20.0));
        pairs.copied().collect()
    };
    let (above, below) = (joins(&upper.0), joins(&lower.0));
    assert_eq!((above.len(), below.len()), (2, 2), "{above:?} {below:?}");
    // Both crosses are as far apart on both pages.
    assert!((above[1].x - above[0].x - (below[1].x - below[0].x)).abs() < 1e-9);
    // Where the crosses lie on each other, the faces of the ring run through on the same places.
    let at = |page: &Rendered, cross: Point| -> Vec<f64> {
        let runs = page.runs_at(cross.y - 4.0).into_iter().filter(|run| run.length() < 2.0);
        runs.map(|run| run.middle() - cross.x).collect()
    };
    let (on_upper, on_lower) = (at(&upper.1, above[0]), at(&lower.1, below[0]));
    let faces = on_upper.iter().filter(|x| on_lower.iter().any(|other| (*x - other).abs() <= CLOSE_MM));
    assert!(faces.count() >= 4, "{on_upper:?} {on_lower:?}");
}

#[test]
fn words_of_a_template_can_be_taken_out_again() {
    let printed = printed(&leaf(), Paper::A4);
    let words = run("pdftotext", &["-layout", &printed.pdf().to_string_lossy(), "-"]);
    for told in ["TEMPLATES", "leaf", "80 mm", "30 mm", "3 mm thick", "before 30 % is trimmed off", "Paper burns"] {
        assert!(words.contains(told), "{told} in {words}");
    }
}
