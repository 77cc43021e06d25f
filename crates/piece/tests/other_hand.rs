//! The other hand of a plan is the piece as a mirror shows it, and takes the same bar.

#![allow(clippy::unwrap_used, reason = "tests")]

use fh_core::balance::balance;
use fh_core::edit::{Edit, WholeChange};
use fh_core::file;
use fh_core::joints::joined;
use fh_core::plan::{Form, Plan};
use fh_core::space::vector::{cross, dot, length, minus, plus, times};
use fh_piece::{Mesh, Piece, Quality, piece};

fn other_hand(plan: &Plan) -> Plan {
    Edit::Whole(WholeChange::OtherHand).applied(plan).unwrap().0
}

fn made(plan: &Plan) -> Piece {
    piece(plan, &balance(plan), Quality::Screen)
}

/// What hangs together: each copy of a bar, and the copies that a joint holds.
fn groups(plan: &Plan, piece: &Piece) -> Vec<Vec<(usize, u32)>> {
    let joints = joined(plan).into_iter();
    let held = joints.map(|joint| joint.members.iter().map(|member| (member.bar, member.copy)).collect());
    let copies = piece.lines.iter().map(|line| vec![(line.bar, line.copy)]);
    held.chain(copies).collect()
}

/// Places of some copies of bars: those of their lines and the middles of their solids. A collar's own line is left out: its
/// strip may run round the bundle either way.
fn places(plan: &Plan, piece: &Piece, of: &[(usize, u32)]) -> Vec<[f64; 3]> {
    let is_collar = |bar, segment| matches!(plan.segment(bar, segment).unwrap().form, Form::Collar(_));
    let lines = piece.lines.iter().filter(|line| of.contains(&(line.bar, line.copy)));
    let frames = lines.filter(|line| !is_collar(line.bar, line.segment)).flat_map(|line| line.frames.iter());
    let tips = frames.flat_map(|frame| [frame.at, frame.place([0.0, 0.0, 7.0])]);
    let solids = piece.solids.iter().filter(|solid| of.contains(&(solid.bar, solid.copy)));
    tips.chain(solids.map(|solid| middle(&solid.mesh))).collect()
}

/// The middle of the metal in a mesh.
fn middle(mesh: &Mesh) -> [f64; 3] {
    let parts = mesh
        .corners()
        .map(|[a, b, c]| (dot(a, cross(b, c)), [0, 1, 2].map(|axis| (a[axis] + b[axis] + c[axis]) / 4.0)));
    let (volume, sum) =
        parts.fold((0.0, [0.0; 3]), |(volume, sum), (part, at)| (volume + part, plus(sum, times(at, part))));
    times(sum, 1.0 / volume)
}

/// Whether places are others as a mirror shows them, wherever and however that stands: as far from each other, and turned the
/// other way round.
fn is_mirrored(was: &[[f64; 3]], now: &[[f64; 3]]) -> bool {
    let step = (was.len() / 40).max(1);
    let all: Vec<usize> = (0..was.len()).step_by(step).collect();
    let from = |of: &[[f64; 3]], at: usize| minus(of[at], of[0]);
    all.iter().all(|a| {
        all.iter().all(|b| {
            let far = |of: &[[f64; 3]]| length(minus(of[*a], of[*b]));
            let [c, d] = [(a + 3 * step).min(was.len() - 1), (b + 7 * step).min(was.len() - 1)];
            let size = |of: &[[f64; 3]]| [*a, *b, c].iter().map(|at| length(from(of, *at)).max(1.0)).product::<f64>();
            let turn = |of: &[[f64; 3]]| dot(from(of, *a), cross(from(of, *b), plus(from(of, c), from(of, d))));
            (far(was) - far(now)).abs() < 0.1 && (turn(was) + turn(now)).abs() < 1e-3 * size(was)
        })
    })
}

