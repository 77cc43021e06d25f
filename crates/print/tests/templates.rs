//! Templates: at full scale, nothing cut off, no words over each other, large ones in parts that fit together.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use crate::reading::{extent, words};
use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_print::drawing::{Drawing, Item, Point, Text};
use fh_print::paper::{Area, Orientation, Paper};
use fh_print::pen::Pen;
use fh_print::sheets::{Sheet, document, template_sheet};

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
        ("bosses", bosses()),
        ("arch", arch()),
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
    for told in ["2 · bow", "bow: bent 180°, inside radius 30 mm", "180°", "R 30 mm", "60 mm open", "84 mm over all"]
    {
        assert!(said.contains(told), "{told} in {said}");
    }
}

/// Two bosses of 30 mm with a hole of 8.5 mm each, and an arc between them that is bent in their plane.
fn bosses() -> Plan {
    let boss = r#"{ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "30 mm" } }, "thickness": "6 mm",
        "hole": { "round": "8.5 mm" }, "made": "punched" } } }"#;
    let arc = r#"{ "name": "arc", "form": { "plain": {} },
        "bend": { "curve": { "angle": "90 deg", "inside_radius": "40 mm", "side": "90 deg" } } }"#;
    plan(r#"{ "flat": { "width": "12 mm", "thickness": "6 mm" } }"#, &[boss, arc, boss].join(", "))
}

/// The farthest that a closed line lies from the circle that it is as wide as, between its corners as well.
fn off_round(points: &[Point]) -> (f64, f64) {
    let size = |part: fn(&Point) -> f64| {
        let (low, high) = points.iter().map(part).fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(v), h.max(v)));
        ((low + high) / 2.0, high - low)
    };
    let ((x, wide), (y, _)) = (size(|point| point.x), size(|point| point.y));
    let between = points.iter().zip(points.iter().cycle().skip(1));
    let off = between.flat_map(|(a, b)| [(a.x, a.y), ((a.x + b.x) / 2.0, (a.y + b.y) / 2.0)]);
    let off = off.map(|(px, py)| ((px - x).hypot(py - y) - wide / 2.0).abs()).fold(0.0, f64::max);
    (wide, off)
}

#[test]
fn bosses_along_a_bent_bar_are_round_and_have_their_holes() {
    let drawing = landscape(&bosses());
    // The bend's own template is the last.
    let closed = drawing.pages.iter().flat_map(|page| &page.items).filter_map(|item| match item {
        Item::Polygon { points, pen: Some(Pen::Outline), .. } => Some(off_round(points)),
        _ => None,
    });
    let round: Vec<(f64, f64)> = closed.collect();
    let of = |size: f64| round.iter().filter(|(wide, off)| (wide - size).abs() < 0.02 && *off < 0.02).count();
    // The boss by itself once, for both are alike, and twice along the arc.
    assert_eq!((of(30.0), of(8.5), round.len()), (3, 3, 6), "{round:?}");
}

