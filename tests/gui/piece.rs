//! The finished piece is shown in space: turned, selected in, measured, and its bends dragged.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers, Pos2, vec2};
use egui_kittest::kittest::Queryable;
use fh_core::plan::{Bend, FeatureAt, Plan};

/// A plan with a hook whose angle and inside radius are written.
fn hook() -> Plan {
    let text = r#"{
      "firstheat": 1,
      "title": "Bean hook",
      "units": { "length": "mm", "marks": "1 mm" },
      "bars": [ {
        "name": "hook",
        "stock": { "square": "12 mm" },
        "segments": [
          { "name": "shank", "form": { "plain": { "length": "120 mm" } } },
          { "name": "bow", "form": { "plain": {} },
            "bend": { "curve": { "angle": "120 deg", "inside_radius": "30 mm" } } },
          { "name": "nib", "form": { "taper": { "length": "40 mm", "to": "point" } } }
        ]
      } ]
    }"#;
    fh_core::file::read(text.as_bytes()).unwrap()
}

fn written(desk: &Desk) -> (String, String) {
    match desk.plan().bars[0].segments[1].bend.as_ref() {
        Some(Bend::Curve { angle: Some(angle), inside_radius: Some(radius), .. }) => {
            (angle.text().to_owned(), radius.text().to_owned())
        }
        other => panic!("the bow is a curve with both sizes written, not {other:?}"),
    }
}

fn click_at(desk: &mut Desk, at: Pos2) {
    desk.harness.hover_at(at);
    desk.harness.run();
    desk.harness.drag_at(at);
    desk.harness.run();
    desk.harness.drop_at(at);
    desk.harness.run();
}

/// Selects the bow and looks at it from the front.
fn at_the_bow() -> Desk {
    let mut desk = Desk::with_plan(hook());
    desk.press("Piece from you");
    let bow = desk.place_of("In the piece: bow");
    click_at(&mut desk, bow);
    assert_eq!(desk.editor().selected(), Some(1));
    desk
}

