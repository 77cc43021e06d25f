//! The captions left of the strips, and what is not true to scale.

use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::{Text, space};
use egui::{Align2, Rect, Stroke, StrokeKind, pos2, vec2};
use fh_core::metal::View;

impl Stage<'_> {
    /// Paints which bar is which and from where it is seen.
    pub(in crate::canvas) fn paint_captions(&self) {
        let gutter =
            Rect::from_min_max(pos2(self.rect.left(), self.window.top()), pos2(self.window.left(), self.rect.bottom()));
        let painter = self.outer.with_clip_rect(gutter.intersect(self.outer.clip_rect()));
        let right = gutter.right() - space::GAP;
        for strip in [Strip::Bar, Strip::Forged] {
            let mut last_foot = f32::NEG_INFINITY;
            for (index, row) in self.layout.rows_of(strip).enumerate() {
                let middle = row.y(0.0);
                let view = self.view_word(row.view, strip);
                let name_above = if index == 0 { self.sizes.line / 2.0 } else { 0.0 };
                // Where the rows lie closer than the words are high, the lower word gives way.
                let at = (middle + name_above).max(last_foot + self.sizes.line / 2.0);
                last_foot = at + self.sizes.line / 2.0;
                let below = pos2(right, at);
                painter.text(below, Align2::RIGHT_CENTER, view, self.theme.font(Text::Small), self.theme.ink_quiet);
                if index == 0 {
                    let above = pos2(right, middle - name_above);
                    let name = self.strip_name(strip);
                    painter.text(above, Align2::RIGHT_CENTER, name, self.theme.font(Text::Strong), self.theme.ink);
                }
            }
        }
        let rule = Stroke::new(self.theme.hairline(), self.theme.rule);
        self.outer.vline(self.window.left(), self.rect.top()..=self.rect.bottom(), rule);
        self.paint_exaggeration();
    }

    /// From where a strip is seen. A dot, as a punch makes it, is on the side where the marks are struck: every other side is
    /// named from it.
    fn view_word(&self, view: View, strip: Strip) -> &'static str {
        let is_marked = strip == Strip::Bar && self.model.marked_view == view;
        match (view, is_marked) {
            (View::Side, true) => "• side",
            (View::Top, true) => "• top",
            (View::Side, false) => "side",
            (View::Top, false) => "top",
        }
    }

    /// What a strip is called: the bar after a step by the step's number.
    fn strip_name(&self, strip: Strip) -> String {
        match self.step.filter(|_| strip == Strip::Forged) {
            Some(step) => format!("Step {}", step.number),
            None => strip.name().to_owned(),
        }
    }

    /// Says how many times too thick the bars are drawn.
    fn paint_exaggeration(&self) {
        if self.exaggeration <= 1.0 {
            return;
        }
        let words = self.text(format!("× {}", self.exaggeration), Text::Strong, self.theme.ink);
        let what = self.text("thickness", Text::Small, self.theme.ink);
        let size = vec2(self.sizes.gutter - space::TIGHT, words.size().y + what.size().y + space::TIGHT);
        // Beside the bands no caption stands.
        let middle = pos2(self.rect.left() + self.sizes.gutter / 2.0, self.layout.bands.middle());
        let chip = Rect::from_center_size(middle, size);
        let corners = f32::from(space::CORNER);
        self.outer.rect_filled(chip, corners, self.theme.panel_raised);
        let rule = Stroke::new(space::LINE, self.theme.warning);
        self.outer.rect_stroke(chip, corners, rule, StrokeKind::Inside);
        self.outer.galley(pos2(middle.x - what.size().x / 2.0, middle.y - what.size().y), what, self.theme.ink);
        self.outer.galley(pos2(middle.x - words.size().x / 2.0, middle.y), words, self.theme.ink);
    }
}
