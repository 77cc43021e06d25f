//! The ground before anything lies on it.

use crate::canvas::scene::Scene;
use crate::canvas::sizes::Sizes;
use crate::theme::{Text, space};
use egui::{Align2, Rect, Stroke, Ui, pos2};

/// Paints a bar in outline and says that nothing is on it.
pub(in crate::canvas) fn paint(ui: &Ui, rect: Rect, scene: &Scene<'_>, sizes: &Sizes) {
    let (painter, theme) = (ui.painter().with_clip_rect(rect.intersect(ui.clip_rect())), scene.theme);
    painter.rect_filled(rect, 0.0, theme.ground);
    let bar = Rect::from_center_size(
        rect.center() - egui::vec2(0.0, sizes.line * 2.0),
        egui::vec2(rect.width() * 0.5, theme.scaled(space::TARGET)),
    );
    let corners = [bar.left_top(), bar.right_top(), bar.right_bottom(), bar.left_bottom(), bar.left_top()];
    let stroke = Stroke::new(space::LINE, theme.ink_quiet);
    painter.extend(egui::Shape::dashed_line(&corners, stroke, space::GAP, space::TIGHT));
    let middle = pos2(rect.center().x, bar.bottom() + sizes.line);
    painter.text(middle, Align2::CENTER_TOP, "Nothing on this bar yet.", theme.font(Text::Title), theme.ink);
}
