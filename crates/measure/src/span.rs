//! What may stand behind a size and make a range of it: `to 9/32 in`, `± 0.5 mm`, `+0.5 -0 mm`.

use crate::error::Problem;
use crate::exact::Exact;
use crate::length_range::LengthRange;
use crate::length_unit::LengthUnit;
use crate::reader::Reader;
use crate::scan::Kind;
use crate::size::{Size, is_to};

/// What stands behind a size.
pub(crate) enum Span {
    /// The high end; the size before it is the low one.
    To(Size),
    /// As much below as above.
    Around(Size),
    /// So much above and so much below.
    Limits { above: Size, below: Size },
}

/// The two ends of a range and the middle between them, in millimetres.
pub(crate) struct Ends {
    pub(crate) lowest: Exact,
    pub(crate) middle: Exact,
    pub(crate) highest: Exact,
}

impl Span {
    /// Reads what stands behind a size; most sizes are no range.
    pub(crate) fn read(reader: &mut Reader<'_>) -> Result<Option<Self>, Problem> {
        let Some(kind) = reader.peek() else { return Ok(None) };
        if is_to(kind) {
            reader.take();
            return Size::read(reader).map(Self::To).map(Some);
        }
        match kind {
            Kind::PlusMinus => {
                reader.take();
                tolerance(reader).map(Self::Around).map(Some)
            }
            Kind::Plus | Kind::Minus => limits(reader),
            _ => Ok(None),
        }
    }

    /// The unit that a bare number before or in it takes: that of the size that has one, the last first.
    pub(crate) fn unit_beside(&self) -> Option<LengthUnit> {
        match self {
            Self::To(size) | Self::Around(size) => size.unit_beside(),
            Self::Limits { above, below } => below.unit_beside().or_else(|| above.unit_beside()),
        }
    }

    /// The unit that it names last.
    pub(crate) fn unit(&self) -> Option<LengthUnit> {
        match self {
            Self::To(size) | Self::Around(size) => size.unit(),
            Self::Limits { above, below } => below.unit().or_else(|| above.unit()),
        }
    }

    /// The character that it starts at.
    pub(crate) fn at(&self) -> usize {
        match self {
            Self::To(size) | Self::Around(size) => size.at,
            Self::Limits { above, below } => above.at.min(below.at),
        }
    }

    /// Whether it names the high end itself.
    pub(crate) fn is_to(&self) -> bool {
        matches!(self, Self::To(_))
    }

    /// The ends of the range that a size of so many millimetres begins.
    pub(crate) fn ends(
        &self,
        size: Exact,
        unit_of_bare: Option<LengthUnit>,
        range: LengthRange,
    ) -> Result<Ends, Problem> {
        let (lowest, highest) = match self {
            Self::To(end) => (Some(size), Some(end.mm(unit_of_bare, range)?)),
            Self::Around(end) => {
                let tolerance = end.mm(unit_of_bare, range)?;
                (size.plus(tolerance.negated()), size.plus(tolerance))
            }
            Self::Limits { above, below } => {
                let (above, below) = (above.mm(unit_of_bare, range)?, below.mm(unit_of_bare, range)?);
                (size.plus(below.negated()), size.plus(above))
            }
        };
        let ends = lowest.zip(highest).and_then(|(lowest, highest)| Ends::between(lowest, highest));
        let ends = ends.ok_or_else(|| Problem::new(self.at(), "this is too large or too small"))?;
        if ends.lowest.value() < ends.highest.value() { Ok(ends) } else { Err(self.no_room()) }
    }

    fn no_room(&self) -> Problem {
        let words = match self {
            Self::To(_) => "a range runs from the smaller size to the greater one",
            Self::Around(_) | Self::Limits { .. } => "a tolerance greater than 0 belongs here",
        };
        Problem::new(self.at(), words)
    }
}

impl Ends {
    /// None where the fractions grow beyond all measure.
    fn between(lowest: Exact, highest: Exact) -> Option<Self> {
        let middle = lowest.plus(highest)?.times(Exact::new(1, 2)?)?;
        Some(Self { lowest, middle, highest })
    }
}

/// A size that is a tolerance has no sign of its own.
fn tolerance(reader: &mut Reader<'_>) -> Result<Size, Problem> {
    if matches!(reader.peek(), Some(Kind::Plus | Kind::Minus)) {
        return Err(Problem::new(reader.at(), "a tolerance has no sign of its own"));
    }
    Size::read(reader)
}

/// `+0.5 -0` in either order. A sign with a space behind it is that of a sum, and sums are refused.
fn limits(reader: &mut Reader<'_>) -> Result<Option<Span>, Problem> {
    let sum = Problem::new(reader.at(), "sums are not worked out here; a range is written with “to” or “±”");
    let Some((first_plus, first)) = signed(reader)? else { return Err(sum) };
    let Some((second_plus, second)) = signed(reader)? else { return Err(sum) };
    match (first_plus, second_plus) {
        (true, false) => Ok(Some(Span::Limits { above: first, below: second })),
        (false, true) => Ok(Some(Span::Limits { above: second, below: first })),
        _ => Err(sum),
    }
}

/// A size with its sign close before it: whether the sign is a plus, and the size.
fn signed(reader: &mut Reader<'_>) -> Result<Option<(bool, Size)>, Problem> {
    if !reader.sign_leans() {
        return Ok(None);
    }
    let plus = !reader.sign();
    tolerance(reader).map(|size| Some((plus, size)))
}
