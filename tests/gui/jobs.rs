//! Jobs in the window: saved, opened, taken back, asked for before they are lost, and kept over a crash.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use fh_app::{Editor, Services};
use fh_rack::kept::job::{self, Job};
use fh_store::Home;
use std::fs;
use std::path::{Path, PathBuf};

const NONE: Modifiers = Modifiers::NONE;
const CTRL: Modifiers = Modifiers::COMMAND;

const JOB: &str = r#"{
  "firstheat_job": 1,
  "title": "Hooks for the wall",
  "for": "the kitchen garden",
  "plans": [
    { "plan": "plans/hook.plan.json", "count": 4 },
    { "plan": "plans/../shed.plan.json", "cut": "hacksaw" }
  ],
  "lines": [{ "kind": "delivery", "price": "35.00" }]
}
"#;

/// Writes a job of two plans into a folder.
fn write_job(folder: &Path) -> PathBuf {
    let shed = fh_core::plan::Plan { title: "Shed hook".to_owned(), ..small_plan() };
    fs::create_dir_all(folder.join("plans")).unwrap();
    fs::write(folder.join("plans/hook.plan.json"), fh_core::file::write(&small_plan())).unwrap();
    fs::write(folder.join("shed.plan.json"), fh_core::file::write(&shed)).unwrap();
    fs::write(folder.join("wall.job.json"), JOB).unwrap();
    folder.join("wall.job.json")
}

/// The job's file is opened as the program starts.
fn opened() -> (Desk, PathBuf) {
    let mut path = PathBuf::new();
    let desk = Desk::with(Vec::new(), |services, folder| {
        path = write_job(folder);
        Editor::with_file(services, &path)
    });
    (desk, path)
}

/// The open plan lies in a file, and its cut list is in front.
fn at_the_cut_list() -> Desk {
    let mut desk = Desk::with(Vec::new(), |services, folder| {
        write_job(folder);
        Editor::with_file(services, &folder.join("shed.plan.json"))
    });
    desk.keys(Modifiers::ALT, Key::Num3);
    desk
}

fn read(path: &Path) -> Job {
    job::read(&fs::read(path).unwrap()).unwrap()
}

/// Types a path into the dialog in front, and Enter.
fn type_path(desk: &mut Desk, path: &Path) {
    desk.type_only("File", path.to_str().unwrap());
    desk.keys(NONE, Key::Enter);
}

