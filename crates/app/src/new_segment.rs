//! Segments as they are first offered: sizes that suit the bar, to be typed over. And forms changed into other forms.

mod bends;
mod change;

pub(crate) use bends::{corner, first_bend, suits};
pub(crate) use change::change_form;

use crate::widgets::{Sizing, section_form};
use fh_core::forms;
use fh_core::plan::{
    Branch, Form, FormKind, HoleSpec, Made, OutlineSpec, RootSpec, SectionKind, SectionSpec, Segment, Sides,
    ThicknessSpec,
};

/// First lengths in mm, to be typed over.
const LENGTH_MM: f64 = 100.0;
const TAPER_MM: f64 = 60.0;
/// A drawn section, a leaf, a ball against the bar, as factors.
const DRAWN: f64 = 0.75;
const LEAF: [f64; 2] = [4.0, 2.0];
const LEAF_THICKNESS: f64 = 0.33;
const BALL: f64 = 1.5;
/// A cube takes more metal than a ball of its width: a larger one buckles as it is upset.
const CUBE: f64 = 1.25;
/// The inside radius of a first shoulder in mm.
const SHOULDER_RADIUS_MM: f64 = 3.0;
/// A boss and its hole against the bar's thickness.
const BOSS_THICKNESS: f64 = 0.75;
const HOLE: f64 = 0.75;
/// A tenon and what it goes through against the bar's thickness.
const TENON: f64 = 0.6;
const GRIP: f64 = 1.0;
/// A rivet's grip against its diameter.
const RIVET_GRIP: f64 = 2.0;
/// What stands out for a head, against the pin: common practice, no source.
const HEAD: f64 = 1.5;
/// Two bars side by side in a collar, each so many mm.
const BUNDLE_MM: [f64; 2] = [24.0, 12.0];
/// The hole that a slit ends in, against the bar's thickness: common practice, no source.
const ROOT_HOLE: f64 = 0.25;
/// A split has two branches at first.
const BRANCHES: usize = 2;

/// A new segment of a form; none where the plan's unit cannot write its sizes.
pub(crate) fn new_segment(kind: FormKind, sizing: &Sizing<'_>) -> Option<Segment> {
    let mut segment = Segment::new(kind.name(), form(kind, sizing)?);
    if kind == FormKind::Peak {
        segment.bend = corner(sizing);
    }
    Some(segment)
}

fn form(kind: FormKind, sizing: &Sizing<'_>) -> Option<Form> {
    let [width, thickness] = sizing.stock_mm;
    let least = width.min(thickness);
    Some(match kind {
        FormKind::Plain => Form::Plain(forms::Plain { length: Some(sizing.size(LENGTH_MM)?) }),
        FormKind::Drawn => Form::Drawn(forms::Drawn { length: Some(sizing.size(LENGTH_MM)?), section: drawn(sizing)? }),
        FormKind::Taper => Form::Taper(forms::Taper {
            length: Some(sizing.size(TAPER_MM)?),
            from: None,
            to: SectionSpec::Point,
            runout: None,
        }),
        FormKind::Shoulder => Form::Shoulder(forms::Shoulder {
            to: drawn(sizing)?,
            radius: sizing.size(SHOULDER_RADIUS_MM)?,
            sides: Sides::All,
        }),
        FormKind::Flag => Form::Flag(forms::Flag {
            outline: OutlineSpec::Leaf { length: sizing.size(LEAF[0] * width)?, width: sizing.size(LEAF[1] * width)? },
            thickness: ThicknessSpec::Even(sizing.size(LEAF_THICKNESS * least)?),
            trim: None,
        }),
        FormKind::Peak => Form::Peak(forms::Peak { section: SectionSpec::Stock }),
        FormKind::Hole => hole(sizing, width, least)?,
        FormKind::Tenon => Form::Tenon(forms::Tenon {
            section: SectionSpec::Round(sizing.size(TENON * least)?),
            grip: sizing.size(GRIP * least)?,
            allowance: sizing.size(HEAD * TENON * least)?,
        }),
        FormKind::Rivet => Form::Rivet(forms::Rivet {
            diameter: sizing.size(least)?,
            grip: sizing.size(RIVET_GRIP * least)?,
            allowance: sizing.size(HEAD * least)?,
        }),
        FormKind::Collar => Form::Collar(forms::Collar {
            section: SectionSpec::Stock,
            width: sizing.size(BUNDLE_MM[0])?,
            height: sizing.size(BUNDLE_MM[1])?,
            rule: None,
        }),
        // One thickness for the scarf: common practice, no source.
        FormKind::Weld => Form::Weld(forms::Weld { allowance: sizing.size(least)? }),
        FormKind::Split => {
            Form::Split(forms::Split { branches: branches(sizing)?, side: None, root: root(sizing), opening: None })
        }
        FormKind::Ball => Form::Ball(forms::Ball { diameter: sizing.size(BALL * least)? }),
        FormKind::Cube => Form::Cube(forms::Cube { side: sizing.size(CUBE * least)? }),
        FormKind::Trim => Form::Trim(forms::Trim { length: sizing.size(width)? }),
        FormKind::Hold => Form::Hold(forms::Hold { length: sizing.size(LENGTH_MM)? }),
    })
}

/// A round boss with a punched hole.
fn hole(sizing: &Sizing<'_>, width: f64, least: f64) -> Option<Form> {
    Some(Form::Hole(forms::Hole {
        outline: OutlineSpec::Disc { diameter: sizing.size(width + least)? },
        thickness: sizing.size(BOSS_THICKNESS * least)?,
        hole: HoleSpec::Round(sizing.size(HOLE * least)?),
        made: Made::Punched,
        slug: None,
        at: None,
    }))
}

/// The end of a slit drilled or punched first, so that no crack begins there.
fn root(sizing: &Sizing<'_>) -> Option<RootSpec> {
    let [width, thickness] = sizing.stock_mm;
    sizing.size(ROOT_HOLE * width.min(thickness)).map(RootSpec::Hole)
}

/// A taper that has bar on both sides of it: it runs to a section, since nothing can go on from a point.
pub(crate) fn run_to_a_section(form: &mut Form, sizing: &Sizing<'_>) {
    if let (Form::Taper(forms::Taper { to, .. }), Some(section)) = (form, drawn(sizing)) {
        *to = section;
    }
}

/// Branches that are left as they are cut, to be given their forms.
fn branches(sizing: &Sizing<'_>) -> Option<Vec<Branch>> {
    (0..BRANCHES).map(|_| new_branch(sizing)).collect()
}

/// A branch that is left as it is cut.
pub(crate) fn new_branch(sizing: &Sizing<'_>) -> Option<Branch> {
    let plain =
        Segment::new(FormKind::Plain.name(), Form::Plain(forms::Plain { length: Some(sizing.size(LENGTH_MM)?) }));
    Some(Branch { name: String::new(), segments: vec![plain] })
}

/// A section somewhat smaller than the bar.
fn drawn(sizing: &Sizing<'_>) -> Option<SectionSpec> {
    let [width, thickness] = sizing.stock_mm;
    let smaller = Sizing { stock_mm: [width * DRAWN, thickness * DRAWN], ..*sizing };
    let kind = if (width - thickness).abs() < 0.01 * width { SectionKind::Square } else { SectionKind::Flat };
    section_form::convert(&SectionSpec::Stock, kind, &smaller)
}

#[cfg(test)]
mod tests;
