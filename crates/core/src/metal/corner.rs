//! The sharp outside corner: how much metal a peak must hold.

use super::{SectionSize, in_mm, mm, mm3};
use std::f64::consts::FRAC_PI_2;
use uom::si::f64::{Length, Volume};

/// The sizes of a corner bent from a section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CornerSize {
    /// How far it turns from straight, in radians: above 0 and below π.
    pub turn: f64,
    /// The radius of its inside.
    pub inside_radius: Length,
    /// The section's size in the plane of the bend.
    pub thickness: Length,
    /// The section's size across the bend.
    pub width: Length,
    /// The side it is bent toward, in radians around the bar from up by way of toward-you.
    pub side: f64,
}

impl CornerSize {
    /// A corner of a section; none where it does not turn, or turns right back.
    pub fn new(section: &SectionSize, turn: f64, inside_radius: Length, side: f64) -> Option<Self> {
        let [thickness, width] = toward(section, side);
        (turn > 0.0 && turn < std::f64::consts::PI).then_some(Self { turn, inside_radius, thickness, width, side })
    }

    /// A section in the plane of its bend, and across it.
    pub(crate) fn across(&self, section: &SectionSize) -> [Length; 2] {
        toward(section, self.side)
    }

    /// All the metal between the two inside tangent points: `w [(rᵢ + t)² tan(θ/2) - rᵢ² θ/2]`.
    pub fn volume(&self) -> Volume {
        let inside = in_mm(self.inside_radius);
        let outside = inside + in_mm(self.thickness);
        let half = self.turn / 2.0;
        mm3(in_mm(self.width) * (outside * outside * half.tan() - inside * inside * half))
    }

    /// What the peak holds beyond a plain bend: `w (rᵢ + t)² [tan(θ/2) - θ/2]`.
    pub fn peak_volume(&self) -> Volume {
        let outside = in_mm(self.inside_radius + self.thickness);
        let half = self.turn / 2.0;
        mm3(in_mm(self.width) * outside * outside * (half.tan() - half))
    }

    /// The center-line length that the peak stands over while the bar is straight: `(rᵢ + t/2) θ`.
    pub fn length(&self) -> Length {
        (self.inside_radius + self.thickness / 2.0) * self.turn
    }

    /// From the inside tangent point to the apex, along the leg: `(rᵢ + t) tan(θ/2)`.
    pub fn to_apex(&self) -> Length {
        (self.inside_radius + self.thickness) * (self.turn / 2.0).tan()
    }

    /// How high the peak stands while the bar is straight, in mm, as a triangle over its length. For drawing only.
    pub fn peak_height_mm(&self) -> f64 {
        let area = self.peak_volume() / self.width;
        in_mm(area / self.length()) * 2.0
    }
}

/// A section's size in the plane of a bend toward a side, and across it.
fn toward(section: &SectionSize, side: f64) -> [Length; 2] {
    let outline = section.section();
    let toward = FRAC_PI_2 - side;
    [outline.extent(toward), outline.extent(toward + FRAC_PI_2)]
}

/// A corner of no size, for a peak whose bend is missing.
impl Default for CornerSize {
    fn default() -> Self {
        Self { turn: 0.0, inside_radius: mm(0.0), thickness: mm(0.0), width: mm(0.0), side: 0.0 }
    }
}
