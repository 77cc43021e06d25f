//! The bar after a step of the order of work: what the step changes is lit, and what is hot is shown with its length.

use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::{Text, space};
use egui::{Rect, Stroke, pos2, vec2};

impl Stage<'_> {
    /// Whether a segment stands out: it is selected, or changed by the step.
    pub(in crate::canvas) fn is_lit(&self, segment: usize) -> bool {
        let is_selected = self.selected == Some(segment) || self.also.contains(&segment);
        is_selected || self.step.is_some_and(|step| step.lit.contains(&segment))
    }

    /// The segments that stand out.
    pub(in crate::canvas) fn lit(&self) -> impl Iterator<Item = usize> {
        (0..self.model.blocks.len()).filter(|segment| self.is_lit(*segment))
    }

    /// Paints what is hot: a band with ends below the forged bar, and its length in words.
    pub(in crate::canvas) fn paint_hot_zone(&self) {
        let Some(([from, to], label)) = self.step.and_then(|step| step.hot) else { return };
        let (left, right) = (self.axis.x(from), self.axis.x(to));
        if !self.sees([left, right]) {
            return;
        }
        let stretch = self.layout.stretch_of(Strip::Forged);
        let (top, height) = (stretch.bottom + space::TIGHT, space::TIGHT);
        let band = Rect::from_min_max(pos2(left, top), pos2(right.max(left + 1.0), top + height));
        self.painter.rect_filled(band, 0.0, self.theme.hot);
        let edge = Stroke::new(space::LINE, self.theme.ink);
        for x in [left, right] {
            self.painter.vline(x, top - space::TIGHT..=top + height + space::TIGHT, edge);
        }
        let words = self.text(label, Text::Strong, self.theme.ink);
        let middle = ((left + right) / 2.0).clamp(self.window.left(), self.window.right());
        let least = self.window.left() + space::TIGHT;
        let most = (self.window.right() - words.size().x - space::TIGHT).max(least);
        let top = self.layout.lengths.bottom - self.sizes.zone + space::TIGHT;
        let at = pos2((middle - words.size().x / 2.0).clamp(least, most), top);
        let ground = Rect::from_min_size(at, words.size()).expand2(vec2(space::TIGHT, 0.0));
        self.painter.rect_filled(ground, f32::from(space::CORNER), self.theme.panel_raised);
        self.painter.galley(at, words, self.theme.ink);
    }
}
