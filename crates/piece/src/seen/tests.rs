//! What is seen of solids whose outline is known.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

use super::*;
use crate::{Quality, piece};
use fh_core::balance::balance;
use fh_core::file;
use std::f64::consts::PI;

const RIGHT: Vector = [1.0, 0.0, 0.0];
const UP: Vector = [0.0, 0.0, 1.0];
/// To the right and up as seen from above: away from the smith.
const AWAY: Vector = [0.0, 1.0, 0.0];

/// The only part of a bar of one segment.
fn part(stock: &str, segment: &str) -> Mesh {
    let text = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }},
            "bars": [{{ "name": "bar", "stock": {stock}, "segments": [{segment}] }}] }}"#
    );
    let plan = file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}"));
    let piece = piece(&plan, &balance(&plan), Quality::Print);
    piece.surface(&piece.lines[0])
}

fn area(points: &[Place]) -> f64 {
    let next = points.iter().cycle().skip(1);
    points.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum::<f64>() / 2.0
}

/// The size of a box round an outline.
fn size(seen: &Seen) -> Place {
    let [low, high] = bounds(seen.outline.iter().flatten()).unwrap();
    [high[0] - low[0], high[1] - low[1]]
}

#[test]
fn a_plain_bar_is_seen_as_a_rectangle() {
    let bar = part(
        r#"{ "flat": { "width": "20 mm", "thickness": "6 mm" } }"#,
        r#"{ "form": { "plain": { "length": "90 mm" } } }"#,
    );
    for (up, high) in [(UP, 6.0), (AWAY, 20.0)] {
        let seen = bar.seen(RIGHT, up);
        assert_eq!(seen.outline.len(), 1);
        assert!((area(&seen.outline[0]) - 90.0 * high).abs() < 1e-6, "{:?}", seen.outline);
        assert!(seen.arrises.is_empty(), "{:?}", seen.arrises);
    }
}

#[test]
fn a_ring_is_seen_with_what_is_inside_it_and_from_its_edge_without() {
    let ring = part(
        r#"{ "round": "10 mm" }"#,
        r#"{ "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "50 mm", "sweep": "340 deg" } } }"#,
    );
    let open = ring.seen(RIGHT, UP);
    let half = PI * (35.0_f64.powi(2) - 25.0_f64.powi(2)) * 340.0 / 360.0;
    let sum: f64 = open.outline.iter().map(|points| area(points)).sum();
    assert!((sum - half).abs() < 0.01 * half, "{sum} for {half}");
    assert!((area(&open.area()) - sum).abs() < 1e-6);
    assert!((size(&open)[0] - 70.0).abs() < 0.05 && (size(&open)[1] - 70.0).abs() < 0.05, "{:?}", size(&open));
    let edge_on = ring.seen(RIGHT, AWAY);
    assert_eq!(edge_on.outline.len(), 1);
    assert!((size(&edge_on)[1] - 10.0).abs() < 0.05, "{:?}", size(&edge_on));
}

#[test]
fn a_ring_that_closes_on_itself_has_an_inside() {
    let ring = part(
        r#"{ "square": "10 mm" }"#,
        r#"{ "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "50 mm", "sweep": "400 deg" } } }"#,
    );
    let seen = ring.seen(RIGHT, UP);
    assert_eq!(seen.outline.len(), 2, "{:?}", seen.outline.iter().map(|points| area(points)).collect::<Vec<_>>());
    assert!((area(&seen.outline[1]) + PI * 625.0).abs() < 3.0, "{}", area(&seen.outline[1]));
}

#[test]
fn a_hole_is_seen_through() {
    let boss = part(
        r#"{ "flat": { "width": "30 mm", "thickness": "8 mm" } }"#,
        r#"{ "form": { "hole": { "outline": { "disc": { "diameter": "40 mm" } }, "thickness": "8 mm",
             "hole": { "round": "12 mm" }, "made": "drifted" } } }"#,
    );
    let seen = boss.seen(RIGHT, AWAY);
    assert_eq!(seen.outline.len(), 2);
    assert!((area(&seen.outline[0]) - PI * 400.0).abs() < 4.0 && (area(&seen.outline[1]) + PI * 36.0).abs() < 0.5);
    assert!((area(&seen.area()) - PI * 364.0).abs() < 4.0);
    assert_eq!(boss.seen(RIGHT, UP).outline.len(), 1);
}

#[test]
fn each_arris_of_a_twist_crosses_the_side_that_is_seen() {
    let twisted = part(
        r#"{ "square": "12 mm" }"#,
        r#"{ "form": { "plain": { "length": "80 mm" } }, "bend": { "twist": { "turns": 2 } } }"#,
    );
    let seen = twisted.seen(RIGHT, UP);
    let [_, high] = size(&seen);
    assert!((high - 12.0 * 2.0_f64.sqrt()).abs() < 0.05, "{high}");
    // Four arrises, two turns: each crosses as long as both its faces look at the eye, a quarter of a turn.
    let boxes = seen.arrises.iter().map(|line| bounds(line.iter()).unwrap());
    let mut full: Vec<f64> = boxes.filter(|[low, high]| high[1] - low[1] > 11.0).map(|[low, _]| low[0]).collect();
    full.sort_by(f64::total_cmp);
    full.dedup_by(|one, before| *one - *before < 1.0);
    assert!((7..=9).contains(&full.len()), "{full:?}");
}

#[test]
fn what_cannot_be_measured_is_not_seen() {
    let mut bar = part(r#"{ "square": "12 mm" }"#, r#"{ "form": { "plain": { "length": "80 mm" } } }"#);
    bar.points[0] = [f64::NAN, 0.0, 0.0];
    assert_eq!(bar.seen(RIGHT, UP), Seen::default());
    assert_eq!(Mesh::default().seen(RIGHT, UP), Seen::default());
}
