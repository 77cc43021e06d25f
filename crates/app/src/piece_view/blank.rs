//! The blank of a plate that is cut to shape: dashed about it, and hatched where it is cut away.

use super::stage::Stage;
use crate::theme::space;
use crate::widgets::hatch;
use egui::{Pos2, Shape, Stroke};
use fh_core::balance::SegmentBalance;
use fh_core::metal::{Outline, Shape as Metal};
use fh_measure::in_mm;
use fh_piece::Line;

impl Stage<'_> {
    /// Paints the blanks of all plates that stay flat.
    pub(super) fn paint_blanks(&self) {
        for line in &self.model.piece.lines {
            let bar = self.balance.bars.get(line.bar);
            let Some(balance) = bar.and_then(|bar| bar.segments.get(line.segment)) else { continue };
            let Some(Metal::Flag { outline, blank: Some(blank), .. }) = &balance.shape else { continue };
            if balance.bent.is_none() {
                let [outline, blank] = [outline, &blank.outline].map(|outline| self.laid(line, balance, outline));
                self.paint_blank(&[blank, outline]);
            }
        }
    }

    fn paint_blank(&self, outlines: &[Vec<Pos2>; 2]) {
        let theme = self.theme;
        let (step, anchor) = (2.0 * space::GAP, self.rect.left());
        for ends in hatch::between(outlines, anchor, step, self.rect) {
            self.painter.line_segment(ends, Stroke::new(theme.hairline(), theme.ink_quiet));
        }
        let around: Vec<Pos2> = outlines[0].iter().chain(outlines[0].first()).copied().collect();
        let stroke = Stroke::new(space::LINE, theme.ink_quiet);
        self.painter.extend(Shape::dashed_line(&around, stroke, space::TIGHT, space::TIGHT));
    }

    /// An outline in the middle of its plate's thickness, as it is seen in the window.
    fn laid(&self, line: &Line, balance: &SegmentBalance, outline: &Outline) -> Vec<Pos2> {
        let length = in_mm(balance.forged_length).max(1e-9);
        let place = |[along, away]: [f64; 2]| {
            let share = along / length;
            let frame = line.frame_at(if balance.reversed { 1.0 - share } else { share }, length)?;
            Some(self.point(frame.place([0.0, -away, 0.0])))
        };
        outline.points_mm().into_iter().filter_map(place).collect()
    }
}
