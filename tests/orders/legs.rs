//! Legs in the way, worked by hand: which bend has to be made before which, and where it does not matter.

use crate::orders::{done, ids, place, proposed, with_steps};
use fh_core::balance::balance;
use fh_core::plan::{Operation, Plan};
use fh_work::{Why, proposal};
use serde_json::{Value, json};

use Operation as O;

fn plain(length: &str) -> Value {
    json!({ "form": { "plain": { "length": length } } })
}

fn bend(name: &str, angle: &str, radius: &str, side: &str) -> Value {
    json!({ "name": name, "form": { "plain": {} },
        "bend": { "curve": { "angle": angle, "inside_radius": radius, "side": side } } })
}

fn plan(segments: &[Value]) -> Plan {
    tests::read(&tests::one_bar(&json!({ "square": "12 mm" }), segments))
}

/// A square bend, and 40 mm on a half turn whose long return leg runs back beneath it.
///
/// With the half turn made first, the square bend cannot be laid anywhere: held on the long side the return leg stands in
/// the anvil and in the vice, held on the other there are 40 mm to the half turn.
fn returning(side: &str) -> Plan {
    plan(&[
        plain("200 mm"),
        bend("square", "90 deg", "4 mm", "0 deg"),
        plain("40 mm"),
        bend("turn", "180 deg", "12 mm", side),
        plain("240 mm"),
    ])
}

/// The same steps with two of them changed about.
fn swapped(plan: &Plan, one: &str, other: &str) -> Vec<fh_core::plan::Step> {
    let mut steps = proposal(plan, &balance(plan));
    let find = |name: &str| {
        let of = |step: &fh_core::plan::Step| done(plan, std::slice::from_ref(step)) == [(O::Bend, name.to_owned())];
        steps.iter().position(of).unwrap()
    };
    let (one, other) = (find(one), find(other));
    steps.swap(one, other);
    steps
}

#[test]
fn the_bend_that_a_return_leg_would_block_comes_first() {
    let plan = returning("0 deg");
    let order = proposed(&plan);
    assert!(place(&order, O::Bend, "square") < place(&order, O::Bend, "turn"), "{order:?}");
    let worked = with_steps(&plan, swapped(&plan, "square", "turn"));
    let told = ids(&worked.findings);
    assert!(told.iter().any(|(id, _)| *id == "leg-in-the-way"), "{told:?}");
    assert!(worked.findings.iter().any(|found| found.why == Some(Why::MiddleFirst)));
    assert!(told.iter().any(|(id, _)| *id == "leg-into-anvil"), "{told:?}");
}

#[test]
fn a_return_leg_on_the_other_side_is_in_nobodys_way() {
    let plan = returning("180 deg");
    for steps in [proposal(&plan, &balance(&plan)), swapped(&plan, "square", "turn")] {
        let told = ids(&with_steps(&plan, steps).findings);
        assert!(!told.iter().any(|(id, _)| id.starts_with("leg-")), "{told:?}");
    }
}

#[test]
fn a_u_and_a_z_of_two_square_bends_can_be_made_either_way() {
    for side in ["0 deg", "180 deg"] {
        let plan = plan(&[
            plain("80 mm"),
            bend("near", "90 deg", "4 mm", "0 deg"),
            plain("50 mm"),
            bend("far", "90 deg", "4 mm", side),
            plain("80 mm"),
        ]);
        for steps in [proposal(&plan, &balance(&plan)), swapped(&plan, "near", "far")] {
            let told = ids(&with_steps(&plan, steps).findings);
            assert!(!told.iter().any(|(id, _)| id.starts_with("leg-")), "{side}: {told:?}");
        }
    }
}
