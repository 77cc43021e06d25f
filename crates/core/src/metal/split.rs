//! A bar cut along its length: where the cut stands, how long the slit is, and what the branches come to.

use super::{Section, SectionSize, in_mm, mm};
use std::f64::consts::{FRAC_PI_2, PI, TAU};
use uom::si::f64::{Length, Volume};

/// A split with every size settled. Its metal is that of its branches.
#[derive(Clone, Debug, PartialEq)]
pub struct SplitSize {
    /// Its length along the forged bar: its longest branch, or from end to end where it is opened between two.
    pub length: Length,
    /// The metal of all its branches.
    pub volume: Volume,
    /// The section that is cut.
    pub stock: SectionSize,
    /// At which end its branches are free.
    pub free: FreeEnd,
    /// The side on which the first branch lies, in radians around the bar from up by way of toward-you.
    pub side: f64,
    /// Its branches, from that side.
    pub branches: Vec<BranchSize>,
    /// The length of the slit on the starting bar.
    pub slit: Length,
    /// Where the cuts stand, from the first branch's edge.
    pub cuts: Vec<Length>,
    /// The end of the slit.
    pub root: Option<RootSize>,
    /// How far it is opened, where it is closed at both ends.
    pub opening: Option<OpeningSize>,
    /// How far its outermost branches are bent out of line at their roots while they are forged, in radians; 0 once they are
    /// back in line.
    pub apart: f64,
    /// The metal lost to holes at the ends of the slit.
    pub lost: Volume,
    /// The length of starting bar that it takes: the slit, and what its root holes lose.
    pub stock_length: Length,
    /// The area of all branches together at even steps of its length, in mm²; for drawing.
    pub(crate) areas: Vec<f64>,
}

/// At which end the branches of a split are free.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FreeEnd {
    /// Toward the datum end.
    Datum,
    /// Away from the datum end.
    Far,
    /// At neither: the slit is closed at both ends.
    Neither,
}

/// What one branch comes to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BranchSize {
    /// Its length, forged.
    pub forged_length: Length,
    /// The length of starting bar that its metal would take alone.
    pub stock_length: Length,
    /// Its share of the section that is cut, 0 to 1.
    pub share: f64,
    /// How far its middle lies from the bar's middle at the root, toward the first branch's side.
    pub offset: Length,
    /// How wide the branch is as cut.
    pub raw_width: Length,
    /// At which end it is free: its own, where it leaves the bar; else that of the split.
    pub free: FreeEnd,
}

/// How the end of the slit is made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RootSize {
    /// Rounded to this radius.
    Radius(Length),
    /// With a hole of this diameter.
    Hole(Length),
}

/// How far a slit closed at both ends is opened: each branch runs at `r sin²(π z/length)` from the axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OpeningSize {
    /// The distance of a branch from the axis where it is widest.
    pub radius: Length,
    /// How many turns the branches run round the axis.
    pub turns: f64,
}

impl OpeningSize {
    /// The length in mm of a rod that runs so over a height in mm; by quadrature, no closed form is known.
    pub fn rod_mm(&self, height: f64) -> f64 {
        self.rod().length_mm(height)
    }

    /// The rod, ready to be measured at any height.
    pub(crate) fn rod(&self) -> Rod {
        let (radius, turned) = (in_mm(self.radius), TAU * self.turns);
        let across = |step: usize| {
            let (sin, cos) = (PI * step as f64 / Rod::STEPS as f64).sin_cos();
            let (out, rate) = (radius * sin * sin, 2.0 * PI * radius * sin * cos);
            rate * rate + (out * turned).powi(2)
        };
        Rod { across: std::array::from_fn(across) }
    }
}

/// The squared way across the axis, for each unit along it, at even steps of half a rod; the other half mirrors it.
pub(crate) struct Rod {
    across: [f64; Self::STEPS / 2 + 1],
}

impl Rod {
    /// Steps along a whole rod. The integrand is smooth and periodic, so that the trapezoidal rule converges faster than any
    /// power of the step.
    const STEPS: usize = 128;

    /// Its length in mm where it rises to a height in mm.
    pub(crate) fn length_mm(&self, height: f64) -> f64 {
        let speed = |across: &f64| (height * height + across).sqrt();
        let ends = speed(&self.across[0]) + speed(&self.across[Self::STEPS / 2]);
        let between: f64 = self.across[1..Self::STEPS / 2].iter().map(speed).sum();
        (ends + 2.0 * between) / Self::STEPS as f64
    }
}

impl SplitSize {
    /// The end of the slit at which a tip comes free, and which has no root: that of the split, or of a branch that leaves the bar.
    pub fn opens(&self) -> FreeEnd {
        let of_branch = || self.branches.iter().map(|branch| branch.free).find(|free| *free != FreeEnd::Neither);
        if self.free == FreeEnd::Neither { of_branch().unwrap_or(FreeEnd::Neither) } else { self.free }
    }

    /// The area of all branches together at a share of its length, in mm².
    pub(crate) fn area_at(&self, share: f64) -> f64 {
        let Some(last) = self.areas.len().checked_sub(1) else { return 0.0 };
        let place = share.clamp(0.0, 1.0) * last as f64;
        let (low, rest) = (place.floor() as usize, place.fract());
        let high = (low + 1).min(last);
        self.areas[low] * (1.0 - rest) + self.areas[high] * rest
    }
}

