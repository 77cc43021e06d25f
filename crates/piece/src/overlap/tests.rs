//! Parts that run into each other are found, and no others.

#![allow(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::{Quality, piece};
use fh_core::balance::balance;
use fh_core::file;

fn found(bars: &str, joints: &str) -> Vec<Overlap> {
    let text = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{bars}], "joints": [{joints}] }}"#
    );
    let plan = file::read(text.as_bytes()).unwrap();
    let balance = balance(&plan);
    overlaps(&plan, &balance, &piece(&plan, &balance, Quality::Screen))
}

/// A bar of one segment, plain.
fn bar(name: &str, stock: &str) -> String {
    format!(
        r#"{{ "name": "{name}", "stock": {stock}, "segments": [
            {{ "name": "{name}", "form": {{ "plain": {{ "length": "100 mm" }} }} }} ] }}"#
    )
}

const ROUND: &str = r#"{ "round": "10 mm" }"#;

/// A spacer between two crossing rods holds their middles this far apart.
fn crossing(spacer: &str) -> Vec<Overlap> {
    let bars = [bar("a", ROUND), bar("spacer", spacer), bar("b", ROUND)].join(", ");
    found(
        &bars,
        r#"{ "kind": "weld", "fixed": { "bar": "a", "segment": "a", "at": "30 mm" },
             "moved": [{ "bar": "spacer", "segment": "spacer", "side": "180 deg" }] },
           { "kind": "weld", "fixed": { "bar": "spacer", "segment": "spacer", "side": "180 deg" },
             "moved": [{ "bar": "b", "segment": "b", "turn": "90 deg" }] }"#,
    )
}

#[test]
fn rods_that_cross_within_each_other_are_found() {
    // The second joint lays b on the same side of the spacer as a: it lies where a does, turned across.
    let found = crossing(r#"{ "flat": { "width": "20 mm", "thickness": "4 mm" } }"#);
    let [only] = found.as_slice() else { panic!("{found:?}") };
    assert_eq!((only.first.bar, only.second.bar), (0, 2));
    assert!((only.depth_mm - 5.0).abs() < 0.2, "{only:?}");
}

#[test]
fn parts_that_touch_are_no_overlap() {
    let bars = [bar("a", ROUND), bar("b", ROUND)].join(", ");
    let joint = |kind: &str| {
        format!(
            r#"{{ "kind": "{kind}", "fixed": {{ "bar": "a", "segment": "a" }},
                "moved": [{{ "bar": "b", "segment": "b", "side": "180 deg", "turn": "30 deg" }}] }}"#
        )
    };
    assert_eq!(found(&bars, &joint("weld")), []);
    assert_eq!(found(&bars, ""), []);
}

#[test]
fn a_bar_bent_back_into_itself_is_found() {
    let hook = |radius: &str| {
        let bars = format!(
            r#"{{ "name": "hook", "stock": {{ "square": "12 mm" }}, "segments": [
                {{ "name": "foot", "form": {{ "plain": {{ "length": "200 mm" }} }} }},
                {{ "name": "bow", "form": {{ "plain": {{}} }},
                   "bend": {{ "curve": {{ "angle": "210 deg", "inside_radius": "{radius}" }} }} }},
                {{ "name": "tip", "form": {{ "plain": {{ "length": "120 mm" }} }} }} ] }}"#
        );
        found(&bars, "")
    };
    assert_eq!(hook("120 mm"), []);
    let found = hook("20 mm");
    let [only] = found.as_slice() else { panic!("{found:?}") };
    assert_eq!((only.first.segment, only.second.segment), (0, 2));
    assert!(only.depth_mm > 5.0, "{only:?}");
}

#[test]
fn a_pin_in_a_hole_is_not_in_the_boss() {
    let boss = |hole: &str| {
        let bars = format!(
            r#"{{ "name": "strap", "stock": {{ "flat": {{ "width": "30 mm", "thickness": "8 mm" }} }}, "segments": [
                {{ "name": "lug", "form": {{ "hole": {{ "outline": {{ "disc": {{ "diameter": "40 mm" }} }}, "thickness": "8 mm",
                   "hole": {hole}, "made": "drifted" }} }} }} ] }},
               {{ "name": "pin", "stock": {{ "round": "10 mm" }}, "segments": [
                {{ "name": "head", "form": {{ "plain": {{ "length": "10 mm" }} }} }},
                {{ "name": "shaft", "form": {{ "plain": {{ "length": "60 mm" }} }} }} ] }}"#
        );
        // Joined at its head, which stands clear of the boss: the shaft goes through the hole.
        let joint = r#"{ "kind": "hook", "fixed": { "bar": "strap", "segment": "lug" },
             "moved": [{ "bar": "pin", "segment": "head", "at": "0 mm" }] }"#;
        found(&bars, joint)
    };
    assert_eq!(boss(r#"{ "round": "12 mm" }"#), []);
    assert_eq!(boss(r#"{ "square": "12 mm" }"#), []);
}

/// Where one bar of 10 mm round with these parts runs into itself.
fn along(parts: &str) -> Vec<Overlap> {
    let text = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }},
            "bars": [{{ "name": "bar", "stock": {ROUND}, "segments": [{parts}] }}] }}"#
    );
    let plan = file::read(text.as_bytes()).unwrap();
    let balance = balance(&plan);
    overlaps_along(&plan, &balance, &piece(&plan, &balance, Quality::Lines))
}

