//! The piece in space of any plan: closed, of sound numbers, and as heavy as its segments.

use crate::properties::cases;
use crate::properties::plans::plan;
use crate::properties::sizes::Sizes;
use fh_core::balance::balance;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::{Chain, Plan};
use fh_piece::{Quality, piece};
use proptest::prelude::*;
use tests::mm3;

/// How far a solid's metal may lie from its segment's where curves are cut for files.
const KEPT: f64 = 2e-3;

/// The same where dies have gone into a part, however deep, and whatever another one left there.
const KEPT_BY_DIES: f64 = 1e-2;

/// Of absurd sizes a solid may be thinner than numbers can tell its sides apart: it need not be closed then.
fn check(plan: &Plan, is_closed: bool) -> Result<(), TestCaseError> {
    let balance = balance(plan);
    let piece = piece(plan, &balance, Quality::Screen);
    for solid in &piece.solids {
        let closed = !is_closed || solid.mesh.is_closed();
        prop_assert!(closed, "the solid of bar {} segment {} is open", solid.bar, solid.segment);
        prop_assert!(solid.mesh.points.iter().flatten().all(|value| value.is_finite()));
    }
    for line in &piece.lines {
        for frame in &line.frames {
            prop_assert!(frame.at.iter().chain(&frame.along).all(|value| value.is_finite()));
        }
    }
    Ok(())
}

/// The metal of straight and twisted segments of the bar itself; bends and branches are held by the tests of the crate.
fn check_metal(plan: &Plan) -> Result<(), TestCaseError> {
    let balance = balance(plan);
    let piece = piece(plan, &balance, Quality::Print);
    for (bar, balanced) in balance.bars.iter().enumerate() {
        for (at, segment) in balanced.segments.iter().enumerate() {
            let straight = matches!(segment.bent, None | Some(Bent::Twist { .. })) && segment.chain == Chain::Bar;
            let plain_solid =
                matches!(segment.shape, Some(Shape::Prism { .. } | Shape::Taper { .. } | Shape::Ball { .. }));
            // A collar is closed about its bundle, and what is trimmed or held is no part of the piece.
            let form = plan.bars[bar].segment(at).map(|segment| segment.form.kind().name());
            if !straight || !plain_solid || matches!(form, Some("collar" | "trim" | "hold")) {
                continue;
            }
            let (got, want) = (piece.solid_volume_mm3(bar, at), mm3(segment.finished_volume));
            let copies = piece.solids.iter().filter(|solid| solid.bar == bar && solid.segment == at).count();
            // Along a taper a die's edge lies elsewhere on each section, and a blunt one has few of them: what a die leaves there is
            // held by the tests of the crate.
            let is_dressed = plan.bars[bar].segment(at).is_some_and(|part| !part.dressed.is_empty());
            if is_dressed && matches!(segment.shape, Some(Shape::Taper { .. })) {
                continue;
            }
            let kept = if is_dressed { KEPT_BY_DIES } else { KEPT };
            prop_assert!(copies > 0 && (got - want).abs() <= kept * want, "bar {bar} segment {at}: {got} of {want}");
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(cases(120))]

    #[test]
    fn every_piece_is_closed(plan in plan(Sizes::Usual)) {
        check(&tests::read(&plan.0), true)?;
    }

    #[test]
    fn absurd_pieces_are_made_of_numbers(plan in plan(Sizes::Absurd)) {
        check(&tests::read(&plan.0), false)?;
    }

    #[test]
    fn straight_parts_keep_their_metal(plan in plan(Sizes::Usual)) {
        check_metal(&tests::read(&plan.0))?;
    }
}
