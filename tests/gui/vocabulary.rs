//! Every form and every bend with its fields: holes, pins, collars, scrolls, sockets, twists; and which size follows.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use fh_core::findings::Severity;
use fh_core::forms;
use fh_core::plan::{Bend, CollarRule, Form, HoleSpec, Made, OutlineSpec, ScrollEye, SlitRule};

/// At a segment of this form, added after the shank.
fn at(form: &str) -> Desk {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.press("Add part after");
    desk.press(form);
    desk
}

fn form(desk: &Desk) -> &Form {
    &desk.plan().bars[0].segments[2].form
}

fn bend(desk: &Desk) -> &Bend {
    desk.plan().bars[0].segments[desk.editor().selected().unwrap()].bend.as_ref().unwrap()
}

/// The length of bar that the plan takes, in mm.
fn cut_mm(desk: &Desk) -> f64 {
    desk.editor().balance().bars[0].stock_length.value * 1000.0
}

fn stops(desk: &Desk) -> Vec<String> {
    let findings = desk.editor().balance().findings.iter();
    findings.filter(|finding| finding.severity == Severity::Stop).map(|finding| finding.message.clone()).collect()
}

#[test]
fn a_hole_is_punched_and_then_slit_and_drifted() {
    let mut desk = at("Hole");
    desk.type_in("Diameter of the hole", "8");
    desk.type_in("Diameter of the slug", "7");
    desk.type_in("Diameter", "26");
    desk.type_in("Thickness", "10");
    let Form::Hole(forms::Hole { outline: OutlineSpec::Disc { diameter }, thickness, hole, made, slug, at }) =
        form(&desk)
    else {
        panic!("{:?}", form(&desk))
    };
    assert_eq!((diameter.text(), thickness.text()), ("26 mm", "10 mm"));
    assert!(matches!(hole, HoleSpec::Round(diameter) if diameter.text() == "8 mm"));
    assert_eq!((*made, at), (Made::Punched, &None));
    assert_eq!(slug.as_ref().map(|slug| slug.text()), Some("7 mm"));
    // The boss less the hole, and the slug: all from a bar of 12 mm × 12 mm.
    let pi = std::f64::consts::PI;
    let lost = pi / 4.0 * 10.0 * 7.0_f64.powi(2);
    let boss = pi / 4.0 * 10.0 * 26.0_f64.powi(2) - pi / 4.0 * 10.0 * 8.0_f64.powi(2);
    let took = desk.editor().balance().bars[0].segments[2].stock_length.value * 1000.0;
    assert!((took - (boss + lost) / 144.0).abs() < 1e-6, "{took}");
    assert!(desk.shows("Punch"), "what to set the tool to");

    desk.choose("How the hole is made", "slit and drifted");
    desk.choose("Shape of the hole", "slot");
    let Form::Hole(forms::Hole { hole: HoleSpec::Slot { length, width }, slug: None, .. }) = form(&desk) else {
        panic!("{:?}", form(&desk))
    };
    assert_eq!((length.text(), width.text()), ("16 mm", "8 mm"));
    assert!(desk.shows("Slit"));
    assert_eq!(stops(&desk), Vec::<String>::new());
}

#[test]
fn pins_and_collars_take_their_sizes() {
    let mut desk = at("Rivet");
    desk.type_in("Diameter", "6");
    desk.type_in("Thickness it goes through", "10");
    desk.type_in("For each head", "9");
    // π/4 · 6² · (10 + 2 · 9) / 12², a pin and its heads.
    let took = |desk: &Desk| desk.editor().balance().bars[0].segments[2].stock_length.value * 1000.0;
    assert!((took(&desk) - std::f64::consts::PI * 9.0 * 28.0 / 144.0).abs() < 1e-6);
    desk.choose("Form", "Tenon");
    assert!(
        matches!(form(&desk), Form::Tenon(forms::Tenon { grip, allowance, .. }) if grip.text() == "10 mm" && allowance.text() == "9 mm")
    );
    desk.type_in("For the head", "0");
    assert!((took(&desk) - std::f64::consts::PI * 9.0 * 10.0 / 144.0).abs() < 1e-6);
    desk.choose("Form", "Weld");
    desk.type_in("Metal for the weld, as a length of bar", "15");
    assert!((took(&desk) - 15.0).abs() < 1e-9);
    assert!(desk.shows("Scarf"));
}

