//! Rows of marks on the forged bar: a dot and a short line at each place, and the edges of tools set side by side.

use crate::canvas::labels::thinned;
use crate::canvas::layout::Row;
use crate::canvas::model::across::across_at;
use crate::canvas::model::block::Block;
use crate::canvas::model::per_view::in_mm;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::space;
use egui::{Color32, Stroke, pos2};
use fh_core::balance::LaidRepeat;

/// The share of the metal's height that a mark's line takes, so that it is not taken for a boundary.
const LINE_SHARE: f64 = 0.6;
/// The radius of a mark's dot, in points at normal text size.
const DOT: f32 = 2.2;
/// The share of the metal's height that its radius takes at most.
const MOST_DOT: f32 = 0.12;

impl Stage<'_> {
    /// Paints the rows of marks on every view of the forged bar.
    pub(in crate::canvas) fn paint_repeats(&self) {
        for row in self.layout.rows_of(Strip::Forged) {
            for (index, block) in self.model.blocks.iter().enumerate() {
                let in_sight = self.span(index, Strip::Forged).is_some_and(|span| self.sees(span));
                if block.settled && in_sight {
                    block.repeats.iter().for_each(|laid| self.paint_repeat(row, block, laid));
                }
            }
        }
    }

    fn paint_repeat(&self, row: &Row, block: &Block, laid: &LaidRepeat) {
        let outline = block.outlines.of(row.view);
        let places: Vec<f64> =
            laid.places.iter().map(|place| block.drawn_at(block.forged[0] + in_mm(*place))).collect();
        let color = self.theme.forged_edge;
        for place in self.apart(&places) {
            let Some(across) = across_at(outline, place) else { continue };
            self.paint_place(row, place, across, color);
        }
        let Some(half) = laid.width.map(|width| in_mm(width) / 2.0) else { return };
        let starts = places.iter().map(|place| place - half);
        let edges: Vec<f64> = starts.chain(places.last().map(|place| place + half)).collect();
        for place in self.apart(&edges) {
            let Some([lower, upper]) = across_at(outline, place) else { continue };
            let (x, stroke) = (self.axis.x(place), Stroke::new(self.edge(false), color));
            self.painter.line_segment([pos2(x, row.y(upper)), pos2(x, row.y(lower))], stroke);
        }
    }

    /// A line across the middle of the metal and a dot on it.
    fn paint_place(&self, row: &Row, place: f64, [lower, upper]: [f64; 2], color: Color32) {
        let (x, middle) = (self.axis.x(place), (lower + upper) / 2.0);
        let half = (upper - lower) / 2.0 * LINE_SHARE;
        let stroke = Stroke::new(space::LINE, color);
        self.painter.line_segment([pos2(x, row.y(middle + half)), pos2(x, row.y(middle - half))], stroke);
        let radius = self.theme.scaled(DOT).min((row.y(lower) - row.y(upper)) * MOST_DOT);
        self.painter.circle_filled(pos2(x, row.y(middle)), radius, color);
    }

    /// The places that can be seen and told apart.
    fn apart(&self, places: &[f64]) -> Vec<f64> {
        let seen = places.iter().enumerate().map(|(index, place)| (index, self.axis.x(*place)));
        let seen = seen.filter(|(_, x)| self.sees([*x, *x]));
        thinned(seen, space::TIGHT, |_| false).into_iter().filter_map(|(index, _)| places.get(index).copied()).collect()
    }
}
