//! The blank of a plate that is cut to shape: dashed about it, and hatched where it is cut away, as it is bent or rolled.

use super::model::Model;
use super::stage::Stage;
use crate::theme::space;
use crate::widgets::hatch;
use egui::{Pos2, Rect, Shape, Stroke, pos2};
use fh_core::balance::{Balance, SegmentBalance};
use fh_core::metal::Shape as Metal;
use fh_piece::{Line, place_on_plate};

/// The fewest steps that a side of a bent plate's blank is painted in, for a plate as long as that side.
const STEPS: f32 = 24.0;

/// The corners of all blanks, where they lie.
pub(super) fn places<'m>(model: &'m Model, balance: &'m Balance) -> impl Iterator<Item = [f64; 3]> + 'm {
    model.piece.lines.iter().flat_map(|line| {
        let part = balance.bars.get(line.bar).and_then(|bar| bar.segments.get(line.segment));
        let laid = part.and_then(|part| match &part.shape {
            Some(Metal::Flag { blank: Some(blank), .. }) => Some((part, blank.outline.points_mm())),
            _ => None,
        });
        laid.into_iter().flat_map(move |(part, points)| {
            points.into_iter().filter_map(move |point| place_on_plate(line, part, point))
        })
    })
}

impl Stage<'_> {
    /// Paints the blanks of all plates.
    pub(super) fn paint_blanks(&self) {
        for line in &self.model.piece.lines {
            let bar = self.balance.bars.get(line.bar);
            let Some(balance) = bar.and_then(|bar| bar.segments.get(line.segment)) else { continue };
            let Some(Metal::Flag { outline, blank: Some(blank), .. }) = &balance.shape else { continue };
            let flat = |points: Vec<[f64; 2]>| points.into_iter().map(|[along, away]| pos2(along as f32, away as f32));
            let [blank, outline] = [&blank.outline, outline].map(|outline| flat(outline.points_mm()).collect());
            self.paint_blank(line, balance, &[blank, outline]);
        }
    }

    /// Paints a blank and what of it is cut away, both lying flat, in mm.
    fn paint_blank(&self, line: &Line, balance: &SegmentBalance, outlines: &[Vec<Pos2>; 2]) {
        let theme = self.theme;
        let around: Vec<Pos2> = outlines[0].iter().chain(outlines[0].first()).copied().collect();
        let bounds = Rect::from_points(&around);
        let longest = if balance.bent.is_some() { bounds.width().max(bounds.height()) / STEPS } else { f32::INFINITY };
        let step = 2.0 * space::GAP / (self.camera.points_per_mm() as f32).max(1e-6);
        for ends in hatch::between(outlines, 0.0, step, bounds) {
            let laid = self.laid(line, balance, &ends, longest);
            self.painter.line(laid, Stroke::new(theme.hairline(), theme.ink_quiet));
        }
        let stroke = Stroke::new(space::LINE, theme.ink_quiet);
        let around = self.laid(line, balance, &around, longest);
        self.painter.extend(Shape::dashed_line(&around, stroke, space::TIGHT, space::TIGHT));
    }

    /// Places of a flat plate in steps no longer than so many mm, as they are seen in the window.
    fn laid(&self, line: &Line, balance: &SegmentBalance, places: &[Pos2], longest: f32) -> Vec<Pos2> {
        let between = places.windows(2).flat_map(|pair| {
            let (from, way) = (pair[0], pair[1] - pair[0]);
            let steps = (way.length() / longest.max(1e-3)).ceil().clamp(1.0, 10.0 * STEPS) as u16;
            (0..steps).map(move |step| from + way * (f32::from(step) / f32::from(steps)))
        });
        let place = |at: Pos2| place_on_plate(line, balance, [f64::from(at.x), f64::from(at.y)]);
        let laid = between.chain(places.last().copied()).filter_map(place);
        laid.map(|at| self.point(at)).collect()
    }
}