#[test]
fn a_collar_follows_the_plans_rule_or_its_own() {
    let mut desk = at("Collar");
    desk.type_in("Width of the bundle", "24");
    desk.type_in("Height of the bundle", "12");
    let forged = |desk: &Desk| desk.editor().balance().bars[0].segments[2].forged_length.value * 1000.0;
    // The perimeter and twice the thickness of 12 mm.
    assert!((forged(&desk) - 96.0).abs() < 1e-9, "{}", forged(&desk));
    desk.press("Plan: Bean hook");
    desk.choose("Rule for collars", CollarRule::Lapped.name());
    assert_eq!(desk.plan().practice.collar, Some(CollarRule::Lapped));
    assert!((forged(&desk) - 102.0).abs() < 1e-9);
    desk.choose("Rule for the slit of a drifted hole", SlitRule::ThreeQuarters.name());
    assert_eq!(desk.plan().practice.slit, Some(SlitRule::ThreeQuarters));
    desk.press("Part 3: collar");
    desk.choose("Rule for the collar", CollarRule::Butted.name());
    assert!((forged(&desk) - 96.0).abs() < 1e-9);
}

#[test]
fn what_follows_can_be_chosen_and_nothing_moves() {
    let mut desk = at_the_shank();
    desk.choose("Bend", "curve");
    let before = cut_mm(&desk);
    desk.choose("Size that follows", "the length");
    assert_eq!(desk.text_of("Length"), "");
    assert!(desk.text_of("Inside radius").ends_with(" mm"));
    assert!((cut_mm(&desk) - before).abs() < 0.01, "{} {before}", cut_mm(&desk));
    desk.choose("Size that follows", "the angle");
    assert_eq!(desk.text_of("Angle of the curve"), "");
    assert!(desk.text_of("Length").starts_with("120"));
    assert!((cut_mm(&desk) - before).abs() < 0.01);
    for _ in 0..3 {
        desk.keys(Modifiers::COMMAND, Key::Z);
    }
    assert!(!desk.editor().is_changed());

    desk.choose("Bend", "ring");
    desk.choose("Size that follows", "the length");
    assert!(matches!(bend(&desk), Bend::Ring { inside_diameter: Some(_), .. }));
    assert!((cut_mm(&desk) - before).abs() < 0.01);
    // A bend that is taken away leaves the length that it gave.
    desk.choose("Bend", "none");
    assert!((cut_mm(&desk) - before).abs() < 0.01);
    assert_eq!(stops(&desk), Vec::<String>::new());
}

#[test]
fn typing_over_a_size_that_follows_lets_its_partner_follow() {
    // The bend, the size that follows at first, what is typed over it, and what follows then.
    let cases = [
        ("ring", "Inside diameter", "40", "Length"),
        ("curve", "Inside radius", "80", "Length"),
        ("scroll", "Turns of the scroll", "1 1/2", "Length"),
    ];
    for (bend, follows, typed, then) in cases {
        let mut desk = at_the_shank();
        desk.choose("Bend", bend);
        assert_eq!(desk.text_of(follows), "");
        desk.type_in(follows, typed);
        assert_eq!(stops(&desk), Vec::<String>::new(), "{bend}");
        assert_eq!(desk.text_of(then), "", "{bend}");
        assert!(desk.text_of(follows).starts_with(typed) || typed == "1 1/2", "{bend}");
        assert!(desk.shows("the length follows"), "{bend}: it is said");
        // And the other way round.
        desk.type_in(then, "300");
        assert_eq!(stops(&desk), Vec::<String>::new(), "{bend}");
        assert_eq!(desk.text_of(follows), "", "{bend}");
        // Each was one step.
        desk.keys(Modifiers::COMMAND, Key::Z);
        desk.keys(Modifiers::COMMAND, Key::Z);
        assert_eq!((desk.text_of(follows).as_str(), desk.text_of(then).as_str()), ("", "120 mm"), "{bend}");
    }
}

