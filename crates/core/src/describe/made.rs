//! What a segment becomes with its sizes as they come out: a size that follows, gave or stands elsewhere is told by its figure.

use super::{derived_words, fine_length};
use crate::balance::{Derived, SegmentBalance};
use crate::forms;
use crate::metal::{Outline, SectionSize, Shape};
use crate::plan::{Form, OutlineSpec, PlanUnit, SectionSpec, Segment, SizeName, SquareSpec};
use fh_measure::{LengthRange, WrittenLength};
use uom::si::f64::Length;

/// What a segment becomes.
#[derive(Clone, Debug, PartialEq)]
pub struct MadeWords {
    /// Its form with every size: `plain 234.9 mm to fit the bar`, `drawn 50 mm to 14 mm × 7 mm half-round`.
    pub form: String,
    /// The section that a drawn length is drawn to: `14 mm × 7 mm half-round`; none of other forms.
    pub section: Option<String>,
    /// The sizes that follow and do not stand there yet.
    pub follows: Vec<FollowingSize>,
}

/// A size that follows, in words.
#[derive(Clone, Debug, PartialEq)]
pub struct FollowingSize {
    /// Which size.
    pub name: SizeName,
    /// It in words: `inside radius 1 5/64 in`.
    pub words: String,
}

/// What a segment becomes, with its sizes as they come out.
pub fn made_words(segment: &Segment, balance: &SegmentBalance, unit: PlanUnit) -> MadeWords {
    let mut filled = segment.clone();
    let mut told: Vec<SizeName> = Vec::new();
    let gave = balance.derived.iter().find(|size| size.gave.is_some() && size.name == SizeName::Length);
    let gave_length = gave.and_then(|size| size.length);
    let mut fits = String::new();
    if let (
        Some(length),
        Form::Plain(forms::Plain { length: l })
        | Form::Open(forms::Open { length: l })
        | Form::Drawn(forms::Drawn { length: l, .. })
        | Form::Taper(forms::Taper { length: l, .. }),
    ) = (gave_length, &mut filled.form)
    {
        *l = written(length, unit);
        told.push(SizeName::Length);
        fits = gave.and_then(|size| size.gave).map_or_else(String::new, |reason| format!(" {}", reason.words()));
    }
    if let Some(shape) = &balance.shape {
        fill_sections(&mut filled.form, shape, balance.reversed, unit);
        fill_outline(&mut filled.form, shape, &mut told, unit);
    }
    let derived = balance.derived.iter().filter(|size| !told.contains(&size.name));
    let drawn = if is_gathered(&segment.form, balance) { "upset" } else { "drawn" };
    let form = filled.form.one().words(drawn);
    let form = with_size_of_polygon(form, &filled.form, balance.shape.as_ref(), unit);
    let section = match &filled.form {
        Form::Drawn(forms::Drawn { section, .. }) => Some(section.describe()),
        _ => None,
    };
    let words = |size: &Derived| Some(FollowingSize { name: size.name, words: derived_words(size, unit)? });
    MadeWords { form: form + &fits, section, follows: derived.filter_map(words).collect() }
}

/// Whether a section is larger than the bar that it is made from: what the fire leaves of that is longer than the part.
fn is_gathered(form: &Form, balance: &SegmentBalance) -> bool {
    /// By less than this it is the bar's own section.
    const SAME: f64 = 1.001;
    let left = balance.stock_length * (1.0 - balance.scale_share);
    matches!(form, Form::Drawn(_)) && left > balance.forged_length * SAME
}

/// A size as a smith writes it: 14 mm, not 14.0 mm.
fn size_words(length: Length, unit: PlanUnit) -> String {
    fine_length(length, unit).replace(".0 mm", " mm")
}

fn written(length: Length, unit: PlanUnit) -> Option<WrittenLength> {
    WrittenLength::parse(&size_words(length, unit), None, LengthRange::AboveZero).ok()
}

