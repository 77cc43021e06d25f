//! What the hammer does to a form while the bar is straight.

use crate::metal::{SectionSize, Shape, growth_asked, in_mm, mm2, mm3};
use crate::plan::Operation;
use fh_heat::growth::Growth;
use uom::si::f64::Area;

/// A difference of sizes that no hammer is lifted for, as a share.
const ALIKE: f64 = 0.02;

/// The metal that a form is forged from, and what has to be known of it.
#[derive(Clone, Copy, Debug)]
pub struct Block<'a> {
    /// The shape that it is to have.
    pub shape: &'a Shape,
    /// The section that it is made from.
    pub raw: SectionSize,
    /// Whether it has to become shorter, or larger somewhere than the bar is.
    pub is_gathered: bool,
    /// Whether its metal welds in the fire.
    pub can_weld: bool,
    /// Whether one of its branches is struck.
    pub has_struck_branches: bool,
}

impl Block<'_> {
    /// Whether a section is so near the bar's that nothing is forged.
    pub(super) fn is_as_raw(&self, section: &SectionSize) -> bool {
        let ([width, thick], [other_width, other_thick]) = (self.raw.extents_mm(), section.extents_mm());
        let same = |one: f64, other: f64| (one - other).abs() <= ALIKE * one.max(other);
        let areas = (in_mm2(self.raw.area()), in_mm2(section.area()));
        same(width, other_width) && same(thick, other_thick) && same(areas.0, areas.1)
    }

    /// Whether an area is larger than the bar's.
    pub(super) fn is_more_than_raw(&self, area_mm2: f64) -> bool {
        area_mm2 > in_mm2(self.raw.area()) * (1.0 + ALIKE)
    }

    /// Whether a size is larger than the bar's smaller one.
    pub(super) fn is_thicker_than_raw(&self, size_mm: f64) -> bool {
        size_mm > self.raw.least_mm() * (1.0 + ALIKE)
    }

    /// Whether a plate is as wide and as thick as the bar.
    pub(super) fn is_plate_of_raw(&self, width_mm: f64, thick_mm: f64) -> bool {
        let [width, thick] = self.raw.extents_mm();
        (width_mm / width - 1.0).abs() < ALIKE && (thick_mm / thick - 1.0).abs() < ALIKE
    }

    /// The mean area of its shape, in mm².
    pub(super) fn mean_mm2(&self) -> f64 {
        (self.shape.volume() / mm3(1.0)).value / in_mm(self.shape.length()).max(1e-9)
    }

    /// How the bar becomes a section along an even length.
    pub(super) fn drawn_to(&self, section: &SectionSize) -> Vec<Operation> {
        let ([from_width, from_thick], [width, thick]) = (self.raw.extents_mm(), section.extents_mm());
        match () {
            () if self.is_as_raw(section) => Vec::new(),
            () if self.is_more_than_raw(in_mm2(section.area())) => vec![Operation::Upset],
            () if growth_asked([from_width, from_thick], [width, thick]) == Growth::Spreading => {
                vec![Operation::Spread]
            }
            () => vec![Operation::Draw],
        }
    }

    /// How a finial of a size becomes: made thicker where it has to be, isolated, and drawn.
    pub(super) fn finial(&self, size_mm: f64) -> Vec<Operation> {
        let upset = self.is_thicker_than_raw(size_mm).then_some(Operation::Upset);
        upset.into_iter().chain([Operation::Isolate, Operation::Draw]).collect()
    }
}

fn in_mm2(area: Area) -> f64 {
    (area / mm2(1.0)).value
}
