//! Plates cut to shape, by hand: a blank, its base line, corners with arcs, zones without a neck, and a plate that is bent.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use fh_core::forms::Flag;
use fh_core::plan::{Bend, Bulges, Form, OutlineSpec};

/// At a plate of 70 × 40 mm, added after the shank.
fn at_a_plate() -> Desk {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.press("Add part after");
    desk.press("Flag");
    desk.choose("Outline", "rectangle");
    desk.type_in("Length", "70");
    desk.type_in("Width", "40");
    desk.type_in("Thickness", "4");
    desk
}

fn plate(desk: &Desk) -> &Flag {
    let Form::Flag(flag) = &desk.plan().bars[0].segments[2].form else { panic!("a plate") };
    flag
}

/// The metal on the bar of the plate, in mm³: of a bar of 12 mm square.
fn metal(desk: &Desk) -> f64 {
    let segment = &desk.editor().balance().bars[0].segments[2];
    segment.stock_length.value * 1000.0 * 144.0 * (1.0 - segment.scale_share)
}

fn near(got: f64, want: f64) {
    assert!((got - want).abs() < 1e-6 * want.abs().max(1.0), "{got} where {want} is right");
}

#[test]
fn a_plate_is_given_a_blank_and_takes_its_metal() {
    let mut desk = at_a_plate();
    let before = desk.plan().clone();
    near(metal(&desk), 70.0 * 40.0 * 4.0);
    desk.choose("Blank", "rectangle");
    assert_eq!(plate(&desk).blank.as_ref().map(OutlineSpec::describe).as_deref(), Some("rectangle 70 mm × 40 mm"));
    desk.type_in("Length of the blank", "80");
    desk.type_in("Width of the blank", "45");
    near(metal(&desk), 80.0 * 45.0 * 4.0);
    // The outline's edge lies 20 mm from its middle; off its blank by 5 at one side, it runs out of it.
    desk.type_in("Base line from the edge of the blank", "15");
    assert!(desk.editor().balance().findings.iter().any(|finding| finding.id == "outline-out-of-blank"));
    desk.type_in("Base line from the edge of the outline", "15");
    assert!(desk.editor().balance().findings.iter().all(|finding| finding.id != "outline-out-of-blank"));
    desk.choose("Blank", "none");
    assert!(plate(&desk).blank.is_none());
    while desk.plan() != &before {
        let now = desk.plan().clone();
        desk.press("Undo");
        assert_ne!(desk.plan(), &now, "undo goes all the way back");
    }
}

#[test]
fn a_corner_is_made_round_and_a_hollow() {
    let mut desk = at_a_plate();
    desk.choose("Outline", "polygon");
    let area = |desk: &Desk| metal(desk) / 4.0;
    near(area(&desk), 2800.0);
    // The tip, 40 mm wide, from its second corner to its third: half round.
    desk.choose("Add an arc", "from 2 to 3");
    desk.type_in("Arc from corner 2 to 3", "180");
    near(area(&desk), 2800.0 + std::f64::consts::PI * 200.0);
    desk.choose("Which way the arc from corner 2 bulges", "in, a hollow");
    near(area(&desk), 2800.0 - std::f64::consts::PI * 200.0);
    let OutlineSpec::Polygon(corners) = &plate(&desk).outline else { panic!("by its corners") };
    assert_eq!(corners.0[1].arc.as_ref().map(|arc| arc.bulges), Some(Bulges::In));
    desk.choose("Which way the arc from corner 2 bulges", "no arc");
    near(area(&desk), 2800.0);
}

#[test]
fn a_plate_is_bent_to_a_curve_and_keeps_its_length() {
    let mut desk = at_a_plate();
    desk.choose("Bend", "curve");
    desk.type_in("Angle of the curve", "90");
    let Some(Bend::Curve { angle: Some(_), inside_radius: None, .. }) = &desk.plan().bars[0].segments[2].bend else {
        panic!("{:?}", desk.plan().bars[0].segments[2].bend)
    };
    // 70 mm through a right angle, 4 mm thick: 70 / (π/2) - 2.
    let radius = desk.editor().balance().bars[0].segments[2].derived_length(fh_core::plan::SizeName::InsideRadius);
    near(radius.unwrap().value * 1000.0, 70.0 / std::f64::consts::FRAC_PI_2 - 2.0);
    assert!(desk.editor().balance().findings.iter().all(|finding| finding.severity.name() != "stop"));
}

#[test]
fn a_second_plate_is_joined_to_the_first_without_a_neck() {
    let mut desk = at_a_plate();
    desk.press("Add part after");
    desk.press("Flag");
    desk.choose("How the plate begins", "in one plate with the part before");
    let Form::Flag(second) = &desk.plan().bars[0].segments[3].form else { panic!("a plate") };
    assert!(second.joined);
    // A leaf runs out to a point where the plate before is 40 mm wide.
    assert!(desk.editor().balance().findings.iter().any(|finding| finding.id == "plate-steps"));
    desk.choose("Outline", "rectangle");
    desk.type_in("Width", "40");
    desk.type_in("Thickness", "4");
    assert!(desk.editor().balance().findings.iter().all(|finding| finding.id != "plate-steps"));
}

