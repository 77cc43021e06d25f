//! Templates: at full scale, nothing cut off, no words over each other, large ones in parts that fit together.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod reading;

use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_print::drawing::{Drawing, Item, Point, Text};
use fh_print::paper::{Area, Orientation, Paper};
use fh_print::pen::Pen;
use fh_print::sheets::{Sheet, document, template_sheet};
use reading::{extent, words};

fn plan(bar: &str, segments: &str) -> Plan {
    let text = format!(
        r#"{{ "firstheat": 1, "title": "Test", "units": {{ "length": "mm", "marks": "1 mm" }},
             "bars": [ {{ "name": "bar", "stock": {bar}, "segments": [ {segments} ] }} ] }}"#
    );
    fh_core::file::read(text.as_bytes()).expect("a plan")
}

fn plain(name: &str, mm: f64) -> String {
    format!(r#"{{ "name": "{name}", "form": {{ "plain": {{ "length": "{mm} mm" }} }} }}"#)
}

/// A hook of 30 mm inside radius between two legs of 12 mm square.
fn hook(legs: [f64; 2]) -> Plan {
    let bend = r#"{ "name": "bow", "form": { "plain": {} },
        "bend": { "curve": { "angle": "180 deg", "inside_radius": "30 mm" } } }"#;
    plan(r#"{ "square": "12 mm" }"#, &[plain("tip", legs[0]), bend.to_owned(), plain("shank", legs[1])].join(", "))
}

/// A leaf of a size, with a tenth of it trimmed.
fn leaf([length, width]: [f64; 2]) -> Plan {
    let leaf = format!(
        r#"{{ "name": "leaf", "form": {{ "flag": {{ "outline": {{ "leaf": {{ "length": "{length} mm", "width": "{width} mm" }} }},
             "thickness": "3 mm", "trim": "10 %" }} }} }}"#
    );
    plan(r#"{ "square": "12 mm" }"#, &[leaf, plain("stem", 40.0)].join(", "))
}

fn ring(inside: f64) -> Plan {
    let ring = format!(
        r#"{{ "name": "eye", "form": {{ "drawn": {{ "section": {{ "round": "10 mm" }} }} }},
             "bend": {{ "ring": {{ "inside_diameter": "{inside} mm" }} }} }}"#
    );
    plan(r#"{ "square": "12 mm" }"#, &[ring, plain("shank", 50.0)].join(", "))
}

/// Bent one way, then the other way out of the plane: two templates.
fn two_planes() -> Plan {
    let bend = |name: &str, side: u32| {
        format!(
            r#"{{ "name": "{name}", "form": {{ "plain": {{}} }},
                 "bend": {{ "curve": {{ "angle": "90 deg", "inside_radius": "15 mm", "side": "{side} deg" }} }} }}"#
        )
    };
    let segments = [bend("up", 0), plain("leg", 60.0), bend("aside", 90), plain("end", 30.0)];
    plan(r#"{ "square": "12 mm" }"#, &segments.join(", "))
}

fn fork() -> Plan {
    let branch = |side: u32| {
        format!(
            r#"{{ "name": "tine {side}", "segments": [
                 {{ "name": "tine", "form": {{ "drawn": {{ "length": "60 mm", "section": {{ "square": "8 mm" }} }} }} }},
                 {{ "name": "bend", "form": {{ "drawn": {{ "section": {{ "square": "8 mm" }} }} }},
                    "bend": {{ "curve": {{ "angle": "30 deg", "inside_radius": "20 mm", "side": "{side} deg" }} }} }} ] }}"#
        )
    };
    let split = format!(
        r#"{{ "name": "tines", "form": {{ "split": {{ "branches": [ {}, {} ], "side": "270 deg" }} }} }}"#,
        branch(270),
        branch(90)
    );
    plan(r#"{ "square": "20 mm" }"#, &[split, plain("throat", 60.0)].join(", "))
}

