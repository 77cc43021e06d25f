//! Writing settled sizes as a smith writes them.

use crate::metal::{Outline, OutlineCorner, SectionSize, in_mm, mm};
use crate::plan::{CornerSpec, Corners, OutlineSpec, SectionSpec, SquareSpec, ThicknessSpec};
use fh_measure::{LengthRange, LengthUnit, WrittenLength, format_decimal};
use uom::si::f64::Length;

/// Writes settled lengths in a unit.
#[derive(Clone, Copy)]
pub(crate) struct Pen {
    /// The unit.
    pub(crate) unit: LengthUnit,
    /// How many decimals more than usual: a size that much bar hangs on is written more finely.
    pub(crate) finer: usize,
}

impl Pen {
    /// A size above 0.
    pub(crate) fn write(self, length: Length) -> Option<WrittenLength> {
        self.write_in(length, LengthRange::AboveZero)
    }

    /// A size in a range.
    pub(crate) fn write_in(self, length: Length, range: LengthRange) -> Option<WrittenLength> {
        let usual = match self.unit {
            LengthUnit::Millimeter => 3,
            _ => 4,
        };
        match self.finer {
            0 => WrittenLength::from_mm(in_mm(length), self.unit, range).ok(),
            finer => WrittenLength::parse(&format_decimal(in_mm(length), self.unit, usual + finer), None, range).ok(),
        }
    }

    /// A size that did not change keeps its text.
    fn keep(self, written: &WrittenLength, length: Length) -> Option<WrittenLength> {
        if (written.mm() - in_mm(length)).abs() < 1e-6 { Some(written.clone()) } else { self.write(length) }
    }

    /// A section with its settled sizes.
    pub(crate) fn section(self, size: SectionSize) -> Option<SectionSpec> {
        let eased = |radius: Length| {
            if in_mm(radius) > 0.0 { self.write(radius).map(Some) } else { Some(None) }
        };
        Some(match size {
            SectionSize::Point => SectionSpec::Point,
            SectionSize::Square { side, edge_radius } => {
                SectionSpec::Square(SquareSpec { side: self.write(side)?, edge_radius: eased(edge_radius)? })
            }
            SectionSize::Round { diameter } => SectionSpec::Round(self.write(diameter)?),
            SectionSize::Flat { width, thickness, edge_radius } => SectionSpec::Flat {
                width: self.write(width)?,
                thickness: self.write(thickness)?,
                edge_radius: eased(edge_radius)?,
            },
            SectionSize::Oval { width, thickness } => {
                SectionSpec::Oval { width: self.write(width)?, thickness: self.write(thickness)? }
            }
            SectionSize::Hexagon { across_flats } => SectionSpec::Hexagon(self.write(across_flats)?),
            SectionSize::Octagon { across_flats } => SectionSpec::Octagon(self.write(across_flats)?),
            SectionSize::Diamond { side } => SectionSpec::Diamond(self.write(side)?),
            SectionSize::HalfRound { width, height } => {
                SectionSpec::HalfRound { width: self.write(width)?, height: self.write(height)? }
            }
            SectionSize::Edge { width } => SectionSpec::Edge(self.write(width)?),
        })
    }

    /// A thickness with its settled sizes, even or tapered as it was.
    pub(crate) fn thickness(self, written: &ThicknessSpec, root: Length, tip: Length) -> Option<ThicknessSpec> {
        Some(match written {
            ThicknessSpec::Even(_) => ThicknessSpec::Even(self.write(root)?),
            ThicknessSpec::Tapered { .. } => ThicknessSpec::Tapered { root: self.write(root)?, tip: self.write(tip)? },
        })
    }

    /// An outline with its settled sizes.
    pub(crate) fn outline(self, written: &OutlineSpec, size: &Outline) -> Option<OutlineSpec> {
        let size = size.bare();
        let both = |length, width| Some((self.keep(length, size.length())?, self.keep(width, size.width())?));
        Some(match (written, size) {
            (OutlineSpec::Rectangle { length, width }, _) => {
                // A size that follows stays left out.
                let keep = |written: &Option<WrittenLength>, size| {
                    written.as_ref().map_or(Some(None), |written| self.keep(written, size).map(Some))
                };
                OutlineSpec::Rectangle { length: keep(length, size.length())?, width: keep(width, size.width())? }
            }
            (OutlineSpec::Ellipse { length, width }, _) => {
                both(length, width).map(|(length, width)| OutlineSpec::Ellipse { length, width })?
            }
            (OutlineSpec::Leaf { length, width }, _) => {
                both(length, width).map(|(length, width)| OutlineSpec::Leaf { length, width })?
            }
            (OutlineSpec::Stadium { length, width }, _) => {
                both(length, width).map(|(length, width)| OutlineSpec::Stadium { length, width })?
            }
            (OutlineSpec::Disc { diameter }, _) => OutlineSpec::Disc { diameter: self.keep(diameter, size.length())? },
            (OutlineSpec::Trapezoid { length, root, tip }, Outline::Trapezoid { length: l, root: r, tip: t }) => {
                OutlineSpec::Trapezoid {
                    length: self.keep(length, *l)?,
                    root: self.keep(root, *r)?,
                    tip: self.keep(tip, *t)?,
                }
            }
            (OutlineSpec::Polygon(Corners(written)), Outline::Polygon(corners)) => {
                let write = |coordinate: f64| self.write_in(mm(coordinate), LengthRange::Any);
                let corner = |(written, size): (&CornerSpec, &OutlineCorner)| {
                    Some(CornerSpec { at: [write(size.at[0])?, write(size.at[1])?], arc: written.arc.clone() })
                };
                OutlineSpec::Polygon(Corners(written.iter().zip(corners).map(corner).collect::<Option<Vec<_>>>()?))
            }
            _ => return None,
        })
    }
}
