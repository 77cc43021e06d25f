//! A boundary in hand: each move is counted from where it was taken, never from the move before.

use crate::canvas::Canvas;
use crate::canvas::event::CanvasEvent;
use crate::canvas::held::Feedback;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::state::Gesture;
use egui::{Key, Modifiers, Response, Ui};
use fh_core::edit::Neighbor;

/// Points in a second by which the bar runs on while a boundary is held at the window's edge.
const RUN: f32 = 480.0;

/// What becomes of the segment after a boundary: it trades metal while Shift is held.
pub(in crate::canvas) fn neighbor(shift: bool) -> Neighbor {
    if shift { Neighbor::TradesMetal } else { Neighbor::KeepsMetal }
}

/// Ends what was dragged: it stays where it was let go, or goes back by Escape, which ends a drag of the window library as well.
pub(super) fn end(ui: &Ui, events: &mut Vec<CanvasEvent>) {
    let taken_back = ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape));
    let (gesture, words) = if taken_back { (Gesture::Cancel, "Put back.") } else { (Gesture::Commit, "") };
    events.push(CanvasEvent::Gesture(gesture));
    events.push(CanvasEvent::Status(words.to_owned()));
}

impl Canvas {
    /// One frame of a drag.
    pub(in crate::canvas) fn go_on_dragging(
        &mut self,
        ui: &Ui,
        response: &Response,
        stage: &Stage<'_>,
        events: &mut Vec<CanvasEvent>,
    ) {
        let Some(drag) = &mut self.drag else { return };
        if response.drag_stopped() {
            end(ui, events);
            self.drag = None;
            self.feedback = Feedback::default();
            return;
        }
        let Some(pointer) = response.interact_pointer_pos() else { return };
        let keys = ui.input(|input| input.modifiers);
        let (spot, at) = (drag.spot, drag.place_at(stage.axis.mm(pointer.x) - drag.grabbed_off));
        let Some(start) = drag.start.or(spot.reach(stage.model).map(|[start, _]| start)) else { return };
        // A mark goes where the finished size is round, unless its own rounding is asked for.
        let is_fixed = stage.model.blocks.get(spot.segment).is_some_and(|block| block.fixed.is_some());
        let rounds = spot.strip == Strip::Bar && !is_fixed && !keys.alt && !keys.command;
        let Some(target) = spot.pulled_to(at, start, stage.model, keys.alt || rounds) else { return };
        let (bar, neighbor) = (stage.model.bar, neighbor(keys.shift));
        let wish = (target, neighbor, rounds);
        if drag.sent != Some(wish) {
            drag.sent = Some(wish);
            self.feedback = Feedback::default();
            let round = || spot.round_wish(bar, target, neighbor);
            events.push(if rounds { round() } else { spot.wish(bar, target, neighbor) });
            ui.request_repaint();
        }
        self.run_on(ui, pointer.x, stage);
    }

    /// Moves the bar along while a boundary is held at the window's edge.
    fn run_on(&mut self, ui: &Ui, x: f32, stage: &Stage<'_>) {
        let edge = stage.sizes.catch;
        let direction = match x {
            x if x < stage.window.left() + edge => 1.0,
            x if x > stage.window.right() - edge => -1.0,
            _ => return,
        };
        let passed = ui.input(|input| input.stable_dt).min(0.1);
        self.camera.pan(direction * RUN * passed, 0.0, &stage.frame);
        ui.request_repaint();
    }
}
