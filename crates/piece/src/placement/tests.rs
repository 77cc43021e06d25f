//! Bars come to where their joints put them.

#![allow(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::make::apart;
use crate::{Quality, piece};
use fh_core::balance::balance;
use fh_core::file;
use fh_core::space::vector::{cross, dot, length, minus, plus, times};

/// A ring of flat with three bosses, legs with a tenon, and more; `joints` is the list.
fn plan(joints: &str) -> Plan {
    let boss = |name: &str| {
        format!(
            r#"{{ "name": "{name}", "form": {{ "hole": {{ "outline": {{ "disc": {{ "diameter": "30 mm" }} }}, "thickness": "8 mm",
                "hole": {{ "round": "10.2 mm" }}, "made": "drifted" }} }} }}"#
        )
    };
    let arc = |name: &str| {
        format!(
            r#"{{ "name": "{name}", "form": {{ "plain": {{}} }},
                "bend": {{ "curve": {{ "angle": "100 deg", "inside_radius": "80 mm", "side": "90 deg" }} }} }}"#
        )
    };
    let bars = [
        format!(
            r#"{{ "name": "ring", "stock": {{ "flat": {{ "width": "20 mm", "thickness": "8 mm" }} }},
                "segments": [{}, {}, {}, {}, {}] }}"#,
            boss("boss 1"),
            arc("arc 1"),
            boss("boss 2"),
            arc("arc 2"),
            boss("boss 3")
        ),
        r#"{ "name": "leg", "count": 3, "stock": { "square": "14 mm" }, "segments": [
            { "name": "tenon", "form": { "tenon": { "section": { "round": "10 mm" }, "grip": "8 mm", "allowance": "15 mm" } } },
            { "name": "shank", "form": { "plain": { "length": "150 mm" } } },
            { "name": "foot", "form": { "taper": { "to": { "flat": { "width": "14 mm", "thickness": "5 mm" } } } },
              "bend": { "curve": { "angle": "120 deg", "inside_radius": "15 mm" } } } ] }"#
            .to_owned(),
        r#"{ "name": "pins", "stock": { "round": "10 mm" }, "segments": [
            { "name": "rivet", "form": { "rivet": { "diameter": "10 mm", "grip": "16 mm", "allowance": "15 mm" } } } ] }"#
            .to_owned(),
        format!(
            r#"{{ "name": "strap", "stock": {{ "flat": {{ "width": "20 mm", "thickness": "8 mm" }} }}, "segments": [{},
                {{ "name": "tail", "form": {{ "plain": {{ "length": "60 mm" }} }} }} ] }}"#,
            boss("lug")
        ),
        r#"{ "name": "band", "stock": { "flat": { "width": "15 mm", "thickness": "3 mm" } }, "segments": [
            { "name": "collar", "form": { "collar": { "section": "stock", "width": "20 mm", "height": "22 mm" } } } ] }"#
            .to_owned(),
        r#"{ "name": "hanger", "stock": { "round": "8 mm" }, "segments": [
            { "name": "eye", "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "24 mm" } } } ] }"#
            .to_owned(),
    ];
    let text = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{}], "joints": [{joints}] }}"#,
        bars.join(", ")
    );
    file::read(text.as_bytes()).unwrap()
}

struct Put {
    local: Piece,
    placed: Placements,
}

impl Put {
    fn new(joints: &str) -> Self {
        let plan = plan(joints);
        let balance = balance(&plan);
        let local = apart(&plan, &balance, Quality::Screen);
        let placed = placements(&plan, &balance, &local);
        Self { local, placed }
    }

    fn frame(&self, bar: usize, copy: u32) -> Frame {
        self.placed.copies.iter().find(|place| place.bar == bar && place.copy == copy).unwrap().frame
    }

    /// A line's first or last frame as it is placed.
    fn end(&self, (bar, copy): (usize, u32), segment: usize, last: bool) -> Frame {
        let frames = &self.local.line(bar, segment).unwrap().frames;
        self.frame(bar, copy).carry(if last { frames.last().unwrap() } else { frames.first().unwrap() })
    }
}

