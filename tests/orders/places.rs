//! Where a step measures from, and where it necks, slits and cuts, on small plans worked by hand.

use crate::orders::{doing, worked};
use fh_core::balance::balance;
use fh_core::plan::{Operation as O, Plan};
use fh_work::{WorkedStep, after};
use serde_json::{Value, json};
use tests::mm;

fn plan(stock: &Value, segments: &[Value]) -> Plan {
    tests::read(&tests::one_bar(stock, segments))
}

/// A boss as wide and as thick as the bar is not flattened: (60 × 40 - π 8²) × 10 mm³ are 54.97 mm of bar, the slit in the middle
/// of them. The drift pushes it out to 60 mm.
#[test]
fn a_slit_lies_in_the_middle_of_its_boss_where_the_bar_itself_is_drifted() {
    let plan = plan(
        &json!({ "flat": { "width": "40 mm", "thickness": "10 mm" } }),
        &[
            json!({ "name": "start", "form": { "plain": { "length": "100 mm" } } }),
            json!({ "name": "boss", "form": { "hole": { "outline": { "rectangle": { "length": "60 mm", "width": "40 mm" } },
                "thickness": "10 mm", "hole": { "round": "16 mm" }, "made": "drifted" } } }),
            json!({ "name": "end", "form": { "plain": { "length": "100 mm" } } }),
        ],
    );
    let (balance, worked) = (balance(&plan), worked(&plan));
    assert!(mm(after(&plan, &balance, &worked, 0).bars[0].forged_length) - 254.97 < 0.01);
    let slit = doing(&worked, O::Punch);
    // The bar has not grown yet: its middle is where it was punched.
    assert_eq!(slit.measure[0], "the middle of the hole in “boss”: its punch mark, 127.5 mm from the datum end");
    let [from, to] = slit.slits_mm[0];
    assert!(((from + to) / 2.0 - 127.48).abs() < 0.01, "{from} to {to}");
    assert!((mm(after(&plan, &balance, &worked, worked.steps.len()).bars[0].forged_length) - 260.0).abs() < 1e-6);
}

/// Only the thin end of the taper is necked: at its thick one there is nothing to feel, and the mark is still there.
#[test]
fn nothing_is_measured_from_a_neck_that_was_not_made() {
    let plan = plan(
        &json!({ "square": "16 mm" }),
        &[
            json!({ "name": "start", "form": { "plain": { "length": "100 mm" } } }),
            json!({ "name": "taper", "form": { "taper": { "length": "80 mm", "to": { "square": "9 mm" } } } }),
            json!({ "name": "end", "form": { "plain": { "length": "100 mm" } } }),
        ],
    );
    let worked = worked(&plan);
    let neck = doing(&worked, O::Isolate);
    assert_eq!(neck.measure.len(), 1, "{:?}", neck.measure);
    assert!(neck.measure[0].starts_with("the end of “taper”"), "{:?}", neck.measure);
    let lay = neck.lay.as_ref().unwrap();
    assert!(
        lay.contains("inside of the mark at its end") && lay.contains("The mark at its start needs no neck"),
        "{lay}"
    );
    let taper = doing(&worked, O::Taper);
    assert!(taper.measure[0].starts_with("the start of “taper”: mark 1"), "{:?}", taper.measure);
    assert!(taper.measure[1].contains("the neck at the end of “taper”"), "{:?}", taper.measure);
}

#[test]
fn no_neck_is_left_of_nothing() {
    for form in ["trim", "hold"] {
        let plan = plan(
            &json!({ "square": "16 mm" }),
            &[
                json!({ "name": "body", "form": { "plain": { "length": "150 mm" } } }),
                json!({ "name": "point", "form": { "taper": { "length": "80 mm", "from": { "square": "12 mm" },
                    "to": "point" } } }),
                json!({ "name": "rest", "form": { form: { "length": "20 mm" } } }),
            ],
        );
        let worked = worked(&plan);
        let necks: Vec<&WorkedStep> =
            worked.steps.iter().filter(|step| step.tasks.iter().any(|task| task.operation == O::Isolate)).collect();
        for neck in &necks {
            for size in neck.sizes.iter().filter(|size| size.what.starts_with("left in the neck")) {
                assert!(size.mm.unwrap() > 5.0, "{form}: {size:?}");
            }
            assert!(!neck.measure.iter().any(|words| words.contains("end of “point”")), "{form}: {:?}", neck.measure);
        }
        // What steps from 16 down to 12 mm is necked, as it was.
        assert_eq!(necks.len(), 1, "{form}");
    }
}

