//! Where a segment is drawn across the strips: over all of a strip, or within its branch; and what hides it.

use super::layout::{Row, Stretch};
use super::model::lanes::{Lane, Seen};
use super::spot::Spot;
use super::stage::Stage;
use super::strip::Strip;
use crate::theme::space;
use egui::{Rect, pos2};
use fh_core::metal::View;

impl Stage<'_> {
    /// Whether a segment is one of the bar itself, and of no branch.
    pub(super) fn is_whole(&self, segment: usize) -> bool {
        self.model.blocks.get(segment).is_none_or(|block| block.lane == 0)
    }

    /// The row in which a segment of a branch is seen best.
    pub(super) fn best_row(&self, segment: usize, strip: Strip) -> Option<&Row> {
        let lane = self.model.lane(segment)?;
        // The first of those that are alike.
        self.layout.rows_of(strip).min_by_key(|row| std::cmp::Reverse(*lane.seen.of(row.view)))
    }

    /// The heights that a segment takes on a bar where the hand can take it.
    pub(super) fn stretch_of_segment(&self, segment: usize, strip: Strip) -> Stretch {
        if self.is_whole(segment) {
            return self.layout.stretch_of(strip);
        }
        self.best_row(segment, strip)
            .map_or_else(|| self.layout.stretch_of(strip), |row| self.stretch_in_row(segment, row))
    }

    /// The heights that a segment takes in a row.
    pub(super) fn stretch_in_row(&self, segment: usize, row: &Row) -> Stretch {
        let Some(block) = self.model.blocks.get(segment) else { return row.stretch };
        let across = match row.strip {
            Strip::Bar => self.model.lanes.get(block.lane).map(|lane| *lane.bar.of(row.view)),
            Strip::Forged => block.outlines.edges(row.view),
        };
        across.map_or(row.stretch, |[lower, upper]| Stretch { top: row.y(upper), bottom: row.y(lower) })
    }

    /// The segments of each chain in its order, those that hide others last.
    pub(super) fn lanes_of_hand(&self) -> Vec<Vec<usize>> {
        let mut members: Vec<Vec<usize>> = self.model.lanes.iter().map(|lane| lane.members.clone()).collect();
        members.sort_by_key(|members: &Vec<usize>| {
            let first = members.first().copied().unwrap_or_default();
            let row = self.best_row(first, Strip::Bar);
            let seen = row.and_then(|row| Some(*self.model.lane(first)?.seen.of(row.view)));
            (!self.is_whole(first), seen)
        });
        members
    }

    /// Which branches lie behind that of a segment, or before it, where it is not seen apart.
    pub(super) fn hidden_words(&self, segment: usize) -> Option<String> {
        let row = self.best_row(segment, Strip::Forged)?;
        let lane = self.model.lane(segment)?;
        hidden_words(&self.model.lanes, lane, row.view)
    }
}

/// Which branches lie behind a lane, or before it, as it is seen.
pub(super) fn hidden_words(lanes: &[Lane], lane: &Lane, view: View) -> Option<String> {
    let cut_along = |lane: &&Lane| lane.cut.is_some_and(|cut| cut != view);
    let up = std::iter::successors(Some(lane), |lane| lanes.get(lane.parent?));
    let own = up.into_iter().find(cut_along)?;
    let others = || lanes.iter().filter(|other| other.split == own.split && *other != own);
    let titles = |seen: Seen| {
        let titles = others().filter(move |other| (*other.seen.of(view) == Seen::Behind) == (seen == Seen::Behind));
        titles.filter_map(|other| other.title.clone()).collect::<Vec<_>>().join(", ")
    };
    let from = match view {
        View::Side => "from the side",
        View::Top => "from above",
    };
    Some(if *own.seen.of(view) == Seen::Behind {
        format!("Seen {from} it is behind {}.", titles(Seen::Front))
    } else {
        format!("Seen {from} it hides {}.", titles(Seen::Behind))
    })
}

/// Where the ring of the keyboard lies around a boundary.
pub(super) fn spot_rect(stage: &Stage<'_>, spot: Spot) -> Rect {
    let stretch = stage.stretch_of_segment(spot.segment, spot.strip);
    let x = spot.drawn(stage.model).map_or(stage.window.left(), |[_, end]| stage.axis.x(end));
    let half = stage.sizes.catch / 2.0;
    let rect = Rect::from_min_max(pos2(x - half, stretch.top), pos2(x + half, stretch.bottom));
    rect.expand2(egui::vec2(0.0, space::TIGHT))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::canvas::model::per_view::PerView;

    fn branch(title: &str, seen: Seen) -> Lane {
        let seen = PerView { side: seen, top: Seen::Apart };
        let title = Some(title.to_owned());
        Lane { title, parent: Some(0), split: Some(1), cut: Some(View::Top), seen, ..Lane::default() }
    }

    #[test]
    fn branches_say_what_hides_them_where_they_are_seen_along_the_cut() {
        let lanes = [Lane::default(), branch("far tine", Seen::Behind), branch("near tine", Seen::Front)];
        let words = |lane: &Lane, view| hidden_words(&lanes, lane, view);
        assert_eq!(words(&lanes[1], View::Side).as_deref(), Some("Seen from the side it is behind near tine."));
        assert_eq!(words(&lanes[2], View::Side).as_deref(), Some("Seen from the side it hides far tine."));
        assert_eq!(words(&lanes[2], View::Top), None);
        assert_eq!(words(&lanes[0], View::Side), None);
    }
}
