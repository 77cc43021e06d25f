//! Dressed lengths as numbers, before the length of their part is settled.

use crate::metal::{Die, Dressing, half_chord_mm, in_mm, mm};
use crate::plan::{Bend, DieKind, DieSpec, Dressed, Lean, Segment};
use fh_measure::WrittenLength;
use uom::si::f64::Length;

/// A dressed length as numbers; where none is written it reaches to the part's end.
#[derive(Clone, Copy, Debug)]
pub(crate) struct DressDraft {
    die: Die,
    from: Length,
    length: Option<Length>,
    side: f64,
    depth: Length,
    lean: f64,
}

/// The dressed lengths of a segment as numbers.
pub(super) fn dress_drafts(segment: &Segment) -> Vec<DressDraft> {
    let bent_to = segment.bend.as_ref().map_or(0.0, Bend::side_radians);
    segment.dressed.iter().map(|dressed| draft(dressed, bent_to)).collect()
}

fn draft(dressed: &Dressed, bent_to: f64) -> DressDraft {
    let radius = dressed.die.radius().map_or(mm(0.0), WrittenLength::length);
    let die = match (&dressed.die, dressed.die.kind()) {
        (DieSpec::Fuller { .. }, DieKind::FullerAcross) => Die::FullerAcross { radius },
        (DieSpec::Fuller { .. }, _) => Die::Fuller { radius },
        (DieSpec::Swage { .. }, _) => Die::Swage { radius },
        (DieSpec::VBlock { .. }, _) => Die::VBlock { angle: dressed.die.v_radians().unwrap_or_default() },
    };
    DressDraft {
        die,
        from: dressed.from.as_ref().map_or(mm(0.0), WrittenLength::length),
        length: dressed.length.as_ref().map(WrittenLength::length),
        side: dressed.side.radians(bent_to),
        depth: dressed.depth.length(),
        lean: match dressed.lean {
            Lean::Least => -1.0,
            Lean::Likely => 0.0,
            Lean::Most => 1.0,
        },
    }
}

impl DressDraft {
    /// It on a part of this length.
    pub(super) fn settled(&self, part: Length) -> Dressing {
        let (start, end) = match self.die {
            Die::FullerAcross { radius } => {
                let half = mm(half_chord_mm(in_mm(radius), in_mm(self.depth)));
                (self.from - half, self.from + half)
            }
            _ => (self.from, self.length.map_or(part.max(self.from), |length| self.from + length)),
        };
        Dressing { die: self.die, start, end, side: self.side, depth: self.depth, lean: self.lean }
    }
}
