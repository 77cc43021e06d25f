//! The cursor: one place of the metal, shown on both bars and joined to the plot.

use crate::canvas::Canvas;
use crate::canvas::event::CanvasEvent;
use crate::canvas::stage::Stage;
use egui::{Pos2, Response, Ui};

impl Canvas {
    /// Finds the place of the metal under the pointer, and tells it where it changed.
    pub(in crate::canvas) fn touch_cursor(
        &mut self,
        ui: &Ui,
        stage: &mut Stage<'_>,
        ground: &Response,
        told_mm: Option<f64>,
        events: &mut Vec<CanvasEvent>,
    ) {
        let pointer = ui.input(|input| input.pointer.hover_pos()).filter(|at| stage.window.contains(*at));
        let pointer = pointer.filter(|_| ui.rect_contains_pointer(ground.rect));
        let under = pointer.and_then(|at| stock_mm_at(stage, at));
        self.tell_cursor(under, events);
        let shown = under.or(told_mm.filter(|_| pointer.is_none()));
        stage.cursor = shown.map(|mm| [mm, stage.balance.forged_from_stock_mm(mm)]);
    }

    /// Tells where the cursor stands, where that is news.
    pub(in crate::canvas) fn tell_cursor(&mut self, stock_mm: Option<f64>, events: &mut Vec<CanvasEvent>) {
        if self.cursor_told != stock_mm {
            self.cursor_told = stock_mm;
            events.push(CanvasEvent::Cursor(stock_mm));
        }
    }
}

/// The place on the starting bar under the pointer, in mm; none beyond its ends.
fn stock_mm_at(stage: &Stage<'_>, at: Pos2) -> Option<f64> {
    let mm = stage.axis.mm(at.x);
    let model = stage.model;
    if at.y < stage.layout.bands.middle() {
        return (0.0..=model.cut_mm.max(model.last_mark_mm)).contains(&mm).then_some(mm);
    }
    (0.0..=model.forged_mm).contains(&mm).then(|| stage.balance.stock_from_forged_mm(mm))
}