/// Where a cut along the bar stands that leaves this share of a section on the side it is measured from.
///
/// From the edge on that side, in mm; `side` runs from up by way of toward-you. A rectangle is divided in proportion; of a
/// round the circular segment is solved for, and other sections are divided as polygons.
pub fn cut_offset_mm(section: &SectionSize, side: f64, share: f64) -> f64 {
    let share = share.clamp(0.0, 1.0);
    if let SectionSize::Round { diameter } = *section {
        let half_angle = bisect(|half| (half - half.sin() * half.cos()) / PI, share, PI);
        return in_mm(diameter) / 2.0 * (1.0 - half_angle.cos());
    }
    let outline = section.section();
    let toward = FRAC_PI_2 - side;
    let size = in_mm(outline.extent(toward));
    if is_rectangle(section) && (side / FRAC_PI_2).fract().abs() < 1e-12 {
        return size * share;
    }
    let (edge, points) = (outline.reach_mm(toward), fine_outline(&outline));
    let along = |[y, z]: [f64; 2]| edge - (y * toward.cos() + z * toward.sin());
    let across = |[y, z]: [f64; 2]| -y * toward.sin() + z * toward.cos();
    let corners: Vec<_> = points.into_iter().map(|point| [along(point), across(point)]).collect();
    let whole = area_before(&corners, f64::INFINITY);
    bisect(|depth| area_before(&corners, depth) / whole, share, size)
}

/// The share of a section, 0 to 1, on the side of a cut along the bar that stands so far from the edge there, in mm: what
/// [`cut_offset_mm`] finds the place of.
pub(crate) fn cut_share(section: &SectionSize, side: f64, offset_mm: f64) -> f64 {
    let outline = section.section();
    let toward = FRAC_PI_2 - side;
    let size = in_mm(outline.extent(toward));
    let offset = offset_mm.clamp(0.0, size);
    if let SectionSize::Round { .. } = section {
        let half = (1.0 - 2.0 * offset / size).clamp(-1.0, 1.0).acos();
        return (half - half.sin() * half.cos()) / PI;
    }
    if is_rectangle(section) && (side / FRAC_PI_2).fract().abs() < 1e-12 {
        return offset / size;
    }
    bisect(|share| cut_offset_mm(section, side, share), offset, 1.0)
}

fn is_rectangle(section: &SectionSize) -> bool {
    match section {
        SectionSize::Square { edge_radius, .. } | SectionSize::Flat { edge_radius, .. } => *edge_radius == mm(0.0),
        _ => false,
    }
}

fn fine_outline(outline: &Section) -> Vec<[f64; 2]> {
    outline.outline_mm(4096)
}

/// The area of the part of a convex polygon up to a depth along its first axis.
fn area_before(corners: &[[f64; 2]], depth: f64) -> f64 {
    let mut kept = Vec::with_capacity(corners.len() + 2);
    for (index, a) in corners.iter().enumerate() {
        let b = &corners[(index + 1) % corners.len()];
        if a[0] <= depth {
            kept.push(*a);
        }
        if (a[0] <= depth) != (b[0] <= depth) {
            kept.push([depth, a[1] + (b[1] - a[1]) * (depth - a[0]) / (b[0] - a[0])]);
        }
    }
    let cross = |(index, a): (usize, &[f64; 2])| {
        let b = &kept[(index + 1) % kept.len()];
        a[0] * b[1] - b[0] * a[1]
    };
    kept.iter().enumerate().map(cross).sum::<f64>().abs() / 2.0
}

/// The place between 0 and `most` at which a growing function reaches a target.
fn bisect(f: impl Fn(f64) -> f64, target: f64, most: f64) -> f64 {
    let (mut low, mut high) = (0.0, most);
    for _ in 0..80 {
        let middle = (low + high) / 2.0;
        if f(middle) < target { low = middle } else { high = middle }
    }
    (low + high) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_section_is_cut_in_halves_through_its_middle() {
        let a = mm(20.0);
        let sections = [
            SectionSize::square(a),
            SectionSize::Round { diameter: a },
            SectionSize::Hexagon { across_flats: a },
            SectionSize::Diamond { side: a },
            SectionSize::Flat { width: a, thickness: mm(8.0), edge_radius: mm(1.0) },
        ];
        for section in sections {
            for side in [0.0, FRAC_PI_2, PI, 1.5 * PI] {
                let size = in_mm(section.section().extent(FRAC_PI_2 - side));
                let cut = cut_offset_mm(&section, side, 0.5);
                assert!((cut - size / 2.0).abs() < 1e-6, "{section:?} {side}: {cut}");
            }
        }
    }

    #[test]
    fn a_quarter_of_a_diamond_stands_at_its_half_diagonal_over_root_two() {
        // The corner cut off a square is similar to half of it: its depth goes with the root of its area.
        let diamond = SectionSize::Diamond { side: mm(20.0) };
        let half_diagonal = 20.0 / 2.0_f64.sqrt();
        let cut = cut_offset_mm(&diamond, 0.0, 0.25);
        assert!((cut - half_diagonal * 0.5_f64.sqrt()).abs() < 1e-9, "{cut}");
    }
}
