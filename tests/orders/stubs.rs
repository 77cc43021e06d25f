//! What is too short to be forged by itself: stubs beyond a step, and ends that would be left a lump, on small plans worked by
//! hand.

use crate::orders::{place, proposed, worked};
use fh_core::balance::balance;
use fh_core::metal::{SectionSize, Shape};
use fh_core::plan::{AnvilPlace, Operation as O, Plan};
use fh_work::{Worked, WorkedStep, after};
use serde_json::{Value, json};
use tests::mm;

fn on_20_square(segments: &[Value]) -> Plan {
    tests::read(&tests::one_bar(&json!({ "square": "20 mm" }), segments))
}

fn number(worked: &Worked, title: &str) -> usize {
    let found = worked.steps.iter().position(|step| step.title == title);
    found.unwrap_or_else(|| {
        panic!("no “{title}” in {:?}", worked.steps.iter().map(|step| &step.title).collect::<Vec<_>>())
    })
}

fn in_all(step: &WorkedStep) -> f64 {
    let size = step.sizes.iter().find(|size| size.what.starts_with("length in all"));
    size.and_then(|size| size.mm).unwrap_or_else(|| panic!("no length in all: {:?}", step.sizes))
}

/// A tang of 90 mm from 7 to 4 mm square is 2790 mm³: 7 mm of bar.
fn with_a_tang(shank: &Value, end: Option<Value>) -> Plan {
    let mut segments = vec![
        json!({ "name": "body", "form": { "plain": { "length": "100 mm" } } }),
        json!({ "name": "shank", "form": shank }),
        json!({ "name": "step", "form": { "shoulder": { "to": { "square": "7 mm" }, "radius": "3 mm", "sides": "all" } } }),
        json!({ "name": "tang", "form": { "taper": { "length": "90 mm", "to": { "square": "4 mm" } } } }),
    ];
    segments.extend(end);
    on_20_square(&segments)
}

fn drawn_shank() -> Value {
    json!({ "drawn": { "length": "60 mm", "section": { "square": "12 mm" } } })
}

#[test]
fn the_bar_for_a_short_tang_is_drawn_down_with_the_shank_and_the_step_set_on_that() {
    let rest = json!({ "name": "rest", "form": { "hold": { "length": "120 mm" } } });
    for end in [Some(rest), None] {
        let is_held = end.is_some();
        let plan = with_a_tang(&drawn_shank(), end);
        let order = proposed(&plan);
        assert!(place(&order, O::Draw, "shank") < place(&order, O::SetDown, "step"), "{order:?}");
        let (balance, worked) = (balance(&plan), worked(&plan));
        let draw = number(&worked, "Draw out “shank”");
        let said = worked.steps[draw].lay.as_ref().unwrap();
        assert!(said.contains("Draw the bar for “tang” down along with it"), "{said}");
        // 2790 / 144 is 19.4 mm of 12 mm square beside the shank's 60, and what the step holds.
        assert!((79.4..82.5).contains(&in_all(&worked.steps[draw])), "{:?}", worked.steps[draw].sizes);
        let state = after(&plan, &balance, &worked, draw + 1);
        let tang = &state.bars[0].segments[3];
        assert!(
            matches!(tang.shape, Some(Shape::Prism { section: SectionSize::Square { .. }, .. })),
            "{:?}",
            tang.shape
        );
        assert!((mm(tang.forged_length) - 2790.0 / 144.0).abs() < 0.01, "{:?}", tang.forged_length);
        let step = &worked.steps[number(&worked, "Set down “step”")];
        assert!(step.measure.iter().all(|words| !words.contains("mark ")), "{:?}", step.measure);
        assert!(step.measure[0].contains("from the far end"), "{:?}", step.measure);
        assert!(!is_held || number(&worked, "Cut off “rest”") < number(&worked, "Set down “step”"), "{order:?}");
        let ids: Vec<&str> = worked.findings.iter().map(|found| found.finding.id).collect();
        assert!(!ids.contains(&"rules-contradict") && (!is_held || !ids.contains(&"wrong-order")), "{ids:?}");
    }
}

