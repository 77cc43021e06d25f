//! The drawing has the room that it needs.

use crate::gui::desk::{Desk, small_plan};

/// A piece ten inches long, forged, of half-inch bar: it has findings, and their list is open.
const TEN_INCHES: &str = r#"{
  "firstheat": 1,
  "title": "Bean hook",
  "units": { "length": "in", "marks": "1/16 in" },
  "bars": [ { "name": "hook", "stock": { "square": "1/2 in" }, "segments": [
    { "name": "curl", "form": { "taper": { "length": "3 in", "to": "point" } } },
    { "name": "shank", "form": { "drawn": { "length": "5 1/2 in", "section": { "square": "3/8 in" } } } },
    { "name": "end", "form": { "plain": { "length": "1 1/2 in" } } }
  ] } ]
}"#;

#[test]
fn a_ten_inch_piece_is_drawn_at_sixty_points_an_inch_on_a_small_screen_with_findings_open() {
    let desk = Desk::with_plan(fh_core::file::read(TEN_INCHES.as_bytes()).unwrap());
    assert!(desk.shows("No hold is planned"), "the list of findings is open");
    let [near, far] = ["Forged end of curl", "Forged end of end"].map(|name| desk.place_of(name).x);
    let points_per_inch = (far - near) / 7.0;
    assert!(points_per_inch >= 60.0, "{points_per_inch}");
}

#[test]
fn an_empty_bar_hides_no_view() {
    let mut plan = small_plan();
    plan.bars[0].segments.clear();
    let desk = Desk::with_plan(plan);
    assert!(desk.shows("Add the first part") && !desk.shows("one view only"));
}