fn near(got: [f64; 3], want: [f64; 3]) {
    assert!(length(minus(got, want)) < 1e-9, "{got:?} where {want:?} is right");
}

/// Halfway between the ends of the straight boss with this number.
fn boss_middle(put: &Put, segment: usize) -> Frame {
    let (start, end) = (put.end((0, 0), segment, false), put.end((0, 0), segment, true));
    Frame { at: times(plus(start.at, end.at), 0.5), ..start }
}

const LEG: &str = r#"{ "kind": "tenon", "fixed": { "bar": "ring", "segment": "boss 2", "side": "180 deg" },
    "moved": [{ "bar": "leg", "copy": 2, "segment": "tenon" }] }"#;

#[test]
fn a_tenon_has_its_shoulder_on_the_face_and_its_axis_in_the_hole() {
    let put = Put::new(LEG);
    let boss = boss_middle(&put, 2);
    // The tenon is the bar's first segment: its shoulder is at its other end.
    let (tip, shoulder) = (put.end((1, 1), 0, false), put.end((1, 1), 0, true));
    near(shoulder.at, plus(boss.at, times(boss.up, -4.0)));
    near(shoulder.along, times(boss.up, -1.0));
    near(cross(minus(tip.at, boss.at), boss.up), [0.0; 3]);
    assert!(dot(minus(tip.at, boss.at), boss.up) > 4.0, "the tip comes out on the other side");
    near(shoulder.up, boss.along);
}

#[test]
fn a_turn_is_about_the_tenon() {
    let put = Put::new(&LEG.replace(r#""segment": "tenon""#, r#""segment": "tenon", "turn": "90 deg""#));
    let (straight, boss) = (Put::new(LEG), boss_middle(&put, 2));
    near(put.end((1, 1), 0, true).at, straight.end((1, 1), 0, true).at);
    near(put.end((1, 1), 0, true).up, cross(times(boss.up, -1.0), boss.along));
}

#[test]
fn the_member_that_is_placed_may_be_the_first_bar() {
    // The ring stays, wherever the joint says that the leg does.
    let joint = r#"{ "kind": "tenon", "fixed": { "bar": "leg", "segment": "tenon" },
        "moved": [{ "bar": "ring", "segment": "boss 2", "side": "180 deg" }] }"#;
    let (put, boss) = (Put::new(joint), boss_middle(&Put::new(joint), 2));
    assert_eq!(put.frame(0, 0), Frame::START);
    near(put.end((1, 0), 0, true).at, plus(boss.at, times(boss.up, -4.0)));
}

#[test]
fn a_rivet_goes_through_the_parts_that_lie_on_each_other() {
    let put = Put::new(
        r#"{ "kind": "rivet", "fixed": { "bar": "ring", "segment": "boss 1" },
             "moved": [{ "bar": "strap", "segment": "lug", "side": "180 deg", "turn": "30 deg" }, { "bar": "pins", "segment": "rivet" }] }"#,
    );
    let boss = boss_middle(&put, 0);
    let (start, end) = (put.end((3, 0), 0, false), put.end((3, 0), 0, true));
    near(times(plus(start.at, end.at), 0.5), plus(boss.at, times(boss.up, 8.0)));
    near(start.up, boss.up);
    assert!((dot(start.along, boss.along) - 30.0_f64.to_radians().cos()).abs() < 1e-9);
    let (foot, head) = (put.end((2, 0), 0, false), put.end((2, 0), 0, true));
    near(times(plus(foot.at, head.at), 0.5), plus(boss.at, times(boss.up, 4.0)));
    near(foot.along, boss.up);
}

#[test]
fn a_collar_lies_round_its_bundle() {
    let put = Put::new(
        r#"{ "kind": "collar", "fixed": { "bar": "strap", "segment": "tail", "at": "20 mm" },
             "moved": [{ "bar": "leg", "segment": "shank", "side": "180 deg" }, { "bar": "band", "segment": "collar" }] }"#,
    );
    let tail = put.end((3, 0), 1, false);
    let shank = put.end((1, 0), 1, false);
    near(shank.along, tail.along);
    assert!((dot(minus(shank.at, tail.at), tail.up) - 11.0).abs() < 1e-9);
    // 8 mm and 14 mm on each other: the bundle runs from 4 mm below the strap's middle to 18 mm above it.
    let collar = put.end((4, 0), 0, false);
    near(collar.at, tail.place([20.0, 0.0, -4.0 - 1.5]));
    near(collar.along, tail.toward);
}

