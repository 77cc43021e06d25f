//! The names of branches at their free ends, and of their segments within their silhouettes.

use crate::canvas::model::lanes::{Lane, Seen};
use crate::canvas::places::hidden_words;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use crate::theme::{Text, space};
use egui::{Rect, pos2, vec2};
use fh_core::metal::FreeEnd;
use std::collections::BTreeSet;

impl Stage<'_> {
    /// Paints the names of branches, and the names and lengths of their segments.
    pub(in crate::canvas) fn paint_branch_names(&self) {
        let mut taken = Vec::new();
        // The branches that are named already; the first lane is the bar itself.
        let mut named = BTreeSet::from([0]);
        for (at, lane) in self.model.lanes.iter().enumerate().skip(1) {
            if self.paint_branch_title(lane, &mut taken) {
                named.insert(at);
            }
        }
        for (index, block) in self.model.blocks.iter().enumerate().filter(|(_, block)| block.lane > 0) {
            let Some(room) = self.branch_name_room(index) else { continue };
            // A branch without a name at its end is named in the first of its segments that has room.
            let lane = self.model.lanes.get(block.lane).filter(|_| !named.contains(&block.lane));
            if self.paint_name_in_metal(index, room, lane.and_then(|lane| lane.title.as_deref())) {
                named.insert(block.lane);
            }
        }
    }

    /// Whether a segment of a branch has no room for its name in its silhouette, and is seen.
    pub(in crate::canvas) fn wants_branch_name(&self, index: usize) -> bool {
        let is_split = self.model.blocks.get(index).is_some_and(|block| block.cuts.is_some());
        let is_chosen = self.selected == Some(index);
        is_chosen || (!is_split && !self.is_behind(index) && self.branch_name_room(index).is_none())
    }

    fn is_behind(&self, index: usize) -> bool {
        let row = self.best_row(index, Strip::Forged);
        row.zip(self.model.lane(index)).is_none_or(|(row, lane)| *lane.seen.of(row.view) == Seen::Behind)
    }

    /// The room within the silhouette of a segment of a branch; none where a name does not fit.
    fn branch_name_room(&self, index: usize) -> Option<Rect> {
        let block = self.model.blocks.get(index)?;
        if block.cuts.is_some() || self.is_behind(index) {
            return None;
        }
        let row = self.best_row(index, Strip::Forged)?;
        let [left, right] = self.span(index, Strip::Forged)?;
        let (left, right) = (left.max(self.window.left()), right.min(self.window.right()));
        // Halfway along: a taper has room there as well.
        let middle = (block.drawn[0] + block.drawn[1]) / 2.0;
        let [lower, upper] = crate::canvas::model::across::across_at(block.outlines.of(row.view), middle)?;
        let room = Rect::from_min_max(pos2(left, row.y(upper)), pos2(right, row.y(lower)));
        let enough = room.height() >= self.sizes.line && room.width() >= self.sizes.name;
        (enough && block.repeats.is_empty() && block.details.is_empty()).then_some(room)
    }

    /// Paints a segment's name, with its length and its branch's where they fit; tells whether the branch's did.
    fn paint_name_in_metal(&self, index: usize, room: Rect, title: Option<&str>) -> bool {
        let Some(block) = self.model.blocks.get(index) else { return false };
        let selected = self.selected == Some(index);
        let (text, ink) = if selected { (Text::Strong, self.theme.ink) } else { (Text::Small, self.theme.ink) };
        let length = self.rounded_words(block.forged[1] - block.forged[0]);
        let most = room.width() - 2.0 * space::GAP;
        let name = &block.name;
        let with_title = title.into_iter().flat_map(|title| {
            [format!("{title}: {name}  {length}"), format!("{title}: {name}"), title.to_owned()]
                .map(|words| (words, true))
        });
        let without = [format!("{name}  {length}"), name.clone()].map(|words| (words, false));
        let mut choices = with_title.chain(without).map(|(words, told)| (self.text(words, text, ink), told));
        let Some((words, told)) = choices.find(|(words, _)| words.size().x <= most) else { return false };
        self.painter.galley(room.center() - words.size() / 2.0, words, ink);
        told
    }

    /// The name of a branch beyond its free end, where there is room that is not taken; tells whether it was.
    fn paint_branch_title(&self, lane: &Lane, taken: &mut Vec<Rect>) -> bool {
        let ends = match lane.free {
            Some(FreeEnd::Far) => lane.members.last(),
            Some(FreeEnd::Datum) => lane.members.first(),
            _ => None,
        };
        let Some((end, block)) = ends.and_then(|end| Some((*end, self.model.blocks.get(*end)?))) else { return false };
        if self.is_behind(end) || block.cuts.is_some() {
            return false;
        }
        let Some(row) = self.best_row(end, Strip::Forged) else { return false };
        let stretch = self.stretch_in_row(end, row);
        let title = lane.title.clone().unwrap_or_default();
        let hides = hidden_words(&self.model.lanes, lane, row.view).is_some();
        let words = if hides { format!("{title} (in front)") } else { title };
        let words = self.text(words, Text::Small, self.theme.ink_quiet);
        let at_start = lane.free == Some(FreeEnd::Datum);
        let x = self.axis.x(if at_start { block.drawn[0] } else { block.drawn[1] });
        let left = if at_start { x - space::GAP - words.size().x } else { x + space::GAP };
        let at = pos2(left, stretch.middle() - words.size().y / 2.0);
        let chip = Rect::from_min_size(at, words.size()).expand2(vec2(space::TIGHT, 0.0));
        let has_room = self.window.contains_rect(chip) && !taken.iter().any(|other| other.intersects(chip));
        if has_room {
            taken.push(chip);
            self.painter.galley(at, words, self.theme.ink_quiet);
        }
        has_room
    }
}
