//! A corner of metal that is left: both sides are set down, and nothing is done to the peak itself. The figures are those of the
//! first case of `tests/data/corners_left.json`: legs of 12 mm from a bar 18 mm high, edges of 2 mm, walls 4.9 mm apart.

use crate::orders::{doing, lay, on};
use fh_core::plan::{AnvilPlace, Operation as O};
use serde_json::{Value, json};

fn leg(name: &str) -> Value {
    json!({ "name": name, "form": { "drawn": { "length": "100 mm", "section": { "square": "12 mm" } } } })
}

fn corner(left: &Value) -> Value {
    json!({ "name": "corner", "form": { "peak": { "section": { "square": "12 mm" }, "left": left } },
        "bend": { "corner": { "angle": "90 deg", "inside_radius": "0 mm" } } })
}

#[test]
fn beside_what_is_left_the_bar_is_set_down_from_both_sides_before_the_legs_are_drawn() {
    let bar = json!({ "flat": { "width": "12 mm", "thickness": "18 mm" } });
    let worked = on(bar, &[leg("shelf leg"), corner(&json!({ "near_edge": "2 mm" })), leg("wall leg")]);
    let at = |operation: O, part: &str| {
        let found = |step: &fh_work::WorkedStep| {
            step.tasks.iter().any(|task| {
                task.operation == operation
                    && task.part.is_some_and(|at| ["shelf leg", "corner", "wall leg"][at] == part)
            })
        };
        worked.steps.iter().position(found).unwrap_or_else(|| panic!("{operation:?} of {part}"))
    };
    assert!(worked.steps.iter().all(|step| step.tasks.iter().all(|task| task.operation != O::Upset)));
    assert!(at(O::SetDown, "corner") < at(O::Draw, "shelf leg").min(at(O::Draw, "wall leg")));
    let step = doing(&worked, O::SetDown);
    assert_eq!((step.place, step.title.as_str()), (AnvilPlace::NearEdge, "Set down both sides of “corner”"));
    let words = lay(step);
    for part in [
        "Lay its bottom on the anvil",
        "near edge (rounded to 2.0 mm)",
        "far edge",
        "4.9 mm apart, 1.6 mm inside each mark",
        "both from the same side",
        "Leave the peak between them alone",
    ] {
        assert!(words.contains(part), "“{part}” in {words}");
    }
}
