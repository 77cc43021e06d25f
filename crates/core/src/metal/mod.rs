//! The metal itself: settled shapes and their exact volumes. Sizes here are quantities, no longer text.

mod bent;
mod corner;
mod girth;
mod hole;
mod matched;
mod outline;
mod reach;
mod runout;
mod section;
mod section_size;
mod shape;
mod silhouette;
mod spiral;
mod split;
mod twist;

pub use bent::Bent;
pub use corner::CornerSize;
pub use hole::HoleSize;
pub(crate) use hole::slug_area;
pub use matched::{MatchedPoint, arc_swell, matched_outline};
pub use outline::Outline;
pub use runout::Runout;
pub use section::{Section, View, mixed_area};
pub use section_size::SectionSize;
pub use shape::Shape;
pub use spiral::Spiral;
pub use split::{BranchSize, FreeEnd, OpeningSize, RootSize, SplitSize, cut_offset_mm};
pub use twist::Twist;

use uom::si::f64::{Area, Length, Volume};
use uom::si::{area::square_millimeter, length::millimeter, volume::cubic_millimeter};

/// A length of so many millimetres.
pub(crate) fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

/// An area of so many square millimetres.
pub(crate) fn mm2(value: f64) -> Area {
    Area::new::<square_millimeter>(value)
}

/// A volume of so many cubic millimetres.
pub(crate) fn mm3(value: f64) -> Volume {
    Volume::new::<cubic_millimeter>(value)
}

/// The millimetres of a length.
pub(crate) fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}
