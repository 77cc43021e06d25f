//! The cuts of a split on the starting bar: where they stand, how far they run, and how their ends are made.

use super::lanes::{Lane, cut_view};
use super::layout::{Row, Strip};
use super::model::{Block, in_mm};
use super::stage::Stage;
use crate::theme::space;
use egui::{Pos2, Shape, Stroke, pos2};
use fh_core::balance::SegmentBalance;
use fh_core::metal::{FreeEnd, RootSize, Shape as Metal, SplitSize, View};
use std::f32::consts::PI;

/// The cuts of one split, in mm.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Cuts {
    /// The side from which they are seen as lines.
    view: View,
    /// From where to where they run.
    slit: [f64; 2],
    /// How far up they stand, as seen.
    ups: Vec<f64>,
    /// Whether each end of the slit is in the bar.
    closed: [bool; 2],
    root: Option<RootSize>,
}

impl Cuts {
    /// Those of a split; none for other segments.
    pub(super) fn new(balance: &SegmentBalance, lane: &Lane) -> Option<Self> {
        let Some(Metal::Split(size)) = &balance.shape else { return None };
        let view = cut_view(Some(size));
        let (from, taken) = (in_mm(balance.mark_start), in_mm(balance.stock_length));
        let whole = in_mm(size.stock_length);
        let stretched = if whole > 0.0 { taken / whole } else { 1.0 };
        let root = taken - in_mm(size.slit) * stretched;
        let (before, after) = match size.free {
            FreeEnd::Datum => (0.0, root),
            FreeEnd::Far => (root, 0.0),
            FreeEnd::Neither => (root / 2.0, root / 2.0),
        };
        Some(Self {
            view,
            slit: [from + before, from + taken - after],
            ups: ups(size, *lane.bar.of(view), view),
            closed: [size.free != FreeEnd::Datum, size.free != FreeEnd::Far],
            root: size.root,
        })
    }
}

/// How far up the cuts stand within a lane.
fn ups(size: &SplitSize, [lower, upper]: [f64; 2], view: View) -> Vec<f64> {
    let whole: f64 = size.branches.iter().map(|branch| in_mm(branch.raw_width)).sum();
    let from_upper = match view {
        View::Side => size.side.cos() > 0.0,
        View::Top => size.side.sin() < 0.0,
    };
    let up = |cut: f64| {
        let off = (upper - lower) * cut / whole;
        if from_upper { upper - off } else { lower + off }
    };
    size.cuts.iter().map(|cut| up(in_mm(*cut))).filter(|up| up.is_finite()).collect()
}

impl Stage<'_> {
    /// Paints the cuts of every split on the starting bar.
    pub(super) fn paint_cuts(&self, row: &Row) {
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
