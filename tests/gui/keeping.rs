//! What the program keeps for the smith survives what befalls its files: unknown keys, broken bytes, write protection.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use fh_app::Editor;
use fh_store::{Home, Journal};
use std::fs;
use std::path::{Path, PathBuf};

/// An editor with the small plan in its file, with what was put into its folder before.
fn opened(prepare: impl FnOnce(&Path)) -> (Desk, PathBuf) {
    let mut path = PathBuf::new();
    let desk = Desk::with(Vec::new(), |services, folder| {
        prepare(folder);
        path = folder.join("hook.plan.json");
        fh_store::save(&path, &small_plan(), None, false).unwrap();
        Editor::with_file(services, &path)
    });
    (desk, path)
}

#[test]
fn tools_of_a_later_version_are_told_and_kept_although_a_plan_was_named() {
    let tools = r#"{ "tools": [{ "kind": "drift", "from_mm": 10 }, { "kind": "laser" }], "future": [1] }"#;
    for text in [tools, "{ \"tools\": ["] {
        let (desk, _) = opened(|folder| fs::write(folder.join("tools.json"), text).unwrap());
        assert!(desk.shows("Part of your tools was not read"), "{text}");
        assert_eq!(fs::read_to_string(desk.folder.path().join("tools.json.broken")).unwrap(), text);
    }
}

#[test]
fn one_wrong_setting_leaves_the_others_and_is_told() {
    let settings = r#"{ "tour_seen": true, "text_size": "large", "order_open": true }"#;
    let (desk, _) = opened(|folder| fs::write(folder.join("settings.json"), settings).unwrap());
    assert!(desk.shows("Part of the settings was not read: “text_size” was not understood"));
    assert!(desk.shows("Tools"), "the order of work is open, as it was set");
    assert_eq!(fs::read_to_string(desk.folder.path().join("settings.json.broken")).unwrap(), settings);
}

#[test]
fn a_write_protected_plan_is_not_replaced_and_another_name_is_asked_for() {
    let (mut desk, path) = opened(|_| {});
    let before = fs::read(&path).unwrap();
    let mut permissions = fs::metadata(&path).unwrap().permissions();
    permissions.set_readonly(true);
    fs::set_permissions(&path, permissions).unwrap();
    desk.press("Part 2: shank");
    desk.type_in("Length", "200 mm");
    desk.keys(Modifiers::COMMAND, Key::S);
    assert!(desk.shows("the file is write-protected") && desk.shows("Choose another name."));
    let other = desk.folder.path().join("other.plan.json");
    desk.type_only("File", other.to_str().unwrap());
    desk.press("Save");
    assert_eq!(fs::read(&path).unwrap(), before);
    assert_eq!(fh_store::load(&other).unwrap().plan, *desk.plan());
}

#[test]
fn a_sheet_does_not_take_the_place_of_a_plan() {
    let (mut desk, path) = opened(|_| {});
    let before = fs::read(&path).unwrap();
    desk.keys(Modifiers::COMMAND, Key::P);
    desk.type_only("File", path.to_str().unwrap());
    desk.press("Make the file");
    assert!(desk.shows("of another kind"));
    assert_eq!(fs::read(&path).unwrap(), before);
}

#[test]
fn work_that_cannot_be_kept_safe_is_told_in_whole() {
    // Where the journal's folder should be is a file.
    let (mut desk, _) = opened(|folder| fs::write(folder.join("journal"), "").unwrap());
    desk.press("Part 2: shank");
    desk.type_in("Length", "200 mm");
    desk.harness.run_steps(12);
    let words = "■ Unsaved work cannot be kept safe: cannot write";
    assert!(desk.shows(words));
    let label = desk.harness.get_by(|node| node.value().is_some_and(|said| said.starts_with(words)));
    let ends_with_path = label.value().is_some_and(|said| said.ends_with("journal"));
    assert!(ends_with_path && label.rect().right() < 1366.0 && label.rect().height() > 10.0, "{:?}", label.rect());
}

/// The journal's only entry, after its program was killed.
fn killed(folder: &Path, change: impl Fn(String) -> String) {
    let journal = Journal::open(&Home::at(folder)).unwrap();
    journal.write(None, &small_plan()).unwrap();
    drop(journal);
    for file in fs::read_dir(folder.join("journal")).unwrap().flatten() {
        if file.path().extension().is_some_and(|ending| ending == "json") {
            let text = fs::read_to_string(file.path()).unwrap();
            fs::write(file.path(), change(text)).unwrap();
        }
    }
}

#[test]
fn work_that_this_version_cannot_read_is_copied_to_a_file() {
    let (mut desk, _) = opened(|folder| killed(folder, |text| text.replacen("\\\"taper\\\"", "\\\"tapir\\\"", 1)));
    assert!(desk.shows("This version cannot read it: ") && desk.shows("was \"taper\" meant?"));
    desk.press("Save a copy");
    assert!(desk.shows("Copied to "));
    let copy = fs::read_to_string(desk.folder.path().join("work-recovered.plan.json")).unwrap();
    assert!(copy.contains("\"tapir\"") && copy.contains("Bean hook"), "{copy}");
    desk.press("Decide later");
    assert_eq!(Journal::leftovers(&Home::at(desk.folder.path())).work.len(), 1, "it is offered again");
}

#[test]
fn a_torn_journal_is_told_once_and_kept() {
    let (mut desk, _) = opened(|folder| killed(folder, |text| text[..40].to_owned()));
    assert!(desk.shows("This cannot be read, and was kept: ") && desk.shows(".json.broken"));
    desk.press("OK");
    assert!(Journal::leftovers(&Home::at(desk.folder.path())).broken.is_empty());
}

#[test]
fn a_name_of_a_megabyte_is_shown_cut_short_and_kept() {
    let mut plan = small_plan();
    let long = "forge ".repeat(170_000);
    plan.title = long.clone();
    plan.notes = Some(long.clone());
    plan.bars[0].name = long.clone();
    plan.bars[0].segments[1].name = long.clone();
    let mut desk = Desk::with_plan(plan.clone());
    desk.keys(Modifiers::NONE, Key::ArrowRight);
    let is_long = |words: Option<String>| words.is_some_and(|words| words.len() > 60_000);
    let found = desk.harness.query_all_by(|node| is_long(node.label()) || is_long(node.value())).count();
    assert_eq!(found, 0, "nothing sets a megabyte of words");
    assert_eq!(*desk.plan(), plan, "looking at it changes nothing");
}

#[test]
fn a_field_takes_a_name_of_two_hundred_letters_and_no_more() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    desk.type_in("Name", &"x".repeat(200));
    assert_eq!(desk.plan().bars[0].segments[1].name.len(), 200);
    desk.type_in("Name", &"y".repeat(201));
    assert!(desk.shows("200 letters are the most"));
    assert_eq!(desk.plan().bars[0].segments[1].name, "x".repeat(200));
}

#[test]
fn panels_come_back_after_the_window_was_tiny() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    let width = |desk: &Desk| desk.harness.get_by_role_and_label(Role::TextInput, "Name").rect().width();
    let before = width(&desk);
    for size in [[200.0, 150.0], [1.0, 1.0], [1366.0, 768.0]] {
        desk.harness.set_size(size.into());
        desk.harness.run();
    }
    assert!((width(&desk) - before).abs() < 2.0, "{before} became {}", width(&desk));
}
