//! The ground before anything lies on it.

use crate::canvas::scene::Scene;
use crate::canvas::sizes::Sizes;
use crate::theme::Text;
use egui::{Align2, Rect, Ui};

/// Says that nothing is on the bar; what can be done about it is for those who show more than the drawing.
pub(in crate::canvas) fn paint(ui: &Ui, rect: Rect, scene: &Scene<'_>, sizes: &Sizes) {
    let (painter, theme) = (ui.painter().with_clip_rect(rect.intersect(ui.clip_rect())), scene.theme);
    painter.rect_filled(rect, 0.0, theme.ground);
    let words = "Nothing on this bar yet.";
    painter.text(
        rect.center() - egui::vec2(0.0, sizes.line * 1.5),
        Align2::CENTER_TOP,
        words,
        theme.font(Text::Title),
        theme.ink,
    );
}
