//! Brackets below a drawing: a length from here to there, with its words.

use crate::theme::{Text, Theme, space};
use egui::{Align2, Color32, Painter, Rect, pos2};

/// How far the ends of a bracket stand up, in points.
const END: f32 = space::TIGHT;

/// The height of a bracket with its words.
pub(super) fn height(theme: &Theme) -> f32 {
    END + space::TIGHT / 2.0 + theme.font(Text::Small).size * 1.3
}

/// A line of brackets across a drawing.
pub(super) struct Row<'a> {
    pub(super) theme: &'a Theme,
    pub(super) painter: &'a Painter,
    /// The drawing above.
    pub(super) across: Rect,
    /// Where the row begins.
    pub(super) top: f32,
}

impl Row<'_> {
    /// Draws a bracket with words below it that stay within the drawing's sides. A heavy one has no ends.
    pub(super) fn bracket(&self, [from, to]: [f32; 2], heavy: bool, words: &str) {
        self.line([from, to], heavy);
        self.words(f32::midpoint(from, to), words, self.theme.ink);
    }

    /// Draws the line of a bracket alone.
    pub(super) fn line(&self, [from, to]: [f32; 2], heavy: bool) {
        let y = self.top + END;
        let width = if heavy { 2.0 * space::HEAVY } else { space::LINE };
        let stroke = (width, self.theme.ink);
        self.painter.hline(from..=to, y, stroke);
        if !heavy {
            for x in [from, to] {
                self.painter.vline(x, self.top..=y, stroke);
            }
        }
    }

    /// Writes words around a point across, within the drawing's sides.
    pub(super) fn words(&self, x: f32, words: &str, color: Color32) {
        let galley = self.painter.layout_no_wrap(words.to_owned(), self.theme.font(Text::Small), color);
        let size = galley.size();
        let left = (x - size.x / 2.0).min(self.across.right() - size.x).max(self.across.left());
        self.painter.galley(pos2(left, self.top + END + space::TIGHT / 2.0), galley, color);
    }

    /// Writes words at the left and the right end.
    pub(super) fn at_ends(&self, left: &str, right: &str) {
        let (font, color) = (self.theme.font(Text::Small), self.theme.ink_quiet);
        self.painter.text(pos2(self.across.left(), self.top), Align2::LEFT_TOP, left, font.clone(), color);
        self.painter.text(pos2(self.across.right(), self.top), Align2::RIGHT_TOP, right, font, color);
    }
}
