//! What an asked size comes to.

use crate::plan::{AskedSize, FeatureAt};
use uom::si::f64::Length;

/// What an asked size comes to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SizeBalance {
    /// The bar it is taken on; none where there is no such bar.
    pub bar: Option<usize>,
    /// What it is, cold; none where it cannot be taken.
    pub value: Option<Length>,
    /// The part that is to keep it, counted through the bar.
    pub kept_by: Option<usize>,
    /// How many times its written size that part has so that the size is kept; none where it does not keep it.
    pub factor: Option<f64>,
    /// Whether it is as it was asked, within its tolerance; without one, within half a step of the marks.
    pub met: bool,
    /// Why it is not kept, or not as asked.
    pub missed: Option<SizeMissed>,
}

impl SizeBalance {
    /// One that cannot be taken.
    pub(super) fn missed(missed: SizeMissed) -> Self {
        Self { missed: Some(missed), ..Self::default() }
    }
}

/// Why an asked size is not kept, or not as asked.
#[derive(Clone, Debug, PartialEq)]
pub enum SizeMissed {
    /// There is no bar of that name.
    NoBar,
    /// There is no part of that name on its bar.
    NoPart(String),
    /// A part does not have that place.
    NoPlace {
        /// The part's number through the bar, until it is named.
        part: String,
        /// The place.
        at: FeatureAt,
    },
    /// A part in it has sizes that are not settled.
    NotSettled,
    /// It is not as asked, and nothing is to keep it.
    Off,
    /// The part that is to keep it keeps another one.
    KeepsAnother,
    /// The part that is to keep it gives to fill the bar or its block.
    FillsBlock,
    /// The part that is to keep it has no size that gives.
    Holds,
    /// The part that is to keep it does not change it.
    NoEffect,
    /// No size of the part that is to keep it makes it so; with the nearest that can be had.
    OutOfReach {
        /// What it can be at the nearest.
        nearest: Length,
    },
}

impl SizeMissed {
    /// With the name of the part that a place is missing of.
    pub(super) fn named(self, size: &AskedSize) -> Self {
        match self {
            Self::NoPlace { at, .. } => {
                let ends = [&size.from, &size.to].into_iter().flatten();
                let part = ends.clone().find(|feature| feature.at == at).map_or("", |feature| feature.part.as_str());
                Self::NoPlace { part: part.to_owned(), at }
            }
            other => other,
        }
    }
}
