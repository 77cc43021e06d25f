//! How branches are drawn beside each other on the forged bar: they lie as they were cut, up to where one is bent aside; from
//! there on they part within a short Y, so that each is seen alone.
//!
//! The balance lays every branch off straight. A branch of a slit closed at both ends is longer than the way between its
//! ends where it is opened; it is drawn to reach from the one to the other.

use super::per_view::PerView;
use fh_core::metal::View;

/// Steps in which a Y opens.
const STEPS: usize = 8;

/// How the places of a chain are drawn on the forged bar.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::canvas) struct Fan {
    /// Where a place 0 is drawn, in mm.
    start: f64,
    /// How long a millimetre along it is drawn.
    pub(in crate::canvas) scale: f64,
    /// How far up it is drawn from where the balance lays it, in mm as seen.
    aside: PerView<f64>,
    roots: Vec<Root>,
}

/// An end at which a branch hangs on the bar, and parts from the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::canvas) struct Root {
    /// Where the branch begins to part, in mm along the drawing.
    pub(in crate::canvas) at: f64,
    /// 1 where the branch runs on from it, -1 where it runs toward it.
    pub(in crate::canvas) way: f64,
    /// Over what length the branch gets from its place in the bar to its place in the fan, in mm.
    pub(in crate::canvas) reach: f64,
    /// From its place in the fan to its place in the bar, in mm up as seen.
    pub(in crate::canvas) shift: PerView<f64>,
}

impl Root {
    fn shift_at(&self, along: f64, view: View) -> f64 {
        let share = ((along - self.at) * self.way / self.reach).clamp(0.0, 1.0);
        self.shift.of(view) * (1.0 - share * share * (3.0 - 2.0 * share))
    }
}

impl Default for Fan {
    fn default() -> Self {
        Self { start: 0.0, scale: 1.0, aside: PerView::default(), roots: Vec::new() }
    }
}

impl Fan {
    /// A branch within this one, drawn `scale` times as long from a place in mm on.
    pub(in crate::canvas) fn branch(&self, from: f64, scale: f64) -> Self {
        let scale = if scale.is_finite() && scale > 0.0 { scale } else { 1.0 };
        let start = self.start + self.scale * from * (1.0 - scale);
        Self { start, scale: self.scale * scale, ..self.clone() }
    }

    /// It drawn so far up from where the balance lays it, over its whole length.
    pub(in crate::canvas) fn moved(mut self, aside: PerView<f64>) -> Self {
        self.aside = PerView::each(|view| self.aside.of(view) + aside.of(view));
        self
    }

    /// It with one more end that hangs on the bar.
    pub(in crate::canvas) fn with_root(mut self, root: Root) -> Self {
        if root.reach > 0.0 && root.reach.is_finite() {
            self.roots.push(root);
        }
        self
    }

    /// Where a place along it is drawn, both in mm.
    pub(in crate::canvas) fn along(&self, mm: f64) -> f64 {
        self.start + self.scale * mm
    }

    /// Where a point of it is drawn: along, and up as seen.
    pub(in crate::canvas) fn place(&self, [along, up]: [f64; 2], view: View) -> [f64; 2] {
        let along = self.along(along);
        [along, up + self.aside.of(view) + self.roots.iter().map(|root| root.shift_at(along, view)).sum::<f64>()]
    }

    /// An outline as it is drawn, with points enough to follow the Y.
    pub(in crate::canvas) fn outline(&self, mut points: Vec<[f64; 2]>, view: View) -> Vec<[f64; 2]> {
        let aside = *self.aside.of(view);
        if self.scale != 1.0 || self.start != 0.0 || aside != 0.0 {
            points.iter_mut().for_each(|point| *point = [self.along(point[0]), point[1] + aside]);
        }
        // Far from its roots a branch is drawn as it is.
        let moves = |root: &&Root| points.iter().any(|point| root.shift_at(point[0], view) != 0.0);
        let roots: Vec<&Root> = self.roots.iter().filter(moves).collect();
        if roots.is_empty() {
            return points;
        }
        let shifted =
            |[along, up]: [f64; 2]| [along, up + roots.iter().map(|root| root.shift_at(along, view)).sum::<f64>()];
        let stops = stops(&roots);
        let mut drawn = Vec::with_capacity(points.len() + 2 * stops.len());
        for (from, to) in points.iter().zip(points.iter().cycle().skip(1)) {
            drawn.push(shifted(*from));
            let between = |stop: &f64| *stop > from[0].min(to[0]) && *stop < from[0].max(to[0]);
            let at = |along: f64| shifted([along, from[1] + (to[1] - from[1]) * (along - from[0]) / (to[0] - from[0])]);
            let count = drawn.len();
            drawn.extend(stops.iter().copied().filter(between).map(at));
            if to[0] < from[0]
                && let Some(added) = drawn.get_mut(count..)
            {
                added.reverse();
            }
        }
        drawn
    }
}

