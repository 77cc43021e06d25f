//! The cursor: one place of the metal, shown on both bars and joined to the plot.

use super::layout::Strip;
use super::stage::Stage;
use super::{Canvas, CanvasEvent, bands};
use crate::theme::space;
use egui::{Pos2, Response, Shape, Stroke, Ui, pos2};

impl Canvas {
    /// Finds the place of the metal under the pointer, and tells it where it changed.
    pub(super) fn touch_cursor(
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
    pub(super) fn tell_cursor(&mut self, stock_mm: Option<f64>, events: &mut Vec<CanvasEvent>) {
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

impl Stage<'_> {
    /// Paints the hairline through both bars, and its way along the band.
    pub(super) fn paint_cursor(&self) {
        let Some([stock, forged]) = self.cursor else { return };
        let stroke = Stroke::new(space::HAIRLINE, self.theme.ink_quiet);
        let (upper, lower) = (self.axis.x(stock), self.axis.x(forged));
        let bottom = self.layout.stretch_of(Strip::Forged).bottom + space::GAP;
        self.painter.vline(upper, self.window.top()..=self.layout.bands.top, stroke);
        let way = (0..=bands::STEPS).map(|step| {
            let share = step as f32 / bands::STEPS as f32;
            let y = egui::lerp(self.layout.bands.top..=self.layout.bands.bottom, share);
            pos2(bands::between(upper, lower, share), y)
        });
        self.painter.add(Shape::line(way.collect(), stroke));
        self.painter.vline(lower, self.layout.bands.bottom..=bottom, stroke);
    }
}
