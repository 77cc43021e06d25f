//! Placing labels so that none lies over another: what matters goes first, the rest takes the next lane or is left out.

use std::collections::BTreeMap;

/// A label that wants a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Wanted {
    /// From where to where it reaches.
    pub(super) span: [f32; 2],
    /// What goes first: higher before lower.
    pub(super) rank: u8,
}

/// The lane of each label, lowest first; none where there is no room.
pub(super) fn placed(wanted: &[Wanted], lanes: usize, gap: f32) -> Vec<Option<usize>> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by_key(|index| std::cmp::Reverse(wanted.get(*index).map_or(0, |label| label.rank)));
    let mut taken: Vec<BTreeMap<i64, i64>> = vec![BTreeMap::new(); lanes];
    let mut lane_of = vec![None; wanted.len()];
    for index in order {
        let Some(label) = wanted.get(index) else { continue };
        let [left, right] = [fine(label.span[0]), fine(label.span[1] + gap)];
        let free = taken.iter().position(|lane| is_free(lane, left, right));
        if let (Some(lane), Some(place)) = (free, lane_of.get_mut(index)) {
            *place = Some(lane);
            if let Some(lane) = taken.get_mut(lane) {
                lane.insert(left, right);
            }
        }
    }
    lane_of
}

/// Hundredths of a point: whole numbers can be sorted.
fn fine(points: f32) -> i64 {
    (f64::from(points) * 100.0) as i64
}

fn is_free(lane: &BTreeMap<i64, i64>, left: i64, right: i64) -> bool {
    lane.range(..right).next_back().is_none_or(|(_, end)| *end <= left)
}

/// The places that can be told apart: those that are kept, and of the others the ones not too close to the one before.
pub(super) fn thinned(
    places: impl Iterator<Item = (usize, f32)>,
    least: f32,
    kept: impl Fn(usize) -> bool,
) -> Vec<(usize, f32)> {
    let mut found: Vec<(usize, f32)> = Vec::new();
    for (index, x) in places {
        let close = found.last().is_some_and(|(_, last)| x - last < least);
        if close && !kept(index) {
            continue;
        }
        if close && found.last().is_some_and(|(last, _)| !kept(*last)) {
            found.pop();
        }
        found.push((index, x));
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn label(left: f32, right: f32, rank: u8) -> Wanted {
        Wanted { span: [left, right], rank }
    }

    #[test]
    fn labels_with_room_share_a_lane() {
        assert_eq!(placed(&[label(0.0, 10.0, 0), label(20.0, 30.0, 0)], 2, 4.0), [Some(0), Some(0)]);
    }

    #[test]
    fn a_label_without_room_takes_the_next_lane_and_then_none() {
        let labels = [label(0.0, 30.0, 0), label(20.0, 50.0, 0), label(25.0, 60.0, 0)];
        assert_eq!(placed(&labels, 2, 4.0), [Some(0), Some(1), None]);
    }

    #[test]
    fn what_matters_goes_first() {
        let labels = [label(0.0, 30.0, 0), label(20.0, 50.0, 2), label(60.0, 70.0, 1)];
        assert_eq!(placed(&labels, 1, 4.0), [None, Some(0), Some(0)]);
    }

    #[test]
    fn a_thousand_boundaries_on_a_hundred_points_are_thinned() {
        let places = || (0..1000).map(|index| (index, index as f32 * 0.1));
        let seen = thinned(places(), 2.0, |_| false);
        assert!(seen.len() <= 50);
        let seen = thinned(places(), 2.0, |index| index == 507);
        assert!(seen.iter().any(|(index, _)| *index == 507));
    }
}
