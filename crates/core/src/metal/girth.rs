//! How wide and how thick a shape is at a place, and how far its surface lies from its center line: what tongs, fire and
//! hammer ask of it.

use super::shape::smaller;
use super::{SectionSize, Shape, in_mm, mm};
use uom::si::f64::Length;

/// What is thinner than this cools as if it were so thick, in mm: a flag may run out to nothing.
const LEAST_PLATE_MM: f64 = 0.1;

impl SectionSize {
    /// How wide and how thick it is, in mm.
    pub fn extents_mm(&self) -> [f64; 2] {
        // Asked of every part at every step: what is written so needs no outline.
        match *self {
            Self::Square { side, .. } => [in_mm(side); 2],
            Self::Round { diameter } => [in_mm(diameter); 2],
            Self::Flat { width, thickness, .. } => [in_mm(width), in_mm(thickness)],
            _ => {
                let outline = self.section();
                [in_mm(outline.width()), in_mm(outline.thickness())]
            }
        }
    }

    /// The smaller of the two, in mm.
    pub fn least_mm(&self) -> f64 {
        let [width, thickness] = self.extents_mm();
        width.min(thickness)
    }
}

impl Shape {
    /// The section in its middle; a taper's as a square of its area there. None of a split.
    pub fn middle(&self) -> Option<SectionSize> {
        let plate = |width: Length, thick_mm: f64| SectionSize::flat(width, mm(thick_mm.max(LEAST_PLATE_MM)));
        match self {
            Self::Prism { section, .. } | Self::Peak { section, .. } | Self::Shoulder { to: section, .. } => {
                Some(*section)
            }
            Self::Taper { .. } => {
                let area_mm2 = (self.area_at(0.5) / super::mm2(1.0)).value;
                Some(SectionSize::Square { side: mm(area_mm2.max(1e-3).sqrt()), edge_radius: mm(0.0) })
            }
            Self::Flag { outline, root, tip, .. } => Some(plate(outline.width(), (in_mm(*root) + in_mm(*tip)) / 2.0)),
            Self::Hole { outline, thickness, .. } => Some(plate(outline.width(), in_mm(*thickness))),
            Self::Ball { diameter } => Some(SectionSize::Round { diameter: *diameter }),
            Self::Cube { side } => Some(SectionSize::Square { side: *side, edge_radius: mm(0.0) }),
            Self::Split(_) => None,
        }
    }

    /// The least thickness, in mm; none of a split. A point is thin for so short a length that it does not count.
    pub fn least_thickness_mm(&self) -> Option<f64> {
        match self {
            Self::Flag { root, tip, .. } => Some(in_mm(*root).min(in_mm(*tip))),
            Self::Hole { thickness, .. } => Some(in_mm(*thickness)),
            Self::Prism { section, .. } | Self::Peak { section, .. } | Self::Shoulder { to: section, .. } => {
                Some(section.least_mm())
            }
            Self::Taper { from, to, .. } if to.is_end() => Some(from.least_mm()),
            Self::Taper { from, to, .. } if from.is_end() => Some(to.least_mm()),
            Self::Taper { from, to, .. } => Some(from.least_mm().min(to.least_mm())),
            Self::Ball { diameter: size } | Self::Cube { side: size } => Some(in_mm(*size)),
            Self::Split(_) => None,
        }
    }

    /// How wide and how thick it is at a share (0 to 1) of its length, in mm; of a split, as the bar `raw` is thick.
    pub fn extents_at_mm(&self, share: f64, raw: &SectionSize) -> [f64; 2] {
        let by_area = |thick: f64| {
            let area_mm2 = (self.area_at(share) / super::mm2(1.0)).value;
            [area_mm2.max(0.0) / thick.max(1e-6), thick]
        };
        match self {
            Self::Prism { section, .. } | Self::Peak { section, .. } => section.extents_mm(),
            Self::Taper { from, to, runout, .. } => {
                let (f, from, to) = (runout.share_at(share), from.extents_mm(), to.extents_mm());
                [0, 1].map(|way| (1.0 - f) * from[way] + f * to[way])
            }
            Self::Shoulder { from, to, .. } => if to.area() > from.area() { from } else { to }.extents_mm(),
            Self::Flag { root, tip, .. } => by_area((1.0 - share) * in_mm(*root) + share * in_mm(*tip)),
            Self::Hole { outline, thickness, .. } => [in_mm(outline.width()), in_mm(*thickness)],
            Self::Ball { diameter: size } | Self::Cube { side: size } => [in_mm(*size); 2],
            Self::Split(_) => by_area(raw.extents_mm()[1]),
        }
    }

    /// How wide and how thick it is at its start or at its end, in mm; as the bar `raw` where it has no section there.
    pub fn end_extents_mm(&self, at_end: bool, raw: &SectionSize) -> [f64; 2] {
        match self {
            Self::Prism { section, .. } | Self::Peak { section, .. } => section.extents_mm(),
            Self::Taper { from, to, .. } | Self::Shoulder { from, to, .. } => {
                if at_end { to } else { from }.extents_mm()
            }
            Self::Flag { outline, root, tip, .. } => {
                let width = outline.end_width(at_end).map_or(raw.extents_mm()[0], in_mm);
                [width, in_mm(if at_end { *tip } else { *root })]
            }
            Self::Hole { outline, thickness, .. } => [in_mm(outline.width()), in_mm(*thickness)],
            Self::Ball { diameter: size } | Self::Cube { side: size } => [in_mm(*size); 2],
            Self::Split(_) => raw.extents_mm(),
        }
    }

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
            Self::Flag { outline, root, tip, .. } => {
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

#[cfg(test)]
mod tests {
    use super::*;

    fn square(side: f64) -> SectionSize {
        SectionSize::Square { side: mm(side), edge_radius: mm(0.0) }
    }

    #[test]
    fn a_taper_is_asked_where_it_has_metal() {
        let runout = crate::metal::Runout::Straight;
        let taper = Shape::Taper { from: square(20.0), to: square(10.0), runout, length: mm(100.0) };
        assert_eq!(taper.extents_at_mm(0.5, &square(20.0)), [15.0, 15.0]);
        assert_eq!(taper.end_extents_mm(true, &square(20.0)), [10.0, 10.0]);
        assert_eq!(taper.least_thickness_mm(), Some(10.0));
        let middle = taper.middle().map(|section| section.extents_mm());
        assert!(middle.is_some_and(|[width, thick]| (width - 15.0).abs() < 1e-9 && (thick - 15.0).abs() < 1e-9));
        let pointed = Shape::Taper { from: square(20.0), to: SectionSize::Point, runout, length: mm(100.0) };
        assert_eq!(pointed.least_thickness_mm(), Some(20.0), "the point does not count");
    }

    #[test]
    fn a_plate_is_as_thick_as_it_is_in_its_middle() {
        let outline = crate::metal::Outline::Rectangle { length: mm(60.0), width: mm(40.0) };
        let flag = Shape::flag(outline, None, mm(4.0), mm(2.0));
        assert_eq!(flag.middle().map(|section| section.extents_mm()), Some([40.0, 3.0]));
        assert_eq!(flag.least_thickness_mm(), Some(2.0));
        assert_eq!(flag.end_extents_mm(false, &square(20.0)), [40.0, 4.0]);
        assert_eq!(flag.extents_at_mm(0.5, &square(20.0)), [40.0, 3.0]);
    }
}
