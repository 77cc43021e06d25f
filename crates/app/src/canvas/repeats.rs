//! Rows of marks on the forged bar: a dot and a short line at each place, and the edges of tools set side by side.

use super::labels::thinned;
use super::layout::{Row, Strip};
use super::model::{Block, in_mm};
use super::stage::Stage;
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
    pub(super) fn paint_repeats(&self) {
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

/// The lower and the upper edge of an outline at a place along it, in mm; none where it does not reach.
pub(super) fn across_at(outline: &[[f64; 2]], place: f64) -> Option<[f64; 2]> {
    /// A place at the very end still counts, whatever rounding made of it.
    const HAIR_MM: f64 = 1e-6;
    let next = outline.iter().cycle().skip(1);
    let mut found: Option<[f64; 2]> = None;
    for ([x0, y0], [x1, y1]) in outline.iter().zip(next) {
        if place < x0.min(*x1) - HAIR_MM || place > x0.max(*x1) + HAIR_MM {
            continue;
        }
        let ups = if (x1 - x0).abs() < HAIR_MM { [*y0, *y1] } else { [y0 + (y1 - y0) * (place - x0) / (x1 - x0); 2] };
        for up in ups {
            found = Some(found.map_or([up, up], |[lower, upper]| [lower.min(up), upper.max(up)]));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_lies_between_the_edges_of_the_metal() {
        let taper = [[10.0, 0.0], [70.0, 6.0], [70.0, -6.0]];
        assert_eq!(across_at(&taper, 40.0), Some([-3.0, 3.0]));
        assert_eq!(across_at(&taper, 70.0), Some([-6.0, 6.0]));
        assert_eq!(across_at(&taper, 71.0), None);
        assert_eq!(across_at(&[], 0.0), None);
    }
}
