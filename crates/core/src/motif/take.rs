//! Taking a motif out of a plan: what its first segment finds before it is written into it.

use super::{MOTIF_VERSION, Motif};
use crate::plan::{Chain, Form, Plan, SectionSpec, Segment};
use std::ops::RangeInclusive;

impl Motif {
    /// The segments at these places of a chain as a motif; none where there are no such places.
    ///
    /// Where the first segment begins as the one before it ends, that section is written into it.
    pub fn taken(plan: &Plan, bar: usize, chain: Chain, places: RangeInclusive<usize>, name: &str) -> Option<Self> {
        let bar = plan.bars.get(bar)?;
        let all = bar.chain(chain)?;
        let before = all.get(..*places.start())?;
        let mut segments = all.get(places)?.to_vec();
        // A fixed mark is a place on its own bar.
        segments.iter_mut().for_each(|segment| segment.ends_at = None);
        let first = segments.first_mut()?;
        name_the_start(&mut first.form, &section_after(before));
        Some(Self {
            firstheat_motif: MOTIF_VERSION,
            name: name.trim().to_owned(),
            units: plan.units,
            stock: bar.stock.clone(),
            segments,
        })
    }
}

/// The section that a run of segments ends in, as it is written.
fn section_after(segments: &[Segment]) -> SectionSpec {
    for segment in segments.iter().rev() {
        let Some(section) = segment.form.one().section_after() else { return SectionSpec::Stock };
        if section != SectionSpec::Same {
            return section;
        }
    }
    SectionSpec::Stock
}

/// Writes the section before it into a form that begins with it.
fn name_the_start(form: &mut Form, before: &SectionSpec) {
    for section in form.one_mut().sections_mut() {
        let named = section.named_mut();
        if *named == SectionSpec::Same {
            *named = before.clone();
        }
    }
}
