//! How an outline lies on a page, and what is drawn of it there.

use super::figure::{level_dimension, upright_dimension};
use crate::drawing::{Item, Point, at};
use crate::pen::Pen;

/// How an outline lies on paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lie {
    /// Its root at the left, away from you up.
    Level,
    /// Its root below.
    Upright,
}

impl Lie {
    pub(super) fn place(self, [along, away]: [f64; 2]) -> Point {
        match self {
            Self::Level => at(along, -away),
            Self::Upright => at(-away, -along),
        }
    }

    pub(super) fn polygon(self, points: &[[f64; 2]], pen: Pen) -> Item {
        Item::Polygon { points: points.iter().map(|point| self.place(*point)).collect(), fill: None, pen: Some(pen) }
    }

    pub(super) fn line(self, from: [f64; 2], to: [f64; 2], pen: Pen) -> Item {
        Item::line(self.place(from), self.place(to), pen)
    }

    /// A dimension along the bar, so far toward you from the middle line (away from you where it is below 0).
    pub(super) fn along(self, [from, to]: [f64; 2], aside: f64, words: &str) -> Vec<Item> {
        match self {
            Self::Level => level_dimension([from, to], aside, words),
            Self::Upright => upright_dimension([-to, -from], aside, words),
        }
    }

    /// A dimension across the bar, from `low` to `high` away from you, so far along.
    pub(super) fn across(self, [low, high]: [f64; 2], along: f64, words: &str) -> Vec<Item> {
        match self {
            Self::Level => upright_dimension([-high, -low], along, words),
            Self::Upright => level_dimension([-high, -low], -along, words),
        }
    }
}
