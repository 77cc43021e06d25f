//! The real window, once: it opens a plan, a mark is dragged with the real pointer, the plan is saved, the window closes.
//!
//! It is opened on a display of its own by `Xvfb`, and driven by `xdotool`; both are Debian packages (`xvfb`, `xdotool`).

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod display;
mod plan_on_screen;
mod program;

use display::Display;
use fh_core::balance::balance;
use fh_core::file;
use fh_store::demos::DEMOS;
use program::Program;
use std::path::Path;
use std::time::{Duration, Instant};
use tests::mm;

/// The demo that is opened, and the boundary that is dragged.
const DEMO: &str = "trellis-bracket.plan.json";
const SEGMENT: usize = 3;
/// How far it is dragged, in pixels.
const ALONG: i32 = 60;

/// Waits until something is there.
fn wait_for<T>(what: &str, mut look: impl FnMut() -> Option<T>) -> T {
    let since = Instant::now();
    loop {
        if let Some(found) = look() {
            return found;
        }
        assert!(since.elapsed() < Duration::from_secs(30), "waited in vain for {what}");
        std::thread::sleep(Duration::from_millis(50));
    }
}

/// The marks of a plan's first bar in mm.
fn marks(path: &Path) -> Vec<f64> {
    let plan = file::read(&std::fs::read(path).unwrap()).unwrap();
    balance(&plan).bars[0].segments.iter().map(|segment| mm(segment.mark_end)).collect()
}

/// The finished length in mm of the segment whose mark is dragged.
fn forged(path: &Path) -> f64 {
    let plan = file::read(&std::fs::read(path).unwrap()).unwrap();
    mm(balance(&plan).bars[0].segments[SEGMENT].forged_length)
}

#[test]
fn a_mark_dragged_in_the_real_window_is_saved() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("bracket.plan.json");
    let demo = DEMOS.iter().find(|demo| demo.file_name == DEMO).unwrap();
    std::fs::write(&path, demo.text).unwrap();
    std::fs::write(folder.path().join("settings.json"), r#"{ "tour_seen": true, "piece_open": false }"#).unwrap();
    let before = marks(&path);

    let display = Display::open();
    let mut program = Program::start(&display, folder.path(), &path);
    let window = program.window(&display);
    let size = display.size_of(&window);
    let mark = plan_on_screen::mark(&path, SEGMENT, size);

    display.drag(&window, mark, ALONG);
    display.keys(&window, "ctrl+s");
    let after = wait_for("the saved plan", || {
        program.assert_running();
        let marks = marks(&path);
        (marks != before).then_some(marks)
    });

    assert!(after[SEGMENT] > before[SEGMENT] + 5.0, "{before:?} -> {after:?}");
    let long = forged(&path);
    assert!((long - long.round()).abs() < 0.01, "its finished length ends on whole millimetres: {long}");
    assert_eq!(after[..SEGMENT], before[..SEGMENT], "the marks before it stay");
    display.keys(&window, "ctrl+q");
    program.assert_closes();
}