const SHANK: &str = r#"{ "form": { "plain": { "length": "100 mm" } } }"#;

/// A ring of 20 mm inside: its middle line has a radius of 15 mm.
fn ring(sweep: &str) -> String {
    format!(
        r#"{{ "form": {{ "plain": {{}} }}, "bend": {{ "ring": {{ "inside_diameter": "20 mm", "sweep": "{sweep}" }} }} }}"#
    )
}

/// A bend of an inside radius of 10 mm, so that its middle line has one of 15 mm.
fn curve(angle: &str, side: &str) -> String {
    format!(
        r#"{{ "form": {{ "plain": {{}} }},
            "bend": {{ "curve": {{ "angle": "{angle}", "inside_radius": "10 mm", "side": "{side}" }} }} }}"#
    )
}

#[test]
fn a_full_ring_runs_through_its_own_shank() {
    // Its outside, 20 mm from the ring's middle, comes to the middle of the shank, 15 mm below that: as deep as half the bar.
    let found = along(&[SHANK, &ring("360 deg")].join(", "));
    let [only] = found.as_slice() else { panic!("{found:?}") };
    assert_eq!((only.first.segment, only.second.segment), (0, 1));
    assert!((only.depth_mm - 5.0).abs() < 0.2, "{only:?}");
}

#[test]
fn a_ring_that_is_set_back_stops_where_it_meets_its_neck() {
    // Set back by 60° on its own radius the ring's middle lies in line with the shank: (R + ρ) cos 60° = ρ. Its end then
    // meets the neck where cos γ = R ÷ (R + t/2) = 15/20 is left open: γ is 41.4°, and it goes round by 318.6°.
    let set_back = |sweep: &str| along(&[SHANK, &curve("60 deg", "180 deg"), &ring(sweep)].join(", "));
    assert_eq!(set_back("318 deg"), []);
    // With 30° left open, its outer corner is √(30² + 20² - 2 × 30 × 20 cos 30°) = 16.15 mm from the middle of the neck's
    // bend, whose outside is at 20 mm.
    let found = set_back("330 deg");
    let [only] = found.as_slice() else { panic!("{found:?}") };
    assert_eq!((only.first.segment, only.second.segment), (1, 2));
    assert!((only.depth_mm - 3.85).abs() < 0.2, "{only:?}");
}

#[test]
fn a_ring_that_closes_on_itself_touches_and_one_that_goes_on_runs_in() {
    assert_eq!(along(&ring("360 deg")), []);
    let found = along(&ring("400 deg"));
    let [only] = found.as_slice() else { panic!("{found:?}") };
    assert_eq!((only.first.segment, only.second.segment), (0, 0));
    assert!((only.depth_mm - 5.0).abs() < 0.2, "{only:?}");
}

#[test]
fn legs_that_lie_on_each_other_touch() {
    let doubled = SHANK
        .replace("{ \"form\"", r#"{ "bend": { "curve": { "angle": "180 deg", "inside_radius": "0 mm" } }, "form""#);
    let doubled = doubled.replace(r#""length": "100 mm""#, "");
    assert_eq!(along(&[SHANK, &doubled, SHANK].join(", ")), []);
}

#[test]
fn turns_of_a_scroll_that_lie_in_each_other_are_found() {
    let scroll = |outer: &str| {
        along(&format!(
            r#"{{ "form": {{ "plain": {{}} }}, "bend": {{ "scroll": {{ "inner_radius": "10 mm", "outer_radius": "{outer}",
                "turns": 2, "run": "even", "eye": "end" }} }} }}"#
        ))
    };
    // 12 mm from turn to turn leave room for 10 mm of bar; 6 mm do not, by 4 mm.
    assert_eq!(scroll("34 mm"), []);
    let found = scroll("22 mm");
    let [only] = found.as_slice() else { panic!("{found:?}") };
    assert!((only.depth_mm - 4.0).abs() < 0.3, "{only:?}");
}

#[test]
fn what_follows_along_the_bar_is_one_piece_of_metal() {
    // An S of two tight bends, and a shoulder: nothing is near what it does not follow.
    let shoulder = r#"{ "form": { "shoulder": { "to": { "round": "6 mm" }, "radius": "2 mm", "sides": "all" } } }"#;
    let parts = [SHANK, &curve("90 deg", "0 deg"), &curve("90 deg", "180 deg"), shoulder, SHANK];
    assert_eq!(along(&parts.join(", ")), []);
}