#[test]
fn a_card_sets_a_step_down_over_the_edge_or_under_the_fuller_and_never_says_both() {
    let rest = json!({ "name": "rest", "form": { "hold": { "length": "120 mm" } } });
    for shank in [drawn_shank(), json!({ "plain": { "length": "60 mm" } })] {
        let worked = worked(&with_a_tang(&shank, Some(rest.clone())));
        let step = &worked.steps[number(&worked, "Set down “step”")];
        let alone = step.lay.as_ref().unwrap().contains("Wholly under the spring fuller");
        assert_eq!(alone, step.place == AnvilPlace::HardyHole, "{:?} at {:?}", step.lay, step.place);
        assert_eq!(alone, step.edge.is_none() && !step.tool.contains("hammer"), "{:?} with {}", step.edge, step.tool);
    }
}

/// Beside a body of the bar's own size nothing is drawn down first: a fuller of 6 mm in a gap of 7 leaves half a millimetre on
/// either side. 57 mm of 7 mm square are 7 mm of the bar.
#[test]
fn a_groove_wider_than_half_its_gap_is_told() {
    let told = |plan: &Plan| worked(plan).findings.into_iter().find(|found| found.finding.id == "groove-too-wide");
    let plain = |name: &str| json!({ "name": name, "form": { "plain": { "length": "120 mm" } } });
    let found = told(&on_20_square(&[
        plain("body"),
        json!({ "name": "step", "form": { "shoulder": { "to": { "square": "7 mm" }, "radius": "3 mm", "sides": "all" } } }),
        json!({ "name": "stub", "form": { "drawn": { "length": "57 mm", "section": "same" } } }),
        plain("other"),
    ]));
    let message = found.unwrap().finding.message;
    assert!(message.contains("a fuller of 6.0 mm in a gap of 7.0 mm"), "{message}");
    let rest = json!({ "name": "rest", "form": { "hold": { "length": "120 mm" } } });
    for shank in [drawn_shank(), json!({ "plain": { "length": "60 mm" } })] {
        assert!(told(&with_a_tang(&shank, Some(rest.clone()))).is_none(), "the rest of the bar is off by then");
        assert!(told(&with_a_tang(&shank, None)).is_none(), "at a free end there is no gap");
    }
}

/// A point of 50 mm on 9 mm square is 1350 mm³ where it runs straight: 16.7 mm of 9 mm square.
#[test]
fn an_end_drawn_along_is_in_the_length_and_in_the_bar_after_the_step() {
    let plan = on_20_square(&[
        json!({ "name": "point", "form": { "taper": { "length": "50 mm", "from": { "square": "9 mm" }, "to": "point" } } }),
        json!({ "name": "tine", "form": { "drawn": { "length": "55 mm", "section": { "square": "9 mm" } } } }),
        json!({ "name": "body", "form": { "plain": { "length": "150 mm" } } }),
    ]);
    let (balance, worked) = (balance(&plan), worked(&plan));
    let draw = number(&worked, "Draw out “tine”");
    let step = &worked.steps[draw];
    assert!(step.lay.as_ref().unwrap().contains("Draw “point” out along with it, through the end"), "{:?}", step.lay);
    assert!((in_all(step) - (55.0 + 1350.0 / 81.0)).abs() < 0.01, "{:?}", step.sizes);
    // Toward the end that is drawn along there is no line to work to.
    assert!(step.measure.iter().all(|words| !words.contains("the start of “tine”")), "{:?}", step.measure);
    let state = after(&plan, &balance, &worked, draw + 1);
    assert!((mm(state.bars[0].segments[0].forged_length) - 1350.0 / 81.0).abs() < 0.01);
    let taper = &worked.steps[number(&worked, "Taper “point”")];
    assert_eq!(taper.measure, ["the end of “point”: 16.7 mm (16.9 mm hot) from the datum end"]);
}

#[test]
fn a_short_tenon_is_set_on_the_bar_that_was_drawn_through_the_end() {
    let plan = on_20_square(&[
        json!({ "name": "body", "form": { "plain": { "length": "100 mm" } } }),
        json!({ "name": "shank", "form": drawn_shank() }),
        json!({ "name": "tenon", "form": { "tenon": { "section": { "round": "8 mm" }, "grip": "10 mm", "allowance": "8 mm" } } }),
    ]);
    let order = proposed(&plan);
    assert!(place(&order, O::Draw, "shank") < place(&order, O::SetDown, "tenon"), "{order:?}");
    let worked = worked(&plan);
    let said = worked.steps[number(&worked, "Draw out “shank”")].lay.clone().unwrap();
    assert!(said.contains("“tenon”"), "{said}");
}
