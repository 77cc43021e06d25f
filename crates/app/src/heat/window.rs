//! What part of the bar is drawn, and where a place on it lies on the screen.

use egui::Rect;
use fh_work::OneHeat;

/// How much is drawn at each side of what is heated, as a share of it, where the bar is longer.
const AROUND: f64 = 0.75;

/// The drawn part of a bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Window {
    /// From where to where, in mm along the bar.
    pub(super) mm: [f64; 2],
    /// Whether the bar goes on at the left and at the right.
    pub(super) goes_on: [bool; 2],
}

impl Window {
    /// Around what is heated. `along` are places in mm and °C, evenly apart.
    pub(super) fn new(one: &OneHeat, along: &[(f64, f64)]) -> Self {
        let [from, to] = ends(along);
        let around = (one.heated_mm[1] - one.heated_mm[0]) * AROUND;
        let mm = [(one.heated_mm[0] - around).max(from), (one.heated_mm[1] + around).min(to)];
        let mm = if mm[1] > mm[0] { mm } else { [from, to] };
        Self { mm, goes_on: [mm[0] > from + 1.0, mm[1] < to - 1.0] }
    }

    /// Where a place in mm lies across a rectangle; at its edge where it is not drawn.
    pub(super) fn x(&self, rect: Rect, mm: f64) -> f32 {
        let share = (mm - self.mm[0]) / (self.mm[1] - self.mm[0]).max(f64::MIN_POSITIVE);
        rect.left() + rect.width() * share.clamp(0.0, 1.0) as f32
    }

    /// The place in mm at a point across a rectangle.
    pub(super) fn mm_at(&self, rect: Rect, x: f32) -> f64 {
        let share = f64::from(((x - rect.left()) / rect.width().max(1.0)).clamp(0.0, 1.0));
        self.mm[0] + (self.mm[1] - self.mm[0]) * share
    }
}

/// The two ends of a bar of which places evenly apart are known: half a cell beyond the first and the last.
fn ends(along: &[(f64, f64)]) -> [f64; 2] {
    let half = |pair: Option<&[(f64, f64)]>| match pair {
        Some([a, b]) => (b.0 - a.0) / 2.0,
        _ => 0.0,
    };
    let (first, last) = (along.first().map_or(0.0, |cell| cell.0), along.last().map_or(0.0, |cell| cell.0));
    [first - half(along.get(..2)), last + half(along.get(along.len().saturating_sub(2)..))]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_lie_half_a_cell_out() {
        assert_eq!(ends(&[(1.0, 20.0), (3.0, 20.0), (5.0, 20.0)]), [0.0, 6.0]);
        assert_eq!(ends(&[]), [0.0, 0.0]);
        assert_eq!(ends(&[(4.0, 20.0)]), [4.0, 4.0]);
    }
}
