//! Plans are saved, opened, guarded and recovered; the mark sheet is made.

use crate::gui::desk::{Desk, small_plan};
use egui::{Key, Modifiers};
use fh_app::{Answer, Editor};
use fh_store::{Home, Journal};
use std::path::Path;

#[test]
fn a_plan_is_saved_by_a_typed_path_where_there_is_no_dialog() {
    let mut desk = Desk::with_plan(small_plan());
    let path = desk.folder.path().join("hook.plan.json");
    desk.keys(Modifiers::COMMAND, Key::S);
    desk.press("Browse…");
    assert!(desk.shows("Type the file's path"), "it says that no dialog answered");
    desk.type_only("File", path.to_str().unwrap());
    desk.press("Save");
    assert_eq!(fh_store::load(&path).unwrap().plan, small_plan());
    assert!(!desk.editor().is_changed());
}

#[test]
fn a_plan_is_saved_through_the_systems_dialog() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("chosen.plan.json");
    let mut desk =
        Desk::with(vec![Answer::File(path.clone())], |services, _| Editor::with_plan(services, small_plan()));
    desk.keys(Modifiers::COMMAND, Key::S);
    desk.press("Browse…");
    assert_eq!(fh_store::load(&path).unwrap().plan, small_plan());
}

#[test]
fn a_file_that_is_there_is_not_replaced_unasked() {
    let mut desk = Desk::with_plan(small_plan());
    let path = desk.folder.path().join("other.plan.json");
    std::fs::write(&path, "something else").unwrap();
    desk.keys(Modifiers::COMMAND, Key::S);
    desk.type_only("File", path.to_str().unwrap());
    desk.press("Save");
    assert_eq!(std::fs::read_to_string(&path).unwrap(), "something else");
    desk.press("Replace it");
    assert_eq!(fh_store::load(&path).unwrap().plan, small_plan());
}

#[test]
fn a_file_named_without_its_ending_can_be_replaced_too() {
    let mut desk = Desk::with_plan(small_plan());
    let path = desk.folder.path().join("hook-v1.2.plan.json");
    std::fs::write(&path, "something else").unwrap();
    desk.keys(Modifiers::COMMAND, Key::S);
    let typed = desk.folder.path().join("hook-v1.2");
    desk.type_only("File", typed.to_str().unwrap());
    desk.press("Save");
    desk.press("Replace it");
    assert_eq!(fh_store::load(&path).unwrap().plan, small_plan());
}

fn opened() -> (Desk, std::path::PathBuf) {
    let mut path = None;
    let desk = Desk::with(Vec::new(), |services, folder| {
        let file = folder.join("hook.plan.json");
        fh_store::save(&file, &small_plan(), None, false).unwrap();
        path = Some(file.clone());
        Editor::with_file(services, &file)
    });
    (desk, path.unwrap())
}

fn change(desk: &mut Desk) {
    desk.press("Part 2: shank");
    desk.type_in("Length", "200");
    assert!(desk.editor().is_changed());
}

#[test]
fn a_file_that_someone_else_changed_is_not_overwritten_unasked() {
    let (mut desk, path) = opened();
    change(&mut desk);
    std::fs::write(&path, "theirs").unwrap();
    desk.keys(Modifiers::COMMAND, Key::S);
    assert_eq!(std::fs::read_to_string(&path).unwrap(), "theirs");
    desk.press("Overwrite it");
    assert_eq!(fh_store::load(&path).unwrap().plan, *desk.plan());
    assert!(!desk.editor().is_changed());
}

#[test]
fn unsaved_changes_are_asked_about_before_another_plan_is_begun() {
    let (mut desk, path) = opened();
    change(&mut desk);
    desk.keys(Modifiers::COMMAND, Key::N);
    desk.press("Cancel");
    assert!(desk.editor().is_changed());
    desk.keys(Modifiers::COMMAND, Key::N);
    desk.press("Save");
    assert_eq!(fh_store::load(&path).unwrap().plan.bars[0].segments[1].form.length().unwrap().text(), "200 mm");
    desk.press("Begin");
    assert!(desk.plan().bars[0].segments.is_empty());
}

#[test]
fn the_title_marks_unsaved_changes() {
    let (mut desk, _) = opened();
    assert_eq!(desk.editor().title(), "Bean hook • First Heat");
    change(&mut desk);
    assert_eq!(desk.editor().title(), "*Bean hook • First Heat");
}

