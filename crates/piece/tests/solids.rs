//! The solids of a piece: closed, and holding the metal that the balance reckons.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use fh_core::balance::{Balance, balance};
use fh_core::file;
use fh_core::metal::Shape;
use fh_core::plan::{Plan, SizeName};
use fh_piece::{Piece, Quality, piece};
use uom::si::volume::cubic_millimeter;

/// A plan of one bar of 12 mm square with these segments.
pub(crate) fn plan(segments: &str) -> Plan {
    let text = format!(
        r#"{{"firstheat":1,"title":"test","units":{{"length":"mm","marks":"1 mm"}},
            "bars":[{{"name":"bar","stock":{{"square":"12 mm"}},"segments":[{segments}]}}]}}"#
    );
    file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{segments}"))
}

/// Fails where a solid is open, or does not hold its metal to a share.
fn check(what: &str, balance: &Balance, piece: &Piece, share: f64) {
    for (at, bar) in balance.bars.iter().enumerate() {
        for (index, segment) in bar.segments.iter().enumerate() {
            // A split's metal is that of its branches; that of a weld which closes its bar is burnt into it.
            let is_scarf = segment.derived(SizeName::Scarf).is_some();
            if matches!(segment.shape, Some(Shape::Split(_))) || (is_scarf && piece.line(at, index).is_none()) {
                continue;
            }
            let want = segment.finished_volume.get::<cubic_millimeter>();
            let got = piece.solid_volume_mm3(at, index);
            assert!(
                (got - want).abs() <= share * want,
                "{what}, {index}: {got} where {want} is right ({:e})",
                got / want - 1.0
            );
        }
    }
    for solid in &piece.solids {
        assert!(solid.mesh.is_closed(), "{what}, {}: not closed", solid.segment);
        assert!(solid.mesh.points.iter().flatten().all(|part| part.is_finite()));
        let bounds = solid.mesh.bounds().unwrap();
        let smallest = bounds.size().into_iter().fold(f64::INFINITY, f64::min);
        let slivers = solid.mesh.corners().filter(|corners| area(*corners) < 1e-12 * smallest.max(1.0)).count();
        assert_eq!(slivers, 0, "{what}, {}: triangles without area", solid.segment);
    }
}

fn area([a, b, c]: [[f64; 3]; 3]) -> f64 {
    let (u, v) = ([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]);
    let cross = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    cross.iter().map(|part| part * part).sum::<f64>().sqrt() / 2.0
}

pub(crate) fn check_plan(what: &str, plan: &Plan) {
    let balance = balance(plan);
    check(what, &balance, &piece(plan, &balance, Quality::Print), 1e-3);
    check(what, &balance, &piece(plan, &balance, Quality::Screen), 5e-2);
}

#[test]
fn every_demo_is_closed_and_holds_its_metal() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo-plans");
    let mut plans = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|ending| ending == "json") {
            let plan = file::read(&std::fs::read(&path).unwrap()).unwrap();
            check_plan(&path.display().to_string(), &plan);
            plans += 1;
        }
    }
    assert!(plans >= 8);
}

const SECTIONS: [&str; 11] = [
    r#""stock""#,
    r#"{"square":{"side":"9 mm","edge_radius":"1.5 mm"}}"#,
    r#"{"round":"10 mm"}"#,
    r#"{"flat":{"width":"25 mm","thickness":"5 mm"}}"#,
    r#"{"flat":{"width":"5 mm","thickness":"20 mm","edge_radius":"1 mm"}}"#,
    r#"{"oval":{"width":"16 mm","thickness":"6 mm"}}"#,
    r#"{"hexagon":"11 mm"}"#,
    r#"{"octagon":"11 mm"}"#,
    r#"{"diamond":"8 mm"}"#,
    r#"{"half_round":{"width":"14 mm","height":"5 mm"}}"#,
    r#"{"half_round":{"width":"8 mm","height":"7 mm"}}"#,
];

const SIDES: [&str; 5] = ["0 deg", "90 deg", "180 deg", "270 deg", "37 deg"];

