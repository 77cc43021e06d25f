//! A boundary: the end of a segment, on the starting bar (a mark) or on the forged bar. It can be taken and dragged.

use super::drag::Drag;
use super::labels::thinned;
use super::layout::Strip;
use super::model::Model;
use super::stage::Stage;
use super::{Canvas, CanvasEvent, snap};
use crate::theme::space;
use egui::accesskit::Action;
use egui::{CursorIcon, Id, Rect, Response, Sense, Ui, WidgetInfo, pos2};
use fh_core::edit::{BoundaryMove, BoundaryTarget, Neighbor};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// One boundary.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct Spot {
    pub(super) strip: Strip,
    /// The segment whose end it is.
    pub(super) segment: usize,
}

impl Spot {
    /// Where its segment starts and where it ends, in mm on its own bar.
    pub(super) fn reach(self, model: &Model) -> Option<[f64; 2]> {
        let block = model.blocks.get(self.segment)?;
        Some(match self.strip {
            Strip::Bar => block.stock,
            Strip::Forged => block.forged,
        })
    }

    /// Its name for people and screen readers.
    pub(super) fn name(self, model: &Model) -> String {
        let Some(block) = model.blocks.get(self.segment) else { return String::new() };
        match self.strip {
            Strip::Bar => format!("Mark {}: end of {}", block.path, block.name),
            Strip::Forged => format!("Forged end of {}", block.unique_name),
        }
    }

    /// Its size as a smith speaks of it, in mm: a mark from the datum end, or a forged length.
    pub(super) fn size_mm(self, model: &Model) -> Option<f64> {
        let [start, end] = self.reach(model)?;
        Some(if self.strip == Strip::Bar { end } else { end - start })
    }

    /// Where a pull to a place on its bar takes it, in mm; its segment starts at `start`.
    pub(super) fn pulled_to(self, at: f64, start: f64, model: &Model, free: bool) -> Option<f64> {
        Some(match self.strip {
            Strip::Bar => snap::mark_near(at, start, model.marks, free),
            Strip::Forged => snap::end_near(at, start, model.marks, free),
        })
    }

    /// The wish to bring it to a place on its bar, in mm.
    pub(super) fn wish(self, bar: usize, mm: f64, neighbor: Neighbor) -> CanvasEvent {
        let place = Length::new::<millimeter>(mm);
        let to = match self.strip {
            Strip::Bar => BoundaryTarget::Mark(place),
            Strip::Forged => BoundaryTarget::Forged(place),
        };
        CanvasEvent::Move(BoundaryMove { bar, segment: self.segment, to, neighbor })
    }
}

impl Canvas {
    /// Makes the boundaries in sight things that can be taken, clicked and named.
    pub(super) fn touch_boundaries(&mut self, ui: &Ui, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
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
        self.feedback = super::Feedback::default();
        self.focus.rest_on(spot);
        self.drag = Some(Drag::new(spot, stage.axis.mm(pressed.x) - end, stage.model));
        events.push(CanvasEvent::Select(Some(spot.segment)));
        events.push(CanvasEvent::GestureBegin);
        events.push(CanvasEvent::Status(
            "Alt: off the rounding. Shift: the neighbour trades metal. Esc: back.".to_owned(),
        ));
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
