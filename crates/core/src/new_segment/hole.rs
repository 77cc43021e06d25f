//! A hole changed into another shape.

use crate::first_sizes::FirstSizes;
use crate::plan::{HoleKind, HoleSpec};

/// How long a first slot is against its width.
const SLOT: f64 = 2.0;

/// A hole of another shape that is as wide; none where the plan's unit cannot write its sizes.
pub fn convert_hole(now: &HoleSpec, kind: HoleKind, sizes: &FirstSizes) -> Option<HoleSpec> {
    let width = match now {
        HoleSpec::Round(size) | HoleSpec::Square(size) | HoleSpec::Slot { width: size, .. } => size.clone(),
    };
    Some(match kind {
        HoleKind::Round => HoleSpec::Round(width),
        HoleKind::Square => HoleSpec::Square(width),
        HoleKind::Slot => HoleSpec::Slot { length: sizes.size(SLOT * width.mm())?, width },
    })
}
