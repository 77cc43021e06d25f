//! Zoom and pan: wheel, pinch, dragging the ground, and the buttons of the shell.

use super::model::Model;
use super::sizes::Sizes;
use super::stage::Stage;
use super::{Canvas, Scene};
use egui::{CursorIcon, PointerButton, Rect, Response, Ui, Vec2};

impl Canvas {
    /// Brings the camera to where the hand wants it, before anything is laid out.
    pub(super) fn steer(
        &mut self,
        ui: &Ui,
        ground: &Response,
        window: Rect,
        model: &Model,
        sizes: &Sizes,
        scene: &Scene<'_>,
    ) {
        let frame = Stage::frame(window, model, sizes, self.views, self.exaggeration());
        self.camera.follow(&frame, self.is_holding());
        if let Some(factor) = self.zoom_asked.take() {
            let axis = self.camera.axis(0.0);
            let end = scene.selected.and_then(|at| model.blocks.get(at)).map(|block| axis.x(block.stock[1]));
            let about = end.filter(|x| (0.0..=frame.width).contains(x)).unwrap_or(frame.width / 2.0);
            self.camera.zoom_about(factor, about, &frame);
        }
        if let Some(pointer) = ui.input(|input| input.pointer.hover_pos())
            && ui.rect_contains_pointer(ground.rect)
        {
            self.camera.zoom_about(ui.input(egui::InputState::zoom_delta), pointer.x - window.left(), &frame);
            let wheel = self.wheel(ui, window, &frame);
            self.camera.pan(wheel.x, wheel.y, &frame);
        }
        let pans = ground.dragged_by(PointerButton::Primary) || ground.dragged_by(PointerButton::Middle);
        let middle = ui.rect_contains_pointer(ground.rect) && ui.input(|input| input.pointer.middle_down());
        if pans || (middle && self.drag.is_none()) {
            let moved = ui.input(|input| input.pointer.delta());
            self.camera.pan(moved.x, moved.y, &frame);
            ui.set_cursor_icon(CursorIcon::Grabbing);
        }
    }

    /// What the wheel pans. It goes along the bar, unless the strips are higher than the window.
    fn wheel(&self, ui: &Ui, window: Rect, frame: &super::camera::Frame) -> Vec2 {
        let turned = ui.input_mut(|input| std::mem::take(&mut input.smooth_scroll_delta));
        let thickness = frame.across_mm * self.camera.axis(0.0).scale;
        let overflows = thickness > f64::from(frame.height) && window.height() > 0.0;
        if overflows { turned } else { Vec2::new(turned.x + turned.y, 0.0) }
    }
}
