//! Labels laid out on a picture, those that found no room first in the next try, and the best of the tries kept.

use super::piece_labels::{Label, Room};
use crate::drawing::Item;

/// How often the numbers are laid out anew, those that found no room first.
const MOST_LAYOUTS: usize = 10;

/// All labels where there is room for them, in the best of some layouts, of two where they are crowded, and whether some were left out.
pub(super) fn all_placed(empty: &Room, labels: &[&Label], is_crowded: bool) -> (Vec<Item>, bool) {
    let mut order = labels.to_vec();
    let mut best = Layout { cost: f64::INFINITY, ..Layout::default() };
    for turn in 0..if is_crowded { 2 } else { MOST_LAYOUTS } {
        let (layout, mut placed, failed) = laid_out(empty, &order);
        if layout.cost < best.cost {
            best = layout;
        }
        if turn % 2 == 0 {
            placed.reverse();
        }
        order = [failed, placed].concat();
    }
    (best.items, best.left_out)
}

/// Labels in their places.
#[derive(Default)]
struct Layout {
    items: Vec<Item>,
    left_out: bool,
    cost: f64,
}

/// Labels placed one after the other: those that found room, and those that found none.
fn laid_out<'l>(empty: &Room, order: &[&'l Label]) -> (Layout, Vec<&'l Label>, Vec<&'l Label>) {
    /// What a label without a place counts.
    const MISSING: f64 = 1_000.0;
    let mut room = empty.clone();
    let mut layout = Layout::default();
    let (mut placed, mut failed) = (Vec::new(), Vec::new());
    for label in order {
        match room.place(label) {
            Some((items, cost)) => {
                layout.items.extend(items);
                layout.cost += cost;
                placed.push(*label);
            }
            None => failed.push(*label),
        }
    }
    layout.cost += MISSING * failed.len() as f64;
    layout.left_out = !failed.is_empty();
    (layout, placed, failed)
}
