//! Sizes across a part as a drawing shows them: the thickness from the side, the width from above; each can be typed there.

use super::Refusal;
use crate::forms;
use crate::metal::View;
use crate::plan::{Form, OutlineSpec, SectionSpec, Segment, ThicknessSpec};
use fh_measure::{LengthRange, WrittenLength};

/// Where along its form a size lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum AcrossAt {
    /// All along it, or where it is largest.
    All,
    /// Where it begins: a taper's heavier end, a flag's root.
    From,
    /// What it runs to: a taper's thin end, a flag's tip.
    To,
}

/// A size across a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Across {
    /// From where it is seen.
    pub view: View,
    /// Where along the form it lies.
    pub at: AcrossAt,
}

impl Across {
    /// Every one, in the order they are typed.
    pub const ALL: [Self; 6] = [
        Self { view: View::Side, at: AcrossAt::All },
        Self { view: View::Side, at: AcrossAt::From },
        Self { view: View::Side, at: AcrossAt::To },
        Self { view: View::Top, at: AcrossAt::All },
        Self { view: View::Top, at: AcrossAt::From },
        Self { view: View::Top, at: AcrossAt::To },
    ];

    /// The size as it is written; none where the part has no such size of its own.
    pub fn size(self, segment: &Segment) -> Option<WrittenLength> {
        if matches!(segment.form, Form::Split(_)) {
            return None;
        }
        let mut form = segment.form.clone();
        self.place(&mut form).map(|(_, length)| length.clone())
    }

    /// What the size is called: `thickness`.
    pub fn words(self, segment: &Segment) -> Option<&'static str> {
        let mut form = segment.form.clone();
        self.place(&mut form).map(|(words, _)| words)
    }

    /// The part with another size there.
    pub(super) fn written(self, before: &Segment, size: &WrittenLength) -> Result<Segment, Refusal> {
        let mut next = before.clone();
        let (_, place) = self.place(&mut next.form).ok_or(Refusal::NoSuchPlace)?;
        *place = size.clone();
        Ok(next)
    }

    /// The place of the size, and what it is called.
    fn place(self, form: &mut Form) -> Option<(&'static str, &mut WrittenLength)> {
        match (form, self.at) {
            (Form::Drawn(forms::Drawn { section, .. }) | Form::Tenon(forms::Tenon { section, .. }), AcrossAt::All) => {
                self.in_section(section)
            }
            (Form::Taper(forms::Taper { from: Some(from), .. }), AcrossAt::From) => self.in_section(from),
            (Form::Taper(forms::Taper { to, .. }), AcrossAt::To) => self.in_section(to),
            (Form::Ball(forms::Ball { diameter }) | Form::Rivet(forms::Rivet { diameter, .. }), AcrossAt::All) => {
                Some(("diameter", diameter))
            }
            (Form::Cube(forms::Cube { side }), AcrossAt::All) => Some(("side", side)),
            (Form::Flag(forms::Flag { thickness, .. }), at) if self.view == View::Side => of_thickness(thickness, at),
            (Form::Hole(forms::Hole { thickness, .. }), AcrossAt::All) if self.view == View::Side => {
                Some(("thickness", thickness))
            }
            (Form::Flag(forms::Flag { outline, .. }) | Form::Hole(forms::Hole { outline, .. }), at) => {
                of_outline(outline, at).filter(|_| self.view == View::Top)
            }
            _ => None,
        }
    }

    fn in_section(self, section: &mut SectionSpec) -> Option<(&'static str, &mut WrittenLength)> {
        match (section, self.view) {
            (SectionSpec::Square(square), _) => Some(("side", &mut square.side)),
            (SectionSpec::Round(diameter), _) => Some(("diameter", diameter)),
            (SectionSpec::Flat { thickness, .. } | SectionSpec::Oval { thickness, .. }, View::Side) => {
                Some(("thickness", thickness))
            }
            (SectionSpec::HalfRound { height, .. }, View::Side) => Some(("height", height)),
            (
                SectionSpec::Flat { width, .. }
                | SectionSpec::Oval { width, .. }
                | SectionSpec::HalfRound { width, .. }
                | SectionSpec::Edge(width),
                View::Top,
            ) => Some(("width", width)),
            _ => None,
        }
    }
}

