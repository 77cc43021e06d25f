//! The place of a hole of the selected part: from the root and from the base line to its middle, each with its figure.

use crate::canvas::figure::{Figure, What};
use crate::canvas::layout::Row;
use crate::canvas::model::details::Middle;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::figures;
use crate::theme::{Text, space};
use egui::{Pos2, Rect, Stroke, Vec2, pos2, vec2};
use fh_core::edit::{HolePlace, HoleWay};
use fh_core::metal::View;

impl Stage<'_> {
    /// Paints the place of a hole where its part is selected; of another part of the first hole. Its figures join the others.
    pub(in crate::canvas) fn paint_hole_place(&self, shown: (usize, usize), figures: &mut Vec<Figure>) {
        let Some(segment) = self.selected else { return };
        let Some(row) = self.layout.rows_of(Strip::Forged).find(|row| row.view == View::Top) else { return };
        let Some(block) = self.model.blocks.get(segment) else { return };
        let hole = if shown.0 == segment && shown.1 < block.details.middles.len() { shown.1 } else { 0 };
        let Some(middle) = block.details.middles.get(hole) else { return };
        let reach = block.details.holes.get(hole).map_or(Vec2::ZERO, |outline| self.reach(outline, middle, row));
        let at = pos2(self.axis.x(middle.drawn[0]), row.y(middle.drawn[1]));
        let line = Stroke::new(space::LINE, self.theme.accent);
        let root = self.axis.x(middle.drawn[0] - middle.along_mm * middle.way);
        self.painter.hline(root.min(at.x)..=root.max(at.x), at.y, line);
        self.painter.circle_filled(at, self.sizes.shape / 3.0, self.theme.accent);
        let aside = reach + Vec2::splat(self.sizes.shape / 2.0);
        let from_root = pos2((root + at.x) / 2.0, at.y);
        self.paint_place_figure(HoleWay::Along, (segment, hole), (from_root, [at, aside.to_pos2()]), figures);
        if let Some(across) = middle.across_mm {
            let base = row.y(middle.drawn[1] - across);
            self.painter.vline(at.x, base.min(at.y)..=base.max(at.y), line);
            let short = self.sizes.shape;
            self.painter.hline(at.x - short..=at.x + short, base, line);
            let from_base = pos2(at.x, (base + at.y) / 2.0);
            self.paint_place_figure(HoleWay::Across, (segment, hole), (from_base, [at, aside.to_pos2()]), figures);
        }
    }

    /// How far the edge of a hole reaches from its middle on the screen.
    fn reach(&self, outline: &[[f64; 2]], middle: &Middle, row: &Row) -> Vec2 {
        let at = pos2(self.axis.x(middle.drawn[0]), row.y(middle.drawn[1]));
        let away = |[along, up]: &[f64; 2]| (pos2(self.axis.x(*along), row.y(*up)) - at).abs();
        outline.iter().map(away).fold(Vec2::ZERO, Vec2::max)
    }

    /// Paints a figure where it hides no other one: beside its line, or around the hole.
    fn paint_place_figure(
        &self,
        way: HoleWay,
        (segment, hole): (usize, usize),
        (beside, [at, aside]): (Pos2, [Pos2; 2]),
        figures: &mut Vec<Figure>,
    ) {
        let place = HolePlace { hole, way };
        let Some(written) = self.place_text(segment, place) else { return };
        let words = self.text(written, Text::Strong, self.theme.accent);
        let size = words.size() + vec2(2.0 * space::TIGHT, 0.0);
        let (up, right) = (aside.y + size.y / 2.0, aside.x + size.x / 2.0);
        let near = match way {
            HoleWay::Along => [vec2(0.0, -size.y / 2.0 - space::TIGHT), vec2(0.0, size.y / 2.0 + space::TIGHT)]
                .map(|off| beside + off),
            HoleWay::Across => [vec2(right, 0.0), vec2(-right, 0.0)].map(|off| pos2(at.x, beside.y) + off),
        };
        let around = (0..4_u8).flat_map(|line| {
            let up = up + f32::from(line) * size.y;
            let offs =
                [vec2(0.0, -up), vec2(0.0, up), vec2(right, -up), vec2(right, up), vec2(-right, -up), vec2(-right, up)];
            offs.map(|off| at + off)
        });
        let rects = near.into_iter().chain(around).map(|middle| Rect::from_center_size(middle, size));
        let is_free = |rect: &Rect| {
            self.window.contains_rect(*rect) && figures.iter().all(|figure| !figure.rect.intersects(*rect))
        };
        // Where there is no room, Tab still goes to it from the figures before.
        let Some(rect) = rects.into_iter().find(is_free) else { return };
        self.painter.rect_filled(rect, f32::from(space::CORNER), self.theme.panel_raised);
        self.painter.galley(rect.min + vec2(space::TIGHT, 0.0), words, self.theme.accent);
        figures.push(Figure { what: What::Hole(segment, place), rect, hit: rect.expand(space::TIGHT / 2.0) });
    }

    /// A place of a hole as it is written, or as it comes where it is left out.
    pub(in crate::canvas) fn place_text(&self, segment: usize, place: HolePlace) -> Option<String> {
        let own = self.bar.segment(segment).and_then(|part| place.written(part));
        if let Some(own) = own {
            return Some(own.text().to_owned());
        }
        let middle = self.model.blocks.get(segment)?.details.middles.get(place.hole)?;
        let mm = if place.way == HoleWay::Along { middle.along_mm } else { middle.across_mm? };
        Some(figures::finished(mm, self.model.unit))
    }
}
