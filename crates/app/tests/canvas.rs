//! The drawing area without a window: boundaries are dragged, nudged and typed, found by their names.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use egui::{Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use fh_app::canvas::{Canvas, CanvasEvent, Gesture, Scene, Views};
use fh_app::theme::{Look, Theme, install_fonts};
use fh_core::balance::balance;
use fh_core::edit::History;
use fh_core::plan::Plan;

/// As much of the program as the drawing area needs around it.
struct Host {
    history: History,
    canvas: Canvas,
    theme: Theme,
    selected: Option<usize>,
    cursor: Option<f64>,
    steps: usize,
}

impl Host {
    fn show(&mut self, ui: &mut egui::Ui) {
        let plan = self.history.snapshot();
        let balance = balance(&plan);
        let (selected, cursor_mm) = (self.selected, self.cursor);
        let scene = Scene {
            plan: &plan,
            balance: &balance,
            stamp: None,
            bar: 0,
            selected,
            also: &[],
            cursor_mm,
            theme: &self.theme,
            step: None,
        };
        for event in self.canvas.show(ui, &scene) {
            match event {
                CanvasEvent::Select(selected) => self.selected = selected,
                CanvasEvent::Gesture(Gesture::Begin) => self.history.begin(),
                CanvasEvent::Gesture(Gesture::Commit) => {
                    self.history.commit();
                    self.steps += 1;
                }
                CanvasEvent::Gesture(Gesture::Cancel) => self.history.cancel(),
                CanvasEvent::Gesture(Gesture::Drag(edit)) => match self.history.apply(&edit) {
                    Ok(gave) => self.canvas.gave(format!("{} sizes gave", gave.len())),
                    Err(refusal) => self.canvas.refused(refusal.to_string()),
                },
                CanvasEvent::Cursor(mm) => self.cursor = mm,
                CanvasEvent::EditExact { .. } | CanvasEvent::Extend { .. } | CanvasEvent::Status(_) => {}
            }
        }
    }

    fn mark_mm(&self, segment: usize) -> f64 {
        let balance = balance(self.history.plan());
        balance.bars[0].segments[segment].mark_end.get::<uom::si::length::millimeter>()
    }

    fn forged_mm(&self, segment: usize) -> f64 {
        let balance = balance(self.history.plan());
        balance.bars[0].segments[segment].forged_length.get::<uom::si::length::millimeter>()
    }
}

const PLAN: &str = r#"{
  "firstheat": 1, "title": "Hook",
  "units": { "length": "mm", "marks": "1 mm" },
  "bars": [ { "name": "hook", "stock": { "square": "12 mm" }, "datum": "point end", "segments": [
    { "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } },
    { "name": "neck", "form": { "drawn": { "length": "90 mm", "section": { "square": "9 mm" } } } },
    { "name": "shank", "form": { "plain": { "length": "120 mm" } } },
    { "name": "neck", "form": { "drawn": { "length": "45 mm", "section": { "round": "10 mm" } } } },
    { "name": "rest of the bar", "form": { "hold": { "length": "150 mm" } } } ] } ] }"#;

fn harness(plan: Plan) -> Harness<'static, Host> {
    let theme = Theme::new(Look::Light, 1.0);
    let host =
        Host { history: History::new(plan), canvas: Canvas::default(), theme, selected: None, cursor: None, steps: 0 };
    let mut ready = false;
    let mut harness = Harness::builder().with_size([1000.0, 420.0]).build_ui_state(
        move |ui, host: &mut Host| {
            if ready {
                host.show(ui);
            } else {
                install_fonts(ui.ctx());
                host.theme.apply(ui.ctx());
                ready = true;
            }
        },
        host,
    );
    harness.run();
    harness
}

fn hook() -> Harness<'static, Host> {
    harness(fh_core::file::read(PLAN.as_bytes()).unwrap())
}

/// Drags the boundary of this name so many points along, in small steps; the button stays down.
fn pull(harness: &mut Harness<'static, Host>, name: &str, by: f32) -> egui::Pos2 {
    let from = harness.get_by_label(name).rect().center();
    harness.hover_at(from);
    harness.run();
    harness.drag_at(from);
    harness.run();
    for step in 1..=10 {
        harness.hover_at(from + vec2(by * step as f32 / 10.0, 0.0));
        harness.step();
    }
    from + vec2(by, 0.0)
}

#[test]
fn a_dragged_mark_follows_the_pointer_to_a_round_length_and_is_one_step() {
    let mut harness = hook();
    let before = harness.state().mark_mm(2);
    let per_mm = {
        let (first, second) =
            (harness.get_by_label("Mark 2: end of neck"), harness.get_by_label("Mark 3: end of shank"));
        f64::from(second.rect().center().x - first.rect().center().x) / 120.0
    };
    let to = pull(&mut harness, "Mark 3: end of shank", 60.0);
    harness.drop_at(to);
    harness.run();
    let after = harness.state().mark_mm(2);
    let length = harness.state().forged_mm(2);
    assert!((length - length.round()).abs() < 1e-3, "{length} is not round");
    assert!((after - before - 60.0 / per_mm).abs() <= 0.51, "{before} -> {after}");
    assert_eq!(harness.state().steps, 1);
    assert_eq!(harness.state().selected, Some(2));
    harness.state_mut().history.undo();
    assert!((harness.state().mark_mm(2) - before).abs() < 1e-9);
}

