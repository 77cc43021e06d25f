//! Places and edges as they are seen.

/// A place as it is seen: to the right and up, in mm.
pub(crate) type Place = [f64; 2];

/// A stretch of an edge; metal lies at its left.
pub(crate) type Edge = [Place; 2];

/// The lowest and the highest place of all; none where there is none.
pub(super) fn bounds<'a>(places: impl Iterator<Item = &'a Place>) -> Option<[Place; 2]> {
    places.fold(None, |found: Option<[Place; 2]>, [x, y]| {
        let [low, high] = found.unwrap_or([[*x, *y], [*x, *y]]);
        Some([[low[0].min(*x), low[1].min(*y)], [high[0].max(*x), high[1].max(*y)]])
    })
}
