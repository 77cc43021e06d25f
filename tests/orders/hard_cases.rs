//! Pieces whose rules pull two ways, each worked by hand.

use crate::orders::{place, proposed};
use fh_core::balance::balance;
use fh_core::plan::{Operation, Plan};
use fh_work::{Shop, work_out};
use serde_json::{Value, json};

use Operation as O;

fn plan(segments: &[Value]) -> Plan {
    tests::read(&tests::one_bar(&json!({ "square": "12 mm" }), segments))
}

/// A point at the end that a saw cut frees: the cut, and with it the rest of the bar, before the point; the neck before both.
#[test]
fn a_point_is_drawn_once_the_saw_cut_frees_its_end() {
    let plan = plan(&[
        json!({ "name": "body", "form": { "plain": { "length": "100 mm" } } }),
        json!({ "name": "neck", "form": { "drawn": { "length": "100 mm", "section": { "square": "8 mm" } } } }),
        json!({ "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } }),
        json!({ "name": "saw cut", "form": { "trim": { "length": "3 mm" } } }),
        json!({ "name": "rest", "form": { "hold": { "length": "150 mm" } } }),
    ]);
    let order = proposed(&plan);
    assert!(place(&order, O::Draw, "neck") < place(&order, O::PartOff, "rest"), "{order:?}");
    assert!(place(&order, O::Trim, "saw cut") < place(&order, O::Taper, "point"), "{order:?}");
    assert!(place(&order, O::Taper, "point") < place(&order, O::Straighten, ""), "{order:?}");
}

/// W. L. Ilgen, *Forge Work*, 1912, section 71, upsets the middle of a pipe hook before the shoulder beside it is set down.
#[test]
fn what_is_upset_comes_before_the_shoulder_beside_it() {
    let plan = plan(&[
        json!({ "name": "arm", "form": { "drawn": { "length": "150 mm",
            "section": { "flat": { "width": "12 mm", "thickness": "6 mm" } } } } }),
        json!({ "name": "shoulder", "form": { "shoulder": { "to": { "square": "16 mm" }, "radius": "3 mm",
            "sides": "all" } } }),
        json!({ "name": "body", "form": { "drawn": { "length": "25 mm", "section": { "square": "16 mm" } } } }),
        json!({ "name": "point", "form": { "taper": { "length": "55 mm", "to": "point" } } }),
    ]);
    let order = proposed(&plan);
    assert!(place(&order, O::Upset, "body") < place(&order, O::SetDown, "shoulder"), "{order:?}");
    assert!(place(&order, O::SetDown, "shoulder") < place(&order, O::Draw, "arm"), "{order:?}");
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    assert!(worked.findings.iter().all(|found| found.finding.id != "rules-contradict"));
}

/// Rows of marks on a collar's strip are laid off while it is straight.
#[test]
fn a_collar_is_marked_before_it_is_wrapped() {
    let plan = plan(&[json!({ "name": "collar",
        "form": { "collar": { "section": { "flat": { "width": "20 mm", "thickness": "4 mm" } }, "width": "24 mm",
            "height": "12 mm" } },
        "repeats": [{ "what": "line", "count": 3 }] })]);
    let order = proposed(&plan);
    assert!(place(&order, O::Stamp, "collar") < place(&order, O::Bend, "collar"), "{order:?}");
}