#[test]
fn a_dragged_forged_end_sets_the_forged_length() {
    let mut harness = hook();
    let to = pull(&mut harness, "Forged end of point", 30.0);
    harness.drop_at(to);
    harness.run();
    let length = harness.state().forged_mm(0);
    assert!(length > 60.0 && (length - length.round()).abs() < 1e-6, "{length}");
}

#[test]
fn escape_takes_a_drag_back() {
    let mut harness = hook();
    let before = harness.state().history.plan().clone();
    let to = pull(&mut harness, "Mark 3: end of shank", 60.0);
    assert_ne!(*harness.state().history.plan(), before);
    harness.key_press(Key::Escape);
    harness.run();
    assert_eq!(*harness.state().history.plan(), before);
    harness.hover_at(to + vec2(40.0, 0.0));
    harness.run();
    harness.drop_at(to + vec2(40.0, 0.0));
    harness.run();
    assert_eq!(*harness.state().history.plan(), before);
    assert!(!harness.state().history.can_undo());
}

#[test]
fn the_last_boundary_of_the_bar_can_be_dragged() {
    let mut harness = hook();
    let to = pull(&mut harness, "Mark 5: end of rest of the bar", -50.0);
    harness.drop_at(to);
    harness.run();
    let length = harness.state().forged_mm(4);
    assert!(length < 149.0 && length > 50.0, "{length}");
}

#[test]
fn with_shift_the_neighbor_trades_metal() {
    let mut harness = hook();
    let last = harness.state().mark_mm(4);
    harness.get_by_label("Mark 2: end of neck").focus();
    harness.run();
    harness.key_press_modifiers(Modifiers::SHIFT, Key::ArrowUp);
    harness.run();
    assert!((harness.state().mark_mm(4) - last).abs() < 1e-2);
    harness.key_press(Key::ArrowUp);
    harness.run();
    assert!(harness.state().mark_mm(4) > last + 0.5);
}

#[test]
fn the_keyboard_steps_nudges_and_types() {
    let mut harness = hook();
    harness.get_by_label("Mark 2: end of neck").focus();
    harness.run();
    harness.key_press(Key::ArrowRight);
    harness.run();
    assert_eq!(harness.state().selected, Some(2));
    let before = harness.state().mark_mm(2);
    harness.key_press(Key::ArrowUp);
    harness.run();
    let nudged = harness.state().mark_mm(2);
    assert!(nudged > before && nudged - before <= 1.0 + 1e-9, "{before} -> {nudged}");
    harness.key_press(Key::Enter);
    harness.run();
    type_over(&mut harness, "210");
    harness.key_press(Key::Enter);
    harness.run();
    assert!((harness.state().mark_mm(2) - 210.0).abs() < 1e-6, "{}", harness.state().mark_mm(2));
    assert_eq!(harness.state().steps, 2);
}

#[test]
fn a_bad_size_says_why_and_stays() {
    let mut harness = hook();
    let before = harness.state().history.plan().clone();
    harness.get_by_label("Forged end of shank").focus();
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    type_over(&mut harness, "3 1/");
    harness.key_press(Key::Enter);
    harness.run();
    assert_eq!(*harness.state().history.plan(), before);
    assert!(harness.query_by_label_contains("■").is_some());
    assert_eq!(harness.get_by_label("Length of shank, forged").value().as_deref(), Some("3 1/"));
    type_over(&mut harness, "5 in");
    harness.key_press(Key::Enter);
    harness.run();
    assert!((harness.state().forged_mm(2) - 127.0).abs() < 1e-6);
    assert!(harness.query_by_label("Length of shank, forged").is_none());
}

fn type_over(harness: &mut Harness<'static, Host>, text: &str) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.run();
    let field = harness.get_by_role(egui::Role::TextInput);
    field.type_text(text);
    harness.run();
}

#[test]
fn a_segment_is_selected_by_a_click_and_let_go_by_the_ground() {
    let mut harness = hook();
    harness.get_by_label("Part shank").click();
    harness.run();
    assert_eq!(harness.state().selected, Some(2));
    let far = harness.get_by_label("Part shank").rect().center() - vec2(0.0, 60.0);
    harness.hover_at(far);
    harness.run();
    harness.drag_at(far);
    harness.run();
    harness.drop_at(far);
    harness.run();
    assert_eq!(harness.state().selected, None);
}

#[test]
fn segments_of_one_name_are_told_apart() {
    let harness = hook();
    assert!(harness.query_by_label("Part neck (2)").is_some());
    assert!(harness.query_by_label("Forged end of neck (4)").is_some());
}

#[test]
fn absurd_bars_neither_freeze_nor_panic() {
    for (length, count) in [("0.001 mm", 3), ("1000000000 mm", 4), ("7 mm", 1000)] {
        let mut plan = fh_core::file::read(PLAN.as_bytes()).unwrap();
        let mut text = serde_json::to_value(&plan.bars[0].segments[2]).unwrap();
        text["form"]["plain"]["length"] = length.into();
        let segment: fh_core::plan::Segment = serde_json::from_value(text).unwrap();
        plan.bars[0].segments = vec![segment; count];
        let mut harness = harness(plan);
        for views in Views::ALL {
            harness.state_mut().canvas.set_views(views);
            for factor in [1e-9, 1e12, 0.5, 1e-30] {
                harness.state_mut().canvas.zoom_by(factor);
                harness.run();
            }
        }
    }
}
