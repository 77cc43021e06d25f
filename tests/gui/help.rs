//! Help: anything found by any word, the handbook, the tour by keys, and the start.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use fh_app::Editor;

const CTRL: Modifiers = Modifiers::COMMAND;
const NONE: Modifiers = Modifiers::NONE;

#[test]
fn a_command_a_part_and_a_page_are_found_by_any_word() {
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(CTRL, Key::F);
    assert!(desk.has_keyboard("Words to find"));
    desk.letters("reorder nothing like this");
    assert!(desk.shows("No match. Try fewer words."));
    desk.type_only("Words to find", "order of work");
    desk.keys(NONE, Key::Enter);
    assert!(!desk.shows("Part 2: shank"), "the order stands in place of the parts");
    desk.keys(NONE, Key::F9);
    desk.keys(CTRL, Key::F);
    desk.type_only("Words to find", "shank");
    desk.keys(NONE, Key::Enter);
    assert_eq!(desk.editor().selected(), Some(1));
    desk.keys(CTRL, Key::F);
    desk.type_only("Words to find", "kerf");
    assert!(desk.shows("The cut list: page of the handbook"));
    desk.press("The cut list: page of the handbook");
    assert!(desk.shows("What a bar holds"), "the page is open");
}

#[test]
fn the_handbook_is_searched_and_its_links_lead_on() {
    use egui::accesskit::Role;
    use egui_kittest::kittest::Queryable;
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(CTRL, Key::F1);
    desk.type_only("Words in the handbook", "booking undo");
    desk.press("The rack, and which bar");
    assert!(desk.shows("What you take is never more than there is."));
    desk.harness.get_all_by_role_and_label(Role::Link, "cut list").next().unwrap().scroll_to_me();
    desk.harness.run();
    desk.harness.get_all_by_role_and_label(Role::Link, "cut list").next().unwrap().click();
    desk.harness.run();
    assert!(desk.shows("What a bar holds"));
    desk.press("Page before");
    assert!(desk.shows("What you take is never more than there is."));
    desk.keys(NONE, Key::Escape);
    assert!(!desk.shows("Words in the handbook"));
}

#[test]
fn the_tour_goes_by_keys_and_ends_with_a_plan_of_ones_own() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = Desk::in_folder(folder, Vec::new(), |services, _| Editor::with_plan(services, small_plan()));
    desk.keys(NONE, Key::Enter);
    desk.keys(NONE, Key::ArrowRight);
    assert!(desk.shows("3 of 8"));
    desk.keys(NONE, Key::ArrowLeft);
    assert!(desk.shows("2 of 8"));
    for _ in 0..7 {
        desk.keys(NONE, Key::Enter);
    }
    assert!(desk.shows("New plan"));
}

#[test]
fn the_last_plan_is_opened_at_the_start_unless_that_is_turned_off() {
    let mut desk = Desk::with(Vec::new(), |services, folder| {
        std::fs::write(folder.join("hook.plan.json"), fh_core::file::write(&small_plan())).unwrap();
        Editor::with_file(services, &folder.join("hook.plan.json"))
    });
    let other = || fh_core::plan::Plan { title: "Another".to_owned(), ..small_plan() };
    let again = |folder| Desk::in_folder(folder, Vec::new(), |services, _| Editor::at_start(services, other()));
    desk.harness.run();
    let mut desk = again(desk.folder);
    assert_eq!(desk.plan().title, "Bean hook");
    desk.press("File");
    desk.press("Open recent");
    use egui_kittest::kittest::Queryable;
    desk.harness.get_by_role_and_label(egui::accesskit::Role::CheckBox, "Open the last plan at the start").click();
    desk.harness.run();
    let desk = again(desk.folder);
    assert_eq!(desk.plan().title, "Another");
}

#[test]
fn a_new_plan_takes_its_bar_as_it_is_said_or_from_the_rack() {
    let mut desk = Desk::with(Vec::new(), |services, folder| {
        let rack = r#"{ "firstheat_rack": 1, "bars": [{ "bar": "3 x 16 mm round, 2 m" }] }"#;
        std::fs::write(folder.join("rack.json"), rack).unwrap();
        Editor::with_plan(services, small_plan())
    });
    desk.keys(CTRL, Key::N);
    desk.type_only("The bar, as you say it", "1/2 in sqare");
    assert!(desk.shows("is not a bar shape"));
    desk.type_only("The bar, as you say it", "5/8 in round");
    assert!(desk.shows("It is 5/8 in round."));
    desk.press("16 mm round");
    assert!(desk.shows("It is 16 mm round."));
    desk.press("Begin");
    assert_eq!(desk.plan().bars[0].stock.describe(), "16 mm round");
}

#[test]
fn plans_are_offered_as_pictures() {
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(CTRL, Key::O);
    assert!(desk.shows("Demo plans"));
    desk.press("Pot stand");
    assert_eq!(desk.plan().title, "Pot stand");
}
