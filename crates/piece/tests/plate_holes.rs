//! The solids of plates with holes: closed, and holding the metal that the balance reckons.

use crate::solids::{OUTLINES, check_plan, plan};
use fh_core::balance::balance;

#[test]
fn every_hole_goes_through_its_plate() {
    let holes = r#"[{"hole":{"round":"6 mm"},"made":"drilled","at":"12 mm","across":"3 mm"},
        {"hole":{"slot":{"length":"9 mm","width":"4 mm"}},"made":"drifted","at":"24 mm","across":"-2 mm"}]"#;
    let bends = [
        "",
        r#","bend":{"curve":{"angle":"60 deg","side":"0 deg"}}"#,
        r#","bend":{"socket":{"axis":"along","sweep":"90 deg"}}"#,
        r#","bend":{"socket":{"axis":"across","sweep":"90 deg"}}"#,
    ];
    for outline in &OUTLINES[..7] {
        for thickness in [r#""4 mm""#, r#"{"root":"4 mm","tip":"2 mm"}"#] {
            for bend in bends {
                let flag = format!(
                    r#"{{"name":"f","form":{{"flag":{{"outline":{outline},"thickness":{thickness},"holes":{holes}}}}}{bend}}}"#
                );
                let before = r#"{"name":"p","form":{"plain":{"length":"10 mm"}}}"#;
                for plan in [plan(&flag), plan(&format!("{before},{flag}"))] {
                    let balance = balance(&plan);
                    // A hole that breaks out of its plate is no case of this test.
                    if balance.findings.iter().all(|found| found.id != "hole-too-large") {
                        check_plan(&flag, &plan);
                    }
                }
            }
        }
    }
}
