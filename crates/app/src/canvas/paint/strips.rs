//! The strips themselves: the starting bar, and the forged bar's silhouettes.

use crate::canvas::clip::{clipped, parted, without_crowding};
use crate::canvas::layout::Row;
use crate::canvas::model::block::Block;
use crate::canvas::model::lanes::Seen;
use crate::canvas::places::spot_rect;
use crate::canvas::spot::Spot;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::{Text, space};
use crate::widgets::fill::filled;
use egui::{Color32, Pos2, Rect, Shape, Stroke, StrokeKind, Vec2, pos2, vec2};
use fh_core::findings::Severity;

impl Stage<'_> {
    /// Paints both bars from every side that is shown.
    pub(in crate::canvas) fn paint_strips(&self) {
        for row in &self.layout.rows {
            match row.strip {
                Strip::Bar => self.paint_bar(row),
                Strip::Forged => self.paint_forged(row),
            }
        }
    }

    fn paint_bar(&self, row: &Row) {
        let model = self.model;
        let edge = Stroke::new(self.edge(false), self.theme.stock_edge);
        let filled = model.cut_mm.min(model.last_mark_mm);
        let bar = self.bar_rect(row, 0.0, filled);
        self.painter.rect_filled(bar, 0.0, self.theme.stock_fill);
        for block in model.blocks.iter().filter(|block| block.hatched) {
            let part = self.block_on_bar(row, block, filled);
            self.painter.rect_filled(part, 0.0, self.theme.hold_fill);
            self.paint_hatch(part, self.theme.stock_edge);
        }
        self.painter.rect_stroke(bar, 0.0, edge, StrokeKind::Middle);
        self.paint_gaps(row);
        self.paint_rest(row, [filled, model.cut_mm.max(model.last_mark_mm)]);
        self.paint_cuts(row);
        self.paint_ticks(row);
        self.paint_hole_centers(row);
        self.paint_unsettled(row);
        for lit in self.lit().filter_map(|at| self.model.blocks.get(at)).filter(|block| block.settled) {
            self.paint_selection(self.block_on_bar(row, lit, f64::INFINITY));
        }
    }

    /// What the parts before a fixed mark leave free of it, or lie over.
    fn paint_gaps(&self, row: &Row) {
        for block in &self.model.blocks {
            let Some(fixed) = block.fixed.as_ref().map(|fixed| fixed.mm) else { continue };
            let ends = block.stock[1];
            let gap = self.bar_rect(row, ends.min(fixed), ends.max(fixed));
            if gap.width() < space::LINE {
                continue;
            }
            let color = if ends > fixed { self.theme.stop } else { self.theme.ink_quiet };
            if ends < fixed {
                self.painter.rect_filled(gap, 0.0, self.theme.ground);
            }
            self.paint_hatch(gap, color);
            self.paint_dashed(gap, Stroke::new(space::LINE, color));
        }
    }

    /// What is left over of a bar already cut, or what it is too short.
    fn paint_rest(&self, row: &Row, [from, to]: [f64; 2]) {
        if to - from <= 1e-6 {
            return;
        }
        let short = self.model.cut_mm < self.model.last_mark_mm;
        let (words, color) =
            if short { ("bar too short", self.theme.stop) } else { ("left over", self.theme.ink_quiet) };
        let rest = self.bar_rect(row, from, to);
        self.paint_dashed(rest, Stroke::new(space::LINE, color));
        let words = self.text(words, Text::Small, color);
        if words.size().x + 2.0 * space::GAP < rest.width() && words.size().y < rest.height() {
            self.painter.galley(rest.center() - words.size() / 2.0, words, color);
        }
    }

    /// The part of the starting bar that a block has, up to where it ends.
    fn block_on_bar(&self, row: &Row, block: &Block, filled: f64) -> Rect {
        let [from, to] = block.stock.map(|mm| mm.min(filled));
        let lane = self.model.lanes.get(block.lane).map(|lane| *lane.bar.of(row.view));
        self.rect_in_bar(row, [from, to], lane.unwrap_or(*self.model.edges.bar.of(row.view)))
    }

    /// A length of the starting bar.
    fn bar_rect(&self, row: &Row, from: f64, to: f64) -> Rect {
        self.rect_in_bar(row, [from, to], *self.model.edges.bar.of(row.view))
    }

    /// A rectangle along and across the starting bar, cut off a little outside of the window.
    fn rect_in_bar(&self, row: &Row, [from, to]: [f64; 2], [lower, upper]: [f64; 2]) -> Rect {
        let rect = Rect::from_min_max(pos2(self.axis.x(from), row.y(upper)), pos2(self.axis.x(to), row.y(lower)));
        let rect = rect.intersect(self.window.expand(self.sizes.gutter));
        if rect.is_negative() { Rect::from_min_size(rect.min, Vec2::ZERO) } else { rect }
    }

    fn paint_forged(&self, row: &Row) {
        for index in self.model.painted(row.view).filter(|index| !self.is_lit(*index)) {
            if let Some(block) = self.model.blocks.get(index) {
                self.paint_block(row, index, block, false);
            }
        }
        self.paint_unsettled(row);
        for index in self.model.painted(row.view).filter(|index| self.is_lit(*index)) {
            let Some(block) = self.model.blocks.get(index).filter(|block| block.settled) else { continue };
            self.paint_block(row, index, block, true);
            if block.cuts.is_some() {
                self.paint_branches_of(row, block);
            }
        }
    }

    /// Paints the edges of all branches of a selected split.
    fn paint_branches_of(&self, row: &Row, split: &Block) {
        let within = format!("{}.", split.path);
        let stroke = Stroke::new(space::LINE, self.theme.accent);
        let mut around = Rect::NOTHING;
        let hidden = |block: &Block| {
            self.model.lanes.get(block.lane).is_some_and(|lane| *lane.seen.of(row.view) == Seen::Behind)
        };
        for block in self.model.blocks.iter().filter(|block| block.path.starts_with(&within) && !hidden(block)) {
            let points = self.points_of(row, block);
            if points.len() > 2 {
                around = around.union(Rect::from_points(&points));
                self.paint_outline(&points, stroke);
            }
        }
        if around.is_positive() {
            self.paint_brackets(around, self.theme.accent);
        }
    }

    /// The outline of a block on the screen, cut off a little outside of the window.
    fn points_of(&self, row: &Row, block: &Block) -> Vec<Pos2> {
        let points = block.outlines.of(row.view).iter().map(|[along, up]| pos2(self.axis.x(*along), row.y(*up)));
        without_crowding(clipped(points.collect(), self.window.expand(self.sizes.gutter)))
    }

    fn paint_block(&self, row: &Row, index: usize, block: &Block, selected: bool) {
        let Some(span) = self.span(index, Strip::Forged).filter(|span| self.sees(*span)) else { return };
        let points = self.points_of(row, block);
        if points.len() < 3 {
            return;
        }
        let around = Rect::from_points(&points);
        let fill = if block.hatched { self.theme.hold_fill } else { self.theme.forged_fill };
        self.painter.add(Shape::mesh(filled(&points, fill)));
        if block.hatched {
            self.paint_hatch(around, self.theme.forged_edge);
        }
        if selected {
            self.paint_outline(&points, Stroke::new(space::HEAVY, self.theme.accent));
            self.paint_brackets(around, self.theme.accent);
        } else if span[1] - span[0] > space::HAIRLINE {
            self.paint_outline(&points, Stroke::new(self.edge(false), self.theme.forged_edge));
        }
        if span[1] - span[0] > space::GAP {
            self.paint_details(row, block, if selected { self.theme.accent } else { self.theme.forged_edge });
        }
    }

    fn paint_outline(&self, points: &[Pos2], stroke: Stroke) {
        self.painter.extend(parted(points).into_iter().map(|line| Shape::line(line, stroke)));
    }

    /// Segments whose sizes are not settled: a dashed box with the shape that stops.
    fn paint_unsettled(&self, row: &Row) {
        // After a step, what has no shape is not there yet, or not any more.
        if self.step.is_some() {
            return;
        }
        let mut last = f32::NEG_INFINITY;
        for (index, block) in self.model.blocks.iter().enumerate().filter(|(_, block)| !block.settled) {
            let Some([x, _]) = self.span(index, row.strip) else { continue };
            let half = self.sizes.unsettled / 2.0;
            if !self.sees([x - half, x + half]) || x - last < space::TIGHT {
                continue;
            }
            last = x;
            let box_ = self.unsettled_rect(row, block.lane, x);
            let selected = self.is_lit(index);
            let color = if selected { self.theme.accent } else { self.theme.stop };
            self.painter.rect_filled(box_, 0.0, self.theme.ground);
            self.paint_dashed(box_, Stroke::new(if selected { space::HEAVY } else { space::LINE }, color));
            self.paint_severity(Severity::Stop, box_.center());
            if selected {
                self.paint_brackets(box_, color);
            }
        }
    }

    fn unsettled_rect(&self, row: &Row, lane: usize, x: f32) -> Rect {
        let lane = self.model.lanes.get(lane).map(|lane| *lane.bar.of(row.view));
        let [lower, upper] = lane.unwrap_or(*self.model.edges.bar.of(row.view));
        let height = (row.y(lower) - row.y(upper)).max(self.sizes.unsettled);
        let width = self.sizes.unsettled;
        Rect::from_center_size(pos2(x, (row.y(lower) + row.y(upper)) / 2.0), vec2(width, height))
    }

    fn paint_selection(&self, rect: Rect) {
        if rect.width() <= 0.0 {
            return;
        }
        let stroke = Stroke::new(space::HEAVY, self.theme.accent);
        self.painter.rect_stroke(rect, 0.0, stroke, StrokeKind::Middle);
        self.paint_brackets(rect, self.theme.accent);
    }

    /// Paints the marks across the bar, and the boundary in hand on either bar.
    pub(in crate::canvas) fn paint_boundaries(&self) {
        let stroke = Stroke::new(space::LINE, self.theme.mark);
        let stretch = self.layout.stretch_of(Strip::Bar);
        for (_, x) in self.marks_in_lane(0) {
            self.painter.vline(x, stretch.top..=stretch.bottom, stroke);
        }
        if let Some(spot) = self.focused {
            let ring = Stroke::new(space::LINE, self.theme.focus);
            let rect = spot_rect(self, spot).expand(space::LINE);
            self.painter.rect_stroke(rect, f32::from(space::CORNER), ring, StrokeKind::Middle);
        }
        for spot in [self.focused, self.hot].into_iter().flatten() {
            self.paint_hot(spot);
        }
    }

    fn paint_hot(&self, spot: Spot) {
        let Some([_, end]) = spot.drawn(self.model) else { return };
        let x = self.axis.x(end);
        let stretch = self.stretch_of_segment(spot.segment, spot.strip);
        let stroke = Stroke::new(space::HEAVY, self.theme.accent);
        self.painter.vline(x, stretch.top - space::TIGHT..=stretch.bottom + space::TIGHT, stroke);
        for (y, away) in [(stretch.top - space::TIGHT, -1.0), (stretch.bottom + space::TIGHT, 1.0)] {
            self.paint_knob(pos2(x, y), away, self.theme.accent);
        }
    }

    /// A small wedge that points at the boundary.
    fn paint_knob(&self, tip: Pos2, away: f32, color: Color32) {
        let (half, height) = (self.sizes.shape / 2.0, self.sizes.shape * 0.7 * away);
        let corners = vec![tip, tip + vec2(half, height), tip + vec2(-half, height)];
        self.painter.add(Shape::convex_polygon(corners, color, Stroke::NONE));
    }
}
