//! The center line of a taper that is bent round one mandrel: it turns faster where the metal is thinner.

use super::Place;
use fh_core::metal::Runout;

/// Pieces that the line is reckoned in.
const PIECES: usize = 64;

/// Gauss's rule of 3 points. Nodes and weights: Abramowitz and Stegun, *Handbook of Mathematical Functions*, table 25.4.
const GAUSS: [(f64, f64); 3] =
    [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];

/// The line, kept as its places at even steps of a measure in which the run-out is smooth.
#[derive(Clone, Debug)]
pub(crate) struct TaperTurn {
    runout: Runout,
    length: f64,
    angle: f64,
    /// From the center of the bend to the centroid at the start, in mm, and its change along the taper.
    radius: [f64; 2],
    /// What the turning is multiplied with, so that the whole turns through exactly the angle.
    share: f64,
    places: Vec<Place>,
}

impl TaperTurn {
    /// A taper of this length that turns through an angle; `start` and `end` are from the center of the bend to the
    /// centroid there.
    pub(crate) fn new(runout: Runout, length: f64, angle: f64, [start, end]: [f64; 2]) -> Self {
        let mut turn = Self { runout, length, angle, radius: [start, end - start], share: 1.0, places: Vec::new() };
        let steps = |turn: &Self| -> f64 { (0..PIECES).map(|piece| turn.turned(bound(piece), bound(piece + 1))).sum() };
        turn.share = angle / steps(&turn);
        let mut place = Place { heading: 0.0, at: [0.0, 0.0] };
        turn.places.push(place);
        for piece in 0..PIECES {
            place = turn.onward(place, bound(piece), bound(piece + 1));
            turn.places.push(place);
        }
        turn
    }

    pub(crate) fn angle(&self) -> f64 {
        self.angle
    }

    /// The place at a share of its length.
    pub(crate) fn place(&self, share: f64) -> Place {
        let measure = measure_of_share(self.runout, share.clamp(0.0, 1.0));
        let piece = ((measure * PIECES as f64) as usize).min(PIECES - 1);
        if measure >= 1.0 {
            return self.places[PIECES];
        }
        self.onward(self.places[piece], bound(piece), measure)
    }

    /// The share of its length at which it has turned a share of its angle.
    pub(crate) fn length_at(&self, share: f64) -> f64 {
        let heading = share * self.angle;
        let piece = self.places.partition_point(|place| place.heading < heading).clamp(1, PIECES) - 1;
        let (low, high) = (self.places[piece].heading, self.places[piece + 1].heading);
        let rest = if high > low { (heading - low) / (high - low) } else { 0.0 };
        share_of_measure(self.runout, bound(piece) + rest / PIECES as f64)
    }

    /// Turning for each unit of the measure.
    fn rate(&self, measure: f64) -> f64 {
        let share = self.runout.share_at(share_of_measure(self.runout, measure));
        self.share * self.speed(measure) / (self.radius[0] + self.radius[1] * share)
    }

    /// Length for each unit of the measure.
    fn speed(&self, measure: f64) -> f64 {
        let power = bunching(self.runout);
        self.length * power * measure.powf(power - 1.0)
    }

    fn turned(&self, from: f64, to: f64) -> f64 {
        let (middle, half) = ((from + to) / 2.0, (to - from) / 2.0);
        GAUSS.iter().map(|(node, weight)| weight * half * self.rate(middle + half * node)).sum()
    }

    /// The place at the end of a stretch from the one at its start.
    fn onward(&self, start: Place, from: f64, to: f64) -> Place {
        let (middle, half) = ((from + to) / 2.0, (to - from) / 2.0);
        let mut at = start.at;
        for (node, weight) in GAUSS {
            let measure = middle + half * node;
            let (sin, cos) = (start.heading + self.turned(from, measure)).sin_cos();
            let step = weight * half * self.speed(measure);
            at = [at[0] + step * cos, at[1] + step * sin];
        }
        Place { heading: start.heading + self.turned(from, to), at }
    }
}

fn bound(piece: usize) -> f64 {
    piece as f64 / PIECES as f64
}

/// The share of the length at a measure in which both the length and the change of section are smooth.
fn share_of_measure(runout: Runout, measure: f64) -> f64 {
    measure.powf(bunching(runout))
}

fn measure_of_share(runout: Runout, share: f64) -> f64 {
    share.powf(1.0 / bunching(runout))
}

/// The power of the measure that the length goes with: t^p falls away too sharply at its start to be cut evenly.
fn bunching(runout: Runout) -> f64 {
    match runout {
        Runout::Power(power) => (2.0 / power).max(1.0),
        Runout::Straight | Runout::Eased => 1.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_even_one_is_a_circle() {
        for runout in [Runout::Straight, Runout::Eased, Runout::Power(0.4), Runout::Power(3.0)] {
            let turn = TaperTurn::new(runout, 30.0, 1.5, [20.0, 20.0]);
            for share in [0.1, 0.5, 0.93, 1.0] {
                let (place, want) = (turn.place(share), super::super::arc_place(30.0 * share, 1.5 * share));
                let off = (place.at[0] - want.at[0]).hypot(place.at[1] - want.at[1]);
                assert!(off < 1e-9 && (place.heading - want.heading).abs() < 1e-9, "{runout:?} {share}: {off}");
            }
        }
    }
}