#[test]
fn welded_ends_meet_face_to_face() {
    let put = Put::new(
        r#"{ "kind": "weld", "fixed": { "bar": "strap", "segment": "tail", "side": "end" },
             "moved": [{ "bar": "leg", "segment": "foot", "side": "end" }] }"#,
    );
    let (tail, foot) = (put.end((3, 0), 1, true), put.end((1, 0), 2, true));
    near(tail.at, foot.at);
    near(tail.along, times(foot.along, -1.0));
    near(tail.up, foot.up);
}

#[test]
fn a_pin_hangs_in_the_middle_of_its_eye() {
    let put = Put::new(
        r#"{ "kind": "hook", "fixed": { "bar": "hanger", "segment": "eye" },
             "moved": [{ "bar": "leg", "segment": "shank", "at": "0 mm" }] }"#,
    );
    // A ring of 8 mm round bar, 24 mm inside, bent upward: its middle is 16 mm above its start.
    let (start, shank) = (put.end((5, 0), 0, false), put.end((1, 0), 1, false));
    near(shank.at, start.place([0.0, 0.0, 16.0]));
    assert!(dot(shank.along, start.toward).abs() > 1.0 - 1e-9);
}

#[test]
fn what_no_joint_reaches_is_laid_beside() {
    let plan = plan(LEG);
    let piece = piece(&plan, &balance(&plan), Quality::Screen);
    let bounds = |bars: &[usize]| {
        let solids = piece.solids.iter().filter(|solid| bars.contains(&solid.bar));
        solids.filter_map(|solid| solid.mesh.bounds()).reduce(|all, next| all.with(&next)).unwrap()
    };
    let groups = [bounds(&[0, 1]), bounds(&[2]), bounds(&[3]), bounds(&[4]), bounds(&[5])];
    for pair in groups.windows(2) {
        // Each nearer to the smith than the one before it.
        assert!(pair[1].high[1] < pair[0].low[1] - 1.0, "{pair:?}");
    }
    // Of the three legs only the one that is joined is shown.
    assert!(piece.lines.iter().filter(|line| line.bar == 1).all(|line| line.copy == 1));
}

#[test]
fn a_joint_that_closes_a_loop_tells_how_far_it_misses() {
    let weld = |segment: &str, at: &str| {
        format!(
            r#"{{ "kind": "weld", "fixed": {{ "bar": "strap", "segment": "tail" }},
                "moved": [{{ "bar": "leg", "segment": "{segment}", "at": "{at}", "side": "180 deg" }}] }}"#
        )
    };
    let put = Put::new(&format!("{}, {}", weld("shank", "75 mm"), weld("shank", "85 mm")));
    let [closed] = put.placed.loops.as_slice() else { panic!("{:?}", put.placed.loops) };
    assert!(closed.joint == 1 && (closed.gap_mm - 10.0).abs() < 1e-9, "{closed:?}");
}

#[test]
fn the_pot_stand_stands_on_its_three_legs() {
    let text = include_bytes!("../../../../demo-plans/pot-stand.plan.json");
    let plan = file::read(text).unwrap();
    let balance = balance(&plan);
    let piece = piece(&plan, &balance, Quality::Screen);
    assert_eq!(crate::overlaps(&plan, &balance, &piece), []);
    let low = |copy: u32| {
        let solids = piece.solids.iter().filter(|solid| solid.bar == 1 && solid.copy == copy);
        solids.filter_map(|solid| solid.mesh.bounds()).map(|bounds| bounds.low[2]).fold(f64::INFINITY, f64::min)
    };
    let [first, second, third] = [0, 1, 2].map(low);
    assert!(
        (first - second).abs() < 1e-9 && (first - third).abs() < 1e-9 && first < -150.0,
        "{first} {second} {third}"
    );
}
