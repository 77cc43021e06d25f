//! The metal itself: settled shapes and their exact volumes. Sizes here are quantities, no longer text.

mod arc;
mod bent;
mod blank;
mod corner;
mod cut;
mod edge;
mod girth;
mod growth;
mod hole;
mod matched;
mod outline;
mod outline_path;
mod polygon;
mod runout;
mod section;
mod section_size;
mod shape;
mod silhouette;
mod spiral;
mod split;
mod standing;
mod twist;

pub use bent::Bent;
pub use blank::Blank;
pub use corner::CornerSize;
pub use cut::Cut;
pub(crate) use growth::growth_asked;
pub use hole::HoleSize;
pub(crate) use hole::slug_area;
pub use matched::{MatchedPoint, arc_swell, matched_outline};
pub use outline::Outline;
pub(crate) use outline_path::OutlinePath;
pub use polygon::OutlineCorner;
pub(crate) use polygon::{chord_area, sides_that_meet, signed_area};
pub use runout::Runout;
pub use section::{Section, View, mixed_area};
pub use section_size::SectionSize;
pub use shape::Shape;
pub use spiral::Spiral;
pub(crate) use split::cut_share;
pub use split::{BranchSize, FreeEnd, OpeningSize, RootSize, SplitSize, cut_offset_mm};
pub use standing::{SetDowns, Standing};
pub use twist::Twist;

pub(crate) use fh_measure::{in_mm, mm, mm2, mm3};
