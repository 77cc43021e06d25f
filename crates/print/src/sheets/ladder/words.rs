//! What a ladder sheet says, settled in words and mm before anything is laid out.

/// The whole sheet.
pub(super) struct SheetWords {
    /// The title of the piece.
    pub(super) title: String,
    /// One part for each bar.
    pub(super) bars: Vec<BarWords>,
    /// What the lengths are, and how to use them.
    pub(super) explained: String,
}

/// The part of one bar.
pub(super) struct BarWords {
    /// Which bar it is.
    pub(super) name: String,
    /// The segments that have a ladder, in order along the bar.
    pub(super) segments: Vec<SegmentWords>,
}

/// The ladder of one segment.
pub(super) struct SegmentWords {
    /// Its number along the bar.
    pub(super) number: String,
    /// What the smith calls it.
    pub(super) name: String,
    /// What it becomes.
    pub(super) becomes: String,
    /// The size that changes, and where.
    pub(super) measured: String,
    /// The rungs, the fat ones first, so that the lengths grow.
    pub(super) rungs: Vec<RungWords>,
}

/// One rung.
pub(super) struct RungWords {
    /// Whether it is the planned one.
    pub(super) planned: bool,
    /// How thick it is.
    pub(super) size: String,
    /// How long it is cold.
    pub(super) cold: Measure,
    /// How long it is on the hot bar, where that is known.
    pub(super) hot: Option<Measure>,
    /// How much longer or shorter than planned.
    pub(super) change: String,
}

/// A length to be read and to be drawn.
pub(super) struct Measure {
    /// In the shop's figures.
    pub(super) words: String,
    /// In mm.
    pub(super) mm: f64,
}
