//! The figures at the foot say whose they are: one bar's, or those of the whole plan.

use crate::gui::desk::{Desk, small_plan};
use fh_core::plan::Plan;

/// A post of 100 mm and three legs of 50 mm, all of bar 12 mm square: 12 · 12 · 250 mm³ of mild steel in all.
const POST_AND_LEGS: &str = r#"{ "firstheat": 1, "title": "Stand", "units": { "length": "mm", "marks": "1 mm" }, "bars": [
  { "name": "post", "stock": { "square": "12 mm" }, "segments": [ { "name": "a", "form": { "plain": { "length": "100 mm" } } } ] },
  { "name": "leg", "count": 3, "stock": { "square": "12 mm" }, "segments": [ { "name": "b", "form": { "plain": { "length": "50 mm" } } } ] }
] }"#;

fn stand() -> Plan {
    fh_core::file::read(POST_AND_LEGS.as_bytes()).unwrap()
}

fn shows_all(desk: &Desk, words: &[&str]) {
    for words in words {
        assert!(desk.shows(words), "{words}");
    }
}

#[test]
fn with_the_title_selected_the_foot_sums_up_the_whole_plan() {
    let mut desk = Desk::with_plan(stand());
    desk.press("Plan: Stand");
    // 36,000 mm³ × 7.85 mg/mm³ = 282.6 g.
    shows_all(
        &desk,
        &["Whole plan", "2 bars", "Cut, in all", "250 mm", "Bars weigh, in all", "283 g", "Pieces, in all"],
    );
    assert!(!desk.shows("Cut length"));
}

#[test]
fn the_figures_of_one_bar_are_named_as_that_bars() {
    let mut desk = Desk::with_plan(stand());
    desk.press("Bar: leg");
    // 7,200 mm³ × 7.85 mg/mm³ = 56.5 g.
    shows_all(&desk, &["Bar 2 of 2", "leg", "Cut length, each", "50 mm", "Bar weighs, each", "56.5 g"]);
    assert!(!desk.shows("in all"));
    desk.press("Part 1: a");
    shows_all(&desk, &["Bar 1 of 2", "post", "Cut length", "100 mm"]);
    assert!(!desk.shows("each"));
}

#[test]
fn a_plan_of_one_bar_made_once_needs_no_sums() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Plan: Bean hook");
    assert!(desk.shows("Cut length") && !desk.shows("in all") && !desk.shows("Bar 1 of 1"));
}

#[test]
fn with_large_text_no_figure_of_the_foot_leaves_the_window() {
    use egui_kittest::kittest::Queryable;
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("settings.json"), r#"{ "tour_seen": true, "text_size": 2.0 }"#).unwrap();
    let desk = Desk::in_folder(folder, Vec::new(), |services, _| fh_app::Editor::with_plan(services, small_plan()));
    for name in ["Cut length", "Bar weighs", "Piece weighs", "Pieces", "Largest mark error"] {
        let rect = desk.harness.get_by_label(name).rect();
        assert!(rect.right() <= 1366.0, "{name} at {rect:?}");
    }
}
