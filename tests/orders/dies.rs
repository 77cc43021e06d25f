//! A length dressed in a die in the order of work: after its part is forged, before it is bent, with its die and its gauge.

use crate::orders::{doing, lay, on};
use fh_core::plan::Operation;
use serde_json::json;

fn arm() -> fh_work::Worked {
    on(
        json!({ "square": "14 mm" }),
        &[
            json!({ "name": "tang", "form": { "plain": { "length": "120 mm" } } }),
            json!({ "name": "arm", "form": { "drawn": { "length": "90 mm", "section": { "square": "10 mm" } } },
                "bend": { "curve": { "angle": "90 deg", "side": "180 deg" } },
                "dressed": [ { "die": { "fuller": { "radius": "3 mm" } }, "from": "10 mm", "length": "60 mm", "side": "outside", "depth": "1.5 mm" } ] }),
            json!({ "name": "tip", "form": { "plain": { "length": "30 mm" } } }),
        ],
    )
}

#[test]
fn a_part_is_dressed_once_it_is_drawn_and_before_it_is_bent() {
    let worked = arm();
    let place = |operation: Operation| {
        worked.steps.iter().position(|step| step.tasks.iter().any(|task| task.operation == operation)).unwrap()
    };
    assert!(place(Operation::Draw) < place(Operation::Dress), "{worked:?}");
    assert!(place(Operation::Dress) < place(Operation::Bend), "{worked:?}");
    assert!(doing(&worked, Operation::Dress).minutes > 0.0);
}

#[test]
fn its_step_names_the_die_the_side_the_depth_and_the_gauge() {
    let worked = arm();
    let step = doing(&worked, Operation::Dress);
    assert_eq!(step.title, "Fuller “arm”");
    // The bend goes down, so its outside is the top.
    assert!(lay(step).contains("Lay it with the outside of the bend, the top up"), "{}", lay(step));
    assert!(lay(step).contains("from 10 mm to 70 mm beyond its start"), "{}", lay(step));
    assert!(step.tool.contains("fuller, Ø 6.0 mm"), "{}", step.tool);
    assert!(step.check.as_deref().is_some_and(|check| check.contains("a rod of Ø 6.0 mm")), "{:?}", step.check);
    assert!(step.sizes.iter().any(|size| size.what.starts_with("depth of the groove") && size.cold == "1.5 mm"));
    // Hot over what is dressed and as much beside it as the bar is thick, no more.
    let hot = step.hot_mm.unwrap();
    assert!(hot[1] - hot[0] < 100.0 && hot[1] - hot[0] > 60.0, "{hot:?}");
}