#[test]
fn a_job_that_is_opened_and_saved_again_keeps_the_text_of_its_file() {
    let (mut desk, path) = opened();
    assert_eq!(desk.plan().title, "Bean hook", "its first plan is open");
    assert!(desk.shows("Title of the job") && desk.shows("wall.job.json"));
    assert_eq!(desk.text_of("Whom the job is for"), "the kitchen garden");
    desk.type_in("How many of Shed hook", "2");
    assert!(desk.shows("● wall.job.json, changes not saved") && desk.editor().title().starts_with('*'));
    desk.keys(CTRL, Key::S);
    assert!(desk.shows("Saved in") && !desk.editor().title().starts_with('*'));
    let line = r#"{ "plan": "plans/../shed.plan.json", "count": 2, "cut": "hacksaw" }"#;
    let wanted = JOB.replace(r#"{ "plan": "plans/../shed.plan.json", "cut": "hacksaw" }"#, line);
    assert_eq!(fs::read_to_string(&path).unwrap(), wanted);
}

#[test]
fn a_new_job_is_saved_beside_its_plans_and_names_them_from_its_folder_on() {
    let mut desk = at_the_cut_list();
    let folder = desk.folder.path().to_owned();
    assert!(!desk.editor().title().starts_with('*'), "some of one plan is no job yet");
    desk.press("Add a plan…");
    type_path(&mut desk, &folder.join("plans/hook.plan.json"));
    assert!(desk.editor().title().starts_with('*'));
    desk.keys(CTRL, Key::S);
    assert!(desk.shows("Save the job"));
    let path = folder.join("plans/both");
    type_path(&mut desk, &path);
    let saved = read(&folder.join("plans/both.job.json"));
    let plans: Vec<&str> = saved.plans.iter().map(|line| line.plan.as_str()).collect();
    assert_eq!(plans, ["../shed.plan.json", "hook.plan.json"]);
    assert!(!desk.editor().title().starts_with('*'));
}

#[test]
fn a_plan_in_no_file_has_to_be_saved_before_its_job() {
    let mut desk = Desk::with_plan(small_plan());
    desk.keys(Modifiers::ALT, Key::Num5);
    desk.type_in("Title of the job", "One hook");
    desk.keys(CTRL, Key::S);
    assert!(desk.shows("the open plan has none yet"));
    desk.press("OK");
    assert_eq!(desk.text_of("Title of the job"), "One hook", "nothing is lost by it");
}

#[test]
fn changes_of_a_job_are_taken_back_and_done_again() {
    let (mut desk, _) = opened();
    let before = desk.plan().clone();
    desk.type_in("What is agreed", "by May");
    desk.press("Leave out Shed hook");
    assert!(!desk.shows("How many of Shed hook"));
    desk.keys(CTRL, Key::Z);
    assert!(desk.shows("How many of Shed hook"));
    desk.keys(CTRL, Key::Z);
    assert_eq!(desk.text_of("What is agreed"), "");
    desk.keys(CTRL.plus(Modifiers::SHIFT), Key::Z);
    assert_eq!(desk.text_of("What is agreed"), "by May");
    assert_eq!(*desk.plan(), before, "the plan is not touched");
}

#[test]
fn a_job_is_asked_for_before_another_takes_its_place_or_the_window_is_closed() {
    let (mut desk, path) = opened();
    desk.type_in("What is agreed", "by May");
    desk.press("New job");
    assert!(desk.shows("“Hooks for the wall” has changes that are not saved."));
    desk.press("Cancel");
    assert_eq!(desk.text_of("What is agreed"), "by May");
    desk.keys(CTRL, Key::Q);
    assert!(desk.shows("Save the job?"));
    desk.press("Cancel");
    desk.keys(CTRL, Key::O);
    desk.press("Save");
    assert_eq!(read(&path).agreed.as_deref(), Some("by May"));
    assert!(desk.shows("Recent jobs"), "then it is asked which to open");
    desk.press("Cancel");
    desk.type_in("What is agreed", "by June");
    desk.press("New job");
    desk.press("Don't save");
    assert_eq!(desk.text_of("What is agreed"), "");
    assert_eq!(read(&path).agreed.as_deref(), Some("by May"));
}

#[test]
fn a_recent_job_is_opened_with_a_click() {
    let (mut desk, _) = opened();
    desk.press("New job");
    assert_eq!(desk.text_of("Title of the job"), "");
    desk.press("Open a job…");
    let mut jobs = desk.harness.query_all_by(|node| {
        node.role() == Role::Button && node.label().is_some_and(|label| label.contains("wall.job.json"))
    });
    jobs.next().unwrap().click();
    drop(jobs);
    desk.harness.run();
    assert_eq!(desk.text_of("Title of the job"), "Hooks for the wall");
}

#[test]
fn a_job_whose_file_someone_else_changed_is_not_written_over() {
    let (mut desk, path) = opened();
    desk.type_in("What is agreed", "by May");
    let theirs = JOB.replace("Hooks for the wall", "Hooks for the barn");
    fs::write(&path, &theirs).unwrap();
    desk.keys(CTRL, Key::S);
    assert!(desk.shows("Since this job was opened, its file has been changed by someone else."));
    assert_eq!(fs::read_to_string(&path).unwrap(), theirs);
    desk.press("Save as…");
    let other = desk.folder.path().join("other.job.json");
    type_path(&mut desk, &other);
    assert_eq!(read(&other).agreed.as_deref(), Some("by May"));
    assert_eq!(fs::read_to_string(&path).unwrap(), theirs);
}

#[test]
fn a_job_is_offered_back_after_a_crash() {
    let (mut desk, path) = opened();
    desk.type_in("What is agreed", "by May");
    // Until the journal is written.
    desk.harness.run_steps(12);
    let Desk { harness, folder } = desk;
    drop(harness);
    let mut desk = Desk::in_folder(folder, Vec::new(), |services: Services, folder| {
        assert!(Home::at(folder).journal_folder().is_dir());
        Editor::with_plan(services, small_plan())
    });
    assert!(desk.shows("Recovered job") && desk.shows("Hooks for the wall"));
    desk.press("Open");
    assert_eq!(desk.text_of("What is agreed"), "by May");
    assert!(desk.shows("● wall.job.json, changes not saved"));
    desk.keys(CTRL, Key::S);
    assert_eq!(read(&path).agreed.as_deref(), Some("by May"));
    assert_eq!(read(&path).plans[1].plan, "shed.plan.json");
}

#[test]
fn a_plan_of_a_job_that_is_gone_is_named_and_its_list_waits_for_it() {
    let (mut desk, _) = opened();
    let shed = desk.folder.path().join("shed.plan.json");
    let kept = fs::read(&shed).unwrap();
    fs::remove_file(&shed).unwrap();
    desk.harness.run_steps(8);
    desk.keys(Modifiers::ALT, Key::Num3);
    desk.wait_for("A plan of the job is not read");
    assert!(desk.shows("shed.plan.json"));
    fs::write(&shed, kept).unwrap();
    desk.wait(|desk| !desk.shows("A plan of the job is not read"));
}

#[test]
fn work_beside_the_fire_is_put_into_a_job_and_wrong_entries_are_told() {
    let (mut desk, path) = opened();
    desk.press("Add work or a cost");
    desk.harness.run();
    let times = desk.harness.get_all_by_role_and_label(Role::TextInput, "Time it takes");
    times.last().unwrap().focus();
    desk.harness.run();
    desk.keys(CTRL, Key::A);
    desk.letters("soon");
    desk.keys(NONE, Key::Enter);
    assert!(desk.shows("\"soon\" isn't a time"));
    desk.keys(CTRL, Key::A);
    desk.letters("1 h 30 min");
    desk.keys(NONE, Key::Enter);
    desk.keys(CTRL, Key::S);
    assert_eq!(read(&path).lines[1].time.as_ref().map(|time| time.minutes), Some(90.0));
}

#[test]
fn a_file_that_is_no_job_is_told_and_the_job_in_hand_stays() {
    let (mut desk, _) = opened();
    let bad = desk.folder.path().join("bad.job.json");
    fs::write(&bad, JOB.replace("\"count\": 4", "\"count\": 0")).unwrap();
    desk.press("Open a job…");
    type_path(&mut desk, &bad);
    assert!(desk.shows("The job cannot be opened") && desk.shows("a count runs from 1 to 100000"));
    desk.press("OK");
    assert_eq!(desk.text_of("Title of the job"), "Hooks for the wall");
}

#[test]
fn the_money_of_a_job_and_what_is_paid_of_its_steel_are_chosen() {
    let (mut desk, path) = opened();
    desk.type_in("Currency of the job", "JPY");
    desk.type_in("Figures behind the point of the job", "0");
    assert!(desk.shows("\"35.00\" has more than 0 figures behind the point"), "what does not fit is told");
    desk.keys(NONE, Key::Escape);
    desk.type_in("What it costs", "3500");
    desk.type_in("Figures behind the point of the job", "0");
    desk.choose("What is paid of the steel", "only what is used");
    desk.keys(CTRL, Key::S);
    let job = read(&path);
    assert_eq!((job.currency.as_deref(), job.decimals, job.steel), (Some("JPY"), Some(0), Some(job::SteelBy::Used)));
    desk.choose("What is paid of the steel", "whole bars");
    desk.keys(CTRL, Key::S);
    assert!(read(&path).steel.is_none() && read(&path).offcuts_paid);
}

#[test]
fn two_currencies_in_one_quote_are_told_and_nothing_is_lost() {
    let (mut desk, _) = opened();
    desk.type_in("Currency of the job", "GBP");
    desk.keys(Modifiers::ALT, Key::Num4);
    desk.type_in("Currency", "EUR");
    desk.wait_for("a quote has one currency");
    assert_eq!(desk.text_of("Currency"), "EUR");
}
