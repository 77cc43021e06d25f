//! Figures under the pointer: a click on one opens a field there. And the handles of the sizes across the selected part.

use super::drag;
use crate::canvas::Canvas;
use crate::canvas::event::CanvasEvent;
use crate::canvas::figure::{Dimension, Figure, What};
use crate::canvas::held::{AcrossDrag, Feedback};
use crate::canvas::snap;
use crate::canvas::stage::Stage;
use crate::state::Gesture;
use egui::{CursorIcon, PointerButton, Rect, Response, Role, Sense, Stroke, Ui, WidgetInfo, vec2};
use fh_core::edit::{ACROSS_RANGE, Edit, PartChange};
use fh_measure::WrittenLength;

impl Canvas {
    /// Makes the figures things that can be clicked and named.
    pub(in crate::canvas) fn touch_figures(
        &mut self,
        ui: &Ui,
        stage: &Stage<'_>,
        figures: &[Figure],
        events: &mut Vec<CanvasEvent>,
    ) {
        let base = ui.make_persistent_id("figure");
        for figure in figures {
            let (rect, hit) = (figure.rect.intersect(stage.window), figure.hit.intersect(stage.window));
            if rect.is_negative() {
                continue;
            }
            let response = ui.interact(hit, base.with(figure.what), Sense::CLICK);
            let name = format!("Figure: {}", figure.what.name(stage));
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
            if response.hovered() {
                ui.set_cursor_icon(CursorIcon::Text);
                let line = Stroke::new(stage.theme.hairline(), stage.theme.accent);
                stage.painter.hline(rect.x_range(), rect.bottom(), line);
            }
            match figure.what {
                // The first click of the two chose the part, and this figure came under the pointer.
                What::Across(segment, _) if response.double_clicked() && self.entry.is_none() => {
                    events.push(CanvasEvent::EditExact { segment });
                }
                what if response.clicked() && !response.double_clicked() => self.open(what, stage, events),
                _ => {}
            }
        }
    }

    /// Opens the field of a figure and selects its segment.
    pub(in crate::canvas) fn open(&mut self, what: What, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        events.push(CanvasEvent::Select(Some(what.segment())));
        events.push(CanvasEvent::Status("Enter takes it, Tab goes to the next figure, Esc leaves it.".to_owned()));
        self.open_entry(what, stage);
    }

    /// Makes the ends of the sizes across the selected part handles that can be dragged.
    pub(in crate::canvas) fn touch_handles(
        &mut self,
        ui: &Ui,
        stage: &Stage<'_>,
        dimensions: &[Dimension],
        events: &mut Vec<CanvasEvent>,
    ) {
        let base = ui.make_persistent_id("handle across");
        let mut is_held = false;
        for dimension in dimensions {
            for (place, handle) in dimension.handles().into_iter().enumerate() {
                let rect = Rect::from_center_size(handle, vec2(stage.sizes.catch, stage.sizes.catch));
                let id = base.with((dimension.what, place));
                let response = ui.interact(rect.intersect(stage.window), id, Sense::DRAG);
                let (segment, across) = dimension.what;
                let which = if place == 0 { "upper" } else { "lower" };
                let name = format!("{} handle: {}", which, What::Across(segment, across).name(stage));
                response.widget_info(|| WidgetInfo::slider(true, dimension.size.mm(), &name));
                if response.hovered() || response.dragged() {
                    ui.set_cursor_icon(CursorIcon::ResizeVertical);
                }
                is_held |= self.pull(ui, &response, dimension, place == 0, stage, events);
            }
        }
        if self.across.is_some() && !is_held {
            self.across = None;
            events.push(CanvasEvent::Gesture(Gesture::Commit));
        }
    }

    /// One frame of a handle; whether it is in hand.
    fn pull(
        &mut self,
        ui: &Ui,
        response: &Response,
        dimension: &Dimension,
        is_upper: bool,
        stage: &Stage<'_>,
        events: &mut Vec<CanvasEvent>,
    ) -> bool {
        if response.drag_started_by(PointerButton::Primary)
            && let Some(pressed) = ui.input(|input| input.pointer.press_origin())
        {
            let Dimension { what, size, mm_per_point, .. } = dimension.clone();
            self.entry = None;
            self.feedback = Feedback::default();
            self.across = Some(AcrossDrag { what, is_upper, size, mm_per_point, pressed: pressed.y, sent: None });
            events.push(CanvasEvent::Gesture(Gesture::Begin));
            events.push(CanvasEvent::Status("Alt: in finer steps. Esc: cancel.".to_owned()));
        }
        let Some(drag) = self.across.as_mut().filter(|drag| drag.what == dimension.what && drag.is_upper == is_upper)
        else {
            return false;
        };
        if response.drag_stopped() {
            drag::end(ui, events);
            self.across = None;
            return true;
        }
        let Some(pointer) = response.interact_pointer_pos() else { return true };
        let free = ui.input(|input| input.modifiers.alt);
        let Some(size) = drag.pulled_to(pointer.y, stage, free) else { return true };
        if drag.sent.as_ref() != Some(&size) {
            drag.sent = Some(size.clone());
            events.push(wish(stage.model.bar, drag.what, size));
            ui.request_repaint();
        }
        true
    }
}

/// The wish to have a size across a segment.
pub(super) fn wish(bar: usize, (at, across): (usize, fh_core::edit::Across), size: WrittenLength) -> CanvasEvent {
    let edit = Edit::ChangePart { bar, at, change: PartChange::Across { across, size } };
    CanvasEvent::Gesture(Gesture::Drag(Box::new(edit)))
}

impl AcrossDrag {
    /// The size that the pointer asks for: both edges move alike.
    fn pulled_to(&self, y: f32, stage: &Stage<'_>, free: bool) -> Option<WrittenLength> {
        let up = f64::from(self.pressed - y) * self.mm_per_point;
        let grown = 2.0 * if self.is_upper { up } else { -up };
        let target = snap::size_near(self.size.mm() + grown, stage.model.unit, free);
        if self.size.is_range() {
            return self.size.longer_by(target - self.size.mm(), ACROSS_RANGE).ok();
        }
        WrittenLength::from_mm(target, stage.model.unit.length_unit(), ACROSS_RANGE).ok()
    }
}
