//! The sizes across the selected part on the forged bar: a line from edge to edge, its figure, and a handle at each end.

use crate::canvas::figure::{Dimension, Figure, What};
use crate::canvas::layout::Row;
use crate::canvas::model::across::across_at;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::{Text, space};
use egui::{Rect, Stroke, StrokeKind, Vec2, pos2, vec2};
use fh_core::edit::{Across, AcrossAt};

/// The height of the metal, against that of a figure, from which the figure lies on it.
const LEAST_METAL: f32 = 0.6;

impl Stage<'_> {
    /// The sizes across the selected part, as they are seen in the rows that are shown.
    pub(in crate::canvas) fn dimensions(&self) -> Vec<Dimension> {
        let Some(segment) = self.selected.filter(|_| self.step.is_none()) else { return Vec::new() };
        let best = self.best_row(segment, Strip::Forged).filter(|_| !self.is_whole(segment)).map(|row| row.view);
        let rows = self.layout.rows_of(Strip::Forged).filter(|row| best.is_none_or(|best| best == row.view));
        let mut all = Vec::new();
        for row in rows {
            all.extend(Across::ALL.into_iter().filter_map(|across| self.dimension(segment, across, row)));
        }
        all
    }

    fn dimension(&self, segment: usize, across: Across, row: &Row) -> Option<Dimension> {
        if across.view != row.view {
            return None;
        }
        let block = self.model.blocks.get(segment).filter(|block| block.settled)?;
        let size = across.size(self.bar.segment(segment)?)?;
        let [left, right] = self.span(segment, Strip::Forged)?;
        let (left, right) = (left.max(self.window.left()), right.min(self.window.right()));
        if right <= left {
            return None;
        }
        let is_reversed = self.balance.segments.get(segment).is_some_and(|balance| balance.reversed);
        // Beside the boundaries, which can be taken there.
        let inset = self.sizes.catch.min((right - left) / 2.0);
        let (x, is_left) = match across.at {
            AcrossAt::All => ((left + right) / 2.0, false),
            at if (at == AcrossAt::From) == is_reversed => (right - inset, true),
            _ => (left + inset, false),
        };
        let [lower, upper] = across_at(block.outlines.of(row.view), self.axis.mm(x))?;
        let edges = [row.y(upper), row.y(lower)];
        Some(Dimension {
            what: (segment, across),
            size,
            x,
            edges,
            mm_per_point: row.mm_per_point(),
            room: [left, right],
            is_left,
        })
    }

    /// Paints them, and tells where their figures are.
    pub(in crate::canvas) fn paint_dimensions(&self, dimensions: &[Dimension]) -> Vec<Figure> {
        let line = Stroke::new(space::LINE, self.theme.accent);
        let paint = |dimension: &Dimension| {
            let [top, bottom] = dimension.edges;
            self.painter.vline(dimension.x, top..=bottom, line);
            for handle in dimension.handles() {
                let square = Rect::from_center_size(handle, vec2(self.sizes.shape, self.sizes.shape));
                self.painter.rect(square, 0.0, self.theme.panel_raised, line, StrokeKind::Middle);
            }
        };
        dimensions.iter().for_each(paint);
        let mut figures: Vec<Figure> = Vec::new();
        for dimension in dimensions {
            let words = self.text(dimension.size.text(), Text::Strong, self.theme.accent);
            let rect = self.figure_rect(dimension, words.size());
            // Where there is no room for both, Tab still goes from the one to the other.
            if figures.iter().any(|other| other.rect.intersects(rect)) {
                continue;
            }
            self.painter.rect_filled(rect, f32::from(space::CORNER), self.theme.panel_raised);
            self.painter.galley(rect.min + vec2(space::TIGHT, 0.0), words, self.theme.accent);
            let (segment, across) = dimension.what;
            figures.push(Figure { what: What::Across(segment, across), rect, hit: rect.expand(space::TIGHT / 2.0) });
        }
        figures
    }

    /// The place of a figure: beside its line where the metal has room for it, else beyond the part.
    fn figure_rect(&self, dimension: &Dimension, words: Vec2) -> Rect {
        let size = words + vec2(2.0 * space::TIGHT, 0.0);
        let [top, bottom] = dimension.edges;
        let (x, aside) = (dimension.x, self.sizes.shape);
        let is_left = dimension.is_left || x + aside + size.x > self.window.right();
        let beside = if is_left { x - aside - size.x } else { x + aside };
        let [start, end] = dimension.room;
        let has_room = bottom - top >= LEAST_METAL * size.y && beside >= start && beside + size.x <= end;
        if has_room {
            return Rect::from_min_size(pos2(beside, (top + bottom - size.y) / 2.0), size);
        }
        let least = self.window.left() + space::TIGHT;
        let beyond = if end + aside + size.x > self.window.right() { start - aside - size.x } else { end + aside };
        Rect::from_min_size(pos2(beyond.max(least), (top + bottom - size.y) / 2.0), size)
    }
}
