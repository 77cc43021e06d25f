//! The window by keyboard alone, and what a screen reader hears of it.

use crate::gui::desk::{Desk, small_plan};
use egui::accesskit::Role;
use egui::{Key, Modifiers, Rect, Vec2, pos2};
use egui_kittest::kittest::{NodeT, Queryable};
use fh_core::plan::BendKind;

fn focus(desk: &mut Desk, role: Role, name: &str) {
    desk.harness.get_by_role_and_label(role, name).focus();
    desk.harness.run();
}

fn bend(desk: &Desk) -> Option<BendKind> {
    desk.plan().bars[0].segments[1].bend.as_ref().map(|bend| bend.kind())
}

#[test]
fn the_length_of_the_selected_part_is_one_key_away_from_anywhere() {
    for (role, name) in [
        (Role::TextInput, "Name"),
        (Role::ComboBox, "Bend"),
        (Role::Button, "Undo"),
        (Role::Button, "Side view"),
        (Role::TextInput, "Scale of this part"),
    ] {
        let mut desk = Desk::with_plan(small_plan());
        desk.press("Part 2: shank");
        if desk.harness.query_by_role_and_label(role, name).is_none() {
            continue;
        }
        focus(&mut desk, role, name);
        desk.keys(Modifiers::NONE, Key::F2);
        assert!(desk.has_keyboard("Length"), "{name}");
    }
}

#[test]
fn no_stop_of_the_tab_key_is_off_the_screen() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 1: point");
    let screen = Rect::from_min_size(pos2(0.0, 0.0), Vec2::new(1366.0, 768.0)).expand(1.0);
    let mut stops = 0;
    for _ in 0..70 {
        desk.keys(Modifiers::NONE, Key::Tab);
        let is_stop = |node: &egui_kittest::kittest::AccessKitNode<'_>| {
            node.is_focused() && !matches!(node.role(), Role::Window | Role::Unknown | Role::GenericContainer)
        };
        let Some(node) = desk.harness.query_all_by(is_stop).next() else { continue };
        stops += 1;
        let (role, name) = (node.accesskit_node().role(), node.accesskit_node().label().unwrap_or_default());
        assert!(screen.contains_rect(node.rect()), "{role:?} {name} at {:?}", node.rect());
        assert!(!name.trim().is_empty(), "{role:?} at {:?} has no name", node.rect());
    }
    assert!(stops > 40, "{stops}");
}

#[test]
fn a_list_is_chosen_from_by_letters_and_enter_closes_it() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    focus(&mut desk, Role::ComboBox, "Bend");
    desk.letters("r");
    assert_eq!(bend(&desk), Some(BendKind::Ring));
    focus(&mut desk, Role::ComboBox, "Bend");
    desk.keys(Modifiers::NONE, Key::Enter);
    desk.letters("t");
    desk.keys(Modifiers::NONE, Key::Enter);
    assert_eq!(bend(&desk), Some(BendKind::Twist));
    assert!(desk.harness.query_by_role_and_label(Role::Button, "scroll").is_none(), "the list is closed");
    assert!(desk.harness.get_by_role_and_label(Role::ComboBox, "Bend").is_focused());
}

#[test]
fn an_open_list_goes_on_from_what_is_chosen() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    focus(&mut desk, Role::ComboBox, "Bend");
    desk.letters("r");
    focus(&mut desk, Role::ComboBox, "Bend");
    desk.keys(Modifiers::NONE, Key::Enter);
    desk.keys(Modifiers::NONE, Key::ArrowDown);
    desk.keys(Modifiers::NONE, Key::Enter);
    // Curve, ring, scroll.
    assert_eq!(bend(&desk), Some(BendKind::Scroll));
}

#[test]
fn the_list_of_parts_is_one_stop_of_the_tab_key_and_the_arrows_go_through_it() {
    let mut desk = Desk::with_plan(small_plan());
    desk.press("Part 2: shank");
    let stop = |desk: &Desk| {
        let all = desk.harness.query_all_by(|node| node.is_focused());
        all.filter_map(|node| node.accesskit_node().label()).find(|label| label.starts_with("Parts of the plan"))
    };
    let mut stops = 0;
    for _ in 0..120 {
        desk.keys(Modifiers::NONE, Key::Tab);
        stops += usize::from(stop(&desk).is_some());
        if stops == 1 {
            break;
        }
    }
    assert_eq!(stop(&desk).as_deref(), Some("Parts of the plan, Part 2: shank"));
    desk.keys(Modifiers::NONE, Key::ArrowDown);
    assert_eq!((desk.editor().selected(), stop(&desk).is_some()), (Some(2), true));
    desk.keys(Modifiers::NONE, Key::ArrowDown);
    assert_eq!(desk.editor().selected(), Some(2), "the last line stays");
    desk.keys(Modifiers::NONE, Key::Home);
    assert_eq!(stop(&desk).as_deref(), Some("Parts of the plan, Plan: Bean hook"));
    desk.keys(Modifiers::NONE, Key::End);
    desk.keys(Modifiers::NONE, Key::ArrowUp);
    assert_eq!(desk.editor().selected(), Some(1));
    desk.keys(Modifiers::NONE, Key::Enter);
    assert!(desk.has_keyboard("Length"));
}
