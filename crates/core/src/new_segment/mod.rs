//! Segments as they are first offered: sizes that suit the bar, to be typed over. And forms changed into other forms.

mod bends;
mod blank;
mod change;
mod hole;
mod outline;
mod plate_hole;
mod section;
mod wholes;

pub use bends::{corner, first_bend, suits};
pub use blank::{set_blank, tidy_base_line};
pub use change::change_form;
pub use hole::convert_hole;
pub use outline::convert_outline;
pub use section::convert_section;
pub use wholes::{Around, Whole};

use crate::first_sizes::FirstSizes;
use crate::forms;
use crate::plan::{
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
pub fn new_segment(kind: FormKind, sizes: &FirstSizes) -> Option<Segment> {
    let mut segment = Segment::new(kind.name(), form(kind, sizes)?);
    if kind == FormKind::Peak {
        segment.bend = corner(sizes);
    }
    Some(segment)
}

fn form(kind: FormKind, sizes: &FirstSizes) -> Option<Form> {
    let [width, thickness] = sizes.stock_mm;
    let least = width.min(thickness);
    Some(match kind {
        FormKind::Plain => Form::Plain(forms::Plain { length: Some(sizes.size(LENGTH_MM)?) }),
        FormKind::Drawn => Form::Drawn(forms::Drawn { length: Some(sizes.size(LENGTH_MM)?), section: drawn(sizes)? }),
        FormKind::Taper => Form::Taper(forms::Taper {
            length: Some(sizes.size(TAPER_MM)?),
            from: None,
            to: SectionSpec::Point,
            runout: None,
        }),
        FormKind::Shoulder => Form::Shoulder(forms::Shoulder {
            to: drawn(sizes)?,
            radius: sizes.size(SHOULDER_RADIUS_MM)?,
            sides: Sides::All,
        }),
        FormKind::Flag => Form::Flag(forms::Flag {
            outline: OutlineSpec::Leaf { length: sizes.size(LEAF[0] * width)?, width: sizes.size(LEAF[1] * width)? },
            thickness: ThicknessSpec::Even(sizes.size(LEAF_THICKNESS * least)?),
            trim: None,
            blank: None,
            base_line: None,
            joined: false,
            holes: Vec::new(),
        }),
        FormKind::Peak => Form::Peak(forms::Peak { section: SectionSpec::Stock, left: None, driven: false }),
        FormKind::Hole => hole(sizes, width, least)?,
        FormKind::Tenon => Form::Tenon(forms::Tenon {
            section: SectionSpec::Round(sizes.size(TENON * least)?),
            grip: sizes.size(GRIP * least)?,
            allowance: sizes.size(HEAD * TENON * least)?,
        }),
        FormKind::Rivet => Form::Rivet(forms::Rivet {
            diameter: sizes.size(least)?,
            grip: sizes.size(RIVET_GRIP * least)?,
            allowance: sizes.size(HEAD * least)?,
        }),
        FormKind::Collar => Form::Collar(forms::Collar {
            section: SectionSpec::Stock,
            width: sizes.size(BUNDLE_MM[0])?,
            height: sizes.size(BUNDLE_MM[1])?,
            rule: None,
        }),
        // One thickness for the scarf: common practice, no source.
        FormKind::Weld => Form::Weld(forms::Weld { allowance: sizes.size(least)? }),
        FormKind::Split => Form::Split(forms::Split {
            branches: branches(sizes)?,
            side: None,
            root: root(sizes),
            ..forms::Split::default()
        }),
        FormKind::Ball => Form::Ball(forms::Ball { diameter: sizes.size(BALL * least)? }),
        FormKind::Cube => Form::Cube(forms::Cube { side: sizes.size(CUBE * least)? }),
        FormKind::Trim => Form::Trim(forms::Trim { length: sizes.size(width)? }),
        FormKind::Hold => Form::Hold(forms::Hold { length: sizes.size(LENGTH_MM)? }),
        FormKind::Open => Form::Open(forms::Open { length: Some(sizes.size(LENGTH_MM)?) }),
    })
}

/// A round boss with a punched hole.
fn hole(sizes: &FirstSizes, width: f64, least: f64) -> Option<Form> {
    Some(Form::Hole(forms::Hole {
        outline: OutlineSpec::Disc { diameter: sizes.size(width + least)? },
        thickness: sizes.size(BOSS_THICKNESS * least)?,
        hole: HoleSpec::Round(sizes.size(HOLE * least)?),
        made: Made::Punched,
        slug: None,
        at: None,
    }))
}

/// The end of a slit drilled or punched first, so that no crack begins there.
fn root(sizes: &FirstSizes) -> Option<RootSpec> {
    let [width, thickness] = sizes.stock_mm;
    sizes.size(ROOT_HOLE * width.min(thickness)).map(RootSpec::Hole)
}

/// A taper that has bar on both sides of it: it runs to a section, since nothing can go on from a point.
pub fn run_to_a_section(form: &mut Form, sizes: &FirstSizes) {
    if let (Form::Taper(forms::Taper { to, .. }), Some(section)) = (form, drawn(sizes)) {
        *to = section;
    }
}

/// Branches that are left as they are cut, to be given their forms.
fn branches(sizes: &FirstSizes) -> Option<Vec<Branch>> {
    (0..BRANCHES).map(|_| new_branch(sizes)).collect()
}

/// A branch that is left as it is cut.
pub fn new_branch(sizes: &FirstSizes) -> Option<Branch> {
    let plain =
        Segment::new(FormKind::Plain.name(), Form::Plain(forms::Plain { length: Some(sizes.size(LENGTH_MM)?) }));
    Some(Branch::new("", vec![plain]))
}

/// A section somewhat smaller than the bar.
fn drawn(sizes: &FirstSizes) -> Option<SectionSpec> {
    let [width, thickness] = sizes.stock_mm;
    let smaller = FirstSizes { stock_mm: [width * DRAWN, thickness * DRAWN], ..*sizes };
    let kind = if (width - thickness).abs() < 0.01 * width { SectionKind::Square } else { SectionKind::Flat };
    convert_section(&SectionSpec::Stock, kind, &smaller)
}

#[cfg(test)]
mod tests;
