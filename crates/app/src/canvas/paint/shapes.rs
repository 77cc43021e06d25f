//! Small shapes: what tells of a finding, brackets, hatching. A shape and a line say what a color alone must not.

use crate::canvas::stage::Stage;
use crate::theme::space;
use crate::widgets::hatch;
use egui::{Color32, Pos2, Rect, Shape, Stroke, Vec2, pos2, vec2};
use fh_core::findings::Severity;

impl Stage<'_> {
    /// The color of a finding.
    pub(in crate::canvas) fn severity_color(&self, severity: Severity) -> Color32 {
        match severity {
            Severity::Stop => self.theme.stop,
            Severity::Warning => self.theme.warning,
            Severity::Note => self.theme.note,
        }
    }

    /// The shape of a finding: a square stops, a triangle warns, a dot notes.
    pub(in crate::canvas) fn paint_severity(&self, severity: Severity, middle: Pos2) {
        let (color, half) = (self.severity_color(severity), self.sizes.shape / 2.0);
        match severity {
            Severity::Stop => {
                let square = Rect::from_center_size(middle, Vec2::splat(half * 2.0));
                self.painter.rect_filled(square, 0.0, color);
            }
            Severity::Warning => {
                let corners = [vec2(0.0, -half), vec2(half * 1.15, half), vec2(-half * 1.15, half)];
                let corners = corners.map(|corner| middle + corner).to_vec();
                self.painter.add(Shape::convex_polygon(corners, color, Stroke::NONE));
            }
            Severity::Note => {
                self.painter.circle_filled(middle, half * 0.8, color);
            }
        }
    }

    /// Brackets at the four corners of a rectangle: what is selected.
    pub(in crate::canvas) fn paint_brackets(&self, around: Rect, color: Color32) {
        let rect = around.expand(space::TIGHT).intersect(self.window.expand(self.sizes.shape));
        let arm = self.sizes.shape.min(rect.width() / 2.0);
        let stroke = Stroke::new(space::HEAVY, color);
        for (corner, along, down) in [
            (rect.left_top(), 1.0, 1.0),
            (rect.right_top(), -1.0, 1.0),
            (rect.left_bottom(), 1.0, -1.0),
            (rect.right_bottom(), -1.0, -1.0),
        ] {
            let upright = (self.sizes.shape * 0.8).min(rect.height() / 2.0);
            let points = vec![corner + vec2(arm * along, 0.0), corner, corner + vec2(0.0, upright * down)];
            self.painter.add(Shape::line(points, stroke));
        }
    }

    /// Slanting lines over a rectangle: metal that is no part of the finished piece.
    pub(in crate::canvas) fn paint_hatch(&self, over: Rect, color: Color32) {
        let over = over.intersect(self.window);
        if !over.is_positive() {
            return;
        }
        let (painter, stroke) = (self.painter.with_clip_rect(over), Stroke::new(space::HAIRLINE, color));
        // The lines hang on the datum end and not on the rectangle, so that they do not swim while it grows.
        let (step, anchor) = (self.sizes.hatch, self.axis.x(0.0));
        let mut sum = anchor + ((over.left() + over.top() - anchor) / step).ceil() * step;
        while sum < over.right() + over.bottom() {
            let ends = [pos2(sum - over.bottom(), over.bottom()), pos2(sum - over.top(), over.top())];
            painter.line_segment(ends, stroke);
            sum += step;
        }
    }

    /// Slanting lines over what lies in an odd number of outlines: in a blank and not in what is cut from it.
    pub(in crate::canvas) fn paint_hatch_between(&self, outlines: &[Vec<Pos2>], color: Color32) {
        let stroke = Stroke::new(space::HAIRLINE, color);
        for ends in hatch::between(outlines, self.axis.x(0.0), self.sizes.hatch, self.window) {
            self.painter.line_segment(ends, stroke);
        }
    }

    /// A dashed outline.
    pub(in crate::canvas) fn paint_dashed(&self, rect: Rect, stroke: Stroke) {
        let rect = rect.intersect(self.window.expand(space::GAP));
        if !rect.is_positive() {
            return;
        }
        let corners = [rect.left_top(), rect.right_top(), rect.right_bottom(), rect.left_bottom(), rect.left_top()];
        self.painter.extend(Shape::dashed_line(&corners, stroke, space::TIGHT, space::TIGHT));
    }
}