#[test]
fn a_file_that_is_no_plan_is_refused_in_words() {
    let desk = Desk::with(Vec::new(), |services, folder| {
        let file = folder.join("broken.plan.json");
        std::fs::write(&file, "{ \"firstheat\": 1, \"bars\": [ 7 ] }").unwrap();
        Editor::with_file(services, &file)
    });
    assert!(desk.shows("The plan cannot be opened"));
    assert!(desk.shows("broken.plan.json"));
}

/// Work that a killed program left in a folder.
fn leave_work(folder: &Path) {
    let journal = Journal::open(&Home::at(folder)).unwrap();
    journal.write(None, &small_plan()).unwrap();
}

#[test]
fn work_that_was_left_over_is_offered_back() {
    let mut desk = Desk::with(Vec::new(), |services, folder| {
        leave_work(folder);
        let other = fh_core::file::read(fh_store::demos::DEMOS[0].text.as_bytes()).unwrap();
        Editor::with_plan(services, other)
    });
    assert!(desk.shows("Recovered work from a minute ago: Bean hook"));
    desk.press("Open");
    assert_eq!(*desk.plan(), small_plan());
    assert!(desk.editor().is_changed(), "it is in no file yet");
}

#[test]
fn work_that_was_left_over_is_let_go_when_asked() {
    let mut desk = Desk::with(Vec::new(), |services, folder| {
        leave_work(folder);
        Editor::with_plan(services, small_plan())
    });
    desk.press("Discard");
    assert!(Journal::leftovers(&Home::at(desk.folder.path())).work.is_empty());
}

#[test]
fn unsaved_work_is_kept_in_the_journal_a_while_after_the_change() {
    let (mut desk, _) = opened();
    change(&mut desk);
    desk.harness.run_steps(16);
    let journal = Home::at(desk.folder.path()).journal_folder();
    let works = std::fs::read_dir(journal)
        .unwrap()
        .flatten()
        .filter(|file| std::fs::read_to_string(file.path()).is_ok_and(|text| text.contains("200 mm")));
    assert_eq!(works.count(), 1);
}

#[test]
fn the_sheets_are_made_as_pdf_and_as_svg() {
    let mut desk = Desk::with_plan(small_plan());
    for (kind, name, head) in [("PDF", "sheet.pdf", "%PDF"), ("SVG", "sheet.svg", "<")] {
        let path = desk.folder.path().join(name);
        desk.keys(Modifiers::COMMAND, Key::P);
        desk.harness.get_by_label_button(kind);
        desk.harness.run();
        desk.type_only("File", path.to_str().unwrap());
        desk.press("Make the file");
        // As SVG each page is a file of its own.
        let first = if kind == "SVG" { path.with_file_name("sheet-1.svg") } else { path };
        let bytes = std::fs::read(&first).unwrap();
        assert!(bytes.starts_with(head.as_bytes()), "{name}");
        desk.press("Close");
    }
}

#[test]
fn after_printing_the_whole_path_is_shown_until_the_next_deed() {
    use egui_kittest::kittest::Queryable;
    let mut desk = Desk::with_plan(small_plan());
    let folder = desk.folder.path().join("a folder with a long name, as there are many on the disks of this world");
    std::fs::create_dir(&folder).unwrap();
    let path = folder.join("bean-hook.pdf");
    desk.keys(Modifiers::COMMAND, Key::P);
    desk.type_only("File", path.to_str().unwrap());
    desk.press("Make the file");
    desk.press("Close");
    let said = format!("The mark sheet, the bench sheet are in {}, 3 pages. Print at 100 %.", path.display());
    let place = desk.harness.get_by_label(&said).rect();
    // Not cut off: a line of it is no longer than the strips are wide, and there are as many lines as it takes.
    assert!(desk.harness.ctx.content_rect().contains_rect(place), "{place:?}");
    assert!(place.width() * place.height() > 13.0 * 5.0 * said.chars().count() as f32 * 0.8, "{place:?}");
    desk.press("Part 2: shank");
    assert!(!desk.shows("Print at 100 %."), "gone with the next deed");
}

#[test]
fn a_path_that_cannot_be_written_keeps_the_keyboard() {
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    desk.type_only("File", desk.folder.path().join("no such folder/a.plan.json").to_str().unwrap());
    desk.keys(Modifiers::NONE, Key::Enter);
    assert!(desk.shows("no such folder") && desk.has_keyboard("File"));
}

#[test]
fn a_hint_is_gone_when_something_else_is_done() {
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(Modifiers::COMMAND, Key::R);
    assert!(desk.shows("Click two points"));
    desk.keys(Modifiers::NONE, Key::F9);
    assert!(!desk.shows("Click two points"));
}

