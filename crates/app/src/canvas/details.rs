//! What tells a form or a bend from another of the same outline: holes, shoulder and scarf lines, the edges of a twist.

use super::lanes::Lane;
use super::layout::{Row, Strip};
use super::model::{Block, in_mm};
use super::repeats::across_at;
use super::stage::Stage;
use crate::theme::space;
use egui::{Color32, Pos2, Rect, Shape, Stroke, pos2};
use fh_core::balance::SegmentBalance;
use fh_core::forms;
use fh_core::metal::{Twist, View};
use fh_core::plan::{Form, Segment};

/// How far a shoulder line stands out over the metal, as a share of its half size.
const STANDS_OUT: f64 = 1.25;
/// The details of one segment, in mm.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Details {
    /// Lines on the forged bar.
    lines: Vec<Line>,
    /// The outline of a hole, seen from above.
    hole: Vec<[f64; 2]>,
    /// Where the middle of a hole comes on the starting bar.
    center: Option<f64>,
    /// The edges of a twist.
    twist: Option<Twist>,
}

/// One line.
#[derive(Clone, Debug, PartialEq)]
struct Line {
    view: View,
    ends: [[f64; 2]; 2],
    /// What cannot be seen from here, or is no edge.
    dashed: bool,
}

/// Where a line lies in a segment.
struct Place<'a> {
    balance: &'a SegmentBalance,
    lane: &'a Lane,
}

impl Place<'_> {
    /// A line across at a distance from the segment's datum side, on every side that is seen.
    fn across(&self, from_start: f64, beyond: f64, dashed: bool) -> [Line; 2] {
        self.slanted([from_start, from_start], beyond, dashed)
    }

    /// A line from the upper edge at one distance to the lower edge at another.
    fn slanted(&self, from_start: [f64; 2], beyond: f64, dashed: bool) -> [Line; 2] {
        let start = in_mm(self.balance.forged_start);
        let line = |view| {
            let outline = self.balance.silhouette_mm(view);
            let [upper, lower] = from_start.map(|from| start + from);
            let high = across_at(&outline, upper).unwrap_or_default();
            let low = across_at(&outline, lower).unwrap_or_default();
            let more = (high[1] - high[0]) / 2.0 * (beyond - 1.0);
            let ends = [[upper, high[1] + more], [lower, low[0] - more]];
            Line { view, ends: ends.map(|end| self.lane.fan.place(end, view)), dashed }
        };
        [line(View::Side), line(View::Top)]
    }
}

impl Details {
    /// Those of a segment.
    pub(super) fn new(segment: &Segment, balance: &SegmentBalance, lane: &Lane) -> Self {
        let mut details = Self { twist: Twist::of(balance.shape.as_ref(), balance.bent), ..Self::default() };
        let place = Place { balance, lane };
        let length = in_mm(balance.forged_length);
        match &segment.form {
            Form::Hole(_) => details.add_hole(&place),
            Form::Tenon(forms::Tenon { grip, .. }) => {
                // At the datum end the shoulder is at its far end.
                let is_first = in_mm(balance.forged_start) == 0.0;
                let from_shoulder = |mm: f64| if is_first { length - mm } else { mm };
                details.lines.extend(place.across(from_shoulder(0.0), STANDS_OUT, false));
                details.lines.extend(place.across(from_shoulder(grip.mm()), 1.0, true));
            }
            Form::Rivet(forms::Rivet { allowance, .. }) => {
                for from_start in [allowance.mm(), length - allowance.mm()] {
                    details.lines.extend(place.across(from_start, 1.0, true));
                }
            }
            Form::Collar(forms::Collar { width, height, .. }) => {
                for share in folds(width.mm(), height.mm()) {
                    details.lines.extend(place.across(length * share, 1.0, true));
                }
            }
            Form::Weld(_) => details.lines.extend(place.slanted([0.0, length], 1.0, false)),
            _ => {}
        }
        details
    }

    /// Whether nothing of it is drawn on the forged bar.
    pub(super) fn is_empty(&self) -> bool {
        self.lines.is_empty() && self.hole.is_empty() && self.twist.is_none()
    }

    fn add_hole(&mut self, place: &Place<'_>) {
        let Some(outline) = place.balance.hole_mm() else { return };
        let alongs = outline.iter().map(|[along, _]| *along);
        let [from, to] = alongs.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], mm| [a.min(mm), b.max(mm)]);
        let (start, length) = (in_mm(place.balance.forged_start), in_mm(place.balance.forged_length));
        for end in [from, to] {
            let [side, _] = place.across((end - start).clamp(0.0, length), 1.0, true);
            self.lines.push(side);
        }
        self.hole = outline.into_iter().map(|point| place.lane.fan.place(point, View::Top)).collect();
        let share = if length > 0.0 { ((from + to) / 2.0 - start) / length } else { 0.5 };
        self.center = Some(in_mm(place.balance.mark_start) + share * in_mm(place.balance.stock_length));
    }
}

/// Where a collar is folded, as shares of its length: its ends meet in the middle of the bundle's lower side.
fn folds(width: f64, height: f64) -> [f64; 4] {
    let around = 2.0 * (width + height);
    [width / 2.0, width / 2.0 + height, width * 1.5 + height, width * 1.5 + 2.0 * height].map(|mm| mm / around)
}

impl Stage<'_> {
    /// Paints what tells a block of the forged bar from others.
    pub(super) fn paint_details(&self, row: &Row, block: &Block, edge: Color32) {
        let details = &block.details;
        let stroke = Stroke::new(self.edge(false), edge);
        let at = |[along, up]: [f64; 2]| pos2(self.axis.x(along), row.y(up));
        if row.view == View::Top && details.hole.len() > 2 {
            let points: Vec<Pos2> = details.hole.iter().map(|point| at(*point)).collect();
            self.painter.add(Shape::convex_polygon(points, self.theme.ground, stroke));
        }
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
    pub(super) fn paint_hole_centers(&self, row: &Row) {
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_collar_is_folded_four_times_in_order() {
        let folds = folds(20.0, 12.0);
        assert!(folds.windows(2).all(|two| two[0] < two[1]));
        assert!((folds[0] - 10.0 / 64.0).abs() < 1e-12 && (folds[3] - 54.0 / 64.0).abs() < 1e-12);
    }
}
