//! What tells a form or a bend from another of the same outline: holes, shoulder and scarf lines, the edges of a twist.

use super::across::across_at;
use super::lanes::Lane;
use super::per_view::{PerView, in_mm};
use fh_core::balance::SegmentBalance;
use fh_core::edit::hole_middles_mm;
use fh_core::forms;
use fh_core::metal::{Twist, View};
use fh_core::plan::{Form, Segment};

/// How far a shoulder line stands out over the metal, as a share of its half size.
const STANDS_OUT: f64 = 1.25;

/// The details of one segment, in mm.
#[derive(Clone, Debug, Default, PartialEq)]
pub(in crate::canvas) struct Details {
    /// Lines on the forged bar.
    pub(in crate::canvas) lines: Vec<Line>,
    /// The outlines of its holes, seen from above.
    pub(in crate::canvas) holes: Vec<Vec<[f64; 2]>>,
    /// Their middles, in the same order.
    pub(in crate::canvas) middles: Vec<Middle>,
    /// The blank that it is cut from.
    pub(in crate::canvas) blank: PerView<Vec<[f64; 2]>>,
    /// Where the middle of a hole comes on the starting bar.
    pub(in crate::canvas) center: Option<f64>,
    /// The edges of a twist.
    pub(in crate::canvas) twist: Option<Twist>,
}

/// The middle of a hole, seen from above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::canvas) struct Middle {
    /// Where it is drawn: along, and up.
    pub(in crate::canvas) drawn: [f64; 2],
    /// Along the bar from the root of its part, in mm.
    pub(in crate::canvas) along_mm: f64,
    /// Across the bar from the base line, in mm; none where it may not be moved across.
    pub(in crate::canvas) across_mm: Option<f64>,
    /// How far along it is drawn for a millimetre from the root; below 0 where the root lies away from the datum.
    pub(in crate::canvas) way: f64,
}

/// One line.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::canvas) struct Line {
    pub(in crate::canvas) view: View,
    pub(in crate::canvas) ends: [[f64; 2]; 2],
    /// What cannot be seen from here, or is no edge.
    pub(in crate::canvas) dashed: bool,
}

/// Where a line lies in a segment.
struct Place<'a> {
    balance: &'a SegmentBalance,
    lane: &'a Lane,
}

impl Place<'_> {
    /// A line across at a distance from the segment's datum side, on every side that is seen.
    fn across(&self, from_start: f64, beyond: f64, dashed: bool) -> [Line; 2] {
        self.slanted([from_start, from_start], beyond, dashed)
    }

    /// A line from the upper edge at one distance to the lower edge at another.
    fn slanted(&self, from_start: [f64; 2], beyond: f64, dashed: bool) -> [Line; 2] {
        let start = in_mm(self.balance.forged_start);
        let line = |view| {
            let outline = self.balance.silhouette_mm(view);
            let [upper, lower] = from_start.map(|from| start + from);
            let high = across_at(&outline, upper).unwrap_or_default();
            let low = across_at(&outline, lower).unwrap_or_default();
            let more = (high[1] - high[0]) / 2.0 * (beyond - 1.0);
            let ends = [[upper, high[1] + more], [lower, low[0] - more]];
            Line { view, ends: ends.map(|end| self.lane.fan.place(end, view)), dashed }
        };
        [line(View::Side), line(View::Top)]
    }
}

