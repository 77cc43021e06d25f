//! Writing a settled size back into the plan, in the plan's unit.

use crate::balance::{Rolled, Settled};
use crate::metal::{Outline, SectionSize, in_mm, mm};
use crate::plan::{Bend, Form, Gives, OutlineSpec, SectionSpec, Segment, SizeName, SquareSpec, ThicknessSpec};
use fh_measure::{LengthRange, LengthUnit, WrittenLength, format_decimal};
use uom::si::f64::Length;

/// Writes the sizes that gave into a segment; the names of the sizes that were written. None where one cannot be written.
///
/// A size that was a range keeps its tolerance about its new middle.
pub(super) fn rewrite(segment: &mut Segment, gives: Gives, settled: &Settled, pen: Pen) -> Option<Vec<SizeName>> {
    let before = ranges(segment);
    let names = rewrite_sizes(segment, gives, settled, pen)?;
    keep_tolerances(segment, &before);
    Some(names)
}

/// Every length of a segment where one of them is a range; else nothing.
fn ranges(segment: &Segment) -> Vec<WrittenLength> {
    let mut any = false;
    segment.lengths(&mut |length| any |= length.is_range());
    let mut all = Vec::new();
    if any {
        segment.lengths(&mut |length| all.push(length.clone()));
    }
    all
}

/// Gives the lengths that were ranges their tolerance back, and their text where they did not change.
fn keep_tolerances(segment: &mut Segment, before: &[WrittenLength]) {
    let mut count = 0;
    segment.lengths(&mut |_| count += 1);
    if count != before.len() {
        return;
    }
    let mut old = before.iter();
    segment.lengths_mut(&mut |length| {
        let Some(old) = old.next().filter(|old| old.is_range() && !length.is_range()) else { return };
        if (old.mm() - length.mm()).abs() < 1e-6 {
            *length = old.clone();
        } else if let Ok(range) = length.with_tolerance_mm(old.tolerance_mm(), LengthRange::AboveZero) {
            *length = range;
        }
    });
}

fn rewrite_sizes(segment: &mut Segment, gives: Gives, settled: &Settled, pen: Pen) -> Option<Vec<SizeName>> {
    let shape = settled.shape.as_ref()?;
    if follows_from_socket(segment, gives) || (gives == Gives::Length && segment.form.one().length_follows()) {
        return rewrite_bend(segment, settled, pen);
    }
    segment.form.one_mut().rewrite(gives, shape, pen)?;
    Some(vec![segment.form.one().given_name(gives)?])
}

/// Whether the size that gives is the one that follows from the socket.
fn follows_from_socket(segment: &Segment, gives: Gives) -> bool {
    if !matches!(segment.form, Form::Flag(_)) {
        return false;
    }
    match (segment.form.one().rolled(), gives) {
        (Rolled::LengthFollows, Gives::Length) | (Rolled::WidthFollows, Gives::Width) => true,
        (Rolled::Unknown, gives) => matches!(gives, Gives::Length | Gives::Width),
        _ => false,
    }
}

/// The bend's radius or diameter takes the place of the length that follows from it.
fn rewrite_bend(segment: &mut Segment, settled: &Settled, pen: Pen) -> Option<Vec<SizeName>> {
    let size = |name: SizeName| settled.derived.iter().find(|derived| derived.name == name)?.length;
    match segment.bend.as_mut()? {
        Bend::Curve { inside_radius, .. } => {
            *inside_radius = Some(pen.write_in(size(SizeName::InsideRadius)?, LengthRange::ZeroOrMore)?);
            Some(vec![SizeName::InsideRadius])
        }
        Bend::Ring { inside_diameter, .. } => {
            *inside_diameter = Some(pen.write(size(SizeName::InsideDiameter)?)?);
            Some(vec![SizeName::InsideDiameter])
        }
        Bend::Scroll { outer_radius, .. } => {
            *outer_radius = Some(pen.write(size(SizeName::OuterRadius)?)?);
            Some(vec![SizeName::OuterRadius])
        }
        Bend::Socket { mandrel, .. } => {
            *mandrel = Some(pen.write(size(SizeName::Mandrel)?)?);
            Some(vec![SizeName::Mandrel])
        }
        Bend::Corner { .. } | Bend::Twist { .. } => None,
    }
}

/// A size of a segment as it is written now, by its name.
pub(super) fn size_words(segment: &Segment, name: SizeName) -> String {
    let mut of_bend = None;
    if let Some(bend) = &segment.bend {
        bend.sizes(&mut |found, length| {
            if found == name {
                of_bend = Some(length.text().to_owned());
            }
        });
    }
    of_bend.unwrap_or_else(|| segment.form.one().given_words(name))
}

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

    fn write_in(self, length: Length, range: LengthRange) -> Option<WrittenLength> {
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
            (OutlineSpec::Polygon(_), Outline::Polygon(corners)) => {
                let write = |coordinate: f64| self.write_in(mm(coordinate), LengthRange::Any);
                let corners = corners.iter().map(|[along, across]| Some([write(*along)?, write(*across)?]));
                OutlineSpec::Polygon(corners.collect::<Option<Vec<_>>>()?)
            }
            _ => return None,
        })
    }
}