/// The places along the drawing at which an edge turns.
fn stops(roots: &[&Root]) -> Vec<f64> {
    let steps = |root: &&Root| {
        let (at, step) = (root.at, root.way * root.reach / STEPS as f64);
        (0..=STEPS).map(move |index| at + step * index as f64)
    };
    let mut stops: Vec<f64> = roots.iter().flat_map(steps).collect();
    stops.sort_by(f64::total_cmp);
    stops
}

#[cfg(test)]
#[allow(clippy::float_cmp, clippy::indexing_slicing, reason = "tests")]
mod tests {
    use super::*;

    fn root(way: f64) -> Root {
        Root { at: 100.0, way, reach: 20.0, shift: PerView { side: 0.0, top: -4.0 } }
    }

    #[test]
    fn a_plain_chain_is_drawn_as_it_is() {
        let points = vec![[0.0, 5.0], [10.0, 5.0], [10.0, -5.0]];
        assert_eq!(Fan::default().outline(points.clone(), View::Top), points);
    }

    #[test]
    fn a_branch_leaves_the_root_where_it_was_cut_and_parts_within_the_y() {
        let fan = Fan::default().branch(100.0, 1.0).with_root(root(1.0));
        assert_eq!(fan.place([100.0, 10.0], View::Top), [100.0, 6.0]);
        assert_eq!(fan.place([110.0, 10.0], View::Top), [110.0, 8.0]);
        assert_eq!(fan.place([130.0, 10.0], View::Top), [130.0, 10.0]);
        assert_eq!(fan.place([100.0, 10.0], View::Side), [100.0, 10.0]);
        let drawn = fan.outline(vec![[100.0, 12.0], [200.0, 12.0], [200.0, 8.0], [100.0, 8.0]], View::Top);
        assert!(drawn.len() > 16 && drawn[0] == [100.0, 8.0]);
    }

    #[test]
    fn a_branch_that_is_not_bent_aside_lies_as_it_was_cut() {
        let fan = Fan::default().branch(100.0, 1.0).moved(PerView { side: 0.0, top: -4.0 });
        assert_eq!(fan.place([180.0, 10.0], View::Top), [180.0, 6.0]);
        assert_eq!(fan.outline(vec![[100.0, 12.0], [200.0, 8.0]], View::Top), [[100.0, 8.0], [200.0, 4.0]]);
        assert_eq!(fan.outline(vec![[100.0, 12.0], [200.0, 8.0]], View::Side), [[100.0, 12.0], [200.0, 8.0]]);
    }

    #[test]
    fn a_branch_before_its_root_runs_into_it() {
        let fan = Fan::default().branch(20.0, 1.0).with_root(root(-1.0));
        assert_eq!(fan.place([100.0, 10.0], View::Top), [100.0, 6.0]);
        assert_eq!(fan.place([60.0, 10.0], View::Top), [60.0, 10.0]);
    }

    #[test]
    fn a_longer_branch_reaches_from_end_to_end() {
        let fan = Fan::default().branch(50.0, 0.8);
        assert_eq!(fan.along(50.0), 50.0);
        assert_eq!(fan.along(150.0), 130.0);
        let within = fan.branch(100.0, 0.5);
        assert_eq!(within.along(100.0), fan.along(100.0));
        assert!((within.along(110.0) - fan.along(105.0)).abs() < 1e-12);
    }
}