impl Details {
    /// Those of a segment.
    pub(in crate::canvas) fn new(segment: &Segment, balance: &SegmentBalance, lane: &Lane) -> Self {
        let mut details = Self { twist: Twist::of(balance.shape.as_ref(), balance.bent), ..Self::default() };
        let place = Place { balance, lane };
        let length = in_mm(balance.forged_length);
        match &segment.form {
            Form::Hole(_) => {
                details.add_holes(&place);
                details.add_middles(&place);
                details.add_center(balance);
            }
            Form::Flag(_) => {
                details.add_holes(&place);
                details.add_middles(&place);
                details.blank = PerView::each(|view| lane.fan.outline(balance.blank_mm(view), view));
            }
            Form::Tenon(forms::Tenon { grip, .. }) => {
                // At the datum end the shoulder is at its far end.
                let is_first = in_mm(balance.forged_start) == 0.0;
                let from_shoulder = |mm: f64| if is_first { length - mm } else { mm };
                details.lines.extend(place.across(from_shoulder(0.0), STANDS_OUT, false));
                details.lines.extend(place.across(from_shoulder(grip.mm()), 1.0, true));
            }
            Form::Rivet(forms::Rivet { allowance, .. }) => {
                for from_start in [allowance.mm(), length - allowance.mm()] {
                    details.lines.extend(place.across(from_start, 1.0, true));
                }
            }
            Form::Collar(forms::Collar { width, height, .. }) => {
                for share in folds(width.mm(), height.mm()) {
                    details.lines.extend(place.across(length * share, 1.0, true));
                }
            }
            _ if !balance.dressed.is_empty() => details.add_dressed(&place),
            Form::Weld(_) => details.lines.extend(place.slanted([0.0, length], 1.0, false)),
            _ => {}
        }
        details
    }

    /// Whether nothing of it is drawn on the forged bar.
    pub(in crate::canvas) fn is_empty(&self) -> bool {
        self.lines.is_empty() && self.holes.is_empty() && self.blank.top.is_empty() && self.twist.is_none()
    }

    /// The edges of what is dressed in dies; once it is twisted they run round it, and the words tell them.
    fn add_dressed(&mut self, place: &Place<'_>) {
        if self.twist.is_some() {
            return;
        }
        for view in [View::Side, View::Top] {
            for seen in place.balance.dressed_seen(view) {
                let line = |ends: [[f64; 2]; 2]| {
                    let ends = ends.map(|end| place.lane.fan.place(end, view));
                    Line { view, ends, dashed: seen.is_hidden }
                };
                self.lines.extend(seen.edges_mm().map(line));
            }
        }
    }

    /// Each hole from above, and from the side from where to where it goes.
    fn add_holes(&mut self, place: &Place<'_>) {
        let (start, length) = (in_mm(place.balance.forged_start), in_mm(place.balance.forged_length));
        for outline in place.balance.holes_mm() {
            for end in extent(&outline) {
                let [side, _] = place.across((end - start).clamp(0.0, length), 1.0, true);
                self.lines.push(side);
            }
            self.holes.push(outline.into_iter().map(|point| place.lane.fan.place(point, View::Top)).collect());
        }
    }

    /// The middles of the holes.
    fn add_middles(&mut self, place: &Place<'_>) {
        let (balance, fan) = (place.balance, &place.lane.fan);
        let way = if balance.reversed { -fan.scale } else { fan.scale };
        let middle = |((along_mm, across_mm), at): ((f64, Option<f64>), [f64; 2])| Middle {
            drawn: fan.place(at, View::Top),
            along_mm,
            across_mm,
            way,
        };
        self.middles = hole_middles_mm(balance).into_iter().zip(balance.middles_mm()).map(middle).collect();
    }

    /// Where the hole of a boss is punched on the bar.
    fn add_center(&mut self, balance: &SegmentBalance) {
        let Some(outline) = balance.holes_mm().into_iter().next() else { return };
        let ([from, to], start) = (extent(&outline), in_mm(balance.forged_start));
        let length = in_mm(balance.forged_length);
        let share = if length > 0.0 { ((from + to) / 2.0 - start) / length } else { 0.5 };
        self.center = Some(in_mm(balance.mark_start) + share * in_mm(balance.stock_length));
    }
}

/// From where to where points lie along the bar.
fn extent(points: &[[f64; 2]]) -> [f64; 2] {
    points.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], [mm, _]| [low.min(*mm), high.max(*mm)])
}

/// Where a collar is folded, as shares of its length: its ends meet in the middle of the bundle's lower side.
fn folds(width: f64, height: f64) -> [f64; 4] {
    let around = 2.0 * (width + height);
    [width / 2.0, width / 2.0 + height, width * 1.5 + height, width * 1.5 + 2.0 * height].map(|mm| mm / around)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_collar_is_folded_four_times_in_order() {
        let folds = folds(20.0, 12.0);
        assert!(folds.windows(2).all(|two| two[0] < two[1]));
        assert!((folds[0] - 10.0 / 64.0).abs() < 1e-12 && (folds[3] - 54.0 / 64.0).abs() < 1e-12);
    }
}
