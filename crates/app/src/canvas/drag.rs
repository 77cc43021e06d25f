//! A boundary in hand: each move is counted from where it was taken, never from the move before.

use super::boundary::Spot;
use super::layout::Strip;
use super::model::Model;
use super::stage::Stage;
use super::{Canvas, CanvasEvent, Feedback};
use egui::{Key, Modifiers, Response, Ui};
use fh_core::edit::Neighbor;

/// Points in a second by which the bar runs on while a boundary is held at the window's edge.
const RUN: f32 = 480.0;

/// A boundary in hand.
#[derive(Clone, Debug)]
pub(super) struct Drag {
    pub(super) spot: Spot,
    /// How far from the boundary it was taken, in mm.
    grabbed_off: f64,
    /// Where its segment started when it was taken, where that may move with it.
    start: Option<f64>,
    /// Where a place of its segment was drawn when it was taken: the place, its drawing, and millimetres drawn for one.
    drawn: [f64; 3],
    /// Where it was last sent, so that a still hand sends nothing.
    sent: Option<(f64, Neighbor)>,
}

impl Drag {
    pub(super) fn new(spot: Spot, grabbed_off: f64, model: &Model) -> Self {
        let in_branch = model.blocks.get(spot.segment).is_some_and(|block| block.lane > 0);
        let [start, end] = spot.reach(model).unwrap_or_default();
        let [from, to] = spot.drawn(model).unwrap_or_default();
        let scale = if end > start && to > from { (to - from) / (end - start) } else { 1.0 };
        // The start of a branch and its drawing follow its length: what is in hand would run away from itself.
        let start_then = (in_branch && spot.strip == Strip::Forged).then_some(start);
        Self { spot, grabbed_off, start: start_then, drawn: [start, from, scale], sent: None }
    }

    /// The place on its bar that was drawn here when it was taken, in mm.
    fn place_at(&self, drawn: f64) -> f64 {
        let [place, at, scale] = self.drawn;
        place + (drawn - at) / scale
    }
}

/// What becomes of the segment after a boundary: it trades metal while Shift is held.
pub(super) fn neighbor(shift: bool) -> Neighbor {
    if shift { Neighbor::TradesMetal } else { Neighbor::KeepsMetal }
}

impl Canvas {
    /// One frame of a drag.
    pub(super) fn go_on_dragging(
        &mut self,
        ui: &Ui,
        response: &Response,
        stage: &Stage<'_>,
        events: &mut Vec<CanvasEvent>,
    ) {
        let Some(drag) = &mut self.drag else { return };
        if response.drag_stopped() {
            // The window library ends a drag on Escape as well as on release.
            let taken_back = ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape));
            events.push(if taken_back { CanvasEvent::GestureCancel } else { CanvasEvent::GestureCommit });
            events.push(CanvasEvent::Status(if taken_back { "Taken back.".to_owned() } else { String::new() }));
            self.drag = None;
            self.feedback = Feedback::default();
            return;
        }
        let Some(pointer) = response.interact_pointer_pos() else { return };
        let keys = ui.input(|input| input.modifiers);
        let (spot, at) = (drag.spot, drag.place_at(stage.axis.mm(pointer.x) - drag.grabbed_off));
        let Some(start) = drag.start.or(spot.reach(stage.model).map(|[start, _]| start)) else { return };
        let Some(target) = spot.pulled_to(at, start, stage.model, keys.alt) else { return };
        let wish = (target, neighbor(keys.shift));
        if drag.sent != Some(wish) {
            drag.sent = Some(wish);
            self.feedback = Feedback::default();
            events.push(spot.wish(stage.model.bar, wish.0, wish.1));
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
