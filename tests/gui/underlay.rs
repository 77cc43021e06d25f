//! A picture lies under the piece to its true scale: laid, adjusted by hand and by keys, taken away, and told where it is missing.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers, Pos2, vec2};
use egui_kittest::kittest::Queryable;
use fh_app::{Answer, Editor};
use fh_core::forms;
use fh_core::plan::{Form, Plan, Segment, Underlay, UnderlayView};
use image::{Rgb, RgbImage};
use std::path::{Path, PathBuf};

/// A picture of 400 by 200 pixels with a line across it.
fn sketch(folder: &Path) -> PathBuf {
    let path = folder.join("sketch.png");
    let mut picture = RgbImage::from_pixel(400, 200, Rgb([245, 240, 225]));
    (20..380).for_each(|x| picture.put_pixel(x, 100, Rgb([40, 40, 60])));
    picture.save(&path).unwrap();
    path
}

fn underlay(desk: &Desk) -> Underlay {
    desk.plan().underlay.clone().expect("a picture lies under the piece")
}

fn drag(desk: &mut Desk, from: Pos2, by: egui::Vec2) {
    desk.harness.hover_at(from);
    desk.harness.run();
    desk.harness.drag_at(from);
    desk.harness.run();
    for step in 1..=8 {
        desk.harness.hover_at(from + by * (step as f32 / 8.0));
        desk.harness.step();
    }
    desk.harness.drop_at(from + by);
    desk.harness.run();
}

/// Two segments of 90 mm each.
fn two_alike() -> Plan {
    let mut plan = small_plan();
    let segments = &mut plan.bars[0].segments;
    segments.clear();
    for name in ["near", "far"] {
        let length = fh_measure::WrittenLength::parse("90 mm", None, fh_measure::LengthRange::AboveZero).ok();
        segments.push(Segment::new(name, Form::Plain(forms::Plain { length })));
    }
    plan
}

fn laid() -> Desk {
    laid_under(small_plan())
}

/// A desk with a plan in a file and a picture beside it, which is laid.
fn laid_under(plan: Plan) -> Desk {
    let mut desk = Desk::with(Vec::new(), |services, folder| {
        let file = folder.join("hook.plan.json");
        std::fs::write(&file, fh_core::file::write(&plan)).unwrap();
        Editor::with_file(services, &file)
    });
    let path = sketch(desk.folder.path());
    desk.press("Add a picture to trace");
    desk.type_only("File", &path.display().to_string());
    desk.press("Lay it under the piece");
    desk.wait_for("One pixel of the picture is");
    desk
}

#[test]
fn a_hundred_pixels_that_are_fifty_mm_apart_lie_at_half_a_mm_each() {
    let mut desk = laid();
    let now = underlay(&desk);
    assert_eq!((now.file.as_str(), now.view), ("sketch.png", UnderlayView::Front), "named from the plan's folder");
    assert!(desk.shows("Seen from you"));
    assert!(desk.harness.query_by_label("First point on the picture").is_some());
    // From a quarter to three quarters of 400 pixels: two hundred.
    desk.type_in("Distance of the points", "100 mm");
    assert!(desk.shows("One pixel of the picture is 0.5 mm."));
    let [from, to] = ["First point on the picture", "Second point on the picture"].map(|name| desk.place_of(name));
    desk.drag("Second point on the picture", (from.x - to.x) / 2.0);
    let now = underlay(&desk);
    assert!((now.to[0] - 0.5).abs() < 0.01, "{now:?}");
    desk.type_in("Distance of the points", "50 mm");
    let scale = underlay(&desk).mm_per_pixel([400.0, 200.0]).unwrap();
    assert!((scale - 0.5).abs() < 0.01, "{scale}");
}

#[test]
fn the_picture_is_as_large_in_the_view_as_the_piece_says() {
    let mut desk = laid_under(two_alike());
    desk.type_in("Distance of the points", "180 mm");
    let [from, to] = ["First point on the picture", "Second point on the picture"].map(|name| desk.place_of(name));
    let [near, far] = ["In the piece: near", "In the piece: far"].map(|name| desk.place_of(name));
    // Straight segments bear their names at their ends: the first where the piece begins, the second where it ends.
    assert!((from.x - near.x).abs() < 1.5, "the first point lies where the piece begins: {from} {near}");
    assert!((to.x - far.x).abs() < 1.5, "the second lies 180 mm on, where the piece ends: {to} {far}");
    assert!((from.y - near.y).abs() < 1.0, "the first point lies as high as where the piece begins");
}

#[test]
fn a_dragged_point_is_one_step_and_leaves_the_distance() {
    let mut desk = laid();
    let before = desk.plan().clone();
    desk.drag("Second point on the picture", -40.0);
    let now = underlay(&desk);
    assert!(now.to[0] < 0.74 && now.from == [0.25, 0.5], "{now:?}");
    assert_eq!(now.distance, before.underlay.as_ref().unwrap().distance);
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(*desk.plan(), before, "one step");
}

