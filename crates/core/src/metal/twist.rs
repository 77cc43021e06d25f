//! The edges of a twisted bar on their way over the side that is seen.

use super::{Bent, SectionSize, Shape};
use std::f64::consts::{PI, TAU};

/// The most lines that are drawn for one twist.
const MOST_SWEEPS: f64 = 240.0;
/// Steps of one edge on its way over the side that is seen.
const SWEEP_STEPS: usize = 8;

/// The edges of a twist.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Twist {
    /// How far it is turned, in radians.
    angle: f64,
    /// How many edges its section has.
    edges: f64,
}

impl Twist {
    /// Of a shape with its bend; none where it is not twisted.
    pub fn of(shape: Option<&Shape>, bent: Option<Bent>) -> Option<Self> {
        let Some(Bent::Twist { angle }) = bent else { return None };
        let section = match shape {
            Some(Shape::Prism { section, .. } | Shape::Taper { from: section, .. }) => section,
            _ => return None,
        };
        let edges = match section {
            SectionSize::Hexagon { .. } => 6.0,
            SectionSize::Octagon { .. } => 8.0,
            SectionSize::Round { .. } => 2.0,
            _ => 4.0,
        };
        (angle.is_finite() && angle.abs() > 1e-6).then_some(Self { angle, edges })
    }

    /// Its edges on their way over the side that is seen: shares of the length, and of the half size up.
    pub fn sweeps(self) -> Vec<[[f64; 2]; SWEEP_STEPS + 1]> {
        let turned = self.angle.abs();
        let (half_turn, step) = (PI / turned, TAU / self.edges / turned);
        let first = -(half_turn / step).floor();
        let count = 1.0 / step - first;
        let every = (count / MOST_SWEEPS).ceil().max(1.0);
        let starts = (0..(count / every).ceil() as usize).map(|index| (first + index as f64 * every) * step);
        let sweep = |start: f64| {
            let (from, to) = (start.max(0.0), (start + half_turn).min(1.0));
            std::array::from_fn(|at| {
                let along = from + (to - from) * at as f64 / SWEEP_STEPS as f64;
                [along, ((along - start) * turned).cos() * self.angle.signum()]
            })
        };
        starts.filter(|start| *start < 1.0 && start + half_turn > 0.0).map(sweep).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_square_bar_turned_once_shows_each_edge_once_and_begun_ones() {
        let sweeps = Twist { angle: TAU, edges: 4.0 }.sweeps();
        // Four edges begin within the turn; one is in sight when it begins, and one just leaves.
        assert!((5..=6).contains(&sweeps.len()), "{}", sweeps.len());
        for sweep in sweeps {
            assert!(sweep.iter().all(|[along, up]| (-1e-9..=1.0 + 1e-9).contains(along) && up.abs() <= 1.0 + 1e-9));
            assert!(sweep.windows(2).all(|two| two[1][1] <= two[0][1] + 1e-9));
        }
    }

    #[test]
    fn absurd_twists_keep_few_lines() {
        assert!(Twist { angle: -1e7, edges: 8.0 }.sweeps().len() <= 242);
        assert!(Twist { angle: 1e-5, edges: 4.0 }.sweeps().len() <= 4);
    }
}
