//! The ladder of a drawn or tapered segment: how long it comes out where the smith stops a little fat or goes a little
//! thin, once the marks are struck. Read with a rule on the hot bar, it tells how far there is still to go.
//!
//! The metal between the marks is kept: `length = volume of the segment / mean area of its section` (constancy of volume).
//! Of a flat, an oval or a half-round the thickness changes and the width is held. Of a taper both ends change by the same
//! step, but an end that is the bar itself, a point and an edge stay as they are. Where nothing else is left to change, the
//! tip does: the smith stops before it has run out. What is drawn down is never left fatter than the bar it is made of.

use super::{Balance, Walk};
use crate::metal::{SectionSize, Shape, in_mm, mm};
use crate::plan::{Form, Plan, PlanUnit};
use uom::si::f64::{Area, Length};
use uom::si::length::{inch, millimeter};

/// How many steps the ladder goes to either side.
const MOST_STEPS: i32 = 4;

/// A difference of areas that is only the arithmetic's, as a share.
const HAIR: f64 = 1e-9;

/// What a segment's length is at each thickness.
#[derive(Clone, Debug, PartialEq)]
pub struct Ladder {
    /// From one rung to the next: 1/32 in or 0.5 mm.
    pub step: Length,
    /// The name of the size that changes: `side`, `diameter`, `thickness` …
    pub measured: &'static str,
    /// Where it is measured: `at its end`; empty where it is all along, or at both ends of a taper.
    pub place: &'static str,
    /// The rungs, the thin ones first.
    pub rungs: Vec<Rung>,
}

/// One rung of a ladder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rung {
    /// How many steps it is fatter than planned; below 0 it is thinner.
    pub steps: i32,
    /// The size that changes; of a taper that changes at both ends, at its start.
    pub size: Length,
    /// That size at the end of a taper that changes at both ends.
    pub end_size: Option<Length>,
    /// How long the segment comes out, forged and still straight.
    pub length: Length,
    /// How much longer that is than planned; below 0 it is shorter.
    pub change: Length,
}

/// The ladder of a segment, counted through the bar; none where it is neither drawn nor tapered, or could not be settled.
pub fn ladder(plan: &Plan, balance: &Balance, bar: usize, segment: usize) -> Option<Ladder> {
    let form = &plan.segment(bar, segment)?.form;
    // What is dressed later is drawn to this length before its dies make it longer.
    let shape = &balance.bars.get(bar)?.segments.get(segment)?.shape_before_dies()?;
    if !matches!(form, Form::Drawn(_) | Form::Taper(_)) {
        return None;
    }
    // In a branch of a split the bar is the branch as it was cut.
    let stock = Walk::new(plan, plan.bars.get(bar)?).surroundings(segment).stock;
    let moving = Moving::new(shape, stock)?;
    let step = step(plan.units.length);
    let most_area = stock.area() * (1.0 + HAIR);
    let upset = shape.area_at(0.0).max(shape.area_at(1.0)) > most_area;
    let most_area = (!upset).then_some(most_area);
    let rungs: Vec<_> =
        (-MOST_STEPS..=MOST_STEPS).filter_map(|steps| moving.rung(shape, steps, step, most_area)).collect();
    Some(Ladder { step, measured: measured(moving.section()), place: moving.place(), rungs })
        .filter(|ladder| ladder.rungs.len() > 1)
}

fn step(unit: PlanUnit) -> Length {
    match unit {
        PlanUnit::Inch => Length::new::<inch>(1.0 / 32.0),
        PlanUnit::Millimeter => Length::new::<millimeter>(0.5),
    }
}

/// Which sections of a shape change.
enum Moving {
    /// The one section of a drawn length.
    Whole(SectionSize),
    /// The ends of a taper, those that change marked.
    Ends { from: (SectionSize, bool), to: (SectionSize, bool) },
}

impl Moving {
    fn new(shape: &Shape, stock: SectionSize) -> Option<Self> {
        match shape {
            Shape::Prism { section, .. } => Some(Self::Whole(*section)),
            Shape::Taper { from, to, .. } => {
                let changes = |end: &SectionSize| !end.is_end() && *end != stock;
                let (first, last) = (changes(from), changes(to));
                // With nothing else to change, what should run out is left blunt.
                let blunt = !first && to.is_end();
                (first || last || blunt).then_some(Self::Ends { from: (*from, first), to: (*to, last || blunt) })
            }
            _ => None,
        }
    }

    /// A section that changes, to name its size by.
    fn section(&self) -> SectionSize {
        match self {
            Self::Whole(section) => *section,
            Self::Ends { from: (_, false), to: (to, _) } if !to.is_end() => *to,
            Self::Ends { from: (from, _), .. } => *from,
        }
    }

