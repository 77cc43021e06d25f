//! A segment with another form, that keeps what it can.

use super::corner;
use super::{form, suits};
use crate::first_sizes::FirstSizes;
use crate::forms;
use crate::plan::{Form, FormKind, Gives, OutlineSpec, SectionKind, SectionSpec, Segment, ThicknessSpec};
use fh_measure::WrittenLength;

/// A segment with another form that keeps what it can: its name, its length, its section, its outline, its bend.
pub fn change_form(segment: &Segment, kind: FormKind, sizes: &FirstSizes) -> Option<Segment> {
    let mut next = segment.clone();
    let mut form = form(kind, sizes)?;
    if let Some(length) = segment.form.length() {
        put_length(&mut form, length);
    }
    if let Some(section) = section_of(&segment.form) {
        put_section(&mut form, &section);
    }
    put_outline(&mut form, &segment.form);
    put_grip(&mut form, &segment.form);
    next.form = form;
    next.bend = segment.bend.clone().filter(|bend| suits(&next.form, bend.kind()));
    if kind == FormKind::Peak && next.bend.is_none() {
        next.bend = corner(sizes);
    }
    if segment.name == segment.form.kind().name() {
        next.name = kind.name().to_owned();
    }
    next.gives = fills_its_block(segment, &next.form);
    Some(next)
}

/// What gives in a block that was left open until now, so that it is filled.
fn fills_its_block(before: &Segment, form: &Form) -> Option<Gives> {
    let gives = match form {
        Form::Open(_) => Gives::Nothing,
        // What is in its branches.
        Form::Split(_) => Gives::Length,
        _ => form.default_gives(),
    };
    (matches!(before.form, Form::Open(_)) && gives != Gives::Nothing).then_some(gives)
}

fn put_length(form: &mut Form, kept: &WrittenLength) {
    match form {
        Form::Plain(forms::Plain { length })
        | Form::Open(forms::Open { length })
        | Form::Drawn(forms::Drawn { length, .. })
        | Form::Taper(forms::Taper { length, .. }) => *length = Some(kept.clone()),
        Form::Trim(forms::Trim { length }) | Form::Hold(forms::Hold { length }) => *length = kept.clone(),
        Form::Flag(forms::Flag { outline: OutlineSpec::Leaf { length, .. }, .. }) => *length = kept.clone(),
        _ => {}
    }
}

/// The section that a form ends in, where it names one with sizes.
fn section_of(form: &Form) -> Option<SectionSpec> {
    match form {
        Form::Drawn(forms::Drawn { section, .. })
        | Form::Peak(forms::Peak { section, .. })
        | Form::Tenon(forms::Tenon { section, .. })
        | Form::Collar(forms::Collar { section, .. }) => Some(section.clone()),
        Form::Taper(forms::Taper { to, .. }) | Form::Shoulder(forms::Shoulder { to, .. }) => Some(to.clone()),
        Form::Rivet(forms::Rivet { diameter, .. }) => Some(SectionSpec::Round(diameter.clone())),
        _ => None,
    }
}

fn put_section(form: &mut Form, kept: &SectionSpec) {
    let is_end = matches!(kept.kind(), SectionKind::Point | SectionKind::Edge);
    match form {
        Form::Taper(forms::Taper { to, .. }) => *to = kept.clone(),
        Form::Drawn(forms::Drawn { section, .. })
        | Form::Peak(forms::Peak { section, .. })
        | Form::Tenon(forms::Tenon { section, .. })
            if !is_end =>
        {
            *section = kept.clone();
        }
        Form::Collar(forms::Collar { section, .. }) if !is_end => *section = kept.clone(),
        Form::Shoulder(forms::Shoulder { to, .. }) if !is_end => *to = kept.clone(),
        Form::Rivet(forms::Rivet { diameter, .. }) => {
            if let SectionSpec::Round(kept) = kept {
                *diameter = kept.clone();
            }
        }
        _ => {}
    }
}

/// A flag and a boss keep outline and thickness of each other.
fn put_outline(form: &mut Form, before: &Form) {
    let (kept, kept_thickness) = match before {
        Form::Flag(forms::Flag { outline, thickness: ThicknessSpec::Even(thickness), .. })
        | Form::Flag(forms::Flag { outline, thickness: ThicknessSpec::Tapered { root: thickness, .. }, .. })
        | Form::Hole(forms::Hole { outline, thickness, .. }) => (outline, thickness),
        _ => return,
    };
    // A size that followed from a socket is not there any more.
    if matches!(kept, OutlineSpec::Rectangle { length, width } if length.is_none() || width.is_none()) {
        return;
    }
    match form {
        Form::Flag(forms::Flag { outline, thickness, .. }) => {
            *outline = kept.clone();
            *thickness = ThicknessSpec::Even(kept_thickness.clone());
        }
        Form::Hole(forms::Hole { outline, thickness, .. }) => {
            *outline = kept.clone();
            *thickness = kept_thickness.clone();
        }
        _ => {}
    }
}

/// A tenon and a rivet keep what they go through and what stands out of it.
fn put_grip(form: &mut Form, before: &Form) {
    let (Form::Tenon(forms::Tenon { grip: kept, allowance: kept_head, .. })
    | Form::Rivet(forms::Rivet { grip: kept, allowance: kept_head, .. })) = before
    else {
        return;
    };
    if let Form::Tenon(forms::Tenon { grip, allowance, .. }) | Form::Rivet(forms::Rivet { grip, allowance, .. }) = form
    {
        *grip = kept.clone();
        *allowance = kept_head.clone();
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::new_segment::new_segment;
    use crate::plan::Units;

    #[test]
    fn a_form_that_is_changed_keeps_its_length_and_its_section() {
        let sizes = FirstSizes::without_stock(Units::inches());
        let drawn = new_segment(FormKind::Drawn, &sizes).unwrap();
        let taper = change_form(&drawn, FormKind::Taper, &sizes).unwrap();
        assert_eq!(taper.form.length(), drawn.form.length());
        assert_eq!(section_of(&taper.form), section_of(&drawn.form));
        assert_eq!(taper.name, "taper");
    }

    #[test]
    fn pins_keep_their_grip_and_bosses_their_outline() {
        let sizes = FirstSizes::without_stock(Units::millimeters());
        let rivet = new_segment(FormKind::Rivet, &sizes).unwrap();
        let tenon = change_form(&rivet, FormKind::Tenon, &sizes).unwrap();
        assert_eq!(section_of(&tenon.form), section_of(&rivet.form));
        let back = change_form(&tenon, FormKind::Rivet, &sizes).unwrap();
        assert_eq!(back, rivet);
        let flag = new_segment(FormKind::Flag, &sizes).unwrap();
        let hole = change_form(&flag, FormKind::Hole, &sizes).unwrap();
        assert_eq!(hole.form.length(), flag.form.length());
        assert_eq!(change_form(&hole, FormKind::Flag, &sizes).unwrap().form, flag.form);
    }
}
