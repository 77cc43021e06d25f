//! One frame of the view: everything that its painters look at.

use super::camera::Camera;
use super::model::Model;
use super::place::Place;
use crate::theme::{Text, Theme, space};
use egui::{Align2, Painter, Pos2, Rect, Stroke, Vec2, pos2, vec2};
use fh_core::balance::Balance;
use fh_core::plan::Plan;

/// One frame.
pub(super) struct Stage<'a> {
    pub(super) rect: Rect,
    pub(super) painter: Painter,
    pub(super) theme: &'a Theme,
    pub(super) plan: &'a Plan,
    pub(super) balance: &'a Balance,
    pub(super) model: &'a Model,
    pub(super) camera: Camera,
    pub(super) selected: Option<Place>,
}

impl Stage<'_> {
    /// Where a place in space stands in the window.
    pub(super) fn point(&self, at: [f64; 3]) -> Pos2 {
        let [x, y, _] = self.camera.sight().seen(at);
        self.rect.center() + egui::vec2(x as f32, y as f32)
    }

    /// A place in the window, counted from the middle of the view to the right and down.
    pub(super) fn off_middle(&self, at: Pos2) -> [f64; 2] {
        let from = at - self.rect.center();
        [f64::from(from.x), f64::from(from.y)]
    }

    /// Paints figures on a card about a place, kept within the view; where that is.
    pub(super) fn card(&self, at: impl FnOnce(Vec2) -> Pos2, words: String) -> Rect {
        let (theme, painter) = (self.theme, &self.painter);
        let words = painter.layout_no_wrap(words, theme.font(Text::Strong), theme.ink);
        let size = words.size() + vec2(2.0 * space::GAP, space::TIGHT);
        let card = Align2::CENTER_CENTER.anchor_size(self.within(at(size), size.x / 2.0), size);
        let edge = Stroke::new(theme.hairline(), theme.accent);
        painter.rect(card, space::CORNER, theme.panel_raised, edge, egui::StrokeKind::Inside);
        painter.galley(card.center() - words.size() / 2.0, words, theme.ink);
        card
    }

    /// The same place, kept a little within the view.
    pub(super) fn within(&self, at: Pos2, margin: f32) -> Pos2 {
        let room = self.rect.shrink(margin);
        pos2(
            at.x.clamp(room.left(), room.right().max(room.left())),
            at.y.clamp(room.top(), room.bottom().max(room.top())),
        )
    }
}
