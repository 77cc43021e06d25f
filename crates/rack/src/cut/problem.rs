//! What is to be cut, and from what.

/// Bars of one length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Supply {
    /// Material and section, as one word; pieces are cut from bars of the same word.
    pub section: String,
    /// Length in nm.
    pub length_nm: i64,
    /// The end of each that gives no piece, in nm.
    pub end_nm: i64,
    /// How many there are; none: as many as wanted, to be bought.
    pub count: Option<u64>,
    /// Price of one in the smallest unit of money; what is on the rack costs 0.
    pub price: i64,
}

/// A section that a piece may be made from.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Way {
    /// Material and section.
    pub section: String,
    /// The length that it takes, in nm.
    pub length_nm: i64,
    /// What it costs beside the bar, in the smallest unit of money, for example the further drawing.
    pub extra: i64,
}

/// Pieces of one kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Demand {
    /// How many.
    pub count: u64,
    /// From what they may be made; mostly one.
    pub ways: Vec<Way>,
}

/// What is to be least, or, of the offcut, most.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goal {
    /// The number of bars started.
    Bars,
    /// Their length in all.
    Length,
    /// Their price, and what the pieces' ways cost beside.
    Cost,
    /// The length of the bars started, less the pieces, less the offcuts that are kept; kerf is scrap.
    Scrap,
    /// The longest single offcut that is kept, as long as can be.
    Longest,
}

/// A job for the saw.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// Width of one cut in nm; may be 0.
    pub kerf_nm: i64,
    /// Offcuts from this length are kept, in nm; none: every offcut is scrap.
    pub keep_from_nm: Option<i64>,
    /// The bars.
    pub supplies: Vec<Supply>,
    /// The pieces.
    pub demands: Vec<Demand>,
    /// What is to be least, the first before the second.
    pub goals: Vec<Goal>,
}
