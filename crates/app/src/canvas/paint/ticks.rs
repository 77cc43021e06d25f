//! The marks across the bar as lines: over all of it, and shorter ones for branches over their share.

use crate::canvas::labels::thinned;
use crate::canvas::layout::Row;
use crate::canvas::model::lanes::Seen;
use crate::canvas::stage::Stage;
use crate::theme::space;
use egui::{Shape, Stroke, pos2};

impl Stage<'_> {
    /// The marks of a chain that can be seen and told apart; not those of the selected segment, which has an outline.
    pub(in crate::canvas) fn marks_in_lane(&self, lane: usize) -> Vec<(usize, f32)> {
        let Some(members) = self.model.lanes.get(lane).map(|lane| &lane.members) else { return Vec::new() };
        let at = self.selected.and_then(|selected| members.binary_search(&selected).ok());
        let before = at.and_then(|at| at.checked_sub(1)).and_then(|at| members.get(at)).copied();
        let place = |index: &usize| Some((*index, self.axis.x(self.model.blocks.get(*index)?.stock[1])));
        let places = members.iter().filter_map(place).filter(|(_, x)| self.sees([*x, *x]));
        let mut marks = thinned(places, space::TIGHT, |_| false);
        marks.retain(|(segment, _)| self.selected != Some(*segment) && before != Some(*segment));
        marks
    }

    /// Paints the marks of branches in a row of the starting bar: dashed where another lies before them.
    pub(in crate::canvas) fn paint_ticks(&self, row: &Row) {
        let stroke = Stroke::new(space::LINE, self.theme.mark);
        for (index, lane) in self.model.lanes.iter().enumerate().skip(1) {
            let [lower, upper] = lane.bar.of(row.view).map(|up| row.y(up));
            for (_, x) in self.marks_in_lane(index) {
                if *lane.seen.of(row.view) == Seen::Behind {
                    let line = [pos2(x, upper), pos2(x, lower)];
                    self.painter.extend(Shape::dashed_line(&line, stroke, space::TIGHT / 2.0, space::TIGHT));
                } else {
                    self.painter.vline(x, upper..=lower, stroke);
                }
            }
        }
    }
}