    /// Where the size is measured.
    fn place(&self) -> &'static str {
        match self {
            Self::Ends { from: (_, true), to: (to, false) } if to.is_end() => "at its root",
            Self::Ends { from: (_, true), to: (_, false) } => "at its start",
            Self::Ends { from: (_, false), to: (to, true) } if to.is_end() => "at its tip",
            Self::Ends { from: (_, false), .. } => "at its end",
            _ => "",
        }
    }

    /// The sizes that change, of a shape that this became.
    fn sizes(&self, shape: &Shape) -> Option<(Length, Option<Length>)> {
        match (self, shape) {
            (Self::Ends { from: (_, true), to: (_, true) }, Shape::Taper { from, to, .. }) => {
                Some((thickness(*from), Some(thickness(*to))))
            }
            (Self::Ends { from: (_, true), .. }, Shape::Taper { from, .. }) => Some((thickness(*from), None)),
            (_, Shape::Taper { to, .. }) => Some((thickness(*to), None)),
            (_, Shape::Prism { section, .. }) => Some((thickness(*section), None)),
            _ => None,
        }
    }

    /// The shape so many steps fatter, with the metal of the planned one; none where a size would be used up, or a section
    /// be larger than the bar's.
    fn rung(&self, planned: &Shape, steps: i32, step: Length, most_area: Option<Area>) -> Option<Rung> {
        let more = step * f64::from(steps);
        let shape = match (self, planned) {
            (Self::Whole(section), Shape::Prism { length, .. }) => {
                Shape::Prism { section: fatter(*section, *section, more)?, length: *length }
            }
            (Self::Ends { from: (from, first), to: (to, last) }, Shape::Taper { runout, length, .. }) => Shape::Taper {
                from: if *first { fatter(*from, *to, more)? } else { *from },
                to: if *last { fatter(*to, *from, more)? } else { *to },
                runout: *runout,
                length: *length,
            },
            _ => return None,
        };
        let length = planned.length() * (planned.volume() / shape.volume()).value;
        if most_area.is_some_and(|most| shape.area_at(0.0).max(shape.area_at(1.0)) > most) {
            return None;
        }
        let (size, end_size) = self.sizes(&shape)?;
        in_mm(length).is_finite().then_some(Rung { steps, size, end_size, length, change: length - planned.length() })
    }
}

/// A section so much fatter. A point becomes blunt in the shape of the section at the other end, an edge as wide as it is.
pub(super) fn fatter(section: SectionSize, other: SectionSize, more: Length) -> Option<SectionSize> {
    let size = thickness(section) + more;
    if section.is_end() && more == mm(0.0) {
        return Some(section);
    }
    let blunter_than_other = section.is_end() && size >= thickness(other);
    if in_mm(size) <= 0.0 || blunter_than_other {
        return None;
    }
    match section {
        SectionSize::Point => with_thickness(other, size, (size / thickness(other)).value),
        SectionSize::Edge { width } => Some(SectionSize::flat(width, size)),
        _ => with_thickness(section, size, 1.0),
    }
}

/// The size that the smith measures with calipers: across the thickness.
pub(super) fn thickness(section: SectionSize) -> Length {
    match section {
        SectionSize::Point | SectionSize::Edge { .. } => mm(0.0),
        SectionSize::Square { side, .. } | SectionSize::Diamond { side } => side,
        SectionSize::Round { diameter } => diameter,
        SectionSize::Flat { thickness, .. } | SectionSize::Oval { thickness, .. } => thickness,
        SectionSize::Hexagon { across_flats } | SectionSize::Octagon { across_flats } => across_flats,
        SectionSize::HalfRound { height, .. } => height,
    }
}

/// A section of another thickness, its width times a ratio.
fn with_thickness(section: SectionSize, size: Length, wider: f64) -> Option<SectionSize> {
    Some(match section {
        SectionSize::Point | SectionSize::Edge { .. } => return None,
        SectionSize::Square { edge_radius, .. } => SectionSize::Square { side: size, edge_radius },
        SectionSize::Diamond { .. } => SectionSize::Diamond { side: size },
        SectionSize::Round { .. } => SectionSize::Round { diameter: size },
        SectionSize::Flat { width, edge_radius, .. } => {
            SectionSize::Flat { width: width * wider, thickness: size, edge_radius }
        }
        SectionSize::Oval { width, .. } => SectionSize::Oval { width: width * wider, thickness: size },
        SectionSize::Hexagon { .. } => SectionSize::Hexagon { across_flats: size },
        SectionSize::Octagon { .. } => SectionSize::Octagon { across_flats: size },
        SectionSize::HalfRound { width, .. } => SectionSize::HalfRound { width: width * wider, height: size },
    })
}

/// The name of the size that changes.
fn measured(section: SectionSize) -> &'static str {
    match section {
        SectionSize::Point | SectionSize::Edge { .. } => "thickness",
        SectionSize::Square { .. } | SectionSize::Diamond { .. } => "side",
        SectionSize::Round { .. } => "diameter",
        SectionSize::Flat { .. } | SectionSize::Oval { .. } => "thickness",
        SectionSize::Hexagon { .. } | SectionSize::Octagon { .. } => "across flats",
        SectionSize::HalfRound { .. } => "height",
    }
}
