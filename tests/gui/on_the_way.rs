//! Shapes on the way are added, changed, put in another order and removed, and every one of it is taken back.

use crate::gui::desk::Desk;
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use fh_core::plan::{BendKind, FormKind, Via};

const LEAF: &str = r#"{ "firstheat": 1, "units": { "length": "mm", "marks": "1 mm" }, "scale": "3 %", "bars": [ { "name": "leaf",
    "stock": { "square": "12 mm" }, "segments": [
      { "name": "leaf", "form": { "flag": { "outline": { "leaf": { "length": "64 mm", "width": "26 mm" } },
        "thickness": "3 mm", "trim": "8 %" } } },
      { "name": "rest", "form": { "plain": { "length": "200 mm" } } } ] } ] }"#;

fn via(desk: &Desk) -> Vec<Via> {
    desk.plan().bars[0].segments[0].via.clone()
}

fn forms(desk: &Desk) -> Vec<Option<FormKind>> {
    via(desk).iter().map(|via| via.form.as_ref().map(fh_core::plan::Form::kind)).collect()
}

/// Presses what lies farther down in the panel.
fn press(desk: &mut Desk, name: &str) {
    desk.harness.get_by_role_and_label(Role::Button, name).scroll_to_me();
    desk.harness.run();
    desk.press(name);
}

#[test]
fn a_shape_on_the_way_is_added_sized_moved_and_removed() {
    let mut desk = Desk::with_plan(fh_core::file::read(LEAF.as_bytes()).unwrap());
    desk.press("Part 1: leaf");
    press(&mut desk, "Add a shape on the way");
    assert_eq!(forms(&desk), [Some(FormKind::Drawn)]);
    desk.choose("Form of shape 1", "taper");
    assert_eq!(forms(&desk), [Some(FormKind::Taper)]);
    desk.choose("Form of shape 1", "drawn");
    press(&mut desk, "Add a shape on the way");
    assert_eq!(forms(&desk), [Some(FormKind::Drawn), Some(FormKind::Drawn)]);
    desk.choose("Bend of shape 2", "curve");
    assert_eq!(via(&desk)[1].bend.as_ref().map(fh_core::plan::Bend::kind), Some(BendKind::Curve));
    let two = via(&desk);
    press(&mut desk, "Shape 2 earlier");
    assert_eq!(via(&desk), [two[1].clone(), two[0].clone()]);
    desk.harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    desk.harness.run();
    assert_eq!(via(&desk), two);
    press(&mut desk, "Remove shape 2");
    assert_eq!(via(&desk), [two[0].clone()]);
}