#[test]
fn an_empty_plan_is_not_printed_unawares() {
    let mut empty = small_plan();
    empty.bars[0].segments.clear();
    for (plan, told) in [(empty, true), (small_plan(), false)] {
        let mut desk = Desk::with_plan(plan);
        desk.keys(Modifiers::COMMAND, Key::P);
        assert_eq!(desk.shows("Nothing is on the bar yet: the sheet will be empty."), told);
    }
}

#[test]
fn the_paper_is_the_usual_one_beside_the_unit_until_another_is_chosen() {
    use egui_kittest::kittest::{NodeT, Queryable};
    let mut desk = Desk::with_plan(small_plan());
    let is_chosen = |desk: &mut Desk, paper: &str| {
        desk.keys(Modifiers::COMMAND, Key::P);
        let button = desk.harness.get_by_role_and_label(egui::accesskit::Role::RadioButton, paper);
        let is_chosen = button.accesskit_node().toggled() == Some(egui::accesskit::Toggled::True);
        desk.keys(Modifiers::NONE, Key::Escape);
        is_chosen
    };
    assert!(is_chosen(&mut desk, "A4"));
    desk.press("Inches");
    assert!(is_chosen(&mut desk, "Letter"));
    desk.keys(Modifiers::COMMAND, Key::P);
    desk.harness.get_by_label_button("A4");
    desk.harness.run();
    desk.type_only("File", desk.folder.path().join("a.pdf").to_str().unwrap());
    desk.press("Make the file");
    desk.press("Close");
    assert!(is_chosen(&mut desk, "A4"), "chosen");
}

#[test]
fn templates_are_printed_where_they_are_ticked() {
    use egui_kittest::kittest::Queryable;
    let mut desk = Desk::with_plan(small_plan());
    let path = desk.folder.path().join("both.svg");
    desk.keys(Modifiers::COMMAND, Key::P);
    desk.harness.get_by_label_button("SVG");
    desk.harness.run();
    desk.harness.get_by_role_and_label(egui::accesskit::Role::CheckBox, "templates").click();
    desk.harness.run();
    desk.type_only("File", path.to_str().unwrap());
    desk.press("Make the file");
    let page = |number: u32| std::fs::read_to_string(desk.folder.path().join(format!("both-{number}.svg"))).unwrap();
    let (first, second) = (page(1), page(2));
    assert!(first.contains("MARK SHEET") && second.contains("TEMPLATES") && !path.exists());
    assert!(desk.shows("both-1.svg to "), "what was written is told");
}

/// Presses a round button by its name.
trait Choose {
    fn get_by_label_button(&mut self, name: &str);
}

impl Choose for egui_kittest::Harness<'static, Editor> {
    fn get_by_label_button(&mut self, name: &str) {
        use egui_kittest::kittest::Queryable;
        self.get_by_role_and_label(egui::accesskit::Role::RadioButton, name).click();
    }
}

#[test]
fn the_tour_is_shown_once_and_never_again() {
    let first = |folder: tempfile::TempDir| {
        Desk::in_folder(folder, Vec::new(), |services, _| Editor::with_plan(services, small_plan()))
    };
    let mut desk = first(tempfile::tempdir().unwrap());
    assert!(desk.shows("1 of 8"));
    for _ in 0..7 {
        desk.press("Next");
    }
    desk.press("Begin my own");
    assert!(!desk.shows("of 8"));
    assert!(desk.shows("New plan"), "and a plan of one's own is begun");
    let desk = first(desk.folder);
    assert!(!desk.shows("1 of 8"));
}

#[test]
fn a_plan_is_begun_with_marks_that_there_are_already() {
    let mut desk = Desk::empty();
    desk.type_in("The bar, as you say it", "12 mm square");
    desk.type_only("Its marks, where you have them already", "50, 40");
    assert!(desk.shows("■"), "a mark lies behind the one before it, and it is said why that cannot be");
    desk.type_only("Its marks, where you have them already", "50, 110, 155");
    desk.press("Begin");
    let marks: Vec<_> = desk.plan().bars[0].segments.iter().filter_map(|part| part.ends_at.as_ref()).collect();
    assert_eq!(marks.iter().map(|mark| mark.text()).collect::<Vec<_>>(), ["50 mm", "110 mm", "155 mm"]);
    assert!(!desk.editor().is_changed(), "nothing is to be undone yet");
}
