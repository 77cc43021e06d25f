//! Plates that are spread to a blank and cut to their outline, on their templates: both at full scale on one base line.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use crate::reading::{extent, words};
use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_print::drawing::{Drawing, Item, Point};
use fh_print::paper::{Orientation, Paper};
use fh_print::pen::Pen;
use fh_print::sheets::template_sheet;

/// The latch plate of the reference cases: f-o01 of `tests/data/cut_to_shape.json`, its base line its lower edge.
fn latch() -> Plan {
    let text = r#"{ "firstheat": 1, "units": { "length": "mm", "marks": "1 mm" }, "bars": [{ "name": "bar",
        "stock": { "square": "12 mm" }, "segments": [
        { "name": "shank", "form": { "plain": { "length": "60 mm" } } },
        { "name": "latch", "form": { "flag": {
          "outline": { "polygon": [["0 mm", "0 mm"], ["70 mm", "0 mm"], ["70 mm", "20 mm"], ["50 mm", "20 mm"],
            ["50 mm", "32 mm"], ["20 mm", "40 mm"], ["0 mm", "40 mm"]] },
          "blank": { "rectangle": { "length": "80 mm", "width": "46 mm" } }, "base_line": { "blank": "2 mm" },
          "thickness": "4 mm" } } }] }] }"#;
    fh_core::file::read(text.as_bytes()).unwrap()
}

fn lines(drawing: &Drawing, wanted: Pen) -> Vec<Vec<Point>> {
    let of = |item: &Item| match item {
        Item::Polygon { points, pen: Some(pen), .. } if *pen == wanted => Some(points.clone()),
        _ => None,
    };
    drawing.pages[0].items.iter().filter_map(of).collect()
}

fn reach(points: &[Point]) -> [f64; 4] {
    let low_high = |of: fn(&Point) -> f64| {
        let all = points.iter().map(of);
        [all.clone().fold(f64::MAX, f64::min), all.fold(f64::MIN, f64::max)]
    };
    let ([left, right], [top, bottom]) = (low_high(|point| point.x), low_high(|point| point.y));
    [left, right, top, bottom]
}

#[test]
fn a_template_shows_blank_and_outline_at_full_scale_on_their_base_line() {
    let plan = latch();
    let drawing = template_sheet(&plan, &balance(&plan), Paper::A4, Orientation::Landscape);
    let (outline, blank) = (lines(&drawing, Pen::Outline), lines(&drawing, Pen::Dashed));
    let ([left, right, top, bottom], [blank_left, blank_right, blank_top, blank_bottom]) =
        (reach(&outline[0]), reach(&blank[0]));
    let near = |got: f64, want: f64| assert!((got - want).abs() < 1e-9, "{got} where {want} is right");
    near(right - left, 70.0);
    near(bottom - top, 40.0);
    near(blank_right - blank_left, 80.0);
    near(blank_bottom - blank_top, 46.0);
    // One root, and the blank's edge 2 mm beyond the base line, which is the lower edge of the outline.
    near(blank_left, left);
    near(blank_bottom - bottom, 2.0);
    let said = words(&drawing).replace('\n', " ");
    for wanted in ["base line", "root", "70 mm", "80 mm", "40 mm", "46 mm", "4 mm thick"] {
        assert!(said.contains(wanted), "{wanted}: {said}");
    }
    // 3680 mm² are spread, 2280 stay.
    assert!(said.contains("the blank it is spread to, 80 mm × 46 mm; 38 % of it are cut away"), "{said}");
}

#[test]
fn no_words_of_a_plate_cut_to_shape_overlap() {
    let plan = latch();
    for paper in Paper::ALL {
        for orientation in [Orientation::Landscape, Orientation::Portrait] {
            let drawing = template_sheet(&plan, &balance(&plan), paper, orientation);
            for page in &drawing.pages {
                let texts: Vec<_> = page
                    .items
                    .iter()
                    .filter_map(|item| if let Item::Text(text) = item { Some((text, extent(text))) } else { None })
                    .collect();
                for (index, (text, a)) in texts.iter().enumerate() {
                    let clash = texts[index + 1..].iter().find(|(_, b)| {
                        a.left < b.right - 0.01
                            && b.left < a.right - 0.01
                            && a.top < b.bottom - 0.01
                            && b.top < a.bottom - 0.01
                    });
                    assert!(clash.is_none(), "{text:?} and {clash:?}");
                }
            }
        }
    }
}
