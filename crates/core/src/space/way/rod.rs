//! The line of one branch of a slit that is closed at both ends and opened: bowed away from the axis, and turned round it.

use super::super::frame::{Frame, of_side};
use std::f64::consts::PI;
use std::rc::Rc;

/// Steps that its length is added up in.
const STEPS: usize = 512;

/// How a branch runs from one end of the slit to the other.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Bow {
    /// From end to end along the axis, in mm.
    pub(crate) height: f64,
    /// From the axis at both ends, in mm.
    pub(crate) root: f64,
    /// From the axis where it is widest, in mm.
    pub(crate) widest: f64,
    /// The side it lies on, in radians from up by way of toward-you.
    pub(crate) side: f64,
    /// How far it turns round the axis from end to end, in radians, toward to up.
    pub(crate) turn: f64,
}

/// The whole line, with its length at even steps of height.
#[derive(Clone, Debug)]
pub(crate) struct Rod {
    bow: Bow,
    lengths: Rc<Vec<f64>>,
}

impl Bow {
    /// How far from the axis at a share of the height: root + (widest - root) sin²(π z).
    fn out(&self, share: f64) -> f64 {
        self.root + (self.widest - self.root) * (PI * share).sin().powi(2)
    }

    /// The direction it runs in across the axis for each mm of height, outward and round.
    fn slope(&self, share: f64) -> [f64; 2] {
        let outward = (self.widest - self.root) * PI * (2.0 * PI * share).sin() / self.height;
        [outward, self.out(share) * self.turn / self.height]
    }

    /// The frame at a share of the height, seen from the start of the axis.
    fn frame_at(&self, share: f64) -> Frame {
        let [toward, up] = of_side(self.side);
        let (out, [outward, round]) = (self.out(share), self.slope(share));
        let axis = Frame::START.moved([self.height * share, 0.0, 0.0]).rolled(self.turn * share);
        let across = [outward * toward - round * up, outward * up + round * toward];
        axis.moved([0.0, out * toward, out * up]).bent(across[0].hypot(across[1]).atan(), across[0].atan2(across[1]))
    }
}

impl Rod {
    /// The line of a bow.
    pub(crate) fn new(bow: Bow) -> Self {
        let speed = |share: f64| {
            let [outward, round] = bow.slope(share);
            bow.height * (1.0 + outward * outward + round * round).sqrt()
        };
        let mut lengths = vec![0.0];
        for step in 0..STEPS {
            let (start, end) = (step as f64 / STEPS as f64, (step + 1) as f64 / STEPS as f64);
            // Simpson's rule on each step.
            let mean = (speed(start) + 4.0 * speed((start + end) / 2.0) + speed(end)) / 6.0;
            lengths.push(lengths[step] + mean / STEPS as f64);
        }
        Self { bow, lengths: Rc::new(lengths) }
    }

    /// How long its line is, in mm.
    pub(crate) fn length(&self) -> f64 {
        self.lengths[STEPS]
    }

    /// The frame at a share of its length.
    pub(crate) fn frame_at(&self, share: f64) -> Frame {
        let length = share * self.length();
        let step = self.lengths.partition_point(|other| *other <= length).clamp(1, STEPS) - 1;
        let (low, high) = (self.lengths[step], self.lengths[step + 1]);
        let within = if high > low { ((length - low) / (high - low)).clamp(0.0, 1.0) } else { 0.0 };
        self.bow.frame_at((step as f64 + within) / STEPS as f64)
    }

    /// How far it turns this way and that, in radians: for cutting it finely enough.
    pub(crate) fn turning(&self) -> f64 {
        let steepest = PI * (self.bow.widest - self.bow.root).abs() / self.bow.height;
        4.0 * steepest.atan() + self.bow.turn.abs()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::space::vector::{dot, length, minus};

    #[test]
    fn a_rod_of_a_basket_is_as_long_as_the_quadrature_says() {
        // checks: curves-basket-1.
        let rod = Rod::new(Bow { height: 80.0, root: 0.0, widest: 18.0, side: 0.0, turn: PI });
        assert!((rod.length() - 95.600_156_443_1).abs() < 1e-9, "{}", rod.length());
        let (start, end) = (rod.frame_at(0.0), rod.frame_at(1.0));
        assert_eq!(start, Frame::START);
        assert!((end.at[0] - 80.0).abs() < 1e-12 && (end.along[0] - 1.0).abs() < 1e-12, "{end:?}");
    }

    #[test]
    fn it_goes_where_it_points() {
        let rod = Rod::new(Bow { height: 80.0, root: 3.0, widest: 18.0, side: 0.7, turn: -2.0 });
        for share in [0.1, 0.4, 0.77] {
            let (before, here, after) = (rod.frame_at(share - 1e-4), rod.frame_at(share), rod.frame_at(share + 1e-4));
            let step = minus(after.at, before.at);
            let along = dot(step, here.along) / length(step);
            assert!((along - 1.0).abs() < 1e-6, "{share}: {along}");
        }
    }
}
