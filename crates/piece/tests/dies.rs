//! Lengths dressed in dies as solids: closed, and holding the metal of the balance.

use crate::solids::{check_plan, plan};

const DIES: [&str; 6] = [
    r#"{"die":{"fuller":{"radius":"3 mm"}},"from":"10 mm","length":"50 mm","depth":"2 mm"}"#,
    r#"{"die":{"fuller":{"radius":"2 mm"}},"depth":"4 mm","side":"inside"}"#,
    r#"{"die":{"fuller":{"radius":"4 mm","across":true}},"from":"40 mm","depth":"2 mm","side":"90 deg"}"#,
    r#"{"die":{"swage":{"radius":"7 mm"}},"depth":"2 mm","side":"180 deg"}"#,
    r#"{"die":{"swage":{"radius":"3 mm"}},"from":"20 mm","depth":"1 mm","side":"30 deg"}"#,
    r#"{"die":{"v_block":{}},"length":"45 mm","depth":"3 mm","side":"outside"}"#,
];

#[test]
fn what_is_dressed_in_dies_is_closed_and_holds_its_metal() {
    let bends = [
        "",
        r#","bend":{"curve":{"angle":"90 deg","side":"0 deg"}}"#,
        r#","bend":{"curve":{"angle":"70 deg","side":"90 deg"}}"#,
        r#","bend":{"twist":{"turns":0.5,"shortening":"3 %"}}"#,
    ];
    let forms = [
        r#"{"plain":{"length":"80 mm"}}"#,
        r#"{"drawn":{"length":"80 mm","section":{"round":"11 mm"}}}"#,
        r#"{"drawn":{"length":"80 mm","section":{"diamond":"10 mm"}}}"#,
        r#"{"drawn":{"length":"80 mm","section":{"flat":{"width":"16 mm","thickness":"8 mm"}}}}"#,
    ];
    for form in forms {
        for bend in bends {
            for die in DIES {
                let text = format!(r#"{{"name":"p","form":{form},"dressed":[{die}]{bend}}}"#);
                check_plan(&text, &plan(&text));
            }
            let text = format!(r#"{{"name":"p","form":{form},"dressed":[{},{}]{bend}}}"#, DIES[0], DIES[3]);
            check_plan(&text, &plan(&text));
        }
    }
    let taper = r#"{"taper":{"length":"80 mm","to":{"square":"7 mm"}}}"#;
    for die in DIES {
        let text = format!(
            r#"{{"name":"s","form":{{"plain":{{"length":"9 mm"}}}}}},{{"name":"p","form":{taper},"dressed":[{die}]}}"#
        );
        check_plan(&text, &plan(&text));
    }
}
