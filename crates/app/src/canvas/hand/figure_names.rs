//! What a figure is called, and which one Tab goes to from it.

use crate::canvas::figure::What;
use crate::canvas::spot::Spot;
use crate::canvas::stage::Stage;
use crate::canvas::strip::Strip;
use fh_core::describe::upper_first;
use fh_core::edit::{Across, HolePlace, HoleWay};

impl What {
    /// What it is, for people and screen readers.
    pub(in crate::canvas) fn name(self, stage: &Stage<'_>) -> String {
        let of = |segment: usize| stage.model.blocks.get(segment).map_or("", |block| block.unique_name.as_str());
        match self {
            Self::Boundary(spot) if spot.strip == Strip::Bar => {
                format!("{}, from the {}", spot.name(stage.model), stage.model.datum)
            }
            Self::Boundary(spot) => format!("Length of {}, forged", of(spot.segment)),
            Self::Across(segment, across) => {
                let words = stage.bar.segment(segment).and_then(|part| across.words(part)).unwrap_or("size");
                format!("{} of {}", upper_first(words), of(segment))
            }
            Self::Hole(segment, place) => {
                let count = stage.model.blocks.get(segment).map_or(0, |block| block.details.middles.len());
                let hole = if count > 1 { format!("hole {}", place.hole + 1) } else { "the hole".to_owned() };
                let from = match place.way {
                    HoleWay::Along => "from the root",
                    HoleWay::Across => "away from you from the base line",
                };
                format!("Middle of {hole} of {}, {from}", of(segment))
            }
        }
    }

    /// The figure that Tab goes to from here, or Shift+Tab: the marks from the datum on, or each part's length and the sizes
    /// across it.
    pub(in crate::canvas) fn next(self, back: bool, stage: &Stage<'_>) -> Option<Self> {
        let chain = self.chain(stage);
        let at = chain.iter().position(|what| *what == self)?;
        let next = if back { at.checked_sub(1)? } else { at + 1 };
        chain.get(next).copied()
    }

    /// The figures that are typed one after the other.
    fn chain(self, stage: &Stage<'_>) -> Vec<Self> {
        let blocks = &stage.model.blocks;
        let mut order: Vec<usize> = (0..blocks.len()).collect();
        if self.spot().is_some_and(|spot| spot.strip == Strip::Bar) {
            let mark = |at: &usize| blocks.get(*at).map_or(0.0, |block| block.mark_mm);
            order.sort_by(|a, b| mark(a).total_cmp(&mark(b)));
            let spot = |segment| Self::Boundary(Spot { strip: Strip::Bar, segment });
            return order.into_iter().map(spot).collect();
        }
        order.into_iter().flat_map(|segment| sizes_of(segment, stage)).collect()
    }
}

/// A part's length, the sizes across it, each once, and the places of its holes.
fn sizes_of(segment: usize, stage: &Stage<'_>) -> Vec<What> {
    let mut all = vec![What::Boundary(Spot { strip: Strip::Forged, segment })];
    let Some(part) = stage.bar.segment(segment) else { return all };
    let mut told = Vec::new();
    for across in Across::ALL {
        let Some(words) = across.words(part) else { continue };
        if !told.contains(&(across.at, words)) {
            told.push((across.at, words));
            all.push(What::Across(segment, across));
        }
    }
    let middles = stage.model.blocks.get(segment).map_or(&[][..], |block| &block.details.middles);
    for (hole, middle) in middles.iter().enumerate() {
        let ways = [Some(HoleWay::Along), middle.across_mm.map(|_| HoleWay::Across)];
        all.extend(ways.into_iter().flatten().map(|way| What::Hole(segment, HolePlace { hole, way })));
    }
    all
}