fn check(what: &str, plan: &Plan) {
    let other = other_hand(plan);
    let [was, now] = [plan, &other].map(balance);
    for (was, now) in was.bars.iter().zip(&now.bars) {
        for (was, now) in was.segments.iter().zip(&now.segments) {
            assert!((was.mark_end - now.mark_end).value.abs() < 1e-9, "{what}: a mark moved");
        }
    }
    let [was, now] = [plan, &other].map(made);
    assert_eq!(was.lines.len(), now.lines.len(), "{what}");
    for group in groups(plan, &was) {
        let [was, now] = [(plan, &was), (&other, &now)].map(|(plan, piece)| places(plan, piece, &group));
        assert!(is_mirrored(&was, &now), "{what}: {group:?} is not mirrored");
    }
    assert_eq!(made(&other_hand(&other)).bounds(), was.bounds(), "{what}: twice mirrored is the piece again");
}

#[test]
fn the_other_hand_of_every_demo_is_its_mirror_image() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo-plans");
    let mut handed = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|ending| ending == "json") {
            let plan = file::read(&std::fs::read(&path).unwrap()).unwrap();
            check(&path.display().to_string(), &plan);
            handed += usize::from(other_hand(&plan) != plan);
        }
    }
    assert!(handed >= 3, "some of them have a hand");
}

/// A plate whose base line lies nearer to one edge, one with a hole beside its base line, a groove along the side toward you, a corner cut off the side toward you, a branch toward you, a shoulder on
/// one side, a corner bent toward you, a twist: each alone shows its hand.
#[test]
fn what_has_a_hand_of_its_own_changes_it() {
    for segments in [
        r#"{"form":{"flag":{"outline":{"rectangle":{"length":"40 mm","width":"20 mm"}},"thickness":"4 mm",
            "blank":{"rectangle":{"length":"44 mm","width":"30 mm"}},"base_line":{"outline":"5 mm","blank":"9 mm"}}}}"#,
        r#"{"form":{"flag":{"outline":{"polygon":[["0 mm","-6 mm"],["40 mm","-6 mm"],{"arc":"60 deg"},["40 mm","20 mm"],
            ["0 mm","6 mm"]]},"thickness":"4 mm"}}}"#,
        r#"{"form":{"flag":{"outline":{"rectangle":{"length":"40 mm","width":"30 mm"}},"thickness":"4 mm",
            "holes":[{"hole":{"round":"8 mm"},"made":"drilled","at":"12 mm","across":"6 mm"}]}}}"#,
        r#"{"form":{"plain":{"length":"60 mm"}},"dressed":[{"die":{"fuller":{"radius":"3 mm"}},"side":"90 deg","depth":"2 mm"}]}"#,
        r#"{"form":{"split":{"side":"90 deg","branches":[{"segments":[{"form":{"drawn":{"length":"60 mm",
            "section":{"round":"7 mm"}}},"bend":{"curve":{"angle":"60 deg","inside_radius":"20 mm","side":"90 deg"}}}]},
            {"segments":[{"form":{"drawn":{"length":"40 mm","section":{"round":"6 mm"}}}}]}]}}}"#,
        r#"{"form":{"shoulder":{"to":{"square":"9 mm"},"radius":"2 mm","sides":[90]}}},
           {"form":{"drawn":{"length":"30 mm","section":"same"}}}"#,
        r#"{"form":{"peak":{"section":"stock"}},"bend":{"corner":{"angle":"90 deg","inside_radius":"4 mm","side":"1/4 turn"}}}"#,
        r#"{"form":{"plain":{"length":"80 mm"}},"bend":{"twist":{"turns":1.25}}},
           {"form":{"plain":{"length":"40 mm"}},"bend":{"curve":{"angle":"90 deg","inside_radius":"15 mm"}}}"#,
    ] {
        let text = format!(
            r#"{{"firstheat":1,"title":"test","units":{{"length":"mm","marks":"1 mm"}},"bars":[{{"name":"bar",
            "stock":{{"square":"12 mm"}},"segments":[{{"form":{{"plain":{{"length":"50 mm"}}}}}},{segments}]}}]}}"#
        );
        let plan = file::read(text.as_bytes()).unwrap();
        assert_ne!(other_hand(&plan), plan, "{segments}");
        check(segments, &plan);
    }
}
