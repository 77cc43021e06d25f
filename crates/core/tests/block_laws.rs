//! Whatever is done to a bar with fixed marks: every block keeps its metal, and every step is taken back.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]

use crate::blocks::{read, written};
use fh_core::balance::{BarBalance, balance};
use fh_core::edit::{BoundaryMove, BoundaryTarget, Edit, History, MarkEdit, Neighbor};
use fh_core::plan::Plan;
use proptest::prelude::*;
use uom::si::f64::Length;
use uom::si::length::millimeter;
use uom::si::volume::cubic_millimeter;

fn mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// A part: what it is, how long, whether it gives, and whether its mark is fixed.
#[derive(Clone, Debug)]
struct Part {
    kind: usize,
    long: u32,
    gives: bool,
    fixed: bool,
}

fn part() -> impl Strategy<Value = Part> {
    (0_usize..6, 5_u32..120, any::<bool>(), prop::bool::weighted(0.4)).prop_map(|(kind, long, gives, fixed)| Part {
        kind,
        long,
        gives,
        fixed,
    })
}

fn form(part: &Part) -> String {
    let long = part.long;
    match part.kind {
        0 => format!(r#"{{ "plain": {{ "length": "{long} mm" }} }}"#),
        1 => format!(r#"{{ "drawn": {{ "length": "{long} mm", "section": {{ "square": "7 mm" }} }} }}"#),
        2 => format!(r#"{{ "taper": {{ "length": "{long} mm", "to": {{ "round": "6 mm" }} }} }}"#),
        3 => format!(
            r#"{{ "flag": {{ "outline": {{ "leaf": {{ "length": "{} mm", "width": "20 mm" }} }}, "thickness": "3 mm" }} }}"#,
            long + 20
        ),
        4 => r#"{ "ball": { "diameter": "14 mm" } }"#.to_owned(),
        _ => format!(r#"{{ "drawn": {{ "length": "{long} mm", "section": "same" }} }}"#),
    }
}

/// A bar of these parts, each fixed mark so far beyond the one before it.
fn bar(parts: &[Part], steps: &[u32]) -> Plan {
    let mut mark = 0;
    let mut segments = Vec::new();
    for (index, part) in parts.iter().enumerate() {
        let part = Part { kind: if index == 0 && part.kind == 5 { 1 } else { part.kind }, ..part.clone() };
        let mut text = format!(r#"{{ "name": "p{index}", "form": {}"#, form(&part));
        if part.gives {
            text.push_str(r#", "gives": "length""#);
        }
        if part.fixed {
            mark += steps[index % steps.len()];
            text.push_str(&format!(r#", "ends_at": "{mark} mm""#));
        }
        segments.push(text + "}");
    }
    read(&format!(
        r#"{{ "firstheat": 1, "scale": "2 %", "bars": [{{ "stock": {{ "square": "12 mm" }}, "segments": [{}] }}] }}"#,
        segments.join(",")
    ))
}

/// Every block: its parts and what is over or short make up the bar between its marks, and so does their metal.
fn check(bar: &BarBalance, what: &str) {
    let area = bar.stock_area.get::<uom::si::area::square_millimeter>();
    let whole: Vec<_> = bar.whole().map(|(_, segment)| segment).collect();
    for block in &bar.blocks {
        let parts = &whole[block.places.clone()];
        let taken: f64 = parts.iter().map(|part| mm(part.stock_length)).sum();
        let long = mm(block.mark_end) - mm(block.mark_start);
        assert!(
            (taken + mm(block.over_length) - long).abs() <= 1e-7 * long.abs().max(1.0),
            "{what}: {block:?} {taken}"
        );
        assert!((mm(block.over_length) * area - block.over.get::<cubic_millimeter>()).abs() < 1e-6, "{what}");
        let metal: f64 = parts
            .iter()
            .map(|part| {
                let all = part.finished_volume + part.trimmed_volume;
                all.get::<cubic_millimeter>() / (1.0 - part.scale_share)
            })
            .sum();
        assert!((metal - taken * area).abs() <= 1e-6 * metal.max(1.0), "{what}: {metal} in {taken} mm");
        assert!(block.factor.is_none() || block.over_length == Length::default(), "{what}: {block:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn metal_is_kept_in_every_block_and_every_edit_is_taken_back(
        parts in prop::collection::vec(part(), 1..9),
        steps in prop::collection::vec(8_u32..90, 9),
        wishes in prop::collection::vec((0_usize..5, 0_usize..9, 1_u32..300), 1..5),
    ) {
        let mut history = History::new(bar(&parts, &steps));
        check(&balance(history.plan()).bars[0], "as written");
        for (what, part, to) in wishes {
            let at = part % parts.len();
            let to_mm = Length::new::<millimeter>(f64::from(to));
            let mark = written(&format!("{to} mm"));
            let edit = match what {
                0 => Edit::Mark(MarkEdit::Fix { bar: 0, segment: at, at: mark }),
                1 => Edit::Mark(MarkEdit::Move { bar: 0, segment: at, to: mark }),
                2 => Edit::Mark(MarkEdit::Loosen { bar: 0, segment: at }),
                3 => Edit::RemoveSegment { bar: 0, at },
                _ => {
                    let to = BoundaryTarget::Mark(to_mm);
                    Edit::MoveBoundary(BoundaryMove { bar: 0, segment: at, to, neighbor: Neighbor::KeepsMetal })
                }
            };
            if history.plan().bars[0].segments.len() <= at {
                continue;
            }
            let before = history.plan().clone();
            if history.apply(&edit).is_ok() {
                check(&balance(history.plan()).bars[0], &format!("{edit:?}"));
                if *history.plan() != before {
                    prop_assert!(history.undo());
                    prop_assert_eq!(history.plan(), &before);
                    prop_assert!(history.redo());
                }
            } else {
                prop_assert_eq!(history.plan(), &before);
            }
        }
    }
}

#[test]
fn a_form_that_an_open_block_is_given_fills_it() {
    use fh_core::edit::PartChange;
    use fh_core::plan::{FormKind, Gives};
    let text = r#"{ "firstheat": 1, "bars": [{ "name": "bar", "stock": { "square": "12 mm" }, "segments": [
        { "name": "shank", "form": { "plain": { "length": "100 mm" } }, "ends_at": "100 mm" },
        { "name": "block", "form": { "open": {} }, "ends_at": "145 mm" },
        { "name": "rest", "form": { "plain": { "length": "100 mm" } } }] }] }"#;
    let open = read(text);
    let mut filled = 0;
    for kind in FormKind::ALL.into_iter().filter(|kind| *kind != FormKind::Open) {
        let edit = Edit::ChangePart { bar: 0, at: 1, change: PartChange::Form(kind) };
        let (next, _) = edit.applied(&open).unwrap();
        let block = &balance(&next).bars[0].blocks[1];
        let part = &next.bars[0].segments[1];
        if part.giving() != Gives::Nothing {
            filled += 1;
            assert!(block.over_length == Length::default(), "{kind:?}: {block:?}");
        }
    }
    assert!(filled > 9, "{filled} forms fill the block");
}
