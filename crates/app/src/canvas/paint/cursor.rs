//! Paints the cursor: a hairline through both bars, and its way along the band.

use super::bands;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::space;
use egui::{Shape, Stroke, pos2};

impl Stage<'_> {
    /// Paints the hairline through both bars, and its way along the band.
    pub(in crate::canvas) fn paint_cursor(&self) {
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
