//! Segments as they are first offered: sizes that suit the bar, to be typed over. And forms changed into other forms.

use crate::widgets::{Sizing, section_form};
use fh_core::plan::{Bend, Form, FormKind, OutlineSpec, SectionKind, SectionSpec, Segment, Sides, ThicknessSpec};
use fh_measure::{LengthRange, WrittenAngle, WrittenLength};

/// First lengths in mm, to be typed over.
const LENGTH_MM: f64 = 100.0;
const TAPER_MM: f64 = 60.0;
/// A drawn section, a leaf, a ball against the bar, as factors.
const DRAWN: f64 = 0.75;
const LEAF: [f64; 2] = [4.0, 2.0];
const LEAF_THICKNESS: f64 = 0.33;
const FINIAL: f64 = 1.5;
/// The inside radius of a first shoulder in mm.
const SHOULDER_RADIUS_MM: f64 = 3.0;

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
        FormKind::Plain => Form::Plain { length: Some(sizing.size(LENGTH_MM)?) },
        FormKind::Drawn => Form::Drawn { length: Some(sizing.size(LENGTH_MM)?), section: drawn(sizing)? },
        FormKind::Taper => {
            Form::Taper { length: Some(sizing.size(TAPER_MM)?), from: None, to: SectionSpec::Point, runout: None }
        }
        FormKind::Shoulder => {
            Form::Shoulder { to: drawn(sizing)?, radius: sizing.size(SHOULDER_RADIUS_MM)?, sides: Sides::All }
        }
        FormKind::Flag => Form::Flag {
            outline: OutlineSpec::Leaf { length: sizing.size(LEAF[0] * width)?, width: sizing.size(LEAF[1] * width)? },
            thickness: ThicknessSpec::Even(sizing.size(LEAF_THICKNESS * least)?),
            trim: None,
        },
        FormKind::Peak => Form::Peak { section: SectionSpec::Stock },
        FormKind::Ball => Form::Ball { diameter: sizing.size(FINIAL * least)? },
        FormKind::Cube => Form::Cube { side: sizing.size(FINIAL * least)? },
        FormKind::Trim => Form::Trim { length: sizing.size(width)? },
        FormKind::Hold => Form::Hold { length: sizing.size(LENGTH_MM)? },
        _ => return None,
    })
}

/// A section somewhat smaller than the bar.
fn drawn(sizing: &Sizing<'_>) -> Option<SectionSpec> {
    let [width, thickness] = sizing.stock_mm;
    let smaller = Sizing { stock_mm: [width * DRAWN, thickness * DRAWN], ..*sizing };
    let kind = if (width - thickness).abs() < 0.01 * width { SectionKind::Square } else { SectionKind::Flat };
    section_form::convert(&SectionSpec::Stock, kind, &smaller)
}

/// A sharp right angle, toward up.
pub(crate) fn corner(sizing: &Sizing<'_>) -> Option<Bend> {
    let angle = WrittenAngle::from_degrees(90.0).ok()?;
    let inside_radius = WrittenLength::from_mm(0.0, sizing.units.length.length_unit(), LengthRange::ZeroOrMore).ok()?;
    Some(Bend::Corner { angle, inside_radius, side: None })
}

/// A segment with another form that keeps what it can: its name, its length, its section.
pub(crate) fn change_form(segment: &Segment, kind: FormKind, sizing: &Sizing<'_>) -> Option<Segment> {
    let mut next = segment.clone();
    let mut form = form(kind, sizing)?;
    if let Some(length) = segment.form.length() {
        put_length(&mut form, length);
    }
    if let Some(section) = section_of(&segment.form) {
        put_section(&mut form, section);
    }
    next.form = form;
    next.bend = match (kind, segment.bend.clone()) {
        (FormKind::Peak, bend @ Some(Bend::Corner { .. })) => bend,
        (FormKind::Peak, _) => corner(sizing),
        (FormKind::Plain | FormKind::Drawn | FormKind::Taper, bend @ Some(Bend::Curve { .. } | Bend::Ring { .. })) => {
            bend
        }
        _ => None,
    };
    if segment.name == segment.form.kind().name() {
        next.name = kind.name().to_owned();
    }
    next.gives = None;
    Some(next)
}

fn put_length(form: &mut Form, kept: &WrittenLength) {
    match form {
        Form::Plain { length } | Form::Drawn { length, .. } | Form::Taper { length, .. } => {
            *length = Some(kept.clone())
        }
        Form::Trim { length } | Form::Hold { length } => *length = kept.clone(),
        Form::Flag { outline: OutlineSpec::Leaf { length, .. }, .. } => *length = kept.clone(),
        _ => {}
    }
}

/// The section that a form ends in, where it names one with sizes.
fn section_of(form: &Form) -> Option<&SectionSpec> {
    match form {
        Form::Drawn { section, .. } | Form::Peak { section } => Some(section),
        Form::Taper { to, .. } | Form::Shoulder { to, .. } => Some(to),
        _ => None,
    }
}

fn put_section(form: &mut Form, kept: &SectionSpec) {
    let is_end = matches!(kept.kind(), SectionKind::Point | SectionKind::Edge);
    match form {
        Form::Taper { to, .. } => *to = kept.clone(),
        Form::Drawn { section, .. } | Form::Peak { section } if !is_end => *section = kept.clone(),
        Form::Shoulder { to, .. } if !is_end => *to = kept.clone(),
        _ => {}
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::theme::{Look, Theme};
    use fh_core::plan::Units;

    #[test]
    fn every_form_is_offered_in_both_units() {
        let theme = Theme::new(Look::Light, 1.0);
        for units in [Units::inches(), Units::millimeters()] {
            let sizing = Sizing::without_stock(&theme, units);
            for kind in FormKind::ALL {
                assert_eq!(new_segment(kind, &sizing).unwrap().form.kind(), kind);
            }
        }
    }

    #[test]
    fn a_form_that_is_changed_keeps_its_length_and_its_section() {
        let theme = Theme::new(Look::Light, 1.0);
        let sizing = Sizing::without_stock(&theme, Units::inches());
        let drawn = new_segment(FormKind::Drawn, &sizing).unwrap();
        let taper = change_form(&drawn, FormKind::Taper, &sizing).unwrap();
        assert_eq!(taper.form.length(), drawn.form.length());
        assert_eq!(section_of(&taper.form), section_of(&drawn.form));
        assert_eq!(taper.name, "taper");
    }
}