#[test]
fn the_picture_is_dragged_to_its_place_in_one_step() {
    let mut desk = laid();
    let before = desk.plan().clone();
    let at = desk.place_of("Second point on the picture") + vec2(30.0, 30.0);
    drag(&mut desk, at, vec2(24.0, -12.0));
    let place = underlay(&desk).at.expect("it has a place now");
    assert!(place.right.mm() > 1.0 && place.up.mm() > 0.5, "{place:?}");
    assert!(desk.shows("Seen from you"), "the piece was not turned");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(*desk.plan(), before, "one step");
}

#[test]
fn escape_takes_a_dragged_point_back() {
    let mut desk = laid();
    desk.drag_and_escape("First point on the picture", vec2(-30.0, 10.0));
}

#[test]
fn arrows_move_a_point_by_a_pixel_and_the_picture_by_a_step() {
    let mut desk = laid();
    desk.harness.get_by_label("Second point on the picture").focus();
    desk.harness.run();
    desk.keys(Modifiers::NONE, Key::ArrowRight);
    desk.keys(Modifiers::SHIFT, Key::ArrowUp);
    let now = underlay(&desk);
    assert!((now.to[0] - 301.0 / 400.0).abs() < 1e-5 && (now.to[1] - 90.0 / 200.0).abs() < 1e-5, "{now:?}");
    desk.harness.get_by_label("Place of the picture").focus();
    desk.harness.run();
    desk.keys(Modifiers::NONE, Key::ArrowLeft);
    assert_eq!(underlay(&desk).at.unwrap().right.text(), "-1 mm");
}

#[test]
fn strength_is_kept_and_the_picture_is_taken_away_with_undo() {
    let mut desk = laid();
    desk.harness.get_by_role_and_label(Role::Slider, "Strength of the picture").focus();
    desk.harness.run();
    desk.keys(Modifiers::NONE, Key::ArrowRight);
    assert_eq!(underlay(&desk).strength.unwrap().text(), "55 %");
    let before = desk.plan().clone();
    desk.press("Remove");
    assert!(desk.plan().underlay.is_none());
    assert!(desk.harness.query_by_label("First point on the picture").is_none());
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(*desk.plan(), before);
}

#[test]
fn from_another_side_it_is_only_told_where_the_picture_shows() {
    let mut desk = laid();
    desk.press("Done");
    assert!(desk.harness.query_by_label("First point on the picture").is_none());
    desk.press("Piece from above");
    assert!(desk.shows("The picture under the piece shows from the front."));
    desk.press("Piece from you");
    assert!(!desk.shows("The picture under the piece shows"));
}

#[test]
fn a_missing_picture_is_told_and_found_once_it_is_there() {
    let mut plan = small_plan();
    plan.underlay = Some(Underlay {
        file: "sketch.png".to_owned(),
        view: UnderlayView::Front,
        from: [0.25, 0.5],
        to: [0.5, 0.5],
        distance: fh_measure::WrittenLength::parse("50 mm", None, fh_measure::LengthRange::AboveZero).unwrap(),
        at: None,
        strength: None,
    });
    let mut desk = Desk::with(Vec::new(), |services, folder| {
        let path = folder.join("hook.plan.json");
        std::fs::write(&path, fh_core::file::write(&plan)).unwrap();
        Editor::with_file(services, &path)
    });
    desk.wait_for("No picture under the piece: there is no such file (sketch.png)");
    desk.press("Adjust the picture");
    sketch(desk.folder.path());
    desk.press("Reload");
    desk.wait_for("One pixel of the picture is 0.5 mm.");
}

#[test]
fn a_file_that_is_no_picture_is_not_laid() {
    let mut desk = Desk::with_plan(small_plan());
    let path = desk.folder.path().join("words.png");
    std::fs::write(&path, "no picture").unwrap();
    desk.press("Add a picture to trace");
    desk.type_only("File", &path.display().to_string());
    desk.press("Lay it under the piece");
    assert!(desk.shows("The picture cannot be used: it isn't a PNG or JPEG picture, or it is damaged."));
    assert!(desk.plan().underlay.is_none());
}

#[test]
fn the_systems_dialog_gives_the_picture_too() {
    let folder = tempfile::tempdir().unwrap();
    let path = sketch(folder.path());
    let mut desk =
        Desk::with(vec![Answer::File(path.clone())], |services, _| Editor::with_plan(services, small_plan()));
    desk.press("Add a picture to trace");
    desk.press("Browse…");
    desk.wait_for("One pixel of the picture is");
    assert_eq!(underlay(&desk).file, path.display().to_string(), "the plan is in no folder yet");
}
