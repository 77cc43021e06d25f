//! A mark that is dragged: it goes where the size that gives comes out round.

use super::boundary::{BoundaryMove, BoundaryTarget};
use super::{Edit, Gave};
use crate::balance::balance;
use crate::metal::{in_mm, mm};
use crate::plan::{Plan, SizeName};
use fh_measure::{LengthRange, WrittenLength};

/// The move to the mark nearest to the wished one at which the size that gives is on a step of the shop; where no size of that
/// part can be rounded, the mark itself is. An end on the forged bar is left as it is wished.
pub(super) fn to_round_size(plan: &Plan, wish: &BoundaryMove) -> BoundaryMove {
    rounded(plan, wish).or_else(|| on_the_grid(plan, wish)).unwrap_or(*wish)
}

/// The move to the nearest mark on the rounding of the marks.
fn on_the_grid(plan: &Plan, wish: &BoundaryMove) -> Option<BoundaryMove> {
    let BoundaryTarget::Mark(mark) = wish.to else { return None };
    let near = plan.units.marks.round(in_mm(mark)).mm();
    (near > 0.0).then_some(BoundaryMove { to: BoundaryTarget::Mark(mm(near)), ..*wish })
}

fn rounded(plan: &Plan, wish: &BoundaryMove) -> Option<BoundaryMove> {
    let BoundaryTarget::Mark(_) = wish.to else { return None };
    if plan.segment(wish.bar, wish.segment)?.ends_at.is_some() {
        return None;
    }
    let (mut next, gave) = Edit::MoveBoundary(*wish).applied(plan).ok()?;
    let gave = gave.into_iter().find(|gave| gave.segment == wish.segment)?;
    if !round_in(&mut next, wish, &gave) {
        return None;
    }
    let mark = balance(&next).bars.get(wish.bar)?.segments.get(wish.segment)?.mark_end;
    Some(BoundaryMove { to: BoundaryTarget::Mark(mark), ..*wish })
}

/// Rounds the size that gave; whether there is one that can be.
fn round_in(plan: &mut Plan, wish: &BoundaryMove, gave: &Gave) -> bool {
    let step = step_mm(plan, gave.size);
    let unit = plan.units.length.length_unit();
    let Some(segment) = plan.bars.get_mut(wish.bar).and_then(|bar| bar.segment_mut(wish.segment)) else { return false };
    let mut is_done = false;
    segment.sizes_mut(&mut |name, length| {
        if name != gave.size || is_done {
            return;
        }
        let target = ((length.mm() / step).round() * step).max(step);
        let round = match length.is_range() {
            true => length.longer_by(target - length.mm(), LengthRange::AboveZero),
            false => WrittenLength::from_mm(target, unit, LengthRange::AboveZero),
        };
        if let Ok(round) = round {
            *length = round;
            is_done = true;
        }
    });
    is_done
}

/// The step of a size: that of the marks along the bar, half of it across. Common practice, no source.
fn step_mm(plan: &Plan, size: SizeName) -> f64 {
    let across = matches!(size, SizeName::Width | SizeName::Thickness | SizeName::Side | SizeName::Diameter);
    plan.units.marks.step_mm() * if across { 0.5 } else { 1.0 }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::edit::Neighbor;
    use crate::file;
    use uom::si::f64::Length;
    use uom::si::length::millimeter;

    /// 12 mm square drawn to 8 mm square: 64 / 144 of bar for each mm. And a ring of the bar itself.
    const PLAN: &str = r#"{ "firstheat": 1, "units": { "length": "mm", "marks": "1 mm" }, "bars": [{ "name": "bar",
        "stock": { "square": "12 mm" }, "segments": [
        { "name": "shank", "form": { "drawn": { "length": "90 mm", "section": { "square": "8 mm" } } } },
        { "name": "rest", "form": { "plain": { "length": "100 mm" } } },
        { "name": "eye", "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "40 mm" } } } ] }] }"#;

    fn moved(segment: usize, mm: f64, neighbor: Neighbor) -> Plan {
        let plan = file::read(PLAN.as_bytes()).unwrap();
        let to = BoundaryTarget::Mark(Length::new::<millimeter>(mm));
        Edit::MoveToRound(BoundaryMove { bar: 0, segment, to, neighbor }).applied(&plan).unwrap().0
    }

    fn length(plan: &Plan, segment: usize) -> &str {
        plan.bars[0].segments[segment].form.length().unwrap().text()
    }

    #[test]
    fn a_mark_goes_where_the_length_is_round() {
        // 45.3 mm of bar are 101.9 mm of it: 102 mm. The part after it keeps its metal, or trades all of 5.333 mm.
        assert_eq!(length(&moved(0, 45.3, Neighbor::KeepsMetal), 0), "102 mm");
        let traded = moved(0, 45.3, Neighbor::TradesMetal);
        assert_eq!((length(&traded, 0), length(&traded, 1)), ("102 mm", "94.667 mm"));
    }

    /// On a bar of 300 mm already cut the part after the one that takes up makes room: 50 mm of it become 60.
    #[test]
    fn where_no_size_of_the_part_gives_the_mark_is_round() {
        let plan = r#"{ "firstheat": 1, "units": { "length": "mm", "marks": "1 mm" }, "bars": [{ "name": "bar",
            "stock": { "square": "12 mm" }, "length": "300 mm", "takes_up": "shank", "segments": [
            { "name": "end", "form": { "plain": { "length": "100 mm" } } },
            { "name": "shank", "form": { "plain": { "length": "150 mm" } } },
            { "name": "rest", "form": { "plain": { "length": "50 mm" } } } ] }] }"#;
        let plan = file::read(plan.as_bytes()).unwrap();
        let to = BoundaryTarget::Mark(Length::new::<millimeter>(240.4));
        let wish = BoundaryMove { bar: 0, segment: 1, to, neighbor: Neighbor::KeepsMetal };
        let (next, _) = Edit::MoveToRound(wish).applied(&plan).unwrap();
        assert_eq!(length(&next, 2), "60 mm");
    }

    #[test]
    fn a_ring_keeps_a_round_inside_diameter() {
        let next = moved(2, 320.0, Neighbor::KeepsMetal);
        let mut diameter = String::new();
        next.bars[0].segments[2].lengths(&mut |length| length.text().clone_into(&mut diameter));
        // 180 mm along the middle of the bar: 180 / pi - 12 = 45.3 mm.
        assert_eq!(diameter, "45 mm");
    }
}