fn every_plan() -> Vec<(&'static str, Plan)> {
    vec![
        ("hook", hook([40.0, 60.0])),
        ("long hook", hook([400.0, 900.0])),
        ("leaf", leaf([64.0, 26.0])),
        ("large leaf", leaf([420.0, 300.0])),
        ("ring", ring(40.0)),
        ("large ring", ring(300.0)),
        ("absurd ring", ring(90_000.0)),
        ("two planes", two_planes()),
        ("fork", fork()),
        ("straight", plan(r#"{ "square": "12 mm" }"#, &plain("bar", 100.0))),
        ("nothing", plan(r#"{ "square": "12 mm" }"#, "")),
    ]
}

fn landscape(plan: &Plan) -> Drawing {
    template_sheet(plan, &balance(plan), Paper::A4, Orientation::Landscape)
}

/// The corners of everything drawn with a pen on a page.
fn drawn(drawing: &Drawing, page: usize, wanted: Pen) -> Vec<Vec<Point>> {
    let lines = |item: &Item| match item {
        Item::Line { from, to, pen } if *pen == wanted => Some(vec![*from, *to]),
        Item::Polyline { points, pen } if *pen == wanted => Some(points.clone()),
        Item::Polygon { points, pen: Some(pen), .. } if *pen == wanted => Some(points.clone()),
        _ => None,
    };
    drawing.pages[page].items.iter().filter_map(lines).collect()
}

#[test]
fn nothing_is_cut_off_and_no_words_overlap() {
    for (name, plan) in every_plan() {
        for paper in Paper::ALL {
            for orientation in [Orientation::Landscape, Orientation::Portrait] {
                let drawing = template_sheet(&plan, &balance(&plan), paper, orientation);
                let what = format!("{name} on {} {orientation:?}", paper.name());
                let area = paper.printable(orientation);
                for page in &drawing.pages {
                    for item in &page.items {
                        let corners = match item {
                            Item::Line { from, to, .. } => vec![*from, *to],
                            Item::Polyline { points, .. } | Item::Polygon { points, .. } => points.clone(),
                            Item::Text(text) => {
                                let Area { left, top, right, bottom } = extent(text);
                                vec![Point { x: left, y: top }, Point { x: right, y: bottom }]
                            }
                        };
                        let inside = |point: &Point| {
                            (area.left - 0.5..=area.right + 0.5).contains(&point.x)
                                && (area.top - 0.5..=area.bottom + 0.5).contains(&point.y)
                        };
                        assert!(corners.iter().all(inside), "{what}: {item:?}");
                    }
                    let texts = page.items.iter().filter_map(|item| match item {
                        Item::Text(text) => Some((text, extent(text))),
                        _ => None,
                    });
                    let texts: Vec<(&Text, Area)> = texts.collect();
                    for (index, (text, a)) in texts.iter().enumerate() {
                        let clash = texts[index + 1..].iter().find(|(_, b)| {
                            a.left < b.right - 0.01
                                && b.left < a.right - 0.01
                                && a.top < b.bottom - 0.01
                                && b.top < a.bottom - 0.01
                        });
                        assert!(clash.is_none(), "{what}: {text:?} and {clash:?}");
                    }
                }
                assert!(fh_print::pdf(&drawing).is_ok(), "{what}");
                assert_eq!(fh_print::svg(&drawing).len(), drawing.pages.len(), "{what}");
            }
        }
    }
}

#[test]
fn a_hook_is_drawn_with_both_faces_at_full_scale() {
    let drawing = landscape(&hook([40.0, 60.0]));
    assert_eq!(drawing.pages.len(), 1);
    // Of 12 mm square bent round 30 mm, the faces of the bow lie 30 and 42 mm from its center.
    let cross: Vec<Point> = drawn(&drawing, 0, Pen::JoinCross).concat();
    let center = Point {
        x: cross.iter().map(|point| point.x).sum::<f64>() / cross.len() as f64,
        y: cross.iter().map(|point| point.y).sum::<f64>() / cross.len() as f64,
    };
    let arcs = drawn(&drawing, 0, Pen::Outline).into_iter().filter(|line| line.len() > 60);
    let mut radii = Vec::new();
    for arc in arcs {
        let away = |point: &Point| (point.x - center.x).hypot(point.y - center.y);
        let first = away(&arc[0]);
        assert!(arc.iter().all(|point| (away(point) - first).abs() < 1e-6), "{arc:?}");
        radii.push(first);
    }
    radii.sort_by(f64::total_cmp);
    assert!(radii.len() == 2 && (radii[0] - 30.0).abs() < 1e-6 && (radii[1] - 42.0).abs() < 1e-6, "{radii:?}");
    let said = words(&drawing);
    for told in ["2 · bow", "bow: bent 180°, inside radius 30 mm", "180°", "R 30 mm"] {
        assert!(said.contains(told), "{told} in {said}");
    }
}

#[test]
fn long_tails_are_broken_off() {
    let drawing = landscape(&hook([400.0, 900.0]));
    assert_eq!(drawing.pages.len(), 1);
    assert!(words(&drawing).contains("shank: 900 mm long, not all drawn"), "{}", words(&drawing));
}

#[test]
fn a_trimmed_leaf_is_dashed_around_its_outline_and_larger_by_its_share() {
    let drawing = landscape(&leaf([64.0, 26.0]));
    let area = |points: &[Point]| {
        let next = |index: usize| points[(index + 1) % points.len()];
        let cross = |(index, a): (usize, &Point)| a.x * next(index).y - next(index).x * a.y;
        points.iter().enumerate().map(cross).sum::<f64>().abs() / 2.0
    };
    let (after, before) = (drawn(&drawing, 0, Pen::Outline), drawn(&drawing, 0, Pen::Dashed));
    assert!((area(&before[0]) / area(&after[0]) - 1.1).abs() < 1e-9);
    let xs: Vec<f64> = after[0].iter().map(|point| point.x).collect();
    let size = xs.iter().copied().fold(f64::MIN, f64::max) - xs.iter().copied().fold(f64::MAX, f64::min);
    assert!((size - 64.0).abs() < 1e-9, "{size}");
    let said = words(&drawing);
    assert!(said.contains("3 mm thick") && said.contains("dashed: before 10 % is trimmed off"), "{said}");
}

#[test]
fn bends_in_two_planes_are_two_templates() {
    let said = words(&landscape(&two_planes()));
    assert!(said.contains("1 · up") && said.contains("3 · aside"), "{said}");
}

#[test]
fn tines_are_drawn_together() {
    let drawing = landscape(&fork());
    let said = words(&drawing);
    assert!(said.contains("1 · tines") && said.contains("1.1.2") && said.contains("1.2.2"), "{said}");
    assert_eq!(drawing.pages.len(), 1);
}

#[test]
fn a_large_ring_comes_in_parts_with_letters() {
    let drawing = landscape(&ring(300.0));
    let said = words(&drawing);
    assert!(said.contains("part A of 6") && said.contains("part F of 6"), "{said}");
    assert!(said.contains("AB") && said.contains("cross on cross"), "{said}");
    assert!(words(&landscape(&ring(90_000.0))).contains("too large to be printed"));
}

#[test]
fn a_straight_bar_needs_none() {
    assert!(words(&landscape(&plan(r#"{ "square": "12 mm" }"#, &plain("bar", 100.0)))).contains("needs no template"));
}

#[test]
fn pages_of_a_document_are_counted_through() {
    let plan = hook([40.0, 60.0]);
    let worked = balance(&plan);
    let draw = |sheets: &[Sheet]| document(&plan, &worked, sheets, Paper::A4, Orientation::Landscape);
    let (marks, both) = (draw(&[Sheet::Marks]), draw(&[Sheet::Marks, Sheet::Templates]));
    let count = marks.pages.len() + 1;
    assert_eq!(both.pages.len(), count);
    assert!(words(&both).contains(&format!("page {count} of {count}")));
    let turned = draw(&[Sheet::Templates, Sheet::Marks]);
    let first = Drawing { pages: turned.pages[..1].to_vec(), ..turned };
    assert!(words(&first).contains("TEMPLATES") && !words(&first).contains("Caution"), "{}", words(&first));
}
