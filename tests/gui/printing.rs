//! Printing: the pages are shown before, and what was printed can be opened.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use fh_app::{Editor, Scripted, Services};
use std::path::PathBuf;
use std::sync::{Arc, Mutex};

const CTRL: Modifiers = Modifiers::COMMAND;
const NONE: Modifiers = Modifiers::NONE;

fn tick(desk: &mut Desk, sheet: &str) {
    desk.harness.get_by_role_and_label(Role::CheckBox, sheet).click();
    desk.harness.run();
}

/// A desk, and what is opened in other programs.
fn with_opener() -> (Desk, Arc<Mutex<Vec<PathBuf>>>) {
    let scripted = Scripted::default();
    let shown = scripted.shown();
    let desk = Desk::with(Vec::new(), |services, _| {
        Editor::with_plan(Services { dialogs: Box::new(scripted), ..services }, small_plan())
    });
    (desk, shown)
}

#[test]
fn the_pages_are_shown_before_they_are_printed() {
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(CTRL, Key::P);
    desk.wait_for("Page 1 of 3");
    for purpose in ["lay it on and punch the marks", "One leaf to forge from", "a notch for each size"] {
        assert!(desk.shows(purpose), "{purpose}");
    }
    desk.keys(NONE, Key::PageDown);
    assert!(desk.shows("Page 2 of 3"));
    desk.press("Page before");
    assert!(desk.shows("Page 1 of 3"));
    tick(&mut desk, "bench sheet");
    desk.wait_for("1 page");
    desk.press("Larger");
    assert!(!desk.shows("For the work"), "the page alone is shown");
    desk.press("Smaller");
    tick(&mut desk, "mark sheet");
    desk.wait_for("Nothing to print");
}

#[test]
fn what_was_printed_is_opened_or_its_folder() {
    let (mut desk, shown) = with_opener();
    for (button, ends) in [("Open", "bean-hook-sheets.pdf"), ("Open folder", "")] {
        desk.keys(CTRL, Key::P);
        desk.press("Make the file");
        assert!(desk.shows("3 pages"), "how many pages it has is told");
        desk.press(button);
        let last = shown.lock().unwrap().last().cloned().unwrap();
        assert_eq!(last, if ends.is_empty() { desk.folder.path().to_owned() } else { desk.folder.path().join(ends) });
        assert!(!desk.shows("Open folder"), "then the dialog is gone");
    }
}

#[test]
fn the_sheets_that_were_printed_last_are_ticked_the_next_time() {
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(CTRL, Key::P);
    tick(&mut desk, "bench sheet");
    tick(&mut desk, "templates");
    desk.press("Make the file");
    desk.press("Close");
    let Desk { harness, folder } = desk;
    drop(harness);
    let mut desk = Desk::in_folder(folder, Vec::new(), |services, _| Editor::with_plan(services, small_plan()));
    desk.keys(CTRL, Key::P);
    for (sheet, is_ticked) in [("mark sheet", true), ("templates", true), ("bench sheet", false), ("ladder", false)] {
        let node = desk.harness.get_by_role_and_label(Role::CheckBox, sheet);
        let toggled = node.accesskit_node().toggled() == Some(egui::accesskit::Toggled::True);
        assert_eq!(toggled, is_ticked, "{sheet}");
    }
}

#[test]
fn beside_a_cut_list_and_a_quote_their_own_papers_are_printed() {
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(Modifiers::ALT, Key::Num3);
    desk.wait_for("How it is cut");
    desk.keys(CTRL, Key::P);
    assert!(desk.shows("Print the cut list"));
    desk.wait_for("Page 1 of ");
    desk.press("Cancel");
    desk.keys(Modifiers::ALT, Key::Num4);
    desk.wait_for("1 of the job");
    desk.keys(CTRL, Key::P);
    assert!(desk.shows("Print the quote"));
    desk.wait_for("1 page");
    desk.press("Make the file");
    assert!(desk.shows("The quote is in ") && desk.shows("1 page."));
    desk.press("Close");
    desk.keys(Modifiers::ALT, Key::Num1);
    desk.keys(CTRL, Key::P);
    assert!(desk.shows("Print the sheets"), "which bar is about the plan");
}
