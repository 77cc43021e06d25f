//! A size is asked for on the plan's page, kept by a part, and taken out again.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use fh_core::plan::{Direction, FeatureAt, Taken};

/// Brings a button into sight.
fn scroll_to(desk: &mut Desk, name: &str) {
    desk.harness.get_by_role_and_label(Role::Button, name).scroll_to_me();
    desk.harness.run();
}

#[test]
fn a_size_is_asked_for_and_kept() {
    let mut desk = Desk::with_plan(small_plan());
    let title = format!("Plan: {}", small_plan().title);
    desk.press(&title);
    scroll_to(&mut desk, "Ask for a size");
    desk.press("Ask for a size");
    let bar = &desk.plan().bars[0];
    let (first, last) = (bar.segments.first().unwrap().name.clone(), bar.segments.last().unwrap().name.clone());
    assert_eq!(desk.plan().sizes[0].overall.as_ref().map(|overall| overall.direction), Some(Direction::Along));
    desk.type_in("Name of size 1", "reach");
    desk.type_in("Asked of size 1", "17 in");
    desk.choose("Kind of size 1", "between two places");
    let size = desk.plan().sizes[0].clone();
    assert_eq!((size.from.unwrap().part, size.to.unwrap().part), (first.clone(), last));
    desk.choose("To, its place of size 1", "tip");
    desk.choose("Taken of size 1", "on the straight bar");
    desk.choose("Kept by of size 1", &first);
    let size = desk.plan().sizes[0].clone();
    assert_eq!(
        (size.to.unwrap().at, size.taken, size.name.as_str()),
        (FeatureAt::Tip, Some(Taken::OnStraightBar), "reach")
    );
    let found = &desk.editor().balance().sizes[0];
    assert!(found.met && found.kept_by == Some(0), "{found:?}");
    scroll_to(&mut desk, "Remove size 1");
    desk.press("Remove size 1");
    assert!(desk.plan().sizes.is_empty());
}
