//! Paints what tells a form or a bend from another of the same outline.

use crate::canvas::layout::Row;
use crate::canvas::model::across::across_at;
use crate::canvas::model::block::Block;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::space;
use egui::{Color32, Pos2, Rect, Shape, Stroke, pos2};
use fh_core::metal::{Twist, View};

impl Stage<'_> {
    /// Paints what tells a block of the forged bar from others.
    pub(in crate::canvas) fn paint_details(&self, row: &Row, block: &Block, edge: Color32) {
        let details = &block.details;
        let stroke = Stroke::new(self.edge(false), edge);
        let at = |[along, up]: [f64; 2]| pos2(self.axis.x(along), row.y(up));
        let holes = details.holes.iter().filter(|hole| row.view == View::Top && hole.len() > 2);
        for hole in holes {
            let points: Vec<Pos2> = hole.iter().map(|point| at(*point)).collect();
            self.painter.add(Shape::convex_polygon(points, self.theme.ground, stroke));
        }
        self.paint_blank(row, block, edge);
        for line in details.lines.iter().filter(|line| line.view == row.view) {
            let ends = line.ends.map(at);
            if line.dashed {
                self.painter.extend(Shape::dashed_line(&ends, stroke, space::TIGHT, space::TIGHT / 2.0));
            } else {
                self.painter.line_segment(ends, stroke);
            }
        }
        if let Some(twist) = details.twist {
            self.paint_twist(row, block, twist, stroke);
        }
    }

    /// The blank of a plate that is cut to shape: dashed, and hatched where it is cut away.
    fn paint_blank(&self, row: &Row, block: &Block, edge: Color32) {
        let at = |[along, up]: &[f64; 2]| pos2(self.axis.x(*along), row.y(*up));
        let blank: Vec<Pos2> = block.details.blank.of(row.view).iter().map(at).collect();
        let Some(first) = blank.first().filter(|_| blank.len() > 2) else { return };
        let outline: Vec<Pos2> = block.outlines.of(row.view).iter().map(at).collect();
        self.paint_hatch_between(&[blank.clone(), outline], edge);
        let around: Vec<Pos2> = blank.iter().chain([first]).copied().collect();
        let stroke = Stroke::new(self.edge(false), edge);
        self.painter.extend(Shape::dashed_line(&around, stroke, space::TIGHT, space::TIGHT));
    }

    fn paint_twist(&self, row: &Row, block: &Block, twist: Twist, stroke: Stroke) {
        let ([start, end], outline) = (block.drawn, block.outlines.of(row.view));
        let mut last = f32::NEG_INFINITY;
        for sweep in twist.sweeps() {
            let points = sweep.map(|[share, up]| {
                let along = start + (end - start) * share;
                let [lower, upper] = across_at(outline, along).unwrap_or_default();
                pos2(self.axis.x(along), row.y((lower + upper) / 2.0 + (upper - lower) / 2.0 * up))
            });
            let [left, right] = [points[0].x, points[points.len() - 1].x];
            // Closer than this they are no lines but a shade; the first few begin at the same place.
            if self.sees([left, right]) && right - last >= space::TIGHT {
                last = right;
                self.painter.add(Shape::line(points.to_vec(), stroke));
            }
        }
    }

    /// Paints where the middles of holes come on the starting bar: a cross from above, its axis from the side.
    pub(in crate::canvas) fn paint_hole_centers(&self, row: &Row) {
        let stroke = Stroke::new(space::LINE, self.theme.mark);
        for block in &self.model.blocks {
            let Some(center) = block.details.center else { continue };
            let Some(lane) = self.model.lanes.get(block.lane) else { continue };
            let x = self.axis.x(center);
            if row.strip != Strip::Bar || !self.sees([x, x]) {
                continue;
            }
            let [lower, upper] = *lane.bar.of(row.view);
            let middle = pos2(x, row.y((lower + upper) / 2.0));
            let arm = (self.sizes.shape * 0.7).min((row.y(lower) - row.y(upper)) / 2.0);
            let cross = Rect::from_center_size(middle, egui::Vec2::splat(2.0 * arm));
            match row.view {
                View::Top => {
                    self.painter.hline(cross.x_range(), middle.y, stroke);
                    self.painter.vline(middle.x, cross.y_range(), stroke);
                }
                View::Side => {
                    let axis = [pos2(x, row.y(upper)), pos2(x, row.y(lower))];
                    self.painter.extend(Shape::dashed_line(&axis, stroke, space::TIGHT, space::TIGHT / 2.0));
                }
            }
        }
    }
}
