//! Runs of segments are kept as motifs, and put into other plans, larger or smaller.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use fh_app::Editor;
use fh_core::plan::{Plan, Segment};
use fh_store::{Home, motifs};

/// A plan in inches on a bar of 1/2 in, with a leaf on a neck.
const LEAF: &str = r#"{
  "firstheat": 1,
  "title": "Leaf key",
  "units": { "length": "in", "marks": "1/16 in" },
  "bars": [ {
    "name": "key",
    "stock": { "square": "1/2 in" },
    "segments": [
      { "name": "shank", "form": { "drawn": { "length": "4 in", "section": { "square": "3/8 in" } } } },
      { "name": "neck", "form": { "taper": { "length": "3/4 in", "to": { "round": "1/4 in" } } },
        "repeats": [ { "what": "lines", "step": "1/8 in" } ] },
      { "name": "leaf", "form": { "flag": { "outline": { "leaf": { "length": "2 1/2 in", "width": "1 in" } },
        "thickness": "1/8 in" } } }
    ]
  } ]
}"#;

fn leaf_plan() -> Plan {
    fh_core::file::read(LEAF.as_bytes()).unwrap()
}

fn names(desk: &Desk) -> Vec<&str> {
    desk.plan().bars[0].segments.iter().map(|segment| segment.name.as_str()).collect()
}

fn lengths(segment: &Segment) -> Vec<String> {
    let mut texts = Vec::new();
    segment.lengths(&mut |length| texts.push(length.text().to_owned()));
    texts
}

/// Presses a radio button of the dialog whose words begin so.
fn pick(desk: &mut Desk, words: &str) {
    let found = |node: &egui_kittest::kittest::AccessKitNode<'_>| {
        node.role() == Role::RadioButton && node.label().is_some_and(|label| label.starts_with(words))
    };
    desk.harness.get_by(found).click();
    desk.harness.run();
}

/// The home of a desk with the neck and the leaf kept as a motif.
fn with_leaf_kept() -> Desk {
    let mut desk = Desk::with_plan(leaf_plan());
    desk.press("Part 2: neck");
    desk.press("Part");
    desk.press("Keep this part… Ctrl+Shift+M");
    desk.type_only("What is it called?", "Leaf end");
    desk.choose("To part", "3: leaf");
    desk.press("Keep it");
    desk
}

#[test]
fn a_run_of_segments_is_kept_under_a_name() {
    let desk = with_leaf_kept();
    assert!(!desk.editor().is_changed(), "keeping a motif changes no plan");
    let (kept, failed) = motifs::list(&Home::at(desk.folder.path()));
    assert_eq!((kept.len(), failed.len()), (1, 0));
    let motif = &kept[0].motif;
    assert_eq!((motif.name.as_str(), motif.segments.len()), ("Leaf end", 2));
    // The neck began as the shank ended; that is written into it.
    assert_eq!(lengths(&motif.segments[0]), ["3/4 in", "3/8 in", "1/4 in", "1/8 in"]);
}

#[test]
fn a_motif_is_put_into_another_plan_at_half_its_size() {
    let kept = with_leaf_kept();
    // Another window, another plan, the same smith.
    let mut desk = Desk::in_folder(kept.folder, Vec::new(), |services, _| Editor::with_plan(services, small_plan()));
    desk.press("Part 2: shank");
    desk.keys(Modifiers::COMMAND, Key::M);
    assert!(desk.shows("Leaf end: "));
    desk.type_only("Scale", "1/2");
    desk.press("Insert");
    assert_eq!(names(&desk), ["point", "shank", "neck", "leaf", "rest"]);
    assert_eq!(desk.editor().selected(), Some(2));
    let segments = &desk.plan().bars[0].segments;
    assert_eq!(lengths(&segments[2]), ["3/8 in", "3/16 in", "1/8 in", "1/16 in"]);
    assert_eq!(lengths(&segments[3]), ["1 1/4 in", "1/2 in", "1/16 in"]);
    // One step back takes all of it out.
    desk.keys(Modifiers::COMMAND, Key::Z);
    assert_eq!(names(&desk), ["point", "shank", "rest"]);
    assert!(!desk.editor().is_changed());
}

#[test]
fn a_motif_fits_the_bar_that_it_is_put_into() {
    let kept = with_leaf_kept();
    let mut plan = small_plan();
    plan.bars[0].stock = serde_json::from_str(r#"{ "square": "3/4 in" }"#).unwrap();
    let mut desk = Desk::in_folder(kept.folder, Vec::new(), |services, _| Editor::with_plan(services, plan));
    desk.press("Part 1: point");
    desk.keys(Modifiers::COMMAND, Key::M);
    desk.harness.get_by_role_and_label(Role::CheckBox, "Fit to this bar: × 1.5").click();
    desk.harness.run();
    pick(&mut desk, "Before it");
    desk.press("Insert");
    assert_eq!(names(&desk), ["neck", "leaf", "point", "shank", "rest"]);
    assert_eq!(lengths(&desk.plan().bars[0].segments[1]), ["3 3/4 in", "1 1/2 in", "3/16 in"]);
}

#[test]
fn a_name_is_given_once_in_a_bar_and_a_motif_replaced_only_when_asked() {
    let mut desk = with_leaf_kept();
    desk.press("Part 3: leaf");
    desk.keys(Modifiers::COMMAND, Key::M);
    desk.press("Insert");
    assert_eq!(names(&desk), ["shank", "neck", "leaf", "neck 2", "leaf 2"]);
    desk.keys(Modifiers::COMMAND | Modifiers::SHIFT, Key::M);
    desk.type_only("What is it called?", "leaf END");
    desk.press("Keep it");
    assert!(desk.shows("A part of this name is kept already."));
    desk.press("Replace it");
    let (kept, _) = motifs::list(&Home::at(desk.folder.path()));
    assert_eq!((kept.len(), kept[0].motif.segments.len()), (1, 1));
}

#[test]
fn what_is_no_scale_is_not_put_in() {
    let mut desk = with_leaf_kept();
    desk.keys(Modifiers::COMMAND, Key::M);
    for wrong in ["twice", "0", "-2", "1/0"] {
        desk.type_only("Scale", wrong);
        assert!(desk.shows("isn't a scale. Try"), "{wrong}");
        desk.harness.key_press(Key::Escape);
        desk.harness.run();
        desk.keys(Modifiers::COMMAND, Key::M);
    }
    assert_eq!(names(&desk).len(), 3);
}

#[test]
fn a_motif_is_removed_when_it_is_asked_twice_and_broken_ones_are_told() {
    let mut desk = with_leaf_kept();
    let folder = desk.folder.path().join("parts");
    std::fs::write(folder.join("torn.part.json"), "{ \"firstheat_motif\": 1").unwrap();
    desk.keys(Modifiers::COMMAND, Key::M);
    assert!(desk.shows("torn.part.json"));
    desk.press("Remove this kept part…");
    assert!(desk.shows("will be removed from your kept parts"));
    assert_eq!(motifs::list(&Home::at(desk.folder.path())).0.len(), 1);
    desk.press("Remove it for good");
    assert!(desk.shows("No part is kept yet."));
    assert_eq!(motifs::list(&Home::at(desk.folder.path())).0.len(), 0);
}
