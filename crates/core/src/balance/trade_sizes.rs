//! Sizes that the trade's own rules give: slits, punches, scarfs, heads. They change no mark; they tell what to set the tool to.

use super::{Derived, SegmentBalance};
use crate::forms;
use crate::metal::{Bent, HoleSize, SectionSize, Shape, View, in_mm, mm};
use crate::plan::{Form, Made, Practice, Segment, SizeName, SlitRule};
use uom::si::f64::Length;

/// Scarf length in thicknesses: Googerty, *Practical Forging and Art Smithing*, 1915, pages 12 and 14.
const SCARF: f64 = 1.5;

/// Adds the sizes that the rules of the trade give for a segment.
pub(super) fn trade_sizes(
    segment: &Segment,
    (shape, bent): (Option<&Shape>, Option<Bent>),
    practice: Practice,
    derived: &mut Vec<Derived>,
) {
    if let (Some(shape), Some(Bent::Twist { angle })) = (shape, bent) {
        let length = shape.edge_fibre(angle);
        derived.push(Derived::length(SizeName::EdgeFibre, length, "the longest fibre of the twist"));
    }
    match (&segment.form, shape) {
        (Form::Hole(forms::Hole { made, slug, .. }), Some(Shape::Hole { hole, .. })) => match made {
            Made::Drifted => slits(hole, practice.slit, derived),
            Made::Punched => {
                let size = slug.as_ref().map_or_else(|| hole.width(), fh_measure::WrittenLength::length);
                derived.push(Derived::length(SizeName::Punch, size, "as wide as the slug it drives out"));
            }
            Made::Drilled => derived.push(Derived::length(SizeName::Drill, hole.width(), "as wide as the hole")),
        },
        (Form::Flag(_), Some(shape)) => in_plate(shape, practice, derived),
        (Form::Weld(_), Some(Shape::Prism { section, .. })) => {
            let thickness = mm(section.seen_mm(View::Side));
            derived.push(scarf(thickness));
        }
        (Form::Collar(_), Some(Shape::Prism { length, .. })) => {
            derived.push(Derived::length(SizeName::Length, *length, "follows from the bundle by the collar rule"));
        }
        (Form::Split(_), Some(Shape::Split(split))) => {
            derived.push(Derived::length(
                SizeName::Slit,
                split.stock_length,
                "holds the metal of all branches, and its root hole",
            ));
            for (cut, name) in split.cuts.iter().zip(SizeName::CUTS) {
                derived.push(Derived::length(name, *cut, "from the first branch's edge"));
            }
        }
        _ => {}
    }
}

/// What the holes of a plate take: alike ones once.
fn in_plate(shape: &Shape, practice: Practice, derived: &mut Vec<Derived>) {
    let mut told: Vec<(Made, HoleSize, Length)> = Vec::new();
    for hole in shape.plate_holes() {
        let slug = hole.slug_width();
        if told.contains(&(hole.made, hole.hole, slug)) {
            continue;
        }
        told.push((hole.made, hole.hole, slug));
        match hole.made {
            Made::Drifted => {
                let before = derived.len();
                slits(&hole.hole, practice.slit, derived);
                // A plate is spread to its outline, and cut or dressed to it again after the drift.
                let is_of_boss = |name| matches!(name, SizeName::BossShorter | SizeName::BossLonger);
                let all: Vec<_> = derived.drain(before..).filter(|size| !is_of_boss(size.name)).collect();
                derived.extend(all);
            }
            Made::Punched => {
                derived.push(Derived::length(SizeName::Punch, slug, "as wide as the slug it drives out"));
            }
            Made::Drilled => derived.push(Derived::length(SizeName::Drill, hole.hole.width(), "as wide as the hole")),
        }
    }
}

/// The scarf of an end so thick.
fn scarf(thickness: Length) -> Derived {
    Derived::length(SizeName::Scarf, thickness * SCARF, "one and a half times the thickness")
}

/// Takes the scarf of an end for the bar that it closes, where that is forged thinner than the end is left.
pub(super) fn scarf_to(end: &mut SegmentBalance, beside: &Shape) {
    let seen = |section: &SectionSize| mm(section.seen_mm(View::Side));
    let thickness = match beside {
        Shape::Prism { section, .. } => seen(section),
        Shape::Taper { from, to, .. } if !from.is_end() && !to.is_end() => seen(from).min(seen(to)),
        _ => return,
    };
    let thinner = scarf(thickness);
    if let Some(own) = end.derived.iter_mut().find(|size| size.name == thinner.name && size.length > thinner.length) {
        *own = thinner;
    }
}

/// The slit for a drifted hole and what it does to the length of the boss; by both rules where none is chosen.
fn slits(hole: &HoleSize, rule: Option<SlitRule>, derived: &mut Vec<Derived>) {
    if rule != Some(SlitRule::ThreeQuarters) {
        let slit = hole.slit_half_perimeter();
        derived.push(Derived::length(SizeName::Slit, slit, "half the hole's perimeter less 5 %"));
        derived.push(change_of_length(slit - hole.length()));
    }
    if rule != Some(SlitRule::HalfPerimeter) {
        let slit = hole.slit_three_quarters();
        let name = if rule.is_none() { SizeName::OtherSlit } else { SizeName::Slit };
        derived.push(Derived::length(name, slit, "three quarters of the hole's length; the drift stretches the rest"));
        derived.push(change_of_length(slit - hole.length()));
    }
}

/// While a slit is drifted its ends come together, or go apart: the boss gets shorter or longer by the difference.
fn change_of_length(shorter: Length) -> Derived {
    let because = "while it is drifted, where its sides do not stretch";
    if in_mm(shorter) >= 0.0 {
        Derived::length(SizeName::BossShorter, shorter, because)
    } else {
        Derived::length(SizeName::BossLonger, -shorter, because)
    }
}
