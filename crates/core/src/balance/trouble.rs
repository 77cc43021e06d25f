//! Why a segment's sizes could not be settled as they were wished.

use uom::si::f64::Length;

/// One reason, with its numbers; the words are in [`crate::findings`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Trouble {
    /// No length is given and no bend fixes it.
    NoLength,
    /// The bend has more sizes than it needs.
    TooMuchGiven,
    /// The bend has too few sizes.
    TooLittleGiven,
    /// The bend would need an inside radius below 0.
    RadiusBelowZero(Length),
    /// A bend round nothing: its inside face and the middle of the metal fall together at a point.
    Pinched,
    /// A section without area where metal is needed.
    NoArea,
    /// A peak without its corner.
    PeakWithoutCorner,
    /// A corner on a form that is no peak.
    CornerWithoutPeak,
    /// A corner that turns right back on itself.
    CornerTooFar,
    /// None of its sizes may give.
    NothingGives,
    /// A scroll shorter than the straight line from its inner to its outer radius.
    ScrollTooShort(Length),
    /// A scroll shorter than its turns round its radius can be.
    ScrollTooMuchTurned(Length),
    /// An opening scroll that starts from its very center: it would turn for ever.
    ScrollFromCenter,
    /// Round so small a mandrel the rolled size would be nothing.
    NothingToRoll,
    /// A socket is not made of a flag.
    SocketWithoutFlag,
    /// A split without two branches with metal in them.
    EmptyBranch,
    /// A branch takes more or less than the cut leaves it.
    BranchUneven,
    /// A split that is the whole bar: its branches hang together nowhere.
    SplitAtBothEnds,
    /// Branches too short to be opened so wide.
    OpeningTooWide(Length),
    /// A hole that leaves no metal round it.
    HoleTooLarge,
    /// No value of the size that gives would fit.
    CannotFit,
}

/// A trouble and where it was met.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Met {
    pub(crate) bar: usize,
    pub(crate) segment: Option<usize>,
    pub(crate) trouble: BarTrouble,
}

/// What can go wrong on a bar.
#[derive(Clone, Copy, Debug)]
pub(crate) enum BarTrouble {
    /// A segment's own sizes.
    Segment(Trouble),
    /// `takes_up` names no segment of the bar.
    TakesUpUnknown,
    /// `takes_up` is given, but the bar has no length of its own to fit.
    TakesUpWithoutLength,
}
