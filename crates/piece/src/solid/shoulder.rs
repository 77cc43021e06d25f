//! A shoulder: the smaller section's run with a fillet against the larger.

use super::loft::centroid;
use super::loft::{Ring, loft};
use crate::Mesh;
use crate::fineness::Fineness;
use fh_core::metal::{SectionSize, matched_outline};
use fh_core::plan::Sides;
use fh_core::space::Way;
use fh_measure::in_mm;
use std::f64::consts::{FRAC_PI_4, PI};
use uom::si::area::square_millimeter;
use uom::si::f64::Length;

/// How far a fillet reaches out in one direction across the bar.
struct Growth {
    /// The section's size, in mm.
    size: f64,
    /// How much larger it is at the wall.
    most: f64,
    /// Which share of that lies on the high side: 1, 0, or 1/2 where both sides step.
    high: f64,
}

/// Whether the smaller section comes second.
fn falls([from, to]: [&SectionSize; 2]) -> bool {
    to.area() < from.area()
}

/// The smaller section with its fillets, about the smaller section's middle while it is straight.
pub(super) fn shoulder(
    sections: [&SectionSize; 2],
    radius: Length,
    sides: &Sides,
    way: &Way,
    fineness: &Fineness,
) -> Mesh {
    let falls = falls(sections);
    let (small, large) = if falls { (sections[1], sections[0]) } else { (sections[0], sections[1]) };
    let radius = in_mm(radius);
    let outline = matched_outline(&small.section(), &small.section(), fineness.round);
    let points: Vec<[f64; 2]> = outline.iter().map(|point| point.first).collect();
    let fillet = Fillet::new([small, large], radius, sides);
    let ring = |at: f64| {
        let from_wall = if falls { at } else { way.length_mm - at } / way.length_mm;
        let mut points: Vec<[f64; 2]> = points.iter().map(|point| fillet.grown(*point, from_wall)).collect();
        if !way.is_straight() {
            let middle = centroid(&points);
            points.iter_mut().for_each(|point| *point = [point[0] - middle[0], point[1] - middle[1]]);
        }
        Ring { at, points }
    };
    let steps = fineness.runout.min(32);
    // Bunched toward both ends, where one profile or another is steepest.
    let bunched = (0..=steps).map(|step| way.length_mm * (1.0 - (PI * step as f64 / steps as f64).cos()) / 2.0);
    let places = super::taper::merged(bunched.chain(fineness.stations_mm(way)).collect(), way.length_mm);
    loft(&places.into_iter().map(ring).collect::<Vec<_>>(), way.twist_radians != 0.0)
}

/// The fillets of a shoulder together: how much they add to the smaller section at each place.
struct Fillet {
    /// Toward the smith and up.
    growth: [Growth; 2],
    /// What they add at the wall, as a share of the section.
    at_wall: f64,
    profile: Profile,
}

/// How the height of a fillet falls away from the wall.
enum Profile {
    /// A quarter of a hollow circle.
    Quarter,
    /// A power of the way left, above 1: it holds a share 1/(p + 1).
    Hollow(f64),
    /// What a power of the way gone leaves, above 1: it holds a share m/(m + 1).
    Full(f64),
}

impl Profile {
    /// The height, 1 at the wall, at a share of the way left.
    fn height(&self, left: f64) -> f64 {
        match self {
            Self::Quarter => 1.0 - (1.0 - left * left).max(0.0).sqrt(),
            Self::Hollow(power) => left.powf(*power),
            Self::Full(power) => 1.0 - (1.0 - left).powf(*power),
        }
    }
}

impl Fillet {
    fn new([small, large]: [&SectionSize; 2], radius: f64, sides: &Sides) -> Self {
        let (outline, beyond) = (small.section(), large.section());
        let sizes = [outline.width(), outline.thickness()].map(in_mm);
        let steps = [beyond.width() - outline.width(), beyond.thickness() - outline.thickness()].map(in_mm);
        let stepped = |degrees: u16| f64::from(u8::from(sides.contains(degrees)));
        let counts = [[stepped(90), stepped(270)], [stepped(0), stepped(180)]];
        let area = small.area().get::<square_millimeter>();
        // r² (1 - π/4) for each side, over its width: what the core reckons.
        let widths: f64 = (0..2).map(|axis| (counts[axis][0] + counts[axis][1]) * sizes[1 - axis]).sum();
        let most = |axis: usize| (radius * (counts[axis][0] + counts[axis][1])).min(steps[axis].max(0.0));
        let mut mosts = [most(0), most(1)];
        if mosts == [0.0, 0.0] {
            mosts = [0, 1].map(|axis: usize| radius * (counts[axis][0] + counts[axis][1]));
        }
        let growth = [0, 1].map(|axis| Growth {
            size: sizes[axis],
            most: mosts[axis],
            high: counts[axis][0] / (counts[axis][0] + counts[axis][1]).max(1.0),
        });
        let room = growth.iter().map(|growth| 1.0 + growth.most / growth.size).product::<f64>() - 1.0;
        let quarter = widths * radius / area;
        if room >= quarter * (1.0 - 1e-9) {
            return Self { growth, at_wall: quarter, profile: Profile::Quarter };
        }
        // A shallow step: as high as there is room for, and as full as holds the same metal.
        let fullness = (quarter * (1.0 - FRAC_PI_4) / room).min(0.95);
        let profile = if fullness < 0.5 {
            Profile::Hollow(1.0 / fullness - 1.0)
        } else {
            Profile::Full(fullness / (1.0 - fullness))
        };
        Self { growth, at_wall: quarter * (1.0 - FRAC_PI_4) / fullness, profile }
    }

    /// Where a point of the smaller section's outline comes to lie at a share of the length from the wall.
    fn grown(&self, point: [f64; 2], from_wall: f64) -> [f64; 2] {
        let left = (1.0 - from_wall).clamp(0.0, 1.0);
        let share = self.share_for(self.at_wall * self.profile.height(left));
        let grown = |axis: usize| {
            let growth = &self.growth[axis];
            let wider = growth.most * share;
            let shift = wider * (growth.high - 0.5);
            point[axis] * (1.0 + wider / growth.size) + shift
        };
        [grown(0), grown(1)]
    }

    /// The share q of the most growth at which the section holds `more` of itself: (1 + q a)(1 + q b) = 1 + more.
    fn share_for(&self, more: f64) -> f64 {
        let [a, b] = [0, 1].map(|axis: usize| self.growth[axis].most / self.growth[axis].size);
        let sum = a + b;
        if sum == 0.0 { 0.0 } else { 2.0 * more / (sum + (sum * sum + 4.0 * a * b * more).sqrt()) }
    }
}