fn of_thickness(thickness: &mut ThicknessSpec, at: AcrossAt) -> Option<(&'static str, &mut WrittenLength)> {
    match (thickness, at) {
        (ThicknessSpec::Even(even), AcrossAt::All) => Some(("thickness", even)),
        (ThicknessSpec::Tapered { root, .. }, AcrossAt::From) => Some(("thickness at the root", root)),
        (ThicknessSpec::Tapered { tip, .. }, AcrossAt::To) => Some(("thickness at the tip", tip)),
        _ => None,
    }
}

fn of_outline(outline: &mut OutlineSpec, at: AcrossAt) -> Option<(&'static str, &mut WrittenLength)> {
    match (outline, at) {
        (OutlineSpec::Rectangle { width: Some(width), .. }, AcrossAt::All) => Some(("width", width)),
        (
            OutlineSpec::Ellipse { width, .. } | OutlineSpec::Leaf { width, .. } | OutlineSpec::Stadium { width, .. },
            AcrossAt::All,
        ) => Some(("width", width)),
        (OutlineSpec::Disc { diameter }, AcrossAt::All) => Some(("diameter", diameter)),
        (OutlineSpec::Trapezoid { root, .. }, AcrossAt::From) => Some(("width at the root", root)),
        (OutlineSpec::Trapezoid { tip, .. }, AcrossAt::To) => Some(("width at the tip", tip)),
        _ => None,
    }
}

/// The rule of what may be typed for a size across.
pub const ACROSS_RANGE: LengthRange = LengthRange::AboveZero;

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::balance::balance;
    use crate::edit::{Edit, PartChange};
    use crate::file;
    use crate::first_sizes::FirstSizes;
    use crate::new_segment::new_segment;
    use crate::plan::{FormKind, Plan, Units};

    fn plan(form: &str) -> Plan {
        let plan = format!(
            r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{{ "name": "bar",
            "stock": {{ "square": "12 mm" }}, "segments": [{{ "name": "part", "form": {form} }},
            {{ "name": "rest", "form": {{ "hold": {{ "length": "100 mm" }} }} }}] }}] }}"#
        );
        file::read(plan.as_bytes()).unwrap()
    }

    fn change(view: View, at: AcrossAt, text: &str) -> Edit {
        let size = WrittenLength::parse(text, None, ACROSS_RANGE).unwrap();
        Edit::ChangePart { bar: 0, at: 0, change: PartChange::Across { across: Across { view, at }, size } }
    }

    #[test]
    fn a_thickness_typed_on_the_drawing_is_the_part_s_own() {
        let before = plan(
            r#"{ "drawn": { "length": "90 mm", "section": { "flat": { "width": "14 mm", "thickness": "6 mm" } } } }"#,
        );
        let (next, _) = change(View::Side, AcrossAt::All, "4 mm").applied(&before).unwrap();
        // 14 × 4 × 90 / 144 = 35 mm of bar.
        let mark = balance(&next).bars[0].segments[0].mark_end.value * 1000.0;
        assert!((mark - 35.0).abs() < 1e-6, "{mark}");
        let (next, _) = change(View::Top, AcrossAt::All, "16 mm").applied(&before).unwrap();
        // 16 × 6 × 90 / 144 = 60 mm.
        let mark = balance(&next).bars[0].segments[0].mark_end.value * 1000.0;
        assert!((mark - 60.0).abs() < 1e-6, "{mark}");
    }

    #[test]
    fn a_size_that_is_not_there_is_not_written() {
        let point = plan(r#"{ "taper": { "length": "60 mm", "to": "point" } }"#);
        assert_eq!(change(View::Side, AcrossAt::To, "4 mm").applied(&point).err(), Some(Refusal::NoSuchPlace));
        assert_eq!(change(View::Side, AcrossAt::All, "4 mm").applied(&point).err(), Some(Refusal::NoSuchPlace));
    }

    #[test]
    fn every_size_across_of_every_form_is_written_where_it_is_read() {
        let sizes = FirstSizes::without_stock(Units::millimeters());
        let mut count = 0;
        for kind in FormKind::ALL {
            let segment = new_segment(kind, &sizes).unwrap();
            for across in Across::ALL {
                let Some(size) = across.size(&segment) else { continue };
                let other = size.longer_by(1.0, ACROSS_RANGE).unwrap();
                let next = across.written(&segment, &other).unwrap();
                assert_eq!(across.size(&next), Some(other), "{kind:?} {across:?}");
                assert!(across.words(&segment).is_some());
                count += 1;
            }
        }
        assert!(count >= 10, "{count}");
    }
}
