//! One thing for each side that the bar is seen from, in millimetres.

use fh_core::metal::View;
pub(in crate::canvas) use fh_measure::in_mm;

/// One thing for each side that the bar is seen from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(in crate::canvas) struct PerView<T> {
    pub(in crate::canvas) side: T,
    pub(in crate::canvas) top: T,
}

impl<T> PerView<T> {
    /// That of one side.
    pub(in crate::canvas) fn of(&self, view: View) -> &T {
        match view {
            View::Side => &self.side,
            View::Top => &self.top,
        }
    }

    /// Makes one for each side.
    pub(in crate::canvas) fn each(make: impl Fn(View) -> T) -> Self {
        Self { side: make(View::Side), top: make(View::Top) }
    }
}

impl PerView<Vec<[f64; 2]>> {
    /// The lower and the upper edge of an outline as it is seen; none where it has none.
    pub(in crate::canvas) fn edges(&self, view: View) -> Option<[f64; 2]> {
        let ups = self.of(view).iter().map(|[_, up]| *up);
        let edges = ups.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], up| [a.min(up), b.max(up)]);
        (edges[0] <= edges[1]).then_some(edges)
    }
}
