//! What a step says of its metal: whether it welds, at which heat, whether water may touch it, and where work stops.
#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_core::balance::balance;
use fh_core::cautions::BARE_STOCK;
use fh_core::material::{self, Material};
use fh_core::plan::{Operation, Plan};
use fh_work::{Shop, ToolKind, Worked, WorkedStep, one_heat, work_out};

/// A welded ring, an upset end and a bar welded to another, of a metal; `keys` are further keys of the plan.
fn plan(metal: &str, keys: &str) -> Plan {
    let text = format!(
        r#"{{ "firstheat": 1, "title": "ring", "material": "{metal}", {keys} "bars": [
            {{ "name": "ring", "stock": {{ "round": "12 mm" }}, "segments": [
                {{ "name": "ring", "form": {{ "plain": {{}} }}, "bend": {{ "ring": {{ "inside_diameter": "60 mm" }} }} }},
                {{ "name": "scarf", "form": {{ "weld": {{ "allowance": "12 mm" }} }} }} ] }},
            {{ "name": "pin", "stock": {{ "square": "12 mm" }}, "segments": [
                {{ "name": "point", "form": {{ "taper": {{ "length": "60 mm", "to": "point" }} }} }},
                {{ "name": "neck", "form": {{ "plain": {{ "length": "60 mm" }} }} }},
                {{ "name": "knob", "form": {{ "ball": {{ "diameter": "16 mm" }} }} }},
                {{ "name": "shank", "form": {{ "plain": {{ "length": "150 mm" }} }},
                   "bend": {{ "curve": {{ "angle": "90 deg" }} }} }} ] }} ],
            "joints": [ {{ "kind": "weld", "fixed": {{ "bar": "ring", "segment": "ring" }}, "moved": [{{ "bar": "pin", "segment": "shank" }}] }} ] }}"#
    );
    fh_core::file::read(text.as_bytes()).unwrap()
}

fn worked(plan: &Plan) -> Worked {
    work_out(plan, &balance(plan), &Shop::default())
}

/// Everything that a step says of how it is done.
fn said(step: &WorkedStep) -> String {
    let words = [&step.lay, &step.leave, &step.check, &step.caution].into_iter().flatten().cloned();
    words.chain([step.title.clone(), step.tool.clone()]).collect::<Vec<_>>().join(" ")
}

fn does(step: &WorkedStep, operation: Operation) -> bool {
    step.tasks.iter().any(|task| task.operation == operation)
}

fn metals() -> impl Iterator<Item = Material> {
    material::ALL.into_iter()
}

#[test]
fn no_step_tells_how_to_weld_a_metal_that_does_not_weld() {
    for metal in metals().filter(|metal| metal.weld.is_none()) {
        let worked = worked(&plan(metal.name, ""));
        for step in &worked.steps {
            let said = said(step);
            assert!(!does(step, Operation::Weld) && !does(step, Operation::Scarf), "{}: {said}", metal.name);
            assert!(!said.contains("flux") && !said.contains("welding heat"), "{}: {said}", metal.name);
        }
        assert!(worked.tools.iter().all(|tool| tool.kind != ToolKind::Flux), "{}", metal.name);
    }
}

/// A smith's own step is kept, and says what to do in its place.
#[test]
fn a_step_of_ones_own_that_welds_such_a_metal_says_what_to_do_instead() {
    let own = r#""work": { "steps": [{ "work": [{ "operation": "weld", "parts": ["2"] }] },
        { "work": [{ "operation": "weld", "joint": 1 }] }] },"#;
    for metal in metals().filter(|metal| metal.weld.is_none()) {
        for step in &worked(&plan(metal.name, own)).steps {
            let said = said(step);
            assert!(said.contains(metal.instead_of_weld), "{}: {said}", metal.name);
            assert!(!said.contains("flux") && !said.contains("dark line"), "{}: {said}", metal.name);
        }
    }
}

#[test]
fn a_weld_has_the_heat_and_the_flux_of_its_metal() {
    for metal in metals() {
        let Some(weld) = metal.weld else { continue };
        let plan = plan(metal.name, "");
        let worked = worked(&plan);
        let heats = format!("({:.0} to {:.0} °C)", weld.from_celsius, weld.to_celsius);
        let at = worked.steps.iter().position(|step| does(step, Operation::Weld)).unwrap();
        let told = said(&worked.steps[at]);
        assert!(told.contains(&heats) && told.contains(weld.flux), "{}: {told}", metal.name);
        assert!(weld.hard.is_none_or(|hard| told.contains(hard)), "{}: {told}", metal.name);
        let out = one_heat(&plan, &balance(&plan), &worked, at).unwrap().start_celsius;
        assert!((weld.from_celsius..=weld.to_celsius).contains(&out), "{}: {out}", metal.name);
        let sand = worked.tools.iter().find(|tool| tool.kind == ToolKind::Flux).unwrap().other_way;
        let may_have_sand = ["mild steel", "wrought iron"].contains(&metal.name);
        assert_eq!(sand.contains("sand") && sand.contains("Don't breathe its dust"), may_have_sand, "{}", metal.name);
    }
}

#[test]
fn water_is_forbidden_where_it_hardens_and_nowhere_else() {
    for metal in metals().filter(|metal| metal.forging.is_some()) {
        let worked = worked(&plan(metal.name, ""));
        let upset = worked.steps.iter().find(|step| does(step, Operation::Upset)).map(said).unwrap();
        assert_eq!(upset.contains("do not quench"), !metal.quench.may, "{}: {upset}", metal.name);
        assert_eq!(upset.contains("harden and crack"), metal.quench.does.contains("harden and crack"), "{upset}");
    }
}

