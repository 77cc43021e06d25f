//! A section as the smith names it.

use super::{GrownSpec, SquareSpec};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A section across the bar, as written.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SectionSpec {
    /// The section of the starting bar.
    Stock,
    /// As the segment before ends.
    Same,
    /// A point: only as the end of a taper.
    Point,
    /// A square.
    Square(SquareSpec),
    /// A round of this diameter.
    Round(WrittenLength),
    /// A flat; its width lies toward the smith.
    Flat {
        /// The longer side.
        width: WrittenLength,
        /// The shorter side.
        thickness: WrittenLength,
        /// The radius of its eased edges; sharp where it is left out.
        #[serde(
            default,
            skip_serializing_if = "Option::is_none",
            deserialize_with = "fh_measure::zero_allowed::option"
        )]
        edge_radius: Option<WrittenLength>,
    },
    /// Flat sides with round ends.
    Oval {
        /// The length over both round ends.
        width: WrittenLength,
        /// The distance between the flat sides.
        thickness: WrittenLength,
    },
    /// A hexagon, by its size across flats.
    Hexagon(WrittenLength),
    /// An octagon, by its size across flats.
    Octagon(WrittenLength),
    /// A square standing on its corner, by its side.
    Diamond(WrittenLength),
    /// A half-round, flat side down.
    HalfRound {
        /// The width of its flat side.
        width: WrittenLength,
        /// Its height over the flat side.
        height: WrittenLength,
    },
    /// A chisel edge of this width: only as the end of a taper.
    Edge(WrittenLength),
    /// A flat that is struck down one way and left as it grows the other.
    Grown(GrownSpec),
}

/// The kinds of section, for lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SectionKind {
    /// See [`SectionSpec::Stock`].
    Stock,
    /// See [`SectionSpec::Same`].
    Same,
    /// See [`SectionSpec::Point`].
    Point,
    /// See [`SectionSpec::Square`].
    Square,
    /// See [`SectionSpec::Round`].
    Round,
    /// See [`SectionSpec::Flat`].
    Flat,
    /// See [`SectionSpec::Oval`].
    Oval,
    /// See [`SectionSpec::Hexagon`].
    Hexagon,
    /// See [`SectionSpec::Octagon`].
    Octagon,
    /// See [`SectionSpec::Diamond`].
    Diamond,
    /// See [`SectionSpec::HalfRound`].
    HalfRound,
    /// See [`SectionSpec::Edge`].
    Edge,
    /// See [`SectionSpec::Grown`].
    Grown,
}

impl SectionKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 13] = [
        Self::Stock,
        Self::Same,
        Self::Square,
        Self::Round,
        Self::Flat,
        Self::Oval,
        Self::HalfRound,
        Self::Hexagon,
        Self::Octagon,
        Self::Diamond,
        Self::Grown,
        Self::Point,
        Self::Edge,
    ];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Stock => "stock",
            Self::Same => "same",
            Self::Point => "point",
            Self::Square => "square",
            Self::Round => "round",
            Self::Flat => "flat",
            Self::Oval => "oval",
            Self::Hexagon => "hexagon",
            Self::Octagon => "octagon",
            Self::Diamond => "diamond",
            Self::HalfRound => "half-round",
            Self::Edge => "edge",
            Self::Grown => "as it grows",
        }
    }

    /// Whether a bar can be bought in it.
    pub fn is_stock_shape(self) -> bool {
        !matches!(self, Self::Stock | Self::Same | Self::Point | Self::Edge | Self::Grown)
    }
}

impl SectionSpec {
    /// Which kind this is.
    pub fn kind(&self) -> SectionKind {
        match self {
            Self::Stock => SectionKind::Stock,
            Self::Same => SectionKind::Same,
            Self::Point => SectionKind::Point,
            Self::Square(_) => SectionKind::Square,
            Self::Round(_) => SectionKind::Round,
            Self::Flat { .. } => SectionKind::Flat,
            Self::Oval { .. } => SectionKind::Oval,
            Self::Hexagon(_) => SectionKind::Hexagon,
            Self::Octagon(_) => SectionKind::Octagon,
            Self::Diamond(_) => SectionKind::Diamond,
            Self::HalfRound { .. } => SectionKind::HalfRound,
            Self::Edge(_) => SectionKind::Edge,
            Self::Grown(_) => SectionKind::Grown,
        }
    }

    /// What makes it one bar of a merchant's list: its kind, and its sizes in nm, the greatest first. How far edges are eased,
    /// and which way a bar lies, makes no other bar of it.
    pub fn bar_sizes_nm(&self) -> (SectionKind, Vec<i64>) {
        let nm = |length: &WrittenLength| (length.mm() * 1e6).round() as i64;
        let (kind, mut sizes) = match self {
            Self::Square(square) => (SectionKind::Square, vec![nm(&square.side)]),
            Self::Diamond(side) => (SectionKind::Square, vec![nm(side)]),
            Self::Round(size) | Self::Hexagon(size) | Self::Octagon(size) | Self::Edge(size) => {
                (self.kind(), vec![nm(size)])
            }
            Self::Flat { width, thickness, .. } | Self::Oval { width, thickness } => {
                (self.kind(), vec![nm(width), nm(thickness)])
            }
            Self::HalfRound { width, height } => (self.kind(), vec![nm(width), nm(height)]),
            Self::Stock | Self::Same | Self::Point | Self::Grown(_) => (self.kind(), Vec::new()),
        };
        sizes.sort_unstable_by(|a, b| b.cmp(a));
        (kind, sizes)
    }

    /// The section that it names: its own, or what it grows from.
    pub(crate) fn named_mut(&mut self) -> &mut Self {
        match self {
            Self::Grown(grown) => grown.of.named_mut(),
            own => own,
        }
    }

    /// It in words and sizes: `1/2 in square`, `30 mm × 5 mm flat`.
    pub fn describe(&self) -> String {
        let name = self.kind().name();
        match self {
            Self::Stock => "the stock's section".to_owned(),
            Self::Same => "the section before".to_owned(),
            Self::Point => "a point".to_owned(),
            Self::Square(square) => match square.edge_radius.as_ref().filter(|radius| radius.mm() > 0.0) {
                Some(radius) => format!("{} square, edges eased {}", square.side.text(), radius.text()),
                None => format!("{} square", square.side.text()),
            },
            Self::Flat { width, thickness, edge_radius: Some(radius) } if radius.mm() > 0.0 => {
                format!("{} × {} flat, edges eased {}", width.text(), thickness.text(), radius.text())
            }
            Self::Flat { width, thickness, .. } | Self::Oval { width, thickness } => {
                format!("{} × {} {name}", width.text(), thickness.text())
            }
            Self::Grown(grown) => grown.describe(),
            Self::HalfRound { width, height } => format!("{} × {} {name}", width.text(), height.text()),
            Self::Round(size) | Self::Hexagon(size) | Self::Octagon(size) | Self::Diamond(size) | Self::Edge(size) => {
                format!("{} {name}", size.text())
            }
        }
    }
}
