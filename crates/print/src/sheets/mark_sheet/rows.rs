//! Cuts the bar into rows that fit the page, each overlapping the one before so that they can be joined.

/// How much of the bar two rows in a line both show, in mm.
pub(super) const OVERLAP_MM: f64 = 10.0;

/// One row: the stretch of bar it shows, in mm from the datum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Row {
    /// Where it starts.
    pub(super) start: f64,
    /// Where it ends.
    pub(super) end: f64,
    /// Whether the bar goes on in the row before.
    pub(super) joined_before: bool,
    /// Whether the bar goes on in the row after.
    pub(super) joined_after: bool,
}

impl Row {
    /// Whether a place on the bar is shown.
    pub(super) fn shows(self, place: f64) -> bool {
        // A hair more than the row itself, so that a mark at its very end is not lost to rounding.
        const HAIR_MM: f64 = 1e-6;
        place >= self.start - HAIR_MM && place <= self.end + HAIR_MM
    }

    /// The middle of the overlap with the row before.
    pub(super) fn cross_before(self) -> Option<f64> {
        self.joined_before.then_some(self.start + OVERLAP_MM / 2.0)
    }

    /// The middle of the overlap with the row after.
    pub(super) fn cross_after(self) -> Option<f64> {
        self.joined_after.then_some(self.end - OVERLAP_MM / 2.0)
    }
}

/// The rows of a bar of this length, where one row shows `row_mm` of it; no more than `most`.
pub(super) fn rows(length_mm: f64, row_mm: f64, most: usize) -> Vec<Row> {
    let mut rows = Vec::new();
    let mut start = 0.0;
    while rows.len() < most {
        let end = start + row_mm;
        let last = end >= length_mm;
        let end = if last { length_mm } else { end };
        rows.push(Row { start, end, joined_before: !rows.is_empty(), joined_after: !last });
        if last {
            break;
        }
        start = end - OVERLAP_MM;
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_short_bar_is_one_row() {
        let row = Row { start: 0.0, end: 120.0, joined_before: false, joined_after: false };
        assert_eq!(rows(120.0, 260.0, 100), [row]);
    }

    #[test]
    fn rows_overlap_and_cover_the_bar() {
        let rows = rows(600.0, 260.0, 100);
        let spans: Vec<_> = rows.iter().map(|row| (row.start, row.end)).collect();
        assert_eq!(spans, [(0.0, 260.0), (250.0, 510.0), (500.0, 600.0)]);
        for pair in rows.windows(2) {
            assert_eq!(pair[0].cross_after(), pair[1].cross_before());
        }
        assert_eq!((rows[0].cross_before(), rows[2].cross_after()), (None, None));
    }

    #[test]
    fn an_endless_bar_stops_at_the_most_rows() {
        let rows = rows(1e12, 260.0, 7);
        assert_eq!(rows.len(), 7);
        assert!(rows[6].joined_after);
    }
}
