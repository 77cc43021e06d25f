//! A plate that is spread to a blank and cut to its outline: what is cut away, and what the blank has not got.

use super::{Blank, Outline, OutlinePath, Shape, in_mm, mm2, mm3};
use uom::si::f64::{Area, Length, Volume};

/// What an outline leaves of its blank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// What of the blank lies outside the outline, and is cut away.
    pub away: Volume,
    /// Its area.
    pub away_area: Area,
    /// What of the outline lies outside the blank, and is missing; 0 where the blank holds all of it.
    pub missing: Volume,
    /// Its area.
    pub missing_area: Area,
}

/// A share of the outline that is only the arithmetic's.
const HAIR: f64 = 1e-9;

impl Shape {
    /// A flag, its thickness running evenly from root to tip: over its blank's length where it has one.
    pub(crate) fn flag(outline: Outline, blank: Option<Outline>, root: Length, tip: Length) -> Self {
        let Some(blank) = blank else { return Self::plate(outline, root, tip) };
        let share = (outline.length() / blank.length()).value.min(1.0);
        let at_end = if share.is_finite() { root + (tip - root) * share } else { tip };
        let blank = Some(Box::new(Blank { outline: blank, tip }));
        Self::Flag { outline, root, tip: at_end, blank, holes: Vec::new() }
    }

    /// A plate as it is forged, with no hole and nothing to be cut off it.
    pub fn plate(outline: Outline, root: Length, tip: Length) -> Self {
        Self::Flag { outline, root, tip, blank: None, holes: Vec::new() }
    }

    /// The blank that it is cut from, as it is spread; none where it has none.
    pub fn blank(&self) -> Option<Self> {
        let Self::Flag { root, blank, .. } = self else { return None };
        let blank = blank.as_ref()?;
        Some(Self::plate(blank.outline.clone(), *root, blank.tip))
    }

    /// What is cut of its blank; none where it has none. What a hole loses is no part of it, what its drift pushes out is.
    pub fn cut(&self) -> Option<Cut> {
        let cut = self.filled().cut_of_filled()?;
        Some(Cut { away: cut.away + self.holes_volume() - self.lost_to_holes(), ..cut })
    }

    fn cut_of_filled(&self) -> Option<Cut> {
        let blank = self.blank()?;
        let Self::Flag { outline: of_blank, root, tip, .. } = &blank else { return None };
        let Self::Flag { outline, .. } = self else { return None };
        let shared = OutlinePath::new(outline).shared_with(&OutlinePath::new(of_blank));
        let slope = (in_mm(*tip) - in_mm(*root)) / in_mm(of_blank.length());
        // Where sizes are beyond all measure, the arithmetic's faults are too.
        let shared_area = mm2(shared[0]).max(mm2(0.0)).min(outline.area().min(of_blank.area()));
        let shared_volume = mm3(in_mm(*root) * shared[0] + slope * shared[1]);
        let shared_volume = shared_volume.max(mm3(0.0)).min(self.volume().min(blank.volume()));
        let short = (outline.area() - shared_area).max(mm2(0.0));
        if (short / outline.area()).value <= HAIR {
            // All of it lies inside: the difference of two exact figures.
            let away = (blank.volume() - self.volume()).max(mm3(0.0));
            let away_area = (of_blank.area() - outline.area()).max(mm2(0.0));
            return Some(Cut { away, away_area, missing: mm3(0.0), missing_area: mm2(0.0) });
        }
        Some(Cut {
            away: (blank.volume() - shared_volume).max(mm3(0.0)),
            away_area: (of_blank.area() - shared_area).max(mm2(0.0)),
            missing: (self.volume() - shared_volume).max(mm3(0.0)),
            missing_area: short,
        })
    }

    /// The outline that gives where its length or width does: that of its blank, or its own where it has none.
    pub(crate) fn giving_outline(&self) -> Option<&Outline> {
        match self {
            Self::Flag { blank: Some(blank), .. } => Some(&blank.outline),
            Self::Flag { outline, .. } | Self::Hole { outline, .. } => Some(outline),
            _ => None,
        }
    }
}
