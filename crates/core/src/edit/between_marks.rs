//! Moving a boundary on a bar with fixed marks: the parts that give fill their blocks meanwhile.

use super::boundary::{BoundaryMove, BoundaryTarget, Change, Moved, Neighbor};
use super::marks::MarkEdit;
use super::refusal::Refusal;
use crate::balance::{Walk, fill_blocks, lay_off};
use crate::metal::in_mm;
use crate::plan::{Chain, Gives, Plan, Segment};
use fh_measure::{LengthRange, WrittenLength};

/// Moves a boundary on a bar with fixed marks.
///
/// # Errors
/// As [`super::move_boundary`]; a part whose mark is fixed keeps its end on the bar.
pub(super) fn move_boundary(plan: &Plan, wish: &BoundaryMove) -> Result<Moved, Refusal> {
    let bar = plan.bars.get(wish.bar).ok_or(Refusal::NoSuchPlace)?;
    let segment = bar.segment(wish.segment).ok_or(Refusal::NoSuchPlace)?;
    if let (Some(_), BoundaryTarget::Mark(mark)) = (&segment.ends_at, wish.to) {
        let unit = plan.units.length.length_unit();
        let to = WrittenLength::from_mm(in_mm(mark), unit, LengthRange::AboveZero);
        let to = to.map_err(|error| Refusal::CannotBe(error.to_string()))?;
        return MarkEdit::Move { bar: wish.bar, segment: wish.segment, to }.applied(plan);
    }
    let mut change = Change { plan: plan.clone(), bar: wish.bar, gave: Vec::new() };
    let target = match wish.to {
        BoundaryTarget::Mark(to) | BoundaryTarget::Forged(to) => in_mm(to),
    };
    let next = bar.next_in_chain(wish.segment);
    let next_end = next.map(|next| place_at(&change.walk(), wish, next, None));
    let gives = match wish.to {
        BoundaryTarget::Mark(_) => segment.giving(),
        BoundaryTarget::Forged(_) => Gives::Length,
    };
    if fit(&mut change, wish, (wish.segment, gives), (wish.segment, target)).is_err() {
        // What gives to the block lies before the boundary: then the part after it makes room.
        let Some(next) = next else { return Err(change.refusal(wish.segment, "nothing on this side of it gives")) };
        let gives = bar.segment(next).map_or(Gives::Nothing, Segment::giving);
        fit(&mut change, wish, (next, gives), (wish.segment, target))?;
    } else if let (Neighbor::TradesMetal, Some(next), Some(end)) = (wish.neighbor, next, next_end) {
        let now = place_at(&change.walk(), wish, next, None);
        if (now - end).abs() > THERE_MM {
            let gives = bar.segment(next).map_or(Gives::Nothing, Segment::giving);
            fit(&mut change, wish, (next, gives), (next, end))?;
        }
    }
    change.has_come(wish)?;
    Ok(Moved { plan: change.plan, gave: change.gave })
}

/// A boundary this close to where it is to come needs no more, in mm.
const THERE_MM: f64 = 1e-6;

/// Lets a size of one segment give until the end of another, or its own, comes to a place in mm.
fn fit(
    change: &mut Change,
    wish: &BoundaryMove,
    (giver, gives): (usize, Gives),
    (at, target): (usize, f64),
) -> Result<(), Refusal> {
    if gives == Gives::Nothing {
        return Err(change.refusal(giver, "none of its sizes gives"));
    }
    let end = |factor: f64| place_at(&change.walk(), wish, at, Some((giver, gives, factor)));
    // What lies beyond the boundary gets smaller for the boundary to move on.
    let is_beyond = giver > at;
    let place = |factor: f64| end(if is_beyond { 1.0 / factor } else { factor });
    let factor = crate::balance::solve(place, target, 1.0)
        .ok_or_else(|| change.refusal(giver, &format!("no size of it brings the mark to {}", change.words(target))))?;
    change.write(giver, gives, if is_beyond { 1.0 / factor } else { factor })
}

/// Where a segment's end lies in mm from the datum end, on the starting bar or on the forged one, as the wish has it.
fn place_at(walk: &Walk<'_>, wish: &BoundaryMove, at: usize, give: Option<(usize, Gives, f64)>) -> f64 {
    let laid = lay_off(walk, fill_blocks(walk, give).settled, uom::si::f64::MassDensity::default());
    let Some(segment) = laid.get(at) else { return 0.0 };
    match wish.to {
        BoundaryTarget::Mark(_) => in_mm(segment.mark_end),
        BoundaryTarget::Forged(_) if segment.chain != Chain::Bar => in_mm(segment.forged_length),
        BoundaryTarget::Forged(_) => in_mm(segment.forged_start + segment.forged_length),
    }
}