#[test]
fn every_hot_step_carries_the_caution_of_its_metal() {
    for metal in metals() {
        let Some(caution) = metal.hot_caution else { continue };
        for step in worked(&plan(metal.name, "")).steps.iter().filter(|step| step.is_hot()) {
            let said = step.caution.as_deref().unwrap_or_default();
            assert_eq!(said.matches(caution).count(), 1, "{}: {}: {said}", metal.name, step.title);
        }
    }
}

/// Steel with carbon in it cracks or grows coarse where a smith would strike on: it says where to stop, and what to do after the
/// last heat of each bar. Mild steel and other metals have no word of it.
#[test]
fn what_hardens_says_where_to_stop_and_is_normalised_once() {
    for metal in metals() {
        let worked = worked(&plan(metal.name, ""));
        let stops = |step: &&WorkedStep| step.caution.as_deref().is_some_and(|said| said.contains("Not below "));
        let first = worked.steps.iter().find(|step| step.is_hot());
        // It is said once for each of the two bars: for heavy work, for light work, and for the weld.
        assert_eq!(first.as_ref().is_some_and(stops), metal.normalise.is_some(), "{}", metal.name);
        let said = worked.steps.iter().filter(stops).count();
        assert!(if metal.normalise.is_some() { (1..=6).contains(&said) } else { said == 0 }, "{}: {said}", metal.name);
        let finish = metal.forging.map_or(0.0, |heat| heat.finish_celsius);
        let draws: Vec<&str> = worked.steps.iter().filter_map(|step| step.caution.as_deref()).collect();
        let told = draws.iter().any(|said| said.contains(&format!("Not below {finish:.0} °C, a ")));
        assert_eq!(told, metal.normalise.is_some(), "{}: {draws:?}", metal.name);
        let normalises = metal.normalise.is_some();
        assert_eq!(normalised(&worked), if normalises { vec![None] } else { Vec::new() }, "the weld: {}", metal.name);
    }
}

/// Without the weld that joins them each bar has a last heat of its own.
#[test]
fn each_bar_is_normalised_after_its_own_last_heat() {
    for metal in metals() {
        let mut plan = plan(metal.name, "");
        plan.joints.clear();
        let wanted = if metal.normalise.is_some() { vec![Some(0), Some(1)] } else { Vec::new() };
        assert_eq!(normalised(&worked(&plan)), wanted, "{}", metal.name);
    }
}

/// The bars that are normalised, each in a step of its own, its last hot one, that counts as a heat; none of a joint, whose last weld
/// says it.
fn normalised(worked: &Worked) -> Vec<Option<usize>> {
    let does = |step: &WorkedStep| step.tasks.iter().any(|task| task.operation == Operation::Normalise);
    let words =
        |step: &WorkedStep| if does(step) { step.lay.clone() } else { step.heat_with.clone() }.unwrap_or_default();
    let says = |step: &&WorkedStep| does(step) || words(step).contains("normalise");
    let told: Vec<&WorkedStep> = worked.steps.iter().filter(says).collect();
    for step in &told {
        let last = worked.steps.iter().rfind(|other| other.is_hot() && other.bar == step.bar);
        assert_eq!(last.map(|last| &last.title), Some(&step.title));
        assert!(words(step).contains("data sheet comes first"), "{}", step.title);
        assert!(!does(step) || (step.needs == 1 && step.hold.is_none() && step.bar.is_some()), "{}", step.title);
    }
    told.into_iter().map(|step| step.bar).collect()
}

/// 50 °C, which is what an eye misses by.
#[test]
fn no_heat_goes_on_to_the_edge_of_a_range_in_which_the_metal_breaks() {
    for metal in metals().filter(|metal| metal.forging.is_some()) {
        let plan = plan(metal.name, "");
        let (balance, worked) = (balance(&plan), worked(&plan));
        let heats = (0..worked.steps.len()).filter_map(|at| one_heat(&plan, &balance, &worked, at));
        let stops: Vec<f64> = heats.map(|heat| heat.stop_celsius).collect();
        assert!(!stops.is_empty(), "{}", metal.name);
        for stop in stops {
            let is_clear = |range: &material::Brittle| stop >= range.to_celsius + 50.0 || stop < range.from_celsius;
            assert!(metal.brittle.iter().all(is_clear), "{}: {stop}", metal.name);
        }
    }
}

#[test]
fn coated_stock_is_told_in_one_way() {
    for coating in ["galvanised", "plated"] {
        let plan = plan("mild steel", &format!(r#""coating": "{coating}","#));
        let finding = balance(&plan).findings.into_iter().find(|finding| finding.id == "poisonous-coating").unwrap();
        assert_eq!(finding.remedy, BARE_STOCK);
        let first = worked(&plan).steps[0].caution.clone().unwrap();
        assert!(first.contains(BARE_STOCK) && !first.contains("take the coating off"), "{first}");
    }
}

#[test]
fn makeshift_tools_bring_no_plating_into_the_fire() {
    for kind in [ToolKind::Bolster, ToolKind::TwistWrench] {
        assert!(kind.other_way().contains("bare, not plated"), "{}", kind.other_way());
    }
}
