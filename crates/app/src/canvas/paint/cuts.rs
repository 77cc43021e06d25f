//! Paints the cuts of splits on the starting bar, and how their ends are made.

use crate::canvas::layout::Row;
use crate::canvas::model::block::Block;
use crate::canvas::model::cuts::Cuts;
use crate::canvas::model::per_view::in_mm;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::space;
use egui::{Pos2, Shape, Stroke, pos2};
use fh_core::metal::RootSize;
use std::f32::consts::PI;

impl Stage<'_> {
    /// Paints the cuts of every split on the starting bar.
    pub(in crate::canvas) fn paint_cuts(&self, row: &Row) {
        for block in self.model.blocks.iter().filter(|_| row.strip == Strip::Bar) {
            let Some(cuts) = &block.cuts else { continue };
            if !self.sees(cuts.slit.map(|mm| self.axis.x(mm))) {
                continue;
            }
            if row.view == cuts.view { self.paint_cut_lines(row, cuts) } else { self.paint_cut_hint(row, block, cuts) }
        }
    }

    /// The cuts where they are seen as lines.
    fn paint_cut_lines(&self, row: &Row, cuts: &Cuts) {
        let stroke = Stroke::new(space::HEAVY, self.theme.mark);
        let window = self.window.expand(self.sizes.gutter);
        for up in &cuts.ups {
            let y = row.y(*up);
            let ends = cuts.slit.map(|mm| pos2(self.axis.x(mm), y));
            let seen = ends.map(|end| pos2(end.x.clamp(window.left(), window.right()), y));
            self.painter.line_segment(seen, stroke);
            for (end, away) in [(0, -1.0), (1, 1.0)] {
                if cuts.closed[end] {
                    self.paint_slit_end(ends[end], away, cuts.root, row);
                }
            }
        }
    }

    /// The end of a slit: a hole, a rounded end, or a short line across.
    fn paint_slit_end(&self, at: Pos2, away: f32, root: Option<RootSize>, row: &Row) {
        let stroke = Stroke::new(space::LINE, self.theme.mark);
        let points = |mm: f64| (row.y(0.0) - row.y(mm)).clamp(space::TIGHT / 2.0, 1e4);
        match root {
            Some(RootSize::Hole(diameter)) => {
                let radius = points(in_mm(diameter) / 2.0);
                self.painter.circle(at, radius, self.theme.ground, stroke);
            }
            Some(RootSize::Radius(radius)) => {
                let radius = points(in_mm(radius));
                let arc = (0..=12).map(|step| {
                    let (sin, cos) = (PI * (step as f32 / 12.0 - 0.5)).sin_cos();
                    at + egui::vec2(away * radius * cos, radius * sin)
                });
                self.painter.add(Shape::line(arc.collect(), stroke));
            }
            None => {
                let half = self.sizes.shape / 2.0;
                self.painter.vline(at.x, at.y - half..=at.y + half, stroke);
            }
        }
    }

    /// A dashed hint of the slit where it is seen face on.
    fn paint_cut_hint(&self, row: &Row, block: &Block, cuts: &Cuts) {
        let Some(lane) = self.model.lanes.get(block.lane) else { return };
        let stroke = Stroke::new(space::LINE, self.theme.mark);
        let [lower, upper] = lane.bar.of(row.view).map(|up| row.y(up));
        let wide = match cuts.root {
            Some(RootSize::Hole(diameter)) => in_mm(diameter) / 2.0,
            _ => 0.0,
        };
        for (end, closed) in cuts.slit.into_iter().zip(cuts.closed) {
            let places: &[f64] = if wide > 0.0 { &[-wide, wide] } else { &[0.0] };
            for off in places.iter().filter(|_| closed) {
                let x = self.axis.x(end + off);
                let line = [pos2(x, upper), pos2(x, lower)];
                self.painter.extend(Shape::dashed_line(&line, stroke, space::TIGHT, space::TIGHT));
            }
        }
    }
}