/// Presses a button that may lie below the fold.
fn press(desk: &mut Desk, name: &str) {
    desk.harness.get_by_role_and_label(Role::Button, name).scroll_to_me();
    desk.harness.run();
    desk.press(name);
}

#[test]
fn holes_are_put_through_a_plate_and_taken_out_again() {
    let mut desk = at_a_plate();
    let before = desk.plan().clone();
    press(&mut desk, "Add a hole");
    press(&mut desk, "Add a hole");
    assert_eq!(plate(&desk).holes.len(), 2);
    assert!(desk.editor().balance().findings.iter().all(|finding| finding.id != "thin-wall"));
    desk.type_in("Diameter of hole 2", "8");
    desk.type_in("Middle of hole 2, from the root", "50");
    desk.type_in("Middle of hole 2 across, away from you from the base line", "-9");
    let hole = &plate(&desk).holes[1];
    let across = hole.across.as_ref().map(fh_measure::WrittenLength::mm);
    assert_eq!((hole.hole.describe().as_str(), hole.at.mm(), across), ("Ø 8 mm", 50.0, Some(-9.0)));
    // Drilled, both are on the bar; drifted, the second is not: π/4 × 8² × 4 less.
    near(metal(&desk), 70.0 * 40.0 * 4.0);
    desk.choose("How hole 2 is made", "slit and drifted");
    near(metal(&desk), 70.0 * 40.0 * 4.0 - std::f64::consts::PI * 16.0 * 4.0);
    desk.type_in("Middle of hole 2 across, away from you from the base line", "18");
    assert!(desk.editor().balance().findings.iter().any(|finding| finding.id == "hole-too-large"));
    press(&mut desk, "Take hole 2 out");
    press(&mut desk, "Take hole 1 out");
    assert_eq!(desk.plan(), &before);
}

/// At that plate with two holes, the second at 50 mm and 9 mm toward you.
fn with_holes() -> Desk {
    let mut desk = at_a_plate();
    desk.press("Top view");
    press(&mut desk, "Add a hole");
    press(&mut desk, "Add a hole");
    desk.type_in("Middle of hole 2, from the root", "50");
    desk.type_in("Middle of hole 2 across, away from you from the base line", "-9");
    desk
}

/// Where the middle of a hole of it lies: along and across.
fn middle(desk: &Desk, hole: usize) -> [f64; 2] {
    let hole = &plate(desk).holes[hole];
    [hole.at.mm(), hole.across.as_ref().map_or(0.0, fh_measure::WrittenLength::mm)]
}

/// On half a millimetre.
fn is_round(mm: f64) -> bool {
    (mm * 2.0 - (mm * 2.0).round()).abs() < 1e-9
}

#[test]
fn a_hole_is_dragged_along_and_across_its_plate_as_one_step() {
    let mut desk = with_holes();
    let before = desk.plan().clone();
    let other = middle(&desk, 0);
    // To the left and up: toward the root and away from you.
    desk.drag_by("Hole 2 of flag", egui::vec2(-16.0, -11.0));
    let [along, across] = middle(&desk, 1);
    assert!(along < 49.0 && across > -8.0, "{along} {across}");
    assert!(is_round(along) && is_round(across), "{along} {across}");
    assert_eq!(middle(&desk, 0), other);
    desk.keys(egui::Modifiers::COMMAND, egui::Key::Z);
    assert_eq!(*desk.plan(), before);
    desk.drag_and_escape("Hole 2 of flag", egui::vec2(-16.0, -11.0));
    assert_eq!(*desk.plan(), before);
    // Straight along, what is across stays as it was typed.
    desk.drag("Hole 2 of flag", 12.0);
    assert!(middle(&desk, 1)[0] > 50.0);
    assert_eq!(plate(&desk).holes[1].across, {
        let Form::Flag(flag) = &before.bars[0].segments[2].form else { panic!("a plate") };
        flag.holes[1].across.clone()
    });
}

#[test]
fn the_place_of_a_hole_is_typed_on_the_drawing() {
    let mut desk = with_holes();
    desk.press("Hole 2 of flag");
    desk.press("Figure: Middle of hole 2 of flag, from the root");
    desk.letters("33");
    desk.keys(egui::Modifiers::NONE, egui::Key::Enter);
    assert_eq!(middle(&desk, 1), [33.0, -9.0]);
    desk.press("Figure: Middle of hole 2 of flag, away from you from the base line");
    desk.letters("-4.25");
    desk.keys(egui::Modifiers::NONE, egui::Key::Enter);
    assert_eq!(middle(&desk, 1), [33.0, -4.25]);
    desk.press("Figure: Middle of hole 2 of flag, away from you from the base line");
    desk.letters("0");
    desk.keys(egui::Modifiers::NONE, egui::Key::Enter);
    assert_eq!(plate(&desk).holes[1].across, None);
}
