//! Boundaries under the pointer: they can be taken, dragged, clicked and named.

use crate::canvas::Canvas;
use crate::canvas::event::CanvasEvent;
use crate::canvas::held::{Drag, Feedback};
use crate::canvas::labels::thinned;
use crate::canvas::model::Model;
use crate::canvas::spot::Spot;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::state::Gesture;
use crate::theme::space;
use egui::accesskit::Action;
use egui::{CursorIcon, Id, Rect, Response, Sense, Ui, WidgetInfo, pos2};

impl Canvas {
    /// Makes the boundaries in sight things that can be taken, clicked and named.
    pub(in crate::canvas) fn touch_boundaries(&mut self, ui: &Ui, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        let base = ui.make_persistent_id("boundary");
        self.hovered = None;
        let mut still_held = false;
        let lanes = stage.lanes_of_hand();
        for (strip, members) in [Strip::Bar, Strip::Forged].iter().flat_map(|s| lanes.iter().map(move |m| (*s, m))) {
            let seen = self.boundaries_in_sight(stage, strip, members);
            for (index, (segment, x)) in seen.iter().enumerate() {
                let stretch = stage.stretch_of_segment(*segment, strip);
                let spot = Spot { strip, segment: *segment };
                let before = index.checked_sub(1).and_then(|before| seen.get(before)).map(|(_, x)| *x);
                let after = seen.get(index + 1).map(|(_, x)| *x);
                let [left, right] = caught(*x, before, after, stage.sizes.catch / 2.0);
                let rect = Rect::from_min_max(pos2(left, stretch.top), pos2(right, stretch.bottom));
                let rect = rect.expand2(egui::vec2(0.0, space::TIGHT)).intersect(stage.window);
                let response = touch(ui, rect, base.with(spot), spot, stage.model);
                self.react(ui, &response, spot, stage, events);
                still_held |= self.drag.as_ref().is_some_and(|drag| drag.spot == spot) && response.dragged();
            }
        }
        if self.drag.is_some() && !still_held {
            // Its widget is gone, so nothing will tell of the release.
            self.let_go(events);
        }
    }

    /// The boundaries of a chain in sight, left to right, so many of them as the pointer can tell apart.
    fn boundaries_in_sight(&self, stage: &Stage<'_>, strip: Strip, members: &[usize]) -> Vec<(usize, f32)> {
        let kept = |segment: usize| {
            let spot = Spot { strip, segment };
            self.drag.as_ref().is_some_and(|drag| drag.spot == spot)
                || stage.selected == Some(segment)
                || self.focus.active(strip) == segment
        };
        let held = self.drag.as_ref().map(|drag| drag.spot);
        let places = members.iter().filter_map(|segment| {
            let (segment, spot) = (*segment, Spot { strip, segment: *segment });
            let x = stage.axis.x(spot.drawn(stage.model)?[1]);
            let sight = stage.window.x_range().expand(stage.sizes.catch / 2.0);
            (sight.contains(x) || held == Some(spot)).then_some((segment, x))
        });
        thinned(places, stage.sizes.catch / 4.0, kept)
    }

    fn react(&mut self, ui: &Ui, response: &Response, spot: Spot, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        if response.hovered() || response.dragged() {
            self.hovered = Some(spot);
            ui.set_cursor_icon(CursorIcon::ResizeHorizontal);
        }
        let asked = ui.input(|input| input.has_accesskit_action_request(response.id, Action::Focus));
        if response.clicked() || asked {
            self.focus.take(ui, spot);
            events.push(CanvasEvent::Select(Some(spot.segment)));
        }
        if response.drag_started_by(egui::PointerButton::Primary) {
            self.begin_drag(ui, spot, stage, events);
        }
        if self.drag.as_ref().is_some_and(|drag| drag.spot == spot) {
            self.go_on_dragging(ui, response, stage, events);
        }
    }

    fn begin_drag(&mut self, ui: &Ui, spot: Spot, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        let Some([_, end]) = spot.drawn(stage.model) else { return };
        let Some(pressed) = ui.input(|input| input.pointer.press_origin()) else { return };
        self.entry = None;
        self.feedback = Feedback::default();
        self.focus.rest_on(spot);
        self.drag = Some(Drag::new(spot, stage.axis.mm(pressed.x) - end, stage.model));
        events.push(CanvasEvent::Select(Some(spot.segment)));
        events.push(CanvasEvent::Gesture(Gesture::Begin));
        events.push(CanvasEvent::Status(drag_words(spot.strip).to_owned()));
    }
}

/// What the keys do while a boundary is in hand.
fn drag_words(strip: Strip) -> &'static str {
    match strip {
        Strip::Bar => {
            "Ctrl: round the mark, not the size. Alt: neither. Shift: the next part trades metal. Esc: cancel."
        }
        Strip::Forged => "Alt: off the rounding. Shift: the next part trades metal. Esc: cancel.",
    }
}

/// The stretch in which a boundary at `x` is caught: up to the middle between it and its neighbors.
fn caught(x: f32, before: Option<f32>, after: Option<f32>, reach: f32) -> [f32; 2] {
    let left = before.map_or(reach, |before| ((x - before) / 2.0).clamp(0.0, reach));
    let right = after.map_or(reach, |after| ((after - x) / 2.0).clamp(0.0, reach));
    [x - left.max(space::HAIRLINE), x + right.max(space::HAIRLINE)]
}

fn touch(ui: &Ui, rect: Rect, id: Id, spot: Spot, model: &Model) -> Response {
    // One thing for each bar takes the keyboard (see `focus`), so that Tab does not halt at every boundary.
    let response = ui.interact(rect, id, Sense::CLICK | Sense::DRAG);
    let value = spot.size_mm(model).unwrap_or_default();
    response.widget_info(|| WidgetInfo::slider(true, value, spot.name(model)));
    ui.accesskit_node_builder(id, |node| node.add_action(Action::Focus));
    response
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "tests")]
mod tests {
    use super::caught;

    #[test]
    fn a_lone_boundary_is_caught_all_around() {
        assert_eq!(caught(100.0, None, None, 6.0), [94.0, 106.0]);
    }

    #[test]
    fn close_neighbors_share_the_room_between_them() {
        assert_eq!(caught(100.0, Some(96.0), Some(130.0), 6.0), [98.0, 106.0]);
        assert_eq!(caught(100.0, Some(100.0), None, 6.0), [99.0, 106.0]);
    }
}
