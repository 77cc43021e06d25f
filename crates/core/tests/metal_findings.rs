//! What the metal, the coating and the use of a piece bring about in the findings.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_core::balance::balance;
use fh_core::file;
use fh_core::findings::{Finding, Severity};

/// A point, as plain as forging can be.
const TAPER: &str =
    r#"{ "form": { "taper": { "length": "60 mm", "to": "point" } } }, { "form": { "plain": { "length": "150 mm" } } }"#;

/// The findings of a 12 mm square bar with these segments; `plan` are further keys of the plan.
fn findings(plan: &str, segments: &str) -> Vec<Finding> {
    let text = format!(
        r#"{{ "firstheat": 1, {plan} "units": {{ "length": "mm", "marks": "1 mm" }},
              "bars": [{{ "name": "bar", "stock": {{ "square": "12 mm" }}, "segments": [{segments}] }}] }}"#
    );
    balance(&file::read(text.as_bytes()).unwrap()).findings
}

/// Every metal that is no iron or carbon steel, and every way in which a plan asks for a fire weld.
#[test]
fn a_fire_weld_stops_a_plan_of_a_metal_that_has_none() {
    let weld = r#"{ "name": "scarf", "form": { "weld": { "allowance": "12 mm" } } }, { "name": "bar", "form": { "plain": { "length": "150 mm" } } }"#;
    let ring = r#"{ "name": "ring", "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "60 mm" } } },
        { "name": "scarf", "form": { "weld": { "allowance": "12 mm" } } }"#;
    let plain = r#"{ "name": "a", "form": { "plain": { "length": "80 mm" } } }, { "name": "b", "form": { "plain": { "length": "80 mm" } } }"#;
    let joint = r#""joints": [{ "kind": "weld", "fixed": { "bar": "bar", "segment": "a" }, "moved": [{ "bar": "bar", "segment": "b" }] }],"#;
    let step = r#""work": { "steps": [{ "work": [{ "operation": "weld", "parts": ["1"] }] }] },"#;
    let asked = [("", weld), ("", ring), (joint, plain), (step, plain)];
    let told = |metal: &str, (keys, segments): (&str, &str)| {
        let found = findings(&format!(r#""material": "{metal}", {keys}"#), segments);
        found.into_iter().find(|finding| finding.id == "weld-metal")
    };
    for metal in fh_core::material::ALL {
        for case in asked {
            let found = told(metal.name, case).map(|finding| (finding.severity, finding.remedy));
            let found = found.as_ref().map(|(severity, remedy)| (*severity, remedy.as_str()));
            match metal.name {
                "mild steel" | "carbon steel" | "medium-carbon steel" | "wrought iron" => assert_eq!(found, None),
                "high-carbon steel" | "spring steel" => {
                    assert!(found.is_some_and(|(severity, _)| severity == Severity::Warning), "{}", metal.name);
                }
                _ => assert_eq!(found, Some((Severity::Stop, metal.instead_of_weld)), "{}", metal.name),
            }
        }
    }
}

#[test]
fn what_holds_people_is_a_stop_and_what_lifts_or_tows_a_warning() {
    for (duty, severity) in
        [("holds_people", Severity::Stop), ("lifts", Severity::Warning), ("tows", Severity::Warning)]
    {
        let found = findings(&format!(r#""duty": "{duty}","#), TAPER);
        let rated = found.iter().find(|finding| finding.id == "rated-part").unwrap();
        assert_eq!(rated.severity, severity, "{duty}");
    }
}

#[test]
fn cadmium_is_told_of_plated_stock() {
    let found = findings(r#""coating": "plated","#, TAPER);
    assert!(found.iter().any(|finding| finding.id == "poisonous-coating" && finding.reason.contains("Cadmium")));
}

#[test]
fn a_metal_that_is_only_cut_to_length_has_no_finding() {
    let sawn = r#"{ "form": { "plain": { "length": "80 mm" } } }, { "form": { "hold": { "length": "150 mm" } } }"#;
    for metal in fh_core::material::ALL {
        assert_eq!(findings(&format!(r#""material": "{}","#, metal.name), sawn), [], "{}", metal.name);
    }
}
