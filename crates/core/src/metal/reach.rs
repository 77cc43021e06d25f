//! How far a shape's surface lies from its center line.

use super::shape::smaller;
use super::{SectionSize, Shape, in_mm};

impl Shape {
    /// From the line of centroids to the surface at a share (0 to 1) of its length, in mm, in the direction of an angle
    /// from toward-you to up.
    ///
    /// Between two sections each reach runs evenly, as their outlines do.
    pub(crate) fn reach_mm(&self, share: f64, angle: f64) -> f64 {
        match self {
            Self::Prism { section, .. } | Self::Peak { section, .. } => of_section(section, angle),
            Self::Taper { from, to, runout, .. } => {
                let f = runout.share_at(share);
                of_section(from, angle) * (1.0 - f) + of_section(to, angle) * f
            }
            Self::Shoulder { from, to, .. } => of_section(smaller(from, to), angle),
            Self::Flag { outline, root, tip } => {
                let thickness = in_mm(*root) + (in_mm(*tip) - in_mm(*root)) * share;
                of_plate(outline.width_at(share), thickness, angle)
            }
            Self::Hole { outline, thickness, .. } => of_plate(outline.width_at(share), in_mm(*thickness), angle),
            Self::Split(split) => of_section(&split.stock, angle),
            Self::Ball { diameter } => {
                let radius = in_mm(*diameter) / 2.0;
                (radius * radius - (radius * (2.0 * share - 1.0)).powi(2)).max(0.0).sqrt()
            }
            Self::Cube { side } => of_plate(in_mm(*side), in_mm(*side), angle),
        }
    }
}

/// A section's outline lies about the middle of its thickness, its centroid a little above or below.
fn of_section(section: &SectionSize, angle: f64) -> f64 {
    section.section().reach_mm(angle) - in_mm(section.centroid_rise()) * angle.sin()
}

fn of_plate(width: f64, thickness: f64, angle: f64) -> f64 {
    (width * angle.cos().abs() + thickness * angle.sin().abs()) / 2.0
}