#[test]
fn a_taper_bent_round_a_mandrel_has_its_inside_face_on_it() {
    let taper = r#"{ "name": "curl", "form": { "taper": { "length": "60 mm", "to": { "flat": { "width": "12 mm", "thickness": "4 mm" } } } },
        "bend": { "curve": { "inside_radius": "10 mm" } } }"#;
    let drawing = landscape(&plan(r#"{ "square": "12 mm" }"#, &format!("{}, {taper}", plain("arm", 60.0))));
    let cross: Vec<Point> = drawn(&drawing, 0, Pen::JoinCross).concat();
    let middle = |part: fn(&Point) -> f64| cross.iter().map(part).sum::<f64>() / cross.len() as f64;
    let (x, y) = (middle(|point| point.x), middle(|point| point.y));
    let faces = drawn(&drawing, 0, Pen::Outline).into_iter().filter(|line| line.len() > 60);
    let ends: Vec<[f64; 2]> = faces
        .map(|face| {
            let between = face.windows(2).map(|pair| [(pair[0].x + pair[1].x) / 2.0, (pair[0].y + pair[1].y) / 2.0]);
            let all = face.iter().map(|point| [point.x, point.y]).chain(between);
            let away = all.map(|[px, py]| (px - x).hypot(py - y));
            away.fold([f64::MAX, f64::MIN], |[low, high], away| [low.min(away), high.max(away)])
        })
        .collect();
    let inside = ends.iter().find(|[low, _]| (low - 10.0).abs() < 0.03).unwrap();
    assert!((inside[0] - 10.0).abs() < 0.02 && (inside[1] - 10.0).abs() < 0.02, "{inside:?}");
    let outside = ends.iter().find(|[low, _]| *low > 11.0).unwrap();
    // It thins from 12 mm to 4 mm.
    assert!((outside[0] - 14.0).abs() < 0.02 && (outside[1] - 22.0).abs() < 0.02, "{outside:?}");
}

#[test]
fn a_step_on_one_side_leaves_the_other_side_flush() {
    let step =
        r#"{ "name": "step", "form": { "shoulder": { "to": { "square": "8 mm" }, "radius": "3 mm", "sides": [0] } } }"#;
    let seat = r#"{ "name": "seat", "form": { "drawn": { "length": "40 mm", "section": "same" } } }"#;
    let bow = r#"{ "name": "bow", "form": { "drawn": { "section": "same" } },
        "bend": { "curve": { "angle": "90 deg", "inside_radius": "20 mm" } } }"#;
    let drawing = landscape(&plan(r#"{ "square": "12 mm" }"#, &[&plain("arm", 60.0), step, seat, bow].join(", ")));
    let level = |line: &Vec<Point>| line.iter().all(|point| (point.y - line[0].y).abs() < 1e-6) && line.len() > 2;
    let outlines = drawn(&drawing, 0, Pen::Outline);
    let straight: Vec<f64> = outlines
        .iter()
        .filter(|line| level(line) && (line[0].x - line[line.len() - 1].x).abs() > 2.9)
        .map(|line| line[0].y)
        .collect();
    let (top, bottom) = straight.iter().fold((f64::MAX, f64::MIN), |(top, bottom), y| (top.min(*y), bottom.max(*y)));
    assert!((bottom - top - 12.0).abs() < 1e-6, "{straight:?}");
    // The arm, the step and the seat all lie on the bottom; the seat's top lies 4 mm below the arm's.
    assert_eq!(straight.iter().filter(|y| (**y - bottom).abs() < 1e-6).count(), 3, "{straight:?}");
    assert!(straight.iter().any(|y| (y - top - 4.0).abs() < 1e-6), "{straight:?}");
    // The wall of the step reaches from the fillet up to the arm's top.
    let walls = drawn(&drawing, 0, Pen::MarkLine).into_iter().filter(|line| (line[0].x - line[1].x).abs() < 1e-6);
    let reaches = |line: &Vec<Point>| line[0].y.min(line[1].y) < top && line[0].y.max(line[1].y) > bottom;
    assert!(walls.into_iter().any(|line| reaches(&line)));
}

/// An arch of 12 mm square, bent this way and that: 25 parts and one and a half metres.
fn arch() -> Plan {
    let bend = |angle: u32, radius: u32, side: u32| {
        format!(
            r#"{{ "name": "bend {angle}", "form": {{ "plain": {{}} }},
                 "bend": {{ "curve": {{ "angle": "{angle} deg", "inside_radius": "{radius} mm", "side": "{side} deg" }} }} }}"#
        )
    };
    let mut segments = vec![plain("foot", 60.0), bend(90, 20, 180), plain("leg", 120.0)];
    for (number, (angle, radius, side)) in
        [(35, 120, 0), (70, 40, 180), (35, 120, 0), (90, 25, 0), (30, 60, 180)].into_iter().enumerate()
    {
        segments.push(bend(angle, radius, side));
        segments.push(plain(&format!("piece {number}"), 20.0 + 10.0 * number as f64));
    }
    segments.push(bend(120, 150, 0));
    for (number, (angle, radius, side)) in
        [(30, 60, 180), (90, 25, 0), (35, 120, 0), (70, 40, 180)].into_iter().enumerate()
    {
        segments.push(plain(&format!("other {number}"), 30.0));
        segments.push(bend(angle, radius, side));
    }
    segments.extend([plain("last leg", 110.0), bend(90, 20, 180), plain("last foot", 46.0)]);
    plan(r#"{ "square": "12 mm" }"#, &segments.join(", "))
}

#[test]
fn a_large_arch_comes_in_parts_that_all_exist_and_all_show_metal() {
    for paper in Paper::ALL {
        let drawing = template_sheet(&arch(), &balance(&arch()), paper, Orientation::Landscape);
        let parts: Vec<(String, Vec<String>, f64)> = drawing
            .pages
            .iter()
            .enumerate()
            .filter_map(|(number, page)| {
                let texts: Vec<String> = page
                    .items
                    .iter()
                    .filter_map(|item| if let Item::Text(text) = item { Some(text.content().to_owned()) } else { None })
                    .collect();
                let head = texts.iter().find(|text| text.contains(", part "))?;
                let letter = head.split(", part ").nth(1)?.chars().next()?.to_string();
                let pairs = texts
                    .iter()
                    .filter(|text| text.chars().count() == 2 && text.chars().all(|c| c.is_ascii_uppercase()));
                let pairs: Vec<String> = pairs.cloned().collect();
                let metal = drawn(&drawing, number, Pen::Outline);
                let long = metal
                    .iter()
                    .flat_map(|line| line.windows(2).map(|pair| (pair[1].x - pair[0].x).hypot(pair[1].y - pair[0].y)));
                Some((letter, pairs, long.sum()))
            })
            .collect();
        assert!(parts.len() >= 3, "{}", parts.len());
        for (index, (letter, pairs, metal)) in parts.iter().enumerate() {
            assert_eq!(*letter, char::from(b'A' + index as u8).to_string());
            assert!(*metal > 20.0, "part {letter} shows {metal} mm of metal");
            for pair in pairs {
                assert!(pair.contains(letter.as_str()), "{pair} on part {letter}");
                let there =
                    parts.iter().filter(|(_, others, _)| others.iter().filter(|other| *other == pair).count() == 2);
                assert_eq!(there.count(), 2, "{pair} leads to a part that is not there");
            }
        }
    }
}

#[test]
fn long_tails_are_broken_off() {
    let drawing = landscape(&hook([400.0, 900.0]));
    assert_eq!(drawing.pages.len(), 1);
    assert!(words(&drawing).contains("shank: 900 mm long, shown shortened"), "{}", words(&drawing));
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
    // Words are broken into lines.
    let said = words(&drawing).replace('\n', " ");
    let told = "dashed: before 10 % is trimmed off, 0.6 mm to 1.6 mm outside";
    assert!(said.contains("3 mm thick") && said.contains(told), "{said}");
}

#[test]
fn a_rim_too_thin_to_forge_is_told_and_not_drawn() {
    let drawing = landscape(&leaf([40.0, 18.0]));
    assert!(drawn(&drawing, 0, Pen::Dashed).is_empty());
    let said = words(&drawing).replace('\n', " ");
    assert!(said.contains("10 % more than the outline is spread: file it to the line"), "{said}");
}

#[test]
fn a_blade_tells_the_width_of_its_root() {
    let blade = r#"{ "name": "blade", "form": { "flag": { "outline": { "trapezoid": { "length": "60 mm", "root": "20 mm",
        "tip": "46 mm" } }, "thickness": "3 mm" } } }"#;
    let said = words(&landscape(&plan(r#"{ "square": "12 mm" }"#, &[blade, &plain("stem", 40.0)].join(", "))));
    assert!(said.contains("20 mm") && said.contains("46 mm") && said.contains("60 mm"), "{said}");
}

#[test]
fn a_dimension_too_short_for_its_words_has_them_beside_its_ticks() {
    let drawing = landscape(&leaf([9.0, 60.0]));
    let dimension = drawn(&drawing, 0, Pen::Dimension);
    let level = dimension
        .iter()
        .find(|line| (line[0].y - line[1].y).abs() < 1e-9 && (line[1].x - line[0].x - 9.0).abs() < 1e-6)
        .unwrap();
    let words = drawing.pages[0].items.iter().find_map(|item| match item {
        Item::Text(text) if text.content() == "9 mm" => Some(extent(text)),
        _ => None,
    });
    assert!(words.unwrap().left > level[1].x, "{words:?} {level:?}");
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
    for told in ["1 · tines", "1.1.1", "1.1.2", "1.2.1", "1.2.2"] {
        assert!(said.contains(told), "{told} in {said}");
    }
    // Each bend has its own figures, on the drawing.
    let texts: Vec<&str> = said.lines().collect();
    let count = |words: &str| texts.iter().filter(|line| line.contains(words) && !line.contains("bent")).count();
    assert_eq!((count("R 20 mm"), count("30°")), (2, 2), "{said}");
    // Both of 8 mm are bent apart from where they lie side by side.
    let gaps = texts.iter().filter(|line| line.ends_with(" mm") && !line.contains("R ") && line.len() < 10);
    assert!(gaps.count() >= 1, "{said}");
    assert_eq!(drawing.pages.len(), 1);
}

#[test]
fn a_large_ring_comes_in_parts_with_letters() {
    let drawing = landscape(&ring(300.0));
    let said = words(&drawing);
    assert!(said.contains("part A of 5") && said.contains("part E of 5"), "{said}");
    assert!(said.contains("AB") && said.contains("cross to cross"), "{said}");
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

/// A hook's tip lies over its shank on the cards, whichever of its legs is the longer; so it does on the template.
#[test]
fn a_template_has_the_same_side_up_as_the_cards() {
    for legs in [[40.0, 130.0], [130.0, 40.0]] {
        let plan = hook(legs);
        let drawing = document(&plan, &balance(&plan), &[Sheet::Templates], Paper::A4, Orientation::Landscape);
        let items = &drawing.pages[0].items;
        let long = items.iter().flat_map(|item| match item {
            Item::Polyline { points, .. } => points.clone(),
            Item::Line { from, to, .. } => vec![*from, *to],
            _ => Vec::new(),
        });
        let long: Vec<Point> = long.collect();
        let turn = items.iter().find_map(|item| match item {
            Item::Text(text) if text.content().contains("180") => Some(text.at),
            _ => None,
        });
        let turn = turn.expect("the angle of the bow");
        // Where the level faces of the longer leg lie.
        let level: Vec<f64> = long
            .windows(2)
            .filter(|pair| {
                (pair[0].y - pair[1].y).abs() < 0.01 && (pair[0].x - pair[1].x).abs() > 1.0 && pair[0].y < 170.0
            })
            .map(|pair| pair[0].y)
            .collect();
        let long_leg = level.iter().filter(|y| level.iter().filter(|other| (*other - *y).abs() < 0.1).count() > 20);
        let lowest = long_leg.copied().fold(f64::NEG_INFINITY, f64::max);
        assert!(lowest > turn.y, "{legs:?}: {lowest} under {}", turn.y);
    }
}
