//! Where a step measures from, and where it necks, slits and cuts, on small plans worked by hand.

use fh_core::balance::balance;
use fh_core::plan::{Operation as O, Plan};
use fh_work::{Shop, Worked, WorkedStep, after, work_out};
use serde_json::{Value, json};
use tests::mm;

fn plan(stock: &Value, segments: &[Value]) -> Plan {
    tests::read(&tests::one_bar(stock, segments))
}

fn worked(plan: &Plan) -> Worked {
    work_out(plan, &balance(plan), &Shop::default())
}

fn doing(worked: &Worked, operation: O) -> &WorkedStep {
    let does = |step: &&WorkedStep| step.tasks.iter().any(|task| task.operation == operation);
    worked.steps.iter().find(does).unwrap_or_else(|| panic!("nothing does {}", operation.name()))
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
