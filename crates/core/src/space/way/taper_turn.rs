//! The center line of a taper that is bent round one mandrel: its inside face lies on the mandrel all along, and its
//! outside thins away.
//!
//! Each section stands square to the mandrel, its centroid r + c from the middle of the bend. A short piece ds of the bar
//! turns by dθ = ds / (r + c); the metal of it, the section times (r + c) dθ, is that of the straight piece.

use super::place::Place;
use crate::metal::Runout;

/// Pieces that the line is reckoned in.
const PIECES: usize = 64;

/// Gauss's rule of 3 points. Nodes and weights: Abramowitz and Stegun, *Handbook of Mathematical Functions*, table 25.4.
const GAUSS: [(f64, f64); 3] =
    [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];

/// The line, kept as its headings at even steps of a measure in which the run-out is smooth.
#[derive(Clone, Debug)]
pub(crate) struct TaperTurn {
    runout: Runout,
    length: f64,
    angle: f64,
    /// From the center of the bend to the centroid at the start, in mm, and its change along the taper.
    radius: [f64; 2],
    /// What the turning is multiplied with, so that the whole turns through exactly the angle.
    share: f64,
    headings: Vec<f64>,
}

impl TaperTurn {
    /// A taper of this length that turns through an angle; `start` and `end` are from the center of the bend to the
    /// centroid there.
    pub(crate) fn new(runout: Runout, length: f64, angle: f64, [start, end]: [f64; 2]) -> Self {
        let mut turn = Self { runout, length, angle, radius: [start, end - start], share: 1.0, headings: Vec::new() };
        let whole: f64 = (0..PIECES).map(|piece| turn.turned(bound(piece), bound(piece + 1))).sum();
        turn.share = angle / whole;
        let mut heading = 0.0;
        turn.headings.push(heading);
        for piece in 0..PIECES {
            heading += turn.turned(bound(piece), bound(piece + 1));
            turn.headings.push(heading);
        }
        turn
    }

    /// How far it turns in all, in radians.
    pub(crate) fn angle(&self) -> f64 {
        self.angle
    }

    /// The place at a share of its length.
    pub(crate) fn place(&self, share: f64) -> Place {
        let share = share.clamp(0.0, 1.0);
        let measure = measure_of_share(self.runout, share);
        let piece = ((measure * PIECES as f64) as usize).min(PIECES - 1);
        let heading = if measure >= 1.0 {
            self.headings[PIECES]
        } else {
            self.headings[piece] + self.turned(bound(piece), measure)
        };
        // Seen from the start, the center of the bend lies toward the inside.
        let [start, change] = self.radius;
        let away = start + change * self.runout.share_at(share);
        let half = (heading / 2.0).sin();
        Place { heading, at: [away * heading.sin(), start - away + 2.0 * away * half * half] }
    }

    /// The share of its length at which it has turned a share of its angle.
    pub(crate) fn length_at(&self, share: f64) -> f64 {
        let wanted = share * self.angle;
        let piece = self.headings.partition_point(|heading| *heading < wanted).clamp(1, PIECES) - 1;
        let (low, high) = (self.headings[piece], self.headings[piece + 1]);
        let rest = if high > low { (wanted - low) / (high - low) } else { 0.0 };
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
                let (place, want) = (turn.place(share), super::super::place::arc_place(30.0 * share, 1.5 * share));
                let off = (place.at[0] - want.at[0]).hypot(place.at[1] - want.at[1]);
                assert!(off < 1e-9 && (place.heading - want.heading).abs() < 1e-9, "{runout:?} {share}: {off}");
            }
        }
    }

    #[test]
    fn the_inside_face_of_a_taper_lies_on_the_mandrel() {
        // From 6 mm to 1.5 mm inside a mandrel of 10 mm radius, through two thirds of a turn.
        for runout in [Runout::Straight, Runout::Eased, Runout::Power(0.4), Runout::Power(3.0)] {
            let turn = TaperTurn::new(runout, 60.0, 4.2, [16.0, 11.5]);
            for step in 0..=40 {
                let share = f64::from(step) / 40.0;
                let place = turn.place(share);
                let inside = 6.0 - 4.5 * runout.share_at(share);
                let face = [place.at[0] - inside * place.heading.sin(), place.at[1] + inside * place.heading.cos()];
                // The center of the mandrel lies 16 mm from the start, toward the inside.
                let radius = face[0].hypot(face[1] - 16.0);
                assert!((radius - 10.0).abs() < 1e-9, "{runout:?} {share}: {radius}");
            }
        }
    }
}
