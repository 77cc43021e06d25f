//! The outline of a flag as written.

use super::Corners;
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The outline of a flag, seen from above, its root where it joins the bar.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum OutlineSpec {
    /// A rectangle. Rolled to a socket, the size that is rolled up may be left out: it follows from the mandrel.
    Rectangle {
        /// Along the bar.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        length: Option<WrittenLength>,
        /// Across the bar.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        width: Option<WrittenLength>,
    },
    /// A trapezoid: a fishtail where the tip is wider than the root.
    Trapezoid {
        /// Along the bar.
        length: WrittenLength,
        /// The width at the root.
        root: WrittenLength,
        /// The width at the tip.
        tip: WrittenLength,
    },
    /// A disc.
    Disc {
        /// Its diameter.
        diameter: WrittenLength,
    },
    /// An ellipse.
    Ellipse {
        /// Along the bar.
        length: WrittenLength,
        /// Across the bar.
        width: WrittenLength,
    },
    /// Two equal arcs through both tips.
    Leaf {
        /// From tip to tip.
        length: WrittenLength,
        /// At its widest.
        width: WrittenLength,
    },
    /// Straight sides and round ends, sizes over all.
    Stadium {
        /// Along the bar.
        length: WrittenLength,
        /// Across the bar.
        width: WrittenLength,
    },
    /// Any simple outline by its corners, with straight sides and arcs between them.
    Polygon(Corners),
}

/// The kinds of outline, for lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum OutlineKind {
    /// See [`OutlineSpec::Rectangle`].
    Rectangle,
    /// See [`OutlineSpec::Trapezoid`].
    Trapezoid,
    /// See [`OutlineSpec::Disc`].
    Disc,
    /// See [`OutlineSpec::Ellipse`].
    Ellipse,
    /// See [`OutlineSpec::Leaf`].
    Leaf,
    /// See [`OutlineSpec::Stadium`].
    Stadium,
    /// See [`OutlineSpec::Polygon`].
    Polygon,
}

impl OutlineKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 7] =
        [Self::Rectangle, Self::Trapezoid, Self::Disc, Self::Ellipse, Self::Leaf, Self::Stadium, Self::Polygon];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Rectangle => "rectangle",
            Self::Trapezoid => "fishtail",
            Self::Disc => "disc",
            Self::Ellipse => "ellipse",
            Self::Leaf => "leaf",
            Self::Stadium => "stadium",
            Self::Polygon => "polygon",
        }
    }
}

impl OutlineSpec {
    /// Which kind this is.
    pub fn kind(&self) -> OutlineKind {
        match self {
            Self::Rectangle { .. } => OutlineKind::Rectangle,
            Self::Trapezoid { .. } => OutlineKind::Trapezoid,
            Self::Disc { .. } => OutlineKind::Disc,
            Self::Ellipse { .. } => OutlineKind::Ellipse,
            Self::Leaf { .. } => OutlineKind::Leaf,
            Self::Stadium { .. } => OutlineKind::Stadium,
            Self::Polygon(_) => OutlineKind::Polygon,
        }
    }

    /// The length along the bar as written, where one size says it.
    pub fn length(&self) -> Option<&WrittenLength> {
        match self {
            Self::Rectangle { length, .. } => length.as_ref(),
            Self::Trapezoid { length, .. }
            | Self::Ellipse { length, .. }
            | Self::Leaf { length, .. }
            | Self::Stadium { length, .. } => Some(length),
            Self::Disc { diameter } => Some(diameter),
            Self::Polygon(_) => None,
        }
    }

    /// It in words and sizes: `leaf 60 mm × 24 mm`.
    pub fn describe(&self) -> String {
        let name = self.kind().name();
        match self {
            Self::Rectangle { length, width } => {
                let size = |size: &Option<WrittenLength>| {
                    size.as_ref().map_or_else(|| "…".to_owned(), |size| size.text().to_owned())
                };
                format!("{name} {} × {}", size(length), size(width))
            }
            Self::Ellipse { length, width } | Self::Leaf { length, width } | Self::Stadium { length, width } => {
                format!("{name} {} × {}", length.text(), width.text())
            }
            Self::Trapezoid { length, root, tip } => {
                format!("{name} {} long, {} to {}", length.text(), root.text(), tip.text())
            }
            Self::Disc { diameter } => format!("{name} Ø {}", diameter.text()),
            Self::Polygon(Corners(corners)) => format!("{name} of {} corners", corners.len()),
        }
    }
}
