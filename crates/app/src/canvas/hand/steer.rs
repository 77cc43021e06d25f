//! Zoom and pan: wheel, pinch, dragging the ground, and the buttons of the shell.

use crate::canvas::Canvas;
use crate::canvas::layout::Layout;
use crate::canvas::model::Model;
use crate::canvas::scene::Scene;
use crate::canvas::sizes::Sizes;
use crate::canvas::stage::{Stage, heights};
use egui::{CursorIcon, PointerButton, Rect, Response, Ui, Vec2};

impl Canvas {
    /// Brings the camera to where the hand wants it, before anything is laid out.
    pub(in crate::canvas) fn steer(
        &mut self,
        ui: &Ui,
        ground: &Response,
        window: Rect,
        model: &Model,
        sizes: &Sizes,
        scene: &Scene<'_>,
    ) {
        let frame = Stage::frame(window, model, sizes, self.drawn_views, self.exaggeration());
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
            let before = self.layout(window, model, sizes).anchor(pointer.y);
            let factor = ui.input(egui::InputState::zoom_delta);
            self.camera.zoom_about(factor, pointer.x - window.left(), &frame);
            let after = before.and_then(|anchor| self.layout(window, model, sizes).y_of(&anchor));
            if let Some(after) = after.filter(|_| factor != 1.0) {
                self.camera.scrolled += after - pointer.y;
            }
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

    /// The layout where the camera is now; the camera's scrolling is kept within it.
    pub(in crate::canvas) fn layout(&mut self, window: Rect, model: &Model, sizes: &Sizes) -> Layout {
        let scale = self.camera.axis(0.0).scale * f64::from(self.exaggeration());
        let heights = heights(window, sizes);
        let unscrolled = Layout::new(&model.edges, self.drawn_views, scale, &heights, window.top());
        let most = (unscrolled.total - window.height()).max(0.0);
        self.camera.scrolled = self.camera.scrolled.clamp(0.0, most);
        if self.camera.scrolled == 0.0 {
            return unscrolled;
        }
        Layout::new(&model.edges, self.drawn_views, scale, &heights, window.top() - self.camera.scrolled)
    }

    /// What the wheel pans. It goes along the bar, unless the strips are higher than the window.
    fn wheel(&self, ui: &Ui, window: Rect, frame: &crate::canvas::camera::Frame) -> Vec2 {
        let turned = ui.input_mut(|input| std::mem::take(&mut input.smooth_scroll_delta));
        let thickness = frame.across_mm * self.camera.axis(0.0).scale;
        let overflows = thickness > f64::from(frame.height) && window.height() > 0.0;
        if overflows { turned } else { Vec2::new(turned.x + turned.y, 0.0) }
    }
}
