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
