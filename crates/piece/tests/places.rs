//! Where the piece goes: the center line against the outside reference.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use fh_core::balance::balance;
use fh_core::file;
use fh_piece::{Piece, Quality, piece};

/// The wall hook of the reference cases; its plate is two bosses with a hole each.
const WALL_HOOK: &str = r#"{"firstheat":1,"title":"wall hook","units":{"length":"mm","marks":"1 mm"},
"bars":[{"name":"hook","stock":{"square":"12 mm"},"segments":[
{"name":"leaf","form":{"flag":{"outline":{"leaf":{"length":"60 mm","width":"24 mm"}},"thickness":"2.5 mm"}}},
{"name":"stem","form":{"taper":{"length":"40 mm","from":{"round":"6 mm"},"to":{"round":"9 mm"}}}},
{"name":"hook","form":{"drawn":{"section":{"round":"9 mm"}}},"bend":{"curve":{"angle":"200 deg","inside_radius":"17.5 mm","side":"0 deg"}}},
{"name":"offset","form":{"drawn":{"section":{"round":"9 mm"}}},"bend":{"curve":{"angle":"35 deg","inside_radius":"13.5 mm","side":"90 deg"}}},
{"name":"round to square","form":{"taper":{"length":"25 mm","to":{"square":"12 mm"},"runout":"eased"}}},
{"name":"twist","form":{"plain":{"length":"50 mm"}},"bend":{"twist":{"turns":1.25}}},
{"name":"shank","form":{"plain":{"length":"20 mm"}}},
{"name":"spread","form":{"taper":{"length":"30 mm","to":{"flat":{"width":"30 mm","thickness":"5 mm"}},"runout":{"power":2}}}},
{"name":"plate","form":{"hole":{"outline":{"rectangle":{"length":"27.5 mm","width":"30 mm"}},"thickness":"5 mm","hole":{"round":"6 mm"},"made":"punched"}}},
{"name":"plate end","form":{"hole":{"outline":{"rectangle":{"length":"27.5 mm","width":"30 mm"}},"thickness":"5 mm","hole":{"round":"6 mm"},"made":"punched"}}}
]}]}"#;

fn wall_hook() -> Piece {
    let plan = file::read(WALL_HOOK.as_bytes()).unwrap();
    piece(&plan, &balance(&plan), Quality::Print)
}

fn near(got: [f64; 3], want: [f64; 3]) {
    for axis in 0..3 {
        assert!((got[axis] - want[axis]).abs() < 1e-9, "{got:?} where {want:?} is right");
    }
}

#[test]
fn the_wall_hook_ends_where_the_reference_does() {
    // checks: pieces-wall-hook; found there by frames and by 4 × 4 matrices. Its u runs as our y does, away from the smith.
    let piece = wall_hook();
    let end = piece.lines.last().unwrap().frames.last().unwrap();
    near(end.at, [-55.781_386_595_3, -106.499_021_746, -11.287_876_778_9]);
    near(end.along, [-0.769_751_131_32, -0.573_576_436_351, -0.280_166_499_593]);
    near(end.toward.map(|part| -part), [0.342_020_143_326, 0.0, -0.939_692_620_786]);
}

#[test]
fn the_solids_of_the_wall_hook_hold_what_the_reference_says() {
    let piece = wall_hook();
    let wanted = [
        2_475.131_920_91,
        1_790.707_812_55,
        4_885.454_178_54,
        699.508_211_927,
        2_622.160_190_04,
        7_200.0,
        2_880.0,
        4_884.0,
        7_967.256_661_18 / 2.0,
        7_967.256_661_18 / 2.0,
    ];
    for (segment, want) in wanted.into_iter().enumerate() {
        let got = piece.solid_volume_mm3(0, segment);
        assert!((got / want - 1.0).abs() < 3e-4, "{segment}: {got} where {want} is right");
    }
    let whole: f64 = (0..10).map(|segment| piece.solid_volume_mm3(0, segment)).sum();
    assert!((whole / 35_404.218_975_1 - 1.0).abs() < 2e-4, "{whole}");
}

#[test]
fn each_segment_starts_where_the_one_before_it_ends() {
    let piece = wall_hook();
    for pair in piece.lines.windows(2) {
        let (end, start) = (pair[0].frames.last().unwrap(), pair[1].frames[0]);
        near(end.at, start.at);
        near(end.along, start.along);
        near(end.up, start.up);
    }
}

/// The piece of one bar of 10 mm square.
fn bent(segments: &str) -> Piece {
    let text = format!(
        r#"{{"firstheat":1,"title":"test","units":{{"length":"mm","marks":"1 mm"}},
            "bars":[{{"name":"bar","stock":{{"square":"10 mm"}},"segments":[{segments}]}}]}}"#
    );
    let plan = file::read(text.as_bytes()).unwrap();
    piece(&plan, &balance(&plan), Quality::Print)
}

