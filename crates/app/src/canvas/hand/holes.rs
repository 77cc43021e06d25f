//! Holes under the pointer: each can be taken on the forged bar seen from above, and put elsewhere along and across its part.

use super::drag;
use crate::canvas::event::CanvasEvent;
use crate::canvas::figure::What;
use crate::canvas::held::{Feedback, HoleDrag};
use crate::canvas::model::details::Middle;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::canvas::{Canvas, snap};
use crate::state::Gesture;
use egui::{CursorIcon, PointerButton, Rect, Response, Role, Sense, Ui, Vec2, WidgetInfo, pos2};
use fh_core::edit::{Edit, HoleMove, HoleWay, PartChange};
use fh_core::metal::View;
use fh_measure::WrittenLength;

impl Canvas {
    /// The hole whose place is shown where its part is selected: the one in hand or being typed, or that was touched last.
    pub(in crate::canvas) fn hole_shown(&self) -> (usize, usize) {
        match self.entry.as_ref().map(|entry| entry.what) {
            Some(What::Hole(segment, place)) => (segment, place.hole),
            _ => self.hole_shown,
        }
    }

    /// Makes the holes in sight things that can be taken and named.
    pub(in crate::canvas) fn touch_holes(&mut self, ui: &Ui, stage: &Stage<'_>, events: &mut Vec<CanvasEvent>) {
        let base = ui.make_persistent_id("hole");
        let mut is_held = false;
        let row = stage.layout.rows_of(Strip::Forged).find(|row| row.view == View::Top);
        let blocks = stage.model.blocks.iter().enumerate();
        for (segment, block) in blocks.filter(|(_, block)| !block.details.middles.is_empty()) {
            let Some(row) = row else { break };
            for (hole, middle) in block.details.middles.iter().enumerate() {
                let place = pos2(stage.axis.x(middle.drawn[0]), row.y(middle.drawn[1]));
                let half = stage.sizes.catch / 2.0;
                let outline = block.details.holes.get(hole).map_or(&[][..], Vec::as_slice);
                let reach = outline.iter().map(|[along, up]| (pos2(stage.axis.x(*along), row.y(*up)) - place).abs());
                let reach = reach.fold(Vec2::ZERO, Vec2::max);
                // Where it is hardly seen it is taken only with its part selected.
                let is_seen = reach.max_elem() >= half / 2.0 || stage.selected == Some(segment);
                let rect = Rect::from_center_size(place, 2.0 * reach.max(Vec2::splat(half))).intersect(stage.window);
                if !is_seen && self.hole.is_none() || rect.is_negative() && !self.holds((segment, hole)) {
                    continue;
                }
                let response = ui.interact(rect, base.with((segment, hole)), Sense::CLICK | Sense::DRAG);
                response.widget_info(|| WidgetInfo::labeled(Role::Button, true, name(stage, (segment, hole))));
                let mm_per_point = [1.0 / stage.axis.scale, row.mm_per_point()];
                is_held |= self.pull_hole(ui, &response, (segment, hole), (*middle, mm_per_point), stage, events);
            }
        }
        if self.hole.is_some() && !is_held {
            self.hole = None;
            events.push(CanvasEvent::Gesture(Gesture::Commit));
        }
    }

    fn holds(&self, hole: (usize, usize)) -> bool {
        self.hole.as_ref().is_some_and(|drag| drag.hole == hole)
    }

    /// One frame of a hole; whether it is in hand.
    fn pull_hole(
        &mut self,
        ui: &Ui,
        response: &Response,
        hole: (usize, usize),
        (middle, mm_per_point): (Middle, [f64; 2]),
        stage: &Stage<'_>,
        events: &mut Vec<CanvasEvent>,
    ) -> bool {
        if response.hovered() || response.dragged() {
            ui.set_cursor_icon(CursorIcon::Move);
        }
        if response.clicked() {
            self.hole_shown = hole;
            events.push(CanvasEvent::Select(Some(hole.0)));
        }
        if response.drag_started_by(PointerButton::Primary)
            && let Some(pressed) = ui.input(|input| input.pointer.press_origin())
        {
            (self.entry, self.feedback, self.hole_shown) = (None, Feedback::default(), hole);
            self.hole = Some(HoleDrag { hole, middle, mm_per_point, pressed, sent: None });
            events.push(CanvasEvent::Select(Some(hole.0)));
            events.push(CanvasEvent::Gesture(Gesture::Begin));
            let words = "Shift: straight along or across. Alt: in finer steps. Esc: cancel.";
            events.push(CanvasEvent::Status(words.to_owned()));
        }
        if !self.holds(hole) {
            return false;
        }
        if response.drag_stopped() {
            drag::end(ui, events);
            self.hole = None;
            return true;
        }
        let pointer = response.interact_pointer_pos();
        let Some((drag, pointer)) = self.hole.as_mut().zip(pointer) else { return true };
        let keys = ui.input(|input| input.modifiers);
        let to = drag.pulled_to(pointer, stage, (keys.shift, keys.alt));
        if drag.sent != Some(to)
            && let Some(change) = drag.wish(to, stage)
        {
            drag.sent = Some(to);
            let edit = Edit::ChangePart { bar: stage.model.bar, at: hole.0, change };
            events.push(CanvasEvent::Gesture(Gesture::Drag(Box::new(edit))));
            ui.request_repaint();
        }
        true
    }
}

fn name(stage: &Stage<'_>, (segment, hole): (usize, usize)) -> String {
    let of = stage.model.blocks.get(segment);
    let (count, name) = of.map_or((0, ""), |block| (block.details.middles.len(), block.unique_name.as_str()));
    if count > 1 { format!("Hole {} of {name}", hole + 1) } else { format!("Hole of {name}") }
}

impl HoleDrag {
    /// Where the pointer asks its middle to be, in mm along and across: each on a round size where it was moved that way.
    fn pulled_to(&self, pointer: egui::Pos2, stage: &Stage<'_>, (straight, free): (bool, bool)) -> [f64; 2] {
        let moved = pointer - self.pressed;
        let [mut along, mut across] =
            [f64::from(moved.x) * self.mm_per_point[0] / self.middle.way, -f64::from(moved.y) * self.mm_per_point[1]];
        if straight {
            if moved.x.abs() >= moved.y.abs() { across = 0.0 } else { along = 0.0 }
        }
        let unit = stage.model.unit;
        let from = self.middle;
        let along = if along == 0.0 { from.along_mm } else { snap::size_near(from.along_mm + along, unit, free) };
        let was = from.across_mm.unwrap_or_default();
        let across = if across == 0.0 { was } else { snap::place_near(was + across, unit, free) };
        [along, across]
    }

    /// What it asks for; a way that it does not go stays as it was typed.
    fn wish(&self, [along, across]: [f64; 2], stage: &Stage<'_>) -> Option<PartChange> {
        let unit = stage.model.unit.length_unit();
        let written = |mm: f64, way: HoleWay| WrittenLength::from_mm(mm, unit, way.range()).ok();
        let is_along = along != self.middle.along_mm;
        let is_across = self.middle.across_mm.is_some_and(|was| was != across);
        let along = if is_along { Some(written(along, HoleWay::Along)?) } else { None };
        let across = if is_across { Some(written(across, HoleWay::Across)?) } else { None };
        Some(PartChange::Hole(HoleMove { hole: self.hole.1, along, across }))
    }
}
