//! A segment's sizes as numbers, before the bend's ties are settled.

use super::trouble::Trouble;
use crate::metal::{CornerSize, Outline, Runout, SectionSize, Shape, mm};
use crate::plan::{Bend, Form, Gives, OutlineSpec, SectionSpec, Segment, ThicknessSpec};
use fh_measure::{WrittenAngle, WrittenLength};
use uom::si::f64::Length;

/// What a segment finds when it is worked out: the bar's stock and how the segment before ends.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Surroundings {
    /// The starting bar.
    pub(crate) stock: SectionSize,
    /// How the segment before ends.
    pub(crate) before: SectionSize,
}

/// A segment as numbers. The shape's length counts only where `length_given`.
#[derive(Clone, Debug)]
pub(crate) struct Draft {
    pub(crate) shape: Shape,
    pub(crate) length_given: bool,
    pub(crate) bend: Option<BendSize>,
    /// Whether it is left as stock: its section is not its own to give.
    pub(crate) as_stock: bool,
}

/// A bend as numbers; what is none follows.
#[derive(Clone, Copy, Debug)]
pub(crate) enum BendSize {
    Curve { angle: Option<f64>, inside_radius: Option<Length>, side: f64 },
    Ring { inside_diameter: Option<Length>, sweep: f64, side: f64 },
    Corner { angle: f64, inside_radius: Length, side: f64 },
}

impl Draft {
    /// The numbers of a segment.
    pub(crate) fn new(segment: &Segment, around: Surroundings) -> Self {
        let (shape, length_given) = draft_shape(&segment.form, around);
        let bend = segment.bend.as_ref().map(bend_size);
        let as_stock = segment.form.is_as_stock();
        Self { shape, length_given, bend, as_stock }
    }

    /// It with the size that gives multiplied.
    ///
    /// Where the length follows from the bend, a length that gives takes the bend's radius or diameter with it. Where no
    /// length is written at all, the factor counts millimetres.
    pub(crate) fn scaled(&self, gives: Gives, factor: f64) -> Result<Self, Trouble> {
        if self.as_stock && gives != Gives::Length {
            return Err(Trouble::NothingGives);
        }
        if gives != Gives::Length || self.length_given {
            let shape = self.shape.scaled(gives, factor).ok_or(Trouble::NothingGives)?;
            return Ok(Self { shape, ..self.clone() });
        }
        let whole = match self.bend {
            None => self.shape.with_length(mm(1.0)),
            Some(_) => self.settle().shape,
        };
        let shape = whole.ok_or(Trouble::NothingGives)?;
        let shape = shape.scaled(gives, factor).ok_or(Trouble::NothingGives)?;
        let bend = self.bend.map(BendSize::freed);
        Ok(Self { shape, length_given: true, bend, as_stock: self.as_stock })
    }
}

impl BendSize {
    /// It with its radius or diameter left to follow.
    fn freed(self) -> Self {
        match self {
            Self::Curve { angle, side, .. } => Self::Curve { angle, inside_radius: None, side },
            Self::Ring { sweep, side, .. } => Self::Ring { inside_diameter: None, sweep, side },
            Self::Corner { .. } => self,
        }
    }
}

/// A section with `stock` and `same` replaced by what they stand for.
pub(crate) fn section_size(spec: &SectionSpec, around: Surroundings) -> SectionSize {
    match spec {
        SectionSpec::Stock => around.stock,
        SectionSpec::Same => around.before,
        SectionSpec::Point => SectionSize::Point,
        SectionSpec::Square(square) => {
            SectionSize::Square { side: square.side.length(), edge_radius: or_zero(square.edge_radius.as_ref()) }
        }
        SectionSpec::Round(diameter) => SectionSize::Round { diameter: diameter.length() },
        SectionSpec::Flat { width, thickness, edge_radius } => SectionSize::Flat {
            width: width.length(),
            thickness: thickness.length(),
            edge_radius: or_zero(edge_radius.as_ref()),
        },
        SectionSpec::Oval { width, thickness } => {
            SectionSize::Oval { width: width.length(), thickness: thickness.length() }
        }
        SectionSpec::Hexagon(size) => SectionSize::Hexagon { across_flats: size.length() },
        SectionSpec::Octagon(size) => SectionSize::Octagon { across_flats: size.length() },
        SectionSpec::Diamond(side) => SectionSize::Diamond { side: side.length() },
        SectionSpec::HalfRound { width, height } => {
            SectionSize::HalfRound { width: width.length(), height: height.length() }
        }
        SectionSpec::Edge(width) => SectionSize::Edge { width: width.length() },
    }
}

