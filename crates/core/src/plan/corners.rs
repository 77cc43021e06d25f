//! The corners of a polygon outline as written.

use fh_measure::WrittenLength;
use serde::de::Error;
use serde::{Deserialize, Deserializer};

/// The most corners a polygon may have. Checking that it does not cross itself takes every pair of its sides.
pub const MOST_CORNERS: usize = 250;

/// A coordinate: unlike a size it may be 0 or below.
#[derive(Deserialize)]
#[serde(transparent)]
struct Coordinate(#[serde(deserialize_with = "fh_measure::signed::deserialize")] WrittenLength);

/// Reads the corners; there are three at least.
pub(super) fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Vec<[WrittenLength; 2]>, D::Error> {
    let corners = Vec::<[Coordinate; 2]>::deserialize(deserializer)?;
    if !(3..=MOST_CORNERS).contains(&corners.len()) {
        let count = corners.len();
        return Err(D::Error::custom(format!("a polygon has 3 to {MOST_CORNERS} corners; this one has {count}")));
    }
    Ok(corners.into_iter().map(|corner| corner.map(|Coordinate(value)| value)).collect())
}