#[test]
fn the_view_is_open_where_there_is_room_and_stays_closed_once_it_was_closed() {
    let mut desk = Desk::with_plan(hook());
    assert!(desk.harness.query_by_role_and_label(Role::Button, "Piece from you").is_some());
    desk.press("View of the piece");
    assert!(desk.harness.query_by_role_and_label(Role::Button, "Piece from you").is_none());
    let settings = std::fs::read_to_string(desk.folder.path().join("settings.json")).unwrap();
    assert!(settings.contains(r#""piece_open": false"#), "{settings}");
    desk.keys(Modifiers::COMMAND, Key::Num4);
    assert!(desk.harness.query_by_role_and_label(Role::Button, "Piece from you").is_some());
}

#[test]
fn the_piece_is_seen_from_named_sides_and_says_how_large_it_is() {
    let mut desk = Desk::with_plan(small_plan());
    for (button, words) in [
        ("Piece from you", "The piece. Seen from you"),
        ("Piece from the far end", "The piece. Seen from the far end"),
        ("Piece from above", "The piece. Seen from above"),
        ("Piece turned", "The piece. Turned"),
    ] {
        desk.press(button);
        assert!(desk.harness.query_by_label(words).is_some(), "{words}");
    }
    assert!(desk.shows("Overall: 180 mm wide, 12 mm deep, 12 mm high"), "without what is held in the tongs");
}

#[test]
fn a_click_on_the_metal_selects_its_segment() {
    let mut desk = Desk::with_plan(hook());
    assert_eq!(desk.editor().selected(), Some(0));
    let nib = desk.place_of("In the piece: nib");
    click_at(&mut desk, nib);
    assert_eq!(desk.editor().selected(), Some(2));
    assert!(desk.shows("Turned. Selected: nib"));
}

#[test]
fn arrows_turn_the_piece_and_home_fits_it() {
    let mut desk = Desk::with_plan(hook());
    let shank = desk.place_of("In the piece: shank");
    click_at(&mut desk, shank);
    desk.keys(Modifiers::NONE, Key::ArrowLeft);
    assert!(desk.harness.query_by_label("The piece. turned by hand").is_some());
    let before = desk.place_of("In the piece: shank");
    desk.keys(Modifiers::SHIFT, Key::ArrowRight);
    assert!(desk.place_of("In the piece: shank").x > before.x + 10.0);
    desk.keys(Modifiers::NONE, Key::Home);
    assert!((desk.place_of("In the piece: shank").x - before.x).abs() < 60.0);
    assert_eq!(desk.editor().selected(), Some(0), "no arrow went on to the plan");
}

#[test]
fn a_dragged_angle_is_written_in_whole_degrees_and_is_one_step() {
    let mut desk = at_the_bow();
    let before = desk.plan().clone();
    desk.drag("Angle of bow", 30.0);
    let (angle, radius) = written(&desk);
    let degrees: f64 = angle.strip_suffix(" deg").unwrap().parse().unwrap();
    assert!((degrees - 120.0).abs() > 2.0 && degrees.fract() == 0.0, "{angle}");
    assert_eq!(radius, "30 mm");
    assert!(desk.shows(&format!("bow: angle {degrees}°")));
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(*desk.plan(), before, "one step");
}

#[test]
fn a_dragged_radius_is_written_to_the_rounding_of_marks() {
    let mut desk = at_the_bow();
    desk.drag("Inside radius of bow", 24.0);
    let (angle, radius) = written(&desk);
    let mm: f64 = radius.strip_suffix(" mm").unwrap().parse().unwrap();
    assert!(mm > 32.0 && mm.fract() == 0.0, "{radius}");
    assert_eq!(angle, "120 deg");
}

#[test]
fn the_figure_beside_a_bend_gives_the_keyboard_to_its_field() {
    let mut desk = at_the_bow();
    for (figure, field) in [("Angle of bow", "Angle of the curve"), ("Inside radius of bow", "Inside radius")] {
        desk.press(&format!("Figure: {figure}"));
        assert!(desk.has_keyboard(field), "{field}");
    }
    desk.letters("40");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(written(&desk).1, "40 mm");
}

#[test]
fn escape_takes_a_dragged_angle_back() {
    let mut desk = at_the_bow();
    desk.drag_and_escape("Angle of bow", vec2(40.0, 0.0));
}

#[test]
fn the_keyboard_turns_a_bend_by_degrees() {
    let mut desk = at_the_bow();
    desk.harness.get_by_role_and_label(Role::Slider, "Angle of bow").focus();
    desk.harness.run();
    desk.keys(Modifiers::NONE, Key::ArrowUp);
    desk.keys(Modifiers::NONE, Key::ArrowUp);
    assert_eq!(written(&desk).0, "122 deg");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(written(&desk).0, "121 deg");
}

#[test]
fn two_points_of_the_metal_are_measured() {
    let mut desk = Desk::with_plan(hook());
    desk.press("Piece from you");
    desk.press("Measure the piece");
    for name in ["In the piece: shank", "In the piece: bow"] {
        let at = desk.place_of(name);
        click_at(&mut desk, at);
    }
    assert!(desk.shows("Measured "), "the figure and its parts");
    assert_eq!(desk.editor().selected(), Some(0), "no segment was chosen by it");
    desk.keys(Modifiers::NONE, Key::Escape);
    assert!(!desk.shows("Measured "));
}

#[test]
fn two_places_of_the_metal_make_an_asked_size() {
    let mut desk = Desk::with_plan(hook());
    desk.press("Piece from you");
    desk.press("Measure the piece");
    // The end of a straight part and the middle of a bow: named places, so that the size can be asked for.
    for name in ["In the piece: shank", "In the piece: bow"] {
        let at = desk.place_of(name);
        click_at(&mut desk, at);
    }
    desk.press("Ask for this size");
    let size = desk.plan().sizes[0].clone();
    let (from, to) = (size.from.unwrap(), size.to.unwrap());
    assert_eq!((from.part.as_str(), from.at), ("shank", FeatureAt::End));
    assert_eq!((to.part.as_str(), to.at), ("bow", FeatureAt::Middle));
    // By hand, mm: the bow's line has a radius of 36 and turns 60 degrees to its middle, and the chord of 60 degrees is the radius.
    let by_hand = 36.0;
    assert!((size.size.mm() - by_hand).abs() <= 0.5, "{} for {by_hand}", size.size.text());
    assert!(desk.shows("Asked of size 1") || desk.shows("size 1: "), "it is open on the plan's page");
    assert!(desk.editor().balance().sizes[0].met);
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert!(desk.plan().sizes.is_empty());
}

#[test]
fn an_empty_bar_says_calmly_that_there_is_nothing_to_see() {
    let mut plan = small_plan();
    plan.bars[0].segments.clear();
    let desk = Desk::with_plan(plan);
    assert!(desk.shows("The finished piece shows here as soon as"));
}
