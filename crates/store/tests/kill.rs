//! A program that is killed while it saves leaves the old plan or the new one, whole.

#![cfg(unix)]
#![allow(clippy::unwrap_used, reason = "tests")]

use fh_core::file;
use fh_core::plan::Plan;
use fh_store::demos::DEMOS;
use fh_store::{Home, Journal};
use std::env;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

/// Names the file that the child saves to, in a loop until it is killed.
const SAVE_TO: &str = "FIRSTHEAT_TEST_SAVE_TO";
const ROUNDS: u64 = 100;

/// Two plans of very different lengths, so that a mixture of them would show.
fn plans() -> [Plan; 2] {
    let short = file::read(DEMOS[0].text.as_bytes()).unwrap();
    let mut long = short.clone();
    long.notes = Some("a long note ".repeat(20_000));
    [short, long]
}

fn child(save_to: &Path) -> Child {
    Command::new(env::current_exe().unwrap())
        .args(["--exact", "the_child_saves_until_it_is_killed"])
        .env(SAVE_TO, save_to)
        .stdout(Stdio::null())
        .spawn()
        .unwrap()
}

#[test]
fn the_child_saves_until_it_is_killed() {
    let Some(path) = env::var_os(SAVE_TO).map(PathBuf::from) else { return };
    let journal = Journal::open(&Home::at(path.parent().unwrap())).unwrap();
    for plan in plans().iter().cycle() {
        fh_store::save(&path, plan, None, true).unwrap();
        journal.write(None, plan).unwrap();
    }
}

#[test]
fn a_kill_during_a_save_leaves_the_old_plan_or_the_new_one() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a.plan.json");
    let plans = plans();
    fh_store::save(&path, &plans[0], None, false).unwrap();
    let mut seen = [0, 0];
    for round in 0..ROUNDS {
        let mut child = child(&path);
        wait_for_a_change(&path);
        sleep(Duration::from_micros(round * 377 % 9000));
        child.kill().unwrap();
        child.wait().unwrap();
        let found = fh_store::load(&path).unwrap().plan;
        let which = plans.iter().position(|plan| *plan == found).unwrap();
        seen[which] += 1;
    }
    assert_eq!(seen.iter().sum::<u64>(), ROUNDS);
    check_journals(&Home::at(folder.path()), &plans);
}

/// Waits until the child has saved once.
fn wait_for_a_change(path: &Path) {
    use std::os::unix::fs::MetadataExt;
    let inode = || std::fs::metadata(path).unwrap().ino();
    let (before, start) = (inode(), Instant::now());
    while inode() == before {
        assert!(start.elapsed() < Duration::from_secs(60), "the child does not save");
        sleep(Duration::from_micros(200));
    }
}

/// The work of every killed child is offered back, whole.
fn check_journals(home: &Home, plans: &[Plan]) {
    let left = Journal::leftovers(home);
    assert!(!left.work.is_empty() && left.broken.is_empty());
    for leftover in left.work {
        assert!(plans.contains(&leftover.plan().unwrap()));
        leftover.discard().unwrap();
    }
    assert!(Journal::leftovers(home).work.is_empty());
}
