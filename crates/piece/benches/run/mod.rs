//! The plan that the benches take.

use fh_core::file;
use fh_core::plan::Plan;

/// A run of segments that a real plan mixes.
const RUN: &str = r#"
{"name":"point","form":{"taper":{"length":"60 mm","from":{"square":"10 mm"},"to":{"round":"6 mm"},"runout":"eased"}}},
{"name":"hook","form":{"drawn":{"section":{"round":"10 mm"}}},"bend":{"curve":{"angle":"180 deg","inside_radius":"25 mm"}}},
{"name":"set-down","form":{"shoulder":{"to":{"square":"12 mm"},"radius":"3 mm","sides":"all"}}},
{"name":"shank","form":{"plain":{"length":"120 mm"}},"bend":{"twist":{"turns":2}}},
{"name":"scroll","form":{"taper":{"to":{"square":"5 mm"}}},"bend":{"scroll":{"inner_radius":"8 mm","outer_radius":"50 mm","turns":1.5,"run":"opening","eye":"end"}}},
{"name":"corner","form":{"peak":{"section":{"square":"12 mm"}}},"bend":{"corner":{"angle":"90 deg","inside_radius":"6 mm"}}},
{"name":"reed","form":{"taper":{"length":"80 mm","from":{"half_round":{"width":"12 mm","height":"5 mm"}},"to":{"hexagon":"8 mm"}}}},
{"name":"boss","form":{"hole":{"outline":{"disc":{"diameter":"30 mm"}},"thickness":"6 mm","hole":{"round":"8 mm"},"made":"punched"}}},
{"name":"leaf","form":{"flag":{"outline":{"leaf":{"length":"60 mm","width":"24 mm"}},"thickness":{"root":"4 mm","tip":"2 mm"}}}},
{"name":"knob","form":{"ball":{"diameter":"20 mm"}}}"#;

/// A plan of so many segments.
pub(crate) fn plan(segments: usize) -> Plan {
    let run: Vec<&str> = RUN.trim().split(",\n").collect();
    let all: Vec<&str> = (0..segments).map(|index| run[index % run.len()]).collect();
    let text = format!(
        r#"{{"firstheat":1,"title":"bench","units":{{"length":"mm","marks":"1 mm"}},
            "bars":[{{"name":"bar","stock":{{"square":"12 mm"}},"segments":[{}]}}]}}"#,
        all.join(",\n")
    );
    file::read(text.as_bytes()).expect("the bench's plan reads")
}
