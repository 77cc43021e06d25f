//! Where the middle of a hole lies in its part, as a drawing shows it: each of its places can be dragged and typed there.

use super::Refusal;
use crate::balance::SegmentBalance;
use crate::forms::{Flag, Hole};
use crate::metal::{Shape, in_mm};
use crate::plan::{Form, PlateHole, Segment};
use fh_measure::{LengthRange, WrittenLength};

/// Which way a hole's place is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum HoleWay {
    /// Along the bar, from the root of its part.
    Along,
    /// Across the bar, away from you from the base line; a boss has its hole on it.
    Across,
}

impl HoleWay {
    /// The rule of what may be typed.
    pub fn range(self) -> LengthRange {
        match self {
            Self::Along => LengthRange::AboveZero,
            Self::Across => LengthRange::Any,
        }
    }
}

/// A place of a hole's middle: the hole, counted from 0, and which way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct HolePlace {
    /// The hole.
    pub hole: usize,
    /// Which way.
    pub way: HoleWay,
}

impl HolePlace {
    /// It as it is written; none where it is left out, or there is no such hole.
    pub fn written(self, segment: &Segment) -> Option<&WrittenLength> {
        match (&segment.form, self.way) {
            (Form::Flag(Flag { holes, .. }), HoleWay::Along) => holes.get(self.hole).map(|hole| &hole.at),
            (Form::Flag(Flag { holes, .. }), HoleWay::Across) => holes.get(self.hole)?.across.as_ref(),
            (Form::Hole(Hole { at, .. }), HoleWay::Along) if self.hole == 0 => at.as_ref(),
            _ => None,
        }
    }
}

/// The middle of every hole of a part, in mm: along the bar from its root, and across it where it may be moved across.
pub fn hole_middles_mm(balance: &SegmentBalance) -> Vec<(f64, Option<f64>)> {
    match &balance.shape {
        Some(Shape::Hole { at, .. }) => vec![(in_mm(*at), None)],
        Some(shape) => shape.plate_holes().iter().map(|hole| (in_mm(hole.at), Some(in_mm(hole.across)))).collect(),
        None => Vec::new(),
    }
}

/// A hole of a part put elsewhere; a way that is none stays as it was written.
#[derive(Clone, Debug, PartialEq)]
pub struct HoleMove {
    /// The hole, counted from 0.
    pub hole: usize,
    /// Along the bar from the root of its part.
    pub along: Option<WrittenLength>,
    /// Across the bar from the base line; 0 is left out.
    pub across: Option<WrittenLength>,
}

impl HoleMove {
    /// One way only.
    pub fn one(place: HolePlace, to: WrittenLength) -> Self {
        let (along, across) = match place.way {
            HoleWay::Along => (Some(to), None),
            HoleWay::Across => (None, Some(to)),
        };
        Self { hole: place.hole, along, across }
    }

    /// The part after it.
    pub(super) fn moved(&self, before: &Segment) -> Result<Segment, Refusal> {
        if self.along.as_ref().is_some_and(|along| along.mm() <= 0.0) {
            return Err(Refusal::CannotBe("its middle would lie before the root of its part".to_owned()));
        }
        let mut next = before.clone();
        match &mut next.form {
            Form::Flag(Flag { holes, .. }) => {
                self.in_plate(holes.get_mut(self.hole).ok_or(Refusal::NoSuchPlace)?);
            }
            Form::Hole(Hole { at, .. }) if self.hole == 0 && self.across.is_none() => {
                if let Some(along) = &self.along {
                    *at = Some(along.clone());
                }
            }
            _ => return Err(Refusal::NoSuchPlace),
        }
        Ok(next)
    }

    fn in_plate(&self, hole: &mut PlateHole) {
        if let Some(along) = &self.along {
            hole.at = along.clone();
        }
        if let Some(across) = &self.across {
            hole.across = Some(across.clone()).filter(|across| across.mm() != 0.0);
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::edit::{Edit, PartChange};
    use crate::file;
    use crate::plan::Plan;

    const PLATE: &str = r#"{ "flag": { "outline": { "rectangle": { "length": "60 mm", "width": "40 mm" } },
        "thickness": "4 mm", "holes": [ { "hole": { "round": "5 mm" }, "made": "drilled", "at": "12 mm" },
        { "hole": { "round": "5 mm" }, "made": "drilled", "at": "40 mm", "across": "-8 mm" } ] } }"#;
    const BOSS: &str = r#"{ "hole": { "outline": { "disc": { "diameter": "30 mm" } }, "thickness": "8 mm",
        "hole": { "round": "10 mm" }, "made": "punched" } }"#;

    fn plan(form: &str) -> Plan {
        let plan = format!(
            r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{{ "name": "bar",
            "stock": {{ "square": "12 mm" }}, "segments": [{{ "name": "part", "form": {form} }}] }}] }}"#
        );
        file::read(plan.as_bytes()).unwrap()
    }

    fn moved(plan: &Plan, hole: usize, along: Option<&str>, across: Option<&str>) -> Result<Segment, Refusal> {
        let size = |text: &str| WrittenLength::parse(text, None, LengthRange::Any).unwrap();
        let change = PartChange::Hole(HoleMove { hole, along: along.map(size), across: across.map(size) });
        let (next, _) = Edit::ChangePart { bar: 0, at: 0, change }.applied(plan)?;
        Ok(next.bars[0].segments[0].clone())
    }

    fn places(segment: &Segment, hole: usize) -> [Option<String>; 2] {
        let text = |way| HolePlace { hole, way }.written(segment).map(|length| length.text().to_owned());
        [text(HoleWay::Along), text(HoleWay::Across)]
    }

    #[test]
    fn a_hole_is_put_along_and_across_and_the_others_stay() {
        let next = moved(&plan(PLATE), 1, Some("35 mm"), Some("6.5 mm")).unwrap();
        assert_eq!(places(&next, 1), [Some("35 mm".to_owned()), Some("6.5 mm".to_owned())]);
        assert_eq!(places(&next, 0), [Some("12 mm".to_owned()), None]);
        // On the base line it is left out.
        let next = moved(&plan(PLATE), 1, None, Some("0 mm")).unwrap();
        assert_eq!(places(&next, 1), [Some("40 mm".to_owned()), None]);
    }

    #[test]
    fn the_hole_of_a_boss_goes_along_it_only() {
        let next = moved(&plan(BOSS), 0, Some("13 mm"), None).unwrap();
        assert_eq!(places(&next, 0), [Some("13 mm".to_owned()), None]);
        assert_eq!(moved(&plan(BOSS), 0, None, Some("2 mm")).err(), Some(Refusal::NoSuchPlace));
    }

    #[test]
    fn a_hole_that_is_not_there_is_not_moved_nor_one_before_its_root() {
        assert_eq!(moved(&plan(PLATE), 2, Some("10 mm"), None).err(), Some(Refusal::NoSuchPlace));
        let shank = plan(r#"{ "plain": { "length": "60 mm" } }"#);
        assert_eq!(moved(&shank, 0, Some("10 mm"), None).err(), Some(Refusal::NoSuchPlace));
        assert!(moved(&plan(PLATE), 0, Some("-4 mm"), None).is_err());
    }
}
