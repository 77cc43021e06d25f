//! Dragged boundaries: the mark comes to where it was dragged, or the refusal says why not.

use crate::properties::cases;
use crate::properties::edits::{Drag, drag};
use crate::properties::plans::plan;
use crate::properties::sizes::Sizes;
use fh_core::balance::{BarBalance, SegmentBalance, balance};
use fh_core::edit::{BoundaryMove, BoundaryTarget, Neighbor, move_boundary};
use fh_core::file;
use fh_core::findings::Severity;
use fh_core::metal::{FreeEnd, Shape};
use fh_core::plan::{Chain, Gives, Plan, Segment};
use proptest::prelude::*;
use serde_json::{Value, json};
use tests::{mm, one_bar};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// A mark comes to lie this close to where it was dragged, in mm.
const CLOSE: f64 = 0.01;

fn end(bar: &BarBalance, target: BoundaryTarget, segment: usize) -> f64 {
    let segment = &bar.segments[segment];
    match target {
        BoundaryTarget::Mark(_) => mm(segment.mark_end),
        BoundaryTarget::Forged(_) => mm(segment.forged_start + segment.forged_length),
    }
}

fn check(plan: &Plan, drag: Drag) -> Result<(), TestCaseError> {
    let wish: BoundaryMove = drag.on(plan);
    let before = &balance(plan).bars[0];
    let moved = match move_boundary(plan, &wish) {
        Ok(moved) => moved,
        Err(refusal) => {
            prop_assert!(refusal.to_string().len() > 10, "{refusal}");
            return Ok(());
        }
    };
    let after = &balance(&moved.plan).bars[0];
    let (BoundaryTarget::Mark(to) | BoundaryTarget::Forged(to)) = wish.to;
    let (got, want) = (end(after, wish.to, wish.segment), mm(to));
    if hangs_back(&wish, before) {
        return Ok(());
    }
    prop_assert!((got - want).abs() <= CLOSE, "{got} where {want} was wished\n{wish:?}\n{}", file::write(&moved.plan));
    prop_assert!(!moved.gave.is_empty(), "something gave");
    for gave in &moved.gave {
        prop_assert!(!gave.text.is_empty(), "{gave:?}");
    }
    earlier_marks_stay(before, after, &wish)?;
    if wish.neighbor == Neighbor::TradesMetal {
        later_marks_stay(before, after, &wish, &moved.plan)?;
    }
    Ok(())
}

/// Whether a forged end is dragged on a branch that hangs from its root: there its other end moves.
fn hangs_back(wish: &BoundaryMove, before: &BarBalance) -> bool {
    let Chain::Branch { split, .. } = before.segments[wish.segment].chain else { return false };
    let free_at_datum =
        matches!(&before.segments[split].shape, Some(Shape::Split(size)) if size.free == FreeEnd::Datum);
    // Within another split it hangs as that one does.
    let deeper = before.segments[split].chain != Chain::Bar;
    matches!(wish.to, BoundaryTarget::Forged(_)) && (free_at_datum || deeper)
}

/// Along the bar itself; in a branch the slit grows with what is dragged, and its marks with the slit.
fn earlier_marks_stay(before: &BarBalance, after: &BarBalance, wish: &BoundaryMove) -> Result<(), TestCaseError> {
    if before.segments[wish.segment].chain != Chain::Bar {
        return Ok(());
    }
    for (old, new) in before.segments.iter().zip(&after.segments).take(wish.segment) {
        prop_assert_eq!(old.mark_end, new.mark_end, "a mark before the boundary stays");
    }
    Ok(())
}

fn later_marks_stay(
    before: &BarBalance,
    after: &BarBalance,
    wish: &BoundaryMove,
    plan: &Plan,
) -> Result<(), TestCaseError> {
    // Where a width or a thickness gave, what is the same as it farther on changes with it.
    let Some(next) = plan.bars[0].next_in_chain(wish.segment) else { return Ok(()) };
    let gives = plan.bars[0].segment(next).map(Segment::giving);
    let last = if gives == Some(Gives::Length) { after.segments.len() } else { next + 1 };
    let chain = before.segments[wish.segment].chain;
    let pairs = before.segments.iter().zip(&after.segments).enumerate().take(last).skip(next);
    for (at, (old, new)) in pairs.filter(|(_, (old, _))| old.chain == chain) {
        let (old, new) = (mm(old.mark_end), mm(new.mark_end));
        prop_assert!(
            (old - new).abs() <= 2.0 * CLOSE,
            "mark {at} went from {old} to {new}\n{wish:?}\n{}",
            file::write(plan)
        );
    }
    Ok(())
}

