//! The marks of a bar as they are printed, and the blocks that they bound.

use super::{BarBalance, Block};
use crate::metal::in_mm;

impl BarBalance {
    /// The block that a segment of the bar itself lies in.
    pub fn block_of(&self, index: usize) -> Option<&Block> {
        let place = self.whole().position(|(at, _)| at == index)?;
        self.blocks.iter().find(|block| block.places.contains(&place))
    }

    /// Where the mark at a segment's end is struck, in mm from the datum end: where it was fixed, else where it is rounded to.
    pub fn struck_mm(&self, index: usize) -> Option<f64> {
        let segment = self.segments.get(index)?;
        Some(segment.fixed_mark.as_ref().map_or(segment.mark_end_shop.mm(), |fixed| in_mm(fixed.at)))
    }

    /// The mark at a segment's end as it is printed: as it was typed where the smith fixed it, else rounded for the shop.
    pub fn mark_text(&self, index: usize) -> Option<String> {
        let segment = self.segments.get(index)?;
        if let Some(fixed) = &segment.fixed_mark {
            return Some(fixed.text.clone());
        }
        Some(self.block_shop(index).map_or(segment.mark_end_shop, |[_, end]| end).text())
    }
}