/// A collar, upset first, moves every mark after it; then a disc, upset before it is spread.
fn upset_twice() -> Plan {
    plan(
        &json!({ "square": "16 mm" }),
        &[
            json!({ "name": "shank", "form": { "plain": { "length": "150 mm" } } }),
            json!({ "name": "collar", "form": { "drawn": { "length": "20 mm", "section": { "square": "22 mm" } } } }),
            json!({ "name": "neck", "form": { "drawn": { "length": "60 mm", "section": { "square": "12 mm" } } } }),
            json!({ "name": "plate", "form": { "flag": { "outline": { "disc": { "diameter": "60 mm" } },
                "thickness": "10 mm" } } }),
        ],
    )
}

/// π 30² × 10 mm³ are 110.4 mm of bar. Where it is widest the disc has 600 mm²; with a twentieth in hand that is a block of
/// 28 274 / 630 = 44.9 mm, as many times thicker as it is shorter.
#[test]
fn what_was_upset_is_a_block_as_long_and_as_thick_as_its_card_says() {
    let plan = upset_twice();
    let (balance, worked) = (balance(&plan), worked(&plan));
    let does = |operation: O| {
        let on_plate =
            |step: &WorkedStep| step.tasks.iter().any(|task| task.operation == operation && task.part == Some(3));
        worked.steps.iter().position(on_plate).unwrap()
    };
    let (upset, isolate) = (does(O::Upset), does(O::Isolate));
    assert!(does(O::Upset) < isolate && isolate < does(O::Spread));
    let card = worked.steps[upset].sizes.iter().find(|size| size.what.starts_with("length")).unwrap();
    assert!((card.mm.unwrap() - 44.9).abs() < 0.05, "{card:?}");
    // Its place is measured from the end as it is by then.
    let measure = &worked.steps[isolate].measure[0];
    assert!(measure.starts_with("the start of “plate”: mark 3") && measure.contains("now 44.9 mm"), "{measure}");
    let [before, now] = [upset, upset + 1].map(|steps| after(&plan, &balance, &worked, steps).bars[0].clone());
    let plate = &now.segments[3];
    assert!((mm(plate.forged_length) - 44.9).abs() < 0.05);
    assert!((mm(before.forged_length - now.forged_length) - (110.45 - 44.9)).abs() < 0.1);
    // Not a grain of metal is lost, and what is drawn holds all of it.
    assert!((plate.finished_volume / before.segments[3].finished_volume).value > 1.0 - 1e-9);
    let drawn = plate.shape.as_ref().unwrap().volume();
    assert!(((drawn / plate.finished_volume).value - 1.0).abs() < 1e-3);
    // What is hot for the neck is the block, not the bar that it was.
    let [from, to] = worked.steps[isolate].hot_mm.unwrap();
    assert!(to - from < 110.0, "{from} to {to}");
}

/// With marks to the millimetre the bar is cut up to one longer than it needs, and is that long until its end is forged.
#[test]
fn the_far_end_is_where_the_bar_was_cut() {
    let mut plan = tests::one_bar(
        &json!({ "square": "16 mm" }),
        &[
            json!({ "name": "shank", "form": { "plain": { "length": "150 mm" } } }),
            json!({ "name": "collar", "form": { "drawn": { "length": "20 mm", "section": { "square": "22 mm" } } } }),
            json!({ "name": "neck", "form": { "plain": { "length": "60 mm" } } }),
            json!({ "name": "tip", "form": { "taper": { "length": "70.7 mm", "to": { "square": "8 mm" } } } }),
        ],
    );
    plan["units"]["marks"] = json!("1 mm");
    let plan = tests::read(&plan);
    let worked_out = &balance(&plan).bars[0];
    let cut = worked_out.cut_length_shop(plan.units.marks).mm();
    let struck = worked_out.segments[2].mark_end_shop.mm();
    assert!(cut - mm(worked_out.stock_length) > 0.3, "{cut}");
    let worked = worked(&plan);
    let taper = doing(&worked, O::Taper);
    let told = format!("mark 3, struck at {struck} mm, now {:.1} mm", cut - struck);
    assert!(taper.measure[0].contains(&told) && taper.measure[0].ends_with("from the far end"), "{:?}", taper.measure);
}
