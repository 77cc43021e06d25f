//! A branch that leaves the bar: it is cut free at its tip, forged clear of the bar, and the bar is as long as what runs on.

use crate::orders::{demo, doing, lay, on, worked};
use fh_core::plan::Operation as O;
use serde_json::{Value, json};

fn plain(name: &str, long: u32) -> Value {
    json!({ "name": name, "form": { "plain": { "length": format!("{long} mm") } } })
}

/// A slit 30 mm long, 5 mm from the far edge, with a branch free towards `free`.
fn slit(free: &str) -> Value {
    json!({ "name": "slit", "form": { "split": { "side": "270 deg", "cut": "5 mm", "slit": "30 mm", "branches": [
        { "name": "thorn", "free": free, "segments": [{ "name": "spike", "form": { "taper": { "from": { "round": "3 mm" }, "to": { "round": "8 mm" } } } }] },
        { "name": "stem", "segments": [{ "name": "back", "form": { "plain": {} } }] } ] } } })
}

#[test]
fn the_tip_comes_free_by_a_cut_across_or_at_a_step() {
    let bar = || json!({ "square": "16 mm" });
    let cut = on(bar(), &[plain("shank", 200), slit("datum"), plain("head", 60)]);
    let split = doing(&cut, O::Split);
    assert!(
        lay(split)
            .ends_with("Then cut across to it at its free end, 5.0 mm deep and no deeper, so that the tip comes free.")
    );
    // Both of its ends are worked: the root, and the cut across.
    assert_eq!(split.measure.len(), 2, "{:?}", split.measure);
    assert_eq!(split.check.as_deref(), Some("Check the cut: on its line from end to end."));
    let step = json!({ "name": "step", "form": { "shoulder": { "to": { "flat": { "width": "11 mm", "thickness": "16 mm" } },
        "radius": "3 mm", "sides": [270] } } });
    let stepped = on(bar(), &[plain("shank", 200), slit("far"), step, plain("tail", 60)]);
    assert!(lay(doing(&stepped, O::Split)).ends_with("At the step its tip comes free."));
}

#[test]
fn it_is_bent_clear_and_back_and_the_bar_is_as_long_as_what_runs_on() {
    let worked = worked(&demo("net-stake.plan.json"));
    assert_eq!(doing(&worked, O::BendAside).title, "Bend out the free branch of “slit”");
    // Point 90, shank 240, slit 30, head 50: the thorn hangs beside the shank.
    let straight = worked.steps.iter().find(|step| step.title.starts_with("Straighten and measure")).unwrap();
    assert!(
        straight.sizes.iter().any(|size| size.mm.is_some_and(|mm| (mm - 410.0).abs() < 1e-6)),
        "{:?}",
        straight.sizes
    );
    let said = |step: &fh_work::WorkedStep| step.lay.clone().unwrap_or_default();
    assert!(worked.steps.iter().all(|step| !said(step).contains("in turn")), "one branch alone is drawn");
    let spike = worked.steps.iter().find(|step| step.title == "Taper “thorn, spike”").unwrap();
    assert!(spike.measure.iter().any(|words| words.contains("from the root of the slit")), "{:?}", spike.measure);
}