#[test]
fn a_scroll_is_made_of_a_shank() {
    let mut desk = at_the_shank();
    desk.choose("Bend", "scroll");
    assert_eq!(stops(&desk), Vec::<String>::new());
    assert_eq!(desk.text_of("Turns of the scroll"), "", "the turns follow");
    desk.choose("Size that follows", "the length");
    desk.type_in("Turns of the scroll", "1 1/2");
    desk.type_in("Inner radius", "10");
    desk.type_in("Outer radius", "50");
    desk.choose("How the scroll opens", "even: the same gap every turn");
    desk.choose("End with the eye", "its start, towards the datum");
    let Bend::Scroll { turns: Some(turns), eye: ScrollEye::Start, .. } = bend(&desk) else {
        panic!("{:?}", bend(&desk))
    };
    assert!((turns - 1.5).abs() < 1e-9);
    // An even spiral is close to π · turns · (inner + outer).
    let forged = desk.editor().balance().bars[0].segments[1].forged_length.value * 1000.0;
    assert!((forged / (std::f64::consts::PI * 1.5 * 60.0) - 1.0).abs() < 0.03, "{forged}");
    desk.choose("Size that follows", "the outer radius");
    assert_eq!(desk.text_of("Outer radius"), "");
    desk.choose("Size that follows", "the inner radius");
    assert_eq!(desk.text_of("Outer radius"), "50 mm");
    assert_eq!(stops(&desk), Vec::<String>::new());
}

#[test]
fn a_flag_is_rolled_to_a_socket() {
    let mut desk = at("Flag");
    desk.choose("Outline", "rectangle");
    desk.type_in("Length", "60");
    desk.type_in("Width", "80");
    desk.type_in("Thickness", "3");
    desk.choose("Bend", "socket");
    assert_eq!(desk.text_of("Mandrel"), "", "the mandrel follows from the width");
    desk.choose("Size that follows", "the width of the flag");
    assert_eq!(desk.text_of("Width"), "");
    desk.type_in("Mandrel", "25");
    let width = |desk: &Desk| match &desk.editor().balance().bars[0].segments[2].shape {
        Some(fh_core::metal::Shape::Flag { outline, .. }) => outline.width().value * 1000.0,
        other => panic!("{other:?}"),
    };
    assert!((width(&desk) - std::f64::consts::PI * 28.0).abs() < 1e-6, "{}", width(&desk));
    desk.choose("Size that follows", "how far round");
    desk.type_in("Width", "66");
    assert!((width(&desk) - 66.0).abs() < 1e-9);
    desk.choose("Bend", "none");
    assert_eq!(stops(&desk), Vec::<String>::new());
}

#[test]
fn a_shank_is_twisted_to_either_hand() {
    let mut desk = at_the_shank();
    let before = cut_mm(&desk);
    desk.choose("Bend", "twist");
    desk.type_in("Turns of the twist", "1 1/2");
    desk.choose("Hand of the twist", "left-handed");
    let Bend::Twist { turns, .. } = bend(&desk) else { panic!("{:?}", bend(&desk)) };
    assert!((turns + 1.5).abs() < 1e-9);
    assert!((cut_mm(&desk) - before).abs() < 1e-9);
    desk.type_in("How much shorter it gets", "4 %");
    assert!(cut_mm(&desk) > before);
}

fn at_the_shank() -> Desk {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk
}