const LEG: &str = r#"{"name":"l","form":{"plain":{"length":"40 mm"}}}"#;

#[test]
fn a_square_corner_is_as_large_as_its_legs() {
    let corner = r#"{"name":"c","form":{"peak":{"section":"stock"}},"bend":{"corner":{"angle":"90 deg","inside_radius":"5 mm"}}}"#;
    let piece = bent(&format!("{LEG},{corner},{LEG}"));
    // Outside to outside: each leg, the inside radius and the thickness.
    let bounds = piece.bounds().unwrap();
    near(bounds.low, [0.0, -5.0, -5.0]);
    near(bounds.high, [55.0, 5.0, 50.0]);
}

#[test]
fn a_ring_comes_back_to_its_start() {
    let ring = r#"{"name":"r","form":{"drawn":{"section":"stock"}},"bend":{"ring":{"inside_diameter":"30 mm","side":"180 deg"}}}"#;
    let piece = bent(&format!("{LEG},{ring}"));
    let end = piece.lines[1].frames.last().unwrap();
    near(end.at, [40.0, 0.0, 0.0]);
    near(end.along, [1.0, 0.0, 0.0]);
    let bounds = piece.bounds().unwrap();
    near([0.0, bounds.size()[1], bounds.high[2]], [0.0, 10.0, 5.0]);
    assert!((bounds.size()[2] - 50.0).abs() < 0.01, "{bounds:?}");
}

#[test]
fn a_scroll_goes_on_smoothly_from_its_joint() {
    for (eye, order) in [("end", 1), ("start", 0)] {
        let scroll = format!(
            r#"{{"name":"s","form":{{"drawn":{{"section":"stock"}}}},"bend":{{"scroll":{{"inner_radius":"10 mm","outer_radius":"50 mm","turns":1.5,
                "run":"opening","eye":"{eye}","side":"0 deg"}}}}}}"#
        );
        let text = if order == 1 { format!("{LEG},{scroll}") } else { format!("{scroll},{LEG}") };
        let piece = bent(&text);
        let (before, after) = (piece.lines[0].frames.last().unwrap(), piece.lines[1].frames[0]);
        near(before.along, after.along);
        let steps = &piece.lines[order].frames;
        let tightest = |a: usize, b: usize| {
            let dot: f64 = (0..3).map(|axis| steps[a].along[axis] * steps[b].along[axis]).sum();
            let way: f64 = (0..3).map(|axis| (steps[a].at[axis] - steps[b].at[axis]).powi(2)).sum();
            dot.min(1.0).acos() / way.sqrt()
        };
        let (start, end) = (tightest(0, 1), tightest(steps.len() - 2, steps.len() - 1));
        assert_eq!(start < end, eye == "end", "the eye is where it winds tightest: {start} {end}");
    }
}

#[test]
fn a_set_down_on_one_side_keeps_the_other_side_straight() {
    let down = r#"{"name":"s","form":{"shoulder":{"to":{"flat":{"width":"10 mm","thickness":"6 mm"}},"radius":"2 mm","sides":[0]}}}"#;
    let up = r#"{"name":"u","form":{"shoulder":{"to":"stock","radius":"2 mm","sides":[0]}}}"#;
    let leg = r#"{"name":"m","form":{"drawn":{"length":"30 mm","section":"same"}}}"#;
    let piece = bent(&format!("{LEG},{down},{leg},{up},{LEG}"));
    for solid in &piece.solids {
        let bounds = solid.mesh.bounds().unwrap();
        assert!((bounds.low[2] + 5.0).abs() < 1e-9, "{}: {bounds:?}", solid.segment);
    }
    assert!((piece.lines[2].frames[0].at[2] + 2.0).abs() < 1e-12);
    assert!(piece.lines[4].frames[0].at[2].abs() < 1e-12);
}

#[test]
fn a_socket_lies_on_its_mandrel() {
    let socket = r#"{"name":"s","form":{"flag":{"outline":{"rectangle":{"length":"60 mm"}},"thickness":"3 mm"}},
        "bend":{"socket":{"mandrel":"20 mm","axis":"along"}}}"#;
    let piece = bent(&format!("{LEG},{socket}"));
    let distances = piece.solids[1].mesh.points.iter().map(|[_, y, z]| y.hypot(z - 11.5));
    let (low, high) = distances.fold((f64::INFINITY, 0.0_f64), |(low, high), d| (low.min(d), high.max(d)));
    assert!((low - 10.0).abs() < 1e-9 && (high - 13.0).abs() < 1e-9, "{low} {high}");
}
