//! The forged lengths below the forged bar, each between the ends that it is measured by.

use crate::canvas::figure::{Figure, What};
use crate::canvas::labels::thinned;
use crate::canvas::layout::Stretch;
use crate::canvas::spot::Spot;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::figures;
use crate::theme::{Text, space};
use egui::{Rect, Stroke, pos2, vec2};

impl Stage<'_> {
    /// Paints the lengths that have room between their ends, and that of the selected part in any case.
    pub(in crate::canvas) fn paint_lengths(&self) -> Vec<Figure> {
        let lane = self.length_lane();
        let stroke = Stroke::new(self.theme.hairline(), self.theme.rule);
        let whole = || self.model.blocks.iter().enumerate().filter(|(_, block)| block.lane == 0);
        let ends = whole().map(|(index, block)| (index, self.axis.x(block.forged[1])));
        let ends = std::iter::once((usize::MAX, self.axis.x(0.0))).chain(ends.filter(|(_, x)| self.sees([*x, *x])));
        for (_, x) in thinned(ends, space::GAP, |_| false) {
            self.painter.vline(x, lane.top - space::TIGHT..=lane.bottom, stroke);
        }
        // The selected one last: where it has no room it lies over its neighbors.
        let (last, others): (Vec<_>, Vec<_>) = whole().map(|(at, _)| at).partition(|at| self.selected == Some(*at));
        others.into_iter().chain(last).filter_map(|index| self.paint_length(index)).collect()
    }

    /// Where the lengths stand: above what is said of a step's heat.
    fn length_lane(&self) -> Stretch {
        let lane = self.layout.lengths;
        Stretch { top: lane.top, bottom: lane.bottom - self.sizes.zone }
    }

    fn paint_length(&self, index: usize) -> Option<Figure> {
        let (block, [left, right]) = (self.model.blocks.get(index)?, self.span(index, Strip::Forged)?);
        let (left, right) = (left.max(self.window.left()), right.min(self.window.right()));
        if right < left || (self.selected != Some(index) && right - left < self.sizes.line) {
            return None;
        }
        let selected = self.selected == Some(index);
        let (text, ink) =
            if selected { (Text::Strong, self.theme.accent) } else { (Text::Small, self.theme.ink_quiet) };
        let words = self.text(self.rounded_words(block.forged[1] - block.forged[0]), text, ink);
        let fits = words.size().x + space::GAP <= right - left;
        if !fits && !selected {
            return None;
        }
        let rect = Rect::from_center_size(pos2((left + right) / 2.0, self.length_lane().middle()), words.size());
        if !fits {
            self.painter.rect_filled(rect.expand2(vec2(space::TIGHT, 0.0)), 0.0, self.theme.ground);
        }
        self.painter.galley(rect.min, words, ink);
        let lane = self.length_lane();
        let cell = Rect::from_min_max(pos2(left, lane.top), pos2(right, lane.bottom));
        Some(Figure {
            what: What::Boundary(Spot { strip: Strip::Forged, segment: index }),
            rect,
            hit: cell.union(rect),
        })
    }

    /// A forged length without its unit, as finely as a smith forges, with a sign where that is not its true value.
    pub(in crate::canvas) fn rounded_words(&self, mm: f64) -> String {
        let unit = self.model.unit;
        let true_value = (unit.finest().round(mm).mm() - mm).abs() < 0.01;
        let words = figures::finished(mm, unit);
        let bare = words.strip_suffix(unit.length_unit().symbol()).map_or(words.as_str(), str::trim_end);
        if true_value { bare.to_owned() } else { format!("≈ {bare}") }
    }
}
