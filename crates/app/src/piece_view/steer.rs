//! Turning, panning and zooming: the pointer, the wheel, and the keys while the view has the keyboard.

use super::PieceView;
use crate::state::Request;
use crate::theme::space;
use crate::widgets::keys;
use egui::{CursorIcon, EventFilter, Key, Modifiers, PointerButton, Response, Ui, Vec2, vec2};

/// How far the piece turns with each point of a drag, in radians.
const TURN: f64 = 0.5 / 180.0 * std::f64::consts::PI;
/// How far it turns with a key, in radians.
const TURN_STEP: f64 = 5.0 / 180.0 * std::f64::consts::PI;
/// How far it is panned with a key, in points.
const PAN_STEP: f32 = 6.0 * space::GRID;
/// How much a key, and a point of the wheel, enlarges.
const ZOOM_STEP: f64 = 1.25;
const ZOOM_WHEEL: f64 = 0.004;

/// What a key asks of the view.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Asked {
    Turn([f64; 2]),
    Pan(Vec2),
    Zoom(f64),
    Fit,
    Leave,
}

fn asked(key: Key, modifiers: Modifiers) -> Option<Asked> {
    if modifiers.command || modifiers.ctrl || modifiers.alt {
        return None;
    }
    let arrow = |x: f32, y: f32| {
        if modifiers.shift {
            Asked::Pan(vec2(x, y) * PAN_STEP)
        } else {
            Asked::Turn([-f64::from(x) * TURN_STEP, f64::from(y) * TURN_STEP])
        }
    };
    Some(match key {
        Key::ArrowLeft => arrow(-1.0, 0.0),
        Key::ArrowRight => arrow(1.0, 0.0),
        Key::ArrowUp => arrow(0.0, -1.0),
        Key::ArrowDown => arrow(0.0, 1.0),
        Key::Plus | Key::Equals => Asked::Zoom(ZOOM_STEP),
        Key::Minus => Asked::Zoom(1.0 / ZOOM_STEP),
        Key::Home => Asked::Fit,
        Key::Escape => Asked::Leave,
        _ => return None,
    })
}

impl PieceView {
    /// Brings the camera to where the hand wants it.
    pub(super) fn steer(&mut self, ui: &Ui, ground: &Response, out: &mut Vec<Request>) {
        if let Some(factor) = self.zoom_asked.take() {
            self.camera.zoom_about(f64::from(factor), Vec2::ZERO);
        }
        self.steer_by_pointer(ui, ground);
        // A handle in hand has the keys: Escape takes it back.
        if ground.has_focus() && self.held.is_none() {
            self.steer_by_keys(ui, ground, out);
        }
    }

    fn steer_by_pointer(&mut self, ui: &Ui, ground: &Response) {
        let moved = ground.drag_delta();
        let shift = ui.input(|input| input.modifiers.shift);
        if ground.dragged_by(PointerButton::Middle) || (ground.dragged_by(PointerButton::Primary) && shift) {
            self.camera.pan(moved);
            ui.set_cursor_icon(CursorIcon::Grabbing);
        } else if ground.dragged_by(PointerButton::Primary) && moved != Vec2::ZERO && !self.under.takes_drags() {
            self.camera.turn([-f64::from(moved.x) * TURN, f64::from(moved.y) * TURN]);
            ui.set_cursor_icon(CursorIcon::Grabbing);
        }
        let pointer = ui.input(|input| input.pointer.hover_pos());
        let Some(pointer) = pointer.filter(|_| ui.rect_contains_pointer(ground.rect)) else { return };
        let wheel = ui.input_mut(|input| std::mem::take(&mut input.smooth_scroll_delta));
        let pinch = f64::from(ui.input(egui::InputState::zoom_delta));
        let factor = pinch * (f64::from(wheel.y) * ZOOM_WHEEL).exp();
        self.camera.zoom_about(factor, pointer - ground.rect.center());
    }

    fn steer_by_keys(&mut self, ui: &Ui, ground: &Response, out: &mut Vec<Request>) {
        if ground.gained_focus() {
            let words =
                "Arrow keys turn the piece; with Shift they move it. + and − zoom, Home shows all of it, Esc leaves.";
            out.push(Request::Say(words.to_owned()));
        }
        let filter =
            EventFilter { horizontal_arrows: true, vertical_arrows: true, escape: true, ..EventFilter::default() };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(ground.id, filter));
        for asked in taken_keys(ui) {
            match asked {
                Asked::Turn(by) => self.camera.turn(by),
                Asked::Pan(by) => self.camera.pan(by),
                Asked::Zoom(factor) => self.camera.zoom_about(factor, Vec2::ZERO),
                Asked::Fit => self.camera.fit(),
                Asked::Leave => {
                    if !self.measure.clear() {
                        ui.memory_mut(|memory| memory.surrender_focus(ground.id));
                    }
                    out.push(Request::Say(String::new()));
                }
            }
        }
    }
}

/// The keys that the view takes; nobody else reads them then.
fn taken_keys(ui: &Ui) -> Vec<Asked> {
    ui.input_mut(|input| keys::take(input, asked))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn arrows_turn_and_with_shift_they_pan() {
        assert!(matches!(asked(Key::ArrowLeft, Modifiers::NONE), Some(Asked::Turn(_))));
        assert_eq!(asked(Key::ArrowLeft, Modifiers::SHIFT), Some(Asked::Pan(vec2(-PAN_STEP, 0.0))));
        assert_eq!(asked(Key::ArrowDown, Modifiers::COMMAND), None);
    }
}