#[test]
fn every_section_bends_to_every_side() {
    for section in SECTIONS {
        for side in SIDES {
            for bend in [
                format!(r#","bend":{{"curve":{{"angle":"80 deg","inside_radius":"14 mm","side":"{side}"}}}}"#),
                format!(r#","bend":{{"ring":{{"inside_diameter":"30 mm","side":"{side}"}}}}"#),
            ] {
                let segment = format!(r#"{{"name":"a","form":{{"drawn":{{"section":{section}}}}}{bend}}}"#);
                check_plan(&segment, &plan(&segment));
            }
        }
    }
}

#[test]
fn every_taper_bends_to_every_side() {
    let runouts = [
        "\"straight\"",
        "\"eased\"",
        r#"{"power":0.3}"#,
        r#"{"power":1.5}"#,
        r#"{"power":4}"#,
        r#"{"power":10}"#,
        r#"{"power":0.1}"#,
    ];
    for (index, from) in SECTIONS.into_iter().enumerate() {
        for to in SECTIONS.into_iter().chain(["\"point\"", r#"{"edge":"15 mm"}"#]) {
            let (runout, side) = (runouts[(index + to.len()) % 7], SIDES[(index / 2 + to.len()) % 5]);
            for bend in [String::new(), format!(r#","bend":{{"curve":{{"angle":"100 deg","side":"{side}"}}}}"#)] {
                let taper = format!(
                    r#"{{"name":"a","form":{{"taper":{{"length":"60 mm","from":{from},"to":{to},"runout":{runout}}}}}{bend}}}"#
                );
                // In the middle of the bar, or as its datum end.
                let middle = (index + to.len()) % 2 == 0;
                let before = if middle { r#"{"name":"p","form":{"plain":{"length":"10 mm"}}},"# } else { "" };
                check_plan(&taper, &plan(&format!("{before}{taper}")));
            }
        }
    }
}

#[test]
fn every_shoulder_holds_its_metal() {
    for section in SECTIONS {
        for sides in ["\"all\"", "[0]", "[90, 270]", "[180, 90]", "[270]"] {
            for radius in ["0.5 mm", "3 mm", "9 mm"] {
                let shoulder = |to: &str| {
                    format!(r#"{{"name":"s","form":{{"shoulder":{{"to":{to},"radius":"{radius}","sides":{sides}}}}}}}"#)
                };
                let leg = r#"{"name":"l","form":{"drawn":{"length":"20 mm","section":"same"}}}"#;
                let text = format!("{},{leg},{},{leg}", shoulder(section), shoulder("\"stock\""));
                check_plan(&text, &plan(&text));
            }
        }
    }
}

#[test]
fn every_corner_is_sharp_and_holds_its_metal() {
    for section in SECTIONS {
        for side in SIDES {
            for (angle, inside) in [("90 deg", "0 mm"), ("30 deg", "4 mm"), ("150 deg", "12 mm")] {
                let text = format!(
                    r#"{{"name":"l","form":{{"drawn":{{"length":"20 mm","section":{section}}}}}}},
                       {{"name":"c","form":{{"peak":{{"section":"same"}}}},
                         "bend":{{"corner":{{"angle":"{angle}","inside_radius":"{inside}","side":"{side}"}}}}}},
                       {{"name":"m","form":{{"drawn":{{"length":"20 mm","section":"same"}}}}}}"#
                );
                check_plan(&text, &plan(&text));
            }
        }
    }
}

#[test]
fn a_corner_that_is_not_bent_yet_holds_its_metal_on_the_outside_of_its_bend() {
    for (at, side) in SIDES.into_iter().enumerate() {
        let text = format!(
            r#"{{"name":"l","form":{{"plain":{{"length":"20 mm"}}}}}},
               {{"name":"c","form":{{"peak":{{"section":"stock"}}}},
                 "bend":{{"corner":{{"angle":"90 deg","inside_radius":"3 mm","side":"{side}"}}}}}},
               {{"name":"m","form":{{"plain":{{"length":"20 mm"}}}}}}"#
        );
        let plan = plan(&text);
        let mut straight = balance(&plan);
        straight.bars[0].segments[1].bent = None;
        let piece = piece(&plan, &straight, Quality::Print);
        check(side, &straight, &piece, 1e-9);
        let angle = [0.0_f64, 90.0, 180.0, 270.0, 37.0][at].to_radians();
        let toward = |point: &[f64; 3]| {
            let frame = piece.line(0, 1).unwrap().frames[0];
            let part = |axis: [f64; 3]| (0..3).map(|way| axis[way] * (point[way] - frame.at[way])).sum::<f64>();
            part(frame.toward) * angle.sin() + part(frame.up) * angle.cos()
        };
        let solid = piece.solids.iter().find(|solid| solid.segment == 1).unwrap();
        let inside = solid.mesh.points.iter().map(toward).fold(f64::NEG_INFINITY, f64::max);
        let outside = solid.mesh.points.iter().map(toward).fold(f64::INFINITY, f64::min);
        let Some(Shape::Peak { corner, .. }) = &straight.bars[0].segments[1].shape else { panic!("no peak") };
        let half = corner.thickness.get::<uom::si::length::millimeter>() / 2.0;
        assert!((inside - half).abs() < 1e-9, "{side}: {inside}");
        assert!(outside < -half - 2.0, "{side}: {outside}");
    }
}

pub(crate) const OUTLINES: [&str; 9] = [
    r#"{"rectangle":{"length":"50 mm","width":"28 mm"}}"#,
    r#"{"trapezoid":{"length":"50 mm","root":"10 mm","tip":"34 mm"}}"#,
    r#"{"disc":{"diameter":"40 mm"}}"#,
    r#"{"ellipse":{"length":"60 mm","width":"25 mm"}}"#,
    r#"{"leaf":{"length":"60 mm","width":"24 mm"}}"#,
    r#"{"stadium":{"length":"60 mm","width":"25 mm"}}"#,
    r#"{"stadium":{"length":"20 mm","width":"45 mm"}}"#,
    r#"{"polygon":[["0 mm","-6 mm"],["0 mm","6 mm"],["12 mm","6 mm"],["12 mm","25 mm"],["60 mm","14 mm"],["30 mm","0 mm"],
        ["60 mm","-14 mm"],["12 mm","-25 mm"],["12 mm","-6 mm"]]}"#,
    r#"{"polygon":[["5 mm","0 mm"],["20 mm","20 mm"],["40 mm","8 mm"],["50 mm","20 mm"],["65 mm","0 mm"],["50 mm","-20 mm"],
        ["40 mm","-8 mm"],["20 mm","-20 mm"]]}"#,
];

#[test]
fn every_flag_is_closed_and_holds_its_metal() {
    let thicknesses = ["\"4 mm\"", r#"{"root":"5 mm","tip":"2 mm"}"#];
    let side = |side: &str| format!(r#","bend":{{"curve":{{"angle":"100 deg","side":"{side}"}}}}"#);
    for outline in OUTLINES {
        for thickness in thicknesses {
            for bend in [String::new(), side("0 deg"), side("180 deg")] {
                let flag = format!(
                    r#"{{"name":"f","form":{{"flag":{{"outline":{outline},"thickness":{thickness},"trim":"5 %"}}}}{bend}}}"#
                );
                check_plan(&flag, &plan(&flag));
                check_plan(&flag, &plan(&format!(r#"{{"name":"p","form":{{"plain":{{"length":"10 mm"}}}}}},{flag}"#)));
            }
        }
    }
}

#[test]
fn every_hole_goes_through() {
    let holes = [r#"{"round":"9 mm"}"#, r#"{"square":"8 mm"}"#, r#"{"slot":{"length":"14 mm","width":"6 mm"}}"#];
    let bends = ["", r#","bend":{"curve":{"angle":"60 deg","side":"0 deg"}}"#, r#","bend":{"twist":{"turns":0.25}}"#];
    for outline in &OUTLINES[..7] {
        for hole in holes {
            for bend in bends {
                for at in ["", r#","at":"12 mm""#] {
                    let boss = format!(
                        r#"{{"name":"h","form":{{"hole":{{"outline":{outline},"thickness":"5 mm","hole":{hole},"made":"drilled"{at}}}}}{bend}}}"#
                    );
                    // A hole that breaks out of its boss is no case of this test.
                    if at.is_empty() || outline.contains("rectangle") {
                        check_plan(&boss, &plan(&boss));
                    }
                }
            }
        }
    }
}

#[test]
fn a_hole_that_breaks_out_leaves_a_closed_solid() {
    for outline in &OUTLINES[..7] {
        for hole in [
            r#"{"round":"28 mm"}"#,
            r#"{"round":"34 mm"}"#,
            r#"{"square":"9 mm"}"#,
            r#"{"slot":{"length":"12 mm","width":"45 mm"}}"#,
        ] {
            for at in ["3 mm", "14 mm", "17 mm", "25 mm"] {
                let boss = format!(
                    r#"{{"name":"h","form":{{"hole":{{"outline":{outline},"thickness":"5 mm","hole":{hole},"made":"drilled","at":"{at}"}}}}}}"#
                );
                let plan = plan(&boss);
                for solid in &piece(&plan, &balance(&plan), Quality::Screen).solids {
                    assert!(solid.mesh.is_closed(), "{boss}");
                    assert!(solid.mesh.volume_mm3() > 0.0 && solid.mesh.bounds().is_some(), "{boss}");
                }
            }
        }
    }
}

#[test]
fn every_socket_is_closed_and_holds_its_metal() {
    let thicknesses = ["\"3 mm\"", r#"{"root":"4 mm","tip":"2 mm"}"#];
    for outline in [OUTLINES[0], OUTLINES[1], OUTLINES[4], OUTLINES[7]] {
        for thickness in thicknesses {
            for (axis, side) in [("along", "0 deg"), ("along", "180 deg"), ("across", "0 deg"), ("across", "180 deg")] {
                let flag = format!(
                    r#"{{"name":"p","form":{{"plain":{{"length":"10 mm"}}}}}},{{"name":"s","form":{{"flag":{{"outline":{outline},
                        "thickness":{thickness}}}}},"bend":{{"socket":{{"mandrel":"16 mm","axis":"{axis}","side":"{side}"}}}}}}"#
                );
                check_plan(&flag, &plan(&flag));
            }
        }
    }
}

#[test]
fn every_twist_is_closed_and_holds_its_metal() {
    for section in SECTIONS {
        for (turns, shortening) in [("1.25", ""), ("-3", r#","shortening":"4 %""#)] {
            let text = format!(
                r#"{{"name":"a","form":{{"drawn":{{"length":"120 mm","section":{section}}}}},
                    "bend":{{"twist":{{"turns":{turns}{shortening}}}}}}}"#
            );
            check_plan(&text, &plan(&text));
        }
    }
    let text =
        r#"{"name":"a","form":{"taper":{"length":"120 mm","to":{"square":"4 mm"}}},"bend":{"twist":{"turns":2}}}"#;
    check_plan(text, &plan(text));
}

#[test]
fn every_scroll_is_closed_and_holds_its_metal() {
    let runs = [("even", "0 mm"), ("even", "7 mm"), ("opening", "8 mm")];
    for (index, section) in SECTIONS.into_iter().enumerate() {
        for (eye, side) in [("start", "0 deg"), ("end", "90 deg")] {
            let (run, inner) = runs[(index + eye.len()) % 3];
            let bend = format!(
                r#""bend":{{"scroll":{{"inner_radius":"{inner}","outer_radius":"60 mm","turns":1.5,"run":"{run}","eye":"{eye}","side":"{side}"}}}}"#
            );
            // Where the eye winds tighter than the metal is thick the solid runs into itself; its metal is reckoned all the same.
            let text = format!(r#"{{"name":"a","form":{{"drawn":{{"section":{section}}}}},{bend}}}"#);
            check_plan(&text, &plan(&text));
            let text =
                format!(r#"{{"name":"a","form":{{"taper":{{"to":{section},"runout":{{"power":0.7}}}}}},{bend}}}"#);
            check_plan(&text, &plan(&text));
        }
    }
}

#[test]
fn ends_and_collars_hold_their_metal() {
    for section in SECTIONS {
        for rule in ["butted", "lapped"] {
            let text = format!(
                r#"{{"name":"c","form":{{"collar":{{"section":{section},"width":"24 mm","height":"12 mm","rule":"{rule}"}}}}}}"#
            );
            check_plan(&text, &plan(&text));
        }
    }
    let text = r#"{"name":"r","form":{"rivet":{"diameter":"6 mm","grip":"10 mm","allowance":"9 mm"}}},
        {"name":"t","form":{"tenon":{"section":{"round":"8 mm"},"grip":"10 mm","allowance":"0 mm"}}},
        {"name":"w","form":{"weld":{"allowance":"12 mm"}}}"#;
    check_plan(text, &plan(text));
}

/// Two tines, the second bent and pointed.
const TINES: &str = r#"{"name":"first","segments":[{"name":"a","form":{"drawn":{"length":"60 mm","section":{"round":"6 mm"}}}},
        {"name":"b","form":{"taper":{"length":"30 mm","to":"point"}}}]},
    {"name":"second","segments":[{"name":"c","form":{"drawn":{"section":{"round":"7 mm"}}},
        "bend":{"curve":{"angle":"40 deg","inside_radius":"30 mm","side":"90 deg"}}},
        {"name":"d","form":{"drawn":{"length":"40 mm","section":{"square":"5 mm"}}}}]}"#;

#[test]
fn branches_hang_on_the_bar_side_by_side() {
    let plain = r#"{"name":"p","form":{"plain":{"length":"50 mm"}}}"#;
    let split = format!(r#"{{"name":"s","form":{{"split":{{"branches":[{TINES}]}}}}}}"#);
    let far = plan(&format!("{plain},{split}"));
    check_plan("tines at the far end", &far);
    let balanced = balance(&far);
    let made = piece(&far, &balanced, Quality::Print);
    let Some(Shape::Split(size)) = &balanced.bars[0].segments[1].shape else { panic!("no split") };
    for (segment, branch) in [(2, 0), (4, 1)] {
        let root = made.line(0, segment).unwrap().frames[0];
        // The first branch lies away from the smith, as y does.
        let want = size.branches[branch].offset.get::<uom::si::length::millimeter>();
        assert!(
            (root.at[0] - 50.0).abs() < 1e-12 && (root.at[1] - want).abs() < 1e-12 && root.at[2].abs() < 1e-12,
            "{root:?}"
        );
    }
    let datum = plan(&format!("{split},{plain}"));
    check_plan("tines at the datum end", &datum);
    let balanced = balance(&datum);
    let made = piece(&datum, &balanced, Quality::Print);
    let bar = made.line(0, 5).unwrap().frames[0];
    for last in [2, 4] {
        let end = *made.line(0, last).unwrap().frames.last().unwrap();
        assert!((end.at[0] - bar.at[0]).abs() < 1e-9 && (end.along[0] - 1.0).abs() < 1e-12, "{end:?} {bar:?}");
    }
}

/// A branch of one round rod.
fn rod(name: &str) -> String {
    format!(
        r#"{{"name":"{name}","segments":[{{"name":"{name}","form":{{"drawn":{{"length":"95.6 mm","section":{{"round":"6 mm"}}}}}}}}]}}"#
    )
}

#[test]
fn a_basket_bows_its_rods_apart_and_the_bar_goes_on() {
    for (rods, turns) in
        [(vec![rod("a"), rod("b")], ""), (vec![rod("a"), rod("b"), rod("c"), rod("d")], r#","turns":0.5"#)]
    {
        let text = format!(
            r#"{{"name":"p","form":{{"plain":{{"length":"20 mm"}}}}}},
                {{"name":"s","form":{{"split":{{"branches":[{}],"opening":{{"width":"36 mm"{turns}}}}}}}}},
                {{"name":"q","form":{{"plain":{{"length":"20 mm"}}}}}}"#,
            rods.join(",")
        );
        let plan = plan(&text);
        check_plan(&text, &plan);
        let balanced = balance(&plan);
        let made = piece(&plan, &balanced, Quality::Print);
        let height = balanced.bars[0].segments[1].forged_length.get::<uom::si::length::millimeter>();
        let after = made.lines.last().unwrap().frames[0];
        assert!((after.at[0] - 20.0 - height).abs() < 1e-9 && after.at[1].abs() < 1e-9, "{after:?}");
        let rod = &made.lines[1].frames;
        let widest = rod.iter().map(|frame| frame.at[1].hypot(frame.at[2])).fold(0.0, f64::max);
        assert!((widest - 18.0).abs() < 0.01, "{widest}");
    }
}

#[test]
fn the_bar_behind_a_basket_is_rolled_as_its_rods_are() {
    for turns in [0.15, -0.15] {
        let plan = plan(&format!(
            r#"{{"name":"p","form":{{"plain":{{"length":"20 mm"}}}}}},
                {{"name":"s","form":{{"split":{{"branches":[{},{}],"side":"0 deg","opening":{{"width":"36 mm","turns":{turns}}}}}}}}},
                {{"name":"q","form":{{"plain":{{"length":"20 mm"}}}}}}"#,
            rod("a"),
            rod("b")
        ));
        let made = piece(&plan, &balance(&plan), Quality::Print);
        let (rod, bar) = (made.line(0, 2).unwrap(), made.line(0, 4).unwrap());
        let (end, start) = (rod.frames.last().unwrap(), bar.frames[0]);
        // The first rod lies on the bar's upper half: where the bar goes on, it still does.
        let off: Vec<f64> = (0..3).map(|axis| end.at[axis] - start.at[axis]).collect();
        let up: f64 = (0..3).map(|axis| off[axis] * start.up[axis]).sum();
        let reach = off.iter().map(|part| part * part).sum::<f64>().sqrt();
        assert!(reach > 1.0 && (up - reach).abs() < 1e-9, "{turns}: {off:?} and {start:?}");
    }
}

#[test]
fn a_branch_may_be_split_again() {
    let inner = format!(r#"{{"name":"t","form":{{"split":{{"branches":[{TINES}],"side":"0 deg"}}}}}}"#);
    let leg = r#"{"name":"l","form":{"drawn":{"length":"30 mm","section":"stock"}}}"#;
    let outer = |segments: String| {
        format!(
            r#"{{"name":"s","form":{{"split":{{"branches":[{{"name":"one","segments":[{segments}]}},{{"name":"two","segments":[{leg}]}}]}}}}}}"#
        )
    };
    let plain = r#"{"name":"p","form":{"plain":{"length":"50 mm"}}}"#;
    let text = format!("{plain},{}", outer(format!("{leg},{inner}")));
    check_plan(&text, &plan(&text));
    let text = format!("{},{plain}", outer(format!("{inner},{leg}")));
    check_plan(&text, &plan(&text));
}

#[test]
fn finials_are_round_and_square() {
    let text = r#"{"name":"b","form":{"ball":{"diameter":"20 mm"}}},{"name":"c","form":{"cube":{"side":"15 mm"}}}"#;
    check_plan(text, &plan(text));
}

#[test]
fn what_is_trimmed_or_held_is_no_part_of_the_piece() {
    let text = r#"{"name":"t","form":{"trim":{"length":"20 mm"}}},{"name":"p","form":{"plain":{"length":"30 mm"}}},
        {"name":"h","form":{"hold":{"length":"100 mm"}}}"#;
    let plan = plan(text);
    let piece = piece(&plan, &balance(&plan), Quality::Print);
    let bounds = piece.bounds().unwrap();
    assert_eq!((bounds.low, bounds.high), ([0.0, -6.0, -6.0], [30.0, 6.0, 6.0]));
    assert_eq!(piece.solids.len(), 1);
}

#[test]
fn another_program_reckons_the_same_metal() {
    // trimesh 5.2.0 (PyPI), on the demos' solids at print quality written as OBJ: each is_watertight, and volume added up.
    let reckoned = [
        ("draw-hoe", 107_775.660_5),
        ("herb-bracket", 75_213.650_2),
        ("weeding-fork", 70_873.380_3),
        ("cloche-lifter", 52_535.305_2),
        ("bean-frame", 1_209_826.700_1),
        ("gate-hook", 36_722.593_4),
    ];
    for (name, want) in reckoned {
        let path = format!("{}/../../demo-plans/{name}.plan.json", env!("CARGO_MANIFEST_DIR"));
        let plan = file::read(&std::fs::read(path).unwrap()).unwrap();
        let piece = piece(&plan, &balance(&plan), Quality::Print);
        let got: f64 = piece.solids.iter().map(|solid| solid.mesh.volume_mm3()).sum();
        assert!((got / want - 1.0).abs() < 1e-4, "{name}: {got} where {want} is right");
    }
}

/// A bend toward the smith comes toward the smith, and a twist of more than 0 turns winds as a right-handed screw does.
#[test]
fn the_piece_is_not_seen_as_in_a_mirror() {
    let bend = r#"{"name":"b","form":{"plain":{}},"bend":{"curve":{"angle":"90 deg","inside_radius":"30 mm","side":"90 deg"}}}"#;
    let bent = plan(bend);
    let end = *piece(&bent, &balance(&bent), Quality::Print).line(0, 0).unwrap().frames.last().unwrap();
    assert!(end.at[1] < -30.0 && end.along[1] < -0.99, "y runs away from the smith: {end:?}");
    let twist = r#"{"name":"t","form":{"plain":{"length":"100 mm"}},"bend":{"twist":{"turns":0.25}}}"#;
    let twisted = plan(twist);
    let line = piece(&twisted, &balance(&twisted), Quality::Print).line(0, 0).unwrap().clone();
    let (start, end) = (line.frames[0], line.frames.last().unwrap());
    // Seen along the bar, from the datum end, up goes over to the right, where the smith's side is: clockwise and onward.
    assert!((start.up[2] - 1.0).abs() < 1e-9 && (end.up[1] + 1.0).abs() < 1e-9, "{start:?} {end:?}");
}