/// How much forged length hangs on one millimetre of bar: a hair of a thick bar is an inch of wire.
fn stretch(segment: &SegmentBalance, to: BoundaryTarget) -> f64 {
    match to {
        BoundaryTarget::Mark(_) => 1.0,
        BoundaryTarget::Forged(_) => (mm(segment.forged_length) / mm(segment.stock_length)).max(1.0),
    }
}

/// On a bar already cut the one that takes up makes good for the drag: the dragged mark comes where it was dragged, and the
/// bar stays as long as it is.
fn check_fixed(plan: &Plan, drag: Drag) -> Result<(), TestCaseError> {
    let wish = drag.on(plan);
    let Ok(moved) = move_boundary(plan, &wish) else { return Ok(()) };
    let balance = balance(&moved.plan);
    let after = &balance.bars[0];
    let (BoundaryTarget::Mark(to) | BoundaryTarget::Forged(to)) = wish.to;
    let (got, want) = (end(after, wish.to, wish.segment), mm(to));
    prop_assert!(
        (got - want).abs() <= 2.0 * CLOSE * stretch(&after.segments[wish.segment], wish.to),
        "{got} where {want} was wished\n{wish:?}\n{}",
        file::write(&moved.plan)
    );
    Ok(())
}

/// Three plain parts on 600 mm of bar, the middle one taking up.
fn cut_bar() -> Plan {
    let part = |name: &str, form: Value| json!({ "name": name, "form": { "plain": form } });
    let segments = [
        part("foot", json!({ "length": "100 mm" })),
        part("blade", json!({})),
        part("leg", json!({ "length": "150 mm" })),
    ];
    let mut plan = one_bar(&json!({ "square": "12 mm" }), &segments);
    plan["bars"][0]["length"] = json!("600 mm");
    plan["bars"][0]["takes_up"] = json!("blade");
    tests::read(&plan)
}

/// The marks of the cut bar after one of them was dragged, or the words of the refusal.
fn marks_after(segment: usize, to: f64, neighbor: Neighbor) -> Result<Vec<f64>, String> {
    let to = BoundaryTarget::Mark(Length::new::<millimeter>(to));
    let moved = move_boundary(&cut_bar(), &BoundaryMove { bar: 0, segment, to, neighbor });
    let balance = moved.map(|moved| balance(&moved.plan)).map_err(|refusal| refusal.to_string())?;
    Ok(balance.bars[0].segments.iter().map(|segment| (mm(segment.mark_end) * 1e6).round() / 1e6).collect())
}

#[test]
fn the_part_that_takes_up_makes_good_on_both_sides_of_it() {
    for neighbor in [Neighbor::KeepsMetal, Neighbor::TradesMetal] {
        assert_eq!(marks_after(0, 120.0, neighbor), Ok(vec![120.0, 450.0, 600.0]));
        assert_eq!(marks_after(1, 420.0, neighbor), Ok(vec![100.0, 420.0, 600.0]));
        let words = marks_after(2, 610.0, neighbor).unwrap_err();
        assert!(words.contains("already cut"), "{words}");
    }
    let words = marks_after(0, 460.0, Neighbor::KeepsMetal).unwrap_err();
    assert!(words.contains("no bar would be left"), "{words}");
}

proptest! {
    #![proptest_config(cases(600))]

    #[test]
    fn a_dragged_mark_comes_to_where_it_was_dragged(plan in plan(Sizes::Usual), drag in drag()) {
        let mut plan = tests::read(&plan.0);
        // A bar already cut settles its own marks.
        plan.bars[0].takes_up = None;
        plan.bars[0].length = None;
        if !plan.bars[0].segments.is_empty() {
            check(&plan, drag)?;
        }
    }

    #[test]
    fn a_mark_dragged_on_a_bar_already_cut_comes_there_too(
        plan in plan(Sizes::Usual), drag in drag(), length in 50_u32..1500, at in 0_usize..6,
    ) {
        let mut plan = plan.0;
        plan["bars"][0]["length"] = json!(format!("{length} mm"));
        plan["bars"][0]["takes_up"] = json!(format!("s{at}"));
        let plan = tests::read(&plan);
        let balance = balance(&plan);
        let stopped = balance.findings.iter().any(|finding| finding.severity == Severity::Stop);
        // Where a width or a thickness takes up, what is the same as it farther on changes with it.
        let by_length = plan.bars[0].segment(at).is_some_and(|segment| segment.giving() == Gives::Length);
        if !stopped && by_length {
            check_fixed(&plan, drag)?;
        }
    }
}