/// Sections that point elsewhere, the one before or the stock's, by their sizes.
fn fill_sections(form: &mut Form, shape: &Shape, reversed: bool, unit: PlanUnit) {
    let fill = |spec: &mut SectionSpec, size: &SectionSize| {
        if matches!(spec, SectionSpec::Same | SectionSpec::Stock | SectionSpec::Grown(_))
            && let Some(sized) = section_spec(size, unit)
        {
            *spec = sized;
        }
    };
    match (form, shape) {
        (
            Form::Drawn(forms::Drawn { section, .. })
            | Form::Collar(forms::Collar { section, .. })
            | Form::Tenon(forms::Tenon { section, .. }),
            Shape::Prism { section: size, .. },
        )
        | (Form::Peak(forms::Peak { section, .. }), Shape::Peak { section: size, .. }) => fill(section, size),
        (Form::Taper(forms::Taper { from, to, .. }), Shape::Taper { from: start, to: end, .. }) => {
            let (start, end) = if reversed { (end, start) } else { (start, end) };
            if let Some(from) = from {
                fill(from, start);
            }
            fill(to, end);
        }
        (Form::Shoulder(forms::Shoulder { to, .. }), Shape::Shoulder { from: start, to: end, .. }) => {
            fill(to, if start.area() < end.area() { start } else { end });
        }
        _ => {}
    }
}

/// A section by its sizes, as it would be written; none of a point.
fn section_spec(size: &SectionSize, unit: PlanUnit) -> Option<SectionSpec> {
    let length = |size: Length| written(size, unit);
    Some(match *size {
        SectionSize::Point => return None,
        SectionSize::Square { side, .. } => SectionSpec::Square(SquareSpec { side: length(side)?, edge_radius: None }),
        SectionSize::Round { diameter } => SectionSpec::Round(length(diameter)?),
        SectionSize::Flat { width, thickness, .. } => {
            SectionSpec::Flat { width: length(width)?, thickness: length(thickness)?, edge_radius: None }
        }
        SectionSize::Oval { width, thickness } => {
            SectionSpec::Oval { width: length(width)?, thickness: length(thickness)? }
        }
        SectionSize::Hexagon { across_flats } => SectionSpec::Hexagon(length(across_flats)?),
        SectionSize::Octagon { across_flats } => SectionSpec::Octagon(length(across_flats)?),
        SectionSize::Diamond { side } => SectionSpec::Diamond(length(side)?),
        SectionSize::HalfRound { width, height } => {
            SectionSpec::HalfRound { width: length(width)?, height: length(height)? }
        }
        SectionSize::Edge { width } => SectionSpec::Edge(length(width)?),
    })
}

/// A rectangle whose length or width follows, with both.
fn fill_outline(form: &mut Form, shape: &Shape, told: &mut Vec<SizeName>, unit: PlanUnit) {
    let Some((spec, outline)) = outlines(form, shape) else { return };
    let OutlineSpec::Rectangle { length, width } = spec else { return };
    for (size, follows, name) in
        [(length, outline.length(), SizeName::Length), (width, outline.width(), SizeName::Width)]
    {
        if size.is_none() {
            *size = written(follows, unit);
            told.push(name);
        }
    }
}

fn outlines<'f, 's>(form: &'f mut Form, shape: &'s Shape) -> Option<(&'f mut OutlineSpec, &'s Outline)> {
    match (form, shape) {
        (Form::Flag(forms::Flag { outline: spec, .. }), Shape::Flag { outline, .. })
        | (Form::Hole(forms::Hole { outline: spec, .. }), Shape::Hole { outline, .. }) => Some((spec, outline)),
        _ => None,
    }
}

/// A polygon says how many corners it has; here also how long and how wide it is over all.
fn with_size_of_polygon(words: String, form: &Form, shape: Option<&Shape>, unit: PlanUnit) -> String {
    let all = match (form, shape) {
        (Form::Flag(forms::Flag { outline: spec, blank, .. }), Some(Shape::Flag { outline, blank: size, .. })) => {
            // The blank is told first.
            vec![blank.as_ref().zip(size.as_ref().map(|blank| &blank.outline)), Some((spec, outline))]
        }
        (Form::Hole(forms::Hole { outline: spec, .. }), Some(Shape::Hole { outline, .. })) => {
            vec![Some((spec, outline))]
        }
        _ => return words,
    };
    let (mut told, mut rest) = (String::new(), words.as_str());
    for (spec, outline) in all.into_iter().flatten() {
        let own = spec.describe();
        let Some(end) = rest.find(&own).map(|at| at + own.len()) else { continue };
        told.push_str(&rest[..end]);
        rest = &rest[end..];
        if matches!(spec, OutlineSpec::Polygon(_)) {
            let sizes = [outline.length(), outline.width()].map(|size| size_words(size, unit));
            told.push_str(&format!(", {} × {} over all", sizes[0], sizes[1]));
        }
    }
    told + rest
}
