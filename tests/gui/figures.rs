//! The figures on the drawing are its fields: they are clicked, typed over, and left with Tab for the next.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use fh_core::plan::{Form, Plan, SectionSpec};

/// The small plan, its shank drawn to 10 mm × 6 mm.
fn drawn_plan() -> Plan {
    let text = fh_core::file::write(&small_plan());
    let flat = r#""drawn": { "length": "120 mm", "section": { "flat": { "width": "10 mm", "thickness": "6 mm" } } }"#;
    let plain = text.find(r#""plain""#).unwrap();
    let end = plain + text[plain..].find('}').unwrap() + 1;
    fh_core::file::read(format!("{}{flat}{}", &text[..plain], &text[end..]).as_bytes()).unwrap()
}

fn length(desk: &Desk, segment: usize) -> String {
    desk.plan().bars[0].segments[segment].form.length().unwrap().text().to_owned()
}

fn mark_mm(desk: &Desk, segment: usize) -> f64 {
    desk.editor().balance().bars[0].segments[segment].mark_end.value * 1000.0
}

fn section(desk: &Desk) -> String {
    match &desk.plan().bars[0].segments[1].form {
        Form::Drawn(drawn) => drawn.section.words(),
        form => panic!("{form:?}"),
    }
}

#[test]
fn a_length_on_the_drawing_is_typed_over() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Figure: Length of shank, forged");
    assert_eq!(desk.editor().selected(), Some(1));
    desk.letters("4 1/2 in");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(length(&desk, 1), "4 1/2 in");
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(length(&desk, 1), "120 mm");
}

#[test]
fn a_mark_is_typed_over_and_sums_are_worked_out() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Figure: Mark 2: end of shank, from the datum end");
    desk.letters("it + 12");
    desk.keys(Modifiers::NONE, Key::Enter);
    // The point takes 20 mm of bar, the shank then 132 mm.
    assert!((mark_mm(&desk, 1) - 152.0).abs() < 0.01);
    assert_eq!(length(&desk, 1), "132 mm");
}

#[test]
fn tab_goes_from_a_length_to_the_sizes_across_and_on_to_the_next_part() {
    let mut desk = Desk::with_plan(drawn_plan());
    desk.press("Figure: Length of shank, forged");
    desk.letters("100");
    desk.keys(Modifiers::NONE, Key::Tab);
    desk.letters("5");
    desk.keys(Modifiers::NONE, Key::Tab);
    desk.letters("14");
    desk.keys(Modifiers::NONE, Key::Tab);
    assert_eq!(desk.editor().selected(), Some(2));
    desk.letters("half of it");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!((length(&desk, 1).as_str(), length(&desk, 2).as_str()), ("100 mm", "75 mm"));
    assert_eq!(section(&desk), "14 mm × 5 mm flat");
    for _ in 0..4 {
        desk.keys(Modifiers::COMMAND, Key::Z);
    }
    assert_eq!(*desk.plan(), drawn_plan());
}

#[test]
fn a_figure_that_is_left_as_it_was_changes_nothing_and_a_bad_one_says_why() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Figure: Mark 2: end of shank, from the datum end");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert!(!desk.editor().is_changed());
    desk.press("Figure: Length of shank, forged");
    desk.letters("10 - 20");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert!(desk.shows("this comes to -10 mm"));
    desk.keys(Modifiers::NONE, Key::Escape);
    assert!(!desk.editor().is_changed());
}

#[test]
fn a_thickness_is_dragged_in_steps_of_the_shop() {
    let mut desk = Desk::with_plan(drawn_plan());
    desk.press("Part 2: shank");
    let at = desk.place_of("upper handle: Thickness of shank");
    desk.harness.hover_at(at);
    desk.harness.run();
    desk.harness.drag_at(at);
    desk.harness.run();
    for step in 1..=6 {
        desk.harness.hover_at(at - vec2(0.0, 2.0 * step as f32));
        desk.harness.step();
    }
    desk.harness.drop_at(at - vec2(0.0, 12.0));
    desk.harness.run();
    let SectionSpec::Flat { thickness, .. } = (match &desk.plan().bars[0].segments[1].form {
        Form::Drawn(drawn) => drawn.section.clone(),
        form => panic!("{form:?}"),
    }) else {
        panic!("a flat")
    };
    assert!(thickness.mm() > 6.4 && (thickness.mm() * 2.0).fract().abs() < 1e-9, "{}", thickness.text());
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(*desk.plan(), drawn_plan());
}

#[test]
fn a_dragged_mark_ends_where_the_finished_length_is_round() {
    let mut desk = Desk::with_plan(drawn_plan());
    desk.drag("Mark 2: end of shank", 37.0);
    let moved = length(&desk, 1);
    assert!(moved != "120 mm" && moved.trim_end_matches(" mm").parse::<u32>().is_ok(), "{moved}");
}

#[test]
fn a_whole_section_is_typed_in_one_field() {
    let mut desk = Desk::with_plan(drawn_plan());
    desk.press("Part 2: shank");
    desk.type_in("In short: section", "3/8 in square");
    assert_eq!(section(&desk), "3/8 in square");
    desk.type_in("In short: section", "14 x 4");
    assert_eq!(section(&desk), "14 mm × 4 mm flat");
    desk.type_in("In short: section", "point");
    assert!(desk.shows("“point” cannot be the section"));
    assert_eq!(section(&desk), "14 mm × 4 mm flat");
}

#[test]
fn every_figure_on_the_drawing_is_named_for_screen_readers() {
    let desk = Desk::with_plan(drawn_plan());
    let buttons = desk.harness.query_all_by(|node| node.role() == Role::Button);
    let names: Vec<String> = buttons.filter_map(|node| node.accesskit_node().label()).collect();
    for name in ["Length of point, forged", "Length of shank, forged", "Mark 1: end of point", "Mark 3: end of rest"] {
        assert!(names.iter().any(|told| told.starts_with("Figure: ") && told.contains(name)), "{name}: {names:?}");
    }
}
