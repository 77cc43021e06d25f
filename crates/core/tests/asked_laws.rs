//! Whatever is done to a bar with asked sizes: each is as it was asked or it is told, and every step is taken back.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use crate::blocks::read;
use fh_core::balance::{Balance, balance};
use fh_core::edit::{BendDrag, BendTo, BoundaryMove, BoundaryTarget, Edit, History, Knob, Neighbor};
use fh_core::plan::Plan;
use proptest::prelude::*;
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// A bracket of 12 mm square: three straights with two bends between them, and two sizes that two of the straights are to keep;
/// where `fixed`, a mark that is not moved for them.
fn bracket([first, second, third]: [u32; 3], bends: [(u32, u32); 2], asked: [u32; 2], fixed: bool) -> Plan {
    let straight = |name: &str, long: u32, more: &str| {
        format!(r#"{{ "name": "{name}", "form": {{ "plain": {{ "length": "{long} mm" }} }}{more} }}"#)
    };
    let bend = |(angle, side): (u32, u32)| {
        format!(
            r#"{{ "name": "bend", "form": {{ "plain": {{}} }}, "bend": {{ "curve": {{ "angle": "{angle} deg",
            "inside_radius": "10 mm", "side": "{} deg" }} }} }}"#,
            90 * side
        )
    };
    let mark = if fixed { r#", "ends_at": "300 mm""# } else { "" };
    let parts = [
        straight("a", first, ""),
        bend(bends[0]),
        straight("b", second, ""),
        bend(bends[1]),
        straight("c", third, &format!(r#", "gives": "length"{mark}"#)),
    ];
    read(&format!(
        r#"{{ "firstheat": 1, "bars": [{{ "stock": {{ "square": "12 mm" }}, "segments": [{}] }}], "sizes": [
        {{ "name": "reach", "overall": {{ "direction": "along" }}, "size": "{} mm", "kept_by": "a" }},
        {{ "name": "span", "from": {{ "part": "a", "at": "start" }}, "to": {{ "part": "c", "at": "end" }}, "size": "{} mm",
          "kept_by": "b" }}] }}"#,
        parts.join(", "),
        asked[0],
        asked[1]
    ))
}

/// Every size is as it was asked, or a finding tells it; one that a part keeps is so to the last figures.
fn check(plan: &Plan, balance: &Balance) -> Result<(), TestCaseError> {
    for (size, found) in plan.sizes.iter().zip(&balance.sizes) {
        let off = found.value.map(|value| (value.get::<millimeter>() - size.size.mm()).abs());
        prop_assert!(found.met || found.missed.is_some(), "{:?}", found);
        if found.factor.is_some() && found.missed.is_none() {
            prop_assert!(off.is_some_and(|off| off < 1e-5), "{:?} is off by {:?}", size.name, off);
        }
        if found.missed.is_some() {
            let is_told =
                balance.findings.iter().any(|it| it.id.starts_with("size-") && it.message.contains(&size.name));
            prop_assert!(is_told, "{:?} is not told", found);
        }
    }
    for (planned, part) in plan.bars[0].segments.iter().zip(&balance.bars[0].segments) {
        let fixed = part.fixed_mark.as_ref().map(|mark| mark.at.get::<millimeter>());
        let written = planned.ends_at.as_ref().map(fh_measure::WrittenLength::mm);
        prop_assert_eq!(fixed.is_some(), written.is_some());
        // To the last figures: millimetres are kept as metres.
        let moved = fixed.zip(written).map_or(0.0, |(now, then)| (now - then).abs());
        prop_assert!(moved < 1e-9, "a fixed mark moved by {} mm for a size", moved);
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    #[test]
    fn every_asked_size_is_met_or_told_and_every_edit_is_taken_back(
        long in prop::array::uniform3(20_u32..160),
        bends in prop::array::uniform2((20_u32..140, 0_u32..4)),
        asked in prop::array::uniform2(30_u32..320),
        fixed in any::<bool>(),
        wishes in prop::collection::vec((0_usize..3, 0_usize..5, 10_u32..260), 1..4),
    ) {
        let mut history = History::new(bracket(long, bends, asked, fixed));
        check(history.plan(), &balance(history.plan()))?;
        for (what, at, to) in wishes {
            let far = Length::new::<millimeter>(f64::from(to));
            let edit = match what {
                0 => Edit::MoveBoundary(BoundaryMove {
                    bar: 0, segment: at, to: BoundaryTarget::Mark(far), neighbor: Neighbor::KeepsMetal,
                }),
                1 => Edit::DragBend(BendDrag {
                    bar: 0, at, knob: Knob::Angle, to: BendTo::Size(f64::from(to % 150).to_radians()), free: false,
                }),
                _ => Edit::RemoveSegment { bar: 0, at },
            };
            let before = history.plan().clone();
            if history.apply(&edit).is_err() {
                prop_assert_eq!(history.plan(), &before);
                continue;
            }
            check(history.plan(), &balance(history.plan()))?;
            if *history.plan() != before {
                prop_assert!(history.undo());
                prop_assert_eq!(history.plan(), &before);
                prop_assert!(history.redo());
            }
            if history.plan().bars[0].segments.len() < 5 {
                break;
            }
        }
    }
}