/// The shape of a form, and whether its length is given.
fn draft_shape(form: &Form, around: Surroundings) -> (Shape, bool) {
    match form {
        Form::Plain { length } => prism(around.stock, length.as_ref()),
        Form::Drawn { length, section } => prism(section_size(section, around), length.as_ref()),
        Form::Trim { length } | Form::Hold { length } => prism(around.stock, Some(length)),
        Form::Taper { length, from, to, runout } => {
            let from = from.as_ref().map_or(around.before, |from| section_size(from, around));
            let runout = runout.map_or(Runout::Straight, Runout::from);
            let to = section_size(to, around);
            (Shape::Taper { from, to, runout, length: or_zero(length.as_ref()) }, length.is_some())
        }
        Form::Shoulder { to, radius, sides } => {
            let to = section_size(to, around);
            let shape = Shape::Shoulder { from: around.before, to, radius: radius.length(), sides: sides.clone() };
            (shape, true)
        }
        Form::Flag { outline, thickness, .. } => {
            let (root, tip) = match thickness {
                ThicknessSpec::Even(even) => (even.length(), even.length()),
                ThicknessSpec::Tapered { root, tip } => (root.length(), tip.length()),
            };
            (Shape::Flag { outline: outline_size(outline), root, tip }, true)
        }
        Form::Peak { section } => {
            (Shape::Peak { section: section_size(section, around), corner: CornerSize::default() }, false)
        }
        Form::Ball { diameter } => (Shape::Ball { diameter: diameter.length() }, true),
        Form::Cube { side } => (Shape::Cube { side: side.length() }, true),
    }
}

fn prism(section: SectionSize, length: Option<&WrittenLength>) -> (Shape, bool) {
    (Shape::Prism { section, length: or_zero(length) }, length.is_some())
}

fn outline_size(spec: &OutlineSpec) -> Outline {
    match spec {
        OutlineSpec::Rectangle { length, width } => {
            Outline::Rectangle { length: length.length(), width: width.length() }
        }
        OutlineSpec::Trapezoid { length, root, tip } => {
            Outline::Trapezoid { length: length.length(), root: root.length(), tip: tip.length() }
        }
        OutlineSpec::Disc { diameter } => Outline::Disc { diameter: diameter.length() },
        OutlineSpec::Ellipse { length, width } => Outline::Ellipse { length: length.length(), width: width.length() },
        OutlineSpec::Leaf { length, width } => Outline::Leaf { length: length.length(), width: width.length() },
        OutlineSpec::Stadium { length, width } => Outline::Stadium { length: length.length(), width: width.length() },
        OutlineSpec::Polygon(corners) => {
            Outline::Polygon(corners.iter().map(|[along, across]| [along.mm(), across.mm()]).collect())
        }
    }
}

fn bend_size(bend: &Bend) -> BendSize {
    let side = bend.side_radians();
    match bend {
        Bend::Curve { angle, inside_radius, .. } => BendSize::Curve {
            angle: angle.as_ref().map(WrittenAngle::radians),
            inside_radius: inside_radius.as_ref().map(WrittenLength::length),
            side,
        },
        Bend::Ring { inside_diameter, sweep, .. } => BendSize::Ring {
            inside_diameter: inside_diameter.as_ref().map(WrittenLength::length),
            sweep: sweep.as_ref().map_or(std::f64::consts::TAU, WrittenAngle::radians),
            side,
        },
        Bend::Corner { angle, inside_radius, .. } => {
            BendSize::Corner { angle: angle.radians(), inside_radius: inside_radius.length(), side }
        }
    }
}

fn or_zero(length: Option<&WrittenLength>) -> Length {
    length.map_or(mm(0.0), WrittenLength::length)
}
