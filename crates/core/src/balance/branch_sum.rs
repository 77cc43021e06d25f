//! What the branches of a split add up to.

use super::Settled;
use super::walk::{Pass, Stand, Walk};
use crate::metal::in_mm;
use crate::plan::Branch;

/// What the segments of one branch add up to.
pub(super) struct Sum {
    /// Its first segment in the list that it was added up from.
    pub(super) first: usize,
    /// The finished metal, in mm³.
    pub(super) volume: f64,
    /// The length of whole bar that holds its metal, in mm.
    pub(super) stock_length: f64,
    /// How long it is forged, in mm.
    pub(super) forged_length: f64,
}

impl Walk<'_> {
    /// The branches of a split walked one after the other, and what each adds up to.
    pub(super) fn sums(&self, branches: &[Branch], stands: &[Stand], pass: &mut Pass<'_>) -> Vec<Sum> {
        let one = |(branch, stand): (&Branch, &Stand)| {
            let first = pass.all.len();
            self.walk_chain(&branch.segments, 0..branch.segments.len(), *stand, pass);
            self.sum(branch, first, &pass.all)
        };
        branches.iter().zip(stands).map(one).collect()
    }

    /// What a branch adds up to whose first segment lies there in a list.
    pub(super) fn sum(&self, branch: &Branch, first: usize, all: &[Settled]) -> Sum {
        let mut sum = Sum { first, volume: 0.0, stock_length: 0.0, forged_length: 0.0 };
        let mut index = first;
        for segment in &branch.segments {
            if let Some(settled) = all.get(index) {
                sum.stock_length += self.stock_length(segment, settled);
                sum.forged_length += settled.shape.as_ref().map_or(0.0, |shape| in_mm(shape.length()));
                if segment.form.is_finished() {
                    sum.volume += settled.volume_mm3();
                }
            }
            index += segment.count();
        }
        sum
    }
}
