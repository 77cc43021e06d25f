//! The forged silhouette of a bar, small: how a motif looks.

use super::fill::filled;
use crate::theme::Theme;
use egui::{Painter, Pos2, Rect, Shape, Stroke, pos2};
use fh_core::balance::BarBalance;
use fh_core::metal::View;

/// The least height that metal is drawn with, so that thin work does not vanish.
const LEAST_HEIGHT: f32 = 1.0;

/// Paints the silhouette into a rectangle, to one scale along and across, from the side that shows more of it.
pub(crate) fn paint(painter: &Painter, theme: &Theme, rect: Rect, bar: &BarBalance) {
    let side = outlines(bar, View::Side);
    let top = outlines(bar, View::Top);
    let (Some(side_around), Some(top_around)) = (around(&side), around(&top)) else { return };
    let is_wider = top_around.height() > 1.001 * side_around.height();
    let (outlines, around) = if is_wider { (top, top_around) } else { (side, side_around) };
    let scale = (rect.width() / around.width()).min(rect.height() / around.height().max(f32::MIN_POSITIVE));
    if !(scale.is_finite() && scale > 0.0) {
        return;
    }
    let stroke = Stroke::new(theme.hairline(), theme.forged_edge);
    for outline in outlines {
        let place = |point: &Pos2| {
            let up = (point.y - around.center().y) * scale;
            pos2(rect.center().x + (point.x - around.center().x) * scale, rect.center().y - up)
        };
        let mut points: Vec<Pos2> = outline.iter().map(place).collect();
        painter.add(Shape::mesh(filled(&points, theme.forged_fill)));
        points.extend(points.first().copied());
        painter.add(Shape::line(points, stroke));
    }
    if around.height() * scale < LEAST_HEIGHT {
        painter.hline(rect.x_range(), rect.center().y, stroke);
    }
}

/// The silhouettes of its segments in mm, as far as they are settled.
fn outlines(bar: &BarBalance, view: View) -> Vec<Vec<Pos2>> {
    let of = |segment: &fh_core::balance::SegmentBalance| {
        let points = segment.silhouette_mm(view);
        points.into_iter().map(|[along, up]| pos2(along as f32, up as f32)).collect::<Vec<_>>()
    };
    let all = bar.segments.iter().map(of);
    all.filter(|points| points.len() > 2 && points.iter().all(|point| point.is_finite())).collect()
}

fn around(outlines: &[Vec<Pos2>]) -> Option<Rect> {
    let points: Vec<Pos2> = outlines.iter().flatten().copied().collect();
    (!points.is_empty()).then(|| Rect::from_points(&points))
}
